"""Areas corner by corner: a click for each; Enter, a double click or a click on the first one closes it."""

from __future__ import annotations

import math

from designer.desktop.canvas.bench import Bench
from designer.desktop.canvas.placing import fresh_id
from designer.desktop.canvas.pointer import Pointer
from designer.desktop.canvas.tools.base import ToolBase, has_moved
from designer.drill.base import ON_THE_LINE, Point
from designer.drill.drill import Drill
from designer.drill.edits import put
from designer.drill.items import Area, Polygon
from designer.play.shares import crosses_itself

TOO_FEW = "An area needs three corners or more, not all on one line."
CROSSES = "That outline would cross itself: its inside is anybody's guess. Take a corner back with Backspace."


class PolygonTool(ToolBase):
    """Draws one area by its corners. Backspace takes the last one back, Esc leaves no trace."""

    def __init__(self, bench: Bench) -> None:
        super().__init__(bench)
        self._corners: tuple[Point, ...] = ()
        self._pressed: Point | None = None
        self._id = ""

    @property
    def prompt(self) -> str:
        if not self._corners:
            return "Click the corners of the area one after another."
        return "Click the next corner. Enter or the first corner again closes it, Backspace takes one back."

    @property
    def busy(self) -> bool:
        return bool(self._corners)

    def press(self, pointer: Pointer) -> None:
        self._pressed = pointer.at
        if not self._corners:
            self._id = fresh_id(self.bench.drill, "area", self.bench.source)
            self._corners = (self._snapped(pointer),)

    def move(self, pointer: Pointer) -> None:
        self.hover(pointer)

    def hover(self, pointer: Pointer) -> None:
        self._draw(self._snapped(pointer))

    def release(self, pointer: Pointer) -> None:
        pressed, self._pressed = self._pressed, None
        if pressed is None or not self._corners:
            return
        if len(self._corners) == 1 and not has_moved(self._corners[0], pointer):
            return
        at = self._snapped(pointer)
        if len(self._corners) > 2 and math.dist(at, self._corners[0]) <= pointer.reach / 2:
            self.finish()
        elif math.dist(at, self._corners[-1]) > ON_THE_LINE:
            self._corners = (*self._corners, at)
            self._draw(at)

    def leave(self) -> None:
        self.cancel()

    def finish(self) -> None:
        corners, bench = self._corners, self.bench
        if not corners:
            super().finish()
            return
        problem = _problem(corners)
        if problem:
            bench.said.emit(problem)
            return
        drill = self._with(corners)
        self._corners = ()
        bench.perform("Add an area", drill, (self._id,))
        bench.view.set_tool("select")

    def take_back(self) -> bool:
        if not self._corners:
            return False
        self._corners = self._corners[:-1]
        if self._corners:
            self._draw(self._corners[-1])
        else:
            self.bench.abandon()
        return True

    def cancel(self) -> bool:
        was_busy = super().cancel()
        self._corners, self._pressed = (), None
        return was_busy

    def _snapped(self, pointer: Pointer) -> Point:
        beside = (self._corners[-1], self._corners[0]) if self._corners else ()
        return self.bench.snap(pointer.at, pointer, also=dict.fromkeys(beside))

    def _draw(self, at: Point) -> None:
        """Show the outline as it would be with its next corner at ``at``."""
        if not self._corners:
            return
        corners = self._corners if at == self._corners[-1] else (*self._corners, at)
        if _problem(corners):
            self.bench.document.end_preview()
            self.bench.lead(corners)
            return
        self.bench.preview(self._with(corners))
        self.bench.add_size(self._id)

    def _with(self, corners: tuple[Point, ...]) -> Drill:
        shape = Polygon(form="polygon", corners=corners)
        return put(self.bench.drill, self.bench.at, Area(kind="area", id=self._id, shape=shape))


def _problem(corners: tuple[Point, ...]) -> str:
    """Return why these corners make no area, "" where they do."""
    if len(corners) < 3 or _doubled_area(corners) < 2 * ON_THE_LINE:
        return TOO_FEW
    return CROSSES if crosses_itself(corners) else ""


def _doubled_area(corners: tuple[Point, ...]) -> float:
    pairs = zip(corners, (*corners[1:], corners[0]), strict=True)
    return abs(math.fsum(x0 * y1 - x1 * y0 for (x0, y0), (x1, y1) in pairs))
