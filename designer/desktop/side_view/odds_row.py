"""Who the setting favours and how long it takes, played out off the window's thread while figures come in."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Any, Final

from PySide6.QtCore import QTimer, Signal
from PySide6.QtWidgets import QLabel, QProgressBar, QSpinBox, QVBoxLayout, QWidget

from designer.desktop.controls import Link
from designer.desktop.document import Document
from designer.desktop.flow import Flow, together
from designer.desktop.fonts import CONTROL, NOTE, font
from designer.desktop.side_view.basis import Basis, chosen
from designer.desktop.side_view.words import fairness_words, finish_words, load_words
from designer.desktop.side_view.worker import Job, Worker
from designer.desktop.view import View

if TYPE_CHECKING:
    from designer.drill.drill import Drill
    from designer.drill.setting import At
    from designer.numbers.fairness import Fairness

STARTS: Final = 4000
PAUSE: Final = 500
"""Milliseconds without a change before it is played out again."""


@dataclass(frozen=True, slots=True)
class Figure:
    """What is said so far, the share of the work done, and how hard everybody works."""

    words: str
    share: float
    first: str = ""
    """Who the chance of an open point is that of, "" where nobody plays against anybody."""
    load: str = ""


def played_out(drill: Drill, at: At, basis: Basis, open_point: float, bonus: float, job: Job) -> Figure:
    """Return who is favoured, telling ``job`` each figure on the way; raises ``ValueError`` with a sentence."""
    from designer.numbers.fairness import fairness
    from designer.numbers.load import load
    from designer.numbers.problems import Impossible
    from designer.numbers.report import together
    from designer.numbers.shots import numbers_of

    here = basis.situation(drill, at)

    def hard() -> str:
        worked = load(here, numbers_of(here))
        return "" if worked is None else load_words(worked)

    try:
        found = fairness(
            here,
            open_point=open_point,
            bonus=bonus,
            rallies=STARTS,
            progress=lambda figure, share: job.tell(Figure(fairness_words(figure), share, _first(figure))),
            cancelled=lambda: job.cancelled,
        )
    except Impossible:
        numbers = numbers_of(here)
        worked = load(here, numbers)
        if here.setting.finish is None or worked is None:
            raise Impossible("Nothing is played for here: say how it ends, and draw a ball.") from None
        alone, problem = together(here, numbers, worked)
        if alone is None:
            raise Impossible(problem) from None
        return Figure(finish_words(alone), 1.0, load=load_words(worked))
    return Figure(fairness_words(found), 1.0, _first(found), hard())


def _first(found: Fairness) -> str:
    return " and ".join(found.sides.first)


class OddsRow(QWidget):
    """Shows the odds of the setting in view; follows it while it is open. ``closed`` comes when it is folded away."""

    closed = Signal()

    def __init__(self, document: Document, view: View, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._document, self._view = document, view
        self.worker = Worker(self)
        self.worker.so_far.connect(lambda _, figure: self._show(figure))
        self.worker.finished.connect(self._take)
        self.words = QLabel(self)
        self.words.setWordWrap(True)
        self.words.setFont(font(CONTROL))
        self.hard = QLabel(self)
        self.hard.setWordWrap(True)
        self.hard.setFont(font(NOTE))
        self.hard.hide()
        self.open_point, self.bonus = self._percent("Chance of an open point", 50), self._percent("Extra points", 20)
        self.open_point.setToolTip(
            "How many of a hundred open points the first side wins; equal unless you know better"
        )
        self.bonus.setToolTip("In how many of a hundred won points the extra ones are made")
        self.progress = QProgressBar(self)
        self.progress.setRange(0, 100)
        self.progress.setTextVisible(False)
        self.progress.setFixedSize(90, 8)
        self.stop, self.again = Link("Stop"), Link("Play on")
        self.stop.clicked.connect(self.cancel)
        self.again.clicked.connect(self.ask)
        self._pause = QTimer(self)
        self._pause.setSingleShot(True)
        self._pause.setInterval(PAUSE)
        self._pause.timeout.connect(self.ask)
        self._lay()
        for signal in (document.changed, view.at_changed):
            signal.connect(self.follow)

    def _lay(self) -> None:
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(3)
        column.addWidget(self.words)
        column.addWidget(self.hard)
        row = Flow(gap=6)
        self.whose = QLabel("An open point is won", self)
        extra = QLabel("of points won, with extra points", self)
        for label, box in ((self.whose, self.open_point), (extra, self.bonus)):
            label.setFont(font(NOTE))
            row.addWidget(together(label, box))
        bar = together(self.progress)
        bar.setFixedHeight(self.stop.sizeHint().height())
        for widget in (bar, self.stop, self.again):
            row.addWidget(widget)
        column.addLayout(row)

    def _percent(self, words: str, value: int) -> QSpinBox:
        box = QSpinBox(self)
        box.setRange(0, 100)
        box.setSuffix(" %")
        box.setValue(value)
        box.setAccessibleName(words)
        box.valueChanged.connect(lambda _: self._pause.start())
        return box

    def follow(self, *_: object) -> None:
        """Play it out again soon, as something has changed; nothing while it is folded away."""
        self.worker.forget()
        if self.isVisible():
            self._pause.start()

    def ask(self) -> None:
        """Play the setting in view out."""
        self._pause.stop()
        drill, at, basis = self._document.drill, self._view.at, chosen()
        shares = (self.open_point.value() / 100, self.bonus.value() / 100)
        self._show(Figure("…" if not self.words.text() else self.words.text(), 0.0))
        self.worker.ask((drill.id, at, basis, shares), lambda job: played_out(drill, at, basis, *shares, job))

    def cancel(self) -> None:
        """Stop; the figure there is stays."""
        self.worker.forget()
        self._at_rest(again=True)

    def _show(self, figure: Figure) -> None:
        self.words.setText(figure.words)
        if figure.load or figure.share >= 1:
            self.hard.setText(figure.load)
            self.hard.setVisible(bool(figure.load))
        self.progress.setValue(round(100 * figure.share))
        if figure.first:
            self.whose.setText(f"An open point for {figure.first}")
        running = figure.share < 1
        self.progress.setVisible(running)
        self.stop.setVisible(running)
        self.again.setVisible(False)

    def _at_rest(self, *, again: bool) -> None:
        self.progress.hide()
        self.stop.hide()
        self.again.setVisible(again)

    def _take(self, _about: Any, figure: Figure | None, problem: str) -> None:
        if figure is None:
            self.words.setText(problem)
            self.hard.hide()
            self._at_rest(again=False)
        else:
            self._show(figure)
