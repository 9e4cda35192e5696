from __future__ import annotations

import functools
import io
import math

import pikepdf
import pypdfium2
import pytest

from designer.bundle import sample
from designer.cards.card import make_card
from designer.cards.imposing import grid, imposed, joined
from designer.cards.papers import MM, PAPERS
from designer.drill.drill import Drill
from designer.drill.setting import main_setting

RIM = 4.2 * MM
"""Sixth of an inch: the rim that most office printers leave white. Common practice, no source."""
A4 = (210 * MM, 297 * MM)
"""ISO 216."""


def paper_of(name: str) -> tuple[float, float]:
    return PAPERS[name].width, PAPERS[name].height


@functools.cache
def card(paper: str, player: str = "A") -> bytes:
    drill = Drill.model_validate_json(sample("wide-start.drill.json").read_bytes())
    return make_card(drill, main_setting(drill), paper=paper, player=player).pdf


def words_at(page: pypdfium2.PdfPage, text: str) -> list[tuple[float, float]]:
    """Return where on a page ``text`` begins, in points."""
    textpage = page.get_textpage()
    search = textpage.search(text)
    found = []
    while (hit := search.get_next()) is not None:
        left, low, _, _ = textpage.get_charbox(hit[0])
        found.append((left, low))
    return found


@pytest.mark.parametrize(
    ("paper", "sheet", "count"),
    [("a5", "a4", 2), ("a6", "a4", 4), ("half-letter", "letter", 2), ("3x5", "letter", 4), ("3x5", "a4", 4)],
)
def test_as_many_cards_as_fit_lie_on_a_sheet(paper: str, sheet: str, count: int) -> None:
    """Two A5 or four A6 make an A4 by ISO 216; of the others, plain division of their inches."""
    lies = grid(paper_of(paper), sheet)
    assert lies.count == count
    for back in (False, True):
        for slot in range(count):
            a, b, c, d, x, y = lies.place(slot, back=back)
            corners = [
                (x + a * u + c * v, y + b * u + d * v) for u in (0, paper_of(paper)[0]) for v in (0, paper_of(paper)[1])
            ]
            assert all(-0.5 * MM < px < lies.sheet[0] + 0.5 * MM for px, _ in corners)
            assert all(-0.5 * MM < py < lies.sheet[1] + 0.5 * MM for _, py in corners)


@pytest.mark.parametrize("paper", ["a5", "a6", "3x5"])
def test_a_back_lies_behind_its_front_when_the_sheet_is_turned_over_its_long_edge(paper: str) -> None:
    """The card is held up to the light: a point of its front and the mirrored point of its back are one place."""
    lies = grid(paper_of(paper), "a4")
    wide, high = paper_of(paper)
    for slot in range(lies.count):
        for u, v in ((0, 0), (wide, 0), (0, high), (wide / 3, high / 4)):
            a, b, c, d, x, y = lies.place(slot, back=False)
            front = (x + a * u + c * v, y + b * u + d * v)
            a, b, c, d, x, y = lies.place(slot, back=True)
            # The back of a card turned like the page of a book: its left edge lies behind the right one of its front.
            back = (x + a * (wide - u) + c * v, y + b * (wide - u) + d * v)
            assert (lies.sheet[0] - back[0], back[1]) == pytest.approx(front, abs=0.01)


def test_a_sheet_is_filled_with_copies_and_each_card_reads_as_it_did() -> None:
    sheet = pypdfium2.PdfDocument(imposed([card("a6")], "a4"))
    alone = pypdfium2.PdfDocument(card("a6"))
    pages = len(alone)
    leaves = -(-pages // 2)
    assert len(sheet) == 2
    assert sheet[0].get_size() == pytest.approx(A4, abs=0.05)
    titles = words_at(sheet[0], f"1/{pages}")
    assert len(titles) == 4 // leaves
    assert len(words_at(alone[0], f"1/{pages}")) == 1
    assert len(words_at(sheet[1], f"2/{pages}")) == 4 // leaves
    assert len(imposed([card("a6")], "a4", copies=5)) > 0
    assert len(pypdfium2.PdfDocument(imposed([card("a6")], "a4", copies=5))) == 2 * -(-5 * leaves // 4)


def test_marks_to_cut_along_stand_at_the_ends_of_every_cut_and_inside_the_sheet() -> None:
    for paper, sheet in (("a6", "a4"), ("3x5", "letter"), ("a5", "a4"), ("4x6", "letter"), ("5x8", "letter")):
        lies = grid(paper_of(paper), sheet)
        marks = list(lies.marks())
        assert all(
            0 <= x <= lies.sheet[0] and 0 <= y <= lies.sheet[1] for mark in marks for x, y in (mark[:2], mark[2:])
        )
        for x, y, u, v in marks:
            seen = [min(max(value, RIM), side - RIM) for value, side in zip((x, y, u, v), lies.sheet * 2, strict=True)]
            assert math.dist(seen[:2], seen[2:]) >= 2 * MM, "what a printer leaves of it can be cut along"
        upright = {round(x, 1) for x, _, u, _ in marks if x == u}
        level = {round(y, 1) for _, y, _, v in marks if y == v}
        assert len(upright) >= lies.across - 1
        assert len(level) >= lies.along - 1


def test_cards_in_one_file_begin_on_a_leaf_of_their_own() -> None:
    drill = Drill.model_validate_json(sample("wide-start.drill.json").read_bytes())
    coach = make_card(drill, main_setting(drill), reader="coach").pdf
    both = joined([coach, card("a5", "B")])
    pages = len(pypdfium2.PdfDocument(coach))
    assert pages % 2, "the case that needs a blank back"
    document = pypdfium2.PdfDocument(both)
    assert len(document) == pages + 1 + len(pypdfium2.PdfDocument(card("a5", "B")))
    assert "You start as B" in document[pages + 1].get_textpage().get_text_range()


def test_sheets_keep_their_fonts_title_and_language_and_come_out_the_same_each_time() -> None:
    made = imposed([card("a6")], "a4")
    assert made == imposed([card("a6")], "a4")
    with pikepdf.open(io.BytesIO(made)) as document:
        assert str(document.docinfo.Title) == "Wide Ball, Recover, Play the Point"
        assert str(document.Root.Lang) == "en"
        forms = [form for page in document.pages for form in page.Resources.XObject.values()]
        fonts = [font for form in forms for font in form.Resources.Font.values()]
        assert fonts
        assert all("/FontFile2" in font.FontDescriptor for font in fonts)


def test_what_does_not_fit_twice_is_refused_with_a_sentence() -> None:
    with pytest.raises(KeyError, match="do not fit on one sheet of A4; print them one by one"):
        grid(paper_of("a4"), "a4")
    with pytest.raises(KeyError, match="there is no sheet 'a3'"):
        grid(paper_of("a6"), "a3")
