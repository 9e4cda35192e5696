"""Where a drill comes from and goes to: opening, saving, closing, and the copy that survives a crash."""

from __future__ import annotations

import hashlib
import logging
from dataclasses import dataclass
from datetime import UTC, date, datetime
from pathlib import Path
from typing import Final

from PySide6.QtCore import QObject, QTimer, Signal
from PySide6.QtWidgets import QWidget

from designer.desktop import settings
from designer.desktop.document import Document
from designer.desktop.prompts import DRILLS, Prompts
from designer.desktop.watch import Watch
from designer.drill.drill import Drill
from designer.storage.parsing import Unreadable
from designer.storage.reading import Opened, open_drill
from designer.storage.recovery import Keeper
from designer.storage.writing import Unwritable, drill_bytes, save, write_file

ENDING: Final = ".drill.json"
REST: Final = 2000
"""Milliseconds without a change before a recovery copy is written."""

log = logging.getLogger(__name__)


@dataclass(frozen=True, slots=True)
class Origin:
    """What the document was when it met the disk: the drill and the bytes that said it."""

    drill: Drill
    data: bytes


class Filing(QObject):
    """The files of one document. Every question goes through ``prompts``."""

    saved = Signal(object)
    changed_outside = Signal()

    def __init__(
        self,
        document: Document,
        prompts: Prompts,
        window: QWidget,
        opened: Opened | None = None,
    ) -> None:
        super().__init__(window)
        self._document, self._prompts, self._window = document, prompts, window
        self._origin = None if opened is None else Origin(opened.drill, opened.source)
        self._keeper = Keeper()
        self._watch = Watch(self)
        self._watch.changed.connect(self.changed_outside)
        self._rest = QTimer(self)
        self._rest.setSingleShot(True)
        self._rest.setInterval(REST)
        self._rest.timeout.connect(self.keep)
        document.changed.connect(lambda *_: self._rest.start())
        if document.path is not None and opened is not None:
            self._watch.follow(document.path, digest(opened.source))

    @property
    def name(self) -> str:
        """Return what the drill is called in a title bar: its title, else its file, else "Untitled drill"."""
        path = self._document.path
        return self._document.drill.title or (path.name if path is not None else "Untitled drill")

    def source(self) -> bytes:
        """Return the drill as bytes: those of the file that was read, or the writer's where it was edited."""
        drill = self._document.drill
        if self._origin is not None and self._origin.drill == drill:
            return self._origin.data
        return drill_bytes(drill)

    def save(self) -> bool:
        """Save where the drill is kept, or ask where; return whether it is saved."""
        if self._document.read_only:
            self._prompts.say(self._window, "This drill was opened read-only and cannot be saved.")
            return False
        path = self._document.path
        return self.save_as() if path is None else self._write(path)

    def save_as(self) -> bool:
        """Ask where to save, and save there; return whether it is saved."""
        if self._document.read_only:
            self._prompts.say(self._window, "This drill was opened read-only and cannot be saved.")
            return False
        path = self._asked(self.suggestion(ENDING))
        return path is not None and self._write(path)

    def save_copy(self) -> Path | None:
        """Ask where, and write a copy there; the drill goes on under its own name. Return where, None for no copy.

        A drill that was opened read-only is copied as the bytes it came in, so that nothing of it is lost.
        """
        path = self._asked(self.suggestion(f"-copy{ENDING}"))
        if path is None:
            return None
        if path == self._document.path:
            self._prompts.say(self._window, "A copy needs another name than the drill itself.")
            return None
        try:
            write_file(path, self.source())
        except Unwritable as reason:
            self._prompts.say(self._window, "The copy was not saved.", str(reason))
            return None
        settings.add_recent(path)
        return path

    def _asked(self, suggestion: Path) -> Path | None:
        path = self._prompts.save_path(self._window, suggestion, DRILLS)
        if path is not None and path.suffix.lower() != ".json":
            path = path.with_name(f"{path.name}{ENDING}")
        return path

    def revert(self) -> Opened | None:
        """Return the drill as it is on disk, after leave to lose what is not saved; None where it stays as it is."""
        path = self._document.path
        if path is None:
            return None
        question = f"Go back to “{path.name}” as it was last saved?"
        if not self._document.clean and not self._prompts.yes(
            self._window, question, "Changes since then are lost.", "Go back"
        ):
            return None
        try:
            opened = open_drill(path)
        except Unreadable as reason:
            self._prompts.say(self._window, "The drill could not be read again.", str(reason))
            return None
        self._origin = Origin(opened.drill, opened.source)
        self._watch.follow(path, digest(opened.source))
        return opened

    def may_close(self) -> bool:
        """Return whether the window may close: nothing is lost, or the user has chosen to lose it."""
        if self._document.clean or self._document.read_only:
            return True
        answer = self._prompts.unsaved(self._window, self.name)
        return self.save() if answer == "save" else answer == "discard"

    def close(self) -> None:
        """Let go of the disk; the recovery copy is no longer wanted."""
        self._rest.stop()
        self._watch.stop()
        self._keeper.discard()

    def keep(self) -> None:
        """Write a recovery copy now where there is anything to lose."""
        self._rest.stop()
        if self._document.clean or self._document.read_only:
            self._keeper.discard()
            return
        try:
            self._keeper.keep(self._document.drill, self._document.path)
        except Unwritable as reason:
            log.info("%s", reason)

    def suggestion(self, ending: str) -> Path:
        """Return a path to offer for a new file: beside the drill, named after it."""
        path = self._document.path
        folder = path.parent if path is not None else settings.last_folder()
        drill = self._document.drill
        if path is not None:
            name = path.name.removesuffix(".json").removesuffix(".drill")
        else:
            name = file_name(drill.code or drill.title)
        return folder / f"{name}{ending}"

    def _write(self, path: Path) -> bool:
        first = self._document.path is None
        drill = self._document.drill
        if not self._document.clean or first:
            drill = stamped(drill, datetime.now(UTC).astimezone().date(), first=first)
        try:
            data = save(path, drill)
        except Unwritable as reason:
            self._prompts.say(self._window, "The drill was not saved.", str(reason))
            return False
        self._document.amend(drill)
        self._origin = Origin(self._document.drill, data)
        self._document.saved_as(path)
        self._watch.follow(path, digest(data))
        self._keeper.discard()
        settings.add_recent(path)
        settings.set_last_folder(path.parent)
        self.saved.emit(path)
        return True


def stamped(drill: Drill, today: date, *, first: bool) -> Drill:
    """Return ``drill`` dated ``today``; one that was saved on an earlier day becomes the next edition."""
    if drill.dated == today:
        return drill
    edition = drill.edition if first or drill.dated is None else drill.edition + 1
    return drill.changed(dated=today, edition=edition)


def file_name(words: str) -> str:
    """Return ``words`` as the name of a file on any system, "drill" where nothing is left of them."""
    kept = "".join(letter.lower() if letter.isalnum() else " " for letter in words).split()
    return "-".join(kept)[:60].strip("-") or "drill"


def digest(data: bytes) -> bytes:
    """Return what tells one content of a file from another."""
    return hashlib.sha256(data).digest()
