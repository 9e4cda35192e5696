"""The cover and the pages after it with names of every length, measured from the PDF by a reader that is not ours."""

import functools
from datetime import date
from itertools import combinations

import pypdfium2
import pytest
from cards.book_of_samples import LOGO, entry, leaf_of

from designer.bundle import sample
from designer.cards.book.leaf import without
from designer.cards.handbook import make_handbook
from designer.drill.brand import Brand
from designer.drill.drill import Drill
from designer.drill.handbook import BookSection, Handbook

LONG = "A name that somebody will give to a book of drills for the juniors of three clubs, and of the fourth "
WHITE = 4.2 / 25.4 * 72 - 2.5
"""Points at the edge that office printers leave white, less the tails of letters (common practice)."""


@functools.cache
def boxes(name: str) -> list[list[tuple[float, ...]]]:
    """The boxes of the words of each page that is no drill's, in a book all of whose names are ``name``."""
    numbers = ("9.1", "9.100")
    drills = tuple(entry(number, "wide-start", by=name, prints="first sheet") for number in numbers)
    book = Handbook(title=name, owner=name, contact=name, licence=name, dated=date(2026, 11, 25), sections=())
    book = book.changed(sections=(BookSection(title=name, introduction=name, drills=drills),))
    own = Drill.model_validate_json(sample("wide-start.drill.json").read_bytes()).changed(title=name, objective=name)
    leaves = [leaf_of(own, number="9.1", by=name, prints="first sheet"), without(drills[1], f"{name}: is not there")]
    made = make_handbook(book, leaves, brand=Brand(name=name, colour="#1C5049"), logo=LOGO)
    found = []
    document = pypdfium2.PdfDocument(made.pdf)
    for number in range(len(document)):
        if not document.get_page_label(number).startswith("9.1"):
            text = document[number].get_textpage()
            found.append([text.get_rect(place) for place in range(text.count_rects())])
    return found


@pytest.mark.parametrize("name", ["Drills", LONG, LONG * 6], ids=["short", "long", "endless"])
def test_no_word_of_the_books_own_pages_stands_on_another_or_at_the_edge(name: str) -> None:
    for page in boxes(name):
        for left, low, right, high in page:
            assert min(left, low) > WHITE
            assert right < 595.3 - WHITE
            assert high < 841.9 - WHITE
        for one, other in combinations(page, 2):
            aside = one[2] <= other[0] + 0.5 or other[2] <= one[0] + 0.5
            assert aside or one[3] <= other[1] + 2.5 or other[3] <= one[1] + 2.5, (one, other)
