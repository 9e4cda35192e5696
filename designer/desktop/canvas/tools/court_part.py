"""Parts of the court: point at one, it shows its name, and one press makes it an area."""

from __future__ import annotations

from designer.desktop.canvas.bench import Bench, Guide
from designer.desktop.canvas.parts_of_court import CourtPart, add_part, parts_at
from designer.desktop.canvas.pointer import Pointer
from designer.desktop.canvas.tools.base import ToolBase

NOWHERE = "Point at a part of the court: a service box, the back court, an alley."


class CourtPartTool(ToolBase):
    """Takes the part under the pointer. W takes the next larger one there, and after those the strips by depth."""

    def __init__(self, bench: Bench) -> None:
        super().__init__(bench)
        self._wanted = ""

    @property
    def prompt(self) -> str:
        return "Press on a part of the court to make it an area. W: another part there. Shift: another after it."

    def press(self, pointer: Pointer) -> None:
        part = self.part_at(pointer)
        bench = self.bench
        if part is None:
            bench.said.emit(NOWHERE)
            return
        add_part(bench, part)
        if not pointer.shift:
            bench.view.set_tool("select")

    def hover(self, pointer: Pointer) -> None:
        self._show(self.part_at(pointer), pointer)

    def turn(self, pointer: Pointer) -> None:
        """Take the next part at the same place, the first again after the last."""
        parts = parts_at(self.bench.ground, pointer.at)
        if parts:
            at = next((number for number, part in enumerate(parts) if part.words == self._wanted), 0)
            self._wanted = parts[(at + 1) % len(parts)].words
            self._show(self.part_at(pointer), pointer)

    def part_at(self, pointer: Pointer) -> CourtPart | None:
        """Return the part that a press would take: the one asked for where the pointer is on it, else the smallest."""
        parts = parts_at(self.bench.ground, pointer.at)
        return next((part for part in parts if part.words == self._wanted), parts[0] if parts else None)

    def leave(self) -> None:
        self.cancel()

    def finish(self) -> None:
        super().finish()
        self.bench.view.set_tool("select")

    def _show(self, part: CourtPart | None, pointer: Pointer) -> None:
        if part is None:
            self.bench.show()
            return
        words = part.words[:1].upper() + part.words[1:]
        if not part.painted:
            words += "\nNo painted lines: mark it"
        self.bench.show(Guide(at=pointer.at, words=words, outline=part.outline))
