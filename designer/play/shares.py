"""How much of the court an area is: as square metres and as a share of the singles court, of its half and of its width.

All of it is exact arithmetic on corners, so that it can be shown while an area is drawn.
"""

from __future__ import annotations

import itertools
import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass

from designer.court.regions import as_player, end_of
from designer.court.standards import Ground
from designer.drill.base import ON_THE_LINE, Point
from designer.drill.items import Area, Ellipse, Line
from designer.drill.places import corners_of, middle

Box = tuple[float, float, float, float]
"""(least x, greatest x, least y, greatest y) in metres."""


@dataclass(frozen=True, slots=True)
class Share:
    """A part of something: how much of it (square metres, or metres of a width) and what share that is, 0 to 1."""

    amount: float
    share: float

    @property
    def per_cent(self) -> float:
        """The share in per cent, to a tenth."""
        return round(self.share * 100, 1)


@dataclass(frozen=True, slots=True)
class Shares:
    """What lies inside the singles court. ``area`` is all of it, in square metres, what lies outside included.

    ``court`` is of the singles court at both ends, ``half`` of the half that it lies in, from net to baseline, ``width``
    of that half's width in metres, from the leftmost to the rightmost place.
    """

    area: float
    court: Share
    half: Share
    width: Share


def shares(ground: Ground, area: Area) -> Shares | None:
    """Return the shares of one area, its copy at the other end not counted.

    None for a shape that this program does not know, for one without an inside, and for an outline that crosses itself:
    what belongs to that is anybody's guess.
    """
    corners = corners_of(area)
    if isinstance(area.shape, Ellipse):
        return _measured(ground, _span(corners), lambda box: _ellipse_in(_span(corners), box))
    return outline_shares(ground, corners)


def outline_shares(ground: Ground, corners: Sequence[Point]) -> Shares | None:
    """Return the shares of a straight-edged outline; None where it has no inside or crosses itself."""
    if len(corners) < 3 or crosses_itself(corners):
        return None
    return _measured(ground, _span(corners), lambda box: _outline_in(corners, box))


def line_shares(ground: Ground, line: Line) -> tuple[Shares, Shares] | None:
    """Return the shares of the two sides into which a straight line along the court, run on, divides its half.

    First what lies to the left and then what lies to the right, as the player at that end faces the net. None for a
    line that bends or runs across.
    """
    if len(line.corners) != 2:
        return None
    end = end_of(middle(line.corners)) or "near"
    (x0, y0), (x1, y1) = (as_player(corner, end) for corner in line.corners)
    if abs(y1 - y0) <= ON_THE_LINE:
        return None
    at_net, at_back = (x0 + (x1 - x0) * (y - y0) / (y1 - y0) for y in (0.0, ground.baseline))
    reach = ground.singles + max(abs(at_net), abs(at_back))

    def side(outer: float) -> Shares | None:
        corners = ((outer, 0.0), (outer, ground.baseline), (at_back, ground.baseline), (at_net, 0.0))
        return outline_shares(ground, tuple(as_player(corner, end) for corner in corners))

    left, right = side(-reach), side(reach)
    return None if left is None or right is None else (left, right)


def crosses_itself(corners: Sequence[Point]) -> bool:
    """Whether two edges of an outline that are no neighbours meet, or two neighbours lie on one another.

    A corner that is named twice in a row is one corner.
    """
    corners = [corner for number, corner in enumerate(corners) if corner != corners[number - 1]]
    edges = [(corners[n], corners[(n + 1) % len(corners)]) for n in range(len(corners))]
    for first in range(len(edges)):
        for second in range(first + 1, len(edges)):
            neighbours = second == first + 1 or (first == 0 and second == len(edges) - 1)
            if neighbours:
                one, two = edges[first], edges[second]
                shared, start, end = (one[1], one[0], two[1]) if second == first + 1 else (one[0], one[1], two[0])
                if _folds_back(start, shared, end):
                    return True
            elif _meet(*edges[first], *edges[second]):
                return True
    return False


def _folds_back(start: Point, shared: Point, end: Point) -> bool:
    """Whether the way from ``start`` to ``shared`` goes back along itself to ``end``."""
    if _turn(start, shared, end) != 0 or shared in (start, end):
        return False
    return (start[0] - shared[0]) * (end[0] - shared[0]) + (start[1] - shared[1]) * (end[1] - shared[1]) > 0


def _turn(p: Point, q: Point, r: Point) -> int:
    """Return 1 where the way from p over q to r turns left, -1 where it turns right, 0 where it goes straight on."""
    value = (q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0])
    return 0 if abs(value) < 1e-9 else (1 if value > 0 else -1)


def _meet(a: Point, b: Point, c: Point, d: Point) -> bool:
    turns = _turn(a, b, c), _turn(a, b, d), _turn(c, d, a), _turn(c, d, b)
    if turns[0] != turns[1] and turns[2] != turns[3]:
        return True
    ends = ((a, b, c), (a, b, d), (c, d, a), (c, d, b))
    return any(turn == 0 and _between(p, q, r) for turn, (p, q, r) in zip(turns, ends, strict=True))


def _between(p: Point, q: Point, r: Point) -> bool:
    return min(p[0], q[0]) <= r[0] <= max(p[0], q[0]) and min(p[1], q[1]) <= r[1] <= max(p[1], q[1])


def _span(corners: Sequence[Point]) -> Box:
    across, along = [x for x, _ in corners], [y for _, y in corners]
    return min(across), max(across), min(along), max(along)


def _measured(ground: Ground, span: Box, inside: Callable[[Box], tuple[float, float]]) -> Shares:
    """Return the shares of a shape; ``inside`` gives its area inside a box, and how wide that part is."""
    half_width, length = ground.singles, ground.baseline
    far = span[2] + span[3] > 0
    whole, _ = inside((-math.inf, math.inf, -math.inf, math.inf))
    of_court, _ = inside((-half_width, half_width, -length, length))
    of_half, width = inside((-half_width, half_width, 0.0, length) if far else (-half_width, half_width, -length, 0.0))
    return Shares(
        area=whole,
        court=Share(of_court, of_court / (4 * half_width * length)),
        half=Share(of_half, of_half / (2 * half_width * length)),
        width=Share(width, width / (2 * half_width)),
    )


def _outline_in(corners: Sequence[Point], box: Box) -> tuple[float, float]:
    """Return the area of an outline inside ``box``, and how wide that part is (Sutherland and Hodgman 1974)."""
    left, right, low, high = box
    found = list(corners)
    for axis, edge, keeps_more in ((0, left, True), (0, right, False), (1, low, True), (1, high, False)):
        if math.isfinite(edge):
            found = _cut(found, axis, edge, keeps_more=keeps_more)
    if len(found) < 3:
        return 0.0, 0.0
    pairs = zip(found, [*found[1:], found[0]], strict=True)
    area = abs(math.fsum(x0 * y1 - x1 * y0 for (x0, y0), (x1, y1) in pairs)) / 2
    across = [x for x, _ in found]
    return area, max(across) - min(across) if area > 0 else 0.0


def _cut(corners: list[Point], axis: int, edge: float, *, keeps_more: bool) -> list[Point]:
    """Return an outline cut along an upright or level edge."""
    sign = 1 if keeps_more else -1
    kept: list[Point] = []
    for number, point in enumerate(corners):
        before = corners[number - 1]
        here, there = sign * (point[axis] - edge), sign * (before[axis] - edge)
        if (here >= 0) != (there >= 0):
            share = there / (there - here)
            met = (before[0] + share * (point[0] - before[0]), before[1] + share * (point[1] - before[1]))
            kept.append((edge, met[1]) if axis == 0 else (met[0], edge))
        if here >= 0:
            kept.append(point)
    return kept


def _ellipse_in(span: Box, box: Box) -> tuple[float, float]:
    """Return the area of the ellipse that fills ``span`` inside ``box``, and how wide that part is."""
    across, along = (span[1] - span[0]) / 2, (span[3] - span[2]) / 2
    if across == 0 or along == 0:
        return 0.0, 0.0
    x, y = (span[0] + span[1]) / 2, (span[2] + span[3]) / 2
    left, right = (max(-1.0, min(1.0, (edge - x) / across)) for edge in box[:2])
    low, high = (max(-1.0, min(1.0, (edge - y) / along)) for edge in box[2:])
    # The circle of radius 1 is summed up in strips; where its edge passes the top or the bottom the strip changes.
    turns = sorted({left, right, *(s * math.sqrt(1 - edge * edge) for edge in (low, high) for s in (-1, 1))})
    area, met = 0.0, []
    for start, end in itertools.pairwise(turns):
        if start < left or end > right or start == end:
            continue
        rise = math.sqrt(max(0.0, 1 - ((start + end) / 2) ** 2))
        if min(high, rise) <= max(low, -rise):
            continue
        arcs = (rise < high) + (-rise > low)
        flat = (high if rise >= high else 0.0) - (low if -rise <= low else 0.0)
        area += arcs * (_arc(end) - _arc(start)) + flat * (end - start)
        met += [start, end]
    return area * across * along, (max(met) - min(met)) * across if met else 0.0


def _arc(x: float) -> float:
    """Return the area under the unit circle from its middle to ``x``."""
    return (x * math.sqrt(max(0.0, 1 - x * x)) + math.asin(x)) / 2
