"""What things on the court are called: in the names of steps, and to whoever listens instead of looking."""

from __future__ import annotations

from collections.abc import Collection
from typing import Any

from designer.court.standards import Ground
from designer.desktop.view import Units
from designer.drill.items import Area, Line, Note, Obstacle
from designer.drill.kinds import kind_of
from designer.drill.movement import FEEDS, Run, Shot
from designer.drill.people import Spot
from designer.drill.places import anchor, corners_of, locate
from designer.drill.setting import Setting
from designer.wording.places import place_words


def called(setting: Setting, ids: Collection[str]) -> str:
    """Return what the records ``ids`` are called in the name of a step: "cone", "player A", "3 items"."""
    records = [record for id in ids if (record := setting.find(id)) is not None]
    if len(records) != 1:
        return f"{len(records)} items"
    return _short(records[0])


def _short(record: Any) -> str:
    if isinstance(record, Spot):
        return f"player {record.job}"
    if isinstance(record, Shot):
        return "feed" if record.stroke in FEEDS else "ball"
    if isinstance(record, Run):
        return f"run of {record.by}"
    if isinstance(record, Area | Line | Obstacle) and record.name:
        return f"{record.kind} “{record.name}”"
    return str(getattr(record, "kind", kind_of(record).removesuffix("s")))


def full_name(setting: Setting, id: str) -> str:
    """Return the name of one thing, numbered where there are several of its kind: "Cone 2", "Player A", "Ball 2 of B"."""
    record = setting.find(id)
    if record is None:
        return ""
    name = _short(record)
    if isinstance(record, Shot):
        name = f"{name} of {record.by}"
    elif isinstance(record, Note):
        name = f"note “{record.text}”"
    same = [
        other.id for _, other in setting.records() if type(other) is type(record) and _short(other) == _short(record)
    ]
    if len(same) > 1:
        kind, of, whose = name.partition(" of ") if isinstance(record, Shot | Run) else (name, "", "")
        name = f"{kind} {same.index(id) + 1}{of}{whose}"
    return name[:1].upper() + name[1:]


def description(setting: Setting, ground: Ground, id: str, units: Units) -> str:
    """Return where one thing is, from the nearest painted lines; "" where it has no place."""
    record = setting.find(id)
    if record is None:
        return ""

    def words(point: tuple[float, float]) -> str:
        return place_words(ground, point, units)

    if isinstance(record, Shot):
        start = locate(setting, record.contact) if record.contact is not None else anchor(setting, record.by)
        end = locate(setting, record.to) if record.to is not None else None
        ends = [f"from {words(start)}" if start else "", f"lands {words(end)}" if end else "lands anywhere in play"]
        return ", ".join(part for part in ends if part)
    if isinstance(record, Run):
        end = locate(setting, record.to)
        return f"to {words(end)}" if end else ""
    corners = corners_of(record)
    if len(corners) > 1:
        last = corners[2] if len(corners) == 4 else corners[-1]
        return f"from {words(corners[0])} to {words(last)}"
    at = anchor(setting, id)
    return words(at) if at is not None else ""


def words_of(setting: Setting, ground: Ground, id: str, units: Units) -> str:
    """Return one thing with where it is: "Cone 2, 2 rackets in from the left singles line"; "" where it is not there."""
    where = description(setting, ground, id, units)
    return f"{full_name(setting, id)}, {where}" if where else full_name(setting, id)
