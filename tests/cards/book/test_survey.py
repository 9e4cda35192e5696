"""The pages that are counted are the pages that are printed."""

from cards.book_of_samples import LOGO, MISSING, alone, book, drill, entry, leaf_of, leaves, made
from cards.test_typeface import own as twice_as_wide

from designer.cards.blocks import Rules
from designer.cards.book.sheets import Sheets
from designer.cards.book.survey import page_count, sheet_paper, surveyed
from designer.cards.card import usable_logo
from designer.cards.handbook import make_handbook
from designer.cards.typeface import read_typeface
from designer.drawing.themes import theme
from designer.drawing.words import set_in
from designer.drill.brand import Brand
from designer.drill.handbook import BookSection, Remembered
from designer.wording.vocabulary import Vocabulary


def test_a_book_is_as_long_as_it_is_counted() -> None:
    whole = book()
    own = leaves(whole)
    found = {leaf.entry.number: surveyed(whole, leaf) for leaf in own if leaf.entry.number != MISSING}
    assert page_count(whole, own, found) == made().pages
    assert all(one.sheets == 2 for one in found.values())


def test_a_card_that_just_fills_its_sides_gets_no_leaf_of_empty_lines() -> None:
    whole = book(paper="letter")
    found = surveyed(whole, leaf_of(drill("doubles-six"), handbook=whole))
    assert (found.sheets, found.problem) == (3, "")
    (card,) = Sheets(sheet_paper(whole), theme("paper"), None, None, Vocabulary()).cards(
        leaf_of(drill("doubles-six"), handbook=whole)
    )
    said = [
        [block for placed in side for block in placed.blocks if not isinstance(block, Rules)] for side in card.sides
    ]
    assert all(len(blocks) > 1 for blocks in said), "the third has the courts of its progressions"


def test_lines_to_write_on_give_way_to_the_courts_before_these_take_a_page_of_their_own() -> None:
    whole = book(paper="letter")
    assert surveyed(whole, leaf_of(drill("shared-target"), handbook=whole)).sheets == 2


def test_a_book_is_counted_in_the_typeface_and_with_the_name_and_logo_that_it_is_printed_with() -> None:
    whole = alone().changed(planners=0, sections=(BookSection(title="S", drills=(entry("1.1", "wide-start"),)),))
    own = leaves(whole)
    brand = Brand(name="Alder Quay", licence="Ask before you copy. " * 300)
    logo, _ = usable_logo(LOGO)
    with set_in(read_typeface(twice_as_wide())):
        found = {"1.1": surveyed(whole, own[0], brand, logo)}
        pages = page_count(whole, own, found, brand=brand)
    printed = make_handbook(whole, own, brand=brand, logo=LOGO, typeface=(twice_as_wide(), None))
    assert pages == printed.pages
    assert pages > page_count(whole, own, {"1.1": surveyed(whole, own[0])})


def test_changes_that_fill_a_page_are_counted() -> None:
    whole = alone().changed(edition=2, planners=0)
    own = leaves(whole)
    before = {f"9.{place}": Remembered(digest="x", title="Gone", id=f"d-{place}") for place in range(1, 240)}
    found = {leaf.entry.number: surveyed(whole, leaf) for leaf in own}
    assert page_count(whole, own, found, before) == make_handbook(whole, own, before=before).pages
    assert page_count(whole, own, found, before) > page_count(whole, own, found)
