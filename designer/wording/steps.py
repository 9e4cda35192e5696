"""What happens, ball by ball, with the digits of the diagram."""

from __future__ import annotations

from collections.abc import Iterator

from designer.drill.movement import Run
from designer.drill.places import locate
from designer.drill.rules import Part
from designer.play.rally import opening_part, opening_shot, parts
from designer.play.sequence import Step
from designer.wording.counts import listed, ordinal
from designer.wording.events import trigger
from designer.wording.names import letter, name_of, shot_name
from designer.wording.people import owner
from designer.wording.sentence import Lead, Sentence, sentence, sentences_of, unmarked
from designer.wording.strokes import deed
from designer.wording.telling import Telling
from designer.wording.tokens import own_text
from designer.wording.where import travels

_MOVES: float = 0.5
"""A run shorter than this, in metres, along or across, is no run in that direction."""


def steps(told: Telling) -> tuple[Sentence, ...]:
    """Return the steps in order of play: a sentence for each ball, each choice, each run and the opening."""
    opens_after = opening_shot(told.setting, told.sequence)
    told_of: list[Sentence] = []
    merged: set[str] = set()
    said_open = False
    for step in told.sequence.steps:
        if step.alternatives and not _leads_choice(told, step):
            told_of += _runs(told, step, merged)
            continue
        told_of.append(_choice(told, step) if step.alternatives else _step(told, step, merged))
        if opens_after in _rivals(told, step):
            told_of += _opening(told)
            said_open = True
        told_of += _runs(told, step, merged)
    told_of += _end(told) if not said_open else ()
    return tuple(told_of)


def _rivals(told: Telling, step: Step) -> tuple[str, ...]:
    """Return the shots of which one is played at this point, alternatives of one another."""
    before = told.sequence.before.get(step.shot.id)
    return tuple(
        other.shot.id
        for other in told.sequence.steps
        if other.alternatives
        and told.sequence.before.get(other.shot.id) == before
        and (before is not None or other.hitter == step.hitter)
    ) or (step.shot.id,)


def _leads_choice(told: Telling, step: Step) -> bool:
    return _rivals(told, step)[0] == step.shot.id


def _step(told: Telling, step: Step, merged: set[str]) -> Sentence:
    shot = step.shot
    who = letter(told, step.hitter)
    lead = Lead("feed" if step.feed else "hit", str(step.digit))
    later = next((start for start in told.later_starts if start.shot == shot.id), None)
    about = [shot.id]
    if later is not None:
        text = _second_ball(told, step)
        about.append(later.id)
    else:
        may = _may(told, step)
        moving = "" if may else _moving(told, step, merged)
        what = deed(told, step)
        verb = f"{may} {_plain_form(what)}" if may else f"{moving}{what}"
        text = f"{_from(told, step)}{who} {verb}"
    called = f"{letter(told, shot.called_by)} says where" if shot.called_by is not None else ""
    words = sentences_of(text, called, own_text(told, shot.note))
    return sentence(f"shot:{shot.id}", words, *about, lead=lead)


def _second_ball(told: Telling, step: Step) -> str:
    """Return the sentence of a ball that is fed later in the rally, with when and where."""
    start = next(start for start in told.later_starts if start.shot == step.shot.id)
    who = letter(told, step.hitter)
    when = trigger(told, start.once) if start.once is not None else ""
    before = told.setting.shots.get(told.sequence.before.get(step.shot.id) or "")
    leaves = f"leaves {shot_name(told, before)} and, {when}," if before is not None and before.by != step.hitter else ""
    where = travels(told, start.good, owner(told, (step.hitter,)))
    ball = f"hits a second ball {where}" if step.shot.stroke == "racket feed" else f"{deed(told, step)} {where}"
    return f"{who} {leaves} {ball}" if leaves else f"{when}, {who} {ball}"


def _choice(told: Telling, step: Step) -> Sentence:
    """Return one sentence for all that may be played at this point."""
    rivals = [other for id in _rivals(told, step) if (other := told.sequence.step(id)) is not None]
    hitters = list(dict.fromkeys(other.hitter for other in rivals))
    clauses = []
    for hitter in hitters:
        deeds = _merged_deeds([_option(told, other) for other in rivals if other.hitter == hitter])
        clauses.append(f"{letter(told, hitter)} {listed(deeds, 'or')}")
    text = ", or ".join(clauses)
    caller = next((other.shot.called_by for other in rivals if other.shot.called_by is not None), None)
    if caller is not None:
        text = f"{text}; {letter(told, caller)} calls which"
    notes = [own_text(told, other.shot.note) for other in rivals]
    words = sentences_of(text, *dict.fromkeys(notes))
    lead = Lead("feed" if step.feed else "choice", str(step.digit))
    return sentence(f"shot:{step.shot.id}", words, *(o.shot.id for o in rivals), lead=lead)


def _option(told: Telling, step: Step) -> str:
    label = own_text(told, step.shot.label)
    if label and step.shot.stroke in (None, "drive") and step.shot.wing is None:
        return f"plays {'an' if label[0].lower() in 'aeiou' else 'a'} {label}"
    return deed(told, step)


def _merged_deeds(deeds: list[str]) -> list[str]:
    """Return deeds each once; one that stands twice goes to either side, a verb in common is said once."""
    once = [f"{deed} to either side" if deeds.count(deed) > 1 else deed for deed in dict.fromkeys(deeds)]
    first = once[0].split(" ", 1)[0]
    return [once[0], *(deed.removeprefix(f"{first} ") if deed != first else deed for deed in once[1:])]


def _plain_form(verb: str) -> str:
    """Return the form of a verb phrase that stands after "may": "plays wide" as "play wide"."""
    word, space, rest = verb.partition(" ")
    return f"{word[:-2] if word == 'smashes' else word.removesuffix('s')}{space}{rest}"


def _may(told: Telling, step: Step) -> str:
    """Return "may" where another shot of the same person is asked for in the same part until the hitter chooses."""
    part = _later_part(told, step)
    return "" if part is None else "may"


def _later_part(told: Telling, step: Step) -> Part | None:
    """Return the restricted part in which this shot first comes up beside shots of the hitter from an earlier part."""
    earlier: set[str] = set()
    for part in parts(told.setting):
        own = {id for id in part.shots if (shot := told.setting.shots.get(id)) is not None and shot.by == step.hitter}
        if step.shot.id in part.shots and step.shot.id not in earlier and own & earlier and part.kind == "forced":
            return part
        earlier |= set(part.shots)
    return None


def _from(told: Telling, step: Step) -> str:
    """Return from when on a shot may be played, where a part before it counts hits: "From A's third hit on, "."""
    part = _later_part(told, step)
    if part is None:
        return ""
    order = parts(told.setting)
    before = order[order.index(part) - 1] if order.index(part) > 0 else None
    for event in before.until if before is not None else ():
        if event.what == "played" and event.count and event.by == (step.hitter,):
            return f"from {letter(told, step.hitter)}'s {ordinal(event.count + 1)} hit on, "
        return f"{trigger(told, event)}, "
    return ""


def _moving(told: Telling, step: Step, merged: set[str]) -> str:
    """Return "moves in and " where the hitter has run to this ball while it came; the run is then said."""
    before = told.sequence.step(told.sequence.before.get(step.shot.id) or "")
    if before is None or step.feed:
        return ""
    for run in before.runs:
        if run.by == step.hitter and run.purpose in (None, "reach") and run.id not in merged and not run.note:
            merged.add(run.id)
            return f"{_way(told, run)} and "
    return ""


def _way(told: Telling, run: Run) -> str:
    path = told.sequence.run_paths.get(run.id)
    if path is None:
        return "runs"
    across = abs(path[-1][0] - path[0][0])
    forward = abs(path[0][1]) - abs(path[-1][1])
    if forward > max(across, _MOVES):
        return "moves in"
    if -forward > max(across, _MOVES):
        return "goes back"
    wide = abs(path[-1][0]) > told.ground.singles * 2 / 3
    return "runs wide" if wide else "moves across" if across > _MOVES else "steps to the ball"


def _runs(told: Telling, step: Step, merged: set[str]) -> Iterator[Sentence]:
    """Yield the runs during a ball that are no part of reaching the next one."""
    following = told.sequence.following(step.shot.id)
    for run in step.runs:
        reaches = run.purpose in (None, "reach") and not run.note
        if run.id in merged or (
            reaches and len(following) == 1 and following[0].hitter == run.by and not following[0].feed
        ):
            continue
        lead = Lead("recover" if run.purpose == "recover" else "run")
        words = sentences_of(_run(told, run), own_text(told, run.note))
        yield sentence(f"run:{run.id}", words, run.id, lead=lead)


def _run(told: Telling, run: Run) -> str:
    who = letter(told, run.by)
    goal = name_of(told, run.to.on) if run.to.on is not None else None
    own = run.to.on == run.by
    if goal is not None and not own:
        return f"{who} {'recovers' if run.purpose == 'recover' else 'goes'} to {goal}"
    end = locate(told.setting, run.to)
    line = told.ground.service_line
    at_net = end is not None and line is not None and abs(end[1]) < line
    if run.purpose == "recover":
        return (
            f"{who} recovers to {'the start' if own else 'the middle'}"
            if own or (end and abs(end[0]) < 1)
            else f"{who} recovers"
        )
    if at_net and run.purpose == "approach":
        already = _starts_at_net(told, run)
        return f"{who} steps across" if already else f"{who} goes on to the net"
    if run.purpose == "retreat":
        return f"{who} goes back"
    return f"{who} {_way(told, run)}"


def _starts_at_net(told: Telling, run: Run) -> bool:
    path = told.sequence.run_paths.get(run.id)
    line = told.ground.service_line
    return path is not None and line is not None and abs(path[0][1]) < line


def _opening(told: Telling) -> Iterator[Sentence]:
    """Yield the sentence of the flag: from when on who is free."""
    found = opening_part(told.setting)
    if found is None:
        return
    restricted, opened = found
    whens = [
        "from here" if event.what == "played" and event.of and not event.where else trigger(told, event)
        for event in restricted.until
    ]
    when = listed(list(dict.fromkeys(whens)), "or") or "from here"
    comma = "" if when.startswith(("from", "after")) else ","
    words = sentences_of(f"{when}{comma} {_free(told)}", own_text(told, opened.note))
    yield sentence(f"part:{opened.id}", words, opened.id, restricted.id, lead=Lead("open"))


def _free(told: Telling) -> str:
    return "both play the point out" if len(told.playing) == 2 else "all play the point out"


def _end(told: Telling) -> Iterator[Sentence]:
    """Yield how the play goes on after what is drawn, where no flag has said it."""
    order = parts(told.setting)
    if opening_part(told.setting) is not None:
        yield from _opening(told)
        return
    opened = next((part for part in order if part.kind == "open"), None)
    if opened is not None:
        words = sentences_of(_free(told), own_text(told, opened.note))
        yield sentence(f"part:{opened.id}", words, opened.id, lead=Lead("open"))
        return
    for part in order:
        yield from _together(told, part)
    if not order and told.setting.shots and any(e.what == "won" for p in told.setting.points.values() for e in p.on):
        yield sentence("steps:out", _free(told), lead=Lead("open"))


def _together(told: Telling, part: Part) -> Iterator[Sentence]:
    """Yield how a part goes on that never opens: carried on in turn, or until something happens."""
    ends = [trigger(told, event).removeprefix("once ") for event in part.until if event.what != "reached"]
    text = listed(ends, "or") if ends else "carry on in turn" if part.kind == "cooperative" else ""
    words = sentences_of(text, own_text(told, part.note))
    if unmarked(words):
        yield sentence(f"part:{part.id}", words, part.id, lead=Lead("bullet"))
