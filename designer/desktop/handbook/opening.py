"""The windows of handbooks that are open."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from pathlib import Path

from PySide6.QtCore import QObject
from PySide6.QtWidgets import QApplication, QWidget

from designer.desktop.handbook.book_document import BookDocument
from designer.desktop.handbook.files import blank_book
from designer.desktop.handbook.window import HandbookWindow
from designer.desktop.prompts import Prompts
from designer.drill.handbook import Handbook
from designer.storage.handbook import open_handbook
from designer.storage.parsing import Unreadable
from designer.storage.recovery import BOOK_ENDING, copies


class Books(QObject):
    """Opens handbooks in windows and keeps these alive; ``open_drills`` opens drills that one of them asks for."""

    def __init__(self, prompts: Prompts, open_drills: Callable[[Sequence[Path]], None], parent: QObject) -> None:
        super().__init__(parent)
        self._prompts, self._open_drills = prompts, open_drills
        self._windows: list[HandbookWindow] = []

    def all(self) -> tuple[HandbookWindow, ...]:
        """Return the windows that are open."""
        return tuple(self._windows)

    def open(self, path: Path | None, parent: QWidget | None = None) -> HandbookWindow | None:
        """Show the handbook at ``path``, or a new one; one that is open comes to the front. None where it cannot be read."""
        known = next((one for one in self._windows if path is not None and one.document.path == path), None)
        if known is not None:
            known.raise_()
            known.activateWindow()
            return known
        try:
            book = blank_book() if path is None else open_handbook(path)
        except Unreadable as reason:
            front = parent or QApplication.activeWindow() or QWidget()
            self._prompts.say(front, "The handbook was not opened.", str(reason))
            return None
        return self._show(book, path)

    def recover(self) -> None:
        """Offer the handbooks that a program which stopped has left behind."""
        for copy in copies(ending=BOOK_ENDING):
            name = copy.path.name if copy.path is not None else "a handbook that was never saved"
            when = copy.kept.astimezone().strftime("%H:%M on %d %B")
            more = f"The program stopped before it was saved. The copy was kept at {when}."
            front = QApplication.activeWindow() or QWidget()
            if self._prompts.yes(front, f"Open the changes to {name} again?", more, "Open"):
                try:
                    book = open_handbook(copy.file)
                except Unreadable as reason:
                    self._prompts.say(front, "The copy could not be read.", str(reason))
                    continue
                window = self._show(book, copy.path)
                window.document.stack.resetClean()
                window.files.keep()
                window.notice.say("recovered", "These are the changes that were not saved.")
            copy.discard()

    def keep_all(self) -> None:
        """Write a recovery copy of every handbook that is not saved."""
        for window in self._windows:
            window.files.keep()

    def _show(self, book: Handbook, path: Path | None) -> HandbookWindow:
        window = HandbookWindow(BookDocument(book, path), self._prompts)
        window.drills_wanted.connect(self._open_drills)
        window.files.wanted.connect(self.open)
        window.closing.connect(self._closed)
        self._windows.append(window)
        window.show()
        return window

    def _closed(self, window: HandbookWindow) -> None:
        if window in self._windows:
            self._windows.remove(window)
