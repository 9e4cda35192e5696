"""The main window. It makes the parts and joins them; what they do is theirs."""

from __future__ import annotations

import gc
from collections.abc import Sequence
from functools import cached_property
from pathlib import Path
from typing import TYPE_CHECKING, Final

from PySide6.QtCore import QEvent, QObject, QSignalBlocker, QSize, Qt, QTimer, Signal
from PySide6.QtGui import QAction, QCloseEvent, QDragEnterEvent, QDropEvent, QResizeEvent
from PySide6.QtWidgets import QHBoxLayout, QMainWindow, QSplitter, QWidget

from designer.desktop import settings
from designer.desktop.actions import Actions
from designer.desktop.blank import build_records
from designer.desktop.bottom_line import BottomLine
from designer.desktop.bursts import Bursts
from designer.desktop.canvas.court_canvas import CourtCanvas
from designer.desktop.column.column import CardColumn
from designer.desktop.controls import IconButton, stacked, tinted
from designer.desktop.degrees import DegreeRow
from designer.desktop.document import Document
from designer.desktop.filing import Filing
from designer.desktop.fonts import scaled
from designer.desktop.icons import program_icon
from designer.desktop.notice import NoticeBar
from designer.desktop.positions import report_positions
from designer.desktop.prompts import Prompts
from designer.desktop.side_view.checking import NumberChecks
from designer.desktop.side_view.panel import NumbersPanel
from designer.desktop.start_row import StartRow
from designer.desktop.strip import ThingStrip
from designer.desktop.style import look, style
from designer.desktop.tabs import ProgressionTabs
from designer.desktop.timing import AFTER_PAINT
from designer.desktop.view import View
from designer.drill.drill import Drill
from designer.storage.reading import Opened

if TYPE_CHECKING:
    from designer.desktop.deeds.all_deeds import AllDeeds
    from designer.desktop.deeds.play_deeds import PlayDeeds
    from designer.desktop.start_shelf import StartShelf
    from designer.desktop.work import Work
    from designer.wording.sentence import Sentence

COLUMN: Final = 436
WIDE_COLUMN: Final = 560
AT_REST: Final = 250
"""Milliseconds after the first words at which a window that is left alone shows the ways to start."""
MOST_OF_IT: Final = 0.46
"""No more of the window's width goes to the card by itself."""
WIDE: Final = 1500
"""From this width on the card column is the wider one."""


class MainWindow(QMainWindow):
    """One drill in one window.

    ``wanted`` asks the program for other windows: a tuple of paths, empty for a new drill; ``copies_wanted`` for drills that are
    opened as new ones. ``closing`` comes when the window has closed.
    """

    wanted = Signal(object)
    copies_wanted = Signal(object)
    book_wanted = Signal(object)
    closing = Signal(object)

    def __init__(self, document: Document, prompts: Prompts, opened: Opened | None = None) -> None:
        super().__init__()
        self.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        self.document = document
        self.prompts = prompts
        document.setParent(self)
        self.view = View(document, self)
        self.view.set_units(settings.units())  # type: ignore[arg-type]
        self.view.set_theme(look().name)
        self.filing = Filing(document, prompts, self, opened)
        self.bursts = Bursts()
        self.actions_by_name = Actions(self.menuBar(), self)
        self._make()
        self._place()
        self.actions_by_name.triggered.connect(self._do_early)
        self._number_checks = NumberChecks(self.document, self.view, self.bottom)
        self._join()
        report_positions(self)
        self.canvas.viewport().installEventFilter(self)
        self._show_title()
        self._tell(opened)

    @cached_property
    def deeds(self) -> AllDeeds:
        """Return what menus, keys and buttons do. No window needs them to take its first key."""
        from designer.desktop.deeds.all_deeds import deeds_of

        return deeds_of(self)

    @property
    def playing(self) -> PlayDeeds:
        """Return what plays the sequence on the court."""
        return self.deeds.play

    @cached_property
    def work(self) -> Work:
        """Return the one long work that this window may do."""
        from designer.desktop.work import Work

        return Work(self.notice, self)

    def _put_players(self, count: int) -> None:
        self.deeds.file.put_players(count)

    def _take_court(self, name: str) -> None:
        self.deeds.file.take_court(name)

    def _play_step(self, step: Sentence) -> None:
        self.deeds.play.play_step(step)

    def _do_early(self, action: QAction) -> None:
        """Do what a key asks for before the deeds are there: keys wait for a window that is still to be shown."""
        if "deeds" in self.__dict__:
            return
        self.deeds  # noqa: B018 - made by being asked for
        if action.isCheckable() and action.actionGroup() is None:
            with QSignalBlocker(action):
                action.toggle()  # as it was before: the trigger turns it again
        action.trigger()

    @property
    def untouched(self) -> bool:
        """Whether nothing was ever done here, so that another drill may take this window's place."""
        return self.document.path is None and self.document.clean and not self.view.setting.ids()

    def perform(self, label: str, drill: Drill) -> bool:
        """Settle ``drill`` as one step; where the drill is read-only say so instead. Return whether it was settled."""
        if self.document.read_only:
            self.bottom.say("This drill was opened read-only.")
            return False
        self.document.perform(label, drill)
        return True

    def _make(self) -> None:
        document, view = self.document, self.view
        self.tabs = ProgressionTabs(document, view)
        self.degrees = DegreeRow(document, view)
        self.notice = NoticeBar()
        self.start_row = StartRow(document.drill.court.standard)
        self.strip = ThingStrip(view)
        self.unfold = IconButton("unfold", "Show the strip of things")
        self.canvas = CourtCanvas(document, view)
        self.numbers = NumbersPanel(document, view)
        self.column = CardColumn(document, view, self.bursts)
        self.column.canvas = self.canvas
        self.numbers.canvas = self.canvas
        self.bottom = BottomLine(document, view)

    def _place(self) -> None:
        court = QWidget()
        over = self.court = stacked(court)
        for widget in (self.tabs, self.degrees, self.notice, self.start_row):
            over.addWidget(widget)
        row = QHBoxLayout()
        row.setSpacing(0)
        row.addWidget(self.strip)
        row.addWidget(self.unfold, 0, Qt.AlignmentFlag.AlignBottom)
        row.addWidget(self.canvas, 1)
        over.addLayout(row, 1)
        self._put_under_the_card(self.numbers)
        self.splitter = QSplitter(Qt.Orientation.Horizontal)
        self.splitter.setHandleWidth(1)
        self.splitter.setChildrenCollapsible(False)
        self.splitter.addWidget(court)
        self.splitter.addWidget(self.column)
        self.splitter.setStretchFactor(0, 1)
        self.splitter.setStretchFactor(1, 0)
        self.column.setMinimumWidth(320)
        whole = QWidget()
        outer = stacked(whole)
        outer.addWidget(self.splitter, 1)
        outer.addWidget(self.bottom)
        self.setCentralWidget(whole)
        self.setAcceptDrops(True)
        self.setMinimumSize(QSize(800, 520))
        for before, after in zip(
            (self.tabs.plus, self.degrees.button("others"), self.strip.more, self.canvas, self.column.bar.print_button),
            (
                self.degrees.button("easier"),
                self.strip.button("player"),
                self.canvas,
                self.column.bar,
                self.column.title,
            ),
            strict=True,
        ):
            QWidget.setTabOrder(before, after)
        self._moved_by_hand = self._warm = False
        self.shelf: StartShelf | None = None
        self.splitter.splitterMoved.connect(self._took_width)
        self.show_strip(shown=settings.strip_open())
        self._remember_shape()

    def _join(self) -> None:
        document, view = self.document, self.view
        self.canvas.opened.connect(self._open)
        self.canvas.reading_changed.connect(self.bottom.read)
        self.canvas.prompt_changed.connect(self.bottom.prompt)
        self.canvas.said.connect(self.bottom.say)
        self.start_row.players.connect(self._put_players)
        self.start_row.court.connect(self._take_court)
        self.strip.folded.connect(lambda _: self.show_strip(shown=False))
        self.unfold.clicked.connect(lambda: self.show_strip(shown=True))
        self.column.refreshed.connect(self.bottom.show_card)
        self.column.play_wanted.connect(self._play_step)
        self.numbers.level_changed.connect(self._number_checks.ask)
        self.numbers.asked.connect(self._unfold_card)
        self.numbers.appeared.connect(self._keep_form_in_sight)
        self.bottom.shown.connect(self._show_about)
        document.shown_changed.connect(lambda *_: self._show_start())
        document.clean_changed.connect(lambda _: self._show_title())
        document.path_changed.connect(lambda _: self._show_title())
        document.changed.connect(lambda *_: self._show_title())
        style().changed.connect(self._take_look)
        view.at_changed.connect(lambda _: self._show_title())
        self._take_look()
        self._show_start()

    def _open(self, about: str) -> None:
        if self.deeds.edit.write_note(about):
            return
        self._unfold_card()
        if not self.column.open(about):
            self.bottom.say("That has no form.")

    def _unfold_card(self) -> None:
        if self.column.isHidden():
            self.actions_by_name["card"].trigger()

    def _keep_form_in_sight(self) -> None:
        if (form := self.column.form) is not None:
            self.column.scroll_to(form)

    def _show_about(self, at: object, about: Sequence[str]) -> None:
        """Show the setting and the things that a check is about, and open the first."""
        if at is not None:
            self.view.go_to(at)  # type: ignore[arg-type]
        self.view.select(about)
        if about:
            self.column.open(about[0])

    def _show_start(self) -> None:
        blank = not self.view.setting.ids() and not self.document.drill.title and self.document.path is None
        offered = blank and not self.document.read_only
        if not offered and self.start_row.isVisible():
            self.canvas.stay()
        self.start_row.setVisible(offered)
        if self.shelf is not None:
            self.shelf.setVisible(offered)
            self.shelf.take_court(self.document.drill.court.standard)
        elif offered and self._warm:
            self._put_shelf()

    def _put_shelf(self) -> None:
        """Show the ways to start under the card: there the court keeps its place when they go."""
        if self.shelf is None and not self.start_row.isHidden():
            from designer.desktop.start_shelf import StartShelf

            self.shelf = StartShelf(self.document.drill.court.standard)
            self.deeds.file.join_shelf(self.shelf)
            self._put_under_the_card(self.shelf)

    def _put_under_the_card(self, widget: QWidget) -> None:
        """Put under the card what comes and goes while the court is worked on: there the court keeps its place."""
        if (under := self.column.layout()) is not None:
            under.addWidget(widget)

    def show_strip(self, *, shown: bool) -> None:
        """Unfold the strip, or fold it away, and remember it."""
        self.strip.setVisible(shown)
        self.unfold.setVisible(not shown)
        self.actions_by_name.tick("strip", on=shown)
        if shown != settings.strip_open():
            settings.set_strip_open(shown=shown)

    def take_preferences(self) -> None:
        """Follow what the user has chosen in the preferences; the colours come by themselves."""
        units = settings.units()
        self.actions_by_name.tick(f"units {units}")
        self.view.set_units(units)  # type: ignore[arg-type]
        self.deeds.card.take_paper(settings.paper())
        self.actions_by_name.tick(f"theme {settings.theme()}")
        self.numbers.choose_level(settings.level())

    def _show_title(self) -> None:
        self.setWindowTitle(f"{self.filing.name}[*]")
        self.setWindowModified(not self.document.clean)
        self.setWindowFilePath(str(self.document.path or ""))

    def _tell(self, opened: Opened | None) -> None:
        if opened is None:
            return
        if opened.read_only:
            said = " ".join(opened.notices)
            words = f"This drill was written by a newer program. It is shown as far as it is understood. {said}"
            self.notice.say("read-only", words.strip(), keep=True)
        elif opened.notices:
            self.notice.say("mended", " ".join(opened.notices))

    def _take_look(self, *_: object) -> None:
        self.view.set_theme(look().name)
        for widget in (self, self.canvas):
            tinted(widget, look().window)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Wait for the first paint of the court: keys come before the words of the card and what edits need."""
        if event.type() == QEvent.Type.Paint:
            watched.removeEventFilter(self)
            QTimer.singleShot(AFTER_PAINT, self, self.warm_up)
        return super().eventFilter(watched, event)

    def warm_up(self) -> None:
        """Join the deeds, fill in the words, and build what the first edit would wait for."""
        self.deeds  # noqa: B018 - made by being asked for
        self.tabs.refresh()
        self.degrees.refresh()
        self.column.refresh()
        build_records()
        self.setWindowIcon(program_icon())
        self._warm = True
        QTimer.singleShot(AT_REST, self, self._put_shelf)
        if not gc.isenabled():
            gc.freeze()  # once a process: what a later window holds in circles must be found when that closes
            gc.enable()

    # its shape on the screen

    def _remember_shape(self) -> None:
        kept = settings.geometry()
        if kept.isEmpty() or not self.restoreGeometry(kept):
            self.resize(1366, 768)
        width = settings.splitter()
        if not width.isEmpty():
            self._moved_by_hand = self.splitter.restoreState(width)
            self.splitter.setHandleWidth(1)

    def _took_width(self, *_: object) -> None:
        self._moved_by_hand = True

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        if not self._moved_by_hand:
            wanted = scaled(WIDE_COLUMN if self.width() >= WIDE else COLUMN)
            wanted = min(wanted, round(MOST_OF_IT * self.width()))  # large letters must leave a court to draw on
            self.splitter.setSizes([max(320, self.width() - wanted - 1), wanted])

    def changeEvent(self, event: QEvent) -> None:
        super().changeEvent(event)
        if event.type() == QEvent.Type.ActivationChange and not self.isActiveWindow():
            self.filing.keep()

    def _may_stop_work(self) -> bool:
        """Return whether nothing is being made, or the user gives it up: a file is written whole or not at all."""
        words = self.work.busy if "work" in self.__dict__ else ""
        more = "It is not finished; nothing is written if it is stopped now."
        return not words or self.prompts.yes(self, f"{words} goes on. Stop it and close?", more, "Stop it")

    def closeEvent(self, event: QCloseEvent) -> None:
        if not self._may_stop_work() or not self.filing.may_close():
            event.ignore()
            return
        if "work" in self.__dict__:
            self.work.stop()
        settings.set_geometry(self.saveGeometry())
        if self._moved_by_hand:
            settings.set_splitter(self.splitter.saveState())
        self.document.stack.blockSignals(True)
        self.filing.close()
        event.accept()
        self.closing.emit(self)

    # files dropped on it

    def dragEnterEvent(self, event: QDragEnterEvent) -> None:
        if _paths(event):
            event.acceptProposedAction()

    def dropEvent(self, event: QDropEvent) -> None:
        paths = _paths(event)
        if paths:
            event.acceptProposedAction()
            QTimer.singleShot(0, self, lambda: self.wanted.emit(paths))


def _paths(event: QDragEnterEvent | QDropEvent) -> tuple[Path, ...]:
    mime = event.mimeData()
    if not mime.hasUrls():
        return ()
    # Any file is taken: what is no drill is told in a sentence, where a pointer that refuses says nothing.
    return tuple(Path(url.toLocalFile()) for url in mime.urls() if url.isLocalFile())
