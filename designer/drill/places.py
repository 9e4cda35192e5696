"""Where a place is: from what it is tied to, else from the net's centre."""

from __future__ import annotations

from typing import Any

from designer.drill.base import Place, Point, Record, to_tenth_millimetre
from designer.drill.items import Ellipse, Polygon, Rectangle
from designer.drill.movement import Run, Shot
from designer.drill.setting import Setting


def is_letter(name: str) -> bool:
    """Whether ``name`` is a job's letter rather than an id."""
    return len(name) == 1 and "A" <= name <= "Z"


def moved(point: Point, by: Point) -> Point:
    """Return ``point`` moved by ``by``, both in metres, to 0.1 mm."""
    return (to_tenth_millimetre(point[0] + by[0]), to_tenth_millimetre(point[1] + by[1]))


def middle(corners: tuple[Point, ...]) -> Point:
    """Return the middle of the smallest upright rectangle round ``corners``."""
    across = [x for x, _ in corners]
    along = [y for _, y in corners]
    return (
        to_tenth_millimetre((min(across) + max(across)) / 2),
        to_tenth_millimetre((min(along) + max(along)) / 2),
    )


def corners_of(record: Any) -> tuple[Point, ...]:
    """Return the corners an item is drawn by, () where it has none."""
    if not isinstance(record, Record):
        return ()
    shape = record.declared("shape")
    if isinstance(shape, Rectangle | Ellipse):
        (left, low), (right, high) = shape.corners
        return ((left, low), (right, low), (right, high), (left, high))
    if isinstance(shape, Polygon):
        return shape.corners
    return record.declared("corners") or ()


def locate(setting: Setting, place: Place) -> Point | None:
    """Return the point of ``place`` in metres, None where it is tied to something that is not there, or to itself."""
    return _locate(setting, place, frozenset())


def anchor(setting: Setting, on: str) -> Point | None:
    """Return where the item, spot, person, shot's landing or run's end called ``on`` is, None where there is none."""
    return _anchor(setting, on, frozenset())


def _locate(setting: Setting, place: Place, seen: frozenset[str]) -> Point | None:
    if place.on is None:
        return place.at
    base = _anchor(setting, place.on, seen)
    return None if base is None else moved(base, place.at)


def _anchor(setting: Setting, on: str, seen: frozenset[str]) -> Point | None:
    if on in seen:
        return None
    seen = seen | {on}
    record = setting.spot_of(on) if is_letter(on) else setting.find(on)
    if record is None:
        return None
    own = record.to if isinstance(record, Shot | Run) else record.declared("place")
    if isinstance(own, Place):
        return _locate(setting, own, seen)
    corners = corners_of(record)
    return middle(corners) if corners else None
