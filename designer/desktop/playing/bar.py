"""The strip under the court while it is played: which ball, how fast, and the choices there are."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import QRect, Qt, Signal
from PySide6.QtGui import QColor, QPainter, QPaintEvent
from PySide6.QtWidgets import QHBoxLayout, QLabel, QPushButton, QVBoxLayout, QWidget

from designer.desktop.controls import Link
from designer.desktop.fonts import CONTROL, NOTE, font
from designer.desktop.style import look, style

KEYS = "Space pauses. Left and right arrow: shot by shot. Down and up arrow: slower, faster. Esc leaves."


class PlayBar(QWidget):
    """``chosen`` carries the id of a ball; the other signals ask for what their names say."""

    chosen = Signal(str)
    pause_wanted = Signal()
    slower_wanted = Signal()
    faster_wanted = Signal()
    leave_wanted = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.words = QLabel(self)
        self.words.setTextFormat(Qt.TextFormat.PlainText)
        self.words.setFont(font(CONTROL, bold=True))
        self.keys = QLabel(KEYS, self)
        self.keys.setFont(font(NOTE))
        self._choices = QHBoxLayout()
        self._choices.setSpacing(8)
        self.pause = Link("Pause")
        self.slower, self.faster, self.leave = Link("Slower"), Link("Faster"), Link("Leave")
        for link, signal in (
            (self.pause, self.pause_wanted),
            (self.slower, self.slower_wanted),
            (self.faster, self.faster_wanted),
            (self.leave, self.leave_wanted),
        ):
            link.clicked.connect(signal)
            link.setFocusPolicy(Qt.FocusPolicy.TabFocus)
        self._lay()
        style().changed.connect(self._colour)
        self._colour()

    def _lay(self) -> None:
        column = QVBoxLayout(self)
        column.setContentsMargins(14, 8, 12, 8)
        column.setSpacing(4)
        row = QHBoxLayout()
        row.setSpacing(6)
        row.addWidget(self.words)
        row.addSpacing(10)
        row.addLayout(self._choices)
        row.addStretch(1)
        for link in (self.pause, self.slower, self.faster, self.leave):
            row.addWidget(link)
        column.addLayout(row)
        column.addWidget(self.keys)

    def show_state(self, words: str, *, paused: bool, over: bool) -> None:
        """Show which ball is in play, and what Space does now."""
        if self.words.text() != words:
            self.words.setText(words)
        self.pause.setText("Again" if over else "Go on" if paused else "Pause")
        self.pause.setAccessibleName(self.pause.text())

    def show_choices(self, choices: Sequence[tuple[str, str]]) -> None:
        """Offer balls, each as (id, words); a digit before the words is the key that chooses it."""
        while (item := self._choices.takeAt(0)) is not None:
            widget = item.widget()
            if widget is not None:
                widget.hide()
                widget.deleteLater()
        for number, (id, words) in enumerate(choices, 1):
            button = QPushButton(f"{number}  {words}", self)
            button.setFocusPolicy(Qt.FocusPolicy.TabFocus)
            button.clicked.connect(lambda _=False, id=id: self.chosen.emit(id))
            self._choices.addWidget(button)

    def choices(self) -> list[QPushButton]:
        """Return the buttons of the balls that are offered."""
        items = (self._choices.itemAt(number) for number in range(self._choices.count()))
        found = (item.widget() for item in items if item is not None)
        return [widget for widget in found if isinstance(widget, QPushButton)]

    def _colour(self, *_: object) -> None:
        self.words.setStyleSheet(f"color: {look().ink};")
        self.keys.setStyleSheet(f"color: {look().soft};")
        self.update()

    def paintEvent(self, _: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.fillRect(self.rect(), QColor(look().panel))
        painter.fillRect(QRect(0, 0, self.width(), 1), QColor(look().hairline))
