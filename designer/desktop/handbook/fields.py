"""The boxes of a handbook's forms: each shows a value and tells when the user has given another."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from datetime import date
from typing import Any, Final, TypeVar

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QFocusEvent
from PySide6.QtWidgets import QFormLayout, QLabel, QLineEdit, QPlainTextEdit, QScrollArea, QVBoxLayout, QWidget

from designer.desktop.controls import CheckBox, DropDown, fill, tinted
from designer.desktop.fonts import CONTROL, NOTE, font, scaled
from designer.desktop.style import field_sheet, look, scroll_bar_sheet, style

Give = Callable[[Any], None]


class TextLine(QLineEdit):
    """One line of text; ``given`` carries it when it is left or Enter is pressed, where it differs."""

    given = Signal(str)

    def __init__(self, name: str, hint: str = "") -> None:
        super().__init__()
        self._shown = ""
        self.setAccessibleName(name)
        self.setPlaceholderText(hint)
        self.setFont(font(CONTROL))
        self.editingFinished.connect(self._finish)

    def show_value(self, text: str) -> None:
        """Show ``text``."""
        self._shown = text
        if text != self.text():
            self.setText(text)
            self.setCursorPosition(0)

    def _finish(self) -> None:
        if self.text() != self._shown:
            self._shown = self.text()
            self.given.emit(self._shown)


class TextBlock(QPlainTextEdit):
    """Several lines of text; ``given`` carries them when the box is left, where they differ."""

    given = Signal(str)

    def __init__(self, name: str, hint: str = "", lines: int = 3) -> None:
        super().__init__()
        self._shown = ""
        self.setAccessibleName(name)
        self.setPlaceholderText(hint)
        self.setFont(font(CONTROL))
        self.setTabChangesFocus(True)
        self.setFixedHeight(scaled(12 + 19 * lines))

    def show_value(self, text: str) -> None:
        """Show ``text``."""
        self._shown = text
        if text != self.toPlainText():
            self.setPlainText(text)

    def focusOutEvent(self, event: QFocusEvent) -> None:
        super().focusOutEvent(event)
        self.finish()

    def finish(self) -> None:
        """Give what stands in the box, where it differs from what was shown."""
        text = self.toPlainText()
        if text != self._shown:
            self._shown = text
            self.given.emit(text)


Box = TypeVar("Box", TextLine, TextBlock)


class Form(QScrollArea):
    """Labelled boxes one under another, in groups with a heading. ``refused`` carries why a value was not taken."""

    refused = Signal(str)

    def __init__(self, name: str) -> None:
        super().__init__()
        self.setWidgetResizable(True)
        self.setFrameShape(QScrollArea.Shape.NoFrame)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setAccessibleName(name)
        self._inside = QWidget()
        self._column = QVBoxLayout(self._inside)
        self._column.setContentsMargins(24, 16, 24, 24)
        self._column.setSpacing(8)
        self._rows: QFormLayout | None = None
        self._shown: list[tuple[QWidget, Callable[[Any], Any]]] = []
        self.setWidget(self._inside)
        style().changed.connect(self._take_look)
        self._take_look()

    def heading(self, words: str) -> None:
        """Begin a group of boxes."""
        label = QLabel(words)
        label.setFont(font(CONTROL, bold=True))
        label.setContentsMargins(0, 8 if self._rows else 0, 0, 0)
        self._column.addWidget(label)
        self._rows = QFormLayout()
        self._rows.setFieldGrowthPolicy(QFormLayout.FieldGrowthPolicy.AllNonFixedFieldsGrow)
        self._rows.setLabelAlignment(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignTop)
        self._rows.setHorizontalSpacing(12)
        self._rows.setVerticalSpacing(7)
        self._column.addLayout(self._rows)

    def line(self, words: str, value: Callable[[Any], str], give: Give, hint: str = "") -> TextLine:
        """Add a line of text that shows ``value`` of the record and gives what is typed to ``give``."""
        box = TextLine(words, hint)
        box.given.connect(lambda text: self._give(give, text))
        return self._add(words, box, value)

    def block(self, words: str, value: Callable[[Any], str], give: Give, hint: str = "", lines: int = 3) -> TextBlock:
        """Add several lines of text."""
        box = TextBlock(words, hint, lines)
        box.given.connect(lambda text: self._give(give, text))
        return self._add(words, box, value)

    def choice(
        self, words: str, options: Sequence[tuple[Any, str]], value: Callable[[Any], Any], give: Give
    ) -> DropDown:
        """Add a drop-down of ``options`` (value, words)."""
        box = DropDown()
        box.setAccessibleName(words)
        box.setFont(font(CONTROL))
        fill(box, options, options[0][0])
        box.activated.connect(lambda _: self._give(give, box.currentData()))
        self._rows_here().addRow(self._label(words), box)
        self._shown.append((box, lambda record: fill(box, options, value(record))))
        return box

    def tick(self, words: str, value: Callable[[Any], bool], give: Give) -> CheckBox:
        """Add a box to tick."""
        box = CheckBox(words)
        box.clicked.connect(lambda on: self._give(give, on))
        self._rows_here().addRow("", box)
        self._shown.append((box, lambda record: box.setChecked(value(record))))
        return box

    def note(self, words: str = "") -> QLabel:
        """Add a line of small words, and return it."""
        label = QLabel(words)
        label.setFont(font(NOTE))
        label.setWordWrap(True)
        label.setTextFormat(Qt.TextFormat.PlainText)
        self._column.addWidget(label)
        return label

    def add(self, widget: QWidget) -> None:
        """Add a widget of the whole width."""
        self._column.addWidget(widget)

    def end(self) -> None:
        """Leave the rest of the height empty."""
        self._column.addStretch(1)

    def show_record(self, record: Any) -> None:
        """Show the values of ``record`` in every box."""
        for _, show in self._shown:
            show(record)

    def finish(self) -> None:
        """Give what stands in boxes that have not been left yet."""
        for box, _ in self._shown:
            if isinstance(box, TextBlock):
                box.finish()
            elif isinstance(box, TextLine):
                box.editingFinished.emit()

    def _add(self, words: str, box: Box, value: Callable[[Any], str]) -> Box:
        self._rows_here().addRow(self._label(words), box)
        self._shown.append((box, lambda record: box.show_value(value(record))))
        return box

    def _rows_here(self) -> QFormLayout:
        assert self._rows is not None, "a heading comes first"
        return self._rows

    def _label(self, words: str) -> QLabel:
        label = QLabel(words)
        label.setFont(font(CONTROL))
        label.setFixedWidth(scaled(104))
        label.setWordWrap(True)
        label.setContentsMargins(0, 4, 0, 0)
        return label

    def _give(self, give: Give, value: Any) -> None:
        try:
            give(value)
        except ValueError as reason:
            self.refused.emit(_sentence(reason))

    def _take_look(self, *_: object) -> None:
        tinted(self.viewport(), look().panel)
        tinted(self._inside, look().panel)
        self.setStyleSheet(field_sheet(look()))
        self.verticalScrollBar().setStyleSheet(scroll_bar_sheet(look()))


_EXPECTED: Final = "That cannot be taken here."


def _sentence(reason: ValueError) -> str:
    """Return why a value was refused, never the validator's own text."""
    return str(reason) if type(reason) is ValueError else _EXPECTED


def date_or_none(text: str) -> date | None:
    """Return the date in ``text``, None for none. Raises ``ValueError`` with a sentence."""
    if not text.strip():
        return None
    try:
        return date.fromisoformat(text.strip())
    except ValueError:
        raise ValueError(f"{text!r} is no date; write it as 2026-11-25.") from None


def pairs(text: str, sign: str) -> dict[str, str]:
    """Return {word: other} from lines "word = other". Raises ``ValueError`` with a sentence."""
    found: dict[str, str] = {}
    for line in filter(str.strip, text.splitlines()):
        word, between, other = (part.strip() for part in line.partition(sign))
        if not between or not word or not other:
            raise ValueError(f"“{line.strip()}”: write it as “word {sign} words”, a line each.")
        found[word] = other
    return found
