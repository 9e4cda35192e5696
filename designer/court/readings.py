"""Where a point is, as it is laid out with no tape: from the nearest painted landmark, in at most two counts.

The ladder, best first: a crossing of lines; half-way between two crossings on a line; a line and a count; the fence.
Left and right are always as the player at that end faces the net.
"""

from __future__ import annotations

import itertools
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final, Literal

from designer.court.regions import RACKET, STRIDE, End, as_player, end_of, from_player
from designer.court.standards import Ground
from designer.drill.base import ON_THE_LINE, Point, to_tenth_millimetre

__all__ = ["RACKET", "STRIDE", "Offset", "Reading", "Snap", "Stop", "reading", "snapped", "stops"]

AcrossDirection = Literal["on", "in from", "out from", "right of", "left of", "half-way"]
AlongDirection = Literal["on", "inside", "behind", "in front of", "from", "half-way"]
Why = Literal["crossing", "half-way", "line", "count", "none"]

HALF_RACKET: Final = RACKET / 2


@dataclass(frozen=True, slots=True)
class Offset:
    """One count: so many metres from ``line`` (its words) in ``direction``. "half-way" is between it and ``other``.

    Across: "in from" and "out from" a sideline, "right of" and "left of" the centre. Along: "inside" and "behind" the
    baseline, "in front of" (the net's side of) and "behind" the service line, "from" the net.
    """

    line: str
    count_metres: float
    direction: AcrossDirection | AlongDirection
    other: str | None = None


@dataclass(frozen=True, slots=True)
class Reading:
    """Where a point is. Either ``crossing``, or ``half_way`` between two crossings, or ``across`` and ``along``.

    ``end`` is None for a point on the net's line, which is read as from the near end.
    """

    end: End | None
    crossing: str | None = None
    half_way: tuple[str, str] | None = None
    across: Offset | None = None
    along: Offset | None = None


@dataclass(frozen=True, slots=True)
class Snap:
    """The point that ``point`` jumps to, why it does, and where it then is. "none": nothing was near enough."""

    point: Point
    why: Why
    reading: Reading


@dataclass(frozen=True, slots=True)
class Stop:
    """One place to jump to on one axis: ``at`` in metres of the court, ``words`` for what is there.

    The words stand after "it snapped:": "on the baseline", "half-way from …", "half rackets", "whole strides".
    """

    at: float
    why: Literal["line", "half-way", "count"]
    words: str


@dataclass(frozen=True, slots=True)
class _Landmark:
    words: str
    at: float
    fence: bool = False


def reading(ground: Ground, point: Point) -> Reading:
    """Return where ``point`` (metres) is."""
    at_net = abs(point[1]) <= ON_THE_LINE
    end: End = "near" if at_net else end_of(point) or "near"
    right, away = as_player(point, end)
    if at_net:
        away = 0.0
    shown = None if at_net else end
    across, along = _across(ground), _along(ground)
    column, row = _on(across, right), _on(along, away)
    crossing = _crossing(ground, column, row)
    if crossing is not None:
        return Reading(shown, crossing=crossing)
    half_way = _half_way_on_a_line(ground, right, away)
    if half_way is not None:
        return Reading(shown, half_way=half_way)
    return Reading(shown, across=_across_offset(ground, right, away), along=_along_offset(ground, away))


def _across(ground: Ground) -> tuple[_Landmark, ...]:
    """Return the landmarks across the court, from the left to the right."""
    rights = [_Landmark("the right singles line", ground.singles)]
    if ground.doubles is not None:
        rights.append(_Landmark("the right doubles line", ground.doubles))
    if not ground.assumed_side_run:
        rights.append(_Landmark("the right side fence", ground.side_fence, fence=True))
    lefts = [_Landmark(mark.words.replace("right", "left"), -mark.at, mark.fence) for mark in reversed(rights)]
    middle = [_Landmark("the centre line", 0.0)] if _has_middle(ground) else []
    return (*lefts, *middle, *rights)


def _has_middle(ground: Ground) -> bool:
    return ground.centre_line or ground.standard.centre_mark is not None


def _along(ground: Ground) -> tuple[_Landmark, ...]:
    """Return the landmarks along the court, from the net to the fence."""
    marks = [_Landmark("the net", 0.0)]
    if ground.service_line is not None:
        marks.append(_Landmark("the service line", ground.service_line))
    marks.append(_Landmark("the baseline", ground.baseline))
    if not ground.assumed_run_back:
        marks.append(_Landmark("the back fence", ground.back_fence, fence=True))
    return tuple(marks)


def _on(marks: tuple[_Landmark, ...], value: float) -> _Landmark | None:
    return next((mark for mark in marks if abs(mark.at - value) <= ON_THE_LINE), None)


def _crossing(ground: Ground, column: _Landmark | None, row: _Landmark | None) -> str | None:
    """Return the words for where two landmarks meet, None where they do not."""
    if row is None:
        return None
    if row.words == "the net":
        return _at_net(column)
    if column is None or column.fence or row.fence:
        return None
    if column.at == 0:
        return {"the service line": "the T", "the baseline": "the centre mark"}.get(row.words)
    side = "right" if column.at > 0 else "left"
    outer = abs(column.at) > ground.singles
    if row.words == "the service line":
        return None if outer else f"the outer corner of the {side} service box"
    return f"the {side} {'doubles' if outer else 'singles'} corner"


def _at_net(column: _Landmark | None) -> str | None:
    if column is None or column.fence:
        return None
    return "the middle of the net" if column.at == 0 else f"the net at {column.words}"


def _half_way_on_a_line(ground: Ground, right: float, away: float) -> tuple[str, str] | None:
    """Return the two crossings that the point lies half-way between, on the line that joins them."""
    across, along = _across(ground), _along(ground)
    column, row = _on(across, right), _on(along, away)
    if column is not None and row is None:
        ends = [_crossing(ground, column, mark) for mark in _neighbours(along, away, half_way=True)]
    elif row is not None and column is None:
        ends = [_crossing(ground, mark, row) for mark in _neighbours(across, right, half_way=True)]
    else:
        return None
    if len(ends) == 2 and ends[0] is not None and ends[1] is not None:
        return ends[0], ends[1]
    return None


def _neighbours(marks: tuple[_Landmark, ...], value: float, *, half_way: bool = False) -> tuple[_Landmark, ...]:
    """Return the painted landmarks on either side of ``value``; with ``half_way`` only if it is in their middle."""
    painted = [mark for mark in marks if not mark.fence]
    for low, high in itertools.pairwise(painted):
        if low.at <= value <= high.at:
            if half_way and abs((low.at + high.at) / 2 - value) > ON_THE_LINE:
                return ()
            return low, high
    if half_way:
        return ()
    return (painted[0],) if value < painted[0].at else (painted[-1],)


def _nearest(marks: tuple[_Landmark, ...], value: float, fence_within: float) -> _Landmark:
    """Return the fence where it is near, else the nearest painted landmark; of two as near, the one nearer the middle."""
    fence = next((mark for mark in marks if mark.fence and abs(mark.at - value) <= fence_within), None)
    if fence is not None:
        return fence
    return min(_neighbours(marks, value), key=lambda mark: (round(abs(mark.at - value), 4), abs(mark.at)))


def _across_offset(ground: Ground, right: float, away: float) -> Offset:
    marks = _across(ground)
    pair = _neighbours(marks, right, half_way=True)
    if pair and not _has_middle(ground):
        # Nothing is painted in the middle of a small court: it is found by folding.
        return Offset(pair[0].words, to_tenth_millimetre(abs(right - pair[0].at)), "half-way", pair[1].words)
    mark = _nearest(marks, right, RACKET)
    apart = to_tenth_millimetre(abs(right - mark.at))
    words = _middle_words(ground, away) if mark.at == 0 else mark.words
    if apart <= ON_THE_LINE:
        return Offset(words, 0.0, "on")
    if mark.at == 0:
        return Offset(words, apart, "right of" if right > 0 else "left of")
    return Offset(words, apart, "in from" if abs(right) < abs(mark.at) else "out from")


def _middle_words(ground: Ground, away: float) -> str:
    """Return what is painted in the middle at that distance from the net: the centre line, or the mark behind it."""
    past = ground.service_line is None or away > ground.service_line + ON_THE_LINE
    return "the centre mark" if past and ground.standard.centre_mark is not None else "the centre line"


def _along_offset(ground: Ground, away: float) -> Offset:
    marks = _along(ground)
    pair = _neighbours(marks, away, half_way=True)
    if pair:
        return Offset(pair[0].words, to_tenth_millimetre(abs(away - pair[0].at)), "half-way", pair[1].words)
    mark = _nearest(marks, away, STRIDE)
    apart = to_tenth_millimetre(abs(away - mark.at))
    if apart <= ON_THE_LINE:
        return Offset(mark.words, 0.0, "on")
    if mark.words == "the net":
        return Offset(mark.words, apart, "from")
    if mark.words == "the baseline":
        return Offset(mark.words, apart, "inside" if away < mark.at else "behind")
    return Offset(mark.words, apart, "in front of" if away < mark.at else "behind")


def snapped(ground: Ground, point: Point, *, reach: float) -> Snap:
    """Return where ``point`` jumps to: painted lines, half-way between them, half rackets across, whole strides along.

    ``reach`` is how far a point may jump, in metres, across and along. A caller that does not want it does not ask.
    """
    end: End = end_of(point) or "near"
    right, away = as_player(point, end)
    across, along = _across(ground), _along(ground)
    new_right = _jump(across, right, HALF_RACKET, reach)
    new_away = _jump(along, away, STRIDE, reach)
    x, y = from_player(right if new_right is None else new_right, away if new_away is None else new_away, end)
    landed = (to_tenth_millimetre(x), to_tenth_millimetre(y))
    found = reading(ground, landed)
    if new_right is None and new_away is None:
        return Snap(landed, "none", found)
    return Snap(landed, _why(found, new_right is not None, new_away is not None), found)


def stops(ground: Ground, point: Point, reach: float) -> tuple[tuple[Stop, ...], tuple[Stop, ...]]:
    """Return the places within ``reach`` metres that ``point`` may jump to, across the court and along it."""
    end: End = end_of(point) or "near"
    right, away = as_player(point, end)
    found = []
    for axis, marks, value, step in ((0, _across(ground), right, HALF_RACKET), (1, _along(ground), away, STRIDE)):
        turn = -1.0 if (axis == 0) == (end == "far") else 1.0
        words = "half rackets" if axis == 0 else "whole strides"
        found.append(
            tuple(
                Stop(to_tenth_millimetre(turn * at), why, words if why == "count" else said)
                for at, why, said in _places(marks, value, step)
                if abs(at - value) <= reach
            )
        )
    return found[0], found[1]


def _jump(marks: tuple[_Landmark, ...], value: float, step: float, reach: float) -> float | None:
    """Return the nearest place to jump to, None where none is within reach; of two as near, a landmark."""
    places = [place for place, _, _ in _places(marks, value, step) if abs(place - value) <= reach]
    return min(places, key=lambda place: round(abs(place - value), 6), default=None)


def _places(
    marks: tuple[_Landmark, ...], value: float, step: float
) -> Iterator[tuple[float, Literal["line", "half-way", "count"], str]]:
    """Yield landmarks, middles between them, and counts from a landmark as far as it is the nearest one; each with words."""
    painted = [mark for mark in marks if not mark.fence]
    yield from ((mark.at, "line", f"on {mark.words}") for mark in marks)
    for low, high in itertools.pairwise(painted):
        yield (low.at + high.at) / 2, "half-way", f"half-way from {low.words} to {high.words}"
    for mark in _neighbours(marks, value):
        place = mark.at + round((value - mark.at) / step) * step
        nearest = min(abs(other.at - place) for other in painted)
        if abs(mark.at - place) <= nearest + 1e-9:
            yield place, "count", ""


def _why(found: Reading, across_jumped: bool, along_jumped: bool) -> Why:  # noqa: FBT001
    if found.crossing is not None:
        return "crossing"
    if found.half_way is not None:
        return "half-way"
    offsets = [
        offset.direction
        for offset, jumped in ((found.across, across_jumped), (found.along, along_jumped))
        if offset is not None and jumped
    ]
    if "on" in offsets:
        return "line"
    return "half-way" if "half-way" in offsets else "count"
