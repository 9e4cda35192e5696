"""The open handbook with its undo stack: the one mutable thing of its window."""

from __future__ import annotations

from pathlib import Path

from PySide6.QtCore import QObject, Signal
from PySide6.QtGui import QUndoCommand, QUndoStack

from designer.drill.handbook import Handbook

_MERGES = 1


class _Replacement(QUndoCommand):
    """One flat step: the handbook before and after it. Steps with the same ``merge`` become one."""

    def __init__(self, document: BookDocument, label: str, after: Handbook, merge: object) -> None:
        super().__init__(label)
        self._document = document
        self._before = document.book
        self.after = after
        self.merge = merge

    def redo(self) -> None:
        self._document._settle(self.after)  # noqa: SLF001 - the two are one

    def undo(self) -> None:
        self._document._settle(self._before)  # noqa: SLF001

    def id(self) -> int:
        return -1 if self.merge is None else _MERGES

    def mergeWith(self, other: QUndoCommand) -> bool:
        if not isinstance(other, _Replacement) or other.merge != self.merge:
            return False
        self.after = other.after
        self.setObsolete(self.after == self._before)
        return True


class BookDocument(QObject):
    """``changed`` carries the handbook before and after; ``path_changed`` where it is kept."""

    changed = Signal(object, object)
    path_changed = Signal(object)

    def __init__(self, book: Handbook, path: Path | None = None, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.book = book
        self.path = path
        self.stack = QUndoStack(self)

    @property
    def clean(self) -> bool:
        """Whether the handbook is as it was last saved or opened."""
        return self.stack.isClean()

    @property
    def name(self) -> str:
        """Return what the handbook is called in a title bar."""
        return self.book.title or (self.path.name if self.path else "New handbook")

    def perform(self, label: str, book: Handbook, *, merge: object = None) -> None:
        """Settle ``book`` as one step; nothing happens where nothing differs."""
        if book != self.book:
            self.stack.push(_Replacement(self, label, book, merge))

    def saved_as(self, path: Path) -> None:
        """Remember that the handbook now stands in the file at ``path``."""
        self.path = path
        self.stack.setClean()
        self.path_changed.emit(path)

    def _settle(self, book: Handbook) -> None:
        before, self.book = self.book, book
        self.changed.emit(before, book)
