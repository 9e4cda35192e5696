"""A quiet bar over the court for what the user should know: read-only, mended on opening, changed on disk."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtCore import QRect, Qt
from PySide6.QtGui import QColor, QPainter, QPaintEvent
from PySide6.QtWidgets import QHBoxLayout, QLabel, QSizePolicy, QWidget

from designer.desktop.controls import IconButton, Link
from designer.desktop.fonts import CONTROL, font
from designer.desktop.style import look, style


class NoticeBar(QWidget):
    """One notice at a time, with what can be done about it."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._key = ""
        self._links: list[Link] = []
        self._line = QHBoxLayout(self)
        self._line.setContentsMargins(16, 4, 8, 4)
        self._words = QLabel()
        self._words.setTextFormat(Qt.TextFormat.PlainText)
        self._words.setWordWrap(True)
        self._words.setFont(font(CONTROL))
        self._words.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Preferred)
        self._line.addWidget(self._words, 1)
        self._cross = IconButton("close", "Close this notice", self, size=10)
        self._cross.clicked.connect(self.hide)
        self._line.addWidget(self._cross)
        style().changed.connect(self._repaint)
        self.hide()

    @property
    def words(self) -> str:
        """Return what is said now, "" while the bar is hidden."""
        return "" if self.isHidden() else self._words.text()

    def say(self, key: str, words: str, *deeds: tuple[str, Callable[[], None]], keep: bool = False) -> None:
        """Show ``words`` with a link for each of ``deeds``; with ``keep`` it cannot be closed."""
        self.clear()
        self._key = key
        self._words.setText(words)
        for number, (said, do) in enumerate(deeds):
            link = Link(said, self)
            link.clicked.connect(do)
            self._line.insertWidget(1 + number, link)
            self._links.append(link)
        self._cross.setVisible(not keep)
        self.show()

    def reword(self, key: str, words: str) -> None:
        """Say other words in the notice of ``key``, where it stands."""
        if key == self._key and not self.isHidden():
            self._words.setText(words)

    def clear(self, key: str | None = None) -> None:
        """Take the notice away; with ``key`` only where it is the one of that key."""
        if key is not None and key != self._key:
            return
        for link in self._links:
            self._line.removeWidget(link)
            link.hide()
            link.deleteLater()
        self._links = []
        self._key = ""
        self.hide()

    def _repaint(self, *_: object) -> None:
        self.update()

    def paintEvent(self, _: QPaintEvent) -> None:
        now = look()
        painter = QPainter(self)
        painter.fillRect(self.rect(), QColor(now.highlighter))
        painter.fillRect(QRect(0, 0, 4, self.height()), QColor(now.highlighter_edge))
