"""An answer that is usual but has not been given: offered on the highlighter's ground until it is confirmed."""

from __future__ import annotations

from typing import Final

from PySide6.QtCore import QRect, QSize, Qt
from PySide6.QtGui import QColor, QFontMetrics, QKeyEvent, QPainter, QPaintEvent
from PySide6.QtWidgets import QAbstractButton, QSizePolicy, QWidget

from designer.desktop.controls import frame
from designer.desktop.fonts import NOTE, font, scaled
from designer.desktop.style import look

HEIGHT: Final = 24
OPEN: Final = "press to keep"
"""What stands beside a usual answer for as long as it is only offered."""


class UsualButton(QAbstractButton):
    """Offers an answer in a dashed frame of the highlighter, such as “usual: replay”. A press confirms it."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.usual = ""
        self.setCursor(Qt.CursorShape.PointingHandCursor)
        self.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Fixed)

    def offer(self, words: str, about: str = "") -> None:
        """Offer the answer ``words``; ``about`` is the question, for a screen reader."""
        if words == self.usual:
            return
        self.usual = words
        self.setText(f"usual: {words}")
        self.setToolTip("The usual answer. Press to keep it.")
        self.setAccessibleName(f"{about} usual: {words}, {OPEN}".strip())
        self.updateGeometry()
        self.update()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self.click()  # and not what the sentence beside it does on Enter
            return
        super().keyPressEvent(event)

    def sizeHint(self) -> QSize:
        return QSize(QFontMetrics(font(NOTE)).horizontalAdvance(self.text()) + 18, scaled(HEIGHT))

    def minimumSizeHint(self) -> QSize:
        return QSize(60, scaled(HEIGHT))

    def paintEvent(self, _: QPaintEvent) -> None:
        now, painter = look(), QPainter(self)
        box = self.rect().adjusted(1, 2, -1, -2)
        frame(painter, box, edge=now.highlighter_edge, fill=now.highlighter, dashed=not self.underMouse())
        if self.hasFocus():
            frame(painter, box, edge=now.ink, fill=None, width=2)
        painter.setFont(font(NOTE))
        painter.setPen(QColor(now.ink))
        words = QFontMetrics(font(NOTE)).elidedText(self.text(), Qt.TextElideMode.ElideRight, self.width() - 14)
        painter.drawText(QRect(0, 0, self.width(), self.height()), Qt.AlignmentFlag.AlignCenter, words)
