"""The card column: the card of the setting in view, live, each sentence opening the record behind it."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from itertools import pairwise
from typing import Any, Final

from PySide6.QtCore import Qt, QTimer, Signal
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QFrame, QScrollArea, QVBoxLayout, QWidget

from designer.desktop.bursts import Bursts
from designer.desktop.column.asks import HEADINGS, answer_to, asked, first_asked
from designer.desktop.column.facts import FactsRow
from designer.desktop.column.heading import Heading
from designer.desktop.column.open_form import OpenForm
from designer.desktop.column.place_text import PlaceText
from designer.desktop.column.reader_bar import ReaderBar
from designer.desktop.column.sentence import SentenceRow
from designer.desktop.controls import tinted
from designer.desktop.document import Document
from designer.desktop.fonts import BODY, font
from designer.desktop.forms import subjects
from designer.desktop.forms.boxes import column as stacked
from designer.desktop.forms.context import Context
from designer.desktop.forms.subjects import Subject
from designer.desktop.style import look, style
from designer.desktop.view import View
from designer.drill import edits
from designer.drill.setting import below
from designer.wording.card import CardWords, card_words
from designer.wording.sentence import Sentence

GESTURE_REST: Final = 150
"""Milliseconds that a gesture rests before the words follow it."""

WIDE: Final = 500
"""From this width on the card has the larger type and the wider margins."""


@dataclass(frozen=True, slots=True)
class Entry:
    """One widget of the page: what it is called and what it shows."""

    key: str
    section: str
    words: str | Sentence


class CardColumn(QWidget):
    """The reader's bar over the card.

    ``wanted`` asks for a record that is not there yet: "rule", "finish" … ``shot`` for a ball to be drawn.
    """

    wanted = Signal(str)
    printed = Signal()
    refreshed = Signal(object)
    """The words of the card as it is shown now."""

    def __init__(self, document: Document, view: View, bursts: Bursts, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._document, self._view, self._bursts = document, view, bursts
        self.ask_all = False
        self._rows: dict[str, SentenceRow] = {}
        self._headings: dict[str, Heading] = {}
        self._form: OpenForm | None = None
        self._under: str | None = None
        self.bar = ReaderBar(self)
        self.bar.chosen.connect(lambda _: self.refresh())
        self.bar.printed.connect(self.printed)
        self._build()
        self._later = QTimer(self)
        self._later.setSingleShot(True)
        self._later.timeout.connect(self.refresh)
        document.shown_changed.connect(self._soon)
        view.at_changed.connect(self._soon)
        view.units_changed.connect(self._soon)
        view.selection_changed.connect(self._show_states)
        style().changed.connect(self._colour)
        self._colour()
        self.refresh()

    @property
    def context(self) -> Context:
        """Return what forms need to know of the drill as it is shown."""
        return Context(self._document.shown, self._view.at, self._view.setting, self._document.source)

    def sentences(self) -> tuple[SentenceRow, ...]:
        """Return the sentences as controls, from top to bottom."""
        widgets = (self._page.itemAt(n).widget() for n in range(self._page.count()))  # type: ignore[union-attr]
        return tuple(widget for widget in widgets if isinstance(widget, SentenceRow))

    @property
    def form(self) -> OpenForm | None:
        """Return the form that is open."""
        return self._form

    def refresh(self) -> None:
        """Show the card of the setting in view. Widgets whose sentence is still there are kept."""
        self._later.stop()
        card = card_words(
            self._document.shown,
            self._view.at,
            self.bar.reader,
            player=self._view.you,
            units=self._view.units,
        )
        self.title.show_text(card.title)
        self.objective.show_text(card.objective)
        self.facts.show_facts(card.facts)
        entries = list(self._entries(card))
        self._lay(entries)
        self._show_form()
        self._show_states()
        self.refreshed.emit(card)

    # what the card holds

    def _entries(self, card: CardWords) -> Iterator[Entry]:
        questions = asked(self._document.shown, self._view.setting, self.bar.reader, card.sections)
        if not self.ask_all:
            questions = first_asked(questions)
        written = {section.key: section for section in card.sections}
        for key in _in_order(list(written), list(questions)):
            section = written.get(key)
            said = () if section is None else tuple(each for each in section.sentences if not each.missing)
            if not said and key not in questions:
                continue
            yield Entry(f"heading {key}", key, HEADINGS.get(key, key) if section is None else section.heading)
            for sentence in (*said, *questions.get(key, ())):
                yield Entry(f"{key} {sentence.key}", key, sentence)

    def _lay(self, entries: list[Entry]) -> None:
        order: list[QWidget] = [self.title, self.objective, self.facts]
        rows: dict[str, SentenceRow] = {}
        headings: dict[str, Heading] = {}
        for entry in entries:
            if isinstance(entry.words, Sentence):
                row = self._row(entry, entry.words)
                rows[entry.key] = row
                order.append(row)
                if self._form is not None and self._under == entry.key:
                    order.append(self._form)
            else:
                heading = headings[entry.key] = self._heading(entry, entry.words)
                order.append(heading)
        if self._form is not None and self._form not in order:
            order.insert(3, self._form)
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
        for before, after in pairwise(order):
            QWidget.setTabOrder(before, after)

    def _row(self, entry: Entry, sentence: Sentence) -> SentenceRow:
        row = self._rows.get(entry.key)
        if row is None:
            row = SentenceRow(entry.key)
            row.pointed.connect(self._point)
            row.opens.connect(self._press)
        row.setFont(font(BODY + 1 if self.width() >= WIDE else BODY))
        row.show_sentence(sentence)
        return row

    def _heading(self, entry: Entry, words: str) -> Heading:
        heading = self._headings.get(entry.key)
        if heading is None:
            heading = Heading(entry.section, words)
            heading.wanted.connect(self.wanted)
        heading.show_words(words)
        return heading

    # the open form

    def open(self, subject: Subject, under: str | None = None, field: str = "") -> None:
        """Open the form of ``subject`` under the sentence of this key, else under the first that is about it."""
        record = subject.read(self._document.shown, self._view.at)
        if record is None:
            return
        place = under or self._about(subject)
        self.close_form()
        others = self._others(place, subject)
        self._form = OpenForm(subject, record, others)
        self._under = place
        self._form.edited.connect(self._edit)
        self._form.switched.connect(lambda other: self.open(other, place))
        self._form.followed.connect(self._follow)
        self._form.deleted.connect(self._delete)
        self._form.closed.connect(self._done)
        if subject.record_id is not None:
            self._view.select([subject.record_id])
        self.refresh()
        self._form.form.focus(field)
        QTimer.singleShot(0, self, self._scroll_to_form)

    def open_id(self, about: str) -> bool:
        """Open the form of what ``about`` names; return whether there is one."""
        subject = subjects.subject_of(self._document.shown, self._view.at, about)
        if subject is None:
            return False
        self.open(subject)
        return True

    def close_form(self) -> None:
        """Close the form that is open."""
        if self._form is None:
            return
        form, self._form, self._under = self._form, None, None
        self._page.removeWidget(form)
        form.hide()
        form.deleteLater()
        self._show_states()

    def _others(self, under: str | None, subject: Subject) -> list[tuple[Subject, str]]:
        """Return what else the sentence over the form is about, with the words for it."""
        row = self._rows.get(under or "")
        found: list[tuple[Subject, str]] = []
        ids = list(row.sentence.about) if row is not None else []
        context = self.context
        record = subject.read(context.drill, context.at)
        letter = getattr(record, "job", None) or getattr(record, "by", None)
        if isinstance(letter, str) and len(letter) == 1:
            ids.append(letter)
        for id in dict.fromkeys(ids):
            other = subjects.subject_of(context.drill, context.at, id)
            if other is None or other.key == subject.key:
                continue
            found.append((other, other.title(context, other.read(context.drill, context.at))))
        return found

    def _about(self, subject: Subject) -> str | None:
        return next((key for key, row in self._rows.items() if subject.key in row.sentence.about[:1]), None) or next(
            (key for key, row in self._rows.items() if subject.key in row.sentence.about),
            None,
        )

    def _press(self, key: str) -> None:
        row = self._rows[key]
        if self._under == key:
            self._done()
            return
        if row.sentence.missing:
            self._answer(row.sentence, key)
            return
        for id in row.sentence.about:
            subject = subjects.subject_of(self._document.shown, self._view.at, id)
            if subject is not None:
                self.open(subject, key)
                return
        sheet = _sheet_for(key)
        if sheet is not None:
            self.open(sheet, key)

    def _answer(self, question: Sentence, key: str) -> None:
        answer = answer_to(question, self._view.setting)
        if answer.makes:
            self.wanted.emit(answer.makes)
            return
        subject = subjects.subject_of(self._document.shown, self._view.at, answer.about)
        if subject is not None:
            self.open(subject, key, answer.field)

    def _show_form(self) -> None:
        if self._form is None:
            return
        subject, context = self._form.subject, self.context
        record = subject.read(context.drill, context.at)
        if record is None or type(record) is not self._form.type:
            self.close_form()
            return
        id = subject.record_id
        under = None if id is None else below(context.drill, context.at).find(id)
        free = not self._document.read_only
        self._form.form.setEnabled(free)
        self._form.show_record(
            record,
            context,
            own=free and under is not None and under != record,
            may_delete=free and id is not None,
        )

    def _edit(self, record: Any, typed: object) -> None:
        if self._form is None:
            return
        subject = self._form.subject
        drill, at = self._document.drill, self._view.at
        label = f"Change {subject.title(self.context, record)}"
        merge = self._bursts.key(subject.key) if typed else None
        self._document.perform(label, subject.write(drill, at, record), merge=merge)

    def _follow(self) -> None:
        id = None if self._form is None else self._form.subject.record_id
        if id is not None:
            self._document.perform("Follow again", edits.follow_again(self._document.drill, self._view.at, [id]))

    def _delete(self) -> None:
        if self._form is None or self._form.subject.record_id is None:
            return
        id = self._form.subject.record_id
        title = self._form.subject.title(self.context, self._form.form.record)
        self.close_form()
        self._document.perform(f"Delete {title}", edits.delete(self._document.drill, self._view.at, [id]))

    def _done(self) -> None:
        row = self._rows.get(self._under or "")
        self.close_form()
        if row is not None:
            row.setFocus(Qt.FocusReason.OtherFocusReason)

    def _scroll_to_form(self) -> None:
        if self._form is not None:
            self._scroll.ensureWidgetVisible(self._form, 0, 40)

    # what follows the window's state

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
        outer.addWidget(self.bar)
        self._scroll = QScrollArea()
        self._scroll.setWidgetResizable(True)
        self._scroll.setFrameShape(QFrame.Shape.NoFrame)
        self._scroll.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self._scroll.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        outer.addWidget(self._scroll, 1)
        page = QWidget()
        page.setObjectName("page")
        self._page = QVBoxLayout(page)
        self._page.setSpacing(0)
        self._scroll.setWidget(page)
        self.title = PlaceText("What is it called?", font(20, bold=True), 28)
        self.title.typed.connect(self._typed("title", "Change the title"))
        self.objective = PlaceText(
            "What do the players set out to do?",
            font(BODY),
            20,
            dressed=lambda text: f"“{text}”",
        )
        self.objective.typed.connect(self._typed("objective", "Change the objective"))
        self.facts = FactsRow()
        self.facts.opens.connect(lambda key, field: self.open(subjects.SHEETS[key], field=field))
        for text in (self.title, self.objective):
            text.setReadOnly(self._document.read_only)
        for widget in (self.title, self.objective, self.facts):
            self._page.addWidget(widget)
        self._page.addStretch(1)
        self._pad()

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._pad()

    def _pad(self) -> None:
        wide = self.width() >= WIDE
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
        tinted(self, look().panel)
        for text in (self.title, self.objective):
            text.colour()
        self._show_form()
        self.update()


def _in_order(written: list[str], asked: list[str]) -> list[str]:
    """Return the keys of all sections: those of the card in its order, those only asked for where they would stand."""
    order = list(written)
    known = list(HEADINGS)
    for key in dict.fromkeys(asked):
        if key in order:
            continue
        later = [order.index(each) for each in known[known.index(key) + 1 :] if each in order]
        order.insert(min(later, default=len(order)), key)
    return order


_SHEETS_BY_SECTION: Final = {
    "cues": "drill:words",
    "watch": "drill:words",
    "care": "drill:words",
    "start": "drill:house",
    "rules": "drill:house",
    "layout": "drill:court",
    "you": "drill:facts",
}


def _sheet_for(key: str) -> Subject | None:
    """Return what opens for a sentence that is about no record: the sheet that its section is written from."""
    name = _SHEETS_BY_SECTION.get(key.partition(" ")[0])
    return None if name is None else subjects.SHEETS[name]
