"""Plane geometry for marks: vectors, curves that can be cut by length, and hatches clipped to a shape."""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from itertools import pairwise

from designer.drawing.primitives import Bounds, Point

Polygon = Sequence[Point]
SAMPLES = 24
"""Straight pieces that stand for one curve where its length is measured."""


def ahead(point: Point, direction: Point, distance: float, aside: float = 0.0) -> Point:
    """Return ``point`` moved ``distance`` along the unit vector ``direction`` and ``aside`` to its left."""
    dx, dy = direction
    return (point[0] + dx * distance - dy * aside, point[1] + dy * distance + dx * aside)


def unit_vector(start: Point, end: Point) -> Point:
    """Return the direction from ``start`` to ``end``; straight up where they are one point."""
    length = math.dist(start, end)
    return ((end[0] - start[0]) / length, (end[1] - start[1]) / length) if length > 1e-9 else (0.0, 1.0)


def turned(direction: Point, degrees: float) -> Point:
    """Return ``direction`` turned by ``degrees`` against the clock."""
    cos, sin = math.cos(math.radians(degrees)), math.sin(math.radians(degrees))
    return (direction[0] * cos - direction[1] * sin, direction[0] * sin + direction[1] * cos)


def between(start: Point, end: Point, share: float) -> Point:
    """Return the point at ``share`` of the way from ``start`` to ``end``."""
    return (start[0] + (end[0] - start[0]) * share, start[1] + (end[1] - start[1]) * share)


class Chain:
    """Straight pieces one after another, measured by length."""

    def __init__(self, points: Sequence[Point]) -> None:
        """``points`` are at least two."""
        self.samples: tuple[Point, ...] = tuple(points)
        self._lengths = [0.0]
        for one, other in pairwise(self.samples):
            self._lengths.append(self._lengths[-1] + math.dist(one, other))

    @property
    def length(self) -> float:
        """Length in metres."""
        return self._lengths[-1]

    def at(self, distance: float) -> Point:
        """Return the point ``distance`` metres from the start, held to the two ends."""
        for index, reached in enumerate(self._lengths[1:]):
            if distance <= reached:
                before = self._lengths[index]
                share = 0.0 if reached == before else max(0.0, distance - before) / (reached - before)
                return between(self.samples[index], self.samples[index + 1], share)
        return self.samples[-1]

    def heading(self, distance: float) -> Point:
        """Return the direction of travel ``distance`` metres from the start."""
        step = max(self.length / 100, 1e-6)
        low = min(max(distance - step, 0.0), max(self.length - 2 * step, 0.0))
        return unit_vector(self.at(low), self.at(low + 2 * step))

    def cut(self, start: float, end: float) -> tuple[Point, ...]:
        """Return the points from ``start`` to ``end``, metres from the start: two where it is straight."""
        end = max(end, start)
        inner = [
            point
            for point, reached in zip(self.samples, self._lengths, strict=True)
            if start + 1e-9 < reached < end - 1e-9
        ]
        return (self.at(start), *inner, self.at(end))


class Route(Chain):
    """The way of a ball or of feet: straight where two points are given, else one smooth curve through all of them."""

    def __init__(self, points: Sequence[Point], *, bend: float = 0.0) -> None:
        """``bend`` is the farthest a ball between two points leaves the straight line, in metres to the right."""
        if bend:
            start, end = points[0], points[-1]
            points = (start, ahead(between(start, end, 0.5), unit_vector(start, end), 0.0, -bend), end)
        super().__init__(tuple(_samples(_through(points))) if len(points) > 2 else points)


def _through(points: Sequence[Point]) -> tuple[Point, ...]:
    """Return the curves through ``points``: a parabola through three, else a spline whose tangents follow the neighbours."""
    if len(points) == 3:
        start, via, end = points
        control = (2 * via[0] - (start[0] + end[0]) / 2, 2 * via[1] - (start[1] + end[1]) / 2)
        return (start, between(start, control, 2 / 3), between(end, control, 2 / 3), end)
    curve = [points[0]]
    for index in range(len(points) - 1):
        before, one = points[max(index - 1, 0)], points[index]
        other, after = points[index + 1], points[min(index + 2, len(points) - 1)]
        curve.append((one[0] + (other[0] - before[0]) / 6, one[1] + (other[1] - before[1]) / 6))
        curve.append((other[0] - (after[0] - one[0]) / 6, other[1] - (after[1] - one[1]) / 6))
        curve.append(other)
    return tuple(curve)


def _samples(curve: Sequence[Point]) -> Iterable[Point]:
    yield curve[0]
    for index in range(0, len(curve) - 1, 3):
        one, two, three, four = curve[index : index + 4]
        for step in range(1, SAMPLES + 1):
            t = step / SAMPLES
            a, b, c, d = (1 - t) ** 3, 3 * t * (1 - t) ** 2, 3 * t * t * (1 - t), t**3
            yield (
                a * one[0] + b * two[0] + c * three[0] + d * four[0],
                a * one[1] + b * two[1] + c * three[1] + d * four[1],
            )


def rectangle(box: Bounds) -> tuple[Point, ...]:
    """Return the corners of ``box``, against the clock from the lower left."""
    left, low, right, high = box
    return ((left, low), (right, low), (right, high), (left, high))


def rounded(box: Bounds, corner: float) -> tuple[Point, ...]:
    """Return the curves of ``box`` with its corners rounded by ``corner``, to be drawn closed."""
    left, low, right, high = box
    corner = min(corner, (right - left) / 2, (high - low) / 2)
    pull = corner * 0.4477
    points: list[Point] = [(left + corner, low)]
    for (x, y), (ix, iy), (ox, oy) in (
        ((right, low), (-1, 0), (0, 1)),
        ((right, high), (0, -1), (-1, 0)),
        ((left, high), (1, 0), (0, -1)),
        ((left, low), (0, 1), (1, 0)),
    ):
        enter = (x + ix * corner, y + iy * corner)
        leave = (x + ox * corner, y + oy * corner)
        points += [
            between(points[-1], enter, 1 / 3),
            between(points[-1], enter, 2 / 3),
            enter,
            (x + ix * pull, y + iy * pull),
            (x + ox * pull, y + oy * pull),
            leave,
        ]
    return tuple(points)


def round_points(centre: Point, radii: tuple[float, float], count: int = 48) -> tuple[Point, ...]:
    """Return ``count`` points round an upright ellipse."""
    steps = (2 * math.pi * index / count for index in range(count))
    return tuple((centre[0] + radii[0] * math.cos(a), centre[1] + radii[1] * math.sin(a)) for a in steps)


def contains(polygon: Polygon, point: Point) -> bool:
    """Whether ``point`` lies inside ``polygon``, by the even-odd rule."""
    x, y = point
    inside = False
    for (x0, y0), (x1, y1) in zip(polygon, (*polygon[1:], polygon[0]), strict=True):
        if (y0 > y) != (y1 > y) and x < x0 + (y - y0) * (x1 - x0) / (y1 - y0):
            inside = not inside
    return inside


def hatch(polygon: Polygon, degrees: float, pitch: float, holes: Sequence[Polygon] = ()) -> list[tuple[Point, Point]]:
    """Return parallel strokes that fill ``polygon`` but for ``holes``, which lie inside it.

    ``degrees`` is their angle on the page against the clock from level, ``pitch`` the distance from one to the next. They lie
    on one grid of the page, whatever the polygon.
    """
    along = turned((1.0, 0.0), degrees)
    over = turned((0.0, 1.0), degrees)

    def framed(points: Polygon) -> list[Point]:
        return [(x * along[0] + y * along[1], x * over[0] + y * over[1]) for x, y in points]

    edges = [
        edge for ring in (polygon, *holes) for edge in zip(framed(ring), framed((*ring[1:], ring[0])), strict=True)
    ]
    heights = [y for _, y in framed(polygon)]
    strokes: list[tuple[Point, Point]] = []
    for number in range(math.ceil(min(heights) / pitch), math.floor(max(heights) / pitch) + 1):
        level = number * pitch
        crossings = sorted(
            x0 + (level - y0) * (x1 - x0) / (y1 - y0)
            for (x0, y0), (x1, y1) in edges
            if (y0 <= level < y1) or (y1 <= level < y0)
        )
        for start, end in zip(crossings[::2], crossings[1::2], strict=False):
            if end - start > pitch / 20:
                strokes.append(
                    (
                        (start * along[0] + level * over[0], start * along[1] + level * over[1]),
                        (end * along[0] + level * over[0], end * along[1] + level * over[1]),
                    )
                )
    return strokes


def overlap(one: Bounds, other: Bounds) -> float:
    """Return the area in square metres that two boxes share."""
    width = min(one[2], other[2]) - max(one[0], other[0])
    height = min(one[3], other[3]) - max(one[1], other[1])
    return width * height if width > 0 and height > 0 else 0.0


def bounds_of_points(points: Sequence[Point]) -> Bounds:
    """Return the smallest upright rectangle round ``points``."""
    across, along = [x for x, _ in points], [y for _, y in points]
    return (min(across), min(along), max(across), max(along))


def grown(box: Bounds, by: float) -> Bounds:
    """Return ``box`` with ``by`` metres more on each side."""
    return (box[0] - by, box[1] - by, box[2] + by, box[3] + by)


def within(box: Bounds, point: Point) -> bool:
    """Whether ``point`` lies in ``box`` or on its edge."""
    return box[0] - 1e-6 <= point[0] <= box[2] + 1e-6 and box[1] - 1e-6 <= point[1] <= box[3] + 1e-6


def inside_box(start: Point, end: Point, box: Bounds) -> float:
    """Return how many metres of the straight piece from ``start`` to ``end`` lie inside ``box``."""
    low, high = 0.0, 1.0
    for axis in (0, 1):
        step = end[axis] - start[axis]
        if abs(step) < 1e-12:
            if not box[axis] <= start[axis] <= box[axis + 2]:
                return 0.0
            continue
        one, other = (box[axis] - start[axis]) / step, (box[axis + 2] - start[axis]) / step
        low, high = max(low, min(one, other)), min(high, max(one, other))
    return max(0.0, high - low) * math.dist(start, end)


def point_to_piece(point: Point, start: Point, end: Point) -> float:
    """Return the distance from ``point`` to the straight piece from ``start`` to ``end``."""
    dx, dy = end[0] - start[0], end[1] - start[1]
    square = dx * dx + dy * dy
    share = 0.0 if square == 0 else ((point[0] - start[0]) * dx + (point[1] - start[1]) * dy) / square
    return math.dist(point, between(start, end, min(1.0, max(0.0, share))))
