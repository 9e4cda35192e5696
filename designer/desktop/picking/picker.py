"""The court while a form waits for it: presses and keys pick what the form asks for, and change nothing else."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING, Any, Final

from PySide6.QtCore import QEvent, QObject, QPointF, Qt
from PySide6.QtGui import QKeyEvent, QMouseEvent
from PySide6.QtWidgets import QWidget
from shiboken6 import isValid

from designer.desktop.canvas.court_canvas import REACH
from designer.desktop.canvas.deeds import nudge_of
from designer.desktop.canvas.handles import HOLDERS, tied
from designer.desktop.canvas.pointer import Pointer
from designer.desktop.canvas.toolbox import ARROWS
from designer.desktop.picking.layer import PickLayer
from designer.desktop.picking.targets import Target, targets, under
from designer.drill.base import Place, Point
from designer.drill.places import anchor

if TYPE_CHECKING:
    from designer.desktop.canvas.court_canvas import CourtCanvas
    from designer.desktop.forms.wish import Wish

_MOUSE: Final = (
    QEvent.Type.MouseButtonPress,
    QEvent.Type.MouseButtonRelease,
    QEvent.Type.MouseButtonDblClick,
    QEvent.Type.MouseMove,
)
_TAKES: Final = (Qt.Key.Key_Return, Qt.Key.Key_Enter, Qt.Key.Key_Space)

HOW: Final = {
    "one": "press it on the court, or Tab to it and Enter. Esc lets go.",
    "many": "press each on the court, or Tab to it and Enter. Esc ends it.",
    "place": "press the place, or move there with the arrow keys and Enter. Esc lets go.",
}


class Picker(QObject):
    """One court's picker. It takes nothing from the court until a form asks: see ``Wish``."""

    def __init__(self, canvas: CourtCanvas) -> None:
        super().__init__(canvas)
        self._canvas, self._port = canvas, canvas.viewport()
        self.wish: Wish | None = None
        self.trying = False
        """Whether what the wish gets just now is only where the pointer is: to be shown, not to be settled."""
        self.found: tuple[Target, ...] = ()
        self.current: Target | None = None
        self._here: tuple[Target, ...] = ()
        self._at: Point | None = None
        self._layer: PickLayer | None = None
        self._came_from: QWidget | None = None
        view, document = canvas.view, canvas.document
        view.at_changed.connect(self.end)
        view.tool_changed.connect(self.end)
        document.gesture_left.connect(self.end)
        document.shown_changed.connect(self._follow)
        canvas.sight_changed.connect(self._see_anew)

    def begin(self, wish: Wish) -> None:
        """Let ``wish`` be picked; one that was asked before is let go."""
        self.end()
        canvas = self._canvas
        canvas.view.set_tool("select")
        self.wish = wish
        self._at = wish.start
        self._came_from = canvas.window().focusWidget()
        self._layer = PickLayer(canvas)
        canvas.installEventFilter(self)
        self._port.installEventFilter(self)
        self._port.setCursor(Qt.CursorShape.CrossCursor)
        canvas.setFocus(Qt.FocusReason.OtherFocusReason)
        self._find()
        if wish.kind != "place":
            self.current = next((target for target in self.found if target.value in wish.chosen()), None)
        elif self._at is not None:
            canvas.toolbox.put_cross(self._at)
        self._show()
        self._prompt()
        if wish.kind != "place" and not self.found:
            self.end()
            canvas.said.emit(f"{wish.words}: nothing on this court can be picked for it.")

    def end(self, *_: object) -> None:
        """Let go of what is asked, and give the keyboard back to the form."""
        wish, self.wish = self.wish, None
        if wish is None:
            return
        canvas = self._canvas
        canvas.removeEventFilter(self)
        self._port.removeEventFilter(self)
        self._port.setCursor(Qt.CursorShape.ArrowCursor)
        if self._layer is not None:
            self._layer.remove()
        self._layer = None
        self.found, self._here, self.current, self._at = (), (), None, None
        canvas.toolbox.put_cross(None)
        canvas.bench.abandon()
        canvas.prompt_changed.emit("")
        came_from, self._came_from = self._came_from, None
        wish.ended()
        if came_from is not None and isValid(came_from) and came_from.isVisible():
            came_from.setFocus(Qt.FocusReason.OtherFocusReason)

    # what there is

    def _find(self) -> None:
        assert self.wish is not None
        bench, setting = self._canvas.bench, self._canvas.view.setting
        options: Any = self.wish.options
        if self.wish.kind == "place":
            held = setting.items.values() if self.wish.ties else ()
            options = [(item.id, "") for item in held if item.kind in HOLDERS and item.id != self.wish.about]
            options += [(spot.job, "") for spot in setting.spots.values() if spot.id != self.wish.about]
        self.found = targets(setting, bench.ground, options)

    def _follow(self, *_: object) -> None:
        if self.wish is not None and not self.trying:
            self._find()
            self._see_anew()
            self._prompt()

    def _prompt(self) -> None:
        if self.wish is not None:
            self._canvas.prompt_changed.emit(f"{self.wish.words}: {HOW[self.wish.kind]}")

    def _see_anew(self) -> None:
        if self._layer is not None:
            self._layer.forget()
        self._show()

    def _show(self, *_: object) -> None:
        wish = self.wish
        if wish is None or self._layer is None:
            return
        if wish.kind == "place":
            self._layer.show((), (), None)
            return
        values = wish.chosen()
        self._layer.show(self.found, (target for target in self.found if target.value in values), self.current)

    # pointing

    def _point(self, pixel: QPointF, held: Qt.KeyboardModifier) -> Pointer:
        canvas = self._canvas
        at, reach = canvas.to_court(pixel), REACH / canvas.pixels_per_metre
        ids = canvas.court_scene.ids_at(canvas.sight.to_scene(at), reach)
        return Pointer(at=at, under=self._others(ids), reach=reach, alt=bool(held & Qt.KeyboardModifier.AltModifier))

    def _hover(self, pointer: Pointer) -> None:
        if self.wish is None:
            return
        if self.wish.kind == "place":
            self._try(self._canvas.bench.snap(pointer.at, pointer), pointer)
            return
        self._here = under(self.found, pointer.at, pointer.under, pointer.reach)
        self.current = self._here[0] if self._here else None
        self._show()

    def _press(self, pointer: Pointer) -> None:
        if self.wish is None:
            return
        if self.wish.kind == "place":
            self._try(self._canvas.bench.snap(pointer.at, pointer), pointer)
            self._take_place(self._place(pointer))
            return
        here = under(self.found, pointer.at, pointer.under, pointer.reach)
        # A press takes what Tab has walked to, where that lies here as well: a whole court under one of its boxes.
        if self.current not in here:
            self.current = here[0] if here else None
        self._take()

    # places

    def _try(self, point: Point, pointer: Pointer) -> None:
        """Show the drill as it would be with the place at ``point``, while the pointer is there."""
        self._at = point
        self._give(self._place(pointer), trying=True)

    def _place(self, pointer: Pointer) -> Place:
        assert self.wish is not None
        assert self._at is not None
        if not self.wish.ties or pointer.free:
            return Place(at=self._at)
        return tied(self._canvas.view.setting, self._at, pointer.under)

    def _take_place(self, place: Place) -> None:
        wish = self.wish
        if wish is not None:
            self._canvas.document.end_preview()
            self._give(place, trying=False)
            self.end()

    def _give(self, value: Any, *, trying: bool) -> None:
        assert self.wish is not None
        self.trying = trying
        try:
            self.wish.take(value)
        finally:
            self.trying = False

    # choices

    def _take(self) -> None:
        wish, target = self.wish, self.current
        if wish is None:
            return
        if target is None:
            self._canvas.said.emit(f"{wish.words}: nothing to pick there.")
            return
        self._give(target.value, trying=False)
        if wish.kind == "one":
            self.end()
        else:
            self._show()

    def _walk(self, by: int) -> None:
        """Go on to the next thing: of those under the pointer first, the smaller before the larger, then of all others."""
        if self.wish is not None and self.wish.kind == "place":
            self._walk_places(by)
            return
        order = [*self._here, *(target for target in self.found if target not in self._here)]
        if order:
            place = order.index(self.current) if self.current in order else (-1 if by > 0 else 0)
            self.current = order[(place + by) % len(order)]
            self._show()
            self._canvas.tell(self.current.words)

    def _walk_places(self, by: int) -> None:
        """Go on to the next person or thing: a place is often on one."""
        setting = self._canvas.view.setting
        stops = [(target.id or "", point) for target in self.found if (point := anchor(setting, target.id or ""))]
        if not stops:
            return
        place = next((n for n, (_, point) in enumerate(stops) if point == self._at), -1 if by > 0 else 0)
        id, point = stops[(place + by) % len(stops)]
        self._go(point, (id,))

    def _go(self, point: Point, ids: tuple[str, ...] = ()) -> None:
        bench = self._canvas.bench
        self._canvas.toolbox.put_cross(point)
        pointer = Pointer(at=point, under=ids, reach=0.0)
        self._try(bench.snap(point, pointer), pointer)

    def _arrow(self, direction: Point, *, fine: bool) -> None:
        wish, toolbox = self.wish, self._canvas.toolbox
        if wish is None:
            return
        if wish.kind != "place":
            self._walk(1 if direction[0] > 0 or direction[1] < 0 else -1)
            return
        by = nudge_of(toolbox.page.to_court(direction), self._canvas.view.units, fine=fine)
        start = self._at if self._at is not None else self._canvas.to_court(self._canvas.pointer_place())
        self._go(self._canvas.bench.within((start[0] + by[0], start[1] + by[1])))

    # keys and presses

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Take keys and presses that would otherwise change the drill."""
        if self.wish is None:
            return False
        if isinstance(event, QKeyEvent):
            deed = self._deed(event)
            if event.type() == QEvent.Type.ShortcutOverride and deed is not None:
                event.accept()
                return True
            if watched is self._canvas and event.type() == QEvent.Type.KeyPress and deed is not None:
                deed()
                return True
            # A letter would place something; Ctrl and a letter are the window's own.
            return watched is self._canvas and event.type() == QEvent.Type.KeyPress and bool(event.text().strip())
        if watched is self._port and event.type() == QEvent.Type.Leave:
            self._canvas.document.end_preview()  # a place that was only tried is not taken away from the court
            return False
        if watched is self._port and event.type() in _MOUSE and isinstance(event, QMouseEvent):
            return self._mouse(event)
        return watched is self._port and event.type() in (QEvent.Type.DragEnter, QEvent.Type.ContextMenu)

    def _mouse(self, event: QMouseEvent) -> bool:
        left = event.button() == Qt.MouseButton.LeftButton
        if event.type() == QEvent.Type.MouseMove and event.buttons() == Qt.MouseButton.NoButton:
            self._hover(self._point(event.position(), event.modifiers()))
            return False  # the court goes on to know where the pointer is
        if event.type() == QEvent.Type.MouseButtonPress and left:
            self._press(self._point(event.position(), event.modifiers()))
            return True
        # The other buttons move the court as ever.
        return left or bool(event.buttons() & Qt.MouseButton.LeftButton)

    def _deed(self, event: QKeyEvent) -> Callable[[], None] | None:
        key, held = event.key(), event.modifiers()
        if held & (Qt.KeyboardModifier.ControlModifier | Qt.KeyboardModifier.AltModifier):
            return None
        if key == Qt.Key.Key_Escape:
            return self.end
        if key in _TAKES:
            return self._enter
        if key == Qt.Key.Key_Tab:
            return lambda: self._walk(1)
        if key == Qt.Key.Key_Backtab:
            return lambda: self._walk(-1)
        if key in ARROWS:
            fine = bool(held & Qt.KeyboardModifier.ShiftModifier)
            return lambda: self._arrow(ARROWS[key], fine=fine)
        return None

    def _enter(self) -> None:
        if self.wish is None or self.wish.kind != "place":
            self._take()
        elif self._at is not None:
            ids = self._ids_at(self._at)
            self._take_place(self._place(Pointer(at=self._at, under=ids)))

    def _ids_at(self, point: Point) -> tuple[str, ...]:
        """Return what a place that the keyboard has gone to is on: only what stands on that very point, or an area round it."""
        canvas = self._canvas
        return self._others(canvas.court_scene.ids_at(canvas.sight.to_scene(point), 0.05))

    def _others(self, ids: tuple[str, ...]) -> tuple[str, ...]:
        about = None if self.wish is None else self.wish.about
        return tuple(id for id in ids if id != about)
