"""Who plays today: a short form of names and hands, which the card prints and nothing else holds."""

from __future__ import annotations

from dataclasses import dataclass
from functools import partial
from typing import TYPE_CHECKING, Final

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QGridLayout, QHBoxLayout, QLabel, QLineEdit, QVBoxLayout

from designer.desktop.controls import DropDown, FilledButton, Link, Segments, fill, tinted
from designer.desktop.dialog import Dialog
from designer.desktop.fonts import CONTROL, NOTE, font, scaled
from designer.desktop.notice import NoticeBar
from designer.desktop.style import field_sheet, look
from designer.drill.people import Hand
from designer.drill.setting import At, addresses
from designer.drill.today import Person, Today
from designer.storage.today import forget_today, keep_today, kept_today
from designer.storage.writing import Unwritable
from designer.wording.card import setting_name

if TYPE_CHECKING:
    from designer.desktop.window import MainWindow

HANDS: Final = (("right", "Right"), ("left", "Left"))
_TALL: Final = 34
"""Pixels of a row: as high as its choice of hands."""
_NOTE: Final = (
    "Names are printed on the card only. They stand in no drill, no PDF’s data and no handbook, and are kept on this "
    "machine until the day is over."
)


@dataclass(frozen=True, slots=True)
class _Row:
    """The boxes of one letter, and the offer that stands where its hand differs from the drawing."""

    name: QLineEdit
    hand: Segments
    offer: Link


class TodayForm(Dialog):
    """The form. ``kept`` comes when the names are kept or forgotten."""

    kept = Signal()

    def __init__(self, window: MainWindow) -> None:
        super().__init__(window)
        self.setWindowTitle("Today")
        self._window = window
        self._drill = window.document.drill
        self._jobs = [job for job in self._drill.jobs if job.by == "player"]
        before = kept_today(self._drill.id)
        self._today = before or Today(drill=self._drill.id)
        tinted(self, look().window)
        whole = QVBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        self.notice = NoticeBar()
        whole.addWidget(self.notice)
        column = QVBoxLayout()
        column.setContentsMargins(28, 20, 28, 20)
        column.setSpacing(10)
        whole.addLayout(column)
        self.rows: dict[str, _Row] = {}
        self._hands: dict[str, Hand] = {}
        column.addLayout(self._grid())
        column.addWidget(self._label(_NOTE, NOTE))
        column.addSpacing(8)
        column.addLayout(self._buttons())
        self.setMinimumWidth(560)

    def _grid(self) -> QGridLayout:
        grid = QGridLayout()
        grid.setHorizontalSpacing(14)
        grid.setVerticalSpacing(9)
        grid.setColumnStretch(1, 1)
        self.settings = DropDown()
        self.settings.setAccessibleName("What is played")
        offered = tuple((at, setting_name(self._drill, at)) for at in addresses(self._drill))
        fill(self.settings, offered, self._today.setting(self._drill) or self._window.view.at)
        grid.addWidget(self._label("Plays", CONTROL), 0, 0)
        grid.addWidget(self.settings, 0, 1, 1, 2)
        for place, job in enumerate(self._jobs, 1):
            person = self._today.people.get(job.letter, Person())
            name, hand, offer = QLineEdit(person.name), Segments(HANDS, may_be_empty=False), Link("")
            name.setMaxLength(60)
            name.setPlaceholderText("nobody named")
            name.setAccessibleName(f"Who is {job.letter}")
            name.setStyleSheet(field_sheet(look()))
            name.setFont(font(CONTROL))
            hand.setAccessibleName(f"{job.letter} plays with the hand")
            hand.show_values((person.hand or job.hand,))
            offer.clicked.connect(partial(self._turn, job.letter))
            self.rows[job.letter] = _Row(name, hand, offer)
            self._hands[job.letter] = person.hand or job.hand
            hand.chosen.connect(partial(self._take_hand, job.letter))
            for number, widget in enumerate((self._label(f"{job.letter} is", CONTROL), name, hand)):
                grid.addWidget(widget, 2 * place - 1, number)
            grid.setRowMinimumHeight(2 * place - 1, scaled(_TALL))
            grid.addWidget(offer, 2 * place, 1, 1, 2)
            self._offer(job.letter)
        return grid

    def _buttons(self) -> QHBoxLayout:
        keep, forget, leave = FilledButton("Keep for today"), Link("Forget the names"), Link("Close")
        keep.clicked.connect(self.keep)
        forget.clicked.connect(self.forget)
        leave.clicked.connect(self.close)
        row = QHBoxLayout()
        for widget in (keep, forget, leave):
            row.addWidget(widget)
        row.addStretch(1)
        return row

    def _label(self, words: str, size: int) -> QLabel:
        label = QLabel(words)
        label.setTextFormat(Qt.TextFormat.PlainText)
        label.setFont(font(size))
        label.setStyleSheet(f"color: {look().soft};")
        label.setWordWrap(size == NOTE)
        return label

    def today(self) -> Today:
        """Return what stands in the form."""
        at: At = self.settings.currentData()
        people = {}
        for job in self._jobs:
            hand = self._hands[job.letter]
            person = Person(name=self.rows[job.letter].name.text(), hand=None if hand == job.hand else hand)
            if person != Person():
                people[job.letter] = person
        return Today(drill=self._drill.id, progression=at.progression, variation=at.variation, people=people)

    def keep(self) -> None:
        """Keep the names until the day is over, and go to the setting that is played."""
        today = self.today()
        try:
            keep_today(today)
        except Unwritable as reason:
            self.notice.say("kept", str(reason))
            return
        self._window.view.go_to(today.setting(self._drill) or self._window.view.at)
        self.kept.emit()
        self.close()

    def forget(self) -> None:
        """Remove the names from this machine and from the form."""
        forget_today(self._drill.id)
        for job in self._jobs:
            self.rows[job.letter].name.clear()
            self.rows[job.letter].hand.show_values((job.hand,))
            self._take_hand(job.letter, (job.hand,))
        self.kept.emit()

    def _take_hand(self, letter: str, values: tuple[Hand, ...]) -> None:
        self._hands[letter] = values[0]
        self._offer(letter)

    def _offer(self, letter: str) -> None:
        """Offer the version for the other hand where the drawing is for another one than today's."""
        job = next(job for job in self._jobs if job.letter == letter)
        row, hand = self.rows[letter], self._hands[letter]
        row.offer.setText(f"Drawn for the {job.hand} hand: make the version for a {hand}-hander …")
        row.offer.setAccessibleName(row.offer.text())
        row.offer.setVisible(hand != job.hand)

    def _turn(self, letter: str) -> None:
        self.keep()
        self._window.deeds.drill.versions.change_hand(letter)
