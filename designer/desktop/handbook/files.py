"""Where a handbook comes from and goes to, and the copy of it that survives a crash."""

from __future__ import annotations

import logging
from pathlib import Path
from typing import Final

from PySide6.QtCore import QObject, QTimer, Signal
from PySide6.QtWidgets import QWidget

from designer.desktop import settings
from designer.desktop.handbook.book_document import BookDocument
from designer.desktop.prompts import HANDBOOKS, Prompts
from designer.drill.handbook import BookSection, Handbook
from designer.storage.handbook import ENDING, save_handbook
from designer.storage.recovery import BOOK_ENDING, Keeper
from designer.storage.writing import Unwritable

REST: Final = 2000
"""Milliseconds without a change before a recovery copy is written."""

log = logging.getLogger(__name__)

BOOKS: Final = "Handbooks as PDF (*.pdf)"


def blank_book() -> Handbook:
    """Return a new handbook."""
    return Handbook(title="New handbook", sections=(BookSection(title="First section"),))


def book_beside(path: Path | None) -> Path | None:
    """Return the one handbook in the folder of the drill at ``path``, or in the folder above; None where there is none."""
    if path is None:
        return None
    for folder in (path.parent, path.parent.parent):
        found = sorted(folder.glob(f"*{ENDING}"))
        if found:
            return found[0] if len(found) == 1 else None
    return None


class BookFiles(QObject):
    """Saves a handbook. ``wanted`` carries a path to open, or None for a new handbook."""

    wanted = Signal(object)

    def __init__(self, document: BookDocument, prompts: Prompts, window: QWidget) -> None:
        super().__init__(window)
        self._document, self._prompts, self._window = document, prompts, window
        self._keeper = Keeper(ending=BOOK_ENDING)
        self._rest = QTimer(self)
        self._rest.setSingleShot(True)
        self._rest.setInterval(REST)
        self._rest.timeout.connect(self.keep)
        document.changed.connect(lambda *_: self._rest.start())

    def keep(self) -> None:
        """Write a recovery copy now where there is anything to lose."""
        self._rest.stop()
        if self._document.clean:
            self._keeper.discard()
            return
        try:
            self._keeper.keep(self._document.book, self._document.path)
        except Unwritable as reason:
            log.info("%s", reason)

    def close(self) -> None:
        """Let go of the disk; the recovery copy is no longer wanted."""
        self._rest.stop()
        self._keeper.discard()

    def new(self) -> None:
        """Ask for a new handbook in a window of its own."""
        self.wanted.emit(None)

    def open(self) -> None:
        """Ask which handbook to open."""
        path = self._document.path
        chosen = self._prompts.open_handbook(self._window, path.parent if path else settings.last_folder())
        if chosen is not None:
            self.wanted.emit(chosen)

    def save(self) -> bool:
        """Save where the handbook is kept, or ask where; return whether it is saved."""
        return self.save_as() if self._document.path is None else self._write(self._document.path)

    def save_as(self) -> bool:
        """Ask where to save, and save there; return whether it is saved."""
        offered = self._document.path or settings.last_folder() / f"handbook{ENDING}"
        path = self._prompts.save_path(self._window, offered, HANDBOOKS)
        if path is None:
            return False
        if not path.name.endswith(ENDING):
            path = path.with_name(f"{path.name.removesuffix('.json').removesuffix('.handbook')}{ENDING}")
        return self._write(path)

    def output_path(self) -> Path | None:
        """Ask where the PDF goes; None where the user changed their mind."""
        path = self._document.path
        assert path is not None
        name = f"{path.name.removesuffix(ENDING)}-{self._document.book.edition}.pdf"
        chosen = self._prompts.save_path(self._window, path.with_name(name), BOOKS)
        if chosen is None or chosen.suffix.lower() == ".pdf":
            return chosen
        return chosen.with_name(f"{chosen.name}.pdf")

    def may_close(self) -> bool:
        """Return whether the window may close: nothing is lost, or the user has chosen to lose it."""
        if self._document.clean:
            return True
        answer = self._prompts.unsaved(self._window, self._document.name)
        return self.save() if answer == "save" else answer == "discard"

    def _write(self, path: Path) -> bool:
        try:
            save_handbook(path, self._document.book)
        except Unwritable as reason:
            self._prompts.say(self._window, "The handbook was not saved.", str(reason))
            return False
        self._document.saved_as(path)
        self._keeper.discard()
        return True
