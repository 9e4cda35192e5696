"""What else a blank court offers, under the card: situations to start from, the drills last used, the samples.

It is built when the window rests, for nothing of it is needed to take the first key.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass
from functools import partial
from pathlib import Path
from random import Random
from typing import Final

from PySide6.QtCore import QRect, QSize, Qt, QTimer, Signal, SignalInstance
from PySide6.QtGui import QColor, QFontMetrics, QPainter, QPaintEvent, QPixmap, QShowEvent
from PySide6.QtWidgets import (
    QAbstractButton,
    QFrame,
    QHBoxLayout,
    QLabel,
    QScrollArea,
    QSizePolicy,
    QVBoxLayout,
    QWidget,
)

from designer.bundle import MissingFile, sample
from designer.desktop import settings
from designer.desktop.blank import blank
from designer.desktop.controls import Link, frame, tinted
from designer.desktop.fonts import CONTROL, NOTE, font, scaled
from designer.desktop.situations import SITUATIONS, Situation, with_situation
from designer.desktop.small_court import small_court
from designer.desktop.start_row import plain_name
from designer.desktop.style import look, scroll_bar_sheet, style
from designer.drill.setting import main_setting
from designer.storage.parsing import Unreadable
from designer.storage.reading import open_drill

TILE: Final = QSize(70, 35)
"""A court on its side, in pixels."""
SMALL: Final = QSize(44, 22)
RECENT: Final = 3
ROWS: Final = 4
"""So many drills are listed, recent ones and samples together: the questions of the card stay in sight above them."""
SAMPLES: Final = ("wide-start", "volley-four", "hoop-red")
"""The samples that are shown first: one for two, one for four, one for children."""


@dataclass(frozen=True, slots=True)
class Seen:
    """What the shelf shows of a drill: its title and its picture."""

    title: str
    picture: QPixmap | None


_seen: dict[tuple[object, ...], Seen] = {}
"""Pictures once made are kept while the program runs: every blank court shows the same."""


def seen_of(path: Path, size: QSize, ratio: float) -> Seen:
    """Return what is shown of the drill at ``path``; its name alone where it cannot be read."""
    try:
        key: tuple[object, ...] = (path, path.stat().st_mtime_ns, look().name, size.width(), ratio)
        if key not in _seen:
            drill = open_drill(path).drill
            _seen[key] = Seen(drill.title or plain_name(path), small_court(drill, main_setting(drill), size, ratio))
        return _seen[key]
    except (OSError, Unreadable):
        return Seen(plain_name(path), None)


def seen_situation(situation: Situation, court: str, size: QSize, ratio: float) -> Seen:
    """Return what is shown of a situation on a court."""
    key = (situation.key, court, look().name, size.width(), ratio)
    if key not in _seen:
        source = Random(0)  # noqa: S311 - names, not secrets
        drill = blank(source, court)
        drill = with_situation(drill, main_setting(drill), situation, source)
        _seen[key] = Seen(situation.name, small_court(drill, main_setting(drill), size, ratio))
    return _seen[key]


class Offer(QAbstractButton):
    """Something to start from: a small court and its name, beside it or ``under`` it."""

    def __init__(self, words: str, see: Callable[[float], Seen], *, under: bool, more: str = "") -> None:
        super().__init__()
        self.see, self._under, self._more = see, under, more
        self._picture: QPixmap | None = None
        self._size = TILE if under else SMALL
        self.setText(words)
        self.setAccessibleName(words)
        self.setToolTip(more)
        self.setFont(font(NOTE if under else CONTROL))
        self.setCursor(Qt.CursorShape.PointingHandCursor)
        self.setSizePolicy(
            QSizePolicy.Policy.Fixed if under else QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed
        )

    def look_at_it(self) -> None:
        """Show its picture and its title."""
        found = self.see(self.devicePixelRatioF())
        self._picture = found.picture
        self.setText(found.title)
        self.setAccessibleName(found.title)
        self.update()

    def sizeHint(self) -> QSize:
        lines = QFontMetrics(self.font()).lineSpacing()
        if self._under:
            return QSize(max(TILE.width(), scaled(TILE.width() - 6)) + 6, TILE.height() + 12 + 2 * lines)
        return QSize(200, max(SMALL.height(), lines) + 8)

    def minimumSizeHint(self) -> QSize:
        return self.sizeHint() if self._under else QSize(120, self.sizeHint().height())

    def paintEvent(self, _: QPaintEvent) -> None:
        now = look()
        painter = QPainter(self)
        if self.underMouse() or self.isDown():
            frame(painter, self.rect(), edge=now.hover, fill=now.hover)
        if self.hasFocus():
            frame(painter, self.rect(), edge=now.ink, fill=None, width=2)
        width, height = self._size.width(), self._size.height()
        left = (self.width() - width) // 2 if self._under else 4
        box = QRect(left, 4 if self._under else (self.height() - height) // 2, width, height)
        if self._picture is not None:
            painter.drawPixmap(box, self._picture)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing, False)
        painter.setPen(QColor(now.hairline))
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.drawRect(box.adjusted(0, 0, -1, -1))
        painter.setFont(self.font())
        painter.setPen(QColor(now.ink))
        if self._under:
            words = QRect(0, box.bottom() + 4, self.width(), self.height() - box.bottom() - 4)
            flags = Qt.AlignmentFlag.AlignHCenter | Qt.AlignmentFlag.AlignTop | Qt.TextFlag.TextWordWrap
            painter.drawText(words, flags, self.text())
            return
        words = self.rect().adjusted(box.right() + 10, 0, -6, 0)
        text = QFontMetrics(self.font()).elidedText(self.text(), Qt.TextElideMode.ElideRight, words.width())
        painter.drawText(words, Qt.AlignmentFlag.AlignVCenter | Qt.AlignmentFlag.AlignLeft, text)


class StartShelf(QWidget):
    """Ways to start. Pictures come one by one, so that a key is never kept waiting for them."""

    situated = Signal(object)
    opened = Signal(object)
    copied = Signal(object)
    """A sample is wanted, as a drill of one's own."""

    def __init__(self, court: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._court = court
        self.setAccessibleName("Ways to start")
        outer = QVBoxLayout(self)
        outer.setContentsMargins(1, 1, 0, 0)
        self._scroll = QScrollArea()
        self._scroll.setFrameShape(QFrame.Shape.NoFrame)
        self._scroll.setWidgetResizable(True)
        self._scroll.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self._scroll.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        outer.addWidget(self._scroll)
        self.offers: list[Offer] = []
        self._waiting: list[Offer] = []
        self._next = QTimer(self)
        self._next.setInterval(0)
        self._next.timeout.connect(self._look_at_one)
        self._all_samples = False
        style().changed.connect(self.fill)
        self.fill()

    def take_court(self, court: str) -> None:
        """Show the situations on another court."""
        if court != self._court:
            self._court = court
            self.fill()

    def fill(self, *_: object) -> None:
        """Show what there is now."""
        self.offers, self._waiting = [], []
        page = QWidget()
        column = QVBoxLayout(page)
        column.setContentsMargins(24, 4, 20, 8)
        column.setSpacing(0)
        column.addWidget(self._heading("Start from a situation"))
        row = QHBoxLayout()
        row.setSpacing(2)
        for situation in SITUATIONS:
            see = partial(seen_situation, situation, self._court, TILE)
            row.addWidget(self._offer(situation.name, see, partial(self.situated.emit, situation), under=True))
        row.addStretch(1)
        column.addLayout(row)
        recent = settings.recent_files()[:RECENT]
        if recent:
            column.addWidget(self._heading("Recent drills"))
            self._rows(column, recent, self.opened)
        samples = sample_drills()
        if samples:
            column.addWidget(self._heading("Finished drills to look at and make your own"))
            first = sorted((p for p in samples if plain_name(p) in SAMPLES), key=lambda p: SAMPLES.index(plain_name(p)))
            self._rows(column, samples if self._all_samples else first[: ROWS - len(recent)], self.copied)
            if not self._all_samples and len(samples) > len(first):
                more = Link(f"All {len(samples)}")
                more.clicked.connect(self._show_all)
                column.addWidget(more)
        column.addStretch(1)
        tinted(page, look().panel)
        self._scroll.setWidget(page)
        self._scroll.verticalScrollBar().setStyleSheet(scroll_bar_sheet(look()))
        self._waiting = list(self.offers)
        self._next.start()

    def sizeHint(self) -> QSize:
        page = self._scroll.widget()
        return QSize(320, 240 if page is None else page.sizeHint().height() + 2)

    def minimumSizeHint(self) -> QSize:
        return QSize(200, 120)

    def _rows(self, column: QVBoxLayout, paths: Iterable[Path], wanted: SignalInstance) -> None:
        for path in paths:
            see = partial(seen_of, path, SMALL)
            column.addWidget(
                self._offer(plain_name(path), see, partial(wanted.emit, path), under=False, more=str(path))
            )

    def _offer(
        self, words: str, see: Callable[[float], Seen], do: Callable[[], None], *, under: bool, more: str = ""
    ) -> Offer:
        offer = Offer(words, see, under=under, more=more)
        offer.clicked.connect(lambda: do())
        self.offers.append(offer)
        return offer

    def _heading(self, words: str) -> QLabel:
        label = QLabel(words)
        label.setFont(font(CONTROL, bold=True))
        label.setStyleSheet(f"color: {look().soft};")
        label.setContentsMargins(0, 8, 0, 2)
        return label

    def _show_all(self) -> None:
        self._all_samples = True
        self.fill()
        self.updateGeometry()

    def _look_at_one(self) -> None:
        if not self._waiting or not self.isVisible():
            self._next.stop()
            return
        self._waiting.pop(0).look_at_it()

    def showEvent(self, event: QShowEvent) -> None:
        super().showEvent(event)
        self._next.start()

    def paintEvent(self, _: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.fillRect(QRect(0, 0, self.width(), 1), QColor(look().hairline))
        painter.fillRect(QRect(0, 0, 1, self.height()), QColor(look().hairline))


def sample_drills() -> tuple[Path, ...]:
    """Return the drills that come with the program, none where they are missing."""
    try:
        return tuple(sorted(sample("wide-start.drill.json").parent.glob("*.drill.json")))
    except MissingFile:
        return ()
