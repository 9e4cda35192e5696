"""Whose card is shown, and the one filled button in view: Print."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from PySide6.QtCore import QRect, QSize, Qt, Signal
from PySide6.QtGui import QColor, QFontMetrics, QPainter, QPaintEvent
from PySide6.QtWidgets import QAbstractButton, QButtonGroup, QHBoxLayout, QLabel, QWidget

from designer.desktop.controls import FilledButton, frame
from designer.desktop.fonts import BODY, NOTE, font, scaled
from designer.desktop.style import look

if TYPE_CHECKING:
    from designer.wording.card import Reader

HEIGHT: Final = 52
READERS: Final[tuple[tuple[Reader, str], ...]] = (("player", "Player"), ("coach", "Coach"), ("stand-in", "Stand-in"))


class Tab(QAbstractButton):
    """One word over a bar of ink while it is chosen."""

    def __init__(self, words: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setText(words)
        self.setAccessibleName(f"{words}’s card")
        self.setCheckable(True)
        self.setCursor(Qt.CursorShape.PointingHandCursor)

    def sizeHint(self) -> QSize:
        return QSize(QFontMetrics(font(BODY, bold=True)).horizontalAdvance(self.text()), scaled(HEIGHT))

    def paintEvent(self, _: QPaintEvent) -> None:
        now = look()
        painter = QPainter(self)
        on = self.isChecked()
        painter.setFont(font(BODY, bold=on))
        painter.setPen(QColor(now.ink if on or self.underMouse() else now.soft))
        painter.drawText(self.rect(), Qt.AlignmentFlag.AlignCenter, self.text())
        if on:
            painter.fillRect(QRect(0, self.height() - 4, self.width(), 4), QColor(now.ink))
        if self.hasFocus():
            frame(painter, self.rect().adjusted(-1, 12, 1, -10), edge=now.ink, fill=None, width=2)


class ReaderBar(QWidget):
    """Player, coach or stand-in, and Print."""

    chosen = Signal(str)
    printed = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.reader: Reader = "player"
        self.fill: QLabel | None = None
        self.setFixedHeight(scaled(HEIGHT))
        self._line = QHBoxLayout(self)
        self._line.setSpacing(24)
        self._group = QButtonGroup(self)
        for number, (reader, words) in enumerate(READERS):
            tab = Tab(words, self)
            tab.setChecked(reader == self.reader)
            self._group.addButton(tab, number)
            self._line.addWidget(tab)
        self._group.idClicked.connect(lambda number: self.choose(READERS[number][0]))
        self._line.addStretch(1)
        self.print_button = FilledButton("Print", self)
        self.print_button.setToolTip("See the pages of this card, print them or keep them as a PDF")
        self.print_button.clicked.connect(self.printed)
        self._line.addWidget(self.print_button)
        self.pad(24, 34)

    def pad(self, left: int, right: int) -> None:
        """Stand in from the sides as the card below does."""
        self._line.setContentsMargins(left, 0, right, 0)

    def show_fill(self, words: str) -> None:
        """Say beside Print how full the card is; "" says nothing."""
        if self.fill is None:
            if not words:
                return
            self.fill = QLabel(self)
            self.fill.setFont(font(NOTE))
            self.fill.setAlignment(Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter)
            self.fill.setToolTip("How much the card takes of the paper it would be made on")
            self._line.insertWidget(self._line.count() - 1, self.fill)
        self.fill.setStyleSheet(f"color: {look().soft};")
        self.fill.setText(words)
        self.fill.setAccessibleName(words.replace("\n", " "))

    def choose(self, reader: Reader) -> None:
        """Show the card of another reader."""
        if reader == self.reader:
            return
        self.reader = reader
        for number, (each, _) in enumerate(READERS):
            self._group.button(number).setChecked(each == reader)
        self.chosen.emit(reader)

    def paintEvent(self, _: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.fillRect(QRect(0, self.height() - 1, self.width(), 1), QColor(look().hairline))
