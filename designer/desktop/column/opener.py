"""The one form that stands open in the column: which it is, under which sentence, and what its edits do."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING, Any

from PySide6.QtCore import QObject, Qt

from designer.desktop.column.asks import MENUS, answer_to, behind, with_usual_answer
from designer.desktop.column.open_form import OpenForm
from designer.desktop.column.sentence import SentenceRow
from designer.desktop.column.writer import place_of
from designer.desktop.forms.context import Context
from designer.desktop.forms.fresh import new_ending, new_worth, worth
from designer.desktop.forms.subjects import Subject, subject_of
from designer.drill import edits
from designer.drill.setting import below
from designer.wording.sentence import Sentence

if TYPE_CHECKING:
    from designer.desktop.bursts import Bursts
    from designer.desktop.column.column import CardColumn
    from designer.desktop.column.entries import Entry
    from designer.desktop.document import Document
    from designer.desktop.picking.picker import Picker
    from designer.desktop.view import View


class Opener(QObject):
    """Opens forms under the sentences of a column and performs what is changed in them."""

    def __init__(self, column: CardColumn, document: Document, view: View, bursts: Bursts) -> None:
        super().__init__(column)
        self._column, self._document, self._view, self._bursts = column, document, view, bursts
        self.form: OpenForm | None = None
        self.under: str | None = None
        self._picker: Picker | None = None
        view.selection_changed.connect(self._follow_pick)

    @property
    def picker(self) -> Picker | None:
        """Return what lets things be picked on the court, None where the column stands beside none."""
        if self._picker is None and self._column.canvas is not None:
            from designer.desktop.picking.picker import Picker

            self._picker = Picker(self._column.canvas)
        return self._picker

    @property
    def _context(self) -> Context:
        subject = None if self.form is None else self.form.subject
        return Context(
            self._document.shown,
            self._view.at,
            self._view.setting,
            self._document.source,
            court=self.picker,
            units=self._view.units,
            about=None if subject is None else subject.record_id,
        )

    def press(self, row: SentenceRow) -> None:
        """Open what a sentence was made from, close it again, or answer the question that it is."""
        if self.under == row.key and self.form is not None:
            self.done()
            return
        if row.sentence.missing:
            answer = answer_to(row.sentence, self._view.setting)
            if answer.makes:
                self._column.wanted.emit(answer.makes)
            else:
                self.open(answer.about, row.key, answer.field)
            return
        text = place_of(row.key)
        if text is not None and not self._document.read_only:
            self._column.write(*text)
            return
        section, _, key = row.key.partition(" ")
        for about, field in behind(section, key, row.sentence.about):
            if about in MENUS:
                self._column.wanted.emit(about)
                return
            if self.open(about, row.key, field):
                return

    def confirm(self, row: SentenceRow) -> None:
        """Give the usual answer to the question that ``row`` is, as one step."""
        drill = with_usual_answer(self._document.drill, self._view.at, row.sentence.key)
        place = self._column.sentences().index(row)
        if drill == self._document.drill or row.usual is None:
            self.press(row)
            return
        self._document.perform(f"Confirm “{row.sentence.text.rstrip('?')}: {row.usual.usual}”", drill)
        self._column.refresh()
        rows = self._column.sentences()
        if row not in rows:
            # The question is gone: the keyboard goes on to what now stands in its place.
            rows[min(place, len(rows) - 1)].setFocus(Qt.FocusReason.OtherFocusReason)

    def settle(self, entries: Sequence[Entry]) -> None:
        """Stand under another sentence of the page where the one over the form is gone: an answered question goes."""
        keys = [entry.key for entry in entries]
        if self.form is None or self.under in keys:
            return
        said = {entry.key: entry.words for entry in entries if isinstance(entry.words, Sentence)}
        key = self.form.subject.key
        first = [name for name, words in said.items() if words.about[:1] == (key,)]
        named = [name for name, words in said.items() if key in words.about]
        self.under = next(iter((*first, *named)), None)

    def open(self, about: str, under: str | None = None, field: str = "", *, keyboard: bool = True) -> bool:
        """Open the form of what ``about`` names, under a sentence or under the first that is about it.

        With ``keyboard``, ``field`` gets it. Returns whether there is such a form.
        """
        subject = subject_of(self._document.shown, self._view.at, about)
        record = None if subject is None else subject.read(self._document.shown, self._view.at)
        if subject is None or record is None:
            return False
        place = under or self._about(subject)
        self._take_away()
        title = subject.title(self._context, record) if place is None else ""
        form = self.form = OpenForm(subject, record, self._others(place, subject, record), title)
        self.under = place
        form.edited.connect(self._edit)
        form.switched.connect(self._switch)
        form.worth.connect(self._say_worth)
        form.until.connect(self._say_until)
        form.followed.connect(self._follow)
        form.deleted.connect(self._delete)
        form.closed.connect(self.done)
        form.escaped.connect(self.escape)
        form.relaid.connect(lambda: self._column.follow_form(form))
        if subject.record_id is not None:
            self._view.select([subject.record_id])
        self._column.refresh()
        if keyboard:
            form.form.focus(field)
        self._column.scroll_to(form)
        return True

    def _follow_pick(self, picked: frozenset[str]) -> None:
        """Go on to what is picked on the court from the form of something else that stands there."""
        if self.form is None or not picked or (self._picker is not None and self._picker.wish is not None):
            return
        key = self.form.subject.key
        setting = self._view.setting
        drawn = {*setting.spots, *setting.items, *setting.shots, *setting.runs}
        if key in picked or not picked <= drawn or not (key in drawn or key.startswith("job:")):
            return
        if len(picked) > 1 or not self.open(*picked, keyboard=False):
            self.close()

    def close(self) -> None:
        """Close the form, and let the card have its order again."""
        was_open = self.form is not None
        self._take_away()
        if was_open:
            self._column.sort()

    def _take_away(self) -> None:
        if self._picker is not None:
            self._picker.end()
        if self.form is not None:
            form, self.form, self.under = self.form, None, None
            self._column.drop(form)

    def done(self) -> None:
        """Close the form and give the keyboard back to its sentence."""
        row = self._column.row(self.under or "")
        self.close()
        if row is not None:
            row.setFocus(Qt.FocusReason.OtherFocusReason)

    def ask_where(self) -> None:
        """Ask on the court for the first place that the open form judges by: a rule about a place begins there."""
        from designer.desktop.forms.boxes import PickBox
        from designer.desktop.forms.context import areas

        boxes = () if self.form is None else self.form.findChildren(PickBox)
        first = next((box for box in boxes if box.is_among(areas)), None)
        if first is not None:
            first.begin()

    def escape(self) -> None:
        """Let go of what the form waits for on the court, else close it."""
        if self._picker is not None and self._picker.wish is not None:
            self._picker.end()
        else:
            self.done()

    def show(self) -> None:
        """Show the record as it is now; close the form where it is gone."""
        if self.form is None:
            return
        subject, context = self.form.subject, self._context
        record = subject.read(context.drill, context.at)
        if record is None or type(record) is not self.form.type:
            self.close()
            return
        id = subject.record_id
        under = None if id is None else below(context.drill, context.at).find(id)
        free = not self._document.read_only
        self.form.form.setEnabled(free)
        self.form.show_record(
            record,
            context,
            own=free and under is not None and under != record,
            may_delete=free and id is not None,
        )

    def _others(self, under: str | None, subject: Subject, record: Any) -> list[tuple[str, str]]:
        """Return what else the sentence over the form is about, and the words for each."""
        row = self._column.row(under or "")
        about = [] if row is None else list(row.sentence.about)
        letter = getattr(record, "job", None) or getattr(record, "by", None)
        if isinstance(letter, str) and len(letter) == 1:
            about.append(letter)
        context = self._context
        found: list[tuple[str, str]] = []
        for each in dict.fromkeys(about):
            other = subject_of(context.drill, context.at, each)
            if other is not None and other.key != subject.key:
                found.append((each, other.title(context, other.read(context.drill, context.at))))
        return found

    def _about(self, subject: Subject) -> str | None:
        rows = self._column.sentences()
        named = [row.key for row in rows if subject.key in row.sentence.about]
        first = [row.key for row in rows if subject.key in row.sentence.about[:1]]
        return next(iter((*first, *named)), None)

    def _switch(self, about: str) -> None:
        self.open(about, self.under)

    def _edit(self, record: Any, typed: object) -> None:
        if self.form is None:
            return
        subject, at = self.form.subject, self._view.at
        if self._picker is not None and self._picker.trying:
            self._document.preview(subject.write(self._document.drill, at, record))
            return
        label = f"Change {subject.title(self._context, record)}"
        merge = self._bursts.key(subject.key) if typed else None
        self._document.perform(label, subject.write(self._document.drill, at, record), merge=merge)

    def _say_worth(self) -> None:
        """Open the points for a ball in what the form is about, made where there are none."""
        item = None if self.form is None else self._view.setting.find(self.form.subject.key)
        if item is None:
            return
        points = worth(self._view.setting, item)
        if points is None:
            points = new_worth(self._context, item)
            self._document.perform("Add points", edits.put(self._document.drill, self._view.at, points))
            self._column.refresh()
        self.open(points.id, field="gives")

    def _say_until(self) -> None:
        """Let the rule of the form hold until something opens the rally, and open what that is."""
        rule = None if self.form is None else self._view.setting.find(self.form.subject.key)
        if rule is None:
            return
        first, then = new_ending(self._context)
        drill = edits.put(self._document.drill, self._view.at, first, then, rule.changed(parts=(first.id,)))
        self._document.perform("Let the rule end", drill)
        self._column.refresh()
        self.open(first.id, field="until")

    def _follow(self) -> None:
        id = None if self.form is None else self.form.subject.record_id
        if id is not None:
            self._document.perform("Follow again", edits.follow_again(self._document.drill, self._view.at, [id]))

    def _delete(self) -> None:
        if self.form is None or self.form.subject.record_id is None:
            return
        id = self.form.subject.record_id
        title = self.form.subject.title(self._context, self.form.form.record)
        self.close()
        self._document.perform(f"Delete {title}", edits.delete(self._document.drill, self._view.at, [id]))
