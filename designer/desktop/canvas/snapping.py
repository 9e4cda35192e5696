"""Where a point jumps to, and why in words: what is painted, what is counted, and what else stands on the court."""

from __future__ import annotations

import math
from bisect import bisect_left
from collections.abc import Callable, Collection, Iterable, Iterator
from dataclasses import dataclass, field
from itertools import pairwise
from typing import Any, Final

from designer.court.readings import reading, stops
from designer.court.standards import Ground
from designer.desktop.canvas.names import full_name
from designer.desktop.names import depth
from designer.drill.base import Place, Point, to_tenth_millimetre
from designer.drill.items import Barrier, Line
from designer.drill.movement import Run, Shot
from designer.drill.people import Spot
from designer.drill.places import anchor, corners_of, is_letter, locate
from designer.drill.setting import Setting

WEIGHTS: Final = {"line": 1.0, "half-way": 1.1, "straight": 1.0, "in line": 1.2, "spaced": 1.2, "count": 2.0}
"""A place is the more willingly taken the less it weighs: what is painted before what is only counted."""

ON_IT: Final = 0.001
"""Nearer than this, in metres, a thing is exactly there."""

MOST_IN_LINE: Final = 24
"""So many things in one row are looked at for equal spaces: those nearest to the hand."""


@dataclass(frozen=True, slots=True)
class Neighbour:
    """A point of something that stands still: ``prefix`` and the name of ``id`` say what it is."""

    at: Point
    id: str
    prefix: str = ""


@dataclass(frozen=True, slots=True)
class Jump:
    """Where a point goes, the reasons in words, and lines on the court that show them. No reasons: it stays."""

    point: Point
    reasons: tuple[str, ...] = ()
    lines: tuple[tuple[Point, Point], ...] = ()


@dataclass(frozen=True, slots=True)
class _Choice:
    at: float
    weight: float


@dataclass(slots=True)
class Neighbours:
    """What a point can be in line with: all that is drawn, but what is being moved and what goes along with it."""

    setting: Setting
    points: tuple[Neighbour, ...]
    by_axis: tuple[list[tuple[float, Neighbour]], list[tuple[float, Neighbour]]] = field(init=False)
    _names: dict[str, str] = field(default_factory=dict)

    def __post_init__(self) -> None:
        self.by_axis = tuple(  # type: ignore[assignment]
            sorted(((point.at[axis], point) for point in self.points), key=lambda pair: pair[0]) for axis in (0, 1)
        )

    def near(self, axis: int, value: float, reach: float) -> Iterator[Neighbour]:
        """Yield the points within ``reach`` metres of ``value`` on one axis."""
        row = self.by_axis[axis]
        for at, point in row[bisect_left(row, value - reach, key=_first) :]:
            if at > value + reach:
                return
            yield point

    def called(self, point: Neighbour) -> str:
        """Return what a point is called inside a sentence: "cone 2", "a corner of area 1"."""
        if point.id not in self._names:
            shot = self.setting.shots.get(point.id)
            name = full_name(self.setting, point.id) if shot is None else f"ball {depth(self.setting, shot)}"
            self._names[point.id] = name[:1].lower() + name[1:]
        return f"{point.prefix}{self._names[point.id]}"


def _first(pair: tuple[float, Neighbour]) -> float:
    return pair[0]


def neighbours(setting: Setting, but: Collection[str] = ()) -> Neighbours:
    """Return what a point can be in line with while the records ``but`` are moved."""
    moving = {*but, *(spot.job for spot in setting.spots.values() if spot.id in but)}
    found = [
        point
        for kind in (setting.spots, setting.items, setting.shots, setting.runs)
        for record in kind.values()
        if record.id not in moving
        for point in _points(setting, record, moving)
    ]
    return Neighbours(setting, tuple(found))


def _points(setting: Setting, record: Any, moving: Collection[str]) -> Iterator[Neighbour]:
    if isinstance(record, Shot | Run):
        end = record.to
        at = None if end is None or _goes_along(end, moving) else locate(setting, end)
        if at is not None:
            yield Neighbour(at, record.id, "the landing of " if isinstance(record, Shot) else "the end of the ")
        return
    corners = corners_of(record)
    if corners:
        prefix = "an end of " if isinstance(record, Line | Barrier) else "a corner of "
        yield from (Neighbour(corner, record.id, prefix) for corner in corners)
        return
    place = record.declared("place") if not isinstance(record, Spot) else record.place
    at = None if place is None or _goes_along(place, moving) else anchor(setting, record.id)
    if at is not None:
        yield Neighbour(at, record.id)


def _goes_along(place: Place, moving: Collection[str]) -> bool:
    """Whether a place is measured from something that is being moved, be it by a person's letter."""
    return place.on is not None and (place.on in moving or (is_letter(place.on) and place.on in moving))


def jump(ground: Ground, point: Point, reach: float, others: Neighbours, also: Iterable[Point] = ()) -> Jump:
    """Return where ``point`` jumps to within ``reach`` metres, and why.

    ``also`` are points that it may go straight across or straight along from: where a line began, a corner before it.
    """
    starts = tuple(also)
    mirrored = _mirrored(point, reach, others)
    if mirrored is not None:
        landed = mirrored
    else:
        at = [_best(axis, ground, point, reach, others, starts) for axis in (0, 1)]
        if at[0] is None and at[1] is None:
            return Jump(point)
        x, y = (point[axis] if at[axis] is None else at[axis] for axis in (0, 1))
        landed = (to_tenth_millimetre(x or 0.0), to_tenth_millimetre(y or 0.0))
    return _told(ground, landed, others, starts)


def _best(
    axis: int, ground: Ground, point: Point, reach: float, others: Neighbours, starts: tuple[Point, ...]
) -> float | None:
    """Return the place on one axis that is taken, None where there is none."""
    value = point[axis]
    choices = [_Choice(stop.at, WEIGHTS[stop.why]) for stop in stops(ground, point, reach)[axis]]
    choices += [_Choice(start[axis], WEIGHTS["straight"]) for start in starts if abs(start[axis] - value) <= reach]
    choices += [_Choice(near.at[axis], WEIGHTS["in line"]) for near in others.near(axis, value, reach)]
    choices += [
        _Choice(at, WEIGHTS["spaced"]) for at, _, _ in _spaced(axis, point, reach, others) if abs(at - value) <= reach
    ]
    best = min(
        choices, key=lambda choice: (round(abs(choice.at - value) * choice.weight, 6), choice.weight), default=None
    )
    return None if best is None else best.at


def _spaced(axis: int, point: Point, reach: float, others: Neighbours) -> Iterator[tuple[float, Neighbour, Neighbour]]:
    """Yield (place, one, other) where ``point`` would go on a row at the same space, or halve it.

    ``one`` stands next to the place; where it lies between the two, ``one`` comes first on the axis.
    """
    row = sorted(
        {near.at[axis]: near for near in others.near(1 - axis, point[1 - axis], reach)}.values(),
        key=lambda near: abs(near.at[axis] - point[axis]),
    )[:MOST_IN_LINE]
    for low, high in pairwise(sorted(row, key=lambda near: near.at[axis])):
        gap = high.at[axis] - low.at[axis]
        if gap <= 2 * ON_IT:
            continue
        yield high.at[axis] + gap, high, low
        yield low.at[axis] - gap, low, high
        yield (low.at[axis] + high.at[axis]) / 2, low, high


_MIRRORS: Final[tuple[tuple[Callable[[Point], Point], str], ...]] = (
    (lambda at: (-at[0], at[1]), "mirrors {} across the centre line"),
    (lambda at: (at[0], -at[1]), "mirrors {} across the net"),
    (lambda at: (-at[0], -at[1]), "stands as {} does at the other end"),
)


def _mirrored(point: Point, reach: float, others: Neighbours) -> Point | None:
    """Return the nearest point within half of ``reach`` that mirrors something, None where there is none."""
    found: list[tuple[float, Point]] = []
    for mirror, _ in _MIRRORS:
        seen = mirror(point)
        for near in others.near(0, seen[0], reach / 2):
            apart = math.dist(near.at, seen)
            if apart <= reach / 2 and math.dist(near.at, mirror(near.at)) > reach:
                found.append((apart, mirror(near.at)))
    at = min(found, default=(0.0, None))[1]
    return None if at is None else (at[0] + 0.0, at[1] + 0.0)


def _told(ground: Ground, landed: Point, others: Neighbours, starts: tuple[Point, ...]) -> Jump:
    """Return the jump to ``landed`` with every reason that holds there, the most particular first."""
    reasons: list[str] = []
    lines: list[tuple[Point, Point]] = []
    for mirror, words in _MIRRORS:
        seen = mirror(landed)
        near = next((one for one in others.near(0, seen[0], ON_IT) if math.dist(one.at, seen) <= ON_IT), None)
        if near is not None and math.dist(seen, landed) > ON_IT:
            reasons.append(words.format(others.called(near)))
            lines.append((near.at, landed))
            break
    for axis in (0, 1):
        _tell_row(axis, landed, others, reasons, lines)
    for start in starts:
        straight = [axis for axis in (0, 1) if abs(start[axis] - landed[axis]) <= ON_IT]
        if len(straight) == 1:
            reasons.append("straight along" if straight == [0] else "straight across")
            lines.append((start, landed))
    reasons += [words for words, counted in _painted(ground, landed) if not (counted and reasons)]
    return Jump(landed, tuple(dict.fromkeys(reasons)), tuple(lines))


def _tell_row(
    axis: int, landed: Point, others: Neighbours, reasons: list[str], lines: list[tuple[Point, Point]]
) -> None:
    """Add what stands in one row with ``landed`` and whether the spaces in it are equal."""
    for at, one, other in _spaced(axis, landed, ON_IT, others):
        if abs(at - landed[axis]) > ON_IT:
            continue
        low, high = sorted((one.at[axis], other.at[axis]))
        if low < landed[axis] < high:
            reasons.append(f"half-way from {others.called(one)} to {others.called(other)}")
        else:
            reasons.append(f"as far from {others.called(one)} as that is from {others.called(other)}")
        lines += [(other.at, one.at), (one.at, landed)]
        return
    row = [near for near in others.near(axis, landed[axis], ON_IT) if math.dist(near.at, landed) > ON_IT]
    if row:
        near = min(row, key=lambda near: math.dist(near.at, landed))
        reasons.append(f"in line with {others.called(near)}")
        lines.append((near.at, landed))


def _painted(ground: Ground, landed: Point) -> Iterator[tuple[str, bool]]:
    """Yield what is at ``landed`` in words, and whether it is only counted, not painted."""
    if reading(ground, landed).crossing is not None:
        yield "where lines cross", False
        return
    for found in stops(ground, landed, ON_IT):
        best = min(found, key=lambda stop: WEIGHTS[stop.why], default=None)
        if best is not None:
            yield best.words, best.why == "count"
