from __future__ import annotations

import ctypes
import functools

import pypdfium2
import pytest

from designer.bundle import sample
from designer.cards.card import make_card
from designer.drill.drill import Drill, Progression
from designer.drill.setting import main_setting
from tests.cards.test_papers import MM, walked

SHEETS = {"poster-a4": (210, 297), "poster-a3": (297, 420)}
"""Millimetres: ISO 216."""
LEAST = 39.99
"""40 pt, to be read from two metres: the trade's table by the US aviation rule of 1/200."""


@functools.cache
def load(name: str) -> Drill:
    return Drill.model_validate_json(sample(f"{name}.drill.json").read_bytes())


@functools.cache
def made(name: str, paper: str) -> bytes:
    return make_card(load(name), main_setting(load(name)), paper=paper).pdf


@pytest.mark.parametrize("paper", SHEETS)
@pytest.mark.parametrize("name", ["wide-start", "doubles-six", "hoop-red"])
def test_a_poster_has_no_small_letter_and_is_whole(name: str, paper: str) -> None:
    pdf = made(name, paper)
    wide, high = (length * MM for length in SHEETS[paper])
    walked(pdf, (high, wide) if paper == "poster-a3" else (wide, high), 5 * MM)
    for page in pypdfium2.PdfDocument(pdf):
        for thing in page.get_objects(filter=[pypdfium2.raw.FPDF_PAGEOBJ_TEXT]):
            size = ctypes.c_float()
            pypdfium2.raw.FPDFTextObj_GetFontSize(thing, size)
            assert size.value * thing.get_matrix().d >= LEAST


def test_it_says_title_letters_digits_score_and_edition_and_no_more() -> None:
    text = "".join(
        page.get_textpage().get_text_range() for page in pypdfium2.PdfDocument(made("wide-start", "poster-a3"))
    )
    said = text.replace("\r\n", " ")
    for words in ("Wide Ball, Recover, Play the Point", "Rally won.", "20 starts; highest total wins", "Edition 1"):
        assert words in said
    for sign in ("A", "B", "1", "2", "3"):
        assert sign in text.split()
    for words in ("deuce", "NET", "feed area", "replay", "waits", "open", "High and cross"):
        assert words not in said


@pytest.mark.parametrize("name", ["a-chooses", "serve-open", "doubles-six"])
def test_court_and_score_share_one_sheet_of_a3_on_its_side_the_court_as_high_as_on_an_a4(name: str) -> None:
    """Who reads the score looks at the court: two sheets hang apart, or one of them is lost."""
    (page,) = pypdfium2.PdfDocument(made(name, "poster-a3"))
    text = page.get_textpage().get_text_range()
    assert load(name).title in text.replace("\r\n", " ")
    assert "Edition" in text
    court = max(
        (thing.get_bounds() for thing in page.get_objects(filter=[pypdfium2.raw.FPDF_PAGEOBJ_PATH])),
        key=lambda box: box[3] - box[1],
    )
    assert court[3] - court[1] > 210 * MM


def test_without_a_score_the_sheet_stands_and_the_court_has_it_all() -> None:
    drill = Drill(id="d-bare", progressions=(Progression(id="p-one"),))
    (page,) = pypdfium2.PdfDocument(make_card(drill, main_setting(drill), paper="poster-a3").pdf)
    assert page.get_size() == pytest.approx([length * MM for length in SHEETS["poster-a3"]], abs=0.1)


def test_a_score_too_long_for_the_sheet_goes_to_another_one_whole() -> None:
    pages = list(pypdfium2.PdfDocument(made("doubles-six", "poster-a4")))
    assert len(pages) > 1
    card = "".join(page.get_textpage().get_text_range() for page in pages).replace("\r\n", " ")
    assert "divide totals by rounds played" in card
