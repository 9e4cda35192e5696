"""What every control of a form's simple field is: it shows a value and emits another."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QHBoxLayout, QSizePolicy, QWidget
from shiboken6 import isValid

from designer.desktop.forms.context import Context
from designer.desktop.forms.wish import Wish


class Refused(Exception):
    """What was typed is not a value; the text says what was expected."""


class Box(QWidget):
    """A control that holds one value of a record."""

    edited = Signal(object, bool)
    """(value, typed): ``typed`` is a letter more or less, to be undone with the others of one go."""

    refused = Signal(str)

    lit = Signal(bool)
    """Whether this field waits for something to be picked on the court."""

    def __init__(self) -> None:
        super().__init__()
        self.offers = True
        """Whether the usual answer is the usual one for this record."""
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Minimum)
        self.row = QHBoxLayout(self)
        self.row.setContentsMargins(0, 0, 0, 0)
        self.row.setSpacing(6)

    def show_value(self, value: Any, context: Context) -> None:
        """Show ``value`` without emitting anything."""
        raise NotImplementedError

    def name(self, words: str) -> None:
        """Tell a screen reader what is asked for here."""
        self.setAccessibleName(words)

    def give(self, value: Any, *, typed: bool = False) -> None:
        """Emit a value that the user has settled, or with ``typed`` is still typing."""
        self.edited.emit(value, typed)

    def first(self) -> QWidget:
        """Return the control that gets the keyboard first."""
        return self.focusProxy() or self

    def ask(self, context: Context, wish: Wish) -> None:
        """Let ``wish`` be picked on the court; this field is lit until that is over."""
        if context.court is None:
            return
        context.court.begin(replace(wish, about=context.about, ended=self._let_go))
        self.lit.emit(True)

    def _let_go(self) -> None:
        if isValid(self):
            self.lit.emit(False)
