"""Placing one thing: press, drag it where it should be, let go."""

from __future__ import annotations

from designer.desktop.canvas.bench import Bench
from designer.desktop.canvas.placing import NAMES, NoLetterLeft, fresh_id, placed
from designer.desktop.canvas.pointer import Pointer
from designer.desktop.canvas.tools.base import ToolBase
from designer.drill.base import Point


class PlaceTool(ToolBase):
    """Places things of one kind. Shift keeps the tool in hand for the next one."""

    def __init__(self, bench: Bench, kind: str) -> None:
        super().__init__(bench)
        self.kind = kind
        self._pressed = False
        self._id = ""

    @property
    def prompt(self) -> str:
        return f"Press where {NAMES[self.kind]} should stand. Shift: place another after it."

    @property
    def busy(self) -> bool:
        return self._pressed

    def press(self, pointer: Pointer) -> None:
        self._pressed = True
        self._id = fresh_id(self.bench.drill, self.kind, self.bench.source)
        self.move(pointer)

    def move(self, pointer: Pointer) -> None:
        if self._pressed:
            self._put(self.bench.snap(pointer.at, pointer), settle=False)

    def hover(self, pointer: Pointer) -> None:
        self.bench.snap(pointer.at, pointer)

    def release(self, pointer: Pointer) -> None:
        if not self._pressed:
            return
        self._pressed = False
        self._put(self.bench.snap(pointer.at, pointer), settle=True)
        if not pointer.shift:
            self.bench.view.set_tool("select")

    def cancel(self) -> bool:
        was_busy = super().cancel()
        self._pressed = False
        return was_busy

    def _put(self, point: Point, *, settle: bool) -> None:
        bench = self.bench
        try:
            drill = placed(bench.drill, bench.at, self.kind, point, self._id)
        except NoLetterLeft as reason:
            self._pressed = False
            bench.abandon()
            bench.said.emit(f"No more players: {reason}.")
            return
        if settle:
            bench.perform(f"Add {NAMES[self.kind]}", drill, (self._id,))
        else:
            bench.preview(drill)
