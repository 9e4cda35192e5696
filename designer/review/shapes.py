"""Errors and cautions: areas that enclose nothing or cross themselves, lines without length, things beyond the fence."""

from __future__ import annotations

import math
from collections.abc import Iterator
from functools import partial
from itertools import pairwise
from typing import Any, Final

from designer.court.regions import RACKET, STRIDE
from designer.drill.base import Point
from designer.drill.drill import Drill
from designer.drill.edits import put
from designer.drill.items import Area, Barrier, Line, Obstacle, Polygon
from designer.drill.places import corners_of, locate, middle
from designer.drill.setting import At, setting_at
from designer.play.layout import points_of, things_placed
from designer.play.shares import crosses_itself
from designer.review.check import Check, called, check, record_name
from designer.wording.telling import Telling

THIN: Final = 0.05
"""A thing narrower than this, in metres, is no area and no line: a ball is wider."""


def shape_checks(told: Telling) -> Iterator[Check]:
    """Yield what is wrong with the shapes and places of one setting."""
    for item in told.setting.items.values():
        if isinstance(item, Area):
            yield from _area(told, item)
        elif isinstance(item, Line | Barrier | Obstacle) and _length(item.corners) < THIN:
            text = f"{called(told, item.id)} begins and ends at one place"
            mend = None if isinstance(item, Obstacle) else partial(_lengthened, at=told.at, id=item.id)
            yield check("error", "empty-line", text, item.id, at=told.at, mend=mend)
    yield from _beyond_the_fence(told)
    yield from _in_one_place(told)


def _area(told: Telling, item: Area) -> Iterator[Check]:
    corners = corners_of(item)
    if not corners:
        return  # a shape that is not known; there is a caution for that
    across, along = [x for x, _ in corners], [y for _, y in corners]
    if min(max(across) - min(across), max(along) - min(along)) < THIN or _encloses_nothing(corners):
        text = f"{called(told, item.id)} encloses nothing: no ball can land in it"
        enlarged = partial(_enlarged, at=told.at, id=item.id)
        yield check("error", "empty-area", text, item.id, at=told.at, mend=enlarged)
    elif isinstance(item.shape, Polygon) and crosses_itself(corners):
        text = f"the edge of {called(told, item.id)} crosses itself: nobody can say what is inside"
        ordered = _in_order(corners)
        mend = None if crosses_itself(ordered) else partial(_with_corners, at=told.at, id=item.id, corners=ordered)
        yield check("error", "crossing-area", text, item.id, at=told.at, mend=mend)


def _encloses_nothing(corners: tuple[Point, ...]) -> bool:
    """Whether all corners lie on one straight line."""
    first, last = max(((a, b) for a in corners for b in corners), key=lambda pair: math.dist(*pair))
    reach = math.dist(first, last)
    apart = (
        abs((last[0] - first[0]) * (y - first[1]) - (last[1] - first[1]) * (x - first[0])) / reach for x, y in corners
    )
    return reach < THIN or max(apart) < THIN


def _in_order(corners: tuple[Point, ...]) -> tuple[Point, ...]:
    """Return ``corners`` in order round their middle."""
    x, y = middle(corners)
    return tuple(sorted(dict.fromkeys(corners), key=lambda corner: math.atan2(corner[1] - y, corner[0] - x)))


def _length(corners: tuple[Point, ...]) -> float:
    return sum(math.dist(a, b) for a, b in pairwise(corners))


def _with_corners(drill: Drill, *, at: At, id: str, corners: tuple[Point, ...]) -> Drill:
    item = setting_at(drill, at).find(id)
    return drill if item is None else put(drill, at, item.changed(shape=item.shape.changed(corners=corners)))


def _enlarged(drill: Drill, *, at: At, id: str) -> Drill:
    """Return ``drill`` with an area of two rackets by a stride where it stands."""
    item = setting_at(drill, at).find(id)
    if item is None:
        return drill
    x, y = middle(corners_of(item))
    low, high = (x - RACKET, y - STRIDE / 2), (x + RACKET, y + STRIDE / 2)
    if isinstance(item.shape, Polygon):
        corners: tuple[Point, ...] = (low, (high[0], low[1]), high, (low[0], high[1]))
    else:
        corners = (low, high)
    return put(drill, at, item.changed(shape=item.shape.changed(corners=corners)))


def _lengthened(drill: Drill, *, at: At, id: str) -> Drill:
    """Return ``drill`` with a line of two rackets across where it stands."""
    item = setting_at(drill, at).find(id)
    if item is None:
        return drill
    x, y = middle(item.corners)
    return put(drill, at, item.changed(corners=((x - RACKET, y), (x + RACKET, y))))


def _beyond_the_fence(told: Telling) -> Iterator[Check]:
    ground = told.ground
    placed: list[tuple[Any, tuple[Point, ...]]] = [
        (item, points_of(told.setting, item, turned=turned)) for item, turned in things_placed(told.setting)
    ]
    spots = ((spot, locate(told.setting, spot.place)) for spot in told.setting.spots.values())
    placed += [(spot, (point,)) for spot, point in spots if point is not None]
    seen: set[str] = set()
    for record, points in placed:
        over = any(abs(x) > ground.side_fence + THIN or abs(y) > ground.back_fence + THIN for x, y in points)
        if over and record.id not in seen:
            seen.add(record.id)
            assumed = " (run-off not stated: the club minimum is assumed)" if ground.assumed else ""
            name = called(told, record.id) if record.id in told.setting.items else record_name(told, record)
            yield check("caution", "outside-fence", f"{name} lies beyond the fence{assumed}", record.id, at=told.at)


def _in_one_place(told: Telling) -> Iterator[Check]:
    """Yield a caution for two people who stand on one another."""
    spots = sorted(told.setting.spots.values(), key=lambda spot: spot.job)
    for number, one in enumerate(spots):
        for other in spots[number + 1 :]:
            here, there = locate(told.setting, one.place), locate(told.setting, other.place)
            if one.job != other.job and here is not None and there is not None and math.dist(here, there) < 0.3:
                text = f"{record_name(told, one)} is {record_name(told, other)} too: two people stand in one place"
                yield check("caution", "same-place", text, one.id, other.id, at=told.at, danger=True)
