"""Controls for places: picked on the court or dragged there, and typed in the words that they are read in."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any, Final

from PySide6.QtCore import QEvent, QSignalBlocker, Qt, Signal
from PySide6.QtGui import QFocusEvent, QKeyEvent, QResizeEvent
from PySide6.QtWidgets import QHBoxLayout, QPlainTextEdit, QWidget

from designer.court.standards import ground
from designer.desktop.controls import IconButton, Link, has_caret, stacked
from designer.desktop.fonts import CONTROL, NOTE, font
from designer.desktop.forms.box import Box, Refused
from designer.desktop.forms.context import Context
from designer.desktop.forms.fields import Points, Where
from designer.desktop.forms.typed_places import end_named, place_of, place_text
from designer.desktop.forms.wish import Wish
from designer.desktop.names import name_of
from designer.drill.base import Place, Point
from designer.drill.places import anchor, locate, moved

PICK: Final = "Pick it on the court"


class PlaceLine(QWidget):
    """One place: its reading, to be typed over, and the button that asks for it on the court."""

    typed = Signal(object)
    """The point (x, y) in metres that was typed."""

    refused = Signal(str)
    asked = Signal()

    def __init__(self) -> None:
        super().__init__()
        self._context: Context | None = None
        self._point: Point | None = None
        self._shown = ""
        self.editor = _Reading()
        self.editor.left.connect(self._left)
        self.button = IconButton("pick", PICK, size=14)
        self.button.clicked.connect(self.asked)
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(4)
        row.addWidget(self.editor, 1)
        row.addWidget(self.button, 0, Qt.AlignmentFlag.AlignTop)
        self.setFocusProxy(self.button)

    def name(self, words: str) -> None:
        """Tell a screen reader which place this is."""
        self.editor.setAccessibleName(words)
        self.button.setAccessibleName(f"{words}: {PICK.lower()}")

    def show_point(self, point: Point | None, context: Context) -> None:
        """Show where ``point`` is; None for a place that is tied to something that is not there."""
        self._point, self._context = point, context
        self.button.setVisible(context.court is not None)
        text = "" if point is None else place_text(ground(context.drill.court), point, context.units)
        if not (text == self._shown and has_caret(self.editor)):
            self.editor.put(text)
        self._shown = text

    def _left(self) -> None:
        text = self.editor.toPlainText().strip()
        if text == self._shown or self._context is None:
            return
        end = "near" if self._point is None else end_named(self._point)
        try:
            point = place_of(ground(self._context.drill.court), text, end)
        except Refused as reason:
            self.refused.emit(str(reason))
            return
        self.refused.emit("")
        self.typed.emit(point)


class _Reading(QPlainTextEdit):
    """A text as high as its lines. Enter and leaving settle it, Esc puts back what stood there."""

    left = Signal()

    def __init__(self) -> None:
        super().__init__()
        self._before = ""
        self.setFont(font(CONTROL))
        self.setTabChangesFocus(True)
        self.setVerticalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.textChanged.connect(self._fit)

    def put(self, text: str) -> None:
        """Show ``text``."""
        self._before = text
        if self.toPlainText() != text:
            with QSignalBlocker(self):
                self.setPlainText(text)
        self._fit()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self.left.emit()
        elif event.key() == Qt.Key.Key_Escape and self.toPlainText() != self._before:
            self.put(self._before)
        else:
            super().keyPressEvent(event)

    def focusOutEvent(self, event: QFocusEvent) -> None:
        super().focusOutEvent(event)
        if event.reason() != Qt.FocusReason.PopupFocusReason:
            self.left.emit()

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._fit()

    def changeEvent(self, event: QEvent) -> None:
        super().changeEvent(event)
        if event.type() == QEvent.Type.FontChange:
            self._fit()

    def _fit(self) -> None:
        lines = max(1, round(self.document().size().height()))
        self.setFixedHeight(lines * self.fontMetrics().lineSpacing() + 2 * round(self.document().documentMargin()) + 6)


class _Stack(Box):
    """Places one below the other."""

    def __init__(self) -> None:
        super().__init__()
        inner = QWidget()
        self.inside = stacked(inner, 4)
        self.row.addWidget(inner, 1)
        self._context: Context | None = None
        self._words = "place"

    def name(self, words: str) -> None:
        super().name(words)
        self._words = words

    def ask_for_place(self, take: Callable[[Place], None], start: Point | None, *, words: str, ties: bool) -> None:
        """Let a place be picked on the court; ``take`` gets it."""
        if self._context is not None:
            self.ask(self._context, Wish(words, "place", take, ties=ties, start=start))


class WhereBox(_Stack):
    """A place that may go with a thing on the court: it is picked on that, and can be let go of it."""

    def __init__(self, kind: Where) -> None:
        super().__init__()
        self._kind = kind
        self._value: Place | None = None
        self.line = PlaceLine()
        self.line.asked.connect(self._ask)
        self.line.typed.connect(self._typed)
        self.line.refused.connect(self.refused)
        self._add = Link(kind.add)
        self._add.clicked.connect(self._ask)
        self._foot = QWidget()
        foot = QHBoxLayout(self._foot)
        foot.setContentsMargins(0, 0, 0, 0)
        self._tie = Link("", size=NOTE)
        self._tie.clicked.connect(self._untie)
        self._open = Link("leave it open", size=NOTE)
        self._open.clicked.connect(lambda: self.give(None))
        foot.addWidget(self._tie)
        foot.addWidget(self._open)
        foot.addStretch(1)
        self.inside.addWidget(self._add)
        self.inside.addWidget(self.line)
        self.inside.addWidget(self._foot)

    def name(self, words: str) -> None:
        super().name(words)
        self.line.name(words)
        self._add.setAccessibleName(f"{words}: {self._kind.add}")

    def show_value(self, value: Any, context: Context) -> None:
        self._context, self._value = context, value
        self._add.setVisible(value is None)
        self.line.setVisible(value is not None)
        self.setFocusProxy(self._add if value is None else self.line)
        tied = None if value is None else value.on
        self._tie.setVisible(tied is not None)
        self._open.setVisible(value is not None and self._kind.optional)
        self._foot.setVisible(tied is not None or (value is not None and self._kind.optional))
        if value is not None:
            self.line.show_point(locate(context.setting, value), context)
        if tied is not None:
            record = context.setting.find(tied)
            self._tie.setText(f"goes with {name_of(context.setting, record) if record is not None else tied}; let go")
            self._tie.setToolTip("Leave it where it is when that is moved")
            self._tie.updateGeometry()

    def _ask(self) -> None:
        if self._context is None:
            return
        if self._context.court is None:
            self.give(Place(at=(0.0, 0.0)))
            return
        start = None if self._value is None else locate(self._context.setting, self._value)
        self.ask_for_place(self.give, start, words=self._words, ties=True)

    def _typed(self, point: object) -> None:
        assert isinstance(point, tuple)
        value, context = self._value, self._context
        base = None if value is None or value.on is None or context is None else anchor(context.setting, value.on)
        if value is None or base is None:
            self.give(Place(at=point))
        else:
            self.give(value.changed(at=moved(point, (-base[0], -base[1]))))

    def _untie(self) -> None:
        point = None if self._value is None or self._context is None else locate(self._context.setting, self._value)
        if point is not None:
            self.give(Place(at=point))


class CornersBox(_Stack):
    """Corners, or points on the way: a line each."""

    def __init__(self, kind: Points) -> None:
        super().__init__()
        self._kind = kind
        self._value: tuple[Point, ...] = ()
        self._rows: list[tuple[QWidget, PlaceLine, IconButton]] = []
        self._add = Link(f"Add a {kind.one}")
        self._add.clicked.connect(lambda: self._ask(len(self._value)))
        self.inside.addWidget(self._add)
        self.setFocusProxy(self._add)

    def lines(self) -> tuple[PlaceLine, ...]:
        """Return the controls of the places, in order."""
        return tuple(line for _, line, _ in self._rows)

    def show_value(self, value: Any, context: Context) -> None:
        self._context, self._value = context, tuple(value)
        kind = self._kind
        while len(self._rows) > len(self._value):
            row, _, _ = self._rows.pop()
            self.inside.removeWidget(row)
            row.hide()
            row.deleteLater()
        while len(self._rows) < len(self._value):
            self._insert(len(self._rows))
        for point, (_, line, cross) in zip(self._value, self._rows, strict=True):
            line.show_point(point, context)
            cross.setVisible(len(self._value) > kind.least)
        self._add.setVisible(kind.most is None or len(self._value) < kind.most)
        self.setFocusProxy(self._rows[0][1] if self._rows else self._add)

    def _insert(self, number: int) -> None:
        row = QWidget()
        line, cross = PlaceLine(), IconButton("close", f"take this {self._kind.one} away", size=10)
        line.name(f"{self._words}, {number + 1}")
        line.asked.connect(lambda: self._ask(number))
        line.typed.connect(lambda point: self._put(self._value, number, point))
        line.refused.connect(self.refused)
        cross.clicked.connect(lambda: self.give((*self._value[:number], *self._value[number + 1 :])))
        inner = QHBoxLayout(row)
        inner.setContentsMargins(0, 0, 0, 0)
        inner.setSpacing(0)
        inner.addWidget(line, 1)
        inner.addWidget(cross, 0, Qt.AlignmentFlag.AlignTop)
        self._rows.append((row, line, cross))
        self.inside.insertWidget(number, row)

    def _ask(self, number: int) -> None:
        before = self._value  # while the pointer tries places, what is shown has one of them already
        if self._context is None:
            return
        if self._context.court is None:
            self._put(before, number, before[-1] if before else (0.0, 0.0))
            return
        start = before[number] if number < len(before) else before[-1] if before else None
        words = f"{self._words}, {self._kind.one} {number + 1}"
        self.ask_for_place(lambda place: self._put(before, number, place.at), start, words=words, ties=False)

    def _put(self, value: tuple[Point, ...], number: int, point: Point) -> None:
        self.give((*value[:number], point, *value[number + 1 :]))
