"""The differences between a setting and the one below it, record by record, as clauses."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any, Final

from designer.drill.conditions import Event
from designer.drill.movement import SERVES
from designer.drill.rules import Rule, Start
from designer.play.rally import opening_part
from designer.wording.counts import listed, plural
from designer.wording.finishes import finish_head
from designer.wording.layout import layout_of
from designer.wording.moves import moved_items, moved_people
from designer.wording.musts import demand
from designer.wording.names import letter, shot_name, thing_name, without_article
from designer.wording.openings import opens_when
from designer.wording.outcomes import outcome
from designer.wording.points import points_words, value_words
from designer.wording.rules import doer_of, is_about_feed, rule_words, rules
from designer.wording.runs import run_words
from designer.wording.sentence import marked, unmarked
from designer.wording.starts import bad_words, is_serve, put_in
from designer.wording.steps import may_play, steps
from designer.wording.strokes import PACE, deed
from designer.wording.swaps import has_deeds, swap_words
from designer.wording.telling import Telling, once
from designer.wording.tokens import own_text

SHORT_RULE: Final = 24
"""A rule in fewer characters than this stands under a tab whole."""


@dataclass(frozen=True, slots=True)
class Change:
    """One difference: its words, the records it speaks of, how much it says (0 says most), and its gist.

    ``gist`` is what is said where there is little room, "" where it can then be left out; ``tab`` the few words that
    stand under a tab, "" for the gist; ``off`` the rules of the setting below that it says are none any more.
    """

    text: str
    about: tuple[str, ...]
    rank: int
    gist: str = ""
    tab: str = ""
    off: tuple[str, ...] = ()


@once
def changes(told: Telling) -> Iterator[Change]:
    """Yield what a setting changes over the one below it, in the order of a card."""
    yield from _court(told)
    yield from _items(told)
    for ids, words in moved_people(told):
        yield Change(words, ids, 6)
    yield from _starts(told)
    yield from _shots(told)
    yield from _runs(told)
    yield from _parts(told)
    yield from _rules(told)
    yield from _points(told)
    yield from _finish(told)
    yield from _swaps(told)


def _court(told: Telling) -> Iterator[Change]:
    old, new = told.below.setting, told.setting
    if old.in_play != new.in_play and new.in_play is not None:
        item = new.items.get(new.in_play)
        name = without_article(thing_name(told, item) or "") if item is not None else new.in_play
        yield Change(f"in play: {name}", (), 3, f"in play: {name}")
    if old.ball != new.ball and new.ball is not None:
        ball = own_text(told, new.ball)
        words = ball if ball.endswith("ball") else f"{ball} ball"
        yield Change(words, (), 2, words)


def _is_put_down(item: Any) -> bool:
    """Whether an item is carried to the court, not only thought of."""
    return not hasattr(item, "marked") or item.marked not in (None, "in thought", "painted")


def _items(told: Telling) -> Iterator[Change]:
    for ids, words in moved_items(told):
        yield Change(words, ids, 4, words)
    old, new = told.below.setting.items, told.setting.items
    added = [id for id in new if id not in old]
    for found in layout_of(told) if added else ():
        if found.about and found.about[0] in added:
            yield Change(marked(found), found.about, 7)
    gone = [item for id, item in old.items() if id not in new and _is_put_down(item)]
    kinds = [getattr(item, "kind", "") for item in gone]
    names = list(dict.fromkeys(_gone_name(told, item, kinds) for item in gone))
    if names:
        yield Change(f"no {listed(names, 'or')}", (), 7)


def _gone_name(told: Telling, item: Any, kinds: list[str]) -> str:
    kind = getattr(item, "kind", "")
    if kind in ("cone", "disc", "hoop") and kinds.count(kind) > 1:
        return plural(kind)
    return without_article(thing_name(told.below, item) or "thing")


def _starts(told: Telling) -> Iterator[Change]:
    old = told.below.setting.starts
    for start in told.first_starts:
        before = old.get(start.id)
        words = put_in(told, start)
        if before is None or (put_in(told.below, before) != words and not _only_pace(told, start.shot)):
            fault = f"; {bad_words(told, start)}" if is_serve(told, start) and start.bad is not None else ""
            yield Change(f"{words}{fault}", (start.id,), 1, f"{words}{fault}", _tab_of_start(told, start) or words)
        elif bad_words(told.below, before) != bad_words(told, start):
            yield Change(bad_words(told, start) or "no longer said: what a bad feed costs", (start.id,), 5)


def _tab_of_start(told: Telling, start: Start) -> str:
    """Return a serve in two words for a tab: "second serve"."""
    shot = told.setting.shots.get(start.shot or "")
    return str(shot.stroke) if shot is not None and is_serve(told, start) and shot.stroke in SERVES else ""


def _only_pace(told: Telling, shot_id: str | None) -> bool:
    """Whether nothing but its pace differs between a shot and the same one below."""
    old, new = told.below.setting.shots.get(shot_id or ""), told.setting.shots.get(shot_id or "")
    return old is not None and new is not None and old != new and old.changed(pace=new.pace) == new


def _shots(told: Telling) -> Iterator[Change]:
    old, new = told.below.setting.shots, told.setting.shots
    yield from _paces(told)
    choices = list(_choices(told))
    yield from choices
    chosen = {id for choice in choices for id in choice.about}
    started = {start.shot for start in told.first_starts}
    later = {start.shot for start in told.later_starts}
    for step in told.sequence.steps:
        id = step.shot.id
        if id in started or id in chosen or not old or _only_pace(told, id) or old.get(id) == step.shot:
            continue
        who = letter(told, step.hitter)
        before = told.below.sequence.step(id)
        if id in later and before is None:
            yield Change(f"{who} hits a second ball", (id,), 1, f"{who} hits a second ball")
        elif before is None or deed(told.below, before) != deed(told, step):
            optional = may_play(told, step)
            yield Change(optional or f"{who} {deed(told, step)}", (id,), 3, optional)
    for id in old:
        if id not in new and any(start.shot == id for start in told.below.later_starts):
            yield Change("no second ball", (), 1, "no second ball")


def _choices(told: Telling) -> Iterator[Change]:
    """Yield the choices that were not there before, or were of other balls."""
    before = {found.text for found in steps(told.below)}
    for found in steps(told):
        if found.lead is not None and found.lead.kind == "choice" and found.text not in before:
            yield Change(marked(found), found.about, 3, marked(found))


def _paces(told: Telling) -> Iterator[Change]:
    """Yield the pace of those whose balls differ in nothing else: "B plays at half pace"."""
    paces: dict[tuple[str, str], list[str]] = {}
    for id, shot in told.setting.shots.items():
        if _only_pace(told, id) and shot.pace is not None:
            paces.setdefault((shot.by, shot.pace), []).append(id)
    for (hitter, pace), ids in paces.items():
        words = f"{letter(told, hitter)} plays {PACE[pace]}"
        yield Change(words, tuple(ids), 4, words)


def _runs(told: Telling) -> Iterator[Change]:
    """Yield the runs that are new while their ball is not."""
    old = told.below.setting
    for id, run in told.setting.runs.items():
        shot = told.setting.shots.get(run.during or "")
        if id not in old.runs and shot is not None and shot.id in old.shots:
            yield Change(f"{run_words(told, run)} as soon as {shot_name(told, shot)} is hit", (id,), 4)


def _parts(told: Telling) -> Iterator[Change]:
    old, new = told.below.setting, told.setting
    was, now = opening_part(old), opening_part(new)
    opens = any(part.kind == "open" for part in new.parts.values())
    if now is not None and (was is None or was[0].until != now[0].until):
        whens = opens_when(told, now[0])
        text = f"the point opens {whens}" if whens else "then the point is open"
        yield Change(text, (now[0].id, now[1].id), 0, text, text.removeprefix("the point ").split(" (")[0])
        if was is None and now[0].failed is not None and now[0].failed.then != "lose the point":
            missed = f"until then a miss: {outcome(told, now[0].failed)}"
            yield Change(missed, (now[0].id,), 4, missed)
    elif now is None and opens and (was is not None or told.below.cooperative):
        served = any(is_serve(told, start) for start in told.first_starts)
        first = "return" if served else "first hit after the feed"
        text = f"the point is open from the {first}"
        yield Change(text, (), 0, text, text.removeprefix("the point is "))
    for id, part in new.parts.items():
        before = old.parts.get(id)
        if before is None or part.kind == "open":
            continue
        if before.failed != part.failed and part.failed is not None and before.kind == part.kind:
            yield Change(f"a miss: {outcome(told, part.failed)}", (id,), 3, f"a miss: {outcome(told, part.failed)}")
        if (now is None or now[0].id != id) and before.until != part.until:
            yield from _later_choice(told)


def _later_choice(told: Telling) -> Iterator[Change]:
    """Yield from when on a ball may be chosen, where that has changed though the ball has not."""
    for step in told.sequence.steps:
        words = may_play(told, step)
        before = told.below.sequence.step(step.shot.id)
        if words and before is not None and before.shot == step.shot and may_play(told.below, before) != words:
            yield Change(words, (step.shot.id,), 2, words)


def _rules(told: Telling) -> Iterator[Change]:
    old, new = told.below.setting.rules, told.setting.rules
    before = {found.key: found.text for found in rules(told.below)}
    for found in rules(told):
        rule = new.get(found.about[0]) if found.key.startswith("rule:") and found.about else None
        if rule is None or before.get(found.key) == found.text or old.get(rule.id) == rule:
            continue
        twins = [new[id] for id in found.about[1:] if id in new]
        general = rule.changed(who=()) if twins else rule
        gist = rule_words(told, general)
        below = old.get(rule.id)
        if below is not None and below.changed(breach=rule.breach, note=rule.note) == rule:
            cost = outcome(told, rule.breach, doer_of(told, general)) if rule.breach is not None else "costs nothing"
            yield Change(f"{rule_words(told, general, cost=False)}: {cost}", (rule.id,), 5)
        elif below is not None and below.changed(note=rule.note) == rule:
            continue
        else:
            asked = demand(told, general, doer_of(told, general))
            tab = gist if asked.forbidden and rule.breach is not None else asked.text
            yield Change(marked(found), found.about, 1 if below is None else 3, gist, tab)
    yield from _rules_off(told)


def _rules_off(told: Telling) -> Iterator[Change]:
    old, new = told.below.setting.rules, told.setting.rules
    gone = [rule for id, rule in old.items() if id not in new and not _without_subject(told, rule)]
    shared = {found.about for found in rules(told.below) if len([id for id in found.about if id in old]) > 1}
    said: set[str] = set()
    for rule in gone:
        if rule.id in said:
            continue
        twins = next((ids for ids in shared if rule.id in ids), (rule.id,))
        said |= set(twins)
        general = rule.changed(who=()) if len(twins) > 1 else rule
        words = unmarked(rule_words(told.below, general, cost=False))
        forbidden = demand(told.below, general, doer_of(told.below, general)).forbidden
        head = "allowed again" if forbidden else "no longer a rule"
        yield Change(
            f"{head}: {words}",
            (),
            3,
            f"{head}: {words}",
            f"{head}: {words}" if len(words) < SHORT_RULE else "a rule off",
            off=tuple(twins),
        )


def _without_subject(told: Telling, rule: Rule) -> bool:
    """Whether what a rule was about is gone with it: its part, its balls, the feed."""
    setting = told.setting
    if is_about_feed(told.below, rule):
        return True
    named = [*rule.of, *(id for event in rule.when if isinstance(event, Event) for id in event.of)]
    parts_gone = bool(rule.parts) and all(id not in setting.parts for id in rule.parts)
    return parts_gone or (bool(named) and all(id not in setting.shots for id in named))


def _points(told: Telling) -> Iterator[Change]:
    old = told.below.setting.points
    for id, record in told.setting.points.items():
        if record.gives.then != "points" or old.get(id) == record:
            continue
        below = old.get(id)
        words = points_words(told, [record])
        if below is not None and words == points_words(told.below, [below]) and below.gives == record.gives:
            continue
        text = f"{value_words(record)} {words}"
        if (
            below is not None
            and below.changed(gives=record.gives) == record
            and value_words(below) != value_words(record)
        ):
            value = f"{value_words(record)} in place of {value_words(below)}"
            earned = words.removeprefix("instead: ").removeprefix("instead, for each: ")
            yield Change(f"{earned}: {value}", (id,), 2, value)
            continue
        plain = record.beside is None and (words == "rally won" or words.startswith("rally won, for"))
        yield Change(text, (id,), 2, "" if plain else text)


def _finish(told: Telling) -> Iterator[Change]:
    old, new = told.below.setting.finish, told.setting.finish
    if new is None or new == old:
        return
    words = finish_head(told, new)
    if old is not None and words == finish_head(told.below, old):
        return
    if old is not None and old.kind == new.kind and old.changed(to=new.to) == new and old.to is not None:
        words = f"{words.split(';')[0].split(' from ')[0]}, not {old.to}"
    yield Change(words, (new.id,), 5, words)


def _swaps(told: Telling) -> Iterator[Change]:
    for id, swap in told.setting.swaps.items():
        before = told.below.setting.swaps.get(id)
        if before is None or before.changed(note=swap.note) != swap or not has_deeds(swap):
            words = swap_words(told, swap)
            if words and (before is None or words != swap_words(told.below, before)):
                yield Change(words, (id,), 8)
