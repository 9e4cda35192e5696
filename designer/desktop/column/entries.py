"""What the page of the card column shows, from top to bottom: headings, sentences, questions, a text being written."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from typing import TYPE_CHECKING, Final

from PySide6.QtWidgets import QWidget

from designer.desktop.column.asks import HEADINGS, asked, first_asked, usual_answers
from designer.desktop.column.heading import ADDS
from designer.desktop.view import View
from designer.drill.drill import Drill
from designer.wording.sentence import Sentence

if TYPE_CHECKING:
    from designer.desktop.column.writer import Writer
    from designer.wording.card import CardWords, Reader, Section


@dataclass(frozen=True, slots=True)
class Entry:
    """One widget of the page: what it is called and what it shows, or the widget itself."""

    key: str
    section: str
    words: str | Sentence | QWidget
    usual: str = ""
    empty: bool = False
    """Whether it is the heading of a section in which nothing stands."""


STEADY: Final = frozenset({"start", "bounds", "rules", "points", "swap"})
"""Sections whose sentences have no order of play: they keep the one in which they came while they are worked at."""


@dataclass(slots=True)
class Seen:
    """What a reader's page has shown: it stays, and where it was, for a page that is worked at keeps still."""

    sections: set[str] = field(default_factory=set)
    questions: set[str] = field(default_factory=set)
    order: dict[str, list[str]] = field(default_factory=dict)
    """The keys of a steady section's sentences from top to bottom, by the section."""

    def steadied(self, section: str, said: list[Entry]) -> list[Entry]:
        """Return ``said`` in the order in which it stood before, what is new after it; the finish is last."""
        if section in STEADY:
            places = {key: place for place, key in enumerate(self.order.get(section, ()))}
            said = sorted(said, key=lambda entry: (" finish:" in entry.key, places.get(entry.key, len(places))))
            self.order[section] = [entry.key for entry in said]
        return said


def entries(
    card: CardWords, drill: Drill, view: View, reader: Reader, writer: Writer | None, seen: Seen, *, ask_all: bool
) -> Iterator[Entry]:
    """Yield the page of ``card`` and note in ``seen`` what it shows.

    Without ``ask_all`` it has only the most wanted questions, with ``writer`` its text.
    """
    questions = asked(drill, view.setting, reader, card.sections)
    if not ask_all:
        questions = first_asked(questions, seen.questions)
    seen.questions |= {question.key for group in questions.values() for question in group}
    usual = usual_answers(drill, view.at)
    written = {section.key: section for section in card.sections}
    wanted = [*questions, *([] if writer is None else [writer.section]), *seen.sections]
    for key in _in_order(list(written), wanted):
        section = written.get(key)
        said = seen.steadied(key, list(_said(key, section, writer)))
        if not said and key not in questions and key not in seen.sections:
            continue
        if key in ADDS:
            seen.sections.add(key)
        heading = HEADINGS.get(key, key) if section is None else section.heading
        yield Entry(f"heading {key}", key, heading, empty=not said and key not in questions)
        yield from said
        for sentence in questions.get(key, ()):
            if writer is None or key != writer.section or not sentence.key.startswith("ask:"):
                yield Entry(f"{key} {sentence.key}", key, sentence, usual.get(sentence.key, ""))


def _said(key: str, section: Section | None, writer: Writer | None) -> Iterator[Entry]:
    """Yield what a section says, with the text that is being written in its place."""
    waits = writer is not None and writer.section == key
    for sentence in () if section is None else section.sentences:
        name = f"{key} {sentence.key}"
        if waits and writer is not None and not writer.stands_after(name):
            yield from _writing(key, writer)
            waits = False
        if not sentence.missing and (writer is None or not writer.replaces(name)):
            yield Entry(name, key, sentence)
    if waits and writer is not None:
        yield from _writing(key, writer)


def _writing(key: str, writer: Writer) -> Iterator[Entry]:
    if writer.row is not None:
        yield Entry(f"{key} writing", key, writer.row)


def _in_order(written: Sequence[str], asked: Sequence[str]) -> list[str]:
    """Return the keys of all sections: those of the card in its order, those only asked for where they would stand."""
    order = list(written)
    known = list(HEADINGS)
    for key in dict.fromkeys(asked):
        if key in order:
            continue
        later = [order.index(each) for each in known[known.index(key) + 1 :] if each in order]
        order.insert(min(later, default=len(order)), key)
    return order
