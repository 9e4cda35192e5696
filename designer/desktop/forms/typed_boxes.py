"""The controls of a form that are typed into: text that stands for a value, or is one."""

from __future__ import annotations

from datetime import date
from typing import Any, Literal

from PySide6.QtCore import QSignalBlocker, Qt, Signal
from PySide6.QtGui import QFocusEvent
from PySide6.QtWidgets import QLabel, QLineEdit, QPlainTextEdit

from designer.desktop.fonts import CONTROL, font
from designer.desktop.forms.box import Box, Refused
from designer.desktop.forms.context import Context
from designer.desktop.forms.fields import Line, Lines, Measure, Number, Span
from designer.desktop.own_words import OwnWords, Writing
from designer.desktop.underline import underline


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
        if self.line.text() != text and (text != self._shown or not self.line.hasFocus()):
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


class _Own:
    """A text as a box shows it and gives it: words on the screen, tokens in the file."""

    def __init__(self, *, follows: bool) -> None:
        self._follows = follows
        self._writing: Writing | None = None
        self.words = OwnWords()

    def take(self, context: Context) -> None:
        """Take note of the drill as it is now."""
        self._writing = Writing(context.drill, context.at)

    def read(self, kept: str) -> str:
        """Return the kept text in words."""
        self.words = OwnWords(kept) if self._writing is None or not self._follows else self._writing.read(kept)
        return self.words.text

    def typed(self, text: str) -> str:
        """Return ``text`` as it is kept, typed over what was there."""
        if self._writing is None or not self._follows:
            return text
        self.words = self._writing.typed(text, self.words)
        return self.words.kept


class LineBox(TypedBox):
    """One line of text, taken letter by letter."""

    def __init__(self, kind: Line) -> None:
        super().__init__(kind.hint)
        self._kind = kind
        self._own = _Own(follows=kind.follows)
        self.line.textEdited.connect(lambda text: self.give(self.value_of(text), typed=True))

    def show_value(self, value: Any, context: Context) -> None:
        self._own.take(context)
        super().show_value(value, context)

    def value_of(self, text: str) -> Any:
        return None if self._kind.optional and not text else self._own.typed(text)

    def text_of(self, value: Any) -> str:
        return self._own.read(value or "")

    def _finished(self) -> None:
        """Nothing is left to take when the box is left."""


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


class _Editor(QPlainTextEdit):
    left = Signal()

    def focusOutEvent(self, event: QFocusEvent) -> None:
        super().focusOutEvent(event)
        if event.reason() != Qt.FocusReason.PopupFocusReason:
            self.left.emit()


class BlockBox(Box):
    """Text of more than one line. What stands for something else than text is taken on leaving the box."""

    def __init__(self, hint: str = "", *, live: bool = False) -> None:
        super().__init__()
        self._shown = ""
        self._live = live
        self.editor = _Editor()
        self.editor.setFont(font(CONTROL))
        self.editor.setPlaceholderText(hint)
        self.editor.setTabChangesFocus(True)
        self.editor.setFixedHeight(66)
        self.editor.left.connect(self._left)
        self.editor.textChanged.connect(self._typed)
        self.row.addWidget(self.editor)
        self.setFocusProxy(self.editor)

    def name(self, words: str) -> None:
        super().name(words)
        self.editor.setAccessibleName(words)

    def value_of(self, text: str) -> Any:
        """Return the value that ``text`` stands for; raise ``Refused`` where it stands for none."""
        return text

    def text_of(self, value: Any) -> str:
        """Return what stands in the box for ``value``."""
        return str(value)

    def show_value(self, value: Any, context: Context) -> None:
        del context
        text = self.text_of(value)
        same = text == self._shown or (self._live and self.value_of(self.editor.toPlainText()) == value)
        if not (same and self.editor.hasFocus()) and self.editor.toPlainText() != text:
            with QSignalBlocker(self.editor):
                self.editor.setPlainText(text)
        self._shown = text

    def _typed(self) -> None:
        if self._live:
            self.give(self.value_of(self.editor.toPlainText()), typed=True)

    def _left(self) -> None:
        text = self.editor.toPlainText()
        if self._live or text == self._shown:
            return
        try:
            value = self.value_of(text)
        except Refused as reason:
            self.refused.emit(str(reason))
            return
        self._shown = text
        self.refused.emit("")
        self.give(value)


class TextBox(BlockBox):
    """Text of the coach's own, taken letter by letter; the words that follow the drill are underlined."""

    def __init__(self, hint: str = "", *, follows: bool = True) -> None:
        self._own = _Own(follows=follows)
        super().__init__(hint, live=True)

    def show_value(self, value: Any, context: Context) -> None:
        self._own.take(context)
        super().show_value(value, context)
        self._underline()

    def value_of(self, text: str) -> Any:
        return self._own.typed(text)

    def text_of(self, value: Any) -> str:
        return self._own.read(str(value))

    def _typed(self) -> None:
        super()._typed()
        self._underline()

    def _underline(self) -> None:
        if self._own.words.spans or self.editor.extraSelections():
            underline(self.editor, self._own.words.spans)


class LinesBox(TextBox):
    """A tuple of texts, one a line."""

    def __init__(self, kind: Lines) -> None:
        super().__init__(kind.hint, follows=kind.follows)

    def value_of(self, text: str) -> Any:
        return tuple(line.strip() for line in super().value_of(text).splitlines() if line.strip())

    def text_of(self, value: Any) -> str:
        return super().text_of("\n".join(value))


class TranslationsBox(BlockBox):
    """Texts in other languages: a line "language: text = translation" each."""

    def __init__(self) -> None:
        super().__init__("de: Net, then wide. = Netz, dann weit.")

    def value_of(self, text: str) -> Any:
        made: dict[str, dict[str, str]] = {}
        for line in text.splitlines():
            if not line.strip():
                continue
            language, colon, rest = line.partition(":")
            said, equals, translated = rest.partition("=")
            if not colon or not equals:
                raise Refused("A line each, please: the language, a colon, the text, an equals sign, its translation.")
            made.setdefault(language.strip(), {})[said.strip()] = translated.strip()
        return made

    def text_of(self, value: Any) -> str:
        return "\n".join(f"{lang}: {text} = {said}" for lang, texts in value.items() for text, said in texts.items())
