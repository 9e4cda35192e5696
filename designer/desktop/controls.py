"""Small controls in the window's own style, used by forms and bars alike."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any, Final

from PySide6.QtCore import QEvent, QPointF, QRect, QRectF, QSize, Qt, Signal
from PySide6.QtGui import (
    QColor,
    QFontMetrics,
    QKeyEvent,
    QKeySequence,
    QPainter,
    QPaintEvent,
    QPalette,
    QPen,
    QWheelEvent,
)
from PySide6.QtWidgets import (
    QAbstractButton,
    QButtonGroup,
    QComboBox,
    QMenu,
    QSizePolicy,
    QToolButton,
    QVBoxLayout,
    QWidget,
)

from designer.desktop.flow import Flow
from designer.desktop.fonts import CONTROL, font, scaled
from designer.desktop.icons import paint_icon
from designer.desktop.style import look

HEIGHT: Final = 26
"""How high a control stands, in device-independent pixels; never under the 24 that a finger or a poor mouse needs."""
CORNER: Final = 4.0
ALONG: Final = {Qt.Key.Key_Left: -1, Qt.Key.Key_Up: -1, Qt.Key.Key_Right: 1, Qt.Key.Key_Down: 1}
"""The arrow keys along a row of words: Space or Enter takes the word that they come to."""


def left_to_the_drill(event: QEvent) -> bool:
    """Whether ``event`` asks a text box if it wants undo or redo, which it leaves to the drill; it is ignored then."""
    if event.type() != QEvent.Type.ShortcutOverride or not isinstance(event, QKeyEvent):
        return False
    if not (event.matches(QKeySequence.StandardKey.Undo) or event.matches(QKeySequence.StandardKey.Redo)):
        return False
    event.ignore()
    return True


def has_caret(text: QWidget) -> bool:
    """Whether ``text`` has its window's keyboard, also while another window is in front."""
    return text.window().focusWidget() is text


def frame(
    painter: QPainter, box: QRect, *, edge: str, fill: str | None, width: float = 1.0, dashed: bool = False
) -> None:
    """Paint a control's frame just inside ``box``."""
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    pen = QPen(QColor(edge), width)
    if dashed:
        pen.setDashPattern([2.0, 2.0])
    painter.setPen(pen)
    painter.setBrush(QColor(fill) if fill else Qt.BrushStyle.NoBrush)
    half = width / 2
    painter.drawRoundedRect(QRectF(box).adjusted(half, half, -half, -half), CORNER, CORNER)


class DropDown(QComboBox):
    """A drop-down that the wheel leaves alone while a column is scrolled past it."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.setMinimumContentsLength(6)
        self.setSizeAdjustPolicy(QComboBox.SizeAdjustPolicy.AdjustToMinimumContentsLengthWithIcon)

    def sizeHint(self) -> QSize:
        return QSize(max(super().sizeHint().width(), 120), scaled(HEIGHT))

    def minimumSizeHint(self) -> QSize:
        return QSize(72, scaled(HEIGHT))

    def wheelEvent(self, event: QWheelEvent) -> None:
        event.ignore()

    def paintEvent(self, _: QPaintEvent) -> None:
        now = look()
        painter = QPainter(self)
        focus = self.hasFocus()
        frame(painter, self.rect(), edge=now.ink if focus else now.edge, fill=now.panel, width=2 if focus else 1)
        painter.setFont(self.font())
        painter.setPen(QColor(now.ink if self.isEnabled() and self.currentData() is not None else now.soft))
        box = self.rect().adjusted(8, 0, -26, 0)
        text = QFontMetrics(self.font()).elidedText(self.currentText(), Qt.TextElideMode.ElideRight, box.width())
        painter.drawText(box, Qt.AlignmentFlag.AlignVCenter | Qt.AlignmentFlag.AlignLeft, text)
        paint_icon(painter, "chevron", QRectF(self.width() - 21, self.height() / 2 - 6, 12, 12), now.soft)


class Picker(QToolButton):
    """A button that shows what is chosen of many and opens a menu of all that can be."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setObjectName("picker")
        self.setPopupMode(QToolButton.ToolButtonPopupMode.InstantPopup)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.setMenu(QMenu(self))

    def sizeHint(self) -> QSize:
        return QSize(120, scaled(HEIGHT))

    def minimumSizeHint(self) -> QSize:
        return QSize(72, scaled(HEIGHT))

    def paintEvent(self, _: QPaintEvent) -> None:
        now = look()
        painter = QPainter(self)
        focus = self.hasFocus()
        frame(painter, self.rect(), edge=now.ink if focus else now.edge, fill=now.panel, width=2 if focus else 1)
        painter.setFont(self.font())
        painter.setPen(QColor(now.ink))
        box = self.rect().adjusted(8, 0, -26, 0)
        text = QFontMetrics(self.font()).elidedText(self.text(), Qt.TextElideMode.ElideRight, box.width())
        painter.drawText(box, Qt.AlignmentFlag.AlignVCenter | Qt.AlignmentFlag.AlignLeft, text)
        paint_icon(painter, "chevron", QRectF(self.width() - 21, self.height() / 2 - 6, 12, 12), now.soft)


class Segment(QAbstractButton):
    """One of the words of a row of choices. ``usual`` marks the answer that is offered while none is given."""

    stepped = Signal(int)
    """An arrow key goes on to the next word, or back."""

    def __init__(self, words: str, parent: QWidget) -> None:
        super().__init__(parent)
        self.setText(words)
        self.setAccessibleName(words)
        self.setCheckable(True)
        self.setFont(font(CONTROL))
        self.usual = False

    def sizeHint(self) -> QSize:
        return QSize(QFontMetrics(font(CONTROL, bold=True)).horizontalAdvance(self.text()) + 22, scaled(HEIGHT))

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.key() in ALONG:
            self.stepped.emit(ALONG[Qt.Key(event.key())])
        elif event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self.click()
        else:
            super().keyPressEvent(event)

    def mark_usual(self, *, usual: bool) -> None:
        """Offer this answer as the usual one, or no longer."""
        self.usual = usual
        self.setToolTip("the usual answer; press to take it" if usual else "")
        self.setAccessibleDescription("the usual answer, not taken yet" if usual else "")
        self.update()

    def paintEvent(self, _: QPaintEvent) -> None:
        now = look()
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        box = self.rect()
        if self.isChecked():
            frame(painter, box, edge=now.chosen, fill=now.chosen)
        elif self.usual:
            frame(painter, box.adjusted(2, 2, -2, -2), edge=now.highlighter_edge, fill=now.highlighter, dashed=True)
        elif self.underMouse():
            frame(painter, box.adjusted(1, 1, -1, -1), edge=now.hover, fill=now.hover)
        if self.hasFocus():
            frame(
                painter,
                box.adjusted(2, 2, -2, -2),
                edge=now.chosen_word if self.isChecked() else now.ink,
                fill=None,
                width=1.5,
            )
        painter.setFont(font(CONTROL, bold=self.isChecked()))
        painter.setPen(QColor(now.chosen_word if self.isChecked() else now.ink if self.isEnabled() else now.faint))
        painter.drawText(box, Qt.AlignmentFlag.AlignCenter, self.text())


class Segments(QWidget):
    """A framed row of words of which one is chosen, or some where ``many``. Breaks into lines where it must.

    ``chosen`` is emitted with the tuple of values that the user has left chosen.
    """

    chosen = Signal(object)

    def __init__(
        self,
        options: Sequence[tuple[Any, str]],
        *,
        many: bool = False,
        may_be_empty: bool = True,
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(parent)
        self._many = many
        self._may_be_empty = may_be_empty
        self._values = [value for value, _ in options]
        self._group = QButtonGroup(self)
        self._group.setExclusive(False)
        row = Flow(self, gap=0)
        for number, (_, words) in enumerate(options):
            button = Segment(words, self)
            self._group.addButton(button, number)
            button.stepped.connect(lambda by, number=number: self._go(number + by))
            row.addWidget(button)
        self._group.idClicked.connect(self._clicked)
        policy = QSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Fixed)
        policy.setHeightForWidth(True)
        self.setSizePolicy(policy)

    def segments(self) -> list[Segment]:
        """Return the words as controls, in order."""
        return [button for button in self._group.buttons() if isinstance(button, Segment)]

    def show_values(self, values: Sequence[Any], usual: Sequence[Any] = ()) -> None:
        """Show ``values`` as chosen; where there is none, offer ``usual``."""
        for button, value in zip(self.segments(), self._values, strict=True):
            button.setChecked(value in values)
            button.mark_usual(usual=not values and value in usual)

    def _go(self, number: int) -> None:
        """Give the keyboard to a word; round the ends."""
        buttons = self.segments()
        buttons[number % len(buttons)].setFocus(Qt.FocusReason.OtherFocusReason)

    def _clicked(self, number: int) -> None:
        buttons = self.segments()
        if not self._many:
            kept = buttons[number].isChecked() or not self._may_be_empty
            for other, button in enumerate(buttons):
                button.setChecked(other == number and kept)
        self.chosen.emit(tuple(v for v, b in zip(self._values, buttons, strict=True) if b.isChecked()))

    def paintEvent(self, _: QPaintEvent) -> None:
        now = look()
        painter = QPainter(self)
        row = self.layout()
        if isinstance(row, Flow):
            for box in row.lines():
                frame(painter, box, edge=now.edge, fill=now.panel)


class CheckBox(QAbstractButton):
    """A box with a tick and words beside it."""

    def __init__(self, words: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setText(words)
        self.setAccessibleName(words)
        self.setCheckable(True)
        self.setFont(font(CONTROL))
        self.setSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Fixed)

    def sizeHint(self) -> QSize:
        return QSize(QFontMetrics(self.font()).horizontalAdvance(self.text()) + scaled(28), scaled(HEIGHT))

    def paintEvent(self, _: QPaintEvent) -> None:
        now = look()
        painter = QPainter(self)
        side = scaled(16)
        box = QRect(0, (self.height() - side) // 2, side, side)
        edge = now.ink if self.hasFocus() else now.edge
        fill = now.chosen if self.isChecked() else now.panel
        frame(painter, box, edge=edge, fill=fill, width=2 if self.hasFocus() else 1)
        if self.isChecked():
            paint_icon(painter, "tick", QRectF(box).adjusted(2, 2, -2, -2), now.chosen_word)
        painter.setFont(self.font())
        painter.setPen(QColor(now.ink if self.isEnabled() else now.faint))
        words = self.rect().adjusted(scaled(24), 0, 0, 0)
        painter.drawText(words, Qt.AlignmentFlag.AlignVCenter | Qt.AlignmentFlag.AlignLeft, self.text())


class IconButton(QAbstractButton):
    """A small button that shows one of our icons; ``words`` say what it does."""

    def __init__(self, name: str, words: str, parent: QWidget | None = None, size: int = 14) -> None:
        super().__init__(parent)
        self._name = name
        self._icon = scaled(size)
        self.setAccessibleName(words)
        self.setToolTip(words)
        self.setFixedSize(scaled(HEIGHT), scaled(HEIGHT))
        self.setCursor(Qt.CursorShape.PointingHandCursor)

    def show_icon(self, name: str, words: str) -> None:
        """Show another icon with other words."""
        self._name = name
        self.setAccessibleName(words)
        self.setToolTip(words)
        self.update()

    def paintEvent(self, _: QPaintEvent) -> None:
        now = look()
        painter = QPainter(self)
        if self.underMouse() and self.isEnabled():
            frame(painter, self.rect(), edge=now.hover, fill=now.hover)
        if self.hasFocus():
            frame(painter, self.rect(), edge=now.ink, fill=None, width=2)
        half = self._icon / 2
        middle = QPointF(self.rect().center()) + QPointF(0.5, 0.5)
        box = QRectF(middle.x() - half, middle.y() - half, self._icon, self._icon)
        paint_icon(painter, self._name, box, now.soft if self.isEnabled() else now.faint)


class FilledButton(QAbstractButton):
    """The one filled button in view."""

    def __init__(self, words: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setText(words)
        self.setAccessibleName(words)
        self.setFont(font(CONTROL, bold=True))
        self.setCursor(Qt.CursorShape.PointingHandCursor)
        self.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Fixed)

    def sizeHint(self) -> QSize:
        return QSize(QFontMetrics(self.font()).horizontalAdvance(self.text()) + 34, scaled(30))

    def paintEvent(self, _: QPaintEvent) -> None:
        now = look()
        painter = QPainter(self)
        fill = now.soft if self.underMouse() or self.isDown() else now.chosen
        frame(painter, self.rect(), edge=fill, fill=fill)
        if self.hasFocus():
            frame(painter, self.rect().adjusted(2, 2, -2, -2), edge=now.chosen_word, fill=None, width=1.5)
        painter.setFont(self.font())
        painter.setPen(QColor(now.chosen_word))
        painter.drawText(self.rect(), Qt.AlignmentFlag.AlignCenter, self.text())


class Link(QAbstractButton):
    """Quiet words that do something when pressed."""

    def __init__(self, words: str, parent: QWidget | None = None, size: int = CONTROL) -> None:
        super().__init__(parent)
        self.setText(words)
        self.setAccessibleName(words)
        self.setFont(font(size))
        self.setCursor(Qt.CursorShape.PointingHandCursor)
        self.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Fixed)

    def sizeHint(self) -> QSize:
        return QSize(QFontMetrics(self.font()).horizontalAdvance(self.text()) + 12, scaled(HEIGHT))

    def paintEvent(self, _: QPaintEvent) -> None:
        now = look()
        painter = QPainter(self)
        if self.hasFocus():
            frame(painter, self.rect(), edge=now.ink, fill=None, width=2)
        painter.setFont(self.font())
        painter.setPen(QColor(now.ink if self.underMouse() else now.soft))
        words = self.rect().adjusted(6, 0, -6, 0)
        painter.drawText(words, Qt.AlignmentFlag.AlignCenter, self.text())
        line = words.center().y() + QFontMetrics(self.font()).ascent() // 2 + 2
        painter.setPen(QColor(now.ink if self.underMouse() else now.hairline))
        painter.drawLine(words.left(), line, words.right(), line)


def tinted(widget: QWidget, colour: str) -> None:
    """Fill the ground of ``widget`` with ``colour``."""
    widget.setAutoFillBackground(True)
    palette = QPalette(widget.palette())
    palette.setColor(QPalette.ColorRole.Window, QColor(colour))
    widget.setPalette(palette)


def fill(box: DropDown, options: Sequence[tuple[Any, str]], value: Any) -> None:
    """Put ``options`` into a drop-down and show ``value``, which is kept even where it is none of them."""
    known = [each for each, _ in options]
    if value not in known:
        options = [*options, (value, f"{value} (not there)")]
    if [(box.itemData(n), box.itemText(n)) for n in range(box.count())] != list(options):
        box.clear()
        for data, text in options:
            box.addItem(text, data)
    box.setCurrentIndex(next(n for n, (each, _) in enumerate(options) if each == value))


def stacked(widget: QWidget, gap: int = 0) -> QVBoxLayout:
    """Give ``widget`` a layout from top to bottom without margins."""
    layout = QVBoxLayout(widget)
    layout.setContentsMargins(0, 0, 0, 0)
    layout.setSpacing(gap)
    return layout
