"""The box that stands over a tab while it is named, and how a name is read and kept."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QFocusEvent, QKeyEvent
from PySide6.QtWidgets import QLineEdit

from designer.drill.drill import Drill
from designer.drill.setting import At


def read_name(drill: Drill, at: At, name: str) -> str:
    """Return the name of a progression as it is read: people and sides in it are kept as tokens."""
    if "{" not in name:
        return name
    from designer.desktop.own_words import Writing

    return Writing(drill, at).read(name).text


def kept_name(drill: Drill, at: At, progression: str, typed: str) -> str:
    """Return a name that was ``typed`` for a progression as it is kept."""
    from designer.desktop.own_words import Writing

    writing = Writing(drill, at)
    before = next((each.name for each in drill.progressions if each.id == progression), "")
    return writing.typed(typed, writing.read(before)).kept


class NameBox(QLineEdit):
    """A line for the name; Esc leaves the name as it was. ``over`` when it is done with, whatever was typed or not."""

    over = Signal()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.key() == Qt.Key.Key_Escape:
            self.setModified(False)
            self.over.emit()
        elif event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self.over.emit()
        else:
            super().keyPressEvent(event)

    def focusOutEvent(self, event: QFocusEvent) -> None:
        super().focusOutEvent(event)
        if event.reason() not in (Qt.FocusReason.PopupFocusReason, Qt.FocusReason.ActiveWindowFocusReason):
            self.over.emit()
