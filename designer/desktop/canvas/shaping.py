"""Shapes as a hand changes them: corners pulled, put in and taken out, one form made another. Pure functions of records."""

from __future__ import annotations

import math
from typing import Any, Final, Literal

from designer.desktop.canvas.handles import can_gain_corners, is_closed
from designer.desktop.canvas.measures import pieces_needed
from designer.desktop.canvas.refused import Refused
from designer.drawing.geometry import point_to_piece, round_points
from designer.drill.base import ON_THE_LINE, Point
from designer.drill.items import Area, Ellipse, Line, Polygon, Rectangle
from designer.drill.places import corners_of
from designer.play.shares import crosses_itself

Form = Literal["rectangle", "ellipse", "polygon"]

LEAST: Final = 2 * ON_THE_LINE
"""What is smaller than this, in metres, has no size."""

ROUND_CORNERS: Final = 24
"""A round area that becomes one with corners has so many."""


def with_corner_at(record: Any, index: int, to: Point) -> Any:
    """Return ``record`` with its corner ``index`` at ``to``. Raises ``Refused`` where nothing would be left of it."""
    shape = getattr(record, "shape", None)
    if isinstance(shape, Rectangle | Ellipse):
        (left, low), (right, high) = shape.corners
        x, y = to
        corners = (
            ((x, y), (right, high)),
            ((left, y), (x, high)),
            ((left, low), (x, y)),
            ((x, low), (right, y)),
        )[index]
        return _with_box(record, corners)
    there = corners_of(record)
    return with_corners(record, (*there[:index], to, *there[index + 1 :]))


def with_side_at(record: Any, index: int, to: Point) -> Any:
    """Return a rectangle or a round area with one side at ``to``: 0 the near one, 1 the right, 2 the far, 3 the left."""
    (left, low), (right, high) = record.shape.corners
    x, y = to
    corners = (
        ((left, y), (right, high)),
        ((left, low), (x, high)),
        ((left, low), (right, y)),
        ((x, low), (right, high)),
    )[index]
    return _with_box(record, corners)


def _with_box(record: Any, corners: tuple[Point, Point]) -> Any:
    (x0, y0), (x1, y1) = corners
    if min(abs(x1 - x0), abs(y1 - y0)) < LEAST:
        raise Refused("It needs some width and some depth")
    return record.changed(shape=record.shape.changed(corners=corners))


def with_corners(record: Any, corners: tuple[Point, ...]) -> Any:
    """Return ``record`` with ``corners``. A line keeps as many pieces as it needs, where it had as many as it needed.

    Raises ``Refused`` for an outline that crosses itself and did not before, and for corners all in one place.
    """
    if max(math.dist(corners[0], corner) for corner in corners) < LEAST:
        raise Refused("It needs some length")
    if is_closed(record) and len(corners) > 2 and crosses_itself(corners) and not crosses_itself(corners_of(record)):
        raise Refused("An outline cannot cross itself")
    shape = getattr(record, "shape", None)
    if shape is not None:
        return record.changed(shape=shape.changed(corners=corners))
    if isinstance(record, Line) and record.pieces is not None:
        needed = pieces_needed(record.corners, record.marked)
        if record.pieces == needed:
            return record.changed(corners=corners, pieces=pieces_needed(corners, record.marked))
    return record.changed(corners=corners)


def with_new_corner(record: Any, index: int, to: Point, reach: float) -> Any:
    """Return ``record`` with one more corner at ``to``, which comes to be the corner ``index``.

    Within ``reach`` metres of the straight line there is nothing to put in, and ``record`` is returned.
    """
    corners = corners_of(record)
    if point_to_piece(to, corners[index - 1], corners[index % len(corners)]) <= reach:
        return record
    return with_corners(record, (*corners[:index], to, *corners[index:]))


def without_corner_on_line(record: Any, index: int, to: Point, reach: float) -> Any | None:
    """Return ``record`` without its corner ``index`` where that is pulled straight, to ``to``; None where it is not.

    So a corner is taken out: by laying it on the straight line between its neighbours.
    """
    corners = corners_of(record)
    least = 3 if is_closed(record) else 2
    inner = is_closed(record) or 0 < index < len(corners) - 1
    if len(corners) <= least or not inner or not can_gain_corners(record):
        return None
    if point_to_piece(to, corners[index - 1], corners[(index + 1) % len(corners)]) > reach:
        return None
    return with_corners(record, (*corners[:index], *corners[index + 1 :]))


def as_form(area: Area, form: Form) -> Area:
    """Return ``area`` as a rectangle, a round area or one with corners of its own, in the same box."""
    corners = corners_of(area)
    if form == "polygon":
        if isinstance(area.shape, Ellipse):
            corners = ellipse_corners(corners)
        return area.changed(shape=Polygon(form="polygon", corners=corners))
    across, along = [x for x, _ in corners], [y for _, y in corners]
    box = ((min(across), min(along)), (max(across), max(along)))
    shape = Rectangle(form="rectangle", corners=box) if form == "rectangle" else Ellipse(form="ellipse", corners=box)
    return area.changed(shape=shape)


def ellipse_corners(box: tuple[Point, ...]) -> tuple[Point, ...]:
    """Return corners round the ellipse that fills the rectangle with the corners ``box``."""
    across, along = [x for x, _ in box], [y for _, y in box]
    centre = ((min(across) + max(across)) / 2, (min(along) + max(along)) / 2)
    return round_points(centre, ((max(across) - min(across)) / 2, (max(along) - min(along)) / 2), ROUND_CORNERS)
