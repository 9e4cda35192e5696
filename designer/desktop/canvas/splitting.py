"""An area cut in two by a straight line that runs on: both halves as shapes, and how much each of them is."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Final

from designer.court.standards import Ground
from designer.desktop.canvas.measures import per_cent
from designer.desktop.canvas.shaping import ellipse_corners
from designer.drill.base import ON_THE_LINE, Point, to_tenth_millimetre
from designer.drill.drill import Drill
from designer.drill.edits import put
from designer.drill.items import Area, Ellipse, Polygon, Rectangle
from designer.drill.places import corners_of, middle
from designer.drill.setting import At
from designer.play.shares import crosses_itself, outline_shares

LEAST: Final = 0.01
"""A share smaller than this is no half: the line only touches the area."""


@dataclass(frozen=True, slots=True)
class Halves:
    """What lies on either side of the line, first to the left of its direction, each with its share of the whole."""

    corners: tuple[tuple[Point, ...], tuple[Point, ...]]
    shares: tuple[float, float]

    def tags(self, ground: Ground) -> tuple[tuple[Point, str], ...]:
        """Return for each half where its words stand and its words: its share of the whole, and of its half of the court."""
        found = []
        for corners, share in zip(self.corners, self.shares, strict=True):
            words = per_cent(share)
            measured = outline_shares(ground, corners)
            if measured is not None and measured.half.share > 0.004:
                words += f"\n{per_cent(measured.half.share)} of its half"
            found.append((_centre(corners), words))
        return tuple(found)


def halves(area: Area, start: Point, end: Point) -> Halves | None:
    """Return the two halves of ``area`` on either side of the line from ``start`` to ``end``, which runs on.

    None where the line misses it, only touches it, or would cut it into more than two.
    """
    corners = corners_of(area)
    if len(corners) < 3 or math.dist(start, end) <= ON_THE_LINE:
        return None
    if isinstance(area.shape, Ellipse):
        corners = ellipse_corners(corners)
    left, right = _side(corners, start, end, 1), _side(corners, start, end, -1)
    whole = _area(left) + _area(right)
    if whole <= 0 or min(_area(left), _area(right)) < LEAST * whole:
        return None
    if crosses_itself(left) or crosses_itself(right):
        return None
    return Halves((left, right), (_area(left) / whole, _area(right) / whole))


def split(drill: Drill, at: At, area: Area, cut: Halves, new: str) -> Drill:
    """Return ``drill`` with ``area`` as the larger half, which keeps its id and its rules, and the other half called ``new``."""
    first, second = cut.corners if cut.shares[0] >= cut.shares[1] else cut.corners[::-1]
    name = f"{area.name} 2" if area.name else ""
    marked = None if area.marked == "painted" else area.marked  # the new side is not painted
    kept = area.changed(shape=_shape(first), marked=marked)
    return put(drill, at, kept, area.changed(id=new, name=name, shape=_shape(second), marked=marked))


def _shape(corners: tuple[Point, ...]) -> Rectangle | Polygon:
    """Return a rectangle where the corners are those of one, else a polygon."""
    across, along = sorted({x for x, _ in corners}), sorted({y for _, y in corners})
    if len(corners) == 4 and len(across) == len(along) == 2:
        return Rectangle(form="rectangle", corners=((across[0], along[0]), (across[1], along[1])))
    return Polygon(form="polygon", corners=corners)


def _side(corners: tuple[Point, ...], start: Point, end: Point, sign: int) -> tuple[Point, ...]:
    """Return what of an outline lies to the left of a line (``sign`` 1) or to its right (-1), each corner once."""
    along = (end[0] - start[0], end[1] - start[1])

    def aside(point: Point) -> float:
        return sign * (along[0] * (point[1] - start[1]) - along[1] * (point[0] - start[0]))

    kept: list[Point] = []
    for number, point in enumerate(corners):
        before = corners[number - 1]
        here, there = aside(point), aside(before)
        if (here > 0) != (there > 0) and here != there:
            share = there / (there - here)
            kept.append(
                (
                    to_tenth_millimetre(before[0] + share * (point[0] - before[0])),
                    to_tenth_millimetre(before[1] + share * (point[1] - before[1])),
                )
            )
        if here > 0:
            kept.append(point)
    return tuple(corner for number, corner in enumerate(kept) if corner != kept[number - 1])


def _area(corners: tuple[Point, ...]) -> float:
    if len(corners) < 3:
        return 0.0
    pairs = zip(corners, (*corners[1:], corners[0]), strict=True)
    return abs(math.fsum(x0 * y1 - x1 * y0 for (x0, y0), (x1, y1) in pairs)) / 2


def _centre(corners: tuple[Point, ...]) -> Point:
    """Return the centre of gravity of an outline, the middle of its box where it has no area."""
    doubled = cx = cy = 0.0
    for (x0, y0), (x1, y1) in zip(corners, (*corners[1:], corners[0]), strict=True):
        cross = x0 * y1 - x1 * y0
        doubled, cx, cy = doubled + cross, cx + (x0 + x1) * cross, cy + (y0 + y1) * cross
    return (cx / (3 * doubled), cy / (3 * doubled)) if abs(doubled) > 1e-9 else middle(corners)
