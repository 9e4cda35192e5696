"""What stands after the last section beside counts and glossary: what is left out, the house rules, planner pages."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from typing import TYPE_CHECKING, Final

from designer.cards.blocks import Balanced, Block, Drawn, Rules
from designer.cards.book.binding import paged
from designer.cards.book.glossary import Glossary
from designer.cards.book.leaf import Leaf
from designer.cards.book.rows import Setter
from designer.cards.papers import MM
from designer.drill.handbook import Handbook, HouseRule
from designer.review.house_rules import WORDS

if TYPE_CHECKING:
    from designer.cards.page import Page


def left_out_page(left_out: Mapping[str, str], setter: Setter) -> Iterator[Block]:
    """Yield the drills that could not be printed, each with the reason."""
    yield setter.title("Drills that could not be printed")
    for number, reason in left_out.items():
        yield setter.term(number, reason, setter.beside_number)


def broken_rules(leaves: Sequence[Leaf], rules: Sequence[HouseRule]) -> dict[HouseRule, list[str]]:
    """Return {rule: numbers of the drills that do not keep it}, every rule in the order of the book."""
    return {
        rule: [leaf.entry.number for leaf in leaves if leaf.summary and rule in leaf.summary.broken] for rule in rules
    }


def house_rules_page(book: Handbook, leaves: Sequence[Leaf], setter: Setter) -> Iterator[Block]:
    """Yield the rules of the house and the drills that do not keep them yet."""
    yield setter.title("House rules")
    answers = house_answers(book)
    if answers:
        yield setter.heading("Where a drill does not say")
        yield from (setter.term(setter.said(asked), setter.said(answer), _ASKED_WIDTH) for asked, answer in answers)
    if book.house_rules:
        yield setter.heading("Every drill of this book")
    for rule, numbers in broken_rules(leaves, book.house_rules).items():
        still = f" Not yet: {', '.join(numbers)}." if numbers else ""
        yield setter.tick(f"{WORDS[rule]}.{still}", ticked=not numbers)


def has_house_rules(book: Handbook) -> bool:
    """Whether there is anything to print on the page of the house's rules."""
    return bool(book.house_rules or house_answers(book))


def house_answers(book: Handbook) -> tuple[tuple[str, str], ...]:
    """Return (what is asked, the house's answer) for each question that the house answers for all drills."""
    own = book.house
    found = (
        ("Lines are called by", _people(own.called_by)),
        ("In doubt", _DOUBT[own.in_doubt] if own.in_doubt else ""),
        (
            "A net cord",
            {"by its bounce": "is judged by its bounce", "replay": "is replayed"}.get(own.net_cord or "", ""),
        ),
        ("Play is stopped by", "the call “stop”" if "stop word" in book.house_rules else ""),
        ("After “stop”", after_stop(book) if own.stopped else ""),
        (
            "A bad feed that is played",
            {"accepted": "counts", "not accepted": "does not count"}.get(own.feed_played or "", ""),
        ),
        ("To the net may come", _people(own.come_in)),
    )
    return tuple((asked, answer) for asked, answer in found if answer)


def after_stop(book: Handbook) -> str:
    """Return what follows a call of “stop”: as the house has it, else "the rally is replayed"."""
    stopped = book.house.stopped
    return _STOPPED["replay"] if stopped is None else _STOPPED.get(stopped.then, stopped.then)


_ASKED_WIDTH: Final = 160.0
_DOUBT: Final = {"replay": "the rally is replayed", "in": "the ball was in", "out": "the ball was out"}
_STOPPED: Final = {"replay": "the rally is replayed", "no score": "nobody scores"}
_PEOPLE: Final = {
    "receiver": "who receives",
    "receiving side": "the receiving side",
    "doer": "who hits",
    "other": "the other player",
}


def _people(who: Sequence[str]) -> str:
    return ", ".join(_PEOPLE.get(one, one) for one in who)


def glossary_page(glossary: Glossary, setter: Setter) -> Iterator[Block]:
    """Yield the terms in use with what they mean, in two columns."""
    yield setter.title("Glossary")
    entries = tuple(glossary.entries())
    if not entries:
        return
    tried = [_terms(entries, gap, setter) for gap in _GAPS]
    lengths = [sum(1 for _ in paged((setter.title("Glossary"), terms), setter.paper)) for terms in tried]
    yield tried[lengths.index(min(lengths))]


_GAPS: Final = (6.0, 4.5, 3.0)
"""Points over a term: the widest with which the terms take no more pages than with the least."""


def _terms(entries: Sequence[tuple[str, str, str]], gap: float, setter: Setter) -> Balanced:
    blocks: list[Block] = []
    for word, means, elsewhere in entries:
        other = f" Called “{elsewhere}” elsewhere." if elsewhere else ""
        blocks.append(setter.entry(word[:1].upper() + word[1:], gap))
        blocks.append(setter.meaning(f"{means.strip()}{other}"))
    return Balanced(tuple(blocks), setter.paper.gutter, before=6)


PLANNER_COLUMNS: Final = (
    ("Min", 0.07),
    ("Drill", 0.3),
    ("Setting", 0.14),
    ("Courts, groups", 0.2),
    ("Kit, balls", 0.29),
)
_ROWS: Final = 10


def planner_page(setter: Setter) -> Iterator[Block]:
    """Yield a sheet to plan a session on."""
    yield setter.title("Session plan")
    width = setter.paper.inner
    pitch = 9 * MM

    def form(page: Page, x: float, top: float, _: float) -> None:
        for row, names in enumerate((("Date", "Time", "Courts"), ("Group", "Players", "Coach"), ("Aim",))):
            part = width / len(names)
            for place, name in enumerate(names):
                base = top - (row + 1) * pitch
                end = page.write(setter.said(name), x + place * part, base, setter.paper.body, "soft")
                page.rule(
                    end + 5, base - 2, x + (place + 1) * part - 8 * (place < len(names) - 1), weight=0.6, colour="note"
                )

    yield Drawn(3 * pitch + 4, form, before=2)

    yield setter.table(PLANNER_COLUMNS, _ROWS, 1.35 * pitch)
    yield setter.heading("Look after")
    yield Rules(1, setter.paper.note_lines)
    yield setter.heading("How it went, and what comes next")
    yield Rules(5, setter.paper.note_lines)
