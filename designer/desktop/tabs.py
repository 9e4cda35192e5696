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
    QPixmap,
    QResizeEvent,
)
from PySide6.QtWidgets import QAbstractButton, QApplication, QWidget

from designer.desktop.controls import IconButton, frame
from designer.desktop.document import Document
from designer.desktop.fonts import BODY, NOTE, font, scaled
from designer.desktop.name_box import NameBox, kept_name, read_name
from designer.desktop.style import field_sheet, look, style
from designer.desktop.timing import GESTURE_REST
from designer.desktop.view import View
from designer.drill.setting import At, setting_at

HEIGHT: Final = 52
PITCH: Final = 232
GAP: Final = 28
ROOM: Final = 120
"""A tab narrower than this has room for its name alone."""
SMALL: Final = QSize(20, 40)
"""The picture on a tab, upright as a court is."""
NO_CHANGES: Final = "nothing is changed yet"
PICTURES_AFTER: Final = 250
"""Milliseconds of rest after which pictures are drawn anew: they are never in the way of a hand."""
SIDE: Final = 14
STEPS: Final = {Qt.Key.Key_Left: -1, Qt.Key.Key_Right: 1}


class ProgressionTab(QAbstractButton):
    """Number, name and what it changes over the one before; a bar of ink under the one in view."""

    renamed = Signal()
    asked = Signal(object)
    dragged = Signal(int)
    """The hand drags it sideways: so many pixels from where it was taken."""
    dropped = Signal()
    """The hand has let it go."""
    left = Signal()
    """The hand has thought better of it: the drag leaves no trace."""
    stepped = Signal(int)
    """An arrow key goes on to the next tab, or back."""

    def __init__(self, progression: str, parent: QWidget, whole: Callable[[str], str]) -> None:
        """``whole`` returns all that a progression changes, in sentences."""
        super().__init__(parent)
        self._whole = whole
        self.progression = progression
        self.number = 1
        self.name = ""
        self.changes = ""
        self.picture: QPixmap | None = None
        self._taken: int | None = None
        self._dragging = False
        self.setCheckable(True)
        self.setAutoExclusive(False)
        self.setCursor(Qt.CursorShape.PointingHandCursor)

    def show_words(self, number: int, name: str, changes: str, *, chosen: bool) -> None:
        """Show other words."""
        self.number, self.name, self.changes = number, name, changes
        self.setChecked(chosen)
        said = f"Progression {number}" + (f", {name}" if name else "") + (f": {changes}" if changes else "")
        self.setAccessibleName(said)
        self.update()

    def event(self, event: QEvent) -> bool:
        if event.type() == QEvent.Type.ToolTip:
            self.setToolTip(self._whole(self.progression))
        return super().event(event)

    def name_left(self) -> int:
        """Return where the name begins, behind the picture and the number."""
        return self._picture_width() + QFontMetrics(font(BODY, bold=True)).horizontalAdvance(str(self.number)) + 8

    def _picture_width(self) -> int:
        """Return how much room the picture takes: none where the tab is narrow."""
        return SMALL.width() + 9 if self.width() >= scaled(ROOM) else 0

    def show_picture(self, picture: QPixmap | None) -> None:
        """Show another picture of the setting."""
        self.picture = picture
        self.update()

    def mousePressEvent(self, event: QMouseEvent) -> None:
        super().mousePressEvent(event)
        if event.button() == Qt.MouseButton.LeftButton:
            self._taken = round(event.globalPosition().x())

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        if self._taken is None or not event.buttons() & Qt.MouseButton.LeftButton:
            super().mouseMoveEvent(event)
            return
        by = round(event.globalPosition().x()) - self._taken
        if self._dragging or abs(by) >= QApplication.startDragDistance():
            self._dragging = True
            self.raise_()
            self.dragged.emit(by)

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        dragging, self._dragging, self._taken = self._dragging, False, None
        super().mouseReleaseEvent(event)
        if dragging:
            self.dropped.emit()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.key() == Qt.Key.Key_Escape and self._dragging:
            self._dragging, self._taken = False, None
            self.setDown(False)
            self.left.emit()
            return
        if event.key() in STEPS:
            self.stepped.emit(STEPS[Qt.Key(event.key())])
            return
        super().keyPressEvent(event)

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
        if self._dragging:
            painter.fillRect(self.rect(), QColor(now.hover))
        aside = self._picture_width()
        if aside and self.picture is not None:
            box = QRect(0, (self.height() - 5 - SMALL.height()) // 2, SMALL.width(), SMALL.height())
            painter.setOpacity(1.0 if on or self.underMouse() else 0.75)
            painter.drawPixmap(box, self.picture)
            painter.setPen(QColor(now.hairline))
            painter.drawRect(box.adjusted(0, 0, -1, -1))
            painter.setOpacity(1.0)
        painter.setPen(QColor(now.ink if on or self.underMouse() else now.soft))
        painter.setFont(font(BODY, bold=True))
        painter.drawText(first.adjusted(aside, 0, 0, 0), middle, str(self.number))
        painter.setFont(font(BODY, bold=on))
        name = QFontMetrics(font(BODY, bold=on)).elidedText(self.name, Qt.TextElideMode.ElideRight, room)
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
            frame(painter, self.rect().adjusted(0, 0, 0, -4), edge=now.ink, fill=None, width=2)


class ProgressionTabs(QWidget):
    """All tabs and the plus behind them. Renaming happens in the tab itself."""

    menu_wanted = Signal(object)
    """The menu of what can be added should open at this global place."""

    named = Signal(str, str)
    reordered = Signal(object)
    """The ids of the progressions in the order they were dragged into."""
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
        self._drawing = QTimer(self)
        self._drawing.setSingleShot(True)
        self._drawing.setInterval(PICTURES_AFTER)
        self._drawing.timeout.connect(self._draw_one)
        self._pictures: dict[str, tuple[object, QPixmap]] = {}
        """By progression: what its picture was drawn from, and the picture."""
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
            told = changes.get(progression.id, "")
            if progression.id in changes and not told:
                told = NO_CHANGES if number > 1 else ""
            tab.show_words(number, read_name(drill, self._view.at, progression.name), told, chosen=chosen)
            known = self._pictures.get(progression.id)
            tab.show_picture(None if known is None else known[1])
        self._place()
        self._drawing.start(PICTURES_AFTER)

    def rename(self) -> None:
        """Put a box over the tab in view, to type its name in."""
        tab = next((tab for tab in self._tabs if tab.isChecked()), None)
        if tab is None or self._document.read_only:
            return
        box = self._box = NameBox(tab.name, self)
        box.setStyleSheet(field_sheet(look()))
        box.setFont(font(BODY, bold=True))
        box.setPlaceholderText("Its name")
        box.setAccessibleName("Name of the progression")
        box.setGeometry(tab.x() + tab.name_left() - 5, 1, tab.width() - tab.name_left() + 5, scaled(26))
        box.selectAll()
        box.show()
        box.setFocus()
        box.over.connect(lambda: self._named(tab.progression))

    def _named(self, progression: str) -> None:
        box, self._box = self._box, None
        if box is None:
            return
        text, typed, held = box.text().strip(), box.isModified(), box.hasFocus()
        box.hide()
        box.deleteLater()
        tab = next((tab for tab in self._tabs if tab.progression == progression), None)
        if held and tab is not None:
            tab.setFocus(Qt.FocusReason.OtherFocusReason)
        if typed:
            self.named.emit(progression, kept_name(self._document.shown, self._view.at, progression, text))

    def _add(self, progression: str) -> None:
        tab = ProgressionTab(progression, self, self._whole_changes)
        tab.clicked.connect(lambda: self._choose(tab))
        tab.renamed.connect(self.rename)
        tab.asked.connect(self.asked)
        tab.dragged.connect(lambda by: self._drag(tab, by))
        tab.dropped.connect(lambda: self._drop(tab))
        tab.left.connect(self._place)
        tab.stepped.connect(lambda by: self._step(tab, by))
        tab.show()
        self._tabs.append(tab)

    # pictures

    def _draw_one(self) -> None:
        """Draw the picture of one tab whose setting is not as it was drawn, and come back for the next."""
        drill = self._document.shown
        if self._document.previewing:
            self._drawing.start(PICTURES_AFTER)
            return
        ratio = self.devicePixelRatioF()
        there = {progression.id for progression in drill.progressions}  # a tab goes a moment after its progression
        for tab in (tab for tab in self._tabs if self.isVisible() and tab.progression in there):
            at = At(tab.progression)
            drawn_from = (setting_at(drill, at), drill.court, drill.jobs, look().name, ratio)
            if tab.progression not in self._pictures or self._pictures[tab.progression][0] != drawn_from:
                from designer.desktop.small_court import small_court

                picture = small_court(drill, at, SMALL, ratio, across=False)
                self._pictures[tab.progression] = (drawn_from, picture)
                tab.show_picture(picture)
                self._drawing.start(0)
                return

    # the order of play by hand

    def _pitch(self) -> int:
        room = self.width() - 2 * SIDE - self.plus.width()
        return min(scaled(PITCH), room // max(1, len(self._tabs)))

    def _drag(self, tab: ProgressionTab, by: int) -> None:
        """Carry ``tab`` with the hand, and let the others make way."""
        if self._document.read_only:
            return
        pitch, own = self._pitch(), self._tabs.index(tab)
        left = SIDE + own * pitch + by
        tab.move(min(max(left, SIDE - 8), SIDE + (len(self._tabs) - 1) * pitch + 8), 0)
        order = self._order(tab)
        for place, other in enumerate(order):
            if other is not tab:
                other.move(SIDE + place * pitch, 0)

    def _order(self, tab: ProgressionTab) -> list[ProgressionTab]:
        """Return the tabs in the order in which they would stand if ``tab`` was let go here."""
        pitch = max(1, self._pitch())
        place = min(max(round((tab.x() - SIDE) / pitch), 0), len(self._tabs) - 1)
        order = [other for other in self._tabs if other is not tab]
        order.insert(place, tab)
        return order

    def _drop(self, tab: ProgressionTab) -> None:
        order = [each.progression for each in self._order(tab)]
        self._place()
        if order != [each.progression for each in self._tabs] and not self._document.read_only:
            self.reordered.emit(order)

    def _step(self, tab: ProgressionTab, by: int) -> None:
        """Go from a tab to its neighbour, with the keyboard."""
        place = self._tabs.index(tab) + by
        if 0 <= place < len(self._tabs):
            self._choose(self._tabs[place])
            self._tabs[place].setFocus(Qt.FocusReason.OtherFocusReason)

    def _choose(self, tab: ProgressionTab) -> None:
        if tab.progression != self._view.at.progression:  # else a press to name it would leave its easier or harder one
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
        pitch = self._pitch()
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
        self._drawing.start(PICTURES_AFTER)
        self.update()

    def paintEvent(self, _: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.fillRect(QRect(0, scaled(HEIGHT) - 1, self.width(), 1), QColor(look().hairline))
