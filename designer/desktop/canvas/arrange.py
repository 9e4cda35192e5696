"""Several things at once: in a line, evenly spread, copied to the other half, to the other end or in a row. Pure edits."""

from __future__ import annotations

import itertools
from collections.abc import Callable, Collection
from typing import Any, Final, Literal

from designer.court.readings import RACKET, STRIDE
from designer.desktop.canvas.placing import copied, fresh_id, placed
from designer.drill.base import Place, Point
from designer.drill.drill import Drill
from designer.drill.edits import duplicate, move, put
from designer.drill.ids import Chooser
from designer.drill.items import Ellipse, Polygon, Rectangle
from designer.drill.places import anchor, locate
from designer.drill.setting import At, Setting, setting_at

Across = Literal["across", "along"]
Side = Literal["half", "end"]

MOST_IN_A_ROW: Final = 50
"""A row of more than this is a slip of the keyboard."""


def standing(setting: Setting, ids: Collection[str]) -> dict[str, Point]:
    """Return where the people and things among ``ids`` stand; balls and runs follow what they are tied to."""
    there = (id for id in (*setting.spots, *setting.items) if id in ids)
    return {id: at for id in there if (at := anchor(setting, id)) is not None}


def aligned(drill: Drill, at: At, ids: Collection[str], direction: Across) -> Drill:
    """Return ``drill`` with ``ids`` in one line that runs ``direction``, midway between the outermost of them."""
    axis = 1 if direction == "across" else 0
    values = [point[axis] for point in standing(setting_at(drill, at), ids).values()]
    if len(values) < 2:
        return drill
    middle = (min(values) + max(values)) / 2
    return _sent(drill, at, ids, axis, dict.fromkeys(standing(setting_at(drill, at), ids), middle))


def spread(drill: Drill, at: At, ids: Collection[str], direction: Across) -> Drill:
    """Return ``drill`` with ``ids`` at equal spaces ``direction``; the outermost two stay where they are."""
    axis = 0 if direction == "across" else 1
    there = standing(setting_at(drill, at), ids)
    order = sorted(there, key=lambda id: there[id][axis])
    if len(order) < 3:
        return drill
    first, last = there[order[0]][axis], there[order[-1]][axis]
    step = (last - first) / (len(order) - 1)
    return _sent(drill, at, ids, axis, {id: first + step * place for place, id in enumerate(order)})


def wider(setting: Setting, ids: Collection[str]) -> Across:
    """Return the direction in which ``ids`` stand farther apart."""
    points = standing(setting, ids).values()
    across, along = ([point[axis] for point in points] or [0.0] for axis in (0, 1))
    return "across" if max(across) - min(across) >= max(along) - min(along) else "along"


def _sent(drill: Drill, at: At, ids: Collection[str], axis: int, to: dict[str, float]) -> Drill:
    """Return ``drill`` with each of ``ids`` where ``to`` says along one axis; one that is tied to another comes after it."""
    for _ in range(2):
        for id in standing(setting_at(drill, at), ids):
            stands = anchor(setting_at(drill, at), id)
            if stands is not None and abs(by := to[id] - stands[axis]) > 1e-9:
                drill = move(drill, at, (id,), (by, 0.0) if axis == 0 else (0.0, by))
    return drill


def copied_over(
    drill: Drill, at: At, ids: Collection[str], side: Side, source: Chooser
) -> tuple[Drill, tuple[str, ...]]:
    """Return ``drill`` with copies of ``ids`` on the other half or at the other end, and the ids of the copies.

    The other half is seen in a mirror on the centre line; the other end is the court turned half round. The copy of a person is
    another player. Raises ``NoLetterLeft``.
    """

    def there(point: Point) -> Point:
        return (0.0 - point[0], point[1] if side == "half" else 0.0 - point[1])

    def looking(degrees: int) -> int:
        return (-degrees if side == "half" else degrees + 180) % 360

    setting = setting_at(drill, at)
    drill, copies = duplicate(drill, at, ids, (0.0, 0.0), source)
    made = setting_at(drill, at)
    drill = put(drill, at, *(turned(made.find(id), there, looking) for id in copies))
    for id in sorted(setting.spots.keys() & set(ids)):
        stood = locate(setting, setting.spots[id].place)
        if stood is not None:
            new = fresh_id(drill, "player", source)
            drill, copies = placed(drill, at, "player", there(stood), new), (*copies, new)
    return drill, copies


def turned(record: Any, there: Callable[[Point], Point], looking: Callable[[int], int]) -> Any:
    """Return ``record`` with every point of it where ``there`` sends it, and looking as ``looking`` says."""
    values: dict[str, Any] = {
        name: old.changed(at=there(old.at))
        for name in ("place", "to", "contact")
        if isinstance(old := record.declared(name), Place)
    }
    shape = record.declared("shape")
    if isinstance(shape, Rectangle | Ellipse):
        (x0, y0), (x1, y1) = map(there, shape.corners)
        values["shape"] = shape.changed(corners=((min(x0, x1), min(y0, y1)), (max(x0, x1), max(y0, y1))))
    elif isinstance(shape, Polygon):
        values["shape"] = shape.changed(corners=tuple(map(there, shape.corners)))
    for name in ("corners", "via"):
        if points := record.declared(name):
            values[name] = tuple(map(there, points))
    if record.declared("facing") is not None:
        values["facing"] = looking(record.facing)
    if record.declared("bend") is not None and there((1.0, 1.0))[0] * there((1.0, 1.0))[1] < 0:
        values["bend"] = -record.bend  # in a mirror what bent to the right bends to the left
    return record.changed(**values) if values else record


def in_a_row(
    drill: Drill, at: At, ids: Collection[str], count: int, direction: Across, source: Chooser
) -> tuple[Drill, tuple[str, ...]]:
    """Return ``drill`` with ``ids`` and copies of them as a row of ``count``, and the ids of the copies.

    They stand one racket apart across or one stride along, towards the middle of the court. Copies of people are other players.
    Raises ``ValueError`` with a sentence for a count that makes no row or where only balls and runs are picked,
    ``NoLetterLeft``, and ``pydantic.ValidationError`` for a row off the drawing.
    """
    if not 2 <= count <= MOST_IN_A_ROW:
        raise ValueError(f"A row has 2 to {MOST_IN_A_ROW} things, not {count}.")
    there = standing(setting_at(drill, at), ids)
    if not there:
        raise ValueError("Balls and runs make no row: pick people or things.")
    points = list(there.values())
    axis, step = (0, RACKET) if direction == "across" else (1, STRIDE)
    middle = sum(point[axis] for point in points) / max(1, len(points))
    widths = [b - a for a, b in itertools.pairwise(sorted(point[axis] for point in points))]
    step = (sum(widths) + step) * (-1 if middle > 0 else 1)
    made: tuple[str, ...] = ()
    for place in range(1, count):
        by = (step * place, 0.0) if axis == 0 else (0.0, step * place)
        drill, copies = copied(drill, at, there, by, source)
        made += copies
    return drill, made


def of_the_same_kind(setting: Setting, ids: Collection[str]) -> frozenset[str]:
    """Return the ids of all that is drawn and of a kind with one of ``ids``: cones with cones, runs with runs."""
    kinds = {_kind(record) for id in ids if (record := setting.find(id)) is not None}
    drawn = (*setting.spots.values(), *setting.items.values(), *setting.shots.values(), *setting.runs.values())
    return frozenset(record.id for record in drawn if _kind(record) in kinds)


def _kind(record: Any) -> tuple[type, str]:
    return type(record), str(getattr(record, "kind", ""))
