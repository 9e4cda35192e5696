"""Distances in the plane, in metres."""

from __future__ import annotations

import math
from collections.abc import Sequence
from itertools import pairwise

from designer.drill.base import Point

Legs = Sequence[Point]
"""A path by its corners; one corner is a point."""


def point_to_leg(point: Point, start: Point, end: Point) -> float:
    """Return the distance from ``point`` to the straight leg from ``start`` to ``end``."""
    (px, py), (ax, ay), (bx, by) = point, start, end
    dx, dy = bx - ax, by - ay
    length = dx * dx + dy * dy
    share = 0.0 if length == 0 else max(0.0, min(1.0, ((px - ax) * dx + (py - ay) * dy) / length))
    return math.hypot(px - ax - share * dx, py - ay - share * dy)


def point_to_path(point: Point, path: Legs) -> float:
    """Return the distance from ``point`` to a path; infinite for an empty one."""
    if len(path) == 1:
        return math.dist(point, path[0])
    return min((point_to_leg(point, start, end) for start, end in pairwise(path)), default=math.inf)


def path_to_path(first: Legs, second: Legs) -> float:
    """Return the distance between two paths, 0 where they cross; infinite where one is empty."""
    if not first or not second:
        return math.inf
    if len(second) == 1:
        return point_to_path(second[0], first)
    if any(_cross(a, b, c, d) for a, b in pairwise(first) for c, d in pairwise(second)):
        return 0.0
    return min(
        *(point_to_path(point, second) for point in first),
        *(point_to_path(point, first) for point in second),
    )


def closed(corners: Legs) -> Legs:
    """Return the path round an outline."""
    return (*corners, corners[0]) if len(corners) > 2 else corners


def inside(point: Point, corners: Legs) -> bool:
    """Whether ``point`` lies inside the outline; on its edge either answer may come."""
    x, y = point
    within = False
    for (x0, y0), (x1, y1) in pairwise(closed(corners)):
        if (y0 > y) != (y1 > y) and x < x0 + (y - y0) / (y1 - y0) * (x1 - x0):
            within = not within
    return within


def _cross(a: Point, b: Point, c: Point, d: Point) -> bool:
    def side(p: Point, q: Point, r: Point) -> float:
        return (q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0])

    return side(a, b, c) * side(a, b, d) < 0 and side(c, d, a) * side(c, d, b) < 0


def ahead_and_aside(point: Point, start: Point, towards: Point) -> tuple[float, float]:
    """Return how far ``point`` lies ahead of ``start`` on the way ``towards``, and how far beside that way."""
    dx, dy = towards[0] - start[0], towards[1] - start[1]
    length = math.hypot(dx, dy)
    if length == 0:
        return 0.0, math.dist(point, start)
    px, py = point[0] - start[0], point[1] - start[1]
    return (px * dx + py * dy) / length, abs(px * dy - py * dx) / length
