"""Easier, as set, harder: the variations of the progression in view, each with what it changes."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from PySide6.QtCore import QPoint, QPointF, QRect, QRectF, QSize, Qt, QTimer, Signal
from PySide6.QtGui import QColor, QContextMenuEvent, QFontMetrics, QKeyEvent, QMouseEvent, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QAbstractButton, QHBoxLayout, QMenu, QSizePolicy, QWidget

from designer.desktop.controls import frame
from designer.desktop.document import Document
from designer.desktop.fonts import CONTROL, NOTE, font, scaled
from designer.desktop.icons import paint_icon
from designer.desktop.ladder import Degree, degree_of, of_degree, owns
from designer.desktop.style import look, style
from designer.desktop.timing import GESTURE_REST
from designer.desktop.view import View
from designer.drill.drill import Variation
from designer.drill.setting import At

if TYPE_CHECKING:
    from designer.desktop.changes_button import ChangesButton

HEIGHT: Final = 38
NAMES: Final[dict[Degree | None, str]] = {"easier": "Easier", None: "As set", "harder": "Harder", "others": "Other"}
ORDER: Final[tuple[Degree | None, ...]] = ("easier", None, "harder", "others")


LEFT: Final = 18
"""Room for the ring before the name, where letters are of the usual size."""
CHEVRON: Final = 18
"""How wide the place of the chevron is, behind what a variation changes."""


class DegreeButton(QAbstractButton):
    """A radio with its name and what it changes, and a chevron for the others of its degree and for one more.

    Where there is no such variation yet, a plus that offers one.
    """

    asked = Signal(object)
    opened = Signal()
    """The chevron was pressed, or Alt and the down key."""

    def __init__(self, degree: Degree | None, parent: QWidget) -> None:
        super().__init__(parent)
        self.degree = degree
        self.count = 0
        self.changes = ""
        self.name = NAMES[degree]
        self.setCheckable(True)
        self.setCursor(Qt.CursorShape.PointingHandCursor)
        self.setSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Fixed)

    @property
    def empty(self) -> bool:
        """Whether there is no variation of this degree."""
        return self.degree is not None and self.count == 0

    @property
    def has_chevron(self) -> bool:
        """Whether there is a menu behind it: of variations, and of one more."""
        return self.degree is not None and self.count > 0

    def show_words(self, count: int, changes: str, *, chosen: bool) -> None:
        """Show how many variations there are and what the one meant here changes."""
        self.count, self.changes = count, changes
        self.setChecked(chosen)
        said = f"Add {self.name.lower()}" if self.empty else self.name + (f": {changes}" if changes else "")
        self.setAccessibleName(said)
        self.setToolTip("" if self.empty else changes)
        self.updateGeometry()
        self.update()

    def sizeHint(self) -> QSize:
        words = QFontMetrics(font(NOTE)).horizontalAdvance(self.changes)
        name = QFontMetrics(font(CONTROL, bold=True)).horizontalAdvance(self.name)
        return QSize(
            scaled(LEFT) + 2 + name + (10 + words if words else 0) + (CHEVRON if self.has_chevron else 0) + 12,
            scaled(HEIGHT),
        )

    def minimumSizeHint(self) -> QSize:
        name = QFontMetrics(font(CONTROL, bold=True)).horizontalAdvance(self.name)
        return QSize(scaled(LEFT) + 2 + name + 14 + (CHEVRON if self.has_chevron else 0), scaled(HEIGHT))

    def chevron(self) -> QRect:
        """Return where the chevron stands, null where there is none."""
        if not self.has_chevron:
            return QRect()
        wide = QFontMetrics(font(CONTROL, bold=self.isChecked())).horizontalAdvance(self.name)
        words = QFontMetrics(font(NOTE)).horizontalAdvance(self.changes) if self.changes else 0
        return QRect(min(self.width() - 4 - CHEVRON, scaled(LEFT) + 8 + wide + words), 0, CHEVRON, scaled(HEIGHT))

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        if self.isDown() and self.chevron().contains(event.position().toPoint()):
            self.setDown(False)
            self.opened.emit()
            return
        super().mouseReleaseEvent(event)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.key() == Qt.Key.Key_Down and event.modifiers() & Qt.KeyboardModifier.AltModifier:
            self.opened.emit()
            return
        super().keyPressEvent(event)

    def contextMenuEvent(self, event: QContextMenuEvent) -> None:
        self.asked.emit(event.globalPos())

    def paintEvent(self, _: QPaintEvent) -> None:
        now = look()
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        on = self.isChecked()
        middle = scaled(HEIGHT) / 2
        if self.empty:
            side = scaled(12)
            paint_icon(painter, "plus", QRectF(0, middle - side / 2, side, side), now.faint)
        else:
            painter.setPen(QPen(QColor(now.ink if on else now.edge), 1.2))
            painter.setBrush(Qt.BrushStyle.NoBrush)
            centre, ring = QPointF(0.6 + scaled(10.8) / 2, middle), scaled(10.8) / 2
            painter.drawEllipse(centre, ring, ring)
            if on:
                painter.setPen(Qt.PenStyle.NoPen)
                painter.setBrush(QColor(now.ink))
                painter.drawEllipse(centre, ring * 0.56, ring * 0.56)
        face = font(CONTROL, bold=on)
        painter.setFont(face)
        painter.setPen(QColor(now.faint if self.empty else now.ink))
        wide = QFontMetrics(face).horizontalAdvance(self.name)
        line = Qt.AlignmentFlag.AlignVCenter | Qt.AlignmentFlag.AlignLeft
        painter.drawText(QRect(scaled(LEFT), 0, wide + 4, scaled(HEIGHT)), line, self.name)
        end = self.width() - 4
        if self.has_chevron:
            end = self.chevron().left()
            paint_icon(painter, "chevron", QRectF(end + 4, middle - 5, 10, 10), now.soft)
        painter.setFont(font(NOTE))
        painter.setPen(QColor(now.soft))
        left = scaled(LEFT) + wide + 9
        box = QRect(left, 0, max(0, int(end) - left), scaled(HEIGHT))
        words = QFontMetrics(font(NOTE)).elidedText(self.changes, Qt.TextElideMode.ElideRight, box.width() + 2)
        painter.drawText(box, line, words)
        if self.hasFocus():
            frame(painter, self.rect().adjusted(-2, 5, 0, -6), edge=now.ink, fill=None, width=2)


class DegreeRow(QWidget):
    """The row under the tabs."""

    menu_opening = Signal(object, str)
    """The menu of a degree is made: what can be added may be put at its end."""

    asked = Signal(object)

    def __init__(self, document: Document, view: View, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._document, self._view = document, view
        self.setFixedHeight(scaled(HEIGHT))
        self.setAccessibleName("Easier and harder")
        line = QHBoxLayout(self)
        line.setContentsMargins(14, 0, 14, 0)
        line.setSpacing(24)
        self._buttons: dict[Degree | None, DegreeButton] = {}
        for degree in ORDER:
            button = self._buttons[degree] = DegreeButton(degree, self)
            button.clicked.connect(lambda _=False, degree=degree: self._press(degree))
            button.opened.connect(lambda degree=degree: self._open_menu_under(degree))
            button.asked.connect(lambda spot, degree=degree: self._open_menu(degree, spot))
            line.addWidget(button, 0 if degree is None else 1)
        self._line = line
        self._changes: ChangesButton | None = None
        self._later = QTimer(self)
        self._later.setSingleShot(True)
        self._later.timeout.connect(self.refresh)
        document.shown_changed.connect(self._soon)
        view.at_changed.connect(self.refresh)
        style().changed.connect(self._repaint)

    @property
    def changes(self) -> ChangesButton:
        """Return the button at the right end, made when it is first asked for: no window needs it for its first key."""
        if self._changes is None:
            from designer.desktop.changes_button import ChangesButton

            self._changes = ChangesButton(self)
            self._changes.show_count(len(owns(self._document.shown, self._view.at)))
            self._line.addWidget(self._changes)
            QWidget.setTabOrder(self._buttons["others"], self._changes)
        return self._changes

    def button(self, degree: Degree | None) -> DegreeButton:
        """Return the radio of a degree, None for "as set"."""
        return self._buttons[degree]

    def refresh(self, *_: object) -> None:
        """Show the variations of the progression in view."""
        drill, at = self._document.shown, self._view.at
        chosen = degree_of(drill, at)
        for degree, button in self._buttons.items():
            if degree is None:
                button.show_words(1, "", chosen=chosen is None)
                continue
            found = of_degree(drill, at, degree)
            meant = next((each for each in found if each.id == at.variation), found[0] if found else None)
            words = "" if meant is None else self._words(meant)
            button.show_words(len(found), words, chosen=chosen == degree)
            button.setVisible(degree != "others" or bool(found))
        if self._changes is not None:
            self._changes.show_count(len(owns(drill, at)))

    def _words(self, variation: Variation) -> str:
        from designer.wording.changes import short_changes

        changes = short_changes(self._document.shown, At(self._view.at.progression, variation.id))
        return changes or variation.name or "changes nothing yet"

    def _press(self, degree: Degree | None) -> None:
        at = self._view.at
        if degree is None:
            self._view.go_to(At(at.progression))
            self.refresh()
            return
        found = of_degree(self._document.shown, at, degree)
        if len(found) == 1:
            self._view.go_to(At(at.progression, found[0].id))
        else:
            self._open_menu_under(degree)
        self.refresh()

    def menu(self, degree: Degree) -> QMenu:
        """Return the menu of the variations of a degree, with one more to add."""
        from PySide6.QtGui import QActionGroup

        menu = QMenu(self)
        menu.aboutToHide.connect(menu.deleteLater)
        group = QActionGroup(menu)
        for each in of_degree(self._document.shown, self._view.at, degree):
            words = self._words(each)
            action = menu.addAction(f"{each.name}: {words}" if each.name and words != each.name else words)
            action.setCheckable(True)
            action.setChecked(each.id == self._view.at.variation)
            action.triggered.connect(lambda _=False, id=each.id: self._go(id))
            group.addAction(action)
        self.menu_opening.emit(menu, degree)
        return menu

    def _go(self, variation: str) -> None:
        self._view.go_to(At(self._view.at.progression, variation))

    def _open_menu_under(self, degree: Degree | None) -> None:
        if degree is not None:
            button = self._buttons[degree]
            self.menu(degree).popup(button.mapToGlobal(QPoint(0, button.height())))

    def _open_menu(self, degree: Degree | None, spot: QPoint) -> None:
        if degree is not None and self._buttons[degree].count > 1:
            self.menu(degree).popup(spot)
        elif degree is not None and not self._buttons[degree].empty:
            self._go(of_degree(self._document.shown, self._view.at, degree)[0].id)
            self.asked.emit(spot)
        else:
            self.asked.emit(spot)

    def _soon(self, *_: object) -> None:
        self._later.start(GESTURE_REST if self._document.previewing else 0)

    def _repaint(self, *_: object) -> None:
        self.update()

    def paintEvent(self, _: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.fillRect(QRect(0, scaled(HEIGHT) - 1, self.width(), 1), QColor(look().hairline))
