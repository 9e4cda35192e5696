"""The control for a map: a row a pair, such as who becomes whom, and one more to begin another with."""

from __future__ import annotations

from typing import Any

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QHBoxLayout, QLabel, QWidget

from designer.desktop.controls import DropDown, IconButton, fill
from designer.desktop.fonts import CONTROL, font
from designer.desktop.forms.context import ON_COURT, Context
from designer.desktop.forms.fields import Number, Pairs
from designer.desktop.forms.nested import Holder
from designer.desktop.forms.place_boxes import PICK
from designer.desktop.forms.typed_boxes import NumberBox
from designer.desktop.forms.wish import Wish


class PairsBox(Holder):
    """A map. Rows are kept while their keys are, so that the keyboard stays where it is."""

    def __init__(self, kind: Pairs) -> None:
        super().__init__()
        self._kind = kind
        self._value: dict[Any, Any] = {}
        self._rows: dict[Any, PairRow] = {}
        self._context: Context | None = None
        self._words = ""
        foot = QWidget()
        line = QHBoxLayout(foot)
        line.setContentsMargins(0, 0, 0, 0)
        line.setSpacing(4)
        self._new = DropDown()
        self._new.activated.connect(lambda _: self._append(self._new.currentData()))
        self._pick = IconButton("pick", PICK, size=14)
        self._pick.clicked.connect(self._ask)
        line.addWidget(self._new, 1)
        line.addWidget(self._pick)
        self.inside.addWidget(foot)
        self.setFocusProxy(self._new)

    def name(self, words: str) -> None:
        super().name(words)
        self._words = words
        self._new.setAccessibleName(f"{words}: add")
        self._pick.setAccessibleName(f"{words}: add, {PICK.lower()}")

    def row_of(self, key: Any) -> PairRow:
        """Return the row of a pair; ``KeyError`` where there is none."""
        return self._rows[key]

    def show_value(self, value: Any, context: Context) -> None:
        self._context, self._value = context, dict(value)
        for key in self._rows.keys() - self._value.keys():
            row = self._rows.pop(key)
            self.inside.removeWidget(row)
            row.hide()
            row.deleteLater()
        words = dict(self._kind.keys(context))
        for number, (key, said) in enumerate(self._value.items()):
            if key not in self._rows:
                self._insert(key, number)
            self._rows[key].show_pair(words.get(key, str(key)), said, context)
        free = [option for option in self._kind.keys(context) if option[0] not in self._value]
        fill(self._new, [(None, "add …"), *free], None)
        self._pick.setVisible(context.court is not None and self._kind.keys in ON_COURT and bool(free))

    def _insert(self, key: Any, number: int) -> None:
        row = self._rows[key] = PairRow(self._kind)
        row.said.connect(lambda new: self._put(key, new))
        row.gone.connect(lambda: self.give({k: v for k, v in self._value.items() if k != key}))
        row.asked.connect(lambda: self._ask_value(key))
        self.inside.insertWidget(number, row)

    def _append(self, key: Any) -> None:
        if key is None or self._context is None:
            return
        if self._kind.values is None:
            self._put(key, 0)
            return
        options = [value for value, _ in self._kind.values(self._context) if value != key]
        if options:
            self._put(key, options[0])

    def _put(self, key: Any, value: Any) -> None:
        self.give({**self._value, key: value})

    def _ask(self) -> None:
        if self._context is not None:
            free = [option for option in self._kind.keys(self._context) if option[0] not in self._value]
            self.ask(self._context, Wish(self._words, "one", self._append, options=free))

    def _ask_value(self, key: Any) -> None:
        if self._context is None or self._kind.values is None:
            return
        words = f"{dict(self._kind.keys(self._context)).get(key, key)} {self._kind.joined}"
        wish = Wish(
            words,
            "one",
            lambda value: self._put(key, value),
            options=[option for option in self._kind.values(self._context) if option[0] != key],
            chosen=lambda: (self._value.get(key),),
        )
        self.ask(self._context, wish)


class PairRow(QWidget):
    """One pair: what it is for, its value, the button that asks for that on the court, and a cross."""

    said = Signal(object)
    asked = Signal()
    gone = Signal()

    def __init__(self, kind: Pairs) -> None:
        super().__init__()
        self._kind = kind
        line = QHBoxLayout(self)
        line.setContentsMargins(0, 0, 0, 0)
        line.setSpacing(4)
        self._label = QLabel()
        self._label.setTextFormat(Qt.TextFormat.PlainText)
        self._label.setFont(font(CONTROL))
        line.addWidget(self._label)
        self.number: NumberBox | None = None
        self.choice: DropDown | None = None
        if kind.values is None:
            self.number = NumberBox(Number(-1000, 1000, optional=False))
            self.number.edited.connect(lambda new, _: self.said.emit(new))
            line.addWidget(self.number, 1)
        else:
            choice = self.choice = DropDown()
            choice.activated.connect(lambda _: self.said.emit(choice.currentData()))
            line.addWidget(choice, 1)
        self.pick = IconButton("pick", PICK, size=14)
        self.pick.clicked.connect(self.asked)
        line.addWidget(self.pick)
        self.cross = IconButton("close", "", size=10)
        self.cross.clicked.connect(self.gone)
        line.addWidget(self.cross)

    def show_pair(self, words: str, value: Any, context: Context) -> None:
        """Show what the pair is for, in words, and its value."""
        said = f"{words} {self._kind.joined}"
        self._label.setText(said)
        self.cross.show_icon("close", f"take away {words}")
        self.pick.setAccessibleName(f"{said}: {PICK.lower()}")
        self.pick.setVisible(context.court is not None and self._kind.values in ON_COURT)
        if self.number is not None:
            self.number.name(said)
            self.number.show_value(value, context)
        elif self.choice is not None and self._kind.values is not None:
            self.choice.setAccessibleName(said)
            fill(self.choice, self._kind.values(context), value)
