"""The strip of what can be placed: drag from it, or press and then press on the court."""

from __future__ import annotations

from typing import Final

from PySide6.QtCore import QPoint, QRect, QRectF, QSize, Qt, Signal
from PySide6.QtGui import QColor, QDrag, QMouseEvent, QPainter, QPaintEvent, QPixmap, QResizeEvent
from PySide6.QtWidgets import QAbstractButton, QApplication, QFrame, QGridLayout, QScrollArea, QVBoxLayout, QWidget

from designer.desktop.canvas.drop import item_mime
from designer.desktop.canvas.keys import LETTERS, KeyUse
from designer.desktop.controls import IconButton, frame
from designer.desktop.fonts import NOTE, font, scaled
from designer.desktop.icons import paint_icon
from designer.desktop.marks import paint_mark
from designer.desktop.style import look, style
from designer.desktop.view import View

WIDTH: Final = 68
ROWS: Final = 7
"""Rows of all that can be placed, which makes three columns; they fit a window 768 pixels high."""

CELL: Final = 56
PITCH: Final = 62
COMMON: Final = ("player", "ball", "feed", "run", "area", "cone")
REST: Final = (
    "line",
    "round area",
    "polygon",
    "court area",
    "split area",
    "disc",
    "hoop",
    "basket",
    "ball machine",
    "barrier",
    "obstacle",
    "note",
    "coach",
)
DRAWN: Final = frozenset({"ball", "feed", "run", "polygon", "court area", "split area"})
"""What has two ends, or corners of its own, and is drawn; all else can be dropped as well."""

DRAGGED: Final = frozenset({*COMMON, *REST} - DRAWN)

_MARKS: Final = {
    "player": "person",
    "ball": "tool ball",
    "feed": "tool feed",
    "run": "tool run",
    "area": "target area",
    "round area": "tool round area",
    "polygon": "tool polygon",
    "court area": "tool court area",
    "split area": "tool split area",
    "line": "chalk line",
    "note": "",
}
"""The drawing's sample for a tool, where it has another name; "" has a sign of the window's own."""


class ThingButton(QAbstractButton):
    """One thing: its mark and its word. Chosen, the next press on the court places it."""

    def __init__(self, use: KeyUse, parent: QWidget) -> None:
        super().__init__(parent)
        self.use = use
        self._pressed: QPoint | None = None
        self.setCheckable(True)
        self.setText(use.name)
        how = "drag it onto the court, or press and then press on the court"
        if use.tool not in DRAGGED:
            how = "press, then draw on the court"
        self.setToolTip(f"{use.name} ({use.letter}): {how}")
        self.setAccessibleName(f"{use.name}, key {use.letter}")
        self.setAccessibleDescription(how)
        self.setFixedSize(scaled(WIDTH), scaled(CELL))
        self.setCursor(Qt.CursorShape.PointingHandCursor)

    def mousePressEvent(self, event: QMouseEvent) -> None:
        super().mousePressEvent(event)
        if event.button() == Qt.MouseButton.LeftButton:
            self._pressed = event.position().toPoint()

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        super().mouseMoveEvent(event)
        start = self._pressed
        if start is None or self.use.tool not in DRAGGED or not event.buttons() & Qt.MouseButton.LeftButton:
            return
        if (event.position().toPoint() - start).manhattanLength() >= QApplication.startDragDistance():
            self._pressed = None
            self.setDown(False)
            self.make_drag().exec(Qt.DropAction.CopyAction)

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        self._pressed = None
        super().mouseReleaseEvent(event)

    def make_drag(self) -> QDrag:
        """Return the drag of this thing, ready to begin."""
        drag = QDrag(self)
        drag.setMimeData(item_mime(self.use.tool))
        ratio = self.devicePixelRatioF()
        picture = QPixmap(QSize(round(44 * ratio), round(44 * ratio)))
        picture.setDevicePixelRatio(ratio)
        picture.fill(Qt.GlobalColor.transparent)
        painter = QPainter(picture)
        self._paint_sign(painter, QRectF(0, 0, 44, 44))
        painter.end()
        drag.setPixmap(picture)
        drag.setHotSpot(QPoint(22, 22))
        return drag

    def paintEvent(self, _: QPaintEvent) -> None:
        now = look()
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        if self.isChecked() or self.underMouse():
            frame(painter, self.rect().adjusted(6, 0, -6, 0), edge=now.hover, fill=now.hover)
        if self.isChecked():
            painter.fillRect(QRect(0, 4, 4, self.height() - 8), QColor(now.ink))
        if self.hasFocus():
            frame(painter, self.rect().adjusted(6, 0, -6, 0), edge=now.ink, fill=None, width=2)
        self._paint_sign(painter, QRectF(12, 2, scaled(WIDTH) - 24, scaled(32)))
        painter.setFont(font(NOTE, bold=self.isChecked()))
        painter.setPen(QColor(now.ink))
        words = "Machine" if self.use.tool == "ball machine" else self.use.name
        painter.drawText(QRect(0, scaled(35), self.width(), scaled(18)), Qt.AlignmentFlag.AlignCenter, words)

    def _paint_sign(self, painter: QPainter, box: QRectF) -> None:
        now = look()
        kind = _MARKS.get(self.use.tool, self.use.tool)
        if kind:
            paint_mark(painter, kind, box, now, text={"player": "A", "coach": "C"}.get(self.use.tool, ""))
            return
        painter.setFont(font(NOTE))
        painter.setPen(QColor(now.ink))
        painter.drawText(box, Qt.AlignmentFlag.AlignCenter, "Abc")


class MoreButton(QAbstractButton):
    """The three dots that show the rest, and fold them away."""

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.setCheckable(True)
        self.setText("More")
        self.setAccessibleName("More things to place")
        self.setToolTip("Show all that can be placed")
        self.setFixedSize(scaled(WIDTH), scaled(CELL))
        self.setCursor(Qt.CursorShape.PointingHandCursor)

    def paintEvent(self, _: QPaintEvent) -> None:
        now = look()
        painter = QPainter(self)
        painter.fillRect(QRect(14, 0, scaled(WIDTH) - 28, 1), QColor(now.hairline))
        if self.underMouse():
            frame(painter, self.rect().adjusted(6, 5, -6, 0), edge=now.hover, fill=now.hover)
        if self.hasFocus():
            frame(painter, self.rect().adjusted(6, 5, -6, 0), edge=now.ink, fill=None, width=2)
        paint_icon(painter, "more", QRectF(scaled(WIDTH) / 2 - 9, 12, 18, 18), now.ink)
        painter.setFont(font(NOTE))
        painter.setPen(QColor(now.ink))
        words = "Fewer" if self.isChecked() else "More"
        painter.drawText(QRect(0, scaled(35), scaled(WIDTH), scaled(18)), Qt.AlignmentFlag.AlignCenter, words)


class ThingStrip(QWidget):
    """The strip, one cell wide; three with all that is behind "More"."""

    folded = Signal(bool)

    def __init__(self, view: View, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._view = view
        self._uses: dict[str, KeyUse] = {use.tool: use for use in LETTERS}
        self._buttons: dict[str, ThingButton] = {}
        outer = QVBoxLayout(self)
        outer.setContentsMargins(0, 10, 1, 6)
        outer.setSpacing(0)
        self._scroll = QScrollArea()
        self._scroll.setFrameShape(QFrame.Shape.NoFrame)
        self._scroll.setWidgetResizable(True)
        self._scroll.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self._scroll.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self._scroll.setVerticalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        page = QWidget()
        self._grid = QGridLayout(page)
        self._grid.setContentsMargins(0, 0, 0, 0)
        self._grid.setSpacing(scaled(PITCH) - scaled(CELL))
        self._grid.setHorizontalSpacing(0)
        for tool in (*COMMON, *REST):
            button = self._buttons[tool] = ThingButton(self._uses[tool], page)
            button.clicked.connect(lambda _=False, tool=tool: self._press(tool))
        self.more = MoreButton(page)
        self.more.toggled.connect(lambda _: self._lay())
        self._scroll.setWidget(page)
        outer.addWidget(self._scroll, 1)
        self._fold = IconButton("fold", "Fold the strip away", self)
        self._fold.clicked.connect(lambda: self.folded.emit(True))
        outer.addWidget(self._fold, 0, Qt.AlignmentFlag.AlignHCenter)
        view.tool_changed.connect(self._show_tool)
        style().changed.connect(self._repaint)
        self._rows = 0
        self._lay()

    def button(self, tool: str) -> ThingButton:
        """Return the button of a thing."""
        return self._buttons[tool]

    def shown(self) -> tuple[ThingButton, ...]:
        """Return the buttons that can be seen."""
        return tuple(button for button in self._buttons.values() if not button.isHidden())

    def _press(self, tool: str) -> None:
        again = self._view.tool == tool
        self._view.set_tool("select" if again else self._uses[tool].tool)
        self._show_tool()

    def _show_tool(self, *_: object) -> None:
        for tool, button in self._buttons.items():
            button.setChecked(tool == self._view.tool)

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        if self._fitting_rows() != self._rows:
            self._lay()

    def _tools(self) -> tuple[str, ...]:
        return (*COMMON, *REST) if self.more.isChecked() else COMMON

    def _fitting_rows(self) -> int:
        """Return how many things stand one below another: as many as there are, fewer where the window is low."""
        wanted = ROWS if self.more.isChecked() else len(COMMON)
        if self.height() < 2 * scaled(PITCH):
            return wanted  # it has no place in the window yet
        room = self._scroll.height() // scaled(PITCH)
        return wanted if room > wanted else max(2, room)

    def _lay(self) -> None:
        tools = self._tools()
        for tool, button in self._buttons.items():
            self._grid.removeWidget(button)
            button.setVisible(tool in tools)
        self._grid.removeWidget(self.more)
        rows = self._rows = self._fitting_rows()
        below = rows == (ROWS if self.more.isChecked() else len(COMMON))
        for number, tool in enumerate(tools):
            self._grid.addWidget(self._buttons[tool], number % rows, number // rows)
        last = (rows, 0) if below else (len(tools) % rows, len(tools) // rows)
        self._grid.addWidget(self.more, *last)
        for row in range(20):
            self._grid.setRowStretch(row, 1 if row == rows + 1 else 0)
        columns = -(-(len(tools) + (not below)) // rows)
        self.setFixedWidth(scaled(WIDTH) * columns + 1)

    def _repaint(self, *_: object) -> None:
        self.update()

    def paintEvent(self, _: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.fillRect(QRect(self.width() - 1, 0, 1, self.height()), QColor(look().hairline))
