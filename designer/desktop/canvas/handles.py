"""The handles of what is picked: which points can be pulled, and the drill when one has been."""

from __future__ import annotations

import math
from collections.abc import Iterator
from collections.abc import Sequence as Sequence_
from dataclasses import dataclass
from itertools import pairwise
from typing import Any, Final, Literal

from designer.desktop.canvas.refused import Refused
from designer.drawing.geometry import Route, point_to_piece
from designer.drill.base import Place, Point
from designer.drill.drill import Drill
from designer.drill.edits import put
from designer.drill.items import Area, BallMachine, Barrier, Ellipse, Line, Obstacle, Rectangle
from designer.drill.movement import Run, Shot
from designer.drill.people import Spot
from designer.drill.places import anchor, corners_of, locate
from designer.drill.setting import At, Setting, setting_at
from designer.play.sequence import Sequence

Part = Literal[
    "corner", "new corner", "side", "landing", "contact", "bend", "end", "way-point", "new way-point", "facing"
]

BETWEEN: Final = frozenset({"new corner", "new way-point", "bend", "side"})
"""Handles between two others: drawn smaller and round, and only where there is room for them."""

ROOM: Final = 26.0
"""A leg shorter than this, in mark units, has no handle in its middle."""

STEP: Final = 0.15
"""An arrow shorter than this, in metres, goes nowhere."""

FACING_REACH: Final = 24.0
"""How far from the place the handle of facing stands, in mark units: clear of the disc, the nose and the racket."""

HOLDERS: Final = ("area", "hoop", "cone", "disc", "line", "basket")
"""The kinds of item that the end of an arrow is tied to when it is let go on one."""


@dataclass(frozen=True, slots=True)
class Handle:
    """One point of the record ``id`` that can be pulled; ``at`` in metres on court.

    ``base`` is the straight way of an arrow, from start to end, where the handle is on one.
    """

    id: str
    part: Part
    index: int
    at: Point
    base: tuple[Point, Point] | None = None


def handles(setting: Setting, id: str, unit: float, play: Sequence | None = None) -> tuple[Handle, ...]:
    """Return the handles of the record called ``id``, () where it has none; ``unit`` is the mark unit in metres.

    ``play`` says where arrows begin; without it, those that begin at a person have no handle there.
    """
    record = setting.find(id)
    if isinstance(record, Line | Barrier | Obstacle | Area):
        return tuple(_corner_handles(record, ROOM * unit))
    if isinstance(record, Shot):
        return _shot_handles(setting, record, play, ROOM * unit)
    if isinstance(record, Run):
        return tuple(_run_handles(setting, record, play, ROOM * unit))
    if isinstance(record, Spot | BallMachine):
        at = locate(setting, record.place)
        if at is None or getattr(record, "task", "plays") != "plays":
            return ()
        facing = math.radians(facing_of(record, at))
        reach = FACING_REACH * unit
        return (Handle(id, "facing", 0, (at[0] + reach * math.sin(facing), at[1] + reach * math.cos(facing))),)
    return ()


def _corner_handles(record: Line | Barrier | Obstacle | Area, room: float) -> Iterator[Handle]:
    corners = corners_of(record)
    boxed = isinstance(record, Area) and isinstance(record.shape, Rectangle | Ellipse)
    yield from (Handle(record.id, "corner", index, corner) for index, corner in enumerate(corners))
    ends = [*pairwise(corners)]
    if isinstance(record, Area | Obstacle) and len(corners) > 2:
        ends.append((corners[-1], corners[0]))
    for index, (one, other) in enumerate(ends):
        if math.dist(one, other) >= room:
            middle = ((one[0] + other[0]) / 2, (one[1] + other[1]) / 2)
            yield (
                Handle(record.id, "side", index, middle)
                if boxed
                else Handle(record.id, "new corner", index + 1, middle)
            )


def _shot_handles(setting: Setting, shot: Shot, play: Sequence | None, room: float) -> tuple[Handle, ...]:
    step = None if play is None else play.step(shot.id)
    start = locate(setting, shot.contact) if shot.contact is not None else None
    if step is not None and step.placed:
        start = step.contact
    end = locate(setting, shot.to) if shot.to is not None else None
    found = [] if start is None else [Handle(shot.id, "contact", 0, start, None if end is None else (start, end))]
    if end is None:
        return tuple(found)
    if start is not None and math.dist(start, end) >= room:
        found.append(Handle(shot.id, "bend", 0, bent(start, end, shot.bend or 0.0), (start, end)))
    return (*found, Handle(shot.id, "landing", 0, end, None if start is None else (start, end)))


def bent(start: Point, end: Point, bend: float) -> Point:
    """Return the middle of a way that leaves the straight line by ``bend`` metres to the right."""
    length = math.dist(start, end) or 1.0
    right = ((end[1] - start[1]) / length, (start[0] - end[0]) / length)
    return ((start[0] + end[0]) / 2 + right[0] * bend, (start[1] + end[1]) / 2 + right[1] * bend)


def _run_handles(setting: Setting, run: Run, play: Sequence | None, room: float) -> Iterator[Handle]:
    end = locate(setting, run.to)
    path = () if play is None else play.run_paths.get(run.id, ())
    base = (path[0], path[-1]) if len(path) > 1 else None
    yield from (Handle(run.id, "way-point", index, point, base) for index, point in enumerate(run.via))
    if len(path) == len(run.via) + 2:
        for index, (one, other) in enumerate(pairwise(path)):
            if math.dist(one, other) >= room:
                yield Handle(run.id, "new way-point", index, _between(path, index), base)
    if end is not None:
        yield Handle(run.id, "end", 0, end, base)


def _between(path: Sequence_[Point], index: int) -> Point:
    """Return the middle of one leg of a run as it is drawn: a straight line, else a curve through all points."""
    if len(path) == 2:
        return ((path[0][0] + path[1][0]) / 2, (path[0][1] + path[1][1]) / 2)
    drawn = Route(path).samples
    legs = len(path) - 1
    return drawn[round((index + 0.5) * (len(drawn) - 1) / legs)]


def facing_of(record: Spot | BallMachine, at: Point) -> int:
    """Return where someone or a machine looks, in degrees: as stored, else towards the net."""
    if record.facing is not None:
        return record.facing
    return 0 if at[1] <= 0 else 180


def is_closed(record: Any) -> bool:
    """Whether a record's corners go round it."""
    return isinstance(record, Area | Obstacle)


def can_gain_corners(record: Any) -> bool:
    """Whether a corner can be put into a record between two others."""
    return not isinstance(getattr(record, "shape", None), Rectangle | Ellipse)


def pulled(
    drill: Drill, at: At, handle: Handle, to: Point, under: tuple[str, ...] = (), *, reach: float = 0.0
) -> Drill:
    """Return ``drill`` with ``handle`` pulled to ``to``; an end let go over one of ``under`` is tied to it.

    Within ``reach`` metres of the straight line a bend is straight, and a corner or way-point is taken out. Raises ``Refused``
    where nothing would be left to draw.
    """
    setting = setting_at(drill, at)
    record = setting.find(handle.id)
    if record is None:
        return drill
    changed = _pulled(setting, record, handle, to, under, reach)
    return drill if changed == record else put(drill, at, changed)


def _pulled(setting: Setting, record: Any, handle: Handle, to: Point, under: tuple[str, ...], reach: float) -> Any:
    part = handle.part
    if part in ("corner", "side", "new corner"):
        return _reshaped(record, handle, to, reach)
    if part in ("way-point", "new way-point"):
        return _led(record, handle, to, reach)
    if part == "facing":
        return _turned(setting, record, to)
    if part == "bend":
        return record if handle.base is None else record.changed(bend=_bend(*handle.base, to, reach))
    if handle.base is not None and math.dist(handle.base[1 if part == "contact" else 0], to) < STEP:
        raise Refused("It has to go somewhere")
    if part == "contact":
        return _met_elsewhere(setting, record, to, under)
    return record.changed(to=tied(setting, to, under))


def _reshaped(record: Any, handle: Handle, to: Point, reach: float) -> Any:
    from designer.desktop.canvas import shaping

    if handle.part == "side":
        return shaping.with_side_at(record, handle.index, to)
    if handle.part == "new corner":
        return shaping.with_new_corner(record, handle.index, to, reach)
    without = shaping.without_corner_on_line(record, handle.index, to, reach)
    return shaping.with_corner_at(record, handle.index, to) if without is None else without


def _led(run: Run, handle: Handle, to: Point, reach: float) -> Run:
    """Return ``run`` by way of ``to``, or without a way-point that lies on the straight line between its neighbours."""
    kept = run.via if handle.part == "new way-point" else (*run.via[: handle.index], *run.via[handle.index + 1 :])
    if handle.base is not None:
        way = (handle.base[0], *kept, handle.base[1])
        if point_to_piece(to, way[handle.index], way[handle.index + 1]) <= reach:
            return run.changed(via=kept)
    return run.changed(via=(*kept[: handle.index], to, *kept[handle.index :]))


def _bend(start: Point, end: Point, to: Point, reach: float) -> float | None:
    """Return by how many metres to the right a ball's way through ``to`` bends, None for a straight one."""
    length = math.dist(start, end)
    middle = ((start[0] + end[0]) / 2, (start[1] + end[1]) / 2)
    aside = ((to[0] - middle[0]) * (end[1] - start[1]) - (to[1] - middle[1]) * (end[0] - start[0])) / (length or 1.0)
    if abs(aside) <= max(reach, 0.005):
        return None
    return round(min(max(aside, -length / 2), length / 2), 2)


def _met_elsewhere(setting: Setting, shot: Shot, to: Point, under: tuple[str, ...]) -> Shot:
    """Return ``shot`` hit from ``to``; over a person it becomes that person's, hit where the person stands."""
    for id in under:
        spot = setting.spots.get(id)
        if spot is not None:
            return shot.changed(by=spot.job, contact=None)
    return shot.changed(contact=Place(at=to))


def _turned(setting: Setting, record: Spot | BallMachine, to: Point) -> Spot | BallMachine:
    at = locate(setting, record.place)
    if at is None or at == to:
        return record
    return record.changed(facing=round(math.degrees(math.atan2(to[0] - at[0], to[1] - at[1]))) % 360)


def tied(setting: Setting, point: Point, under: tuple[str, ...]) -> Place:
    """Return the place at ``point``, measured from the first of ``under`` that an arrow's end can be tied to."""
    for id in under:
        item = setting.items.get(id)
        if item is None or item.kind not in HOLDERS:
            continue
        base = anchor(setting, id)
        if base is not None:
            return Place(on=id, at=(point[0] - base[0], point[1] - base[1]))
    return Place(at=point)
