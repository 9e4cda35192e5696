"""What stands on the court, copies at the other end included."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from designer.drill.base import Place, Point, to_tenth_millimetre
from designer.drill.items import Thing
from designer.drill.places import corners_of, locate, moved
from designer.drill.setting import Setting


def turned_point(point: Point) -> Point:
    """Return ``point`` turned half round the net's centre: the same place at the other end."""
    return (to_tenth_millimetre(-point[0]), to_tenth_millimetre(-point[1]))


def turned_facing(facing: int) -> int:
    """Return a facing, in whole degrees, turned half round."""
    return (facing + 180) % 360


def things_placed(setting: Setting) -> Iterator[tuple[Any, bool]]:
    """Yield (item, turned) for everything that is put on the court; ``turned`` for the copy at the other end."""
    for item in setting.items.values():
        yield item, False
        if isinstance(item, Thing) and item.both_ends:
            yield item, True


def points_of(setting: Setting, item: Any, *, turned: bool = False) -> tuple[Point, ...]:
    """Return where ``item`` stands: its place, or its corners; () where it has none. ``turned`` for its copy."""
    place = getattr(item, "place", None)
    if isinstance(place, Place):
        point = locate(setting, place)
        points: tuple[Point, ...] = () if point is None else (point,)
    else:
        points = corners_of(item)
    return tuple(map(turned_point, points)) if turned else points


def located_at_end(setting: Setting, place: Place, far: bool) -> Point | None:  # noqa: FBT001
    """Return the point of ``place``, taken at the far end or the near one where it is tied to a thing at both ends."""
    point = locate(setting, place)
    if point is None or place.on is None:
        return point
    item = setting.items.get(place.on)
    if not (isinstance(item, Thing) and item.both_ends):
        return point
    base = moved(point, (-place.at[0], -place.at[1]))
    if base[1] == 0 or (base[1] > 0) == far:
        return point
    return turned_point(point)
