"""The one mutable thing: which drill is open, and how it was before. Everything else follows from its value."""

from __future__ import annotations

from pathlib import Path
from random import Random
from typing import Final

from PySide6.QtCore import QObject, Signal
from PySide6.QtGui import QUndoCommand, QUndoStack

from designer.drill.drill import Drill
from designer.drill.ids import Chooser

_MERGES: Final = 1
_ALONE: Final = -1


class ReadOnly(Exception):
    """The drill was opened in a form that this program cannot write; the text says so to the user."""


class _Replacement(QUndoCommand):
    """One flat step: the drill before and after it. Steps with the same ``merge`` become one."""

    def __init__(self, document: Document, label: str, before: Drill, after: Drill, merge: object) -> None:
        super().__init__(label)
        self._document = document
        self.before = before
        self.after = after
        self.merge = merge
        self._done_once = False

    def redo(self) -> None:
        self._document._settle(self.after, again=self._done_once)  # noqa: SLF001 - the two are one
        self._done_once = True

    def undo(self) -> None:
        self._document._settle(self.before, again=True)  # noqa: SLF001

    def id(self) -> int:
        return _ALONE if self.merge is None else _MERGES

    def mergeWith(self, other: QUndoCommand) -> bool:
        if not isinstance(other, _Replacement) or other.merge != self.merge:
            return False
        self.after = other.after
        self.setText(other.text())
        self.setObsolete(self.after == self.before)
        return True


class Document(QObject):
    """The open drill with its undo stack.

    ``drill`` is the settled value: what undo, saving and recovery know. ``shown`` is what is seen: the preview of a
    gesture that has not ended, else ``drill``.
    """

    changed = Signal(object, object)
    """(before, after): ``drill`` has another value; not for previews."""

    shown_changed = Signal(object, object)
    """(before, after): ``shown`` has another value: for what must follow a gesture live. Comes before ``changed``."""

    revisited = Signal(object, object)
    """(before, after): undo or redo has put another value in place; comes after ``changed``."""

    gesture_left = Signal()
    """Undo was asked for in the middle of a gesture: whoever makes it should give up."""

    path_changed = Signal(object)
    clean_changed = Signal(bool)

    def __init__(
        self,
        drill: Drill,
        *,
        source: Chooser | None = None,
        path: Path | None = None,
        read_only: bool = False,
        parent: QObject | None = None,
    ) -> None:
        """``source`` is where the random part of new ids comes from; tests pass a seeded one."""
        super().__init__(parent)
        self._drill = drill
        self._preview: Drill | None = None
        self._path = path
        self.read_only = read_only
        self.source: Chooser = Random() if source is None else source  # noqa: S311 - names, not secrets
        self.stack = QUndoStack(self)
        self.stack.cleanChanged.connect(self.clean_changed)

    @property
    def drill(self) -> Drill:
        """Return the settled value."""
        return self._drill

    @property
    def shown(self) -> Drill:
        """Return what is seen now."""
        return self._drill if self._preview is None else self._preview

    @property
    def previewing(self) -> bool:
        """Whether a gesture shows a value that has not been settled."""
        return self._preview is not None

    @property
    def path(self) -> Path | None:
        """Return where the drill is kept, None for one that was never saved."""
        return self._path

    @property
    def clean(self) -> bool:
        """Whether the settled value is the one that was last saved or opened."""
        return self.stack.isClean()

    def perform(self, label: str, drill: Drill, *, merge: object = None) -> None:
        """Settle ``drill`` as one step named ``label`` and end any preview; nothing happens where nothing differs.

        A step that follows one of an equal ``merge`` (not None) becomes one with it. Raises ``ReadOnly``.
        """
        if self.read_only:
            self.end_preview()
            raise ReadOnly("this drill cannot be changed: it was opened read-only")
        if drill == self._drill:
            self.end_preview()
            return
        self.stack.push(_Replacement(self, label, self._drill, drill, merge))

    def amend(self, drill: Drill) -> None:
        """Settle ``drill`` without a step of its own: what saving writes into a drill is nobody's doing to be undone.

        The steps on both sides of the settled value lead to it from now on.
        """
        if drill == self._drill:
            return
        at = self.stack.index()
        done, undone = self.stack.command(at - 1), self.stack.command(at)
        if isinstance(done, _Replacement):
            done.after = drill
        if isinstance(undone, _Replacement):
            undone.before = drill
        self._settle(drill, again=False)

    def preview(self, drill: Drill) -> None:
        """Show ``drill`` without settling it."""
        if self.read_only:
            return
        self._show(drill)

    def end_preview(self) -> None:
        """Show the settled value again; redo is kept."""
        self._show(None)

    def undo(self) -> None:
        """Take back the last step; a gesture that has not ended is left without trace instead."""
        if self.previewing:
            self.end_preview()
            self.gesture_left.emit()
        else:
            self.stack.undo()

    def redo(self) -> None:
        """Do the step again that was taken back last."""
        if not self.previewing:
            self.stack.redo()

    def saved_as(self, path: Path) -> None:
        """Remember that the settled value now stands in the file at ``path``."""
        if path != self._path:
            self._path = path
            self.path_changed.emit(path)
        self.stack.setClean()

    def _show(self, preview: Drill | None) -> None:
        before = self.shown
        self._preview = preview
        if self.shown is not before:
            self.shown_changed.emit(before, self.shown)

    def _settle(self, drill: Drill, *, again: bool) -> None:
        before, seen = self._drill, self.shown
        self._drill, self._preview = drill, None
        if drill is not seen:
            self.shown_changed.emit(seen, drill)
        self.changed.emit(before, drill)
        if again:
            self.revisited.emit(before, drill)
