"""A heading of the card, with a plus beside it for sections that can take another entry."""

from __future__ import annotations

from typing import Final

from PySide6.QtCore import QEvent, QRect, QRectF, QSizeF, Qt, Signal
from PySide6.QtGui import QColor, QEnterEvent, QPainter, QPaintEvent
from PySide6.QtWidgets import QHBoxLayout, QSizePolicy, QWidget

from designer.desktop.controls import IconButton
from designer.desktop.fonts import CONTROL, font, scaled
from designer.desktop.icons import paint_icon
from designer.desktop.style import look

HEIGHT: Final = 28
SIDE: Final = 14
FAINT: Final = 0.5
ADDS: Final = {
    "start": ("start", "Add another start"),
    "bounds": ("rule", "Add a rule"),
    "rules": ("rule", "Add a rule"),
    "points": ("points", "Add points"),
    "swap": ("swap", "Add a swap"),
    "steps": ("part", "Add a part of the rally"),
    "cues": ("cues", "Change the cues"),
    "watch": ("watch_for", "Change what to watch for"),
    "care": ("safety", "Add a caution of your own"),
}
"""The sections with a plus: what it makes, and its words."""


class Heading(QWidget):
    """The words, in soft bold, and a faint plus that is clear under the pointer and to the keyboard."""

    wanted = Signal(str)

    def __init__(self, section: str, words: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._words, self._faint = words, False
        self._plus: IconButton | None = None
        self.setFixedHeight(scaled(HEIGHT))
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.setAccessibleName(words)
        if section in ADDS:
            make, said = ADDS[section]
            self._plus = _Plus("plus", said, self, size=12)
            self._plus.clicked.connect(lambda: self.wanted.emit(make))
            line = QHBoxLayout(self)
            line.setContentsMargins(0, 2, SIDE - 6, 0)
            line.addStretch(1)
            line.addWidget(self._plus)

    def show_words(self, words: str, *, faint: bool = False) -> None:
        """Show other words, ``faint`` where nothing stands under them."""
        if (words, faint) != (self._words, self._faint):
            self._words, self._faint = words, faint
            self.setAccessibleName(words)
            self.update()

    def enterEvent(self, event: QEnterEvent) -> None:
        super().enterEvent(event)
        if self._plus is not None:
            self._plus.update()

    def leaveEvent(self, event: QEvent) -> None:
        super().leaveEvent(event)
        if self._plus is not None:
            self._plus.update()

    def paintEvent(self, _: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.setFont(font(CONTROL, bold=True))
        painter.setPen(QColor(look().faint if self._faint else look().soft))
        box = QRect(SIDE, 4, self.width() - 2 * SIDE, scaled(HEIGHT) - 4)
        painter.drawText(box, Qt.AlignmentFlag.AlignVCenter | Qt.AlignmentFlag.AlignLeft, self._words)


class _Plus(IconButton):
    """Faint until its heading is pointed at or it has the keyboard: there to be found, and not in the way of reading."""

    def paintEvent(self, event: QPaintEvent) -> None:
        parent = self.parentWidget()
        if self.hasFocus() or self.underMouse() or (parent is not None and parent.underMouse()):
            super().paintEvent(event)
            return
        painter = QPainter(self)
        painter.setOpacity(FAINT)
        place = QRectF(self.rect().center(), QSizeF(0, 0)).adjusted(-5.5, -5.5, 6.5, 6.5)
        paint_icon(painter, "plus", place, look().soft)
