"""Splitting: drag a line across an area, see both shares, let go."""

from __future__ import annotations

from dataclasses import replace

from designer.desktop.canvas.bench import Bench
from designer.desktop.canvas.names import called
from designer.desktop.canvas.placing import fresh_id
from designer.desktop.canvas.pointer import Pointer
from designer.desktop.canvas.splitting import Halves, halves, split
from designer.desktop.canvas.tools.base import ToolBase, has_moved
from designer.drill.base import Point
from designer.drill.items import Area

NO_AREA = "There is no area to split: draw one first."
MISSED = "That line splits no area in two: draw it across one."


class SplitTool(ToolBase):
    """Cuts the area that is picked, else the smallest one that the line goes through, into two."""

    def __init__(self, bench: Bench) -> None:
        super().__init__(bench)
        self._start: Point | None = None
        self._pressed: Point | None = None

    @property
    def prompt(self) -> str:
        if self._start is None:
            return "Drag a line across an area, or click its two ends: it falls in two, with both shares shown."
        return "Click where the line ends. Shift holds it straight."

    @property
    def busy(self) -> bool:
        return self._start is not None

    def press(self, pointer: Pointer) -> None:
        self._pressed = pointer.at
        if self._start is None:
            self._start = self.bench.snap(pointer.at, pointer)
        else:
            self.hover(pointer)

    def move(self, pointer: Pointer) -> None:
        self.hover(pointer)

    def hover(self, pointer: Pointer) -> None:
        end = self._end(pointer)
        if self._start is None:
            return
        found, bench = self._found(end), self.bench
        tags = () if found is None else found[1].tags(bench.ground)
        words = "" if tags else bench.guide.words  # the shares say more than where the line ends
        bench.show(replace(bench.guide, words=words, leg=(self._start, end), tags=tags))

    def release(self, pointer: Pointer) -> None:
        start, pressed, bench = self._start, self._pressed, self.bench
        self._pressed = None
        if start is None or pressed is None:
            return
        end = self._end(pointer)
        found = self._found(end)
        if found is None:
            if has_moved(start, pointer):
                self.cancel()
                bench.said.emit(MISSED if self._areas() else NO_AREA)
            return
        self._start = None
        area, cut = found
        new = fresh_id(bench.drill, "area", bench.source)
        drill = split(bench.drill, bench.at, area, cut, new)
        bench.perform(f"Split {called(bench.setting, (area.id,))}", drill, (area.id, new))
        bench.view.set_tool("select")

    def take_back(self) -> bool:
        return self.cancel()

    def cancel(self) -> bool:
        was_busy = super().cancel()
        self._start = self._pressed = None
        return was_busy

    def _end(self, pointer: Pointer) -> Point:
        start = self._start
        end = self.bench.snap(pointer.at, pointer, also=() if start is None else (start,))
        if start is None or not pointer.shift:
            return end
        return (end[0], start[1]) if abs(end[0] - start[0]) > abs(end[1] - start[1]) else (start[0], end[1])

    def _areas(self) -> list[Area]:
        """Return the areas that may be split, those that are picked alone where any are."""
        areas = [item for item in self.bench.setting.items.values() if isinstance(item, Area)]
        return [area for area in areas if area.id in self.bench.view.selection] or areas

    def _found(self, end: Point) -> tuple[Area, Halves] | None:
        assert self._start is not None
        start = self._start
        cut = [(area, found) for area in self._areas() if (found := halves(area, start, end)) is not None]
        through = [(area, found) for area, found in cut if _goes_through(found, start, end)]
        return min(through or [], key=lambda pair: _size(pair[1]), default=None)


def _goes_through(cut: Halves, start: Point, end: Point) -> bool:
    """Whether the line as it was drawn, not only as it runs on, is inside the area somewhere."""
    from designer.drawing.geometry import contains

    ways = [
        (start[0] + (end[0] - start[0]) * step / 20, start[1] + (end[1] - start[1]) * step / 20) for step in range(21)
    ]
    return any(contains(corners, way) for corners in cut.corners for way in ways)


def _size(cut: Halves) -> float:
    across, along = ([corner[axis] for corners in cut.corners for corner in corners] for axis in (0, 1))
    return (max(across) - min(across)) * (max(along) - min(along))
