"""Lines, barriers, areas and obstacles: from one point to another, by a drag or by two clicks."""

from __future__ import annotations

from typing import Final

from designer.desktop.canvas.bench import Bench, Guide
from designer.desktop.canvas.placing import NAMES, fresh_id, stretched
from designer.desktop.canvas.pointer import Pointer
from designer.desktop.canvas.tools.base import ToolBase, has_moved
from designer.drill.base import ON_THE_LINE, Point

FORMS: Final = ("area", "round area")
"""What W turns into one another in the middle of a drag."""

FLAT: Final = ("area", "round area", "obstacle")
"""What has a width and a depth."""


class StretchTool(ToolBase):
    """Draws one thing of one kind between two points. Shift holds a line straight and an area square."""

    def __init__(self, bench: Bench, kind: str) -> None:
        super().__init__(bench)
        self.kind = kind
        self._start: Point | None = None
        self._pressed_at: Point | None = None
        self._begun = False  # whether this press is to end what an earlier one began
        self._id = ""

    @property
    def prompt(self) -> str:
        turns = " W: another form." if self.kind in FORMS else ""
        if self._start is None:
            return f"Drag from one end to the other, or click both: {NAMES[self.kind]}.{turns}"
        return f"Click where it ends. Shift holds it {'square' if self.kind in FLAT else 'straight'}.{turns}"

    @property
    def busy(self) -> bool:
        return self._start is not None

    def press(self, pointer: Pointer) -> None:
        self._pressed_at = pointer.at
        self._begun = self._start is not None
        if self._start is None:
            self._start = self.bench.snap(pointer.at, pointer)
            self._id = fresh_id(self.bench.drill, self.kind, self.bench.source)
        else:
            self._draw(pointer)

    def move(self, pointer: Pointer) -> None:
        self._draw(pointer)

    def hover(self, pointer: Pointer) -> None:
        if self._start is None:
            self.bench.snap(pointer.at, pointer)
        else:
            self._draw(pointer)

    def release(self, pointer: Pointer) -> None:
        if self._start is None or self._pressed_at is None:
            return
        end = self._end(pointer)
        dragged = has_moved(self._pressed_at, pointer)
        self._pressed_at = None
        if self._has_no_size(self._start, end):
            if dragged:
                self.cancel()
            if dragged or self._begun:
                self.bench.said.emit(f"Too small: draw {NAMES[self.kind]} from one place to another.")
            return
        drill = stretched(self.bench.drill, self.bench.at, self.kind, self._start, end, self._id)
        self._start = None
        self.bench.perform(f"Add {NAMES[self.kind]}", drill, (self._id,))
        if not pointer.shift:
            self.bench.view.set_tool("select")

    def turn(self) -> None:
        """Draw a rectangle round, and a round area as a rectangle, from the same corner."""
        self.kind = FORMS[(FORMS.index(self.kind) + 1) % len(FORMS)]

    def take_back(self) -> bool:
        return self.cancel()

    def cancel(self) -> bool:
        was_busy = super().cancel()
        self._start = self._pressed_at = None
        return was_busy

    def _draw(self, pointer: Pointer) -> None:
        if self._start is None:
            return
        end = self._end(pointer)
        if self._has_no_size(self._start, end):
            self.bench.document.end_preview()
        else:
            self.bench.preview(stretched(self.bench.drill, self.bench.at, self.kind, self._start, end, self._id))
            self.bench.add_size(self._id)

    def _end(self, pointer: Pointer) -> Point:
        assert self._start is not None
        also = () if self.kind in FLAT else (self._start,)
        end = self.bench.snap(pointer.at, pointer, also=also)
        if not pointer.shift:
            return end
        held = self._square(end) if self.kind in FLAT else self._straight(end)
        guide = self.bench.guide
        self.bench.show(Guide(at=held, words=self.bench.reading(held), snapped=guide.snapped))
        return held

    def _straight(self, end: Point) -> Point:
        assert self._start is not None
        x, y = self._start
        return (end[0], y) if abs(end[0] - x) > abs(end[1] - y) else (x, end[1])

    def _square(self, end: Point) -> Point:
        assert self._start is not None
        x, y = self._start
        side = max(abs(end[0] - x), abs(end[1] - y))
        return (x + (side if end[0] >= x else -side), y + (side if end[1] >= y else -side))

    def _has_no_size(self, start: Point, end: Point) -> bool:
        across, along = abs(end[0] - start[0]), abs(end[1] - start[1])
        least = min(across, along) if self.kind in FLAT else max(across, along)
        return least < 2 * ON_THE_LINE
