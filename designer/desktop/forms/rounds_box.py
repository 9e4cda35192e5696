"""The control for a table of rounds: a row of people a round, each under the job that they have in it."""

from __future__ import annotations

from typing import Any, Final

from PySide6.QtCore import QSize, Qt, Signal
from PySide6.QtGui import QColor, QKeyEvent, QPainter, QPaintEvent
from PySide6.QtWidgets import QAbstractButton, QGridLayout, QLabel, QWidget

from designer.desktop.controls import HEIGHT, IconButton, Link, frame, stacked
from designer.desktop.fonts import CONTROL, NOTE, font, scaled
from designer.desktop.forms.box import Box
from designer.desktop.forms.context import Context
from designer.desktop.style import look

WIDTH: Final = 38
STEPS: Final = {
    Qt.Key.Key_Left: (0, -1),
    Qt.Key.Key_Right: (0, 1),
    Qt.Key.Key_Up: (-1, 0),
    Qt.Key.Key_Down: (1, 0),
}
HINT: Final = "Press two to exchange them, or type a letter."

Row = tuple[str, ...]


def seated(context: Context) -> Row:
    """Return the jobs that a round fills, in the order in which a card reads it: those with an end, else all."""
    from designer.wording.telling import telling

    return tuple(sorted(telling(context.drill, context.at).ends)) or context.letters


def next_round(rounds: tuple[Row, ...], letters: Row) -> Row:
    """Return a round after ``rounds``: the first stays and the others move on by one, so that partners change."""
    if not rounds:
        return letters
    first, *others = rounds[-1]
    return (first, *others[-1:], *others[:-1])


def exchanged(row: Row, place: int, letter: str) -> Row:
    """Return ``row`` with ``letter`` at ``place``; who was there goes to where ``letter`` stood, if it did."""
    changed = list(row)
    if letter in row:
        changed[row.index(letter)] = row[place]
    changed[place] = letter
    return tuple(changed)


class Seat(QAbstractButton):
    """One person in one round."""

    stepped = Signal(object)
    lettered = Signal(str)
    left = Signal()

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.lifted = False
        self.setFont(font(CONTROL, bold=True))
        self.setCursor(Qt.CursorShape.PointingHandCursor)
        self.setToolTip(HINT)

    def sizeHint(self) -> QSize:
        return QSize(scaled(WIDTH), scaled(HEIGHT))

    def minimumSizeHint(self) -> QSize:
        return QSize(24, scaled(HEIGHT))

    def show_letter(self, letter: str, job: str, number: int, *, lifted: bool) -> None:
        """Show who it is, lifted or not."""
        self.setText(letter)
        self.lifted = lifted
        self.setAccessibleName(f"Round {number}, {letter} as {job}")
        self.setAccessibleDescription("taken: press who to exchange with" if lifted else HINT)
        self.update()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        key, text = event.key(), event.text().upper()
        if key in STEPS:
            self.stepped.emit(STEPS[Qt.Key(key)])
        elif len(text) == 1 and text.isascii() and text.isalpha() and not event.modifiers() & _HELD:
            self.lettered.emit(text)
        elif key in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self.click()
        elif key == Qt.Key.Key_Escape and self.lifted:
            self.left.emit()
        else:
            super().keyPressEvent(event)

    def paintEvent(self, _: QPaintEvent) -> None:
        now, painter = look(), QPainter(self)
        box = self.rect()
        if self.lifted:
            frame(painter, box, edge=now.highlighter_edge, fill=now.highlighter, width=2, dashed=True)
        else:
            hover = self.underMouse() and self.isEnabled()
            frame(painter, box, edge=now.edge, fill=now.hover if hover else now.panel)
        if self.hasFocus():
            frame(painter, box, edge=now.ink, fill=None, width=2)
        painter.setFont(self.font())
        painter.setPen(QColor(now.ink if self.isEnabled() else now.faint))
        painter.drawText(box, Qt.AlignmentFlag.AlignCenter, self.text())


_HELD: Final = Qt.KeyboardModifier.ControlModifier | Qt.KeyboardModifier.AltModifier | Qt.KeyboardModifier.MetaModifier


class RoundsBox(Box):
    """Rows of people. A press lifts one and a second press exchanges the two; a typed letter exchanges at once."""

    def __init__(self) -> None:
        super().__init__()
        self._rounds: tuple[Row, ...] = ()
        self._letters: Row = ()
        self._lifted: tuple[int, int] | None = None
        self._seats: list[list[Seat]] = []
        self._table = QWidget()
        self._grid = QGridLayout(self._table)
        self._grid.setContentsMargins(0, 0, 0, 2)
        self._grid.setHorizontalSpacing(4)
        self._grid.setVerticalSpacing(4)
        self._add = Link("Add a round")
        self._add.clicked.connect(self._append)
        inner = QWidget()
        under = stacked(inner)
        under.addWidget(self._table)
        under.addWidget(self._add)
        self.row.addWidget(inner, 1)
        self.setFocusProxy(self._add)

    def seats(self) -> list[list[Seat]]:
        """Return the people as controls, a list a round."""
        return self._seats

    def first(self) -> QWidget:
        return self._seats[0][0] if self._seats else self._add

    def show_value(self, value: Any, context: Context) -> None:
        self._letters = seated(context)
        rounds = tuple(tuple(row) for row in value)
        if [len(row) for row in rounds] != [len(row) for row in self._rounds]:
            self._lifted = None
            self._rounds = rounds
            self._lay(context)
        self._rounds = rounds
        self._table.setVisible(bool(rounds))
        self._show()

    def _show(self) -> None:
        for number, (row, seats) in enumerate(zip(self._rounds, self._seats, strict=True)):
            for place, (letter, seat) in enumerate(zip(row, seats, strict=True)):
                seat.show_letter(letter, self._job(place), number + 1, lifted=self._lifted == (number, place))

    def _job(self, place: int) -> str:
        return self._letters[place] if place < len(self._letters) else "–"

    def _lay(self, context: Context) -> None:
        """Make a control for each person of each round, under the jobs."""
        at = self._at()
        while (item := self._grid.takeAt(0)) is not None:
            widget = item.widget()
            if widget is not None:
                widget.hide()
                widget.deleteLater()
        self._seats = []
        self._grid.addWidget(_label("As"), 0, 0)
        roles = {job.letter: job.role for job in context.drill.jobs}
        widest = max((len(row) for row in self._rounds), default=0)
        for place in range(widest):
            head = _label(self._job(place))
            head.setAlignment(Qt.AlignmentFlag.AlignCenter)
            head.setToolTip(roles.get(self._job(place), ""))
            self._grid.addWidget(head, 0, place + 1)
        for number, row in enumerate(self._rounds):
            self._grid.addWidget(_label(str(number + 1)), number + 1, 0)
            self._seats.append([self._seat(number, place) for place in range(len(row))])
            cross = IconButton("close", f"take round {number + 1} away", size=10)
            cross.clicked.connect(lambda _=False, number=number: self._remove(number))
            self._grid.addWidget(cross, number + 1, widest + 1)
        self._grid.setColumnStretch(widest + 2, 1)
        if at is not None and self._seats:
            self._go(min(at[0], len(self._seats) - 1), at[1])

    def _seat(self, number: int, place: int) -> Seat:
        seat = Seat(self._table)
        seat.setFocusPolicy(Qt.FocusPolicy.StrongFocus if place == 0 else Qt.FocusPolicy.ClickFocus)
        seat.clicked.connect(lambda: self._press(number, place))
        seat.lettered.connect(lambda letter: self._take(number, place, letter))
        seat.stepped.connect(lambda step: self._go(number + step[0], place + step[1]))
        seat.left.connect(self._let_down)
        self._grid.addWidget(seat, number + 1, place + 1)
        return seat

    def _at(self) -> tuple[int, int] | None:
        """Return which control has the keyboard."""
        return next(
            ((n, p) for n, seats in enumerate(self._seats) for p, seat in enumerate(seats) if seat.hasFocus()), None
        )

    def _go(self, number: int, place: int) -> None:
        if 0 <= number < len(self._seats) and 0 <= place < len(self._seats[number]):
            self._seats[number][place].setFocus(Qt.FocusReason.OtherFocusReason)

    def _press(self, number: int, place: int) -> None:
        lifted, self._lifted = self._lifted, None
        if lifted is None or lifted[0] != number:
            self._lifted = (number, place)
        elif lifted != (number, place):
            self._take(number, place, self._rounds[number][lifted[1]])
        self._show()

    def _let_down(self) -> None:
        self._lifted = None
        self._show()

    def _take(self, number: int, place: int, letter: str) -> None:
        self._lifted = None
        if letter not in self._letters and letter not in self._rounds[number]:
            self.refused.emit(f"There is no {letter} in this drill: {', '.join(self._letters)}.")
            return
        self.refused.emit("")
        self._put(number, exchanged(self._rounds[number], place, letter))

    def _put(self, number: int, row: Row) -> None:
        if row != self._rounds[number]:
            self.give((*self._rounds[:number], row, *self._rounds[number + 1 :]))

    def _append(self) -> None:
        if self._letters:
            self.give((*self._rounds, next_round(self._rounds, self._letters)))

    def _remove(self, number: int) -> None:
        self.give((*self._rounds[:number], *self._rounds[number + 1 :]))


def _label(words: str) -> QLabel:
    label = QLabel(words)
    label.setTextFormat(Qt.TextFormat.PlainText)
    label.setFont(font(NOTE))
    label.setStyleSheet(f"color: {look().soft};")
    return label
