"""What appears under the card with a picked ball: the ball from the side and its numbers in a few words.

It stands there and not under the court: a court that grew smaller with each ball that is picked would move under the hand.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any, Final

from PySide6.QtCore import QRect, Qt, QTimer, Signal
from PySide6.QtGui import QColor, QGuiApplication, QPainter, QPaintEvent
from PySide6.QtWidgets import QLabel, QVBoxLayout, QWidget

from designer.desktop import settings
from designer.desktop.controls import DropDown, Link, fill
from designer.desktop.document import Document
from designer.desktop.flow import Flow
from designer.desktop.fonts import CONTROL, NOTE, font
from designer.desktop.side_view.basis import Basis, chosen
from designer.desktop.side_view.side_view import SideView
from designer.desktop.side_view.worker import Worker
from designer.desktop.style import look, style
from designer.desktop.view import View
from designer.drill.drill import Drill
from designer.drill.movement import Shot
from designer.drill.setting import At

if TYPE_CHECKING:
    from designer.desktop.canvas.court_canvas import CourtCanvas
    from designer.desktop.side_view.group_row import GroupRow
    from designer.desktop.side_view.odds_row import OddsRow
    from designer.desktop.side_view.profile import Profile
    from designer.desktop.side_view.waiting import WaitingLayer
    from designer.numbers.recovery import Recovery

APPEARS_AFTER: Final = 420
"""Milliseconds: less of the card is seen when it appears, which must not happen under a press or a double press."""


@dataclass(frozen=True, slots=True)
class Computed:
    """What is shown of one ball."""

    words: str
    more: str
    notices: tuple[str, ...]
    profile: Profile | None
    waiting: Recovery | None
    letter: str


_UNITS: Final = re.compile(r"(?<=\d) (?=(s|m|m/s|ft|rpm)\b)")


def kept_together(words: str) -> str:
    """Return ``words`` with no break between a number and its unit."""
    return _UNITS.sub("\N{NO-BREAK SPACE}", words)


def computed(drill: Drill, at: At, shot: str, basis: Basis, units: str) -> Computed:
    """Return what is shown of the ball of ``shot``; raises ``ValueError`` with a sentence where nothing can be said."""
    from designer.desktop.side_view.profile import profile
    from designer.desktop.side_view.words import few_words, more_words, waiting_words
    from designer.numbers.shots import numbers_of, recovery_after

    here = basis.situation(drill, at)
    numbers = numbers_of(here)
    found, step = numbers.shot(shot), here.sequence.step(shot)
    if found is None or step is None:
        raise ValueError("That ball is not in this setting.")
    waiting = recovery_after(here, step)
    more = more_words(found, basis.words)
    if waiting is not None:
        more += f". {waiting_words(waiting, step.hitter, units)}"
    return Computed(few_words(found, units), more, numbers.notices, profile(here, found), waiting, step.hitter)


def fit(drill: Drill, at: At, shot: str, basis: Basis, hits: int, tries: int) -> float:
    """Return how many times as wide as the level's a group spreads its balls that hit this ``hits`` of ``tries``."""
    from designer.numbers.shots import fitted

    usual = Basis(basis.level, None, basis.drag)
    found = fitted(usual.situation(drill, at), shot, hits, tries)
    return found.spread.across / usual.players().spread.across


class NumbersPanel(QWidget):
    """Follows the picked ball of a view. ``play_wanted`` carries the id of the ball to play from."""

    play_wanted = Signal(str)
    level_changed = Signal(str)
    """What the numbers rest on is another: the level, one's own group or the drag."""

    appeared = Signal()
    """There is less room for the card over it."""

    asked = Signal()
    """Somebody wants to see it, wherever it stands."""

    def __init__(self, document: Document, view: View, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._document, self._view = document, view
        self._shot: str | None = None
        self._stepped_back = False
        self._waiting_wanted = True
        self.canvas: CourtCanvas | None = None
        self.worker = Worker(self)
        self.worker.finished.connect(self._take)
        self.group: GroupRow | None = None
        self.odds: OddsRow | None = None
        self._waiting: WaitingLayer | None = None
        self._computed: Computed | None = None
        self.side = SideView()
        self.words, self.more = self._label(CONTROL), self._label(NOTE)
        self.level = DropDown()
        self.level.setAccessibleName("Level of play")
        self.level.setToolTip("Who plays: the numbers are theirs")
        self.level.activated.connect(lambda _: self.choose_level(self.level.currentData()))
        self.play = Link("Play it")
        self.play.setToolTip(
            "See it on the court in true time, from this ball on; or press its digit on the court twice"
        )
        self.play.clicked.connect(self._play)
        self.theirs, self.fold, self.wait = Link("Your group"), Link("Fold away"), Link("Where to wait")
        self.theirs.setToolTip("Say how often they hit this; the numbers are then theirs")
        self.fold.setToolTip("Show no longer who wins")
        self.wait.setToolTip("Show on the court where to wait for the next ball, and why there")
        self.theirs.clicked.connect(self.show_group)
        self.fold.clicked.connect(self.show_odds)
        self.wait.clicked.connect(self.show_waiting)
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
        self._column = QVBoxLayout(self)
        self._column.setContentsMargins(24, 8, 20, 8)
        self._column.setSpacing(4)
        for shown in (self.side, self.words, self.more):
            self._column.addWidget(shown)
        foot = Flow(gap=6)
        for widget in (self.level, self.play, self.theirs, self.wait, self.fold):
            foot.addWidget(widget)
        self._column.addLayout(foot)

    def _label(self, size: int) -> QLabel:
        label = QLabel(self)
        label.setTextFormat(Qt.TextFormat.PlainText)
        label.setFont(font(size))
        label.setWordWrap(True)
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
                self._shot = self._computed = None
                self._draw_waiting()
                self.worker.forget()
                self.appearing.start()
                if self.group is not None:
                    self.group.hide()
            return
        if picked != self._shot:
            self._shot = picked
            self.words.setText("…")
            self.more.setText("")
            self.side.show_profile(None)
        self._ask(picked)
        if (self.isHidden() or self.side.isHidden()) and not self.appearing.isActive():
            self.appearing.start()

    def _appear(self) -> None:
        """Appear or go away, once no button of the mouse is held."""
        if QGuiApplication.mouseButtons() != Qt.MouseButton.NoButton:
            self.appearing.start()
            return
        wanted = self._shot is not None or self._plays_out
        if wanted and self.isHidden():
            self._fill_levels()
        for widget in (self.side, self.words, self.more, self.play, self.theirs, self.wait):
            widget.setVisible(self._shot is not None)
        self.fold.setVisible(self._plays_out)
        came = self.isHidden()
        self.setVisible(wanted and not self._stepped_back)
        if came and not self.isHidden():
            self.appeared.emit()

    def step_back(self, *, back: bool) -> None:
        """Make room while the court is played, or come back."""
        self._stepped_back = back
        self._draw_waiting()
        self._appear()

    def choose_level(self, name: str) -> None:
        """Work the numbers out for other players, and remember it."""
        settings.set_level(name)
        self._rests_on_other()

    def show_group(self) -> None:
        """Ask how often one's own group hits this, or fold that away."""
        if self.group is None:
            from designer.desktop.side_view.group_row import GroupRow

            self.group = GroupRow(chosen())
            self._column.addWidget(self.group)
            self.group.show()
            self.group.counted.connect(self.keep_group)
            self.group.forgotten.connect(self.forget_group)
            self.group.drag_chosen.connect(self.choose_drag)
        else:
            self.group.setVisible(self.group.isHidden())
        if not self.group.isHidden():
            self._fold_odds()

    def keep_group(self, hits: int, tries: int) -> None:
        """Fit the spread to what was counted, and keep it with the level."""
        basis, shot = chosen(), self._shot
        if shot is None:
            return
        try:
            factor = fit(self._document.shown, self._view.at, shot, basis, hits, tries)
        except ValueError as problem:
            self.words.setText(str(problem))
            return
        settings.set_group(basis.level, factor, f"{hits} of {tries}")
        self._rests_on_other()

    def forget_group(self) -> None:
        """Go back to the usual players of the level."""
        settings.forget_group(settings.level())
        self._rests_on_other()

    def choose_drag(self, drag: float | None) -> None:
        """Work the numbers out with another drag of the air, and remember it."""
        settings.set_drag(drag)
        self._rests_on_other()

    def show_odds(self) -> None:
        """Play the drill out, whether a ball is picked or not, or fold that away."""
        if self.odds is None:
            from designer.desktop.side_view.odds_row import OddsRow

            self.odds = OddsRow(self._document, self._view)
            self._column.addWidget(self.odds)
            self.odds.show()
        elif self.odds.isHidden():
            self.odds.show()
        else:
            self._fold_odds()
            self._appear()
            return
        if self.group is not None:
            self.group.hide()
        self.asked.emit()
        self._appear()
        self.odds.ask()

    def _fold_odds(self) -> None:
        if self.odds is not None:
            self.odds.hide()
            self.odds.worker.forget()
            self.fold.hide()

    @property
    def _plays_out(self) -> bool:
        """Whether it is open who wins, which stays with the ball or without one."""
        return self.odds is not None and not self.odds.isHidden()

    def show_waiting(self) -> None:
        """Show on the court where to wait for the next ball, or take it away."""
        if self._waiting is None and self.canvas is not None:
            from designer.desktop.side_view.waiting import WaitingLayer

            self._waiting = WaitingLayer(self.canvas)
        else:
            self._waiting_wanted = not self._waiting_wanted
        self._draw_waiting()

    @property
    def waiting(self) -> WaitingLayer | None:
        """Return what draws the place to wait on the court, None where it was never asked for."""
        return self._waiting

    def _draw_waiting(self) -> None:
        if self._waiting is None:
            return
        seen = self._computed if self._waiting_wanted and self._shot is not None and not self._stepped_back else None
        self._waiting.show(None if seen is None else seen.waiting, "" if seen is None else seen.letter)

    def _rests_on_other(self) -> None:
        basis = chosen()
        if self.group is not None:
            self.group.show_basis(basis)
        self._fill_levels()
        self.level_changed.emit(basis.level)
        if self._shot is not None:
            self._ask(self._shot)
        if self.odds is not None and not self.odds.isHidden():
            self.odds.ask()

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
        names = {name: f"{name.capitalize()} players" for name in settings.LEVELS}
        own = {name: kept[1] for name in settings.LEVELS if (kept := settings.group(name)) is not None}
        options = [(name, f"{words}, {own[name]}" if name in own else words) for name, words in names.items()]
        fill(self.level, options, settings.level())

    def _ask(self, shot: str) -> None:
        drill, at, basis, units = self._document.shown, self._view.at, chosen(), self._view.units
        self.worker.ask((shot, at, basis), lambda _: computed(drill, at, shot, basis, units))

    def _take(self, about: Any, found: Computed | None, problem: str) -> None:
        if about[0] != self._shot:
            return
        self._computed = found
        self.wait.setEnabled(found is not None and found.waiting is not None)
        self._draw_waiting()
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
