"""A swap played out under its form: who is where in each round, how often each did what, and whether it is even."""

from __future__ import annotations

from typing import Any, Final

from PySide6.QtCore import QPointF, QRect, QRectF, QSize, Qt
from PySide6.QtGui import QColor, QFontMetrics, QPainter, QPaintEvent, QResizeEvent
from PySide6.QtWidgets import QHBoxLayout, QLabel, QSizePolicy, QWidget

from designer.desktop.controls import Segments, stacked
from designer.desktop.fonts import CONTROL, NOTE, font
from designer.desktop.forms.beside import Beside
from designer.desktop.forms.context import Context
from designer.desktop.forms.form import SIDE
from designer.desktop.icons import paint_icon
from designer.desktop.lines import broken
from designer.desktop.style import look
from designer.drawing.picture import Picture
from designer.drawing.qt import paint
from designer.drawing.rotation import STRIP_UNIT, rotation_picture
from designer.drawing.themes import theme
from designer.play.rotation import group_of
from designer.wording.rotations import Grid, RotationTable, rotation_table

PITCH: Final = 18
PIXELS: Final = 1.42 / STRIP_UNIT
"""Pixels a metre of the small courts: the smallest letter is then 12 px high."""

_SIGNS: Final = {"uneven": "caution", "lost": "error"}
_SAID: Final = {"uneven": "not even", "lost": "somebody is lost", "open": "depends on who wins", "even": "even"}


class RotationBeside(Beside):
    """For how many, the rounds as small courts and as a table, the counts, and the verdict."""

    def __init__(self) -> None:
        super().__init__()
        self._context: Context | None = None
        self._people: int | None = None
        self._groups: tuple[int, ...] = ()
        self._layout = stacked(self, 6)
        self._layout.setContentsMargins(SIDE, 6, 0, 6)
        self._head = QWidget()
        self._row = QHBoxLayout(self._head)
        self._row.setContentsMargins(0, 0, 0, 0)
        self._row.setSpacing(8)
        self._words = self._label("Played out for")
        self._row.addWidget(self._words)
        self._choice: Segments | None = None
        self._row.addStretch(1)
        self.verdict = Verdict()
        self.courts = SmallCourts()
        self.places, self.counts, self.partners = GridTable(), GridTable(), GridTable()
        for widget in (self._head, self.verdict, self.courts, self.places, self.counts, self.partners):
            self._layout.addWidget(widget)

    def show_record(self, record: Any, context: Context) -> None:
        del record  # swaps come one upon another: they are played out together
        self._context = context
        self._offer_groups(context)
        self._refresh()

    def choose(self, people: int) -> None:
        """Play the swaps out for another number of players."""
        self._people = people
        self._refresh()

    def _offer_groups(self, context: Context) -> None:
        places = len(group_of(context.setting, context.drill.jobs))
        groups = tuple(range(2, places + 1))
        if groups == self._groups:
            return
        self._groups = groups
        if self._people not in groups:
            self._people = None
        if self._choice is not None:
            self._row.removeWidget(self._choice)
            self._choice.hide()
            self._choice.deleteLater()
            self._choice = None
        if len(groups) > 1:
            choice = self._choice = Segments([(count, str(count)) for count in groups], may_be_empty=False)
            choice.chosen.connect(lambda chosen: self.choose(chosen[0]))
            self._row.insertWidget(1, choice)

    def _refresh(self) -> None:
        context = self._context
        if context is None:
            return
        table = rotation_table(context.drill, context.at, people=self._people)
        self.setVisible(table is not None)
        if table is None:
            return
        self._words.setText("Players" if self._choice is not None else f"Played out for {table.people}")
        self._words.setStyleSheet(f"color: {look().soft};")
        if self._choice is not None:
            self._choice.show_values((table.people,))
        self._show(table)
        court = theme(look().name, surface=context.drill.court.surface)
        self.courts.show_rounds(
            lambda columns: rotation_picture(
                context.drill, context.at, unit=STRIP_UNIT, theme=court, people=table.people, columns=columns
            )
        )

    def _show(self, table: RotationTable) -> None:
        self.verdict.say(table.weight, table.verdict.text)
        self.places.show_grid(table.places)
        self.counts.show_grid(table.counts if table.counts.rows else None, "How often")
        self.partners.show_grid(table.partners, "Together at one end, how often")

    @staticmethod
    def _label(words: str) -> QLabel:
        label = QLabel(words)
        label.setTextFormat(Qt.TextFormat.PlainText)
        label.setFont(font(CONTROL))
        return label


class Verdict(QWidget):
    """Whether it is even, in a sentence, with the sign of a caution or an error where it is not."""

    def __init__(self) -> None:
        super().__init__()
        self.weight = "even"
        self.words = ""
        policy = QSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        policy.setHeightForWidth(True)
        self.setSizePolicy(policy)

    def say(self, weight: str, words: str) -> None:
        """Say something else."""
        self.weight, self.words = weight, words
        self.setAccessibleName(f"{_SAID[weight]}: {words}")
        self.updateGeometry()
        self.update()

    def hasHeightForWidth(self) -> bool:
        return True

    def heightForWidth(self, width: int) -> int:
        return PITCH * len(self._lines(width)) + 2

    def sizeHint(self) -> QSize:
        return QSize(240, self.heightForWidth(240))

    def _lines(self, width: int) -> tuple[str, ...]:
        return broken(self.words, font(CONTROL), width - self._left())

    def _left(self) -> int:
        return 20 if self.weight in _SIGNS else 0

    def paintEvent(self, _: QPaintEvent) -> None:
        now, painter = look(), QPainter(self)
        if self.weight in _SIGNS:
            paint_icon(painter, _SIGNS[self.weight], QRectF(0, 2, 14, 14), now.ink)
        painter.setFont(font(CONTROL))
        painter.setPen(QColor(now.ink))
        for number, line in enumerate(self._lines(self.width())):
            box = QRect(self._left(), number * PITCH, self.width() - self._left(), PITCH)
            painter.drawText(box, Qt.AlignmentFlag.AlignVCenter | Qt.AlignmentFlag.AlignLeft, line)


class SmallCourts(QWidget):
    """The rounds as small courts, as many side by side as there is room for."""

    def __init__(self) -> None:
        super().__init__()
        self._make: Any = None
        self._picture: Picture | None = None
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.setAccessibleName("The rounds as small courts")

    def show_rounds(self, make: Any) -> None:
        """Show what ``make`` returns for a number of courts side by side: a picture, or None for none."""
        self._make = make
        self._fit()

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        if event.oldSize().width() != event.size().width():
            self._fit()

    def _fit(self) -> None:
        one: Picture | None = None if self._make is None else self._make(1)
        if one is None:
            self._picture = None
            self.hide()
            return
        left, right = one.extent[0], one.extent[2]
        columns = max(1, int(self.width() / ((right - left) * PIXELS)))
        made: Picture = self._make(columns)
        while columns > 1 and (made.extent[2] - made.extent[0]) * PIXELS > self.width():
            columns -= 1
            made = self._make(columns)
        self._picture = made
        self.setFixedHeight(round((made.extent[3] - made.extent[1]) * PIXELS))
        self.show()
        self.update()

    def paintEvent(self, _: QPaintEvent) -> None:
        if self._picture is None:
            return
        left, high = self._picture.extent[0], self._picture.extent[3]
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.scale(PIXELS, PIXELS)
        painter.translate(QPointF(-left, high))
        paint(painter, self._picture.marks, theme(look().name))


class GridTable(QWidget):
    """A small table of words. Its heads break where they must; the first column holds its rows' heads."""

    def __init__(self) -> None:
        super().__init__()
        self.grid: Grid | None = None
        self._title = ""
        policy = QSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        policy.setHeightForWidth(True)
        self.setSizePolicy(policy)
        self.hide()

    def show_grid(self, grid: Grid | None, title: str = "") -> None:
        """Show ``grid`` under ``title``; None for nothing."""
        self.grid, self._title = grid, title
        self.setVisible(grid is not None)
        if grid is not None:
            rows = ("; ".join((row.head, *row.cells, row.note)).strip("; ") for row in grid.rows)
            self.setAccessibleName(f"{title or grid.corner}, {', '.join(grid.heads)}: {'. '.join(rows)}")
        self.updateGeometry()
        self.update()

    def hasHeightForWidth(self) -> bool:
        return True

    def heightForWidth(self, width: int) -> int:
        if self.grid is None:
            return 0
        notes = sum(bool(row.note) for row in self.grid.rows)
        title = PITCH if self._title else 0
        return title + PITCH * (self._head_lines(width) + len(self.grid.rows) + notes) + 4

    def sizeHint(self) -> QSize:
        return QSize(240, self.heightForWidth(240))

    def _first(self, grid: Grid) -> int:
        metrics = QFontMetrics(font(NOTE, bold=True))
        return max(metrics.horizontalAdvance(words) for words in (grid.corner, *(row.head for row in grid.rows))) + 12

    def _column(self, grid: Grid, width: int) -> float:
        return (width - self._first(grid)) / max(1, len(grid.heads))

    def _head_lines(self, width: int) -> int:
        assert self.grid is not None
        room = self._column(self.grid, width) - 6
        return max(len(broken(head, font(NOTE, bold=True), room)) for head in self.grid.heads)

    def paintEvent(self, _: QPaintEvent) -> None:
        grid = self.grid
        if grid is None:
            return
        now, painter = look(), QPainter(self)
        first, pitch = self._first(grid), self._column(grid, self.width())
        top = 0
        if self._title:
            self._write(painter, self._title, QRectF(0, 0, self.width(), PITCH), now.soft)
            top = PITCH
        heads = self._head_lines(self.width())
        self._write(painter, grid.corner, QRectF(0, top + (heads - 1) * PITCH, first, PITCH), now.soft)
        for number, head in enumerate(grid.heads):
            lines = broken(head, font(NOTE, bold=True), pitch - 6)
            for place, line in enumerate(lines):
                y = top + (heads - len(lines) + place) * PITCH
                box = QRectF(first + number * pitch, y, pitch, PITCH)
                self._write(painter, line, box, now.ink, bold=True)
        top += heads * PITCH
        painter.fillRect(QRectF(0, top, self.width(), 1), QColor(now.edge))
        top += 2
        for row in grid.rows:
            self._write(painter, row.head, QRectF(0, top, first, PITCH), now.ink, bold=True)
            for number, cell in enumerate(row.cells):
                self._write(painter, cell, QRectF(first + number * pitch, top, pitch, PITCH), now.ink)
            top += PITCH
            if row.note:
                self._write(painter, row.note, QRectF(first, top - 2, self.width() - first, PITCH), now.soft)
                top += PITCH

    @staticmethod
    def _write(painter: QPainter, words: str, box: QRectF, colour: str, *, bold: bool = False) -> None:
        painter.setFont(font(NOTE, bold=bold))
        painter.setPen(QColor(colour))
        painter.drawText(box, Qt.AlignmentFlag.AlignVCenter | Qt.AlignmentFlag.AlignLeft, words)
