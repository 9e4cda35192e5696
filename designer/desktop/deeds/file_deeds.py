"""The File menu, and what a blank court offers."""

from __future__ import annotations

from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, QTimer
from PySide6.QtWidgets import QApplication

from designer.bundle import MissingFile, sample
from designer.desktop import settings
from designer.desktop.blank import with_players
from designer.desktop.start_row import said

if TYPE_CHECKING:
    from designer.desktop.preferences import Preferences
    from designer.desktop.situations import Situation
    from designer.desktop.start_shelf import StartShelf
    from designer.desktop.window import MainWindow


class FileDeeds(QObject):
    """New, open, save, close."""

    def __init__(self, window: MainWindow) -> None:
        super().__init__(window)
        self._window = window
        actions = window.actions_by_name
        actions["new"].triggered.connect(lambda: window.wanted.emit(()))
        actions["open"].triggered.connect(self.open)
        actions["save"].triggered.connect(window.filing.save)
        actions["save as"].triggered.connect(window.filing.save_as)
        actions["save copy"].triggered.connect(self.save_copy)
        actions["revert"].triggered.connect(self.revert)
        actions["handbook"].triggered.connect(self.open_handbook)
        actions["close"].triggered.connect(window.close)
        actions["quit"].triggered.connect(QApplication.closeAllWindows)
        actions["first drill"].triggered.connect(self.open_sample)
        actions.menus["recent"].aboutToShow.connect(self._list_recent)
        actions.menus["Window"].aboutToShow.connect(self._list_windows)
        actions["next window"].triggered.connect(self.go_to_next)
        actions["preferences"].triggered.connect(self.prefer)
        self.preferences: Preferences | None = None
        window.filing.saved.connect(self._saved)
        window.filing.changed_outside.connect(self._changed_outside)
        window.document.path_changed.connect(self._enable)
        row = window.start_row
        row.opened.connect(lambda path: window.wanted.emit((path,)))
        row.browsed.connect(self.open)
        self._enable()

    def open(self) -> None:
        """Ask for drills, and open each in a window."""
        paths = self._window.prompts.open_paths(self._window, settings.last_folder())
        if paths:
            settings.set_last_folder(paths[0].parent)
            self._window.wanted.emit(paths)

    def open_sample(self) -> None:
        """Open a finished drill to look at, as a new one: a sample itself stays as it is."""
        try:
            path = sample("wide-start.drill.json")
        except MissingFile as reason:
            self._window.prompts.say(self._window, str(reason))
            return
        self._window.copies_wanted.emit((path,))

    def join_shelf(self, shelf: StartShelf) -> None:
        """Do what is chosen on the shelf of ways to start."""
        window = self._window
        shelf.situated.connect(self._start_from)
        shelf.opened.connect(lambda path: window.wanted.emit((path,)))
        shelf.copied.connect(lambda path: window.copies_wanted.emit((path,)))

    def open_handbook(self) -> None:
        """Show the handbook that this drill lies beside, else a new one."""
        from designer.desktop.handbook.files import book_beside

        self._window.book_wanted.emit(book_beside(self._window.document.path))

    def save_copy(self) -> None:
        """Write a copy under another name; this drill goes on under its own."""
        path = self._window.filing.save_copy()
        if path is not None:
            self._window.bottom.say(f"A copy is saved as {path.name}")

    def prefer(self) -> None:
        """Show what is remembered of the user; what they change holds in every window at once."""
        from designer.desktop.preferences import Preferences

        self.preferences = Preferences(self._window)
        self.preferences.changed.connect(self._take_preferences)
        self.preferences.open()

    def _take_preferences(self, _: str) -> None:
        for window in self._windows():
            window.take_preferences()

    def _windows(self) -> list[MainWindow]:
        """Return the program's windows, this one among them."""
        kind = type(self._window)
        return [each for each in QApplication.topLevelWidgets() if isinstance(each, kind) and each.isVisible()]

    def go_to_next(self) -> None:
        """Bring the next drill to the front."""
        windows = self._windows()
        if self._window in windows:
            _bring(windows[(windows.index(self._window) + 1) % len(windows)])

    def _list_windows(self) -> None:
        actions = self._window.actions_by_name
        menu = actions.menus["Window"]
        for action in menu.actions()[2:]:
            menu.removeAction(action)
        windows = self._windows()
        for window in windows:
            dirty = "" if window.document.clean else " *"
            action = menu.addAction(f"{window.filing.name}{dirty}".replace("&", "&&"), partial(_bring, window))
            action.setCheckable(True)
            action.setChecked(window is self._window)
        actions["next window"].setEnabled(len(windows) > 1)

    def revert(self) -> None:
        """Take the drill as it is on disk, as one step that can be undone."""
        window = self._window
        opened = window.filing.revert()
        if opened is None:
            return
        window.notice.clear("outside")
        window.perform("Go back to what was saved", opened.drill)
        if window.document.path is not None:
            window.document.saved_as(window.document.path)

    def put_players(self, count: int) -> None:
        """Put so many players where they usually stand."""
        window = self._window
        document = window.document
        drill = with_players(document.drill, window.view.at, count, document.source, settings.hand())
        window.perform("Add players" if count > 1 else "Add a player", drill)
        window.canvas.setFocus()

    def _start_from(self, situation: Situation) -> None:
        from designer.desktop.situations import with_situation

        window = self._window
        document = window.document
        drill = with_situation(document.drill, window.view.at, situation, document.source, settings.hand())
        window.perform(situation.step, drill)
        window.canvas.setFocus()

    def take_court(self, name: str) -> None:
        """Draw the drill on another court."""
        document = self._window.document
        self._window.perform(
            "Change the court", document.drill.changed(court=document.drill.court.changed(standard=name))
        )

    def _list_recent(self) -> None:
        menu = self._window.actions_by_name.menus["recent"]
        menu.clear()
        paths = settings.recent_files()
        for path in paths:
            menu.addAction(said(path), partial(self._window.wanted.emit, (path,)))
        if not paths:
            menu.addAction("None yet").setEnabled(False)
            return
        menu.addSeparator()
        menu.addAction("Forget these", settings.forget_recent)

    def _saved(self, path: Path) -> None:
        window = self._window
        window.notice.clear("outside")
        window.bottom.say(f"Saved as {path.name}")
        QTimer.singleShot(4000, window.bottom, lambda: window.bottom.say(""))

    def _changed_outside(self) -> None:
        path = self._window.document.path
        name = "The file" if path is None else f"“{path.name}”"
        self._window.notice.say(
            "outside",
            f"{name} was changed by another program.",
            ("Take that one", self.revert),
            ("Keep this one", lambda: self._window.notice.clear("outside")),
        )

    def _enable(self, *_: object) -> None:
        actions, document = self._window.actions_by_name, self._window.document
        actions["revert"].setEnabled(document.path is not None)
        for name in ("save", "save as"):
            actions[name].setEnabled(not document.read_only)


def _bring(window: MainWindow) -> None:
    """Bring a window to the front."""
    if window.isMinimized():
        window.showNormal()
    window.raise_()
    window.activateWindow()
