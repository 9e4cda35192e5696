"""The box that stands over a tab while it is named."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QLineEdit


class NameBox(QLineEdit):
    """A line for the name; Esc leaves the name as it was."""

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.key() == Qt.Key.Key_Escape:
            self.setModified(False)
            self.clearFocus()
            return
        super().keyPressEvent(event)
