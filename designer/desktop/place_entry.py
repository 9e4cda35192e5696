"""A small box beside what is picked: where it stands, typed in any unit from a line that is named."""

from __future__ import annotations

from typing import Final, Literal

from pydantic import ValidationError
from PySide6.QtCore import QPoint, QRectF, Qt
from PySide6.QtGui import QColor, QKeyEvent, QPainter, QPaintEvent
from PySide6.QtWidgets import QFrame, QGridLayout, QLabel, QLineEdit, QSizePolicy, QVBoxLayout, QWidget

from designer.court.regions import End
from designer.desktop.canvas.bench import Bench
from designer.desktop.canvas.names import called, full_name
from designer.desktop.controls import DropDown, Link, Segments, fill, frame
from designer.desktop.fonts import CONTROL, NOTE, font, scaled
from designer.desktop.lengths import metres_typed
from designer.desktop.measured import Measure, across, along, nearest, placed_at, point_at, seen_from, stands
from designer.desktop.style import field_sheet, look
from designer.drill.base import Point
from designer.drill.drill import Drill
from designer.drill.movement import Run, Shot
from designer.drill.places import corners_of
from designer.wording.units import distance

Axis = Literal["across", "along"]
ENDS: Final = (("near", "Near end"), ("far", "Far end"))
APART: Final = 14
"""Pixels between the thing and the box."""
EDGE: Final = 4
"""Pixels between the box and the edge of the court."""


class PlaceEntry(QFrame):
    """What is typed shows at once; Enter settles it as one step, Esc leaves no trace."""

    def __init__(self, bench: Bench, id: str, parent: QWidget) -> None:
        super().__init__(parent)
        self.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        self._bench, self._id = bench, id
        self._before, self._at = bench.drill, bench.at
        stood = stands(self._before, self._at, id)
        assert stood is not None
        self._end, right, away = seen_from(stood)
        self._values: dict[Axis, float] = {"across": right, "along": away}
        self._measures: dict[Axis, tuple[Measure, ...]] = {
            "across": across(bench.ground),
            "along": along(bench.ground),
        }
        self._wrong: dict[Axis, str] = {}
        self.counts: dict[Axis, QLineEdit] = {}
        self.lines: dict[Axis, DropDown] = {}
        self._make()
        bench.document.gesture_left.connect(self.close)
        bench.document.changed.connect(self.close)
        bench.view.selection_changed.connect(self.close)
        bench.view.at_changed.connect(self.close)

    def _make(self) -> None:
        whole = QVBoxLayout(self)
        whole.setContentsMargins(14, 12, 14, 12)
        whole.setSpacing(7)
        self.title = QLabel(self._name())
        self.title.setTextFormat(Qt.TextFormat.PlainText)
        self.title.setFont(font(CONTROL, bold=True))
        whole.addWidget(self.title)
        grid = QGridLayout()
        grid.setSpacing(7)
        whole.addLayout(grid)
        for row, axis in enumerate(("across", "along")):
            self._row(grid, row, axis)  # type: ignore[arg-type]
        self.ends = Segments(ENDS, may_be_empty=False)
        self.ends.setAccessibleName("At which end")
        self.ends.show_values((self._end,))
        self.ends.chosen.connect(lambda values: self._take_end(values[0]))
        whole.addWidget(self.ends, 0, Qt.AlignmentFlag.AlignLeft)
        self.said = QLabel()
        self.said.setTextFormat(Qt.TextFormat.PlainText)
        self.said.setFont(font(NOTE))
        self.said.setWordWrap(True)
        self.said.setStyleSheet(f"color: {look().soft};")
        whole.addWidget(self.said)
        settle, leave = Link("Put it there"), Link("Leave it")
        settle.clicked.connect(self.settle)
        leave.clicked.connect(self.close)
        deeds = QGridLayout()
        deeds.addWidget(settle, 0, 0, Qt.AlignmentFlag.AlignLeft)
        deeds.addWidget(leave, 0, 1, Qt.AlignmentFlag.AlignRight)
        whole.addLayout(deeds)
        self._take_width(max(scaled(360), self.sizeHint().width()))
        self._say()

    def _take_width(self, wanted: int) -> None:
        """Be ``wanted`` pixels wide, or as wide as there is room: with large letters the names of lines make way."""
        parent = self.parentWidget()
        room = wanted if parent is None else parent.width() - 2 * EDGE
        if wanted > room:
            for line in self.lines.values():
                line.setSizePolicy(QSizePolicy.Policy.Ignored, line.sizePolicy().verticalPolicy())
        self.setFixedWidth(min(wanted, room))

    def _row(self, grid: QGridLayout, row: int, axis: Axis) -> None:
        measures = self._measures[axis]
        count, line = QLineEdit(), DropDown()
        count.setStyleSheet(field_sheet(look()))
        count.setFont(font(CONTROL))
        count.setFixedWidth(scaled(112))
        count.setAccessibleName(f"How far {axis}")
        count.textEdited.connect(lambda text: self._typed(axis, text))
        line.setAccessibleName(f"From which line {axis}")
        chosen = nearest(measures, self._values[axis])
        fill(line, [(number, each.words) for number, each in enumerate(measures)], measures.index(chosen))
        line.activated.connect(lambda _: self._show_count(axis))
        grid.addWidget(count, row, 0)
        grid.addWidget(line, row, 1)
        self.counts[axis], self.lines[axis] = count, line
        self._show_count(axis)

    def _name(self) -> str:
        setting = self._bench.setting
        record = setting.find(self._id)
        name = full_name(setting, self._id)
        if isinstance(record, Shot):
            return f"{name}: where it lands"
        if isinstance(record, Run):
            return f"{name}: where it ends"
        return f"{name}: its middle" if corners_of(record) else name

    def _measure(self, axis: Axis) -> Measure:
        return self._measures[axis][self.lines[axis].currentIndex()]

    def _show_count(self, axis: Axis) -> None:
        """Show the count from the line that is chosen; the thing stays where it is."""
        count = self._measure(axis).count(self._values[axis])
        words = "0" if abs(count) < 5e-4 else distance(count, axis, self._bench.view.units, exact=True)
        self.counts[axis].setText(f"−{words}" if count <= -5e-4 else words)
        self._wrong.pop(axis, None)

    def _typed(self, axis: Axis, text: str) -> None:
        try:
            count = metres_typed(text, axis, self._bench.view.units)
        except ValueError as reason:
            self._wrong[axis] = str(reason)
        else:
            self._wrong.pop(axis, None)
            self._values[axis] = self._measure(axis).value(count)
        self._show()

    def _take_end(self, end: End) -> None:
        self._end = end
        self._show()

    @property
    def point(self) -> Point:
        """Return the point that is typed."""
        return point_at(self._end, self._values["across"], self._values["along"])

    def _made(self) -> Drill | None:
        """Return the drill as it would be, None where what is typed says no place."""
        if self._wrong or self._bench.within(self.point) != self.point:
            return None
        try:
            return placed_at(self._before, self._at, self._id, self.point)
        except ValidationError:
            return None

    def _show(self) -> None:
        made = self._made()
        if made is not None:
            self._bench.preview(made)
        self._say()

    def _say(self) -> None:
        words = next(iter(self._wrong.values()), "")
        if not words and self._made() is None:
            words = "That is farther than the drawing goes."
        self.said.setText(words or f"{self._bench.reading(self.point)}.")

    def settle(self) -> None:
        """Put the thing there, where that is a place."""
        made = self._made()
        if made is None:
            self._say()
            return
        name = called(self._bench.setting, (self._id,))
        self._bench.document.changed.disconnect(self.close)
        self._bench.perform(f"Move {name} to a typed place", made)
        self.close()

    def stand_beside(self, thing: QRectF) -> None:
        """Stand beside ``thing`` (pixels of the parent) where there is room, and take the keyboard."""
        self.adjustSize()
        parent = self.parentWidget()
        assert parent is not None
        room = parent.rect()
        left = thing.right() + APART
        if left + self.width() > room.right():
            left = thing.left() - APART - self.width()
        top = thing.center().y() - self.height() / 2
        self.move(
            QPoint(
                round(min(max(left, EDGE), max(EDGE, room.width() - self.width() - EDGE))),
                round(min(max(top, EDGE), max(EDGE, room.height() - self.height() - EDGE))),
            )
        )
        self.show()
        self.raise_()
        self.counts["across"].setFocus()
        self.counts["across"].selectAll()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.key() == Qt.Key.Key_Escape:
            self.close()
        elif event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self.settle()
        else:
            super().keyPressEvent(event)
            event.accept()

    def closeEvent(self, event: object) -> None:
        self._bench.abandon()
        super().closeEvent(event)  # type: ignore[arg-type]
        parent = self.parentWidget()
        if parent is not None:
            parent.setFocus()

    def paintEvent(self, _: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.fillRect(self.rect(), QColor(look().window))
        frame(painter, self.rect(), edge=look().edge, fill=look().panel)
