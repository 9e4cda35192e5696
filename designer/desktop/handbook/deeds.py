"""What is done to a handbook from its menus, by keys and by drags."""

from __future__ import annotations

import os
from collections.abc import Callable, Sequence
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, Qt
from PySide6.QtGui import QAction, QKeySequence

from designer.drill.handbook_edits import (
    renumbered,
    with_drills,
    with_drills_moved,
    with_section,
    with_section_moved,
    without_drills,
    without_section,
)

if TYPE_CHECKING:
    from designer.desktop.handbook.window import HandbookWindow

Std = QKeySequence.StandardKey
_Entry = tuple[str, str, QKeySequence.StandardKey | str | None, Callable[[], object]] | None


class BookDeeds(QObject):
    """Edits the handbook of a window, each as one step that can be taken back."""

    def __init__(self, window: HandbookWindow) -> None:
        super().__init__(window)
        self._window = window
        outline = window.outline
        outline.drills_moved.connect(self.move_drills)
        outline.section_moved.connect(self.move_section)
        outline.files_dropped.connect(self.add_files)
        outline.removal_wanted.connect(self.remove)
        window.drill_form.removal_wanted.connect(self.remove)

    def undo(self) -> None:
        """Take back the last step."""
        self._window.finish()
        self._window.document.stack.undo()

    def redo(self) -> None:
        """Do it again."""
        self._window.document.stack.redo()

    def add_section(self) -> None:
        """Add a section after the one that is chosen, and let it be named."""
        kind, _ = self._window.outline.chosen()
        place = len(self._window.document.book.sections) if kind == "book" else self._window.outline.insertion()[0] + 1
        self._window.document.perform("Add a section", with_section(self._window.document.book, place, "New section"))
        self._window.outline.choose(("section", str(place)))
        self._window.section_form.title.setFocus()
        self._window.section_form.title.selectAll()

    def add_drills(self) -> None:
        """Ask for drills, and add them after what is chosen."""
        if self._window.is_kept():
            assert self._window.document.path is not None
            self.add_files(
                self._window.prompts.open_paths(self._window, self._window.document.path.parent),
                *self._window.outline.insertion(),
            )

    def add_all(self) -> None:
        """Add every drill of the handbook's folder and below that it does not have."""
        if self._window.is_kept():
            assert self._window.document.path is not None
            found = sorted(self._window.document.path.parent.rglob("*.drill.json"))
            self.add_files(found, *self._window.outline.insertion())

    def add_files(self, paths: Sequence[Path], section: int, place: int) -> None:
        """Add drills before ``place`` of a section; what lies outside the handbook's folder is refused."""
        if not paths or not self._window.is_kept():
            return
        assert self._window.document.path is not None
        folder = Path(os.path.realpath(self._window.document.path.parent))
        real = [Path(os.path.realpath(path)) for path in paths]
        outside = [path.name for path in real if not path.is_relative_to(folder)]
        inside = [path.relative_to(folder).as_posix() for path in real if path.is_relative_to(folder)]
        book = self._window.document.book
        if not book.sections:
            book, section, place = with_section(book, 0, "Drills"), 0, 0
        self._window.document.perform("Add drills", with_drills(book, section, place, inside))
        if outside:
            self._window.notice.say(
                "outside",
                f"{', '.join(outside)}: a handbook’s drills lie in its own folder or below. Copy them there first.",
            )

    def move_drills(self, numbers: Sequence[str], section: int, place: int) -> None:
        """Move drills before ``place`` of a section."""
        self._window.document.perform(
            "Move drills", with_drills_moved(self._window.document.book, numbers, section, place)
        )

    def move_section(self, place: int, to: int) -> None:
        """Move a section before the one at ``to``."""
        self._window.document.perform("Move a section", with_section_moved(self._window.document.book, place, to))
        self._window.outline.choose(("section", str(to - (to > place))))

    def shift(self, step: int) -> None:
        """Move what is chosen one place earlier or later; a drill goes on into the next section."""
        kind, name = self._window.outline.chosen()
        sections = self._window.document.book.sections
        if kind == "section" and 0 <= int(name) + step < len(sections):
            self.move_section(int(name), int(name) + (2 if step > 0 else -1))
        if kind != "drill":
            return
        section = next(at for at, one in enumerate(sections) if any(e.number == name for e in one.drills))
        place = [entry.number for entry in sections[section].drills].index(name) + step
        if 0 <= place < len(sections[section].drills):
            self.move_drills((name,), section, place + (step > 0))
        elif 0 <= section + step < len(sections):
            file = next(entry.file for entry in self._window.document.book.entries() if entry.number == name)
            self.move_drills((name,), section + step, 0 if step > 0 else len(sections[section + step].drills))
            self._window.outline.choose(
                ("drill", next(e.number for e in self._window.document.book.entries() if e.file == file))
            )

    def remove(self) -> None:
        """Take the chosen drills, or the chosen section, out of the handbook; the files stay where they are."""
        numbers = self._window.outline.chosen_numbers()
        kind, name = self._window.outline.chosen()
        if numbers:
            self._window.document.perform("Take drills out", without_drills(self._window.document.book, numbers))
        elif kind == "section":
            self._window.document.perform("Take a section out", without_section(self._window.document.book, int(name)))

    def renumber(self) -> None:
        """Give all numbers anew, after leave: printed sheets would no longer fit."""
        more = "Sheets that are printed already keep their old numbers."
        if self._window.prompts.yes(
            self._window, "Number all drills anew, in the order they stand in?", more, "Number anew"
        ):
            self._window.document.perform("Number all drills anew", renumbered(self._window.document.book))


def _menus(window: HandbookWindow) -> tuple[tuple[str, tuple[_Entry, ...]], ...]:
    deeds, files = window.deeds, window.files
    return (
        (
            "File",
            (
                ("new", "New handbook", Std.New, files.new),
                ("open", "Open …", Std.Open, files.open),
                None,
                ("save", "Save", Std.Save, window.save),
                ("save as", "Save as …", Std.SaveAs, window.save_as),
                None,
                ("print", "Print the handbook …", Std.Print, window.print_book),
                ("stop", "Stop the printing", None, window.stop_printing),
                None,
                ("close", "Close", Std.Close, window.close),
            ),
        ),
        (
            "Edit",
            (
                ("undo", "Undo", Std.Undo, deeds.undo),
                ("redo", "Redo", Std.Redo, deeds.redo),
                None,
                ("section", "Add a section", "Ctrl+Shift+N", deeds.add_section),
                ("drills", "Add drills …", "Ctrl+D", deeds.add_drills),
                ("all", "Add all drills of the folder", None, deeds.add_all),
                ("remove", "Take out what is chosen\tDel", None, deeds.remove),
                None,
                ("earlier", "Earlier", "Alt+Up", partial(deeds.shift, -1)),
                ("later", "Later", "Alt+Down", partial(deeds.shift, 1)),
                ("renumber", "Number all drills anew …", None, deeds.renumber),
                None,
                ("whole", "The whole handbook", "Ctrl+B", lambda: window.outline.choose(("book", ""))),
                ("open drill", "Open the drill", "Ctrl+Return", window.open_chosen),
            ),
        ),
    )


def build_menus(window: HandbookWindow) -> dict[str, QAction]:
    """Fill the menu bar of a handbook's window and return its actions by name."""
    actions: dict[str, QAction] = {}
    for title, entries in _menus(window):
        menu = window.menuBar().addMenu(f"&{title}")
        for entry in entries:
            if entry is None:
                menu.addSeparator()
                continue
            name, words, keys, do = entry
            action = menu.addAction(words)
            if keys is not None:
                action.setShortcut(QKeySequence(keys))
                action.setShortcutContext(Qt.ShortcutContext.WindowShortcut)
            action.triggered.connect(lambda _=False, do=do: do())
            actions[name] = action
    window.document.stack.canUndoChanged.connect(actions["undo"].setEnabled)
    window.document.stack.canRedoChanged.connect(actions["redo"].setEnabled)
    for name in ("undo", "redo", "stop"):
        actions[name].setEnabled(False)
    return actions
