"""What stands before the first section: imprint and changes, contents, the safety page."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from typing import TYPE_CHECKING, Final

from designer.cards.blocks import Balanced, Block
from designer.cards.book.back import after_stop
from designer.cards.book.glossary import in_one_language
from designer.cards.book.leaf import Leaf, Summary
from designer.cards.book.rows import Setter, drill_key
from designer.cards.papers import MM
from designer.drill.handbook import Handbook, State

if TYPE_CHECKING:
    from datetime import date

_SAFETY: Final = (
    "Whoever sees a ball or a person on the court calls “stop”, and everybody stops. Then {stopped}.",
    "Local rules and a qualified coach decide. This book knows only what is drawn and nothing of your court: that it names no caution does not mean that there is none.",
)
_COURT_CHECK: Final = (
    "Surface dry, clean and whole; no loose tape, leaf or stone.",
    "Net, posts and singles sticks firm; handles and cables out of the way.",
    "Room behind the baselines and beside the court; no bag, bench or basket in it.",
    "Fence, gates and lights in order; gates shut.",
    "Balls cleared; markers laid flat, raised ones where nobody runs.",
    "Everybody fit to play, shoes tied; water, shade or shelter at hand.",
    "First-aid box and a telephone there; someone knows who is called.",
    "Heat, storm and lightning looked up for the time of the session.",
)
STATES: Final[dict[State, str]] = {"draft": "Draft", "checked": "Checked", "approved": "Approved"}


def day(when: date | None) -> str:
    """Return "25 November 2026", "" without a date."""
    return f"{when.day} {when:%B} {when.year}" if when else ""


def imprint(
    book: Handbook, leaves: Sequence[Leaf], changes: Sequence[str], setter: Setter, licence: str = ""
) -> Iterator[Block]:
    """Yield the back of the cover: edition, owner, state of the drills, and what has changed."""
    yield setter.title("About this edition")
    for name, words in (
        ("Edition", ", ".join(filter(None, (str(book.edition), day(book.dated))))),
        ("Owner", book.owner),
        ("Contact", book.contact),
        ("Licence", licence or book.licence),
        ("Language", "" if in_one_language(book) else _ENGLISH),
    ):
        if words:  # names, addresses and a licence are nobody's terms
            yield setter.term(setter.said(name), words)
    printed = [leaf for leaf in leaves if leaf.summary]
    counts = {state: sum(leaf.entry.state == state for leaf in printed) for state in STATES}
    said = ", ".join(f"{count} {STATES[state].lower()}" for state, count in counts.items() if count)
    yield setter.heading("State of the drills")
    yield setter.text(f"{len(printed)} drills: {said}." if printed else "No drill.")
    stale = [leaf.entry.number for leaf in printed if leaf.is_stale]
    if stale:
        yield setter.text(f"Changed since their state was given: {', '.join(stale)}.")
    yield setter.heading("What has changed")
    rows = tuple(_change(words, setter) for words in changes)
    if len(rows) > _IN_ONE_COLUMN:
        yield Balanced(rows, setter.paper.gutter, before=2)
    else:
        yield from rows
    yield setter.heading(f"{'Leaves' if book.own_leaves else 'Sheets'} exchanged in this copy", before=20)
    yield setter.table(_EXCHANGED, _LEAVES, 7.5 * MM)


_ENGLISH: Final = (
    "What the owner and the authors wrote is in their own language; headings, sentences and the glossary, the words of the "
    "program, are in English."
)
_IN_ONE_COLUMN: Final = 8
"""More changes than this stand in two columns."""
_CHANGE_WIDTH: Final = 58.0
_EXCHANGED: Final = (("Sheet", 0.2), ("Edition", 0.2), ("Put in by", 0.35), ("Date", 0.25))
_LEAVES: Final = 8


def _change(words: str, setter: Setter) -> Block:
    """Return a row of what has changed: what became of a drill in bold, beside it the drill."""
    kind, colon, drill = words.partition(": ")
    return setter.term(setter.said(kind), setter.said(drill), _CHANGE_WIDTH, 2.0) if colon else setter.text(words)


def contents(
    book: Handbook,
    leaves: Mapping[str, Leaf],
    parts: Sequence[tuple[str, str, str]],
    names: Sequence[str],
    setter: Setter,
) -> Iterator[Block]:
    """Yield the contents. ``parts`` are (title, key, label) of what stands before the first section and after the last.

    ``names`` are the labels of the sections' own pages.
    """
    yield setter.title("Contents")
    before = [part for part in parts if part[2].islower()]
    for title, key, label in before:
        yield setter.link(title, key, right=label)
    for place, section in enumerate(book.sections):
        yield setter.space(7)
        yield setter.link(section.title, section_key(place), number=names[place], before=0, bold=True)
        for entry in section.drills:
            if (found := leaves[entry.number].summary) is not None:
                yield _drill_line(leaves[entry.number], found, setter)
    yield setter.space(7)
    yield from (setter.link(title, key, right=label) for title, key, label in parts if not label.islower())


def _drill_line(leaf: Leaf, found: Summary, setter: Setter) -> Block:
    number = leaf.entry.number
    return setter.link(leaf.title, drill_key(number), number=number, right=", ".join(people_and_minutes(found)))


def people_and_minutes(found: Summary) -> tuple[str, ...]:
    """Return how many play and how long, as far as the drill says: ("2–3 players", "12 min")."""
    least, most = (found.players[0], found.players[-1]) if found.players else (0, 0)
    people = f"{least}–{most} players" if most > least else f"{most} player{'s' * (most != 1)}" if most else ""
    return tuple(filter(None, (people, f"{found.minutes} min" if found.minutes else "")))


def section_key(place: int) -> str:
    """Return the name of the place where section ``place`` (from 0) begins."""
    return f"section-{place + 1}"


def safety(book: Handbook, leaves: Sequence[Leaf], setter: Setter) -> Iterator[Block]:
    """Yield the safety page."""
    own = book.safety
    yield setter.title("Before a session")
    yield from (setter.text(words.format(stopped=after_stop(book)), before=4) for words in _SAFETY)
    yield setter.heading("Look at the court before every session")
    yield from (setter.tick(words) for words in (*_COURT_CHECK, *own.before))
    for words, answer in (
        ("First aid is kept at", own.first_aid),
        ("Who is called in an emergency", own.emergency),
        ("When it is too hot to play", own.heat),
        ("When there is lightning", own.lightning),
    ):
        yield from setter.blank(words, answer=setter.said(answer))
    approved = ", ".join(filter(None, (own.approved_by, day(own.approved_on))))
    yield from setter.blank("This page was approved by", answer=approved)
    accepted = [(leaf, reason) for leaf in leaves if leaf.summary for reason in leaf.summary.accepted]
    yield setter.heading("Cautions accepted, each with its reason")
    if not accepted:
        yield setter.text("None.")
    for leaf, reason in accepted:
        yield setter.link(f"{leaf.title}: {reason}", drill_key(leaf.entry.number), number=leaf.entry.number)
