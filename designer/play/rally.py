"""The parts of a rally, where it opens, what each area is for, and who takes whose job at a swap."""

from __future__ import annotations

import itertools
from collections.abc import Iterable, Iterator, Mapping
from typing import Final, Literal

from designer.drill.base import Letter
from designer.drill.conditions import Event, In
from designer.drill.items import Area, Hoop, Line
from designer.drill.movement import FEEDS
from designer.drill.rules import Keep, Part, Rule, Swap
from designer.drill.setting import Setting
from designer.play.sequence import Sequence, Step

Role = Literal["target", "feed", "keep out", "rule"]

_ORDER: Final = ("cooperative", "forced", "open")


def parts(setting: Setting) -> tuple[Part, ...]:
    """Return the parts of a rally in order: each after the one it names, else cooperative, forced, open."""
    waiting = sorted(setting.parts.values(), key=lambda part: (_ORDER.index(part.kind), part.id))
    order: list[Part] = []
    while waiting:
        placed = {part.id for part in order}
        ready = [p for p in waiting if p.after is None or p.after in placed or p.after not in setting.parts]
        # Parts that name one another in a circle keep the order of their kinds; the review says so.
        chosen = next((p for p in ready if order and p.after == order[-1].id), (ready or waiting)[0])
        order.append(chosen)
        waiting.remove(chosen)
    return tuple(order)


def opening_part(setting: Setting) -> tuple[Part, Part] | None:
    """Return the last restricted part and the open one after it, None where a rally never opens or is open at once."""
    order = parts(setting)
    for earlier, part in itertools.pairwise(order):
        if part.kind == "open" and earlier.kind != "open":
            return earlier, part
    return None


def opening_shot(setting: Setting, sequence: Sequence) -> str | None:
    """Return the last restricted shot, after which the point is open; None where no drawn shot opens it."""
    found = opening_part(setting)
    if found is None:
        return None
    restricted, _ = found
    for event in restricted.until:
        steps = list(_ending(setting, sequence, event))
        if steps:
            return _last(steps)
    drawn = [step for id in restricted.shots if (step := sequence.step(id)) is not None]
    counts = [event.count for event in restricted.until if event.count is not None]
    if counts:
        nth = [step for step in sequence.steps if step.hit == counts[0] and not step.feed]
        return _last(nth) if nth else _last(drawn)
    return _last(drawn)


def _ending(setting: Setting, sequence: Sequence, event: Event) -> Iterator[Step]:
    """Yield the drawn shots in which ``event`` happens."""
    for id in event.of:
        run = setting.runs.get(id)
        step = sequence.step(id if run is None else run.during or "")
        if step is not None:
            yield step


def _last(steps: Iterable[Step]) -> str | None:
    order = sorted(steps, key=lambda step: step.digit)
    # Of alternatives the first in order of play carries the flag.
    return next((step.shot.id for step in order if step.digit == order[-1].digit), None) if order else None


def area_roles(setting: Setting) -> dict[str, Role]:
    """Return what each area, and each line or hoop that something names, is for.

    "keep out": no foot may be there. "target": a ball put there is asked for or paid. "feed": the ball that starts a
    rally goes there. "rule": anything else. An area that is two of these is the one named first here.
    """
    named: dict[str, set[Role]] = {item.id: set() for item in setting.items.values() if isinstance(item, Area)}
    for id, role in _uses(setting):
        if isinstance(setting.items.get(id), Area | Line | Hoop):
            named.setdefault(id, set()).add(role)
    order: tuple[Role, ...] = ("keep out", "target", "feed")
    return {id: next((role for role in order if role in roles), "rule") for id, roles in named.items()}


def _uses(setting: Setting) -> Iterator[tuple[str, Role]]:
    for shot in setting.shots.values():
        if shot.to is not None and shot.to.on is not None:
            yield shot.to.on, "feed" if shot.stroke in FEEDS else "target"
    for start in setting.starts.values():
        yield from ((place.area, "feed") for place in start.good)
    for rule in setting.rules.values():
        yield from _uses_of_rule(rule)
    for paid in setting.points.values():
        gives = paid.gives.then == "points"
        for event in paid.on:
            yield from _uses_of_event(event, "target" if gives else "rule")
    for part in setting.parts.values():
        for event in part.until:
            yield from _uses_of_event(event, "target")


def _uses_of_rule(rule: Rule) -> Iterator[tuple[str, Role]]:
    for condition in rule.when:
        if isinstance(condition, In):
            yield condition.area, "rule"
        else:
            yield from _uses_of_event(condition, "rule")
    if isinstance(rule.must, Keep):
        for place in rule.must.where:
            away = place.outside != rule.never
            if place.judged in ("one foot", "both feet"):
                yield place.area, "keep out" if away and place.side is None else "rule"
            else:
                yield place.area, "rule" if away else "target"


def _uses_of_event(event: Event, role: Role) -> Iterator[tuple[str, Role]]:
    for place in event.where:
        feet = place.judged in ("one foot", "both feet")
        yield place.area, "rule" if feet or place.outside else role
    for place in event.when:
        yield place.area, "rule"
    for inner in event.and_:
        yield from _uses_of_event(inner, role)


def area_value(setting: Setting, area: str) -> int | None:
    """Return the points that a ball in ``area`` is paid, None where none or several amounts are."""
    values = {
        paid.gives.value
        for paid in setting.points.values()
        if paid.gives.then == "points"
        and paid.gives.value is not None
        and any((area, "target") in set(_uses_of_event(event, "target")) for event in paid.on)
    }
    return values.pop() if len(values) == 1 else None


def jobs_after(setting: Setting, swap: Swap, turn: int = 1) -> Mapping[Letter, Letter]:
    """Return, for each letter on court, the job that its person takes at the ``turn``-th swap (counted from 1).

    A job that nobody holds is passed over: the person goes on to the next. Who moves as winner or loser is not known
    before the rally, so those moves are left out.
    """
    held = {spot.job for spot in setting.spots.values()}
    if swap.table:
        return _from_table(swap, turn, held)
    moves = {old: new for old, new in swap.moves.items() if len(old) == 1 and len(new) == 1}
    after: dict[Letter, Letter] = {}
    for letter in sorted(held):
        job, passed = letter, {letter}
        while (job := moves.get(job, job)) not in held and job not in passed:
            passed.add(job)
        after[letter] = job if job in held else letter
    return after


def _from_table(swap: Swap, turn: int, held: set[Letter]) -> dict[Letter, Letter]:
    """Return the jobs from one row of the table to the next; a row gives the people in the order of the jobs."""
    jobs = sorted(held)
    rows = swap.table
    if not 1 <= turn < len(rows):
        return {job: job for job in jobs}
    earlier, later = rows[turn - 1], rows[turn]
    job_of = dict(zip(later, jobs, strict=False))
    return {job: job_of.get(person, job) for job, person in zip(jobs, earlier, strict=False)}
