"""The controls of a form that are typed into: text that stands for a value, or is one."""

from __future__ import annotations

from datetime import date
from typing import Any, Literal

from PySide6.QtWidgets import QLabel, QLineEdit

from designer.desktop.controls import has_caret
from designer.desktop.fonts import CONTROL, font
from designer.desktop.forms.box import Box, Refused
from designer.desktop.forms.context import Context
from designer.desktop.forms.fields import Measure, Number, Span


def typed(placeholder: str = "") -> QLineEdit:
    """Return a box for one line of text."""
    box = QLineEdit()
    box.setFont(font(CONTROL))
    box.setPlaceholderText(placeholder)
    return box


class TypedBox(Box):
    """A box for text that stands for a value. Emits on leaving the box and on Enter."""

    def __init__(self, placeholder: str = "", unit: str = "", width: int = 0) -> None:
        super().__init__()
        self._shown = ""
        self.line = typed(placeholder)
        if width:
            self.line.setFixedWidth(width)
        self.line.editingFinished.connect(self._finished)
        self.row.addWidget(self.line)
        self.setFocusProxy(self.line)
        if unit:
            label = QLabel(unit)
            label.setFont(font(CONTROL))
            self.row.addWidget(label)
        if width:
            self.row.addStretch(1)

    def name(self, words: str) -> None:
        super().name(words)
        self.line.setAccessibleName(words)

    def value_of(self, text: str) -> Any:
        """Return the value that ``text`` stands for; raise ``Refused`` where it stands for none."""
        raise NotImplementedError

    def text_of(self, value: Any) -> str:
        """Return what stands in the box for ``value``."""
        raise NotImplementedError

    def show_value(self, value: Any, context: Context) -> None:
        del context
        text = self.text_of(value)
        if self.line.text() != text and (text != self._shown or not has_caret(self.line)):
            self.line.setText(text)
        self._shown = text

    def _finished(self) -> None:
        text = self.line.text().strip()
        if text == self._shown:
            return
        try:
            value = self.value_of(text)
        except Refused as reason:
            self.refused.emit(str(reason))
            return
        self._shown = text
        self.refused.emit("")
        self.give(value)


class NumberBox(TypedBox):
    """A whole number, with the unit behind it; the arrow keys count up and down."""

    def __init__(self, kind: Number) -> None:
        usual = "" if kind.usual is None else str(kind.usual)
        super().__init__(usual, kind.unit, width=64 if kind.word is None else 96)
        self._kind = kind

    def value_of(self, text: str) -> Any:
        kind = self._kind
        if not text and kind.optional:
            return None
        if kind.word is not None and text.lower() == kind.word:
            return kind.word
        try:
            number = int(text)
        except ValueError:
            number = kind.least - 1
        if not kind.least <= number <= kind.most:
            also = f" or “{kind.word}”" if kind.word else ""
            raise Refused(f"A whole number from {kind.least} to {kind.most}{also}, please.")
        return number

    def text_of(self, value: Any) -> str:
        return "" if value is None else str(value)


class MeasureBox(TypedBox):
    """A distance in metres, or one of a few words for one."""

    def __init__(self, kind: Measure) -> None:
        super().__init__(" / ".join(kind.words[:2]), "m", width=64 if not kind.words else 130)
        self._kind = kind

    def value_of(self, text: str) -> Any:
        kind = self._kind
        if not text and kind.optional:
            return None
        if text.lower() in kind.words:
            return text.lower()
        try:
            metres = float(text.replace(",", ".").removesuffix("m").strip())
        except ValueError:
            metres = kind.least - 1
        if not kind.least <= metres <= kind.most:
            also = f", or {', '.join(kind.words)}" if kind.words else ""
            raise Refused(f"Metres from {kind.least:g} to {kind.most:g}{also}, please.")
        return metres

    def text_of(self, value: Any) -> str:
        return "" if value is None else value if isinstance(value, str) else f"{value:g}"


class SpanBox(Box):
    """The least and the most of something."""

    def __init__(self, kind: Span) -> None:
        super().__init__()
        number = Number(kind.least, kind.most)
        self._least, self._most = NumberBox(number), NumberBox(number)
        self._value: tuple[int, int] | None = None
        label = QLabel("to")
        label.setFont(font(CONTROL))
        for widget in (self._least, label, self._most):
            self.row.addWidget(widget)
        self.row.addStretch(1)
        self._least.edited.connect(lambda least, _: self._take(0, least))
        self._most.edited.connect(lambda most, _: self._take(1, most))
        for box in (self._least, self._most):
            box.refused.connect(self.refused)
        self.setFocusProxy(self._least)

    def name(self, words: str) -> None:
        super().name(words)
        self._least.name(f"{words}, least")
        self._most.name(f"{words}, most")

    def show_value(self, value: Any, context: Context) -> None:
        self._value = value
        least, most = value or (None, None)
        self._least.show_value(least, context)
        self._most.show_value(most, context)

    def _take(self, which: Literal[0, 1], number: int | None) -> None:
        if number is None:
            self.give(None)
            return
        other = number if self._value is None else self._value[1 - which]
        self.give((number, max(number, other)) if which == 0 else (min(number, other), number))


class HitsBox(Box):
    """From which hit to which; the second empty for "to the end"."""

    def __init__(self) -> None:
        super().__init__()
        self._value: tuple[int, int | None] = (1, None)
        self.first_hit, self.last_hit = NumberBox(Number(1, 1000, optional=False)), NumberBox(Number(1, 1000))
        self.last_hit.line.setPlaceholderText("the last")
        self.last_hit.line.setFixedWidth(80)
        for words, box in (("from", self.first_hit), ("to", self.last_hit)):
            label = QLabel(words)
            label.setFont(font(CONTROL))
            self.row.addWidget(label)
            self.row.addWidget(box)
            box.refused.connect(self.refused)
        self.row.addStretch(1)
        self.first_hit.edited.connect(lambda hit, _: self.give((hit, self._value[1])))
        self.last_hit.edited.connect(lambda hit, _: self.give((self._value[0], hit)))
        self.setFocusProxy(self.first_hit)

    def name(self, words: str) -> None:
        super().name(words)
        self.first_hit.name(f"{words}: from")
        self.last_hit.name(f"{words}: to, empty for the last")

    def show_value(self, value: Any, context: Context) -> None:
        self._value = value
        self.first_hit.show_value(value[0], context)
        self.last_hit.show_value(value[1], context)


class DayBox(TypedBox):
    """A date."""

    def __init__(self) -> None:
        super().__init__("2026-05-31", width=110)

    def value_of(self, text: str) -> Any:
        try:
            return date.fromisoformat(text) if text else None
        except ValueError:
            raise Refused("A date such as 2026-05-31, please.") from None

    def text_of(self, value: Any) -> str:
        return "" if value is None else str(value.isoformat())
