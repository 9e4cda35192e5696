"""The forms of one section and of one drill of a handbook."""

from __future__ import annotations

from collections.abc import Callable
from datetime import UTC, datetime
from typing import Any, Final

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QHBoxLayout, QWidget

from designer.desktop.controls import Link
from designer.desktop.handbook.fields import Form, date_or_none
from designer.desktop.handbook.looking import Seen
from designer.drill.handbook import Entry, Handbook
from designer.drill.handbook_edits import with_entry_changed, with_section_changed

Perform = Callable[[str, Handbook], None]

_STATES: Final = (("draft", "draft"), ("checked", "checked"), ("approved", "approved"))
_PRINTS: Final = (
    ("whole", "its sheets"),
    ("every progression", "a sheet for every progression"),
    ("first sheet", "its first sheet alone"),
)


class SectionForm(Form):
    """Edits the section at ``place`` of the handbook that ``book`` gives."""

    def __init__(self, book: Callable[[], Handbook], perform: Perform) -> None:
        super().__init__("Section")
        self.place = 0

        def change(label: str, **values: Any) -> None:
            perform(label, with_section_changed(book(), self.place, **values))

        self.heading("Section")
        self.title = self.line("Title", lambda one: one.title, lambda text: change("Name the section", title=text))
        self.block(
            "Introduction",
            lambda one: one.introduction,
            lambda text: change("Change the introduction", introduction=text),
            lines=8,
        )
        self.end()


class DrillForm(Form):
    """Edits the entry with ``number`` of the handbook that ``book`` gives.

    ``open_wanted`` carries the drill's file, ``renumbered`` the number it has been given.
    """

    open_wanted = Signal(str)
    removal_wanted = Signal()
    renumbered = Signal(str)

    def __init__(self, book: Callable[[], Handbook], perform: Perform) -> None:
        super().__init__("Drill")
        self.number = ""
        self._book, self._perform = book, perform
        self._seen: Seen | None = None
        self.heading("Drill")
        self._what = self.note()
        self._links()
        self.heading("How far it is checked")
        self.choice("State", _STATES, lambda one: one.state, self._take_state)
        self.line("By", lambda one: one.by, lambda text: self._change("Say who checked it", by=text))
        self.line(
            "On",
            lambda one: one.on.isoformat() if one.on else "",
            lambda text: self._change("Say when it was checked", on=date_or_none(text)),
            "2026-11-25",
        )
        self.heading("In the handbook")
        self.line("Number", lambda one: one.number, self._take_number)
        self.choice(
            "Print",
            _PRINTS,
            lambda one: one.prints,
            lambda prints: self._change("Change what is printed", prints=prints),
        )
        self.line("See also", lambda one: ", ".join(one.see), self._take_see, "3.12, 4.1")
        self.line("Tags", lambda one: ", ".join(one.tags), self._take_tags, "level:club, stroke:volley")
        self.end()

    def _links(self) -> None:
        row = QWidget()
        line = QHBoxLayout(row)
        line.setContentsMargins(0, 0, 0, 0)
        line.setSpacing(8)
        self.open_link = Link("Open the drill", row)
        self.open_link.clicked.connect(lambda: self.open_wanted.emit(self._entry().file))
        self.remove_link = Link("Take it out of the handbook", row)
        self.remove_link.clicked.connect(self.removal_wanted)
        for link in (self.open_link, self.remove_link):
            line.addWidget(link)
        line.addStretch(1)
        self.add(row)

    def show_entry(self, entry: Entry, seen: Seen | None) -> None:
        """Show ``entry``, with what is seen of its drill."""
        self.number, self._seen = entry.number, seen
        self.show_record(entry)
        said = [entry.file]
        if seen is not None and seen.leaf.summary is not None:
            found = seen.leaf.summary
            said.insert(0, found.title or "Untitled drill")
            said += [found.objective] if found.objective else []
            said += [f"House rules not kept: {', '.join(found.broken)}."] if found.broken else []
        if seen is not None and seen.words:
            said.append(f"{seen.words[:1].upper()}{seen.words[1:].rstrip('.')}.")
        self._what.setText("\n".join(said))
        self.open_link.setEnabled(seen is None or seen.leaf.summary is not None)

    def _entry(self) -> Entry:
        return next(entry for entry in self._book().entries() if entry.number == self.number)

    def _change(self, label: str, **values: Any) -> None:
        self._perform(label, with_entry_changed(self._book(), self.number, **values))

    def _take_state(self, state: str) -> None:
        """Take the state, dated today, for the drill as it is now: a change of it is seen from then on."""
        digest = self._seen.leaf.digest if self._seen is not None else ""
        today = datetime.now(UTC).astimezone().date()
        given = {"seen": digest, "on": today} if state != "draft" else {"seen": "", "on": None}
        self._change(f"Mark it {state}", state=state, **given)

    def _take_number(self, number: str) -> None:
        if any(entry.number == number for entry in self._book().entries()):
            raise ValueError(f"The number {number} is another drill's already.")
        _matched(number)
        book = with_entry_changed(self._book(), self.number, number=number)
        self._perform("Change the number", book)
        self.renumbered.emit(number)

    def _take_see(self, text: str) -> None:
        numbers = tuple(part.strip() for part in text.split(",") if part.strip())
        for number in numbers:
            _matched(number)
        self._change("Change what to look at as well", see=numbers)

    def _take_tags(self, text: str) -> None:
        tags = tuple(part.strip() for part in text.split(",") if part.strip())
        try:
            self._change("Change the tags", tags=tags)
        except ValueError:
            raise ValueError("A tag is small letters, as “level:club”.") from None


def _matched(number: str) -> None:
    section, between, place = number.partition(".")
    is_number = between and all(part.isdecimal() and 0 < len(part) <= 4 and part[0] != "0" for part in (section, place))
    if not is_number:
        raise ValueError(f"“{number}” is no number of a drill; write it as 3.12.")
