"""The progressions as plain tabs over the court, in the order of play."""

from __future__ import annotations

from collections.abc import Callable
from typing import Final

from PySide6.QtCore import QEvent, QRect, QSize, Qt, QTimer, Signal
from PySide6.QtGui import (
    QColor,
    QContextMenuEvent,
    QFontMetrics,
    QKeyEvent,
    QMouseEvent,
    QPainter,
    QPaintEvent,
    QResizeEvent,
)
from PySide6.QtWidgets import QAbstractButton, QLineEdit, QWidget

from designer.desktop.controls import IconButton, frame
from designer.desktop.document import Document
from designer.desktop.fonts import BODY, NOTE, font, scaled
from designer.desktop.style import field_sheet, look, style
from designer.desktop.timing import GESTURE_REST
from designer.desktop.view import View
from designer.drill.setting import At

HEIGHT: Final = 52
PITCH: Final = 232
GAP: Final = 28
SIDE: Final = 14


class ProgressionTab(QAbstractButton):
    """Number, name and what it changes over the one before; a bar of ink under the one in view."""

    renamed = Signal()
    asked = Signal(object)

    def __init__(self, progression: str, parent: QWidget, whole: Callable[[str], str]) -> None:
        """``whole`` returns all that a progression changes, in sentences."""
        super().__init__(parent)
        self._whole = whole
        self.progression = progression
        self.number = 1
        self.name = ""
        self.changes = ""
        self.setCheckable(True)
        self.setAutoExclusive(False)
        self.setCursor(Qt.CursorShape.PointingHandCursor)

    def show_words(self, number: int, name: str, changes: str, *, chosen: bool) -> None:
        """Show other words."""
        self.number, self.name, self.changes = number, name, changes
        self.setChecked(chosen)
        said = f"Progression {number}, {name or 'no name yet'}" + (f": {changes}" if changes else "")
        self.setAccessibleName(said)
        self.update()

    def event(self, event: QEvent) -> bool:
        if event.type() == QEvent.Type.ToolTip:
            self.setToolTip(self._whole(self.progression))
        return super().event(event)

    def name_left(self) -> int:
        """Return where the name begins, behind the number."""
        return QFontMetrics(font(BODY, bold=True)).horizontalAdvance(str(self.number)) + 8

    def sizeHint(self) -> QSize:
        return QSize(scaled(PITCH) - GAP, scaled(HEIGHT))

    def mouseDoubleClickEvent(self, _: QMouseEvent) -> None:
        self.renamed.emit()

    def contextMenuEvent(self, event: QContextMenuEvent) -> None:
        self.click()
        self.asked.emit(event.globalPos())

    def paintEvent(self, _: QPaintEvent) -> None:
        now = look()
        painter = QPainter(self)
        on = self.isChecked()
        left = self.name_left()
        room = self.width() - left
        first, second = QRect(0, scaled(5), self.width(), scaled(22)), QRect(left, scaled(26), room, scaled(18))
        middle = Qt.AlignmentFlag.AlignVCenter | Qt.AlignmentFlag.AlignLeft
        painter.setPen(QColor(now.ink if on or self.underMouse() else now.soft))
        painter.setFont(font(BODY, bold=True))
        painter.drawText(first, middle, str(self.number))
        painter.setFont(font(BODY, bold=on))
        name = QFontMetrics(font(BODY, bold=on)).elidedText(
            self.name or "no name yet", Qt.TextElideMode.ElideRight, room
        )
        painter.drawText(first.adjusted(left, 0, 0, 0), middle, name)
        painter.setFont(font(NOTE))
        painter.setPen(QColor(now.soft if on else now.faint))
        painter.drawText(
            second,
            middle,
            QFontMetrics(font(NOTE)).elidedText(self.changes, Qt.TextElideMode.ElideRight, room),
        )
        if on:
            painter.fillRect(QRect(0, scaled(HEIGHT) - 4, self.width(), 3), QColor(now.ink))
        if self.hasFocus():
            frame(painter, self.rect().adjusted(-1, 2, 0, -5), edge=now.ink, fill=None, width=2)


class NameBox(QLineEdit):
    """The box that stands over a tab while it is named."""

    left = Signal()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.key() == Qt.Key.Key_Escape:
            self.setModified(False)
            self.clearFocus()
            return
        super().keyPressEvent(event)


class ProgressionTabs(QWidget):
    """All tabs and the plus behind them. Renaming happens in the tab itself."""

    menu_wanted = Signal(object)
    """The menu of what can be added should open at this global place."""

    named = Signal(str, str)
    asked = Signal(object)

    def __init__(self, document: Document, view: View, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._document, self._view = document, view
        self._tabs: list[ProgressionTab] = []
        self._box: NameBox | None = None
        self.setFixedHeight(scaled(HEIGHT))
        self.setAccessibleName("Progressions")
        self.plus = IconButton("plus", "Add a progression", self, size=14)
        self.plus.clicked.connect(lambda: self.menu_wanted.emit(self.plus.mapToGlobal(self.plus.rect().bottomLeft())))
        self._later = QTimer(self)
        self._later.setSingleShot(True)
        self._later.timeout.connect(self.refresh)
        document.shown_changed.connect(self._soon)
        view.at_changed.connect(self._show_chosen)
        style().changed.connect(self._repaint)
        self._show_tabs({})

    def tabs(self) -> tuple[ProgressionTab, ...]:
        """Return the tabs in the order of play."""
        return tuple(self._tabs)

    def refresh(self) -> None:
        """Show the progressions of the drill and what each changes."""
        from designer.wording.changes import short_changes

        drill = self._document.shown
        self._show_tabs({each.id: short_changes(drill, At(each.id)) for each in drill.progressions})

    def _whole_changes(self, progression: str) -> str:
        from designer.wording.changes import changes_in_words

        return "\n".join(sentence.text for sentence in changes_in_words(self._document.shown, At(progression)))

    def _show_tabs(self, changes: dict[str, str]) -> None:
        drill = self._document.shown
        while len(self._tabs) > len(drill.progressions):
            gone = self._tabs.pop()
            gone.hide()
            gone.deleteLater()
        for number, progression in enumerate(drill.progressions, 1):
            if number > len(self._tabs):
                self._add(progression.id)
            tab = self._tabs[number - 1]
            tab.progression = progression.id
            chosen = progression.id == self._view.at.progression
            tab.show_words(number, progression.name, changes.get(progression.id, ""), chosen=chosen)
        self._place()

    def rename(self) -> None:
        """Put a box over the tab in view, to type its name in."""
        tab = next((tab for tab in self._tabs if tab.isChecked()), None)
        if tab is None or self._document.read_only:
            return
        box = self._box = NameBox(tab.name, self)
        box.setStyleSheet(field_sheet(look()))
        box.setFont(font(BODY, bold=True))
        box.setPlaceholderText("Name this progression")
        box.setAccessibleName("Name of the progression")
        box.setGeometry(tab.x() + tab.name_left() - 8, 4, tab.width() - tab.name_left() + 8, scaled(28))
        box.selectAll()
        box.show()
        box.setFocus()
        box.editingFinished.connect(lambda: self._named(tab.progression))

    def _named(self, progression: str) -> None:
        box, self._box = self._box, None
        if box is None:
            return
        text, typed = box.text().strip(), box.isModified()
        box.hide()
        box.deleteLater()
        if typed:
            self.named.emit(progression, text)

    def _add(self, progression: str) -> None:
        tab = ProgressionTab(progression, self, self._whole_changes)
        tab.clicked.connect(lambda: self._choose(tab))
        tab.renamed.connect(self.rename)
        tab.asked.connect(self.asked)
        tab.show()
        self._tabs.append(tab)

    def _choose(self, tab: ProgressionTab) -> None:
        self._view.go_to(At(tab.progression))
        self._show_chosen()

    def _show_chosen(self, *_: object) -> None:
        for tab in self._tabs:
            tab.setChecked(tab.progression == self._view.at.progression)
            tab.update()

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._place()

    def _place(self) -> None:
        room = self.width() - 2 * SIDE - self.plus.width()
        pitch = min(scaled(PITCH), room // max(1, len(self._tabs)))
        gap = GAP if pitch == scaled(PITCH) else 12
        for number, tab in enumerate(self._tabs):
            tab.setGeometry(SIDE + number * pitch, 0, max(40, pitch - gap), scaled(HEIGHT))
        self.plus.move(SIDE + len(self._tabs) * pitch, 10)
        before: QWidget = self
        for tab in self._tabs:
            QWidget.setTabOrder(before, tab)
            before = tab
        QWidget.setTabOrder(before, self.plus)

    def _soon(self, *_: object) -> None:
        self._later.start(GESTURE_REST if self._document.previewing else 0)

    def _repaint(self, *_: object) -> None:
        self.update()

    def paintEvent(self, _: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.fillRect(QRect(0, scaled(HEIGHT) - 1, self.width(), 1), QColor(look().hairline))
