"""The parts of a rally, where it opens, what each area is for, and who takes whose job at a swap."""

from __future__ import annotations

import itertools
from collections.abc import Iterable, Iterator, Mapping
from typing import Final, Literal

from designer.court.regions import end_of, line_by_words, region
from designer.drill.base import ON_THE_LINE, Letter, Point
from designer.drill.conditions import Event, In
from designer.drill.items import Area, Hoop, Line
from designer.drill.movement import FEEDS, Run
from designer.drill.places import is_letter
from designer.drill.rules import Keep, Part, Rule, Swap
from designer.drill.setting import Setting
from designer.play.layout import points_of, things_placed
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
    """Return the last restricted shot, after which the point is open; None where no drawn shot opens it.

    It is the shot in which the restricted part ends: one that is named, one that lands where it says, or one that is
    counted. Of a count that goes on past what is drawn it is the last restricted shot that is.
    """
    found = opening_part(setting)
    if found is None:
        return None
    restricted, _ = found
    drawn = [step for id in restricted.shots if (step := sequence.step(id)) is not None]
    for event in restricted.until:
        named = list(_ending(setting, sequence, event))
        if named:
            return _last(named)
        if event.where and event.count is None:
            return _last(step for step in drawn or sequence.steps if _fulfils(setting, sequence, step, event))
    counts = [event.count for event in restricted.until if event.count is not None]
    nth = [step for step in sequence.steps if counts and step.hit == counts[0] and not step.feed]
    return _last(nth or drawn)


def _fulfils(setting: Setting, sequence: Sequence, step: Step, event: Event) -> bool:
    """Whether a drawn shot is the ball that ``event`` tells of: by whom, and where it lands."""
    letters = [who for who in event.by if is_letter(who)]
    if step.feed or step.landing is None or (letters and step.hitter not in letters):
        return False
    landing = step.landing
    return all(_lies_in(setting, sequence, landing, place) != place.outside for place in event.where)


def _lies_in(setting: Setting, sequence: Sequence, point: Point, place: In) -> bool:
    """Whether ``point`` is in an area, a region of its end, or on the asked side of a line across the court."""
    end = end_of(point) or "near"
    item = setting.items.get(place.area)
    if item is None:
        corners = region(sequence.ground, place.area, end) or line_by_words(sequence.ground, place.area, end) or ()
        outlines = [corners]
    else:
        outlines = [points_of(setting, each, turned=turned) for each, turned in things_placed(setting) if each is item]
    return any(_within(point, corners, place.side) for corners in outlines if corners)


def _within(point: Point, corners: tuple[Point, ...], side: str | None) -> bool:
    across, along = [x for x, _ in corners], [y for _, y in corners]
    if side is not None:
        # A line across the court at the same end; behind it is farther from the net.
        line = sum(along) / len(along)
        return line * point[1] > 0 and (abs(point[1]) > abs(line)) == (side == "behind")
    slack = ON_THE_LINE
    return (
        min(across) - slack <= point[0] <= max(across) + slack and min(along) - slack <= point[1] <= max(along) + slack
    )


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


def judged_by(setting: Setting) -> frozenset[str]:
    """Return what a rule, a payment or the opening of the point depends on: ids of things and words of the court.

    What a ball is only drawn to, and where a feed should land, decide no rally.
    """
    found = [use for rule in setting.rules.values() for use in _uses_of_rule(rule)]
    events = [event for paid in setting.points.values() for event in paid.on]
    events += [event for part in setting.parts.values() for event in part.until]
    return frozenset(id for id, _ in (*found, *(use for event in events for use in _uses_of_event(event, "rule"))))


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
    """Return the points that a ball in ``area`` is paid by itself, None where there are none or several amounts.

    What is paid only together with something else, such as winning the rally, is no value of the area.
    """
    values = {
        paid.gives.value
        for paid in setting.points.values()
        if paid.gives.then == "points"
        and paid.gives.value is not None
        and any(not event.and_ and (area, "target") in set(_uses_of_event(event, "target")) for event in paid.on)
    }
    return values.pop() if len(values) == 1 else None


def is_recovery(setting: Setting, run: Run) -> bool:
    """Whether a run is getting back, or going on after one's own hit, rather than reaching the next ball."""
    if run.purpose in ("recover", "reach"):
        return run.purpose == "recover"
    during = None if run.during is None else setting.shots.get(run.during)
    return during is not None and during.by == run.by


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
