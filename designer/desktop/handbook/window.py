"""The handbook's window: its sections and drills, the form of what is chosen, and how long the book is."""

from __future__ import annotations

from collections.abc import Iterable
from functools import partial
from pathlib import Path
from typing import Final

from PySide6.QtCore import QEvent, QFileSystemWatcher, QSize, Qt, QTimer, QUrl, Signal
from PySide6.QtGui import QCloseEvent, QDesktopServices
from PySide6.QtWidgets import QMainWindow, QSplitter, QStackedWidget, QWidget

from designer.desktop import settings
from designer.desktop.controls import stacked, tinted
from designer.desktop.fonts import scaled
from designer.desktop.handbook.book_document import BookDocument
from designer.desktop.handbook.book_form import BookForm
from designer.desktop.handbook.deeds import BookDeeds, build_menus
from designer.desktop.handbook.files import BookFiles
from designer.desktop.handbook.looking import Looking, Seen
from designer.desktop.handbook.outline import Outline
from designer.desktop.handbook.part_forms import DrillForm, SectionForm
from designer.desktop.handbook.printing import Order, Printing
from designer.desktop.handbook.progress_bar import FootLine
from designer.desktop.notice import NoticeBar
from designer.desktop.prompts import Prompts
from designer.desktop.style import look, style
from designer.drill.handbook import Handbook

REST: Final = 300
"""Milliseconds without a change before the drills are looked at again."""
_NAMED: Final = 5
"""As many drills, and sentences about them, the notice after a printing names; the book has them all."""


class HandbookWindow(QMainWindow):
    """One handbook. ``drills_wanted`` asks the program to open drills: a tuple of paths. ``closing`` comes when it closes."""

    drills_wanted = Signal(object)
    closing = Signal(object)

    def __init__(self, document: BookDocument, prompts: Prompts) -> None:
        super().__init__()
        self.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        self.document = document
        self.prompts = prompts
        document.setParent(self)
        self.files = BookFiles(document, prompts, self)
        self.looking = Looking(self)
        self.printing: Printing | None = None
        self._seen: dict[str, Seen] = {}
        self._turn = 0
        self._make()
        self._place()
        self._join()
        self.deeds = BookDeeds(self)
        self.actions_by_name = build_menus(self)
        self.foot.drills.clicked.connect(self.actions_by_name["drills"].trigger)
        self.foot.section.clicked.connect(self.actions_by_name["section"].trigger)
        self._watch = QFileSystemWatcher(self)
        self._rest = QTimer(self)
        self._rest.setSingleShot(True)
        self._rest.setInterval(REST)
        self._rest.timeout.connect(self.look_again)
        self._watch.fileChanged.connect(lambda _: self._rest.start())
        self._watch.directoryChanged.connect(lambda _: self._rest.start())
        self._show_all()
        self.look_again()

    # its parts

    def _make(self) -> None:
        document = self.document
        self.notice = NoticeBar()
        self.outline = Outline()
        self.book_form = BookForm(lambda: document.book, document.perform)
        self.section_form = SectionForm(lambda: document.book, document.perform)
        self.drill_form = DrillForm(lambda: document.book, document.perform)
        self.forms = QStackedWidget()
        for form in (self.book_form, self.section_form, self.drill_form):
            self.forms.addWidget(form)
            form.refused.connect(lambda words: self.notice.say("refused", words))
        self.foot = FootLine()

    def _place(self) -> None:
        self.splitter = QSplitter(Qt.Orientation.Horizontal)
        self.splitter.setHandleWidth(1)
        self.splitter.setChildrenCollapsible(False)
        self.splitter.addWidget(self.outline)
        self.splitter.addWidget(self.forms)
        self.splitter.setStretchFactor(0, 3)
        self.splitter.setStretchFactor(1, 2)
        whole = QWidget()
        column = stacked(whole)
        column.addWidget(self.notice)
        column.addWidget(self.splitter, 1)
        column.addWidget(self.foot)
        self.setCentralWidget(whole)
        self.setMinimumSize(QSize(scaled(760), scaled(480)))
        self.resize(scaled(1180), scaled(740))
        self.splitter.setSizes([scaled(730), scaled(450)])

    def _join(self) -> None:
        document, outline = self.document, self.outline
        document.changed.connect(self._changed)
        document.path_changed.connect(lambda _: self._show_title())
        document.stack.cleanChanged.connect(lambda _: self._show_title())
        outline.chose.connect(lambda _: self._show_form())
        outline.itemDoubleClicked.connect(lambda *_: self.open_chosen())
        self.drill_form.renumbered.connect(lambda number: outline.choose(("drill", number)))
        self.drill_form.open_wanted.connect(lambda file: self._open((file,)))
        looking = self.looking
        looking.seen.connect(self._take_seen)
        looking.measured.connect(self._take_measured)
        looking.counting.connect(self._take_counting)
        looking.counted.connect(self._take_counted)
        self.foot.print_wanted.connect(self.print_book)
        self.foot.stop_wanted.connect(self.stop_printing)
        style().changed.connect(self._take_look)
        self._take_look()

    def _take_look(self, *_: object) -> None:
        tinted(self, look().window)

    # what is shown

    def _changed(self, before: Handbook, after: Handbook) -> None:
        self._show_all()
        names = (
            "sections",
            "vocabulary",
            "house",
            "house_rules",
            "paper",
            "own_leaves",
            "planners",
            "glossary",
            "safety",
            "language",
            "brand",
            "licence",
        )
        if any(getattr(before, name) != getattr(after, name) for name in names):
            self._rest.start()

    def _show_all(self) -> None:
        self._show_title()
        self.outline.show_book(self.document.book)
        self._show_form()

    def _show_title(self) -> None:
        self.setWindowTitle(f"{self.document.name}[*]")
        self.setWindowModified(not self.document.clean)
        self.setWindowFilePath(str(self.document.path or ""))

    def _show_form(self) -> None:
        kind, name = self.outline.chosen()
        book = self.document.book
        if kind == "drill":
            entry = next(entry for entry in book.entries() if entry.number == name)
            self.drill_form.show_entry(entry, self._seen.get(name))
            self.forms.setCurrentWidget(self.drill_form)
        elif kind == "section":
            self.section_form.place = int(name)
            self.section_form.show_record(book.sections[int(name)])
            self.forms.setCurrentWidget(self.section_form)
        else:
            self.book_form.show_record(book)
            self.forms.setCurrentWidget(self.book_form)

    # what is seen of the drills

    def look_again(self) -> None:
        """Look at the drills again: which are missing or changed, and how long the book is."""
        self._rest.stop()
        path = self.document.path
        if path is None:
            self.foot.show_length(_drills(self.document.book))
            return
        self._turn = self.looking.look(path, self.document.book)
        known = set(self._watch.files()) | set(self._watch.directories())
        wanted = {str(path.parent), *(str(path.parent / entry.file) for entry in self.document.book.entries())}
        missing = [name for name in sorted(wanted - known) if Path(name).exists()]
        if missing:
            self._watch.addPaths(missing)

    def _take_seen(self, turn: int, number: str, seen: Seen) -> None:
        if turn != self._turn:
            return
        self._seen[number] = seen
        self.outline.show_seen(number, seen)
        if self.outline.chosen() == ("drill", number):
            self._show_form()

    def _take_measured(self, turn: int, number: str, found: object) -> None:
        if turn == self._turn:
            self.outline.show_sheets(number, getattr(found, "sheets", 0))

    def _take_counting(self, turn: int, done: int, whole: int) -> None:
        if turn == self._turn:
            self.foot.show_length(f"{self._state()}  ·  counting the pages, {done} of {whole} drills")

    def _take_counted(self, turn: int, pages: int) -> None:
        if turn == self._turn:
            self.foot.show_length(f"{self._state()}  ·  {pages} pages")

    def _state(self) -> str:
        numbers = [entry.number for entry in self.document.book.entries()]
        seen = [self._seen[number] for number in numbers if number in self._seen]
        left_out = sum(one.leaf.summary is None for one in seen)
        changed = sum(one.leaf.summary is not None and "changed" in one.words for one in seen)
        short = sum(bool(one.leaf.summary and one.leaf.summary.broken) for one in seen)
        parts = [_drills(self.document.book)]
        parts += [f"{left_out} left out"] if left_out else []
        parts += [f"{changed} changed"] if changed else []
        parts += [f"{short} short of the house rules"] if short else []
        return "  ·  ".join(parts)

    # files

    def save(self) -> bool:
        """Save the handbook where it is kept, or ask where."""
        self.finish()
        saved = self.files.save()
        self.look_again()
        return saved

    def save_as(self) -> bool:
        """Ask where, and save the handbook there."""
        self.finish()
        saved = self.files.save_as()
        self.look_again()
        return saved

    def is_kept(self) -> bool:
        """Whether the handbook has a folder for its drills; a new one is saved first."""
        return self.document.path is not None or self.save_as()

    def open_chosen(self) -> None:
        """Open the chosen drill in a window of its own."""
        numbers = set(self.outline.chosen_numbers())
        self._open(entry.file for entry in self.document.book.entries() if entry.number in numbers)

    def _open(self, files: Iterable[str]) -> None:
        if self.document.path is not None:
            paths = tuple(self.document.path.parent / file for file in files)
            if paths:
                self.drills_wanted.emit(paths)

    # printing

    def print_book(self) -> None:
        """Ask where, and print the handbook off this thread."""
        if self.printing is not None or not self.is_kept():
            return
        self.finish()
        path = self.document.path
        assert path is not None
        output = self.files.output_path()
        if output is None:
            return
        self.printing = Printing(self)
        self.printing.told.connect(self.foot.show_progress)
        self.printing.ended.connect(partial(self._printed, output))
        self.notice.clear()
        self.actions_by_name["print"].setEnabled(False)
        self.actions_by_name["stop"].setEnabled(True)
        self.foot.show_progress(0, len(self.document.book.entries()), "reading the drills")
        self.printing.begin(Order(self.document.book, path, output))

    def stop_printing(self) -> None:
        """Stop at the next drill; no file is left behind."""
        if self.printing is not None:
            self.printing.stop()

    def _printed(self, output: Path, made: object, problem: str) -> None:
        from designer.cards.handbook import Book

        if self.printing is not None:
            self.printing.deleteLater()
        self.printing = None
        self.foot.show_idle()
        self.actions_by_name["print"].setEnabled(True)
        self.actions_by_name["stop"].setEnabled(False)
        if problem:
            self.prompts.say(self, "The handbook was not printed.", problem)
        elif not isinstance(made, Book):
            self.notice.say("stopped", "The printing was stopped; no file was written.")
        else:
            said = [f"The handbook is printed: {output.name}, {made.pages} pages."]
            out = [f"{number} is left out: {reason}" for number, reason in made.left_out.items()]
            said += out[:_NAMED]
            said += [f"{len(out) - _NAMED} more are left out; the book lists them."] if len(out) > _NAMED else []
            self.notice.say(
                "printed",
                " ".join((*said, *made.broken_in_words(_NAMED), *made.notices[:_NAMED])),
                ("Open it", lambda: _show(output)),
                ("Open its folder", lambda: _show(output.parent)),
            )
            self.look_again()

    # its life

    def finish(self) -> None:
        """Take what stands in a box that is still being typed into."""
        form = self.forms.currentWidget()
        if isinstance(form, BookForm | SectionForm | DrillForm):
            form.finish()

    def changeEvent(self, event: QEvent) -> None:
        super().changeEvent(event)
        if event.type() == QEvent.Type.ActivationChange and self.isActiveWindow() and self.document.path is not None:
            self._rest.start()

    def closeEvent(self, event: QCloseEvent) -> None:
        self.finish()
        if not self.files.may_close():
            event.ignore()
            return
        if self.printing is not None:
            self.printing.stop()
            self.printing.wait()
        self._rest.stop()
        self.looking.stop()
        self.files.close()
        self.document.stack.blockSignals(True)
        if self.document.path is not None:
            settings.set_last_folder(self.document.path.parent)
        event.accept()
        self.closing.emit(self)


def _drills(book: Handbook) -> str:
    count = len(book.entries())
    return f"{count} drill{'s' * (count != 1)}"


def _show(path: Path) -> None:
    QDesktopServices.openUrl(QUrl.fromLocalFile(str(path)))
