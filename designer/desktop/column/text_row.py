"""One text of the coach's own on the card while it is written: a cue, a thing to watch for, a caution."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtCore import QPointF, Qt, Signal
from PySide6.QtGui import QColor, QFocusEvent, QFont, QKeyEvent, QPainter, QTextCursor

from designer.desktop.column.place_text import PlaceText
from designer.desktop.fonts import scaled
from designer.desktop.own_words import Writing
from designer.desktop.style import look

HANG = 14
SIDE = 14


class TextRow(PlaceText):
    """Stands in the place of its sentence, with the caret in it."""

    next_wanted = Signal()
    """Enter: another text after this one."""

    emptied = Signal()
    """Backspace where nothing stands: this text goes."""

    taken_back = Signal()
    """Esc: the text as it was."""

    left = Signal()
    """The keyboard went elsewhere."""

    def __init__(
        self, question: str, face: QFont, leading: int, writing: Callable[[], Writing], *, bullet: bool
    ) -> None:
        super().__init__("", face, leading, writing=writing, hang=HANG if bullet else 0)
        self._bullet = bullet
        self.setPlaceholderText(question)
        self.setAccessibleName(question)
        self.setAccessibleDescription(
            "Enter writes another, Backspace in an empty one takes it away, Escape takes back"
        )

    def begin(self) -> None:
        """Take the keyboard, with the caret at the end."""
        self.setFocus(Qt.FocusReason.OtherFocusReason)
        self.moveCursor(QTextCursor.MoveOperation.End)

    def paint_lead(self, painter: QPainter) -> None:
        """Paint the dot of a list."""
        if self._bullet:
            painter.setPen(Qt.PenStyle.NoPen)
            painter.setBrush(QColor(look().soft))
            painter.drawEllipse(QPointF(SIDE + 4, 3 + scaled(20) / 2), 1.8, 1.8)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        key = event.key()
        if key in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self.next_wanted.emit()
        elif key == Qt.Key.Key_Backspace and not self.toPlainText():
            self.emptied.emit()
        elif key == Qt.Key.Key_Escape:
            self.taken_back.emit()
        else:
            super().keyPressEvent(event)

    def focusOutEvent(self, event: QFocusEvent) -> None:
        super().focusOutEvent(event)
        if event.reason() not in (Qt.FocusReason.PopupFocusReason, Qt.FocusReason.ActiveWindowFocusReason):
            self.left.emit()
