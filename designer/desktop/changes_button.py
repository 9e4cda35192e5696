"""How much the setting in view changes over the one below it: at the right end of the row under the tabs."""

from __future__ import annotations

from typing import Final

from PySide6.QtCore import QRect, QRectF, QSize, Qt, Signal
from PySide6.QtGui import QColor, QFontMetrics, QKeyEvent, QMouseEvent, QPainter, QPaintEvent
from PySide6.QtWidgets import QAbstractButton, QSizePolicy, QWidget

from designer.desktop.controls import frame
from designer.desktop.fonts import NOTE, font
from designer.desktop.icons import paint_icon
from designer.desktop.style import look

HEIGHT: Final = 38
CHEVRON: Final = 18


class ChangesButton(QAbstractButton):
    """Says how many changes; pressed it marks them on the court and in the card, its chevron lists them."""

    listed = Signal()
    """The chevron was pressed, or Alt and the down key."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.count = 0
        self.setCheckable(True)
        self.setCursor(Qt.CursorShape.PointingHandCursor)
        self.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Fixed)
        self.setToolTip("Mark on the court and in the card what is changed here")

    def show_count(self, count: int) -> None:
        """Show how many things are changed; the button goes where nothing is."""
        self.count = count
        self.setVisible(count > 0)
        self.setText("1 change" if count == 1 else f"{count} changes")
        self.setAccessibleName(f"{self.text()} here; mark them")
        self.updateGeometry()
        self.update()

    def sizeHint(self) -> QSize:
        return QSize(QFontMetrics(font(NOTE, bold=True)).horizontalAdvance(self.text()) + 24 + CHEVRON, HEIGHT)

    def minimumSizeHint(self) -> QSize:
        return self.sizeHint()

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        if self.isDown() and event.position().x() > self.width() - CHEVRON:
            self.setDown(False)
            self.listed.emit()
            return
        super().mouseReleaseEvent(event)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.key() == Qt.Key.Key_Down and event.modifiers() & Qt.KeyboardModifier.AltModifier:
            self.listed.emit()
            return
        super().keyPressEvent(event)

    def paintEvent(self, _: QPaintEvent) -> None:
        now, painter = look(), QPainter(self)
        box = self.rect().adjusted(0, 7, -CHEVRON, -7)
        if self.isChecked():
            frame(painter, box, edge=now.highlighter_edge, fill=now.highlighter)
        elif self.underMouse():
            frame(painter, box, edge=now.hover, fill=now.hover)
        painter.fillRect(QRect(6, HEIGHT // 2 - 6, 3, 12), QColor(now.highlighter_edge))
        painter.setFont(font(NOTE, bold=self.isChecked()))
        painter.setPen(QColor(now.ink if self.isChecked() else now.soft))
        words = box.adjusted(14, 0, 0, 0)
        painter.drawText(words, Qt.AlignmentFlag.AlignVCenter | Qt.AlignmentFlag.AlignLeft, self.text())
        paint_icon(painter, "chevron", QRectF(self.width() - CHEVRON + 4, HEIGHT / 2 - 5, 10, 10), now.soft)
        if self.hasFocus():
            frame(painter, self.rect().adjusted(0, 5, 0, -5), edge=now.ink, fill=None, width=2)
