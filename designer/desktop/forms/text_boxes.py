"""The controls of a form for texts: as they are read on the screen, with tokens in the file."""

from __future__ import annotations

from typing import Any, Final

from PySide6.QtCore import QSignalBlocker, Qt, Signal
from PySide6.QtGui import QFocusEvent, QResizeEvent
from PySide6.QtWidgets import QPlainTextEdit

from designer.desktop.controls import has_caret
from designer.desktop.fonts import CONTROL, font
from designer.desktop.forms.box import Box, Refused
from designer.desktop.forms.context import Context
from designer.desktop.forms.fields import Line, Lines
from designer.desktop.forms.typed_boxes import TypedBox
from designer.desktop.own_words import OwnWords, Writing
from designer.desktop.underline import underline

LEAST_LINES: Final = 2
MOST_LINES: Final = 8
"""How many lines of text a box shows without scrolling, at least and at most."""


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


class _Editor(QPlainTextEdit):
    """As high as its lines, within bounds: a short note takes little room and a long one is read without scrolling."""

    left = Signal()

    def __init__(self) -> None:
        super().__init__()
        self.document().setDocumentMargin(1)
        self.textChanged.connect(self.fit)

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self.fit()

    def fit(self) -> None:
        """Take the height of the lines."""
        lines = round(self.document().size().height())
        shown = min(max(lines, LEAST_LINES), MOST_LINES)
        over = Qt.ScrollBarPolicy.ScrollBarAsNeeded if lines > MOST_LINES else Qt.ScrollBarPolicy.ScrollBarAlwaysOff
        self.setVerticalScrollBarPolicy(over)
        self.setFixedHeight(shown * self.fontMetrics().lineSpacing() + 10)

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
        if not (same and has_caret(self.editor)) and self.editor.toPlainText() != text:
            with QSignalBlocker(self.editor):
                self.editor.setPlainText(text)
            self.editor.fit()
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
