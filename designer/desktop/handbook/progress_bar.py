"""The line at the foot of the handbook's window: how long the book is, how far its printing is, and the button."""

from __future__ import annotations

from PySide6.QtCore import QRectF, QSize, Qt, Signal
from PySide6.QtGui import QColor, QPainter, QPaintEvent
from PySide6.QtWidgets import QHBoxLayout, QLabel, QSizePolicy, QWidget

from designer.desktop.controls import FilledButton, Link, tinted
from designer.desktop.fonts import CONTROL, font, scaled
from designer.desktop.style import look, style


class Bar(QWidget):
    """A bar that fills from left to right; ``share`` is 0 to 1."""

    def __init__(self) -> None:
        super().__init__()
        self._share = 0.0
        self.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Fixed)
        self.setAccessibleName("How far the printing is")

    @property
    def share(self) -> float:
        """Return how full it is."""
        return self._share

    def show_share(self, share: float) -> None:
        """Show how far something is."""
        self._share = share
        self.setAccessibleDescription(f"{round(100 * share)} per cent")
        self.update()

    def sizeHint(self) -> QSize:
        return QSize(scaled(160), scaled(8))

    def paintEvent(self, _: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(QColor(look().hairline))
        painter.drawRoundedRect(QRectF(self.rect()), 4, 4)
        painter.setBrush(QColor(look().chosen))
        painter.drawRoundedRect(QRectF(0, 0, self.width() * self._share, self.height()), 4, 4)


class FootLine(QWidget):
    """Says how long the book is; while it is printed, what is being set. ``print_wanted`` and ``stop_wanted``."""

    print_wanted = Signal()
    stop_wanted = Signal()

    def __init__(self) -> None:
        super().__init__()
        line = QHBoxLayout(self)
        line.setContentsMargins(16, 6, 16, 6)
        line.setSpacing(12)
        self._words = QLabel()
        self._words.setFont(font(CONTROL))
        self._words.setTextFormat(Qt.TextFormat.PlainText)
        self._words.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Preferred)
        line.addWidget(self._words, 1)
        self.drills = Link("Add drills …", self)
        self.section = Link("Add a section", self)
        line.addWidget(self.drills)
        line.addWidget(self.section)
        self.bar = Bar()
        line.addWidget(self.bar)
        self.stop = Link("Stop", self)
        self.stop.clicked.connect(self.stop_wanted)
        line.addWidget(self.stop)
        self.button = FilledButton("Print the handbook", self)
        self.button.clicked.connect(self.print_wanted)
        line.addWidget(self.button)
        self._length = ""
        self.is_printing = False
        self.show_idle()
        style().changed.connect(self._take_look)
        self._take_look()

    @property
    def words(self) -> str:
        """Return what is said."""
        return self._words.text()

    def show_length(self, words: str) -> None:
        """Show how long the book is, once nothing is printed."""
        self._length = words
        if not self.is_printing:
            self._words.setText(words)

    def show_progress(self, done: int, whole: int, words: str) -> None:
        """Show how far the printing is and what is being set."""
        self.is_printing = True
        self._words.setText(f"{done} of {whole}  ·  {words}")
        self.bar.show_share(done / whole if whole else 0.0)
        self._switch()

    def show_idle(self) -> None:
        """Show the length and the button again."""
        self.is_printing = False
        self._words.setText(self._length)
        self._switch()

    def _switch(self) -> None:
        self.bar.setVisible(self.is_printing)
        self.stop.setVisible(self.is_printing)
        for own in (self.drills, self.section, self.button):
            own.setVisible(not self.is_printing)

    def _take_look(self, *_: object) -> None:
        tinted(self, look().window)
        self.update()
