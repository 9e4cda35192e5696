"""A form for one record, built row by row from its table. Every edit gives a whole new record."""

from __future__ import annotations

from typing import Any, Final

from pydantic import ValidationError
from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QHBoxLayout, QLabel, QSizePolicy, QWidget

from designer.desktop.controls import Link, frame, stacked
from designer.desktop.fonts import CONTROL, font, scaled
from designer.desktop.forms.box import Box
from designer.desktop.forms.boxes import Complaint, box_for
from designer.desktop.forms.context import Context
from designer.desktop.forms.fields import Either, Field, Kinds, One, Pairs, Points, Rounds, Several, Table, Where
from designer.desktop.style import look

LABEL: Final = 90
SIDE: Final = 6
"""How far a row reaches beyond its label, so that it can be lit all round."""
PITCH: Final = 33
NESTED: Final = (One, Several, Kinds, Either, Pairs)
UNDER: Final = (*NESTED, Where, Points, Rounds)
"""Kinds whose control takes the whole width, under its label."""


class Row(QWidget):
    """A label and the control beside it, or under it where the control holds records itself."""

    edited = Signal(str, object, bool)

    def __init__(self, field: Field, box: Box, side: int = SIDE) -> None:
        super().__init__()
        self.field = field
        self.box = box
        self.lit = False
        self._label = QLabel(field.label)
        self._label.setTextFormat(Qt.TextFormat.PlainText)
        self._label.setWordWrap(True)
        self._label.setFont(font(CONTROL))
        self._label.setMinimumHeight(scaled(26))
        self._complaint = Complaint()
        box.name(field.spoken or field.label)
        box.edited.connect(lambda value, typed: self.edited.emit(field.name, value, typed))
        box.refused.connect(self._complaint.say)
        box.lit.connect(self._light)
        outer = stacked(self)
        beside = not isinstance(field.kind, UNDER)
        if beside:
            self.setMinimumHeight(scaled(PITCH))
            line = QHBoxLayout()
            line.setContentsMargins(0, 3, 0, 4)
            line.setSpacing(8)
            self._label.setFixedWidth(scaled(LABEL - 8))
            line.addWidget(self._label, 0, Qt.AlignmentFlag.AlignTop)
            line.addWidget(box, 1)
            outer.setContentsMargins(side, 0, 0, 0)
            outer.addLayout(line)
        else:
            outer.setContentsMargins(side, 3, 0, 4)
            outer.addWidget(self._label)
            self._label.setVisible(bool(field.label))
            outer.addWidget(box)
        outer.addWidget(self._complaint)

    def colour(self) -> None:
        """Take the colours of the look in force."""
        self._label.setStyleSheet(f"color: {look().soft};")

    def _light(self, on: object) -> None:
        self.lit = bool(on)
        self.update()

    def paintEvent(self, _: QPaintEvent) -> None:
        if self.lit:
            painter = QPainter(self)
            frame(painter, self.rect(), edge=look().highlighter_edge, fill=look().highlighter, width=2)

    def complain(self, sentence: str) -> None:
        """Say under the control what is wrong with what was filled in."""
        self._complaint.say(sentence)


class Form(QWidget):
    """The rows of one record. ``edited`` carries the record with one value changed, and whether it was typed."""

    edited = Signal(object, bool)
    hiding_changed = Signal(bool)
    """Whether there are rows behind "More", open or not."""

    def __init__(self, table: Table, *, inner: bool = False) -> None:
        """An ``inner`` form leaves the word "More" to what it stands in."""
        super().__init__()
        self._inner = inner
        self._table = table
        self._rows: dict[str, Row] = {}
        self._record: Any = None
        self._context: Context | None = None
        self._open = False
        self._layout = stacked(self)
        self._more = Link("More")
        self._more.clicked.connect(self.toggle_more)
        self._layout.addWidget(self._more)
        self._layout.addStretch(1)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Minimum)

    @property
    def record(self) -> Any:
        """Return the record as it is shown."""
        return self._record

    def row(self, name: str) -> Row | None:
        """Return the row of a field, None while it is not shown."""
        row = self._rows.get(name)
        return row if row is not None and not row.isHidden() else None

    def show_record(self, record: Any, context: Context) -> None:
        """Show ``record``; rows that matter for it come, others go."""
        self._record, self._context = record, context
        place = 0
        hidden = 0
        for field in self._table:
            wanted, beyond = self._wanted(field, record)
            hidden += beyond
            row = self._rows.get(field.name)
            if not wanted:
                if row is not None:
                    row.hide()
                continue
            if row is None:
                row = self._rows[field.name] = Row(field, _box(field), 0 if self._inner else SIDE)
                row.edited.connect(self._edit)
            if self._layout.indexOf(row) != place:
                self._layout.removeWidget(row)
                self._layout.insertWidget(place, row)
            row.colour()
            row.box.offers = field.offered(record)
            row.box.show_value(field.get(record), context)
            row.show()
            place += 1
        hides = bool(hidden) or self._open
        self._more.setText("Less" if self._open else "More")
        self._more.setVisible(hides and not self._inner)
        self.hiding_changed.emit(hides)

    def open_all(self) -> None:
        """Show the rows that stand behind "More" as well."""
        self._open = True
        if self._context is not None:
            self.show_record(self._record, self._context)

    def focus(self, name: str = "") -> None:
        """Put the keyboard on the control of a field, shown for it if need be; else on the first."""
        if name and self.row(name) is None and any(field.name == name for field in self._table):
            self.open_all()
        wanted = self.row(name) or self._first_of(name) if name else None
        rows = [wanted] if wanted is not None else [self.row(field.name) for field in self._table]
        for row in rows:
            if row is not None:
                row.box.first().setFocus(Qt.FocusReason.OtherFocusReason)
                return

    def focus_beside(self, gone: QWidget) -> None:
        """Put the keyboard on the control of the row in which ``gone`` stands, else on the first."""
        self.focus(next((name for name, row in self._rows.items() if row.isAncestorOf(gone)), ""))

    def _first_of(self, name: str) -> Row | None:
        """Return the first row that stands for part of the field ``name``."""
        rows = (self.row(field.name) for field in self._table if name in field.holds)
        return next((row for row in rows if row is not None), None)

    def first(self) -> QWidget | None:
        """Return the control that gets the keyboard first, None where no row is shown."""
        rows = (self.row(field.name) for field in self._table)
        return next((row.box.first() for row in rows if row is not None), None)

    def _wanted(self, field: Field, record: Any) -> tuple[bool, bool]:
        """Return whether the field's row is shown, and whether it waits behind "More"."""
        if not field.fits(record):
            return False, False
        if field.drawn and not self._open:
            return False, True
        usual = field.shown(record) and not field.more
        if usual or self._open:
            return True, False
        filled = field.is_filled(record)
        return filled, not filled

    def toggle_more(self) -> None:
        """Show the rows behind "More", or put them back."""
        self._open = not self._open
        if self._context is not None:
            self.show_record(self._record, self._context)

    def _edit(self, name: str, value: Any, typed: object) -> None:
        row = self._rows[name]
        if self._context is None:
            return
        try:
            changed = row.field.put(self._record, value, self._context)
        except ValidationError as error:
            row.complain(sentence_for(error))
            return
        row.complain("")
        self.edited.emit(changed, bool(typed))


def sentence_for(error: ValidationError) -> str:
    """Return in one sentence what a value that does not fit should have been."""
    first = error.errors(include_url=False, include_context=False)[0]
    return f"That does not fit: {first['msg'].removeprefix('Value error, ').rstrip('.')}."


def _box(field: Field) -> Box:
    kind = field.kind
    if isinstance(kind, NESTED):
        from designer.desktop.forms import nested

        return nested.box_for(kind)
    return box_for(kind)
