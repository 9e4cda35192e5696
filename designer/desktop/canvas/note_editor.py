"""A note of the drawing while it is written: the caret in its words, where they stand on the court."""

from __future__ import annotations

from typing import Final

from PySide6.QtCore import QEvent, QPoint, QPointF, QRectF, Qt, QTimer, Signal
from PySide6.QtGui import QFocusEvent, QKeyEvent, QPainter, QPaintEvent, QResizeEvent, QTextCursor
from PySide6.QtWidgets import QPlainTextEdit, QWidget

from designer.desktop.bursts import Bursts
from designer.desktop.canvas.bench import Bench
from designer.desktop.canvas.placing import NEW_NOTE
from designer.desktop.controls import frame, left_to_the_drill
from designer.desktop.fonts import CONTROL, font
from designer.desktop.own_words import OwnWords, Writing
from designer.desktop.style import look
from designer.desktop.underline import underline
from designer.drill import edits
from designer.drill.items import Note

WIDTH: Final = 190
AROUND: Final = 6


class NoteEditor(QPlainTextEdit):
    """Writes the note ``id`` letter by letter, a go of typing one step. Enter ends it, Esc takes back; none is left empty."""

    closed = Signal(bool)
    """It is over; whether it had the keyboard until then."""

    def __init__(self, bench: Bench, bursts: Bursts, id: str, parent: QWidget) -> None:
        super().__init__(parent)
        self._bench, self._bursts, self._id = bench, bursts, id
        self._words = OwnWords()
        self._begun = bench.document.stack.index()
        self._over = False
        self._centre = QPointF()
        self._ring = _Ring(self)
        self._bursts.end()
        self.setFont(font(CONTROL))
        self.setAccessibleName("Note on the court")
        self.setAccessibleDescription("Enter ends it, Shift and Enter begins a line, Escape takes back")
        self.setPlaceholderText("What is to be noted here?")
        self.setTabChangesFocus(True)
        self.setVerticalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setStyleSheet(f"QPlainTextEdit {{ background: {look().panel}; color: {look().ink}; border: none; }}")
        self.document().setDocumentMargin(AROUND)
        self.setFixedWidth(WIDTH)
        self._show()
        self.textChanged.connect(self._typed)
        bench.document.changed.connect(self._follow)

    @property
    def _note(self) -> Note | None:
        found = self._bench.view.setting.items.get(self._id)
        return found if isinstance(found, Note) else None

    def stand_at(self, box: QRectF) -> None:
        """Stand over the middle of ``box``, in pixels of the parent, and take the keyboard; a note that is new is chosen whole."""
        self._centre = box.center()
        self._fit()
        self.show()
        self.raise_()
        self.setFocus(Qt.FocusReason.OtherFocusReason)
        if self.toPlainText() == NEW_NOTE:
            self.selectAll()
        else:
            self.moveCursor(QTextCursor.MoveOperation.End)

    def finish(self) -> None:
        """End it; a note in which nothing stands goes."""
        if self._over:
            return
        self._over = True
        held = self.hasFocus()
        self._bench.document.changed.disconnect(self._follow)
        note = self._note
        if note is not None and not note.text.strip():
            drill = edits.delete(self._bench.document.drill, self._bench.view.at, [self._id])
            self._bench.document.perform("Delete the note", drill)
        self.hide()
        self.deleteLater()
        self.closed.emit(held)

    def event(self, event: QEvent) -> bool:
        """Leave undo and redo to the drill."""
        return False if left_to_the_drill(event) else super().event(event)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        shift = bool(event.modifiers() & Qt.KeyboardModifier.ShiftModifier)
        if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter) and not shift:
            self.finish()
        elif event.key() == Qt.Key.Key_Escape:
            while self._bench.document.stack.index() > self._begun:
                self._bench.document.undo()
            self.finish()
        else:
            super().keyPressEvent(event)
        event.accept()

    def focusOutEvent(self, event: QFocusEvent) -> None:
        super().focusOutEvent(event)
        if event.reason() not in (Qt.FocusReason.PopupFocusReason, Qt.FocusReason.ActiveWindowFocusReason):
            QTimer.singleShot(0, self, self.finish)

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._ring.resize(self.size())

    def _writing(self) -> Writing:
        return Writing(self._bench.document.drill, self._bench.view.at)

    def _show(self) -> None:
        note = self._note
        self._words = self._writing().read("" if note is None else note.text)
        self.setPlainText(self._words.text)
        underline(self, self._words.spans)

    def _typed(self) -> None:
        text, note = self.toPlainText(), self._note
        self._fit()
        if note is None or text == self._words.text:
            return
        self._words = self._writing().typed(text, self._words)
        underline(self, self._words.spans)
        drill = edits.put(self._bench.document.drill, self._bench.view.at, note.changed(text=self._words.kept))
        self._bench.document.perform("Change the note", drill, merge=self._bursts.key(f"note {self._id}"))

    def _follow(self, *_: object) -> None:
        """Show what stands in the drill where something else has changed it; leave where the note is gone."""
        note = self._note
        if note is None:
            QTimer.singleShot(0, self, self.finish)
        elif note.text != self._words.kept:
            self._show()

    def _fit(self) -> None:
        lines = 0
        block = self.document().firstBlock()
        while block.isValid():
            lines += max(1, block.layout().lineCount())
            block = block.next()
        self.setFixedHeight(round(max(1, lines) * self.fontMetrics().lineSpacing()) + 2 * AROUND + 2)
        parent = self.parentWidget()
        assert parent is not None
        left, top = self._centre.x() - self.width() / 2, self._centre.y() - self.height() / 2
        left = min(max(left, 2), max(2, parent.width() - self.width() - 2))
        top = min(max(top, 2), max(2, parent.height() - self.height() - 2))
        self.move(QPoint(round(left), round(top)))


class _Ring(QWidget):
    """The frame round the words. It lets every press through."""

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.setAttribute(Qt.WidgetAttribute.WA_TransparentForMouseEvents)

    def paintEvent(self, _: QPaintEvent) -> None:
        frame(QPainter(self), self.rect(), edge=look().ink, fill=None, width=2)
