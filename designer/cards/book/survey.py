"""How long a handbook is, without printing it: each drill is laid out, and the pages are counted as they would be bound."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace

from designer.cards.blocks import Block
from designer.cards.book import back, counts, front
from designer.cards.book.binding import paged
from designer.cards.book.changes import changes
from designer.cards.book.glossary import Glossary
from designer.cards.book.leaf import Leaf, cannot_be_set, without_failed
from designer.cards.book.opener import section_page
from designer.cards.book.reading import reading
from designer.cards.book.rows import Setter
from designer.cards.book.sheets import FOOT_ROOM, Sheets
from designer.cards.logo import Logo
from designer.cards.papers import MM, PAPERS, Paper
from designer.cards.text import Typesetter
from designer.drawing.themes import theme
from designer.drill.brand import Brand
from designer.drill.handbook import Handbook, Remembered
from designer.wording.vocabulary import Vocabulary


def page_paper(book: Handbook) -> Paper:
    """Return the paper of a handbook's own pages."""
    return replace(PAPERS[book.paper], mirrored=True, top=15 * MM, bottom=12 * MM)


def sheet_paper(book: Handbook) -> Paper:
    """Return the paper of a drill's sheets, with room at the foot for its state."""
    return replace(page_paper(book), bottom=FOOT_ROOM)


@dataclass(frozen=True, slots=True)
class Surveyed:
    """What one drill takes: its sheets, and the words on them, for the glossary. No sheet where it cannot be set."""

    sheets: int
    words: str = ""
    problem: str = ""


def surveyed(book: Handbook, leaf: Leaf, brand: Brand | None = None, logo: Logo | None = None) -> Surveyed:
    """Lay the sheets of a drill out, in the faces in force, and return what they take."""
    sheets = Sheets(sheet_paper(book), theme("paper"), brand, logo, Vocabulary(book.vocabulary))
    try:
        cards = tuple(sheets.cards(leaf))
    except Exception as error:  # noqa: BLE001  as when it is printed: one bad drill does not stop the rest
        return Surveyed(0, problem=cannot_be_set(leaf, error))
    return Surveyed(sum(len(card.sides) for card in cards), " ".join(card.words for card in cards))


def page_count(
    book: Handbook,
    leaves: Sequence[Leaf],
    found: Mapping[str, Surveyed],
    before: Mapping[str, Remembered] | None = None,
    brand: Brand | None = None,
) -> int:
    """Return how many pages the handbook has, set in the faces in force.

    ``found`` is what each printed drill takes, by its number; ``before`` {number: drill} of the edition before.
    """
    leaves = without_failed(leaves, {number: one.problem for number, one in found.items() if one.problem})
    vocabulary = Vocabulary(book.vocabulary)
    paper = page_paper(book)
    printed = [leaf for leaf in leaves if leaf.summary]
    setter = Setter(paper, Typesetter(), vocabulary, frozenset(leaf.entry.number for leaf in printed))
    by_number = {leaf.entry.number: leaf for leaf in leaves}

    def pages(*blocks: Block) -> int:
        return sum(1 for _ in paged(blocks, paper))

    names = [str(place + 1) for place in range(len(book.sections))]
    left_out = {leaf.entry.number: leaf.reason for leaf in leaves if leaf.summary is None}
    parts = [("", "", "x")] * 3 + [("", "", "X")] * (4 + back.has_house_rules(book) + bool(left_out))
    said = tuple(changes(leaves, before or {}, book.edition))
    licence = book.licence or (brand.licence if brand else "")
    whole = 1 + pages(*front.imprint(book, leaves, said, setter, licence))
    whole += pages(*front.contents(book, by_number, parts, names, setter))
    whole += pages(*reading(book, setter, theme("paper")))
    whole += pages(*front.safety(book, leaves, setter))
    glossary = Glossary(book.language, book.glossary, vocabulary)
    turned = _even if book.own_leaves else int
    for section in book.sections:
        whole = turned(turned(whole) + pages(*section_page(section, "1", by_number, setter)))
        for entry in section.drills:
            if by_number[entry.number].summary and entry.number in found:
                glossary.notice(found[entry.number].words)
                whole = turned(whole + found[entry.number].sheets)
    glossary.name(counts.names(leaves))
    for blocks in (
        back.glossary_page(glossary, setter),
        counts.index_pages(leaves, setter),
        counts.balance_page(leaves, setter),
    ):
        whole += pages(*blocks)
    if back.has_house_rules(book):
        whole += pages(*back.house_rules_page(book, leaves, setter))
    if left_out:
        whole += pages(*back.left_out_page(left_out, setter))
    return whole + book.planners


def _even(count: int) -> int:
    """Return the pages with the page of notes before the next right-hand one."""
    return count + count % 2
