"""What stands over a blank court: how many, which court, or a drill from last time. It goes when the drawing begins."""

from __future__ import annotations

from functools import partial
from pathlib import Path
from typing import Final

from PySide6.QtCore import QRect, QSize, Qt, Signal
from PySide6.QtGui import QColor, QPainter, QPaintEvent
from PySide6.QtWidgets import QLabel, QMenu, QWidget

from designer.court.standards import court_names
from designer.desktop import settings
from designer.desktop.controls import HEIGHT, DropDown, Link, Segments, fill
from designer.desktop.flow import Flow
from designer.desktop.fonts import CONTROL, font, scaled
from designer.desktop.style import look, style

COUNTS: Final = ((1, "1"), (2, "2"), (3, "3"), (4, "4"))


class StartRow(QWidget):
    """Two quiet questions and the drills last used."""

    players = Signal(int)
    court = Signal(str)
    opened = Signal(object)
    browsed = Signal()

    def __init__(self, court: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        line = Flow(self, gap=8)
        line.setContentsMargins(16, 6, 16, 6)
        self._labels: list[QLabel] = []
        self._say("Put players on court:")
        self.counts = Segments(COUNTS)
        self.counts.show_values((), usual=(2,))
        self.counts.chosen.connect(self._count)
        line.addWidget(self.counts)
        self._say("Which court?")
        self.courts = DropDown()
        self.courts.setAccessibleName("Which court?")
        self.courts.setFixedWidth(scaled(140))
        fill(self.courts, [(name, name) for name in court_names()], court)
        self.courts.activated.connect(lambda _: self.court.emit(self.courts.currentData()))
        line.addWidget(self.courts)
        self.recent = Link("Recent drills")
        self.recent.clicked.connect(self._list)
        self.recent.setVisible(bool(settings.recent_files()))
        line.addWidget(self.recent)
        self.browse = Link("Open a drill")
        self.browse.clicked.connect(self.browsed)
        line.addWidget(self.browse)
        style().changed.connect(self._colour)
        self._colour()

    def minimumSizeHint(self) -> QSize:
        return QSize(200, scaled(HEIGHT) + 12)

    def menu(self) -> QMenu:
        """Return the menu of the drills last used."""
        menu = QMenu(self)
        for path in settings.recent_files():
            menu.addAction(said(path), partial(self.opened.emit, path))
        return menu

    def _count(self, chosen: tuple[int, ...]) -> None:
        if chosen:
            self.players.emit(chosen[0])

    def _list(self) -> None:
        self.menu().popup(self.recent.mapToGlobal(self.recent.rect().bottomLeft()))

    def _say(self, words: str) -> None:
        label = QLabel(words)
        label.setFont(font(CONTROL))
        label.setMinimumHeight(scaled(HEIGHT))
        label.setAlignment(Qt.AlignmentFlag.AlignVCenter)
        self._labels.append(label)
        row = self.layout()
        if row is not None:
            row.addWidget(label)

    def _colour(self, *_: object) -> None:
        for label in self._labels:
            label.setStyleSheet(f"color: {look().soft};")

    def paintEvent(self, _: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.fillRect(QRect(0, self.height() - 1, self.width(), 1), QColor(look().hairline))


def said(path: Path) -> str:
    """Return a file as a menu says it, its folder behind it."""
    return f"{plain_name(path)} – {path.parent.name}".replace("&", "&&")


def plain_name(path: Path) -> str:
    """Return the name of a drill's file without its endings."""
    return path.name.removesuffix(".json").removesuffix(".drill")
