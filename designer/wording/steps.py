"""What happens, ball by ball, with the digits of the diagram."""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import Final

from designer.drill.movement import SERVES
from designer.drill.rules import Part
from designer.play.rally import opening_part, opening_shot
from designer.play.sequence import Step
from designer.wording.bounds import astray
from designer.wording.branches import branch_words, option_words
from designer.wording.counts import listed, ordinal
from designer.wording.events import trigger
from designer.wording.names import letter, shot_name
from designer.wording.openings import opens_when
from designer.wording.people import owner
from designer.wording.runs import moving, runs
from designer.wording.sentence import Lead, Sentence, sentence, sentences_of, unmarked
from designer.wording.settled import events
from designer.wording.starts import is_numbered, later_words
from designer.wording.strokes import deed
from designer.wording.telling import Telling, once
from designer.wording.tokens import own_text
from designer.wording.where import travels

Rivals = tuple[Step, ...]
"""The shots of which one is played at a point of the rally: one, or alternatives of one another."""


@once
def steps(told: Telling) -> tuple[Sentence, ...]:
    """Return the steps in order of play: a sentence for each ball, each choice, each run and the opening."""
    opens_after = opening_shot(told.setting, told.sequence)
    found: list[Sentence] = []
    merged: set[str] = set()
    said_open = False
    for group in _by_digit(told):
        if told.brief and _said_elsewhere(told, group):
            if not group[0][0].feed and not said_open:
                found += _end(told)  # in place of the balls that may go anywhere
                said_open = True
            continue
        again = _again(told, group, found[-1] if found else None) if told.brief and not said_open else None
        if again is not None:
            found[-1] = again
            continue
        opens = any(step.shot.id == opens_after for rivals in group for step in rivals)
        found += _balls(told, group, merged)
        if opens:
            found += _opening(told)
            said_open = True
        for rivals in group:
            for step in rivals:
                found += runs(told, step, merged)
    found += _end(told) if not said_open else ()
    return tuple(found)


def _said_elsewhere(told: Telling, group: list[Rivals]) -> bool:
    """Whether a player's card says this ball in another place.

    The feed is the first sentence of the start; a ball that may go anywhere in a point that is on needs no step.
    """
    if len(group) > 1 or len(group[0]) > 1:
        return False
    step = group[0][0]
    if not step.feed:
        return bool(_at_once(told)) and _is_plain(told, step) and deed(told, step) == "plays anywhere"
    return any(is_numbered(told, start) and start.shot == step.shot.id for start in told.first_starts)


def _again(told: Telling, group: list[Rivals], last: Sentence | None) -> Sentence | None:
    """Return the last sentence with this ball taken in, where it is played just as the ball before; else None.

    For a player's card: "2–5 A and B play cross-court in turn".
    """
    step = group[0][0]
    before = told.sequence.step(told.sequence.before.get(step.shot.id) or "")
    if last is None or before is None or len(group) > 1 or len(group[0]) > 1:
        return None
    said = [told.setting.shots[id] for id in last.about if id in told.setting.shots]
    if not (_is_plain(told, step) and _is_plain(told, before)) or said[-1:] != [before.shot]:
        return None
    if _way(told, step) != _way(told, before) or not _way(told, step) or step.hitter == before.hitter:
        return None
    shots = [*said, step.shot]
    if len(shots) > 2 and step.hitter != shots[-3].by:
        return None
    digit = told.digit(shots[0].id)
    who = " and ".join(letter(told, one) for one in sorted({shot.by for shot in shots}))
    verb, _, rest = deed(told, step).partition(" ")
    words = f"{who} {_bare(verb)} {rest} in turn"
    return sentence(last.key, words, *(shot.id for shot in shots), lead=Lead("hit", f"{digit}–{step.digit}"))


def _is_plain(told: Telling, step: Step) -> bool:
    """Whether a ball is only a hit: no feed, note, choice or run, and the point not opened by it."""
    opens = opening_shot(told.setting, told.sequence) == step.shot.id
    bare = not (step.feed or step.alternatives or step.runs or step.shot.note or step.shot.called_by or opens)
    return bare and not may_play(told, step)


def _way(told: Telling, step: Step) -> str:
    """Return how a ball is played if that names neither person nor end: "plays cross-court"."""
    words = deed(told, step)
    return "" if "\x01" in words else words


def _by_digit(told: Telling) -> list[list[Rivals]]:
    """Return the shots digit by digit, alternatives together."""
    groups: dict[int, dict[str, Rivals]] = {}
    for step in told.sequence.steps:
        rivals = _rivals(told, step)
        groups.setdefault(step.digit, {}).setdefault(rivals[0].shot.id, rivals)
    return [list(groups[digit].values()) for digit in sorted(groups)]


def _rivals(told: Telling, step: Step) -> Rivals:
    before = told.sequence.before.get(step.shot.id)
    found = tuple(
        other
        for other in told.sequence.steps
        if other.alternatives
        and told.sequence.before.get(other.shot.id) == before
        and (before is not None or other.hitter == step.hitter)
    )
    return found if step.alternatives and found else (step,)


def _balls(told: Telling, group: list[Rivals], merged: set[str]) -> Iterator[Sentence]:
    """Yield the balls of one digit: those of several branches once where they are the same, else each with its branch."""
    said: dict[str, list[Rivals]] = {}
    bare = {f"{letter(told, step.hitter)} {deed(told, step)}" for rivals in group for step in rivals}
    alike = told.brief and len(group) > 1 and len(bare) == 1
    for rivals in group:
        text = (
            bare.copy().pop()  # the ways to it are on the diagram
            if alike
            else _choice(told, rivals)
            if len(rivals) > 1
            else _ball(told, rivals[0], merged if len(group) == 1 else set())
        )
        said.setdefault(text, []).append(rivals)
    for text, (rivals, *others) in said.items():
        prefix = branch_words(told, rivals[0]) if len(said) > 1 else ""
        if prefix == "" and len(said) > 1 and rivals is not group[0]:
            prefix = "at the same time, " if rivals[0].digit == 1 else ""
        yield _sentence(told, rivals, f"{prefix}{text}", (*rivals, *(step for other in others for step in other)))


def _sentence(told: Telling, rivals: Rivals, text: str, alike: Rivals) -> Sentence:
    """Return the sentence of ``rivals``, which says all that is fed later among the balls ``alike`` too."""
    step = rivals[0]
    lead = Lead("feed" if step.feed else "choice" if len(rivals) > 1 else "hit", str(step.digit))
    caller = next((one.shot.called_by for one in rivals if one.shot.called_by is not None), None)
    says = f"{letter(told, caller)} calls {'which' if len(rivals) > 1 else 'it'}" if caller is not None else ""
    part, _ = optional_part(told, step)
    notes = dict.fromkeys(
        [*([own_text(told, part.note)] if part else []), *(own_text(told, one.shot.note) for one in rivals)]
    )
    later = [start for start in told.later_starts if start.shot in {one.shot.id for one in alike}]
    bad = () if told.brief else dict.fromkeys(words for start in later for words in later_words(told, start))
    missed = [astray(told, one.shot.id) for one in rivals] if told.brief else []
    words = sentences_of(text, says, *bad, *notes, *dict.fromkeys(words for each in missed for words in each.words))
    ids = (
        *(one.shot.id for one in rivals),
        *(start.id for start in later),
        *(id for each in missed for id in each.about),
    )
    return sentence(f"shot:{step.shot.id}", words, *ids, lead=lead)


def _ball(told: Telling, step: Step, merged: set[str]) -> str:
    if any(start.shot == step.shot.id for start in told.later_starts):
        return _second_ball(told, step)
    optional = may_play(told, step)
    if optional:
        return optional
    first = any(start.shot == step.shot.id for start in told.first_starts)
    what = deed(told, step, with_pace=not (step.feed and first))
    if told.brief and _is_example(told, step):
        # Where it goes is on the diagram; here it is only what may come.
        what = re.sub(r" (?:into|in|through|past) .*", "", what)
    example = "for example, " if _is_example(told, step) else ""
    return f"{example}{letter(told, step.hitter)} {moving(told, step, merged)}{what}"


def _is_example(told: Telling, step: Step) -> bool:
    """Whether a ball is drawn to show what may come in a point that is on: after the first hit, and no record names it."""
    if step.feed or step.hit < 3 or not _at_once(told) or deed(told, step) == "plays anywhere":
        return False
    named: set[str] = set()
    for rule in told.setting.rules.values():
        named.update(rule.of)
    for event in events(told):
        named.update(event.of)
    return step.shot.id not in named and not any(step.shot.id in part.shots for part in told.parts)


def _second_ball(told: Telling, step: Step) -> str:
    """Return the sentence of a ball that is fed later in the rally, with when and where."""
    start = next(start for start in told.later_starts if start.shot == step.shot.id)
    who = letter(told, step.hitter)
    when = trigger(told, start.once) if start.once is not None else ""
    before = told.setting.shots.get(told.sequence.before.get(step.shot.id) or "")
    where = travels(told, start.good, owner(told, (step.hitter,)))
    ball = f"hits a new ball {where}" if step.shot.stroke == "racket feed" else f"{deed(told, step)} {where}"
    if before is not None and before.by != step.hitter:
        return sentences_of(f"{who} lets {shot_name(told, before)} go", f"{when}, {who} {ball}")
    return f"{when}, {who} {ball}"


def _choice(told: Telling, rivals: Rivals) -> str:
    """Return one clause for all that may be played at this point: "B plays a pass to either side or lobs"."""
    clauses = []
    for hitter in dict.fromkeys(step.hitter for step in rivals):
        deeds = _each_once([option_words(told, step) for step in rivals if step.hitter == hitter])
        clauses.append(f"{letter(told, hitter)} {listed(deeds, 'or')}")
    return ", or ".join(clauses)


def _each_once(deeds: list[str]) -> list[str]:
    """Return deeds each once; one that stands twice goes to either side, a verb in common is said once."""
    once = [f"{deed} to either side" if deeds.count(deed) > 1 else deed for deed in dict.fromkeys(deeds)]
    if len(once) == 2 and _other_half(once[0]) == once[1]:
        return [re.sub(r"into \S+ (?:left|right) half", "into either half", once[0])]
    first = f"{once[0].split(' ', 1)[0]} "
    return [once[0], *(deed.removeprefix(first) for deed in once[1:])]


def _other_half(words: str) -> str:
    swapped = {"left": "right", "right": "left"}
    return re.sub(r"\b(left|right) half\b", lambda found: f"{swapped[found[1]]} half", words)


def may_play(told: Telling, step: Step) -> str:
    """Return the sentence of a ball that its hitter may choose from some hit on; "" where it is no such ball.

    It stands in a restricted part that comes after one counting the hitter's own hits, and that ends when such a
    ball has landed somewhere: until then the hitter may go on as before.
    """
    part, before = optional_part(told, step)
    if part is None:
        return ""
    when = ""
    for event in before.until if before is not None else ():
        if event.what == "played" and event.count and event.by == (step.hitter,):
            when = f"from {letter(told, step.hitter)}'s {ordinal(event.count + 1)} hit on, "
    verb, space, rest = deed(told, step).partition(" ")
    if verb == "plays":
        where = travels(told, part.until[0].where, owner(told, (step.hitter,)))
        rest = where or rest
    return f"{when}{letter(told, step.hitter)} may {_bare(verb)}{space}{rest}"


def optional_part(told: Telling, step: Step) -> tuple[Part | None, Part | None]:
    """Return the part in which this ball may be chosen and the part before it, (None, None) where there is none."""
    before = None
    for part in told.parts:
        ends_on_landing = bool(part.until) and all(event.where for event in part.until)
        counts = before is not None and any(e.count and e.by == (step.hitter,) for e in before.until)
        asked_before = before is not None and step.shot.id in before.shots
        if part.kind == "forced" and step.shot.id in part.shots and ends_on_landing and counts and not asked_before:
            return part, before
        before = part
    return None, None


_BARE: Final = {"smashes": "smash", "does": "do"}


def _bare(verb: str) -> str:
    return _BARE.get(verb, verb.removesuffix("s"))


def _opening(told: Telling) -> Iterator[Sentence]:
    """Yield the sentence of the flag: from when on who is free."""
    found = opening_part(told.setting)
    if found is None:
        return
    restricted, opened = found
    when = (
        "once a ball lands there" if _is_optional_there(told, restricted) else opens_when(told, restricted, seen=True)
    )
    comma = "" if not when or when.startswith(("after", "from")) else ","
    notes = [own_text(told, part.note) for part in told.parts if part.id not in _noted(told)]
    words = sentences_of(f"{when}{comma} {free(told)}", *notes)
    yield sentence(f"part:{opened.id}", words, opened.id, restricted.id, lead=Lead("open"))


def _is_optional_there(told: Telling, part: Part) -> bool:
    """Whether a player has just read where a ball may go that opens the point, so that "there" is enough."""
    last = told.sequence.steps[-1] if told.sequence.steps else None
    return told.brief and last is not None and len(part.until) == 1 and optional_part(told, last)[0] == part


def _noted(told: Telling) -> set[str]:
    """Return the parts whose note stands with a ball that may be chosen in them."""
    found = (optional_part(told, step)[0] for step in told.sequence.steps)
    return {part.id for part in found if part is not None}


def free(told: Telling) -> str:
    """Return that the point is played out: "both play the point out"."""
    return "both play the point out" if len(told.playing) == 2 else "all play the point out"


def _end(told: Telling) -> Iterator[Sentence]:
    """Yield how the play goes on after what is drawn, where no flag has said it."""
    order = told.parts
    if opening_part(told.setting) is not None:
        yield from _opening(told)
        return
    opened = next((part for part in order if part.kind == "open"), None)
    if opened is not None:
        words = sentences_of(_at_once(told) or free(told), own_text(told, opened.note))
        left_out = [s.shot.id for s in told.sequence.steps if told.brief and _said_elsewhere(told, [(s,)])]
        yield sentence(f"part:{opened.id}", words, opened.id, *left_out, lead=Lead("open"))
        return
    for part in order:
        yield from _together(told, part)
    finish = told.setting.finish
    won = any(event.what == "won" for paid in told.setting.points.values() for event in paid.on)
    if not order and told.setting.shots and (won or (finish is not None and finish.kind in ("game", "tie-break"))):
        yield sentence("steps:out", free(told), lead=Lead("open"))


def _at_once(told: Telling) -> str:
    """Return from which ball on a rally that is open from its start counts: "from ball 2 both play the point out"."""
    if len(told.parts) > 1 or told.later_starts:
        return ""
    first = next((step for step in told.sequence.steps if not step.feed), None)
    served = any(step.shot.stroke in SERVES for step in told.sequence.steps)
    if first is None:
        return ""
    out = free(told).replace("the point", "it") if told.brief else free(told)
    return f"from {'the serve' if served else f'ball {first.digit}'} {out}"


def _together(told: Telling, part: Part) -> Iterator[Sentence]:
    """Yield how a part goes on that never opens: carried on in turn, or until something happens."""
    ends = [trigger(told, event).removeprefix("once ") for event in part.until if event.what != "reached"]
    text = listed(ends, "or") if ends else "carry on in turn" if part.kind == "cooperative" else ""
    words = sentences_of(text, own_text(told, part.note))
    if unmarked(words):
        yield sentence(f"part:{part.id}", words, part.id, lead=Lead("bullet"))
