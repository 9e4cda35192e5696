"""A box over a window, which gives the keyboard back when it closes."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication, QDialog, QWidget


class Dialog(QDialog):
    """A box that is deleted when it closes."""

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)

    def done(self, result: int) -> None:
        """Close, and let the keyboard be where it was before: not every system sends it back by itself."""
        # Not kept from the beginning: a box that holds its window may be the last that does, and end it while it is deleted.
        over = self.parentWidget()
        super().done(result)
        back = QApplication.activeModalWidget() or (over and over.window())
        if back and back.isVisible():
            back.activateWindow()
