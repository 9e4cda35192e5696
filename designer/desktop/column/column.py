"""The card column: the card of the setting in view, live, each sentence opening the record behind it."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING, Final

from PySide6.QtCore import Qt, QTimer, Signal
from PySide6.QtGui import QColor, QKeyEvent, QPainter, QPaintEvent, QResizeEvent
from PySide6.QtWidgets import QFrame, QScrollArea, QVBoxLayout, QWidget

from designer.desktop.bursts import Bursts
from designer.desktop.column.entries import Entry, Seen, entries
from designer.desktop.column.facts import FactsRow
from designer.desktop.column.heading import Heading
from designer.desktop.column.place_text import PlaceText
from designer.desktop.column.reader_bar import ReaderBar
from designer.desktop.column.sentence import SentenceRow
from designer.desktop.column.stops import chain, stops, work
from designer.desktop.controls import stacked, tinted
from designer.desktop.document import Document
from designer.desktop.fonts import BODY, font
from designer.desktop.style import look, scroll_bar_sheet, style
from designer.desktop.timing import GESTURE_REST
from designer.desktop.view import View
from designer.wording.sentence import Sentence, typeset

if TYPE_CHECKING:
    from designer.desktop.canvas.court_canvas import CourtCanvas
    from designer.desktop.column.open_form import OpenForm
    from designer.desktop.column.opener import Opener
    from designer.desktop.column.writer import Writer
    from designer.desktop.own_words import Writing
    from designer.desktop.picking.picker import Picker
    from designer.wording.card import Reader

WIDE: Final = 500
"""From this width on the card has the larger type and the wider margins."""

_NOTHING_TO_SCROLL: Final = "QScrollBar::handle:vertical:disabled { background: transparent; }"


class CardColumn(QWidget):
    """The reader's bar over the card.

    ``wanted`` asks for a record that is not there yet: "rule", "finish" … ``shot`` for a ball to be drawn.
    """

    wanted = Signal(str)
    printed = Signal()
    said = Signal(str)
    """Something to be told at the foot of the window."""

    play_wanted = Signal(object)
    """The sequence should be played from the step of this sentence on."""
    refreshed = Signal(object)
    """The words of the card as it is shown now."""

    def __init__(self, document: Document, view: View, bursts: Bursts, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._document, self._view, self._bursts = document, view, bursts
        self.ask_all = False
        self.canvas: CourtCanvas | None = None
        """The court that forms let things be picked on."""
        self._seen: dict[Reader, Seen] = {}
        self._rows: dict[str, SentenceRow] = {}
        self._headings: dict[str, Heading] = {}
        self._opener: Opener | None = None
        self._writer: Writer | None = None
        self._writing: Writing | None = None
        self._order: list[QWidget] = []
        self._stops: list[QWidget] = []
        self.bar = ReaderBar(self)
        self.bar.chosen.connect(lambda _: self.refresh())
        self.bar.printed.connect(self.printed)
        self._build()
        self._later = QTimer(self)
        self._later.setSingleShot(True)
        self._later.timeout.connect(self.refresh)
        document.shown_changed.connect(self._soon)
        view.at_changed.connect(self.sort)
        view.units_changed.connect(self._soon)
        view.selection_changed.connect(self._show_states)
        view.marking_changed.connect(self._show_states)
        style().changed.connect(self._colour)
        self._colour()

    def sentences(self) -> tuple[SentenceRow, ...]:
        """Return the sentences as controls, from top to bottom."""
        widgets = (self._page.itemAt(n).widget() for n in range(self._page.count()))  # type: ignore[union-attr]
        return tuple(widget for widget in widgets if isinstance(widget, SentenceRow))

    @property
    def form(self) -> OpenForm | None:
        """Return the form that is open."""
        return None if self._opener is None else self._opener.form

    @property
    def picker(self) -> Picker | None:
        """Return what lets things be picked on the court for the open form."""
        return None if self._opener is None else self._opener.picker

    def sort(self, *_: object) -> None:
        """Let the sentences come in the order of the card again: what they stood in was kept while they were edited."""
        for seen in self._seen.values():
            seen.order.clear()
        self._soon()

    def refresh(self) -> None:
        """Show the card of the setting in view. Widgets whose sentence is still there are kept."""
        from designer.wording.card import card_words

        self._later.stop()
        drill, view, reader = self._document.shown, self._view, self.bar.reader
        card = card_words(drill, view.at, reader, player=view.you, units=view.units)
        self._writing = None
        self.title.show_text(self._read(drill.title))
        self.objective.show_text(drill.objective)
        if self._writer is not None:
            self._writer.follow()
        self.facts.show_facts(card.facts)
        seen = self._seen.setdefault(reader, Seen())
        self._lay(list(entries(card, drill, view, reader, self.written, seen, ask_all=self.ask_all)))
        if self._opener is not None:
            self._opener.show()
        self._show_states()
        self.refreshed.emit(card)

    # what the card holds

    def _lay(self, entries: list[Entry]) -> None:
        form = self.form
        if self._opener is not None:
            self._opener.settle(entries)
        order: list[QWidget] = [self.title, self.objective, self.facts]
        rows: dict[str, SentenceRow] = {}
        headings: dict[str, Heading] = {}
        for entry in entries:
            if isinstance(entry.words, Sentence):
                row = self._row(entry, entry.words)
                rows[entry.key] = row
                order.append(row)
                if form is not None and self._under == entry.key:
                    order.append(form)
            elif isinstance(entry.words, QWidget):
                order.append(entry.words)
            else:
                heading = headings[entry.key] = self._heading(entry, entry.words)
                order.append(heading)
        if form is not None and form not in order:
            order.insert(3, form)
        for old in (*self._rows.items(), *self._headings.items()):
            if old[0] not in rows and old[0] not in headings:
                self._page.removeWidget(old[1])
                old[1].hide()
                old[1].deleteLater()
        self._rows, self._headings = rows, headings
        for place, widget in enumerate(order):
            if self._page.indexOf(widget) != place:
                self._page.removeWidget(widget)
                self._page.insertWidget(place, widget)
                widget.show()
        self._order = order
        self._chain()

    def _chain(self) -> None:
        """Let the Tab key go through the page as it is seen."""
        found = [stop for widget in self._order for stop in stops(widget)]
        if found != self._stops:
            self._stops = found
            chain(found)

    def _row(self, entry: Entry, sentence: Sentence) -> SentenceRow:
        row = self._rows.get(entry.key)
        if row is None:
            row = SentenceRow(entry.key)
            row.pointed.connect(self._point)
            row.opens.connect(self._press)
            row.confirmed.connect(self._confirm)
            row.played.connect(lambda key: self.play_wanted.emit(self._rows[key].sentence))
        row.setFont(font(BODY + 1 if self.width() >= WIDE else BODY))
        row.show_sentence(sentence)
        row.offer(entry.usual)
        return row

    def _heading(self, entry: Entry, words: str) -> Heading:
        heading = self._headings.get(entry.key)
        if heading is None:
            heading = Heading(entry.section, words)
            heading.wanted.connect(self.wanted)
        heading.show_words(words, faint=entry.empty)
        return heading

    def _confirm(self, key: str) -> None:
        self._opened().confirm(self._rows[key])

    # the open form

    def open(self, about: str, under: str | None = None, field: str = "") -> bool:
        """Open the form of what ``about`` names: a record, a letter, a progression, "drill:facts".

        It stands under the sentence of the key ``under``, else under the first that is about it; ``field`` gets the
        keyboard. Returns whether there is such a form.
        """
        return self._opened().open(about, under, field)

    def ask_where(self) -> None:
        """Let the first place that the open form judges by be picked on the court."""
        self._opened().ask_where()

    def close_form(self) -> None:
        """Close the form that is open."""
        if self._opener is not None:
            self._opener.close()

    def row(self, key: str) -> SentenceRow | None:
        """Return the sentence of this key."""
        return self._rows.get(key)

    def write(self, section: str, number: int | None = None) -> None:
        """Put the caret into one of a section's own texts, into a new one without ``number``: "cues", "watch", "care"."""
        if self._document.read_only:
            return
        if self._writer is None:
            from designer.desktop.column.writer import Writer

            self._writer = Writer(self, self._document, self._bursts)
        self.close_form()
        self._writer.begin(section, number)

    def _read(self, text: str) -> str:
        """Return a text of the coach's as it was typed, a space at its end too: it may have the caret in it."""
        return text if "{" not in text else self.writing().read(text).text

    @property
    def written(self) -> Writer | None:
        """Return what writes a text where it stands, while it does."""
        return self._writer if self._writer is not None and self._writer.row is not None else None

    def writing(self) -> Writing:
        """Return what reads and keeps the texts of the drill as it is shown."""
        if self._writing is None:
            from designer.desktop.own_words import Writing

            self._writing = Writing(self._document.shown, self._view.at)
        return self._writing

    def drop(self, widget: QWidget) -> None:
        """Take a form that was closed, or a text that is written, off the page."""
        self._order = [each for each in self._order if each is not widget]
        self._stops = []
        self._page.removeWidget(widget)
        widget.hide()
        widget.deleteLater()
        self._show_states()

    def follow_form(self, form: OpenForm) -> None:
        """Take note that rows of an open form have come or gone."""
        if form in self._order:
            self._chain()

    def scroll_to(self, widget: QWidget) -> None:
        """Bring a form, with the sentence over it, or a text into sight once it has its place."""
        QTimer.singleShot(0, widget, lambda: self._bring(widget))

    def _bring(self, widget: QWidget) -> None:
        over = self.row(self._under or "") or self.facts
        top = widget.y() - over.height() - 8
        bar, room = self._scroll.verticalScrollBar(), self._scroll.viewport().height()
        lowest = widget.y() + widget.height() + 40 - room
        bar.setValue(min(max(bar.value(), lowest), top))

    def _opened(self) -> Opener:
        if self._opener is None:
            # The forms are many and no window needs them to take its first key.
            from designer.desktop.column.opener import Opener

            self._opener = Opener(self, self._document, self._view, self._bursts)
        return self._opener

    def _press(self, key: str) -> None:
        self._opened().press(self._rows[key])

    # what follows the window's state

    @property
    def _under(self) -> str | None:
        return None if self._opener is None else self._opener.under

    def _show_states(self, *_: object) -> None:
        picked, changed = self._view.selection, self._view.changed_ids()
        for key, row in self._rows.items():
            about = frozenset(row.sentence.about)
            row.show_state(
                picked=bool(about & picked),
                open=key == self._under,
                changed=bool(about & changed) and not row.sentence.missing,
            )

    def _point(self, id: object) -> None:
        self._view.set_hovered(id if isinstance(id, str) and id in self._view.setting.ids() else None)

    def _soon(self, *_: object) -> None:
        # While a gesture goes on the words wait for it to rest: the drawing must keep up with the hand.
        self._later.start(GESTURE_REST if self._document.previewing else 0)

    def _typed(self, field: str, label: str) -> Callable[[str], None]:
        def take(text: str) -> None:
            merge = self._bursts.key(field)
            self._document.perform(label, self._document.drill.changed(**{field: text}), merge=merge)

        return take

    # how it stands

    def _build(self) -> None:
        outer = stacked(self)
        outer.setContentsMargins(1, 0, 0, 0)
        outer.addWidget(self.bar)
        self._scroll = QScrollArea()
        self._scroll.setWidgetResizable(True)
        self._scroll.setFrameShape(QFrame.Shape.NoFrame)
        self._scroll.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        # The bar keeps its place: the words must not jump when a form makes the page longer.
        self._scroll.setVerticalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOn)
        bar = self._scroll.verticalScrollBar()
        bar.setEnabled(False)
        bar.rangeChanged.connect(lambda least, most: bar.setEnabled(most > least))
        self._scroll.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        outer.addWidget(self._scroll, 1)
        page = QWidget()
        self._page = QVBoxLayout(page)
        self._page.setSpacing(0)
        self._scroll.setWidget(page)
        self.title = PlaceText("What is it called?", font(20, bold=True), 28, dressed=typeset)
        self.title.typed.connect(self._typed("title", "Change the title"))
        self.objective = PlaceText(
            "What do the players set out to do?",
            font(BODY),
            20,
            balanced=True,
            dressed=lambda text: f"“{typeset(text)}”",
            writing=self.writing,
        )
        self.objective.typed.connect(self._typed("objective", "Change the objective"))
        self.facts = FactsRow()
        self.facts.opens.connect(lambda key, field: self.open(key, field=field))
        for text in (self.title, self.objective):
            text.setReadOnly(self._document.read_only)
        for widget in (self.title, self.objective, self.facts):
            self._page.addWidget(widget)
        self._page.addStretch(1)
        self._pad()

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._pad()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Let Enter press a button or open a list, and Esc close the form, whatever has the keyboard."""
        if event.key() == Qt.Key.Key_Escape and self._opener is not None and self._opener.form is not None:
            self._opener.escape()
            return
        held = self.focusWidget()
        if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter) and work(held):
            return
        super().keyPressEvent(event)

    def paintEvent(self, _: QPaintEvent) -> None:
        QPainter(self).fillRect(0, 0, 1, self.height(), QColor(look().hairline))

    @property
    def is_wide(self) -> bool:
        """Whether there is room for the larger type."""
        return self.width() >= WIDE

    def _pad(self) -> None:
        wide = self.is_wide
        left, right = (32, 44) if wide else (24, 34)
        self.bar.pad(left, right)
        self._page.setContentsMargins(left - 14, 10, right - 26, 24)
        self.title.set_leading(font(24 if wide else 20, bold=True), 30)
        for widget in (self.objective, *self._rows.values()):
            if isinstance(widget, PlaceText):
                widget.set_leading(font(BODY + 1 if wide else BODY), 20)
            else:
                widget.setFont(font(BODY + 1 if wide else BODY))

    def _colour(self, *_: object) -> None:
        self._scroll.verticalScrollBar().setStyleSheet(scroll_bar_sheet(look()) + _NOTHING_TO_SCROLL)
        tinted(self, look().panel)
        for text in (self.title, self.objective):
            text.colour()
        if self._opener is not None:
            self._opener.show()
        self.update()
