"""Making a target larger or smaller, and setting it nearer or farther, by the counts that a coach lays out with."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from typing import Any, Final

from designer.court.regions import RACKET, STRIDE, End, as_player, end_of, from_player
from designer.court.standards import Ground
from designer.drill.base import ON_THE_LINE, Point
from designer.drill.edits import moved_record
from designer.drill.items import Area, Cone, Disc, Ellipse, Line, Polygon, Rectangle
from designer.drill.places import corners_of, locate, middle
from designer.drill.setting import Setting
from designer.play.layout import points_of

Edges = tuple[float, float, float, float]
"""(left, right, front, back) as the player at that end sees them: metres right of the middle, metres from the net."""

_SLACK: Final = 1e-6


def resized(ground: Ground, area: Area, others: Iterable[Area] = (), *, larger: bool) -> Area | None:
    """Return ``area`` one racket wider and one stride deeper, or as much smaller; None where that cannot be.

    Edges on painted lines, or shared with one of the ``others``, stay there; of a front and a back edge that are both
    free the front one moves. An area with no free edge is only made smaller, from its front. No target is made smaller
    than half a racket, and none grows beyond the court.
    """
    corners = corners_of(area)
    if not corners:
        return None  # a shape that is not known
    end = end_of(middle(corners)) or "near"
    shape = area.shape
    if isinstance(shape, Rectangle):
        old = _edges(shape.corners, end)
        beside = [_edges(found, end) for other in others if other.id != area.id and (found := corners_of(other))]
        free = _free(ground, old, beside)
        new = _larger(ground, old, free) if larger else _smaller(old, free)
    elif isinstance(shape, Ellipse):
        old = _edges(shape.corners, end)
        step = (RACKET / 2, STRIDE / 2) if larger else (-RACKET / 2, -STRIDE / 2)
        new = _within((old[0] - step[0], old[1] + step[0], old[2] - step[1], old[3] + step[1]), ground, old)
    elif isinstance(shape, Polygon):
        return _scaled(area, shape, 1.25 if larger else 0.8)
    else:
        return None
    if _same(old, new) or not _large_enough(new):
        return None
    marked = "discs" if area.marked == "painted" else area.marked
    return area.changed(shape=shape.changed(corners=_with_edges(shape.corners, end, old, new)), marked=marked)


def shifted(ground: Ground, setting: Setting, item: Any, by: float) -> Any | None:
    """Return an area, line or hoop ``by`` metres farther from the net; None where it would leave the court.

    What lies between painted lines along the court keeps its place.
    """
    points = points_of(setting, item)
    if not points:
        return None
    end = end_of(middle(points)) or "near"
    *_, front, back = _edges(points, end)
    painted = isinstance(item, Area) and _is_painted_row(ground, front) and _is_painted_row(ground, back)
    if painted or front + by < -_SLACK or back + by > ground.baseline + ON_THE_LINE:
        return None
    away = by if end == "far" else -by
    moved = moved_record(item, (0.0, away))
    if isinstance(item, Area | Line) and item.marked == "painted":
        moved = moved.changed(marked="discs" if isinstance(item, Area) else "chalk")
    return moved


def corner_discs_with(setting: Setting, old: Any, new: Any) -> list[Any]:
    """Return the discs and cones that stand on corners of ``old``, set on the same corners of ``new``."""
    before, after = corners_of(old), corners_of(new)
    found = []
    for item in setting.items.values():
        if not isinstance(item, Disc | Cone) or item.place.on is not None:
            continue
        stands = locate(setting, item.place)
        for corner, goal in zip(before, after, strict=False):
            if stands is not None and _near(stands, corner) and corner != goal:
                found.append(item.changed(place=item.place.changed(at=goal)))
                break
    return found


def _near(one: Point, other: Point) -> bool:
    return abs(one[0] - other[0]) <= ON_THE_LINE and abs(one[1] - other[1]) <= ON_THE_LINE


def _edges(corners: Iterable[Point], end: End) -> Edges:
    seen = [as_player(corner, end) for corner in corners]
    across, along = [x for x, _ in seen], [y for _, y in seen]
    return min(across), max(across), min(along), max(along)


def _with_edges(corners: tuple[Point, ...], end: End, old: Edges, new: Edges) -> tuple[Point, Point]:
    """Return the two corners with each coordinate moved from an old edge to the new one, in their order."""

    def moved(corner: Point) -> Point:
        across, along = as_player(corner, end)
        x = new[0] if abs(across - old[0]) <= abs(across - old[1]) else new[1]
        y = new[2] if abs(along - old[2]) <= abs(along - old[3]) else new[3]
        return from_player(x, y, end)

    first, second = corners
    return moved(first), moved(second)


def _is_painted_column(ground: Ground, x: float) -> bool:
    columns = (0.0, ground.singles, *(() if ground.doubles is None else (ground.doubles,)))
    return any(abs(abs(x) - column) <= ON_THE_LINE for column in columns)


def _is_painted_row(ground: Ground, y: float) -> bool:
    rows = (0.0, ground.baseline, *(() if ground.service_line is None else (ground.service_line,)))
    return any(abs(y - row) <= ON_THE_LINE for row in rows)


@dataclass(frozen=True, slots=True)
class _Free:
    """Which edges may move."""

    left: bool
    right: bool
    front: bool
    back: bool

    @property
    def steps(self) -> Edges:
        """How far each edge moves: together a racket across, at the front or else at the back a stride along."""
        share = RACKET / 2 if self.left and self.right else RACKET
        return (
            share if self.left else 0.0,
            share if self.right else 0.0,
            STRIDE if self.front else 0.0,
            STRIDE if self.back and not self.front else 0.0,
        )


def _free(ground: Ground, old: Edges, others: list[Edges]) -> _Free:
    def shared(edge: int, opposite: int) -> bool:
        return any(abs(old[edge] - other[opposite]) <= ON_THE_LINE for other in others)

    return _Free(
        left=not (_is_painted_column(ground, old[0]) or shared(0, 1)),
        right=not (_is_painted_column(ground, old[1]) or shared(1, 0)),
        front=not (_is_painted_row(ground, old[2]) or shared(2, 3)),
        back=not (_is_painted_row(ground, old[3]) or shared(3, 2)),
    )


def _larger(ground: Ground, old: Edges, free: _Free) -> Edges:
    left, right, front, back = free.steps
    return _within((old[0] - left, old[1] + right, old[2] - front, old[3] + back), ground, old)


def _smaller(old: Edges, free: _Free) -> Edges:
    if not (free.left or free.right or free.front or free.back):
        return (old[0], old[1], old[2] + STRIDE, old[3])
    left, right, front, back = free.steps
    if old[1] - old[0] < 2 * RACKET - ON_THE_LINE:
        left = right = 0.0
    if old[3] - old[2] < 2 * STRIDE - ON_THE_LINE:
        front = back = 0.0
    return (old[0] + left, old[1] - right, old[2] + front, old[3] - back)


def _within(new: Edges, ground: Ground, old: Edges) -> Edges:
    """Return edges no farther out than the court goes, or than they were."""
    outer = ground.singles if max(abs(old[0]), abs(old[1])) <= ground.singles + ON_THE_LINE else ground.outer
    return (
        max(new[0], min(-outer, old[0])),
        min(new[1], max(outer, old[1])),
        max(new[2], min(0.0, old[2])),
        min(new[3], max(ground.baseline, old[3])),
    )


def _large_enough(edges: Edges) -> bool:
    return edges[1] - edges[0] >= RACKET / 2 - ON_THE_LINE and edges[3] - edges[2] >= RACKET / 2 - ON_THE_LINE


def _same(old: Edges, new: Edges) -> bool:
    return all(abs(a - b) <= _SLACK for a, b in zip(old, new, strict=True))


def _scaled(area: Area, shape: Polygon, factor: float) -> Area:
    """Return a free shape larger or smaller round its middle."""
    x, y = middle(shape.corners)
    corners = tuple((x + factor * (px - x), y + factor * (py - y)) for px, py in shape.corners)
    return area.changed(shape=shape.changed(corners=corners))
