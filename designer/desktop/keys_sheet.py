"""The sheet of keys: what each letter and each other key does on the court, in two columns that scroll."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Final

from PySide6.QtCore import QSize, Qt
from PySide6.QtWidgets import QFrame, QGridLayout, QHBoxLayout, QLabel, QScrollArea, QVBoxLayout, QWidget

from designer.desktop.canvas.keys import LETTERS, OTHER_KEYS
from designer.desktop.controls import FilledButton, tinted
from designer.desktop.dialog import Dialog
from designer.desktop.fonts import CONTROL, font, scaled
from designer.desktop.style import look, scroll_bar_sheet

WIDTH: Final = 820
KEY: Final = 120
"""Pixels for the longer names of keys, which break into lines there."""
ROUND: Final = 60
"""Pixels of the screen that are left free above and below, for the title of the window."""


class KeysSheet(Dialog):
    """The sheet. It is never taller than the screen; its button is always in sight."""

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.setWindowTitle("Keys on the court")
        tinted(self, look().window)
        whole = QVBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        whole.setSpacing(0)
        page = QWidget()
        tinted(page, look().window)
        columns = QHBoxLayout(page)
        columns.setContentsMargins(28, 20, 16, 16)
        columns.setSpacing(36)
        letters = [(use.letter, use.name) for use in LETTERS]
        columns.addLayout(self._column("Letters", letters, scaled(28)))
        columns.addLayout(self._column("Other keys on the court", OTHER_KEYS, scaled(KEY)), 1)
        self.table = QScrollArea()
        self.table.setFrameShape(QFrame.Shape.NoFrame)
        self.table.setWidgetResizable(True)
        self.table.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.table.verticalScrollBar().setStyleSheet(scroll_bar_sheet(look()))
        self.table.setAccessibleName("Keys")
        self.table.setWidget(page)
        whole.addWidget(self.table, 1)
        self.close_button = FilledButton("Close")
        self.close_button.clicked.connect(self.close)
        foot = QHBoxLayout()
        foot.setContentsMargins(28, 12, 28, 16)
        foot.addWidget(self.close_button, 0, Qt.AlignmentFlag.AlignRight)
        whole.addLayout(foot)
        width = scaled(WIDTH)
        room = parent.screen().availableSize() - QSize(0, 2 * ROUND)
        height = page.layout().totalHeightForWidth(width) + foot.sizeHint().height()  # type: ignore[union-attr]
        self.resize(QSize(width, height + 2).boundedTo(room))
        self.close_button.setFocus()

    def _column(self, heading: str, keys: Iterable[tuple[str, str]], room: int) -> QGridLayout:
        grid = QGridLayout()
        grid.setHorizontalSpacing(14)
        grid.setVerticalSpacing(7)
        grid.setColumnStretch(1, 1)
        grid.setColumnMinimumWidth(0, room)
        head = self._label(heading, bold=True)
        head.setStyleSheet(f"color: {look().soft};")
        grid.addWidget(head, 0, 0, 1, 2)
        for row, (key, words) in enumerate(keys, 1):
            name = self._label(key, bold=True)
            name.setMaximumWidth(room)
            grid.addWidget(name, row, 0, Qt.AlignmentFlag.AlignTop)
            grid.addWidget(self._label(words), row, 1, Qt.AlignmentFlag.AlignTop)
        grid.setRowStretch(grid.rowCount(), 1)
        return grid

    def _label(self, words: str, *, bold: bool = False) -> QLabel:
        label = QLabel(words, self)
        label.setTextFormat(Qt.TextFormat.PlainText)
        label.setFont(font(CONTROL, bold=bold))
        label.setWordWrap(True)
        return label
