"""Text that is written where it is read: the title and the objective of the card."""

from __future__ import annotations

from collections.abc import Callable
from typing import Final

from PySide6.QtCore import QRect, QSignalBlocker, QSize, Qt, Signal
from PySide6.QtGui import QColor, QFocusEvent, QFont, QKeyEvent, QPainter, QPaintEvent, QPalette, QPen, QResizeEvent
from PySide6.QtWidgets import QFrame, QPlainTextEdit, QSizePolicy, QWidget

from designer.desktop.controls import frame
from designer.desktop.lines import broken
from designer.desktop.style import look

SIDE: Final = 14


class PlaceText(QPlainTextEdit):
    """Plain text without a frame, as tall as its lines. ``typed`` carries what stands there after each letter.

    Away from the keyboard it shows ``dressed(text)``: the objective stands in quotation marks.
    """

    typed = Signal(str)

    def __init__(
        self,
        question: str,
        face: QFont,
        leading: int,
        *,
        lines: bool = False,
        balanced: bool = False,
        dressed: Callable[[str], str] = str,
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(parent)
        self._question = question
        self._leading = leading
        self._many = lines
        self._balanced = balanced
        self._dressed = dressed
        self._value = ""
        self.setFont(face)
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setLineWrapMode(QPlainTextEdit.LineWrapMode.WidgetWidth)
        self.setVerticalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setTabChangesFocus(True)
        self.setAccessibleName(question)
        self.document().setDocumentMargin(0)
        self.setViewportMargins(SIDE, 2, SIDE, 2)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.textChanged.connect(self._typed)
        self.colour()

    def colour(self) -> None:
        """Take the colours of the look in force."""
        now = look()
        palette = QPalette(self.palette())
        for role in (QPalette.ColorRole.Base, QPalette.ColorRole.Window):
            palette.setColor(role, QColor(0, 0, 0, 0))
        palette.setColor(QPalette.ColorRole.Text, QColor(now.ink))
        self.setPalette(palette)
        self.viewport().setAutoFillBackground(False)
        self.setAutoFillBackground(False)

    @property
    def value(self) -> str:
        """Return the text itself, undressed."""
        return self._value

    def show_text(self, text: str) -> None:
        """Show ``text`` unless it is what is being typed."""
        if self.hasFocus() and text == self._value:
            return
        self._value = text
        self._put(text if self.hasFocus() else self._worn())

    def set_leading(self, face: QFont, leading: int) -> None:
        """Take another size."""
        self.setFont(face)
        self._leading = leading
        self._fit()

    def sizeHint(self) -> QSize:
        return QSize(300, self._height())

    def minimumSizeHint(self) -> QSize:
        return QSize(120, self._height())

    def focusInEvent(self, event: QFocusEvent) -> None:
        super().focusInEvent(event)
        self._put(self._value)

    def focusOutEvent(self, event: QFocusEvent) -> None:
        super().focusOutEvent(event)
        if event.reason() not in (Qt.FocusReason.PopupFocusReason, Qt.FocusReason.ActiveWindowFocusReason):
            self._put(self._worn())

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter) and not self._many:
            self.focusNextChild()
            return
        if event.key() == Qt.Key.Key_Escape:
            self.clearFocus()
            return
        if event.modifiers() & Qt.KeyboardModifier.ControlModifier and event.key() in (Qt.Key.Key_Z, Qt.Key.Key_Y):
            # The drill's own undo takes back what was typed here.
            event.ignore()
            return
        super().keyPressEvent(event)

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._fit()

    def paintEvent(self, event: QPaintEvent) -> None:
        super().paintEvent(event)
        now = look()
        painter = QPainter(self.viewport())
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        if not self.toPlainText() and not self.hasFocus():
            painter.setFont(self.font())
            painter.setPen(QColor(now.soft))
            metrics = self.fontMetrics()
            painter.drawText(0, metrics.ascent(), self._question)
            start = metrics.horizontalAdvance(self._question) + 8
            pen = QPen(QColor(now.soft), 1.4, Qt.PenStyle.SolidLine, Qt.PenCapStyle.RoundCap)
            if not self.underMouse():
                pen.setDashPattern([0.01, 2.6])
            painter.setPen(pen)
            painter.drawLine(start, metrics.ascent() + 2, self.viewport().width(), metrics.ascent() + 2)

    def paint_focus(self, painter: QPainter, box: QRect) -> None:
        """Paint the ring of the keyboard's focus round ``box``, on the page behind."""
        frame(painter, box, edge=look().ink, fill=None, width=2)

    def _worn(self) -> str:
        return self._dressed(self._value) if self._value else ""

    def _put(self, text: str) -> None:
        if text == self.toPlainText():
            return
        with QSignalBlocker(self):
            self.setPlainText(text)
        self._fit()
        self.viewport().update()

    def _typed(self) -> None:
        self._fit()
        text = self.toPlainText()
        if not self._many:
            text = " ".join(text.splitlines())
        if text != self._value:
            self._value = text
            self.typed.emit(text)

    def _height(self) -> int:
        count = 0
        block = self.document().firstBlock()
        while block.isValid():
            layout = block.layout()
            count += max(1, layout.lineCount())
            block = block.next()
        return round(max(1, count) * self.fontMetrics().lineSpacing()) + 6

    def _balance(self) -> None:
        """Away from the keyboard, take lines of nearly one length: the narrowest text of no more lines."""
        room = self.width() - 2 * SIDE
        wide = room
        if self._balanced and not self.hasFocus() and self.toPlainText():
            text = self.toPlainText()
            count = len(broken(text, self.font(), room))
            low = room // 2
            while count > 1 and low < wide:
                middle = (low + wide) // 2
                if len(broken(text, self.font(), middle)) > count:
                    low = middle + 1
                else:
                    wide = middle
        spare = max(0, room - wide - 4)
        if self.viewportMargins().right() != SIDE + spare:
            self.setViewportMargins(SIDE, 2, SIDE + spare, 2)

    def _fit(self) -> None:
        self._balance()
        if self.height() != self._height():
            self.setFixedHeight(self._height())
            self.updateGeometry()
