"""The pages that open a section, laid out and drawn on a canvas that only counts."""

import io

import pypdf
from cards.book_of_samples import drill, entry, leaf_of
from reportlab.pdfgen.canvas import Canvas

from designer.cards.blocks import draw_stack
from designer.cards.book.binding import page_colours, paged
from designer.cards.book.leaf import Leaf
from designer.cards.book.opener import section_page
from designer.cards.book.rows import Setter, drill_key
from designer.cards.book.survey import page_paper
from designer.cards.page import Page
from designer.cards.text import Typesetter
from designer.drawing.pdf import register_fonts
from designer.drill.handbook import BookSection, Handbook
from designer.wording.vocabulary import Vocabulary

PAPER = page_paper(Handbook(title="X", sections=()))


def set_in_pages(count: int, leaf: Leaf) -> list[str]:
    """Return the text of each page of a section with ``leaf`` ``count`` times."""
    numbers = [f"1.{place + 1}" for place in range(count)]
    section = BookSection(title="From the back", drills=tuple(entry(number, "a") for number in numbers))
    setter = Setter(PAPER, Typesetter(), Vocabulary(), frozenset(numbers))
    blocks = tuple(section_page(section, "1", dict.fromkeys(numbers, leaf), setter))
    register_fonts()
    file = io.BytesIO()
    canvas = Canvas(file, pagesize=(PAPER.width, PAPER.height))
    canvas.bookmarkPage(drill_key(leaf.entry.number))
    page = Page(canvas, PAPER, page_colours("#000000", "#000000"), setter.typesetter)
    for own in paged(blocks, PAPER):
        draw_stack(page, own, PAPER.left, PAPER.height - PAPER.top, PAPER.inner)
        canvas.showPage()
    canvas.save()
    return [" ".join(one.extract_text().split()) for one in pypdf.PdfReader(file).pages]


def test_a_section_shows_each_drill_with_what_it_is_for_and_who_plays() -> None:
    own = drill().changed(objective="Come back.", players=(2, 3), minutes=12)
    (text,) = set_in_pages(6, leaf_of(own, tags=("level:club",)))
    assert text.startswith("1 From the back")
    assert text.count("3.12 Wide Ball, Recover, Play the Point Come back. 2–3 players · 12 min · club") == 6


def test_more_drills_than_a_page_holds_go_on_and_one_that_cannot_be_drawn_stops_none() -> None:
    def torn() -> None:
        raise OSError("the file is gone")

    sound = leaf_of(drill())
    pages = set_in_pages(25, Leaf(sound.entry, sound.summary, read=torn))
    assert len(pages) == 3
    assert sum(text.count("3.12 Wide Ball") for text in pages) == 25
