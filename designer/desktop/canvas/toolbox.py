"""Which tool is in hand, and what keys mean. It is fed court-space events and knows no window."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace
from typing import Final

from PySide6.QtCore import QObject, Qt, Signal

from designer.desktop.canvas import deeds
from designer.desktop.canvas.arrows import with_kind_turned
from designer.desktop.canvas.bench import Bench
from designer.desktop.canvas.keys import tool_of
from designer.desktop.canvas.placing import PLACED, STRETCHED
from designer.desktop.canvas.pointer import Pointer
from designer.desktop.canvas.tools.ball import BallTool
from designer.desktop.canvas.tools.base import ToolBase
from designer.desktop.canvas.tools.place import PlaceTool
from designer.desktop.canvas.tools.run import RunTool
from designer.desktop.canvas.tools.select import SelectTool
from designer.desktop.canvas.tools.stretch import FORMS, StretchTool
from designer.desktop.view import Tool
from designer.drawing.page import Page
from designer.drill.base import Point
from designer.drill.movement import FEEDS

AREA_TOOLS: Final[tuple[Tool, ...]] = ("area", "round area", "polygon", "court area")
"""What W goes through before an area is begun; on a part of the court it goes through the parts instead."""

ARROWS: Final[dict[int, Point]] = {
    Qt.Key.Key_Left: (-1, 0),
    Qt.Key.Key_Right: (1, 0),
    Qt.Key.Key_Up: (0, 1),
    Qt.Key.Key_Down: (0, -1),
}
"""Directions on the page."""


@dataclass(frozen=True, slots=True)
class Stroke:
    """One key with what is held beside it; ``pointer`` is where a press would be made now."""

    key: int
    pointer: Pointer
    text: str = ""
    shift: bool = False
    control: bool = False
    alt: bool = False


class Toolbox(QObject):
    """Forwards events to the tool that the view names."""

    prompt_changed = Signal(str)
    cursor_changed = Signal(str)
    opened = Signal(str)
    """The record of this id should be opened in the card."""

    cross_changed = Signal(object)
    """Where the cross stands that arrow keys move, None where it is not in use."""

    def __init__(self, bench: Bench, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.bench = bench
        self.page = Page()
        self.tool: ToolBase = make_tool(bench, bench.view.tool)
        self._cross: Point | None = None
        self._prompt = ""
        bench.view.tool_changed.connect(self._take)
        bench.view.at_changed.connect(self._leave)
        bench.document.gesture_left.connect(self._give_up)

    @property
    def cross(self) -> Point | None:
        """Return where the keyboard's cross stands in court metres, None where the mouse leads."""
        return self._cross

    def put_cross(self, cross: Point | None) -> None:
        """Put the cross somewhere, or away."""
        if cross != self._cross:
            self._cross = cross
            self.cross_changed.emit(cross)

    def press(self, pointer: Pointer) -> None:
        """Take a press."""
        self._forward(self.tool.press, pointer)

    def move(self, pointer: Pointer) -> None:
        """Take a move with the button held."""
        self._forward(self.tool.move, pointer)

    def hover(self, pointer: Pointer) -> None:
        """Take a move without a button."""
        self._forward(self.tool.hover, pointer)

    def release(self, pointer: Pointer) -> None:
        """Take a release."""
        self._forward(self.tool.release, pointer)

    def double_click(self, pointer: Pointer) -> None:
        """End a chain, or open what is under the pointer."""
        if isinstance(self.tool, SelectTool):
            if pointer.under:
                self.opened.emit(pointer.under[0])
        else:
            self.tool.finish()
        self._say()

    def end(self) -> None:
        """End what goes on from press to press, as a press of the other button does."""
        self.tool.finish()
        self._say()

    def draw_from(self, name: Tool, by: str, *_: object) -> None:
        """Take the ball, the feed or the run in hand, begun by the person ``by``: the next press is where it ends."""
        self.tool.cancel()
        self.bench.view.set_tool(name)
        if isinstance(self.tool, BallTool | RunTool):
            self.tool.begin(by)
        self._say()

    def key(self, stroke: Stroke) -> bool:
        """Take a key; return whether it meant anything here."""
        taken = self._named_key(stroke) or self._letter(stroke)
        self._say()
        return taken

    def _forward(self, take: Callable[[Pointer], None], pointer: Pointer) -> None:
        take(pointer)
        self._say()

    def _named_key(self, stroke: Stroke) -> bool:
        key = stroke.key
        if key == Qt.Key.Key_Escape:
            return self._escape()
        if key in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            return self._enter()
        if key == Qt.Key.Key_Backspace:
            return self.tool.take_back() or (not self.tool.busy and deeds.delete_picked(self.bench))
        if key == Qt.Key.Key_Delete:
            return not self.tool.busy and deeds.delete_picked(self.bench)
        if key in ARROWS and not stroke.control:
            return self._arrow(ARROWS[key], stroke)
        if key == Qt.Key.Key_Space and self._cross is not None:
            self.press(stroke.pointer)
            self.release(stroke.pointer)
            return True
        if stroke.control and not stroke.alt and key == Qt.Key.Key_D:
            return deeds.duplicate_picked(self.bench)
        return False

    def _escape(self) -> bool:
        view = self.bench.view
        if self.tool.cancel():
            return True
        if view.tool != "select":
            view.set_tool("select")
            return True
        self.put_cross(None)
        if view.selection:
            view.select(())
            return True
        return False

    def _enter(self) -> bool:
        if not isinstance(self.tool, SelectTool):
            self.tool.finish()
            return True
        if len(self.bench.view.selection) != 1:
            return False
        self.opened.emit(next(iter(self.bench.view.selection)))
        return True

    def _arrow(self, direction: Point, stroke: Stroke) -> bool:
        along = self.page.to_court(direction)
        by = deeds.nudge_of(along, self.bench.view.units, fine=stroke.shift)
        if isinstance(self.tool, SelectTool) and self._cross is None and deeds.nudge_picked(self.bench, by):
            return True
        start = self._cross if self._cross is not None else stroke.pointer.at
        cross = self.bench.within((start[0] + by[0], start[1] + by[1]))
        self.put_cross(cross)
        self.hover(replace(stroke.pointer, at=cross))
        return True

    def _letter(self, stroke: Stroke) -> bool:
        if stroke.control or stroke.alt or not stroke.text:
            return False
        if stroke.shift and not self.tool.busy and self._mark(stroke.text.upper()):
            return True
        if stroke.text.upper() == "X" and isinstance(self.tool, BallTool | RunTool) and self.tool.busy:
            if isinstance(self.tool, BallTool):
                self.tool.turn_hitter()
            else:
                self.tool.turn_runner()
            self.hover(stroke.pointer)
            return True
        if stroke.text.upper() == "W":
            return self._turn_form(stroke) or self._turn_kind(stroke)
        name = tool_of(stroke.text)
        if name is None:
            return False
        if self.tool.busy:
            self.tool.cancel()
        if name in PLACED:
            # A letter places at once: the pointer is already where the thing should stand.
            self.bench.view.set_tool("select")
            tool = PlaceTool(self.bench, name)
            tool.press(stroke.pointer)
            tool.release(stroke.pointer)
        else:
            self.bench.view.set_tool(name)
            self.hover(stroke.pointer)
        return True

    def _mark(self, letter: str) -> bool:
        from designer.desktop.canvas.marking import key_picked

        return key_picked(self.bench, letter)

    def _turn_form(self, stroke: Stroke) -> bool:
        """Turn the form of the area that is to be drawn, or the part of the court that a press would take."""
        name = self.bench.view.tool
        if name == "court area":
            self.tool.turn(stroke.pointer)  # type: ignore[attr-defined]
        elif isinstance(self.tool, StretchTool) and self.tool.busy and name in FORMS:
            self.tool.turn()
            self.hover(stroke.pointer)
        elif name in AREA_TOOLS and not self.tool.busy:
            self.bench.view.set_tool(AREA_TOOLS[(AREA_TOOLS.index(name) + 1) % len(AREA_TOOLS)])
            self.hover(stroke.pointer)
        else:
            return False
        return True

    def _turn_kind(self, stroke: Stroke) -> bool:
        """Turn the leg that is being drawn from shot to feed to run; where none is, the last ball or the one picked."""
        tool, bench = self.tool, self.bench
        if isinstance(tool, BallTool | RunTool) and tool.busy:
            drew_ball, by = isinstance(tool, BallTool), tool.turn_kind()
            if by is not None:
                bench.view.set_tool("run" if drew_ball else "ball")
                if isinstance(self.tool, BallTool | RunTool):
                    self.tool.begin(by)
            self.hover(stroke.pointer)
            return True
        picked = bench.view.selection
        id = tool.last if isinstance(tool, BallTool) else next(iter(picked)) if len(picked) == 1 else None
        drill = None if id is None else with_kind_turned(bench.drill, bench.at, id)
        if drill is None:
            return False
        bench.perform(f"Make it a {'feed' if bench.setting.shots[id or ''].stroke not in FEEDS else 'shot'}", drill)
        return True

    def _take(self, name: str) -> None:
        self.tool.cancel()
        self.tool = make_tool(self.bench, name)
        self.cursor_changed.emit(self.tool.cursor)
        self._say()

    def _leave(self, _at: object) -> None:
        self.tool.leave()
        self._say()

    def _give_up(self) -> None:
        self.tool.cancel()
        self._say()

    def _say(self) -> None:
        if self.tool.prompt != self._prompt:
            self._prompt = self.tool.prompt
            self.prompt_changed.emit(self._prompt)


def make_tool(bench: Bench, name: str) -> ToolBase:
    """Return a new tool by the name that the view knows it by."""
    if name in PLACED:
        return PlaceTool(bench, name)
    if name in STRETCHED:
        return StretchTool(bench, name)
    if name in ("ball", "feed"):
        return BallTool(bench, fed=name == "feed")
    if name in LATE:
        return _late_tool(bench, name)
    return RunTool(bench) if name == "run" else SelectTool(bench)


LATE: Final = ("polygon", "court area", "split area")


def _late_tool(bench: Bench, name: str) -> ToolBase:
    """Return a tool that is not loaded before it is first taken in hand."""
    if name == "polygon":
        from designer.desktop.canvas.tools.polygon import PolygonTool

        return PolygonTool(bench)
    if name == "court area":
        from designer.desktop.canvas.tools.court_part import CourtPartTool

        return CourtPartTool(bench)
    from designer.desktop.canvas.tools.split import SplitTool

    return SplitTool(bench)
