"""The control for an outcome: what follows, how many, for whom and in which words, in a row that shows what matters."""

from __future__ import annotations

from typing import Any, Final

from PySide6.QtWidgets import QHBoxLayout, QWidget

from designer.desktop.controls import DropDown, fill, stacked
from designer.desktop.forms.box import Box
from designer.desktop.forms.context import Context
from designer.desktop.forms.fields import Cost, Line, Number, Options, words
from designer.desktop.forms.text_boxes import LineBox
from designer.desktop.forms.typed_boxes import NumberBox
from designer.desktop.usual import UsualButton
from designer.drill.conditions import Outcome

OUTCOMES: Final = words(
    "points",
    "lose the point",
    "replay",
    "no score",
    "opens",
    "count to zero",
    "start score",
    "warning",
    "do",
    lose_the_point="the point is lost",
    no_score="nothing is scored",
    opens="the point is on",
    count_to_zero="the count goes to zero",
    start_score="a start score",
    warning="a warning",
    do="something to do",
)
"""What can follow, in a coach's words."""

RECEIVERS: Final[Options] = (("doer", "to who did it"), ("other", "to the other"), ("side", "to the side"))
_COUNTED: Final = ("points", "start score")
_GIVEN: Final = ("points", "start score", "lose the point")
_SAID: Final = ("do", "warning")


class CostBox(Box):
    """An outcome, or nothing said. Choosing another one keeps what it has in common with the one before."""

    def __init__(self, kind: Cost) -> None:
        super().__init__()
        self._kind = kind
        self._value: Outcome | None = None
        self._context: Context | None = None
        self.list = DropDown()
        self.list.activated.connect(lambda _: self._choose(self.list.currentData()))
        self.number = NumberBox(Number(-100, 100))
        self.number.edited.connect(lambda value, _: self._put(value=value))
        self.number.refused.connect(self.refused)
        self.receiver = DropDown()
        self.receiver.activated.connect(lambda _: self._put(to=self.receiver.currentData()))
        self.text = LineBox(Line("collects two balls", follows=True))
        self.text.edited.connect(lambda text, typed: self._put(typed=typed, text=text))
        self._usual = UsualButton()
        self._usual.clicked.connect(self._make)
        inner, first = QWidget(), QWidget()
        line = QHBoxLayout(first)
        line.setContentsMargins(0, 0, 0, 0)
        line.setSpacing(6)
        line.addWidget(self.list, 1)
        line.addWidget(self.number)
        under = stacked(inner, 4)
        for widget in (first, self._usual, self.receiver, self.text):
            under.addWidget(widget)
        self.row.addWidget(inner, 1)

    def name(self, words: str) -> None:
        super().name(words)
        self.list.setAccessibleName(words)
        self.number.name(f"{words}: how many")
        self.receiver.setAccessibleName(f"{words}: for whom")
        self.text.name(f"{words}: in words")
        self._usual.offer(self._kind.usual, words)

    def first(self) -> QWidget:
        return self._usual if self._is_offered else self.list

    @property
    def _is_offered(self) -> bool:
        return self._value is None and bool(self._kind.usual) and self.offers

    def show_value(self, value: Any, context: Context) -> None:
        self._value, self._context = value, context
        then = None if value is None else value.then
        nothing: list[tuple[Any, str]] = [(None, "not said")] if self._kind.optional or value is None else []
        fill(self.list, [*nothing, *OUTCOMES], then)
        self._usual.setVisible(self._is_offered)
        self.setFocusProxy(self.first())
        number = None if value is None else value.value
        self.number.setVisible(then in _COUNTED or number is not None)
        self.number.show_value(number, context)
        to = None if value is None else value.to
        self.receiver.setVisible(then in _GIVEN or to is not None)
        fill(self.receiver, [(None, "for whom: as is usual"), *RECEIVERS], to)
        text = "" if value is None else value.text
        self.text.setVisible(then in _SAID or bool(text))
        self.text.show_value(text, context)

    def _choose(self, then: Any) -> None:
        if then is None:
            self.give(None)
        elif self._value is None or self._value.then != then:
            before = self._value
            counted = then in _COUNTED
            value = (1 if before is None or before.value is None else before.value) if counted else None
            to = before.to if before is not None and then in _GIVEN else None
            self.give(Outcome(then=then, value=value, to=to, text=before.text if before and then in _SAID else ""))

    def _make(self) -> None:
        if self._context is not None:
            self.give(self._kind.make(self._context))

    def _put(self, *, typed: bool = False, **values: Any) -> None:
        if self._value is not None:
            self.give(self._value.changed(**values), typed=typed)
