"""The words of a text that follow the drill, underlined in dots while they are written."""

from __future__ import annotations

from collections.abc import Iterable

from PySide6.QtGui import QColor, QTextCharFormat, QTextCursor
from PySide6.QtWidgets import QPlainTextEdit, QTextEdit

from designer.desktop.own_words import Span
from designer.desktop.style import look


def underline(editor: QPlainTextEdit, spans: Iterable[Span]) -> None:
    """Underline ``spans`` of what stands in ``editor``, and nothing else."""
    marked = []
    for span in spans:
        selection = QTextEdit.ExtraSelection()
        cursor = QTextCursor(editor.document())
        cursor.setPosition(span.start)
        cursor.setPosition(span.end, QTextCursor.MoveMode.KeepAnchor)
        selection.cursor = cursor
        shape = QTextCharFormat()
        shape.setUnderlineStyle(QTextCharFormat.UnderlineStyle.DashUnderline)
        shape.setUnderlineColor(QColor(look().highlighter_edge))
        shape.setBackground(QColor(look().highlighter))
        selection.format = shape
        marked.append(selection)
    editor.setExtraSelections(marked)
