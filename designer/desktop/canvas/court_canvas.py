"""The court in a window: it shows the setting in view and hands what the pointer and the keys do to the tools."""

from __future__ import annotations

import math
import sys
from typing import Final

from PySide6.QtCore import QEvent, QPoint, QPointF, QRect, QRectF, Qt, Signal
from PySide6.QtGui import (
    QColor,
    QContextMenuEvent,
    QDragEnterEvent,
    QDragLeaveEvent,
    QDragMoveEvent,
    QDropEvent,
    QFocusEvent,
    QKeyEvent,
    QMouseEvent,
    QPainter,
    QPen,
)
from PySide6.QtWidgets import QWidget

from designer.desktop.canvas import deeds
from designer.desktop.canvas.bench import Bench, Guide
from designer.desktop.canvas.court_view import MOST_WORDED, CourtView
from designer.desktop.canvas.drop import drop_item, kind_in
from designer.desktop.canvas.handles import Handle
from designer.desktop.canvas.ink import RING
from designer.desktop.canvas.names import words_of
from designer.desktop.canvas.overlay import Overlay
from designer.desktop.canvas.pointer import Pointer
from designer.desktop.canvas.spoken import go_to, put_courts_in_the_tree
from designer.desktop.canvas.toolbox import Stroke, Toolbox
from designer.desktop.document import Document
from designer.desktop.view import View
from designer.drill.base import Point

REACH: Final = 8.0
"""Paths catch within so many pixels."""

HANDLE_REACH: Final = 12.0
"""A handle's target is 24 pixels across, although it is drawn smaller."""

MENU_BY_SYSTEM: Final = sys.platform == "win32"
"""Whether the system itself makes the menu key of Shift and F10."""

CROWDED: Final = f"More than {MOST_WORDED} things stand on this court: their names and digits are left out."


class CourtCanvas(CourtView):
    """Shows one view of one document."""

    reading_changed = Signal(str)
    """Where the pointer's point is while a gesture goes on, "" when it ends."""

    prompt_changed = Signal(str)
    """What the next press of the tool in hand does."""

    said = Signal(str)
    """Why something was not done."""

    opened = Signal(str)
    """The record of this id should be opened."""

    menu_wanted = Signal(QPoint)
    """A menu for what is picked should open at this global place."""

    keys_wanted = Signal()
    """The sheet of keys should be shown."""

    def __init__(self, document: Document, view: View, parent: QWidget | None = None) -> None:
        put_courts_in_the_tree()
        super().__init__(document, view, parent)
        self.bench = Bench(document, view, self)
        self.toolbox = Toolbox(self.bench, self)
        self._overlay = Overlay(self.court_scene, self.bench)
        self._pan_from: QPoint | None = None
        self._panned = False
        self._space_held = False
        self._by_keys = False
        self._framed = False
        self._was_crowded = False
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setMouseTracking(True)
        self.setAcceptDrops(True)
        self.viewport().setCursor(Qt.CursorShape.ArrowCursor)
        self._connect()

    def _connect(self) -> None:
        toolbox = self.toolbox
        self.view.selection_changed.connect(self._show_selection)
        self.view.hovered_changed.connect(self._show_states)
        self.view.marking_changed.connect(self._show_states)
        self.sight_changed.connect(self._show_over)
        self.bench.guide_changed.connect(self._show_guide)
        self.bench.said.connect(self.said)
        toolbox.prompt_changed.connect(self.prompt_changed)
        toolbox.opened.connect(self.opened)
        toolbox.cursor_changed.connect(self._show_cursor)
        toolbox.cross_changed.connect(self._show_cross)

    def follow(self, *_: object) -> None:
        """Show the drill as it is now, and the states of its marks."""
        super().follow()
        self._show_states()
        crowded = not self._has_room_for_words()
        if crowded and not self._was_crowded:
            self.said.emit(CROWDED)
        self._was_crowded = crowded

    def _rest(self) -> None:
        super()._rest()
        self._show_states()  # words and digits have found other places: what shows that they are picked goes with them

    def _show_states(self, *_: object) -> None:
        focused = self._by_keys and self.hasFocus()
        self._overlay.show_states(self.sight, focused=focused)
        framed = focused and len(self.view.selection) != 1
        if framed != self._framed:
            self._framed = framed
            self.viewport().update()

    def drawForeground(self, painter: QPainter, _rect: QRectF | QRect) -> None:
        """Put the keyboard's ring round the whole court where no one thing on it has it."""
        if self._framed:
            painter.resetTransform()
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.setPen(QPen(QColor(self._overlay.look.ink), RING))
            painter.drawRect(QRectF(self.viewport().rect()).adjusted(RING, RING, -RING, -RING))

    def _show_selection(self, _picked: object) -> None:
        self._show_states()
        self._tell_selection()

    def _show_guide(self, guide: Guide) -> None:
        self._overlay.show_guide(guide, self.sight)
        said = [guide.words, *(words for _, words in guide.tags)]
        self.reading_changed.emit("; ".join(words.replace("\n", "; ") for words in said if words))

    def _show_cross(self, cross: Point | None) -> None:
        self._overlay.show_cross(cross, self.sight)

    def _show_cursor(self, name: str) -> None:
        self.viewport().setCursor(Qt.CursorShape.ArrowCursor if name == "arrow" else Qt.CursorShape.CrossCursor)

    def _show_over(self) -> None:
        self.toolbox.page = self._page
        self._show_guide(self.bench.guide)
        self._show_cross(self.toolbox.cross)

    # Pointer

    def _pointer(self, pixel: QPointF, held: Qt.KeyboardModifier, *, pressed: bool = False) -> Pointer:
        reach = REACH / self._scale
        at = self.to_court(pixel)
        under: tuple[str, ...] = ()
        if pressed or self.toolbox.tool.looks_under:
            under = self.court_scene.ids_at(self.sight.to_scene(at), reach)
        return Pointer(
            at=at,
            under=under,
            handle=self._handle_at(at) if pressed else None,
            reach=reach,
            shift=bool(held & Qt.KeyboardModifier.ShiftModifier),
            control=bool(held & Qt.KeyboardModifier.ControlModifier),
            alt=bool(held & Qt.KeyboardModifier.AltModifier),
        )

    def _handle_at(self, at: Point) -> Handle | None:
        if self.view.tool != "select":
            return None
        sight, pixel = self.sight, self.to_pixel(at)
        best: tuple[float, Handle] | None = None
        for handle in self._overlay.handles(sight):
            stands = self.viewportTransform().map(self._overlay.handle_point(handle, sight))
            apart = math.hypot(stands.x() - pixel.x(), stands.y() - pixel.y())
            if apart <= HANDLE_REACH and (best is None or apart < best[0]):
                best = (apart, handle)
        return None if best is None else best[1]

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Start a gesture of the tool, or a pan."""
        self.toolbox.put_cross(None)
        self._by_keys = False
        if event.button() == Qt.MouseButton.LeftButton and not self._space_held:
            self.toolbox.press(self._pointer(event.position(), event.modifiers(), pressed=True))
        else:
            self._pan_from = event.position().toPoint()
            self._panned = False
        event.accept()

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """Go on with the pan or the gesture, or hover."""
        super().mouseMoveEvent(event)
        if self._pan_from is not None:
            now = event.position().toPoint()
            if self._panned or (now - self._pan_from).manhattanLength() > 3:
                self._panned = True
                self.pan(now - self._pan_from)
                self._pan_from = now
        elif event.buttons() & Qt.MouseButton.LeftButton:
            self.toolbox.move(self._pointer(event.position(), event.modifiers()))
        else:
            self._hover(event)
        event.accept()

    def _hover(self, event: QMouseEvent) -> None:
        self.toolbox.put_cross(None)
        pointer = self._pointer(event.position(), event.modifiers())
        self.view.set_hovered(pointer.under[0] if pointer.under else None)
        self.toolbox.hover(pointer)

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        """End the gesture or the pan; the other button without a pan ends a chain, or asks for a menu."""
        if (self._pan_from is not None and event.button() != Qt.MouseButton.LeftButton) or self._space_held:
            was_click = not self._panned and event.button() == Qt.MouseButton.RightButton
            self._pan_from = None
            if was_click:
                self._other_button(event)
        elif event.button() == Qt.MouseButton.LeftButton:
            self._pan_from = None
            self.toolbox.release(self._pointer(event.position(), event.modifiers()))
        event.accept()

    def _other_button(self, event: QMouseEvent) -> None:
        if self.view.tool != "select":
            self.toolbox.end()
            return
        pointer = self._pointer(event.position(), event.modifiers(), pressed=True)
        if pointer.under and not self.view.selection & set(pointer.under):
            self.view.select(pointer.under[:1])
        self.menu_wanted.emit(event.globalPosition().toPoint())

    def mouseDoubleClickEvent(self, event: QMouseEvent) -> None:
        """End a chain, or open what was pressed."""
        if event.button() == Qt.MouseButton.LeftButton:
            self.toolbox.double_click(self._pointer(event.position(), event.modifiers(), pressed=True))
        event.accept()

    def leaveEvent(self, event: QEvent) -> None:
        """Nothing is hovered any more."""
        super().leaveEvent(event)
        self.view.set_hovered(None)
        if not self.toolbox.tool.busy:
            self.bench.show()

    def contextMenuEvent(self, event: QContextMenuEvent) -> None:
        """Open the menu of what is picked by the menu key; the mouse asks for it on release."""
        if event.reason() == QContextMenuEvent.Reason.Keyboard:
            self._ask_for_menu()
        event.accept()

    def _ask_for_menu(self) -> None:
        picked = self.rectangle_of(self.view.selection)
        place = self._keyboard_place() if picked.isNull() else picked.center()
        self.menu_wanted.emit(self.viewport().mapToGlobal(place.toPoint()))

    # Keys

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Zoom, or let the toolbox have the key."""
        self._by_keys = True
        key, held = event.key(), event.modifiers()
        control = bool(held & Qt.KeyboardModifier.ControlModifier)
        stroke = Stroke(
            key=key,
            pointer=self._pointer(self._keyboard_place(), held & ~Qt.KeyboardModifier.AltModifier, pressed=True),
            text=event.text() if event.text().isprintable() else "",
            shift=bool(held & Qt.KeyboardModifier.ShiftModifier),
            control=control,
            alt=bool(held & Qt.KeyboardModifier.AltModifier),
        )
        if self._zoom_key(event) or self.toolbox.key(stroke):
            event.accept()
        elif key == Qt.Key.Key_F10 and stroke.shift and not MENU_BY_SYSTEM:
            self._ask_for_menu()
            event.accept()
        elif stroke.text == "?":
            self.keys_wanted.emit()
            event.accept()
        elif key == Qt.Key.Key_Space and not event.isAutoRepeat():
            self._space_held = True
            self.viewport().setCursor(Qt.CursorShape.OpenHandCursor)
            event.accept()
        else:
            event.ignore()

    def keyReleaseEvent(self, event: QKeyEvent) -> None:
        """Put the hand away."""
        if event.key() == Qt.Key.Key_Space and self._space_held and not event.isAutoRepeat():
            self._space_held = False
            self._pan_from = None
            self._show_cursor(self.toolbox.tool.cursor)
        event.accept()

    def _zoom_key(self, event: QKeyEvent) -> bool:
        if event.key() in (Qt.Key.Key_Plus, Qt.Key.Key_Equal):
            self.zoom_in()
        elif event.key() == Qt.Key.Key_Minus:
            self.zoom_out()
        elif event.key() == Qt.Key.Key_0:
            self.fit()
        else:
            return False
        return True

    def _keyboard_place(self) -> QPointF:
        """Return the pixel where a key acts: at the cross, else at the mouse, else in the middle."""
        if self.toolbox.cross is not None:
            return self.to_pixel(self.toolbox.cross)
        return self.pointer_place()

    def focusNextPrevChild(self, next: bool) -> bool:  # noqa: FBT001 - Qt's own signature
        """Walk from thing to thing, and on to the next control past the last."""
        self._by_keys = True
        if self.hasFocus() and not self.toolbox.tool.busy and deeds.walk(self.bench, back=not next):
            return True
        return super().focusNextPrevChild(next)

    def focusInEvent(self, event: QFocusEvent) -> None:
        """Show the ring of the keyboard."""
        super().focusInEvent(event)
        self._by_keys = event.reason() in (Qt.FocusReason.TabFocusReason, Qt.FocusReason.BacktabFocusReason)
        self._show_states()

    def focusOutEvent(self, event: QFocusEvent) -> None:
        """Take the ring away."""
        super().focusOutEvent(event)
        self._space_held = False
        self._show_states()

    # Drops

    def dragEnterEvent(self, event: QDragEnterEvent) -> None:
        """Take things of ours; files are for the window."""
        self.dragMoveEvent(event)

    def dragMoveEvent(self, event: QDragMoveEvent) -> None:
        """Show where the thing would come to stand."""
        if kind_in(event.mimeData()) is None or self.document.read_only:
            event.ignore()
            return
        self._snapped_drop(event)
        event.acceptProposedAction()

    def dragLeaveEvent(self, event: QDragLeaveEvent) -> None:
        """Forget it."""
        self.bench.show()
        event.accept()

    def dropEvent(self, event: QDropEvent) -> None:
        """Put the thing there."""
        kind = kind_in(event.mimeData())
        if kind is None:
            event.ignore()
            return
        point = self._snapped_drop(event)
        self.bench.show()
        self.view.set_tool("select")
        if drop_item(self.document, self.view, kind, point) is None:
            self.said.emit("It could not be put there.")
            event.ignore()
            return
        self.setFocus(Qt.FocusReason.MouseFocusReason)
        event.acceptProposedAction()

    def _snapped_drop(self, event: QDropEvent) -> Point:
        pointer = self._pointer(event.position(), event.modifiers())
        return self.bench.snap(pointer.at, pointer)

    # For whoever listens

    def _tell_selection(self) -> None:
        """Say what is picked and where it is to a screen reader: as the thing the keyboard has come to, else as words."""
        words, picked = self.words_of_selection(), self.view.selection
        if self.hasFocus() and len(picked) == 1 and go_to(self, next(iter(picked))):
            self.setAccessibleDescription(words)
        else:
            self.tell(words)

    def tell(self, words: str) -> None:
        """Say ``words`` about the court to a screen reader."""
        self.setAccessibleDescription(words)
        from PySide6.QtGui import QAccessible, QAccessibleAnnouncementEvent, QAccessibleEvent

        if not words or not QAccessible.isActive():
            return
        QAccessible.updateAccessibility(QAccessibleEvent(self, QAccessible.Event.DescriptionChanged))
        QAccessible.updateAccessibility(QAccessibleAnnouncementEvent(self, words))

    def words_of_selection(self) -> str:
        """Return what is picked, in words: its name and where it is, or how many things."""
        setting, ids = self.view.setting, self.view.selection & deeds.on_court(self.view.setting)
        if len(ids) > 1:
            return f"{len(ids)} things picked"
        if not ids:
            return ""
        return words_of(setting, self.bench.ground, next(iter(ids)), self.view.units)
