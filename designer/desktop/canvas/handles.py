"""The handles of what is picked: which points can be pulled, and the drill when one has been."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Any, Final, Literal

from designer.drill.base import Place, Point
from designer.drill.drill import Drill
from designer.drill.edits import put
from designer.drill.items import Area, BallMachine, Barrier, Ellipse, Line, Obstacle, Polygon, Rectangle
from designer.drill.movement import Run, Shot
from designer.drill.people import Spot
from designer.drill.places import anchor, corners_of, locate
from designer.drill.setting import At, Setting, setting_at
from designer.play.sequence import Sequence

Part = Literal["corner", "landing", "contact", "end", "way-point", "new way-point", "facing"]

FACING_REACH: Final = 24.0
"""How far from the place the handle of facing stands, in mark units: clear of the disc, the nose and the racket."""

HOLDERS: Final = ("area", "hoop", "cone", "disc", "line", "basket")
"""The kinds of item that the end of an arrow is tied to when it is let go on one."""


@dataclass(frozen=True, slots=True)
class Handle:
    """One point of the record ``id`` that can be pulled; ``at`` in metres on court."""

    id: str
    part: Part
    index: int
    at: Point


def handles(setting: Setting, id: str, unit: float, play: Sequence | None = None) -> tuple[Handle, ...]:
    """Return the handles of the record called ``id``, () where it has none; ``unit`` is the mark unit in metres.

    ``play`` says where arrows begin; without it, those that begin at a person have no handle there.
    """
    record = setting.find(id)
    if isinstance(record, Line | Barrier | Obstacle | Area):
        return tuple(Handle(id, "corner", index, corner) for index, corner in enumerate(corners_of(record)))
    if isinstance(record, Shot):
        return _shot_handles(setting, record, play)
    if isinstance(record, Run):
        return _run_handles(setting, record, play)
    if isinstance(record, Spot | BallMachine):
        at = locate(setting, record.place)
        if at is None or getattr(record, "task", "plays") != "plays":
            return ()
        facing = math.radians(facing_of(record, at))
        reach = FACING_REACH * unit
        return (Handle(id, "facing", 0, (at[0] + reach * math.sin(facing), at[1] + reach * math.cos(facing))),)
    return ()


def _shot_handles(setting: Setting, shot: Shot, play: Sequence | None) -> tuple[Handle, ...]:
    step = None if play is None else play.step(shot.id)
    start = locate(setting, shot.contact) if shot.contact is not None else None
    if step is not None and step.placed:
        start = step.contact
    end = locate(setting, shot.to) if shot.to is not None else None
    found = [] if start is None else [Handle(shot.id, "contact", 0, start)]
    return (*found, Handle(shot.id, "landing", 0, end)) if end is not None else tuple(found)


def _run_handles(setting: Setting, run: Run, play: Sequence | None) -> tuple[Handle, ...]:
    end = locate(setting, run.to)
    found = [Handle(run.id, "way-point", index, point) for index, point in enumerate(run.via)]
    path = () if play is None else play.run_paths.get(run.id, ())
    if len(path) == 2:
        (x0, y0), (x1, y1) = path
        found.append(Handle(run.id, "new way-point", 0, ((x0 + x1) / 2, (y0 + y1) / 2)))
    if end is not None:
        found.append(Handle(run.id, "end", 0, end))
    return tuple(found)


def facing_of(record: Spot | BallMachine, at: Point) -> int:
    """Return where someone or a machine looks, in degrees: as stored, else towards the net."""
    if record.facing is not None:
        return record.facing
    return 0 if at[1] <= 0 else 180


def pulled(drill: Drill, at: At, handle: Handle, to: Point, under: tuple[str, ...] = ()) -> Drill:
    """Return ``drill`` with ``handle`` pulled to ``to``; an end let go over one of ``under`` is tied to it."""
    setting = setting_at(drill, at)
    record = setting.find(handle.id)
    if record is None:
        return drill
    changed = _pulled(setting, record, handle, to, under)
    return drill if changed == record else put(drill, at, changed)


def _pulled(setting: Setting, record: Any, handle: Handle, to: Point, under: tuple[str, ...]) -> Any:
    if handle.part == "corner":
        return _reshaped(record, handle.index, to)
    if handle.part in ("landing", "end"):
        return record.changed(to=tied(setting, to, under))
    if handle.part == "contact":
        return _met_elsewhere(setting, record, to, under)
    if handle.part == "way-point":
        return record.changed(via=(*record.via[: handle.index], to, *record.via[handle.index + 1 :]))
    if handle.part == "new way-point":
        return record.changed(via=(to,))
    return _turned(setting, record, to)


def _reshaped(record: Any, index: int, to: Point) -> Any:
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
        return record.changed(shape=shape.changed(corners=corners))
    if isinstance(shape, Polygon):
        return record.changed(shape=shape.changed(corners=_with_corner(shape.corners, index, to)))
    return record.changed(corners=_with_corner(record.corners, index, to))


def _with_corner(corners: tuple[Point, ...], index: int, to: Point) -> tuple[Point, ...]:
    return (*corners[:index], to, *corners[index + 1 :])


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
