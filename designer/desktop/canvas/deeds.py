"""What is done to what is picked, by key or menu: delete, duplicate, nudge, pick all, walk from thing to thing."""

from __future__ import annotations

from collections.abc import Collection
from typing import Any, Final

from pydantic import ValidationError

from designer.court.readings import RACKET, STRIDE
from designer.desktop.canvas.arrows import depths
from designer.desktop.canvas.bench import Bench
from designer.desktop.canvas.names import called
from designer.desktop.canvas.placing import NoLetterLeft, copied
from designer.desktop.names import name_of
from designer.desktop.view import Units
from designer.drill.base import Point
from designer.drill.edits import delete, move
from designer.drill.references import renamed
from designer.drill.setting import Setting
from designer.wording.counts import listed

FINE: Final = 0.05
"""A fine nudge, in metres."""

HALF_UNITS: Final[dict[Units, Point]] = {
    "rackets": (RACKET / 2, STRIDE / 2),
    "metres": (0.5, 0.5),
    "feet": (0.1524, 0.1524),
}
"""Half a unit across and along, in metres: half a racket and half a stride, half a metre, half a foot."""

COPY_BY: Final[Point] = (RACKET, -STRIDE)
"""How far from its original a copy comes to lie."""

ON_COURT: Final = ("spots", "items", "shots", "runs")


def on_court(setting: Setting) -> frozenset[str]:
    """Return the ids of all that is drawn."""
    return frozenset(id for kind in ON_COURT for id in getattr(setting, kind))


def delete_picked(bench: Bench) -> bool:
    """Delete what is picked on the court; return False where nothing is."""
    ids = bench.view.selection & on_court(bench.setting)
    if not ids:
        return False
    take_away(bench, f"Delete {called(bench.setting, ids)}", ids)
    return True


def take_away(bench: Bench, label: str, ids: Collection[str]) -> None:
    """Delete ``ids`` as one step called ``label``, and say which rules and points still speak of them."""
    speaking = spoken_of(bench.setting, ids)
    bench.perform(label, delete(bench.drill, bench.at, ids))
    if speaking and not bench.document.read_only:
        names = [name_of(bench.setting, record) for record in speaking]
        whole = listed([name if name[-1].isdigit() else f"the {name}" for name in names])
        verb = "speaks" if len(names) == 1 and names[0] != "points" else "speak"
        bench.said.emit(f"{whole[:1].upper()}{whole[1:]} still {verb} of what is gone. Undo brings it back.")


def spoken_of(setting: Setting, ids: Collection[str]) -> tuple[Any, ...]:
    """Return the records off the court, such as rules and points, that name one of ``ids``."""
    gone = {id: f"{id[:38]}-x" for id in ids}
    return tuple(
        record
        for kind, record in setting.records()
        if kind not in ON_COURT and record.id not in gone and renamed(record, gone) is not record
    )


def duplicate_picked(bench: Bench) -> bool:
    """Duplicate what is picked on the court and pick the copies; return False where nothing is."""
    ids = bench.view.selection & on_court(bench.setting)
    if not ids:
        return False
    try:
        drill, copies = copied(bench.drill, bench.at, sorted(ids), COPY_BY, bench.source)
    except NoLetterLeft as reason:
        bench.said.emit(f"No more players: {reason}.")
        return True
    except ValidationError:
        bench.said.emit("There is no room for a copy there.")
        return True
    bench.perform(f"Duplicate {called(bench.setting, ids)}", drill, copies)
    return True


def nudge_picked(bench: Bench, by: Point) -> bool:
    """Move what is picked by ``by`` metres; one nudge after another is one step. Return False where nothing is picked."""
    ids = bench.view.selection & on_court(bench.setting)
    if not ids:
        return False
    try:
        drill = move(bench.drill, bench.at, ids, by)
    except ValidationError:
        bench.said.emit("That is as far as the drawing goes.")
        return True
    bench.perform(f"Move {called(bench.setting, ids)}", drill, merge=("nudge", bench.at, ids))
    return True


def nudge_of(direction: Point, units: Units = "rackets", *, fine: bool) -> Point:
    """Return how far one nudge goes in a ``direction`` of the court: half a unit, or 5 cm."""
    across, along = (FINE, FINE) if fine else HALF_UNITS[units]
    return (direction[0] * across, direction[1] * along)


def pick_all(bench: Bench) -> None:
    """Pick all that is drawn."""
    bench.view.select(on_court(bench.setting))


def step_order(setting: Setting) -> tuple[str, ...]:
    """Return the ids of all that is drawn: people by letter, balls as they are played with the runs made meanwhile, kit."""
    depth = depths(setting)
    people = sorted(setting.spots.values(), key=lambda spot: spot.job)
    shots = sorted(setting.shots.values(), key=lambda shot: depth[shot.id])
    runs = list(setting.runs.values())
    moving = [run.id for run in runs if run.during not in setting.shots]
    for shot in shots:
        moving += [shot.id, *(run.id for run in runs if run.during == shot.id)]
    return (*(spot.id for spot in people), *moving, *setting.items)


def walk(bench: Bench, *, back: bool = False) -> bool:
    """Pick the next thing in step order, or the one before; return False past the end, with nothing picked."""
    order = step_order(bench.setting)
    picked = [index for index, id in enumerate(order) if id in bench.view.selection]
    if back:
        index = picked[0] - 1 if picked else len(order) - 1
    else:
        index = picked[-1] + 1 if picked else 0
    if not 0 <= index < len(order):
        bench.view.select(())
        return False
    bench.view.select((order[index],))
    return True
