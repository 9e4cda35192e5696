"""Controls for values that are records themselves: what follows, what must happen, where a ball must be."""

from __future__ import annotations

from typing import Any, Final

from PySide6.QtCore import QRectF
from PySide6.QtGui import QColor, QPainter, QPaintEvent
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from designer.desktop.controls import DropDown, IconButton, Link, Segments, fill, stacked
from designer.desktop.forms.box import Box
from designer.desktop.forms.context import Context
from designer.desktop.forms.fields import Either, Kinds, One, Pairs, Several
from designer.desktop.forms.form import Form
from designer.desktop.style import look
from designer.desktop.usual import UsualButton

INDENT: Final = 14


class Inner(QWidget):
    """A record inside a record: its form behind a thin line, with a cross that takes it away."""

    def __init__(self, record: Any, removal: str) -> None:
        from designer.desktop.forms.tables import table_of

        super().__init__()
        self.type = type(record)
        self._alone = False
        self.form = Form(table_of(record), inner=True)
        self.cross = IconButton("close", removal, size=10)
        self.more = IconButton("more", "more, or less", size=12)
        self.more.clicked.connect(self.form.toggle_more)
        self.more.hide()
        self.form.hiding_changed.connect(self.more.setVisible)
        line = QHBoxLayout(self)
        line.setContentsMargins(INDENT, 0, 0, 0)
        line.setSpacing(2)
        line.addWidget(self.form, 1)
        aside = QVBoxLayout()
        aside.setContentsMargins(0, 3, 0, 0)
        aside.setSpacing(0)
        aside.addWidget(self.cross)
        aside.addWidget(self.more)
        aside.addStretch(1)
        line.addLayout(aside)

    def stand_alone(self, *, alone: bool) -> None:
        """Stand in line with the rows around it, as the only record that there must be; else set in behind a line."""
        layout = self.layout()
        if alone != self._alone and layout is not None:
            self._alone = alone
            layout.setContentsMargins(0 if alone else INDENT, 0, 0, 0)
            self.update()

    def paintEvent(self, _: QPaintEvent) -> None:
        if not self._alone:
            QPainter(self).fillRect(QRectF(2, 2, 1, self.height() - 4), QColor(look().edge))


class Holder(Box):
    """What the controls here share: a layout from top to bottom."""

    def __init__(self) -> None:
        super().__init__()
        inner = QWidget()
        self.inside: QVBoxLayout = stacked(inner, 2)
        self.row.addWidget(inner, 1)


class OneBox(Holder):
    """One record, or a word to press for it."""

    def __init__(self, kind: One) -> None:
        super().__init__()
        self._kind = kind
        self._inner: Inner | None = None
        self._context: Context | None = None
        self._add, self._usual = Link(kind.add), UsualButton()
        for button in (self._add, self._usual):
            button.clicked.connect(self._make)
            self.inside.addWidget(button)

    def name(self, words: str) -> None:
        super().name(words)
        self._add.setAccessibleName(f"{words}: {self._kind.add}")
        self._usual.offer(self._kind.usual, words)

    def show_value(self, value: Any, context: Context) -> None:
        self._context = context
        if self._inner is not None and (value is None or type(value) is not self._inner.type):
            self.inside.removeWidget(self._inner)
            self._inner.hide()
            self._inner.deleteLater()
            self._inner = None
        usual = bool(self._kind.usual) and self.offers
        self._add.setVisible(value is None and not usual)
        self._usual.setVisible(value is None and usual)
        self.setFocusProxy(self._usual if usual else self._add)
        if value is None:
            return
        if self._inner is None:
            self._inner = Inner(value, "leave this open")
            self._inner.cross.setVisible(self._kind.optional)
            self._inner.cross.clicked.connect(lambda: self.give(None))
            self._inner.form.edited.connect(self.edited)
            self.inside.addWidget(self._inner)
        self._inner.form.show_record(value, context)

    def first(self) -> QWidget:
        return (None if self._inner is None else self._inner.form.first()) or super().first()

    def _make(self) -> None:
        if self._context is not None:
            self.give(self._kind.make(self._context))


class SeveralBox(Holder):
    """Any number of records of one type."""

    def __init__(self, kind: Several) -> None:
        super().__init__()
        self._kind = kind
        self._values: tuple[Any, ...] = ()
        self._inners: list[Inner] = []
        self._context: Context | None = None
        self._add = Link(kind.add)
        self._add.clicked.connect(self._append)
        self.inside.addWidget(self._add)
        self.setFocusProxy(self._add)

    def show_value(self, value: Any, context: Context) -> None:
        self._context, self._values = context, tuple(value)
        types = [type(each) for each in self._values]
        kept = 0
        while kept < min(len(types), len(self._inners)) and self._inners[kept].type is types[kept]:
            kept += 1
        for inner in self._inners[kept:]:
            self.inside.removeWidget(inner)
            inner.hide()
            inner.deleteLater()
        del self._inners[kept:]
        for number, each in enumerate(self._values):
            if number >= len(self._inners):
                self._insert(each, number)
            self._inners[number].form.show_record(each, context)
            self._inners[number].cross.setVisible(len(self._values) > self._kind.least)
            self._inners[number].stand_alone(alone=len(self._values) == self._kind.least == 1)

    def first(self) -> QWidget:
        return (self._inners[0].form.first() if self._inners else None) or super().first()

    def _insert(self, value: Any, number: int) -> None:
        inner = Inner(value, "take this away")
        inner.form.edited.connect(lambda new, typed: self._replace(number, new, typed=typed))
        inner.cross.clicked.connect(lambda: self._remove(number))
        self._inners.append(inner)
        self.inside.insertWidget(number, inner)

    def _append(self) -> None:
        if self._context is not None:
            self.give((*self._values, self._kind.make(self._context)))

    def _replace(self, number: int, new: Any, *, typed: bool) -> None:
        self.give((*self._values[:number], new, *self._values[number + 1 :]), typed=typed)

    def _remove(self, number: int) -> None:
        self.give((*self._values[:number], *self._values[number + 1 :]))


class KindsBox(Holder):
    """A record of one of several types: a drop-down of the types, and the form of the one chosen."""

    def __init__(self, kind: Kinds) -> None:
        super().__init__()
        self._kind = kind
        self._inner: Inner | None = None
        self._context: Context | None = None
        self._list = DropDown()
        self._list.activated.connect(self._choose)
        self.inside.addWidget(self._list)
        self.setFocusProxy(self._list)

    def name(self, words: str) -> None:
        super().name(words)
        self._list.setAccessibleName(words)

    def show_value(self, value: Any, context: Context) -> None:
        self._context = context
        tag = getattr(value, self._kind.tag)
        fill(self._list, [(each, words) for each, words, _ in self._kind.options], tag)
        if self._inner is not None and self._inner.type is not type(value):
            self.inside.removeWidget(self._inner)
            self._inner.hide()
            self._inner.deleteLater()
            self._inner = None
        if self._inner is None:
            self._inner = Inner(value, "")
            self._inner.cross.hide()
            self._inner.form.edited.connect(self.edited)
            self.inside.addWidget(self._inner)
        self._inner.form.show_record(value, context)

    def _choose(self) -> None:
        if self._context is None:
            return
        for tag, _, make in self._kind.options:
            if tag == self._list.currentData() and self._inner is not None:
                record, turn = self._inner.form.record, self._kind.turn
                if getattr(record, self._kind.tag) != tag:
                    self.give(make(self._context) if turn is None else turn(record, tag))
                return


class EitherBox(Holder):
    """Always, after events, or for balls in a place."""

    def __init__(self, kind: Either) -> None:
        super().__init__()
        self._kind = kind
        self._which = 0
        self._segments = Segments(
            ((0, kind.neither), (1, kind.first_words), (2, kind.second_words)),
            may_be_empty=False,
        )
        self._segments.chosen.connect(lambda chosen: self._choose(chosen[0]))
        self.inside.addWidget(self._segments)
        self._boxes = {1: SeveralBox(kind.first), 2: SeveralBox(kind.second)}
        for box in self._boxes.values():
            box.edited.connect(self.edited)
            self.inside.addWidget(box)
        self._context: Context | None = None

    def show_value(self, value: Any, context: Context) -> None:
        self._context = context
        self._which = 0 if not value else 2 if self._kind.is_second(value[0]) else 1
        self._segments.show_values((self._which,))
        for which, box in self._boxes.items():
            box.setVisible(which == self._which)
            if which == self._which:
                box.show_value(value, context)

    def _choose(self, which: int) -> None:
        if which == self._which or self._context is None:
            return
        kinds = {1: self._kind.first, 2: self._kind.second}
        self.give((kinds[which].make(self._context),) if which else ())


def box_for(kind: Any) -> Box:
    """Return the control for a kind of field that holds records."""
    from designer.desktop.forms.pairs_box import PairsBox

    makers: dict[type, Any] = {One: OneBox, Several: SeveralBox, Kinds: KindsBox, Either: EitherBox, Pairs: PairsBox}
    made: Box = makers[type(kind)](kind)
    return made
