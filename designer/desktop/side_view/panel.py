"""The strip under the court that appears with a picked ball: the ball from the side and its numbers in a few words."""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any, Final

from PySide6.QtCore import QRect, Qt, QTimer, Signal
from PySide6.QtGui import QColor, QGuiApplication, QPainter, QPaintEvent
from PySide6.QtWidgets import QHBoxLayout, QLabel, QVBoxLayout, QWidget

from designer.desktop import settings
from designer.desktop.controls import DropDown, Link, fill
from designer.desktop.document import Document
from designer.desktop.fonts import CONTROL, NOTE, font
from designer.desktop.side_view.side_view import SideView
from designer.desktop.side_view.worker import Worker
from designer.desktop.style import look, style
from designer.desktop.view import View
from designer.drill.drill import Drill
from designer.drill.movement import Shot
from designer.drill.setting import At

if TYPE_CHECKING:
    from designer.desktop.side_view.profile import Profile

WORDS_WIDTH: Final = 330
APPEARS_AFTER: Final = 420
"""Milliseconds: the court grows smaller when the strip appears, which must not happen under a press or a double press."""


@dataclass(frozen=True, slots=True)
class Computed:
    """What is shown of one ball."""

    words: str
    more: str
    notices: tuple[str, ...]
    profile: Profile | None


_UNITS: Final = re.compile(r"(?<=\d) (?=(s|m|m/s|ft|rpm)\b)")


def kept_together(words: str) -> str:
    """Return ``words`` with no break between a number and its unit."""
    return _UNITS.sub("\N{NO-BREAK SPACE}", words)


def computed(drill: Drill, at: At, shot: str, level_name: str, units: str) -> Computed:
    """Return what is shown of the ball of ``shot``; raises ``ValueError`` with a sentence where nothing can be said."""
    from designer.desktop.side_view.profile import profile
    from designer.desktop.side_view.words import few_words, more_words
    from designer.numbers.levels import level
    from designer.numbers.shots import numbers_of
    from designer.numbers.situation import situation

    here = situation(drill, at, level(level_name))
    numbers = numbers_of(here)
    found = numbers.shot(shot)
    if found is None:
        raise ValueError("That ball is not in this setting.")
    return Computed(few_words(found, units), more_words(found, level_name), numbers.notices, profile(here, found))


class NumbersPanel(QWidget):
    """Follows the picked ball of a view. ``play_wanted`` carries the id of the ball to play from."""

    play_wanted = Signal(str)
    level_changed = Signal(str)

    def __init__(self, document: Document, view: View, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._document, self._view = document, view
        self._shot: str | None = None
        self._stepped_back = False
        self.worker = Worker(self)
        self.worker.finished.connect(self._take)
        self.side = SideView()
        self.words, self.more = self._label(CONTROL), self._label(NOTE)
        self.level = DropDown()
        self.level.setAccessibleName("Level of play")
        self.level.setToolTip("Who plays: the numbers are theirs")
        self.level.activated.connect(lambda _: self.choose_level(self.level.currentData()))
        self.play = Link("Play it")
        self.play.setToolTip("See it on the court in true time, from this ball on")
        self.play.clicked.connect(self._play)
        self.appearing = QTimer(self)
        self.appearing.setSingleShot(True)
        self.appearing.setInterval(APPEARS_AFTER)
        self.appearing.timeout.connect(self._appear)
        self._lay()
        for signal in (view.selection_changed, view.at_changed, view.units_changed, document.shown_changed):
            signal.connect(self.follow)
        style().changed.connect(self._colour)
        self._colour()
        self.hide()

    def _lay(self) -> None:
        row = QHBoxLayout(self)
        row.setContentsMargins(10, 6, 12, 6)
        row.setSpacing(12)
        row.addWidget(self.side, 1)
        told = QVBoxLayout()
        told.setSpacing(4)
        told.addWidget(self.words)
        told.addWidget(self.more)
        told.addStretch(1)
        foot = QHBoxLayout()
        foot.addWidget(self.level)
        foot.addWidget(self.play)
        foot.addStretch(1)
        told.addLayout(foot)
        row.addLayout(told)

    def _label(self, size: int) -> QLabel:
        label = QLabel(self)
        label.setTextFormat(Qt.TextFormat.PlainText)
        label.setFont(font(size))
        label.setWordWrap(True)
        label.setFixedWidth(WORDS_WIDTH)
        return label

    @property
    def shot(self) -> str | None:
        """Return the id of the ball that is shown, None where there is none."""
        return self._shot

    def follow(self, *_: object) -> None:
        """Show the ball that is picked alone, as it is now."""
        picked = self._picked()
        if picked is None:
            if self._shot is not None:
                self._shot = None
                self.worker.forget()
                self.appearing.start()
            return
        if picked != self._shot:
            self._shot = picked
            self.words.setText("…")
            self.more.setText("")
            self.side.show_profile(None)
        self._ask(picked)
        if self.isHidden() and not self.appearing.isActive():
            self.appearing.start()

    def _appear(self) -> None:
        """Appear or go away, once no button of the mouse is held."""
        if QGuiApplication.mouseButtons() != Qt.MouseButton.NoButton:
            self.appearing.start()
            return
        if self._shot is not None and self.isHidden():
            self._fill_levels()
        self.setVisible(self._shot is not None and not self._stepped_back)

    def step_back(self, *, back: bool) -> None:
        """Make room while the court is played, or come back."""
        self._stepped_back = back
        self._appear()

    def choose_level(self, name: str) -> None:
        """Work the numbers out for other players, and remember it."""
        settings.set_level(name)
        self.level_changed.emit(name)
        if self._shot is not None:
            self._ask(self._shot)

    def _play(self) -> None:
        if self._shot is not None:
            self.play_wanted.emit(self._shot)

    def _picked(self) -> str | None:
        picked = self._view.selection
        if len(picked) != 1:
            return None
        record = self._view.setting.find(next(iter(picked)))
        return record.id if isinstance(record, Shot) else None

    def _fill_levels(self) -> None:

        fill(self.level, [(name, f"{name.capitalize()} players") for name in settings.LEVELS], settings.level())

    def _ask(self, shot: str) -> None:
        drill, at, level, units = self._document.shown, self._view.at, settings.level(), self._view.units
        self.worker.ask((shot, at, level), lambda _: computed(drill, at, shot, level, units))

    def _take(self, about: Any, found: Computed | None, problem: str) -> None:
        if about[0] != self._shot:
            return
        if found is None:
            self.words.setText(problem)
            self.more.setText("")
            self.side.show_profile(None, problem)
            return
        self.words.setText(kept_together(found.words[:1].upper() + found.words[1:]) + ".")
        self.more.setText(kept_together(found.more) + ".")
        self.more.setToolTip("\n".join(found.notices))
        self.side.show_profile(found.profile, found.words)

    def _colour(self, *_: object) -> None:
        self.words.setStyleSheet(f"color: {look().ink};")
        self.more.setStyleSheet(f"color: {look().soft};")
        self.update()

    def paintEvent(self, _: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.fillRect(self.rect(), QColor(look().panel))
        painter.fillRect(QRect(0, 0, self.width(), 1), QColor(look().hairline))
