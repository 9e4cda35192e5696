"""Text that is written where it is read: the title and the objective of the card."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING, Final

from PySide6.QtCore import QEvent, QPointF, QSignalBlocker, QSize, Qt, Signal
from PySide6.QtGui import (
    QColor,
    QEnterEvent,
    QFocusEvent,
    QFont,
    QKeyEvent,
    QPainter,
    QPaintEvent,
    QPalette,
    QPen,
    QResizeEvent,
)
from PySide6.QtWidgets import QFrame, QPlainTextEdit, QSizePolicy, QWidget

from designer.desktop.controls import frame, has_caret, left_to_the_drill
from designer.desktop.fonts import scaled
from designer.desktop.lines import broken
from designer.desktop.style import look

if TYPE_CHECKING:
    from designer.desktop.own_words import OwnWords, Writing

SIDE: Final = 14
ABOVE: Final = 2


class Cover(QWidget):
    """What is painted over the text and lets every press through: the question while there is none, the focus' ring.

    A widget of its own, for the text's viewport is made by Qt: the bindings would load every kind of widget to find out
    what it is, which takes a tenth of the time until a window is there.
    """

    def __init__(self, text: PlaceText, question: str) -> None:
        super().__init__(text)
        self._text = text
        self._question = question
        self.setAttribute(Qt.WidgetAttribute.WA_TransparentForMouseEvents)

    def paintEvent(self, _: QPaintEvent) -> None:
        now = look()
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        self._text.paint_lead(painter)
        if self._text.hasFocus():
            frame(painter, self.rect().adjusted(6, 0, -6, 0), edge=now.ink, fill=None, width=2)
        elif not self._text.value and self._question:
            metrics = self._text.fontMetrics()
            base = ABOVE + metrics.ascent()
            painter.setFont(self._text.font())
            painter.setPen(QColor(now.soft))
            painter.drawText(QPointF(SIDE, base), self._question)
            start = SIDE + metrics.horizontalAdvance(self._question) + 8
            pen = QPen(QColor(now.soft), 1.4, Qt.PenStyle.SolidLine, Qt.PenCapStyle.RoundCap)
            if not self._text.underMouse():
                pen.setDashPattern([0.01, 2.6])
            painter.setPen(pen)
            painter.drawLine(QPointF(start, base + 2), QPointF(self.width() - SIDE, base + 2))


class PlaceText(QPlainTextEdit):
    """Plain text without a frame, as tall as its lines. ``typed`` carries what is kept of it after each letter.

    Away from the keyboard it shows ``dressed(text)``: the objective stands in quotation marks. With ``writing``, which
    returns what reads and keeps texts, the words behind tokens are underlined while it is written.
    """

    typed = Signal(str)

    def __init__(
        self,
        question: str,
        face: QFont,
        leading: int,
        *,
        balanced: bool = False,
        dressed: Callable[[str], str] = str,
        writing: Callable[[], Writing] | None = None,
        hang: int = 0,
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(parent)
        self._cover = Cover(self, question)
        self._leading = scaled(leading)
        self._balanced = balanced
        self._dressed = dressed
        self._writing = writing
        self._left = SIDE + hang
        self._text = ""
        self._words: OwnWords | None = None
        """The text with its tokens, None where it has none: no window needs to know of them to take its first key."""
        self._underlined = False
        self.setFont(face)
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setLineWrapMode(QPlainTextEdit.LineWrapMode.WidgetWidth)
        self.setVerticalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setTabChangesFocus(True)
        self.setAccessibleName(question)
        self.document().setDocumentMargin(0)
        self.setViewportMargins(self._left, ABOVE, SIDE, ABOVE)
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
        self.setAutoFillBackground(False)
        self._cover.update()

    @property
    def value(self) -> str:
        """Return the text as it is kept."""
        return self._text if self._words is None else self._words.kept

    def show_text(self, text: str) -> None:
        """Show the kept ``text`` unless it is what is being typed."""
        if has_caret(self) and text == self.value:
            return
        self._words = None if self._writing is None or "{" not in text else self._writing().read(text)
        self._text = text if self._words is None else self._words.text
        self._put(self._text if has_caret(self) else self._worn())
        self._underline()

    def paint_lead(self, painter: QPainter) -> None:
        """Paint what stands before the text: nothing here."""

    def set_leading(self, face: QFont, leading: int) -> None:
        """Take another size."""
        self.setFont(face)
        self._leading = scaled(leading)
        self._fit()

    def sizeHint(self) -> QSize:
        return QSize(300, self._height())

    def minimumSizeHint(self) -> QSize:
        return QSize(120, self._height())

    def focusInEvent(self, event: QFocusEvent) -> None:
        super().focusInEvent(event)
        self._put(self._text)
        self._underline()
        self._cover.update()

    def focusOutEvent(self, event: QFocusEvent) -> None:
        super().focusOutEvent(event)
        if event.reason() not in (Qt.FocusReason.PopupFocusReason, Qt.FocusReason.ActiveWindowFocusReason):
            self._put(self._worn())
        self._underline()
        self._cover.update()

    def enterEvent(self, event: QEnterEvent) -> None:
        super().enterEvent(event)
        self._cover.update()

    def leaveEvent(self, event: QEvent) -> None:
        super().leaveEvent(event)
        self._cover.update()

    def event(self, event: QEvent) -> bool:
        """Leave undo and redo to the drill: its own steps take back what was typed here."""
        return False if left_to_the_drill(event) else super().event(event)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self.focusNextChild()
            return
        if event.key() == Qt.Key.Key_Escape:
            self.clearFocus()
            return
        super().keyPressEvent(event)

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._fit()

    def _worn(self) -> str:
        return self._dressed(self._text) if self._text else ""

    def _put(self, text: str) -> None:
        if text == self.toPlainText():
            return
        at = self.textCursor().position()
        with QSignalBlocker(self):
            self.setPlainText(text)
        if has_caret(self):
            cursor = self.textCursor()
            cursor.setPosition(min(at, len(text)))
            self.setTextCursor(cursor)
        self._fit()
        self._cover.update()

    def _typed(self) -> None:
        self._fit()
        text = " ".join(self.toPlainText().splitlines())
        if text != self._text:
            if self._writing is not None:
                from designer.desktop.own_words import OwnWords

                self._words = self._writing().typed(text, self._words or OwnWords(self._text))
            self._text = text
            self._underline()
            self.typed.emit(self.value)

    def _underline(self) -> None:
        """Underline the words that follow the drill, while the text is written."""
        spans = () if self._words is None or not self.hasFocus() else self._words.spans
        if spans or self._underlined:
            from designer.desktop.underline import underline

            self._underlined = bool(spans)
            underline(self, spans)

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
        room = self.width() - self._left - SIDE
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
            self.setViewportMargins(self._left, ABOVE, SIDE + spare, ABOVE)

    def _fit(self) -> None:
        self._cover.resize(self.size())
        self._balance()
        if self.height() != self._height():
            self.setFixedHeight(self._height())
            self.updateGeometry()
