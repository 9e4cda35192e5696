"""The form that stands open under a sentence, on the highlighter's ground."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any, Final

from PySide6.QtCore import QEvent, QRect, Qt, Signal
from PySide6.QtGui import QColor, QKeyEvent, QPainter, QPaintEvent
from PySide6.QtWidgets import QLabel, QSizePolicy, QWidget

from designer.desktop.controls import Link, stacked
from designer.desktop.flow import Flow
from designer.desktop.fonts import CONTROL, NOTE, font
from designer.desktop.forms.beside import beside_of
from designer.desktop.forms.context import Context
from designer.desktop.forms.form import Form
from designer.desktop.forms.fresh import TARGETS
from designer.desktop.forms.subjects import Subject
from designer.desktop.style import field_sheet, form_ground, look
from designer.drill.rules import Rule

LEFT: Final = 32
SIDE: Final = 14
BAR: Final = 4


class OpenForm(QWidget):
    """One subject's form with the words under it: what else the sentence is about, follow again, delete, done."""

    edited = Signal(object, bool)
    switched = Signal(str)
    worth = Signal()
    """What a ball in it is worth should be said."""
    until = Signal()
    """What ends the part of a rally in which the rule holds should be said."""
    followed = Signal()
    deleted = Signal()
    closed = Signal()
    escaped = Signal()
    relaid = Signal()
    """Rows have come or gone."""

    def __init__(self, subject: Subject, record: Any, others: Sequence[tuple[str, str]], title: str = "") -> None:
        """``title`` says what it is about where no sentence over it does."""
        super().__init__()
        self.subject = subject
        self.setStyleSheet(field_sheet(look()))
        self.type = type(record)
        self.form = Form(subject.table(record))
        self.form.edited.connect(self.edited)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Minimum)
        outer = stacked(self)
        outer.setContentsMargins(LEFT, 6, SIDE, 6)
        if title:
            head = QLabel(f"{title[:1].upper()}{title[1:]}")
            head.setTextFormat(Qt.TextFormat.PlainText)
            head.setFont(font(CONTROL, bold=True))
            head.setContentsMargins(6, 0, 0, 2)
            outer.addWidget(head)
        outer.addWidget(self.form)
        foot = QWidget()
        self._links = Flow(foot, gap=2)
        for other, words in others:
            self._add(words, lambda _=False, other=other: self.switched.emit(other))
        self._is_target = getattr(record, "kind", None) in TARGETS
        self._worth = self._add("Worth … points", lambda _=False: self.worth.emit())
        self._until = self._add("Only until …", lambda _=False: self.until.emit())
        self._follow = self._add("Follow again", lambda _=False: self.followed.emit())
        self._delete = self._add("Delete", lambda _=False: self.deleted.emit())
        self._add("Done", lambda _=False: self.closed.emit())
        outer.addWidget(foot)
        self.beside = beside_of(record)
        if self.beside is not None:
            outer.addWidget(self.beside)

    def show_record(self, record: Any, context: Context, *, own: bool, may_delete: bool) -> None:
        """Show ``record``; ``own`` says that it differs from the setting below and can follow it again."""
        self._follow.setVisible(own)
        self._follow.setToolTip("let this follow the setting below it again")
        self._delete.setVisible(may_delete)
        self._until.setVisible(may_delete and self.type is Rule and not context.setting.parts)
        self._worth.setVisible(may_delete and self._is_target)
        held = self.window().focusWidget()
        inside = self.form.isAncestorOf(held)
        self.form.show_record(record, context)
        if inside and not held.isVisibleTo(self):
            self.form.focus_beside(held)  # a pressed offer goes: the keyboard stays in its row
        if self.beside is not None:
            self.beside.show_record(record, context)

    def event(self, event: QEvent) -> bool:
        if event.type() == QEvent.Type.LayoutRequest:
            self.relaid.emit()
        return super().event(event)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.key() == Qt.Key.Key_Escape:
            self.escaped.emit()
            return
        super().keyPressEvent(event)

    def paintEvent(self, _: QPaintEvent) -> None:
        now = look()
        painter = QPainter(self)
        painter.fillRect(self.rect(), QColor(form_ground(now)))
        painter.fillRect(QRect(0, 0, BAR, self.height()), QColor(now.highlighter_edge))

    def _add(self, words: str, press: Any) -> Link:
        link = Link(words, size=NOTE)
        link.clicked.connect(press)
        self._links.addWidget(link)
        return link
