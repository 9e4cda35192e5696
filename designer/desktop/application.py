"""The running program: its windows, what it does after a crash, and how it ends."""

from __future__ import annotations

import logging
import sys
from collections.abc import Sequence
from pathlib import Path
from random import Random
from types import TracebackType
from typing import TYPE_CHECKING, Final

from PySide6.QtCore import QCoreApplication, QObject, Qt, QThreadPool
from PySide6.QtGui import QFont
from PySide6.QtWidgets import QApplication, QWidget

from designer.court.standards import known_court
from designer.desktop import settings
from designer.desktop.blank import blank
from designer.desktop.document import Document
from designer.desktop.prompts import Prompts
from designer.desktop.style import style
from designer.desktop.window import MainWindow
from designer.storage.parsing import Unreadable
from designer.storage.reading import Opened, open_drill

if TYPE_CHECKING:
    from designer.desktop.handbook.opening import Books

MANY: Final = 12
"""More drills than this are not opened at once without asking."""

log = logging.getLogger(__name__)


class Windows(QObject):
    """All windows of the program. It opens drills in them and keeps them alive."""

    def __init__(self, prompts: Prompts) -> None:
        super().__init__()
        self.prompts = prompts
        self._windows: list[MainWindow] = []
        self._books: Books | None = None

    def all(self) -> tuple[MainWindow, ...]:
        """Return the windows that are open."""
        return tuple(self._windows)

    def new(self) -> MainWindow:
        """Show a blank court."""
        source = Random()  # noqa: S311 - names, not secrets
        court = settings.court() if known_court(settings.court()) else "tennis"
        drill = blank(source, court, language=settings.language(), author=settings.author())
        return self._show(Document(drill, source=source))

    def open(self, paths: Sequence[Path]) -> None:
        """Open each drill in a window of its own; one that is open already comes to the front."""
        if len(paths) > MANY and not self.prompts.yes(
            self._front(), f"Open {len(paths)} drills?", "Each gets a window of its own.", "Open them"
        ):
            return
        for path in paths:
            if path.name.lower().endswith(".handbook.json"):
                self.open_book(path)
                continue
            known = next((w for w in self._windows if w.document.path == path), None)
            if known is not None:
                known.raise_()
                known.activateWindow()
                continue
            try:
                opened = open_drill(path)
            except Unreadable as reason:
                self.prompts.say(self._front(), "The drill was not opened.", str(reason))
                continue
            settings.add_recent(path)
            self._take(opened, None if opened.from_card else opened.path)

    def open_book(self, path: Path | None) -> None:
        """Show the handbook at ``path`` in a window of its own, a new one for None."""
        self._book_windows().open(path)

    def _book_windows(self) -> Books:
        if self._books is None:
            from designer.desktop.handbook.opening import Books

            self._books = Books(self.prompts, self.open, self)
        return self._books

    def any(self) -> bool:
        """Whether any window is open, of a drill or of a handbook."""
        return bool(self._windows) or (self._books is not None and bool(self._books.all()))

    def open_copies(self, paths: Sequence[Path]) -> None:
        """Open each drill as a new one without a file, so that saving asks for a name: for samples."""
        for path in paths:
            try:
                opened = open_drill(path)
            except Unreadable as reason:
                self.prompts.say(self._front(), "The drill was not opened.", str(reason))
                continue
            self._take(opened, None)

    def recover(self) -> None:
        """Offer the drills and handbooks that a program which stopped has left behind."""
        from designer.storage.recovery import BOOK_ENDING, copies

        if copies(ending=BOOK_ENDING):
            self._book_windows().recover()

        for copy in copies():
            name = copy.path.name if copy.path is not None else "a drill that was never saved"
            when = copy.kept.astimezone().strftime("%H:%M on %d %B")
            more = f"The program stopped before it was saved. The copy was kept at {when}."
            if not self.prompts.yes(self._front(), f"Open the changes to {name} again?", more, "Open"):
                copy.discard()
                continue
            try:
                opened = copy.read()
            except Unreadable as reason:
                self.prompts.say(self._front(), "The copy could not be read.", str(reason))
                continue
            window = self._take(opened, copy.path)
            window.document.stack.resetClean()
            window.filing.keep()
            window.notice.say("recovered", "These are the changes that were not saved.")
            copy.discard()

    def keep_all(self) -> None:
        """Write a recovery copy of every drill and handbook that is not saved."""
        for window in self._windows:
            window.filing.keep()
        if self._books is not None:
            self._books.keep_all()

    def _take(self, opened: Opened, path: Path | None) -> MainWindow:
        document = Document(opened.drill, path=path, read_only=opened.read_only)
        blank_one = next((window for window in self._windows if window.untouched), None)
        window = self._show(document, opened)
        if blank_one is not None:
            window.setGeometry(blank_one.geometry())
            blank_one.close()
        return window

    def _show(self, document: Document, opened: Opened | None = None) -> MainWindow:
        window = MainWindow(document, self.prompts, opened)
        if self._windows:
            window.move(self._windows[-1].pos().x() + 24, self._windows[-1].pos().y() + 24)
        window.wanted.connect(self._wanted)
        window.book_wanted.connect(self.open_book)
        window.copies_wanted.connect(self.open_copies)
        window.closing.connect(self._closed)
        self._windows.append(window)
        window.show()
        window.canvas.setFocus(Qt.FocusReason.OtherFocusReason)
        return window

    def _wanted(self, paths: Sequence[Path]) -> None:
        if paths:
            self.open(paths)
        else:
            self.new()

    def _closed(self, window: MainWindow) -> None:
        if window in self._windows:
            self._windows.remove(window)

    def _front(self) -> QWidget:
        active = QApplication.activeWindow()
        return active if active is not None else self._windows[-1] if self._windows else self.new()


def report_faults(windows: Windows) -> None:
    """Log what goes wrong in a slot, keep a copy of every drill, and tell the user once."""
    told: list[bool] = []

    def report(kind: type[BaseException], fault: BaseException, trace: TracebackType | None) -> None:
        if issubclass(kind, KeyboardInterrupt):
            QCoreApplication.quit()
            return
        log.error("a fault in the program", exc_info=(kind, fault, trace))
        windows.keep_all()
        if not told and windows.all():
            told.append(True)
            windows.all()[0].notice.say(
                "fault",
                "Something went wrong in the program. A copy of the drill is kept; save it and start the program again.",
            )

    sys.excepthook = report


def prepare() -> QApplication:
    """Return the application, named and styled."""
    QFont.insertSubstitution("Noto Sans", "sans-serif")
    running = QApplication.instance()
    application = running if isinstance(running, QApplication) else QApplication(sys.argv[:1])
    application.setApplicationName("drill-designer")
    application.setApplicationDisplayName("Drill Designer")
    application.setDesktopFileName("drill-designer")
    style()
    return application


def run(paths: Sequence[str]) -> int:
    """Open a window for each path, or a blank court, and return the exit status when the last one is closed."""
    application = prepare()
    windows = Windows(Prompts())
    report_faults(windows)
    windows.open([Path(path) for path in paths])
    if not windows.any():
        windows.new()
    windows.recover()
    status = application.exec()
    # What is still being made writes a whole file or none; a thread must not outlive what it works on.
    QThreadPool.globalInstance().waitForDone()
    return status
