"""Picking, moving and shaping: what the pointer does when no other tool is in hand."""

from __future__ import annotations

from dataclasses import dataclass
from random import Random
from typing import Any

from pydantic import ValidationError

from designer.desktop.canvas.bench import Bench, Guide
from designer.desktop.canvas.handles import Handle, can_gain_corners, is_closed, pulled
from designer.desktop.canvas.names import called
from designer.desktop.canvas.placing import copied
from designer.desktop.canvas.pointer import Pointer
from designer.desktop.canvas.refused import Refused
from designer.desktop.canvas.tools.base import ToolBase, has_moved
from designer.drill.base import Point
from designer.drill.drill import Drill
from designer.drill.edits import move
from designer.drill.ids import new_id
from designer.drill.items import Area
from designer.drill.movement import Run, Shot
from designer.drill.places import anchor, corners_of
from designer.drill.setting import Setting, setting_at
from designer.play.sequence import Sequence
from designer.wording.units import distance

PARTS = {
    "corner": "Reshape",
    "new corner": "Reshape",
    "side": "Reshape",
    "bend": "Bend",
    "landing": "Move the landing of",
    "contact": "Move the contact of",
    "end": "Move the end of",
    "way-point": "Bend",
    "new way-point": "Bend",
    "facing": "Turn",
}


@dataclass(slots=True)
class Press:
    """What was pressed, and the drill and what was picked at that moment."""

    at: Point
    under: tuple[str, ...]
    drill: Drill
    picked: frozenset[str]
    was_picked: bool = False
    handle: Handle | None = None
    copying: bool = False
    dragging: bool = False
    ids: tuple[str, ...] = ()
    seed: str = ""


class SelectTool(ToolBase):
    """Click picks, Shift or Ctrl adds; a drag moves, with Alt or Ctrl a copy; from bare ground it draws a band."""

    cursor = "arrow"

    def __init__(self, bench: Bench) -> None:
        super().__init__(bench)
        self._press: Press | None = None

    @property
    def prompt(self) -> str:
        return ""

    @property
    def busy(self) -> bool:
        return self._press is not None

    @property
    def looks_under(self) -> bool:
        press = self._press
        return press is None or not press.dragging or press.handle is not None

    def press(self, pointer: Pointer) -> None:
        view = self.bench.view
        press = Press(pointer.at, pointer.under, self.bench.drill, view.selection, handle=pointer.handle)
        self._press = press
        if pointer.handle is not None or not pointer.under:
            return
        id = next((under for under in pointer.under if under in view.selection), pointer.under[0])
        press.was_picked = id in view.selection
        press.copying = pointer.copying
        if not press.was_picked and not pointer.adding:
            view.select((id,))

    def move(self, pointer: Pointer) -> None:
        press = self._press
        if press is None or not (press.dragging or has_moved(press.at, pointer)):
            return
        press.dragging = True
        if press.handle is not None:
            self._pull(press, pointer)
        elif self._is_band(press):
            self._band(press, pointer)
        else:
            self._carry(press, pointer)

    def release(self, pointer: Pointer) -> None:
        press = self._press
        if press is None:
            return
        if press.dragging:
            self.move(pointer)
            self._settle(press)
        else:
            self._click(press, pointer)
        self._press = None
        self.bench.show()

    def cancel(self) -> bool:
        press, self._press = self._press, None
        self.bench.abandon()
        if press is None:
            return False
        self.bench.view.select(press.picked)
        return True

    def _click(self, press: Press, pointer: Pointer) -> None:
        view = self.bench.view
        if press.handle is not None:
            return
        if not press.under:
            if not pointer.adding:
                view.select(())
            return
        top = press.under[0]
        if pointer.adding:
            view.select(view.selection ^ {top})
        elif pointer.alt:
            view.select((self._below(press),))
        else:
            view.select((top,))

    def _below(self, press: Press) -> str:
        """Return what lies under the one that was picked at the same place, the uppermost again after the last."""
        under = press.under
        picked = next((index for index, id in enumerate(under) if id in press.picked), -1)
        return under[(picked + 1) % len(under)]

    def _is_band(self, press: Press) -> bool:
        """Whether the press was on bare ground; the inside of an area that is not picked counts as ground."""
        if not press.under:
            return True
        item = self.bench.setting.items.get(press.under[0])
        return isinstance(item, Area) and not press.was_picked and self._inside(item, press.at)

    def _inside(self, area: Area, at: Point) -> bool:
        corners = corners_of(area)
        xs, ys = [x for x, _ in corners], [y for _, y in corners]
        edge = 0.3
        return min(xs) + edge < at[0] < max(xs) - edge and min(ys) + edge < at[1] < max(ys) - edge

    def _band(self, press: Press, pointer: Pointer) -> None:
        start, end, setting = press.at, pointer.at, self.bench.setting
        self.bench.show(Guide(band=(start, end)))
        (left, right), (low, high) = sorted((start[0], end[0])), sorted((start[1], end[1]))
        inside = {
            id
            for id, points in drawn_points(setting, self.bench.play(setting)).items()
            if points and all(left <= x <= right and low <= y <= high for x, y in points)
        }
        self.bench.view.select(press.picked | inside if pointer.adding else inside)

    def _carry(self, press: Press, pointer: Pointer) -> None:
        bench = self.bench
        if not press.ids:
            if press.under[0] not in bench.view.selection and not press.was_picked:
                bench.view.select(bench.view.selection | {press.under[0]})
            press.ids = tuple(sorted(bench.view.selection))
            press.seed = new_id("copy", bench.source)  # the copies keep their ids from step to step
        grabbed = next((id for id in press.under if id in press.ids), press.ids[0])
        start = grip(bench.setting, grabbed, press.at)
        by = (pointer.at[0] - press.at[0], pointer.at[1] - press.at[1])
        end = bench.snap((start[0] + by[0], start[1] + by[1]), pointer, but=() if press.copying else press.ids)
        by = (end[0] - start[0], end[1] - start[1])
        try:
            if press.copying:
                drill, copies = copied(press.drill, bench.at, press.ids, by, Random(press.seed))  # noqa: S311
            else:
                drill, copies = move(press.drill, bench.at, press.ids, by), press.ids
        except ValidationError:  # something would leave the drawing: it stays where the last step left it
            return
        bench.preview(drill)
        if press.copying:
            bench.view.select(copies)

    def _pull(self, press: Press, pointer: Pointer) -> None:
        assert press.handle is not None
        bench, handle = self.bench, press.handle
        to = (handle.at[0] + pointer.at[0] - press.at[0], handle.at[1] + pointer.at[1] - press.at[1])
        if handle.part == "facing":
            to = pointer.at
            bench.show()
        elif handle.part == "bend":
            bench.show(Guide(at=to))
        else:
            to = bench.snap(to, pointer, but=(handle.id,), also=fixed_ends(bench.setting, handle))
        under = tuple(id for id in pointer.under if id != handle.id)
        try:
            drill = pulled(press.drill, bench.at, handle, to, under, reach=pointer.reach / 2)
        except Refused as reason:
            bench.tell(to, f"{reason}.")
            return
        except ValidationError:  # it would leave the drawing: it stays where the last step left it
            return
        bench.preview(drill)
        self._say_size(handle, to, setting_at(press.drill, bench.at))

    def _say_size(self, handle: Handle, to: Point, before: Setting) -> None:
        """Say how large what is pulled has become, how far a ball bends, or that a corner goes."""
        bench = self.bench
        now, was = bench.view.setting.find(handle.id), before.find(handle.id)
        if handle.part == "bend" and isinstance(now, Shot):
            aside = "left" if (now.bend or 0.0) < 0 else "right"
            words = f"Bends {distance(now.bend, 'across', 'metres')} to the {aside}" if now.bend else "Straight"
            bench.tell(to, words)
        elif len(points_drawn(now)) < len(points_drawn(was)):
            bench.tell(to, "On the straight line: let go and it is taken out.")
        elif handle.part in ("corner", "new corner", "side"):
            bench.add_size(handle.id)

    def _settle(self, press: Press) -> None:
        bench = self.bench
        if not bench.document.previewing:
            return
        setting, drill, picked = bench.setting, bench.document.shown, bench.view.selection
        if press.handle is not None:
            label = f"{PARTS[press.handle.part]} {called(setting, (press.handle.id,))}"
        else:
            label = f"{'Duplicate' if press.copying else 'Move'} {called(setting, press.ids)}"
        bench.perform(label, drill, picked)


def points_drawn(record: Any) -> tuple[Point, ...]:
    """Return the corners or way-points of a record, () where it has none."""
    return record.via if isinstance(record, Run) else corners_of(record)


def fixed_ends(setting: Setting, handle: Handle) -> tuple[Point, ...]:
    """Return the points beside a handle to which a leg may lie straight across or along."""
    record = setting.find(handle.id)
    corners = corners_of(record)
    if handle.part not in ("corner", "new corner") or not can_gain_corners(record) or len(corners) < 2:
        return ()
    after = handle.index + 1 if handle.part == "corner" else handle.index
    if is_closed(record):
        return (corners[handle.index - 1], corners[after % len(corners)])
    return tuple(corners[index] for index in (handle.index - 1, after) if 0 <= index < len(corners))


def drawn_points(setting: Setting, play: Sequence | None) -> dict[str, tuple[Point, ...]]:
    """Return the points that each thing on the court is drawn by, by id; ``play`` says where arrows begin."""
    found: dict[str, tuple[Point, ...]] = {}
    for kind in ("spots", "items", "shots", "runs"):
        for id, record in getattr(setting, kind).items():
            points = corners_of(record) or tuple(point for point in (anchor(setting, id),) if point is not None)
            step = play.step(id) if play is not None and isinstance(record, Shot) else None
            if step is not None:
                points = (step.contact, *points)
            elif play is not None and isinstance(record, Run):
                points = play.run_paths.get(id, points)
            found[id] = points
    return found


def grip(setting: Setting, id: str, at: Point) -> Point:
    """Return the point of a thing that is snapped when it is carried: its place, or the corner nearest to ``at``."""
    corners = corners_of(setting.find(id))
    if corners:
        return min(corners, key=lambda corner: (corner[0] - at[0]) ** 2 + (corner[1] - at[1]) ** 2)
    return anchor(setting, id) or at
