from __future__ import annotations

import functools
from itertools import combinations

import pypdfium2
import pytest

from designer.bundle import sample
from designer.cards.card import make_card
from designer.cards.papers import LARGE_PRINT, chosen_paper
from designer.drill.drill import Drill
from designer.drill.setting import main_setting

SAMPLES = sorted(path.name.removesuffix(".drill.json") for path in sample().glob("*.drill.json"))
MM = 72 / 25.4
SHEETS = {
    "a4": (210, 297), "a5": (148, 210), "a6": (105, 148), "letter": (215.9, 279.4), "half-letter": (139.7, 215.9),
    "5x8": (127, 203.2), "4x6": (101.6, 152.4), "3x5": (76.2, 127),
}  # fmt: skip
"""Millimetres: ISO 216; letter and half letter are ANSI/ASME Y14.1 A and its half; the others say their inches."""


@functools.cache
def load(name: str) -> Drill:
    return Drill.model_validate_json(sample(f"{name}.drill.json").read_bytes())


def boxes(page: pypdfium2.PdfPage) -> list[tuple[str, tuple[float, float, float, float]]]:
    text = page.get_textpage()
    rectangles = [text.get_rect(number) for number in range(text.count_rects())]
    return [(text.get_text_bounded(*box), box) for box in rectangles]


def walked(pdf: bytes, size: tuple[float, float], edge: float) -> None:
    """Assert that each page is of this size, nothing written leaves it, and no two pieces of text overlap."""
    for page in pypdfium2.PdfDocument(pdf):
        assert page.get_size() == pytest.approx(size, abs=0.05)
        found = boxes(page)
        for text, (left, low, right, high) in found:
            assert left >= edge, text
            assert low >= edge, text
            assert right <= size[0] - edge, text
            assert high <= size[1] - edge, text
        for (one, a), (two, b) in combinations(found, 2):
            across = min(a[2], b[2]) - max(a[0], b[0])
            along = min(a[3], b[3]) - max(a[1], b[1])
            assert across < 1 or along < 1, f"{one!r} over {two!r}"


@pytest.mark.parametrize("paper", LARGE_PRINT)
def test_large_print_has_no_letter_under_16_points(paper: str) -> None:
    """16 pt: UKAAF's least size of large print, as the trade quotes it."""
    for name in SAMPLES[::3]:
        drill = load(name)
        pdf = make_card(drill, main_setting(drill), paper=paper, large_print=True).pdf
        for page in pypdfium2.PdfDocument(pdf):
            for thing in page.get_objects(filter=[pypdfium2.raw.FPDF_PAGEOBJ_TEXT]):
                assert _size(thing) >= 15.99


def _size(thing: pypdfium2.PdfObject) -> float:
    import ctypes

    size = ctypes.c_float()
    pypdfium2.raw.FPDFTextObj_GetFontSize(thing, size)
    return size.value * thing.get_matrix().d


def test_the_binding_margin_changes_sides_on_the_back() -> None:
    """ISO 838: holes 12 mm from the edge, 6 mm wide."""
    drill = load("wide-start")
    front, back = list(pypdfium2.PdfDocument(make_card(drill, main_setting(drill), reader="coach", binder=True).pdf))[
        :2
    ]
    wide = SHEETS["a5"][0] * MM
    assert min(box[0] for _, box in boxes(front)) >= 15 * MM
    assert max(box[2] for _, box in boxes(back)) <= wide - 15 * MM


def test_an_edge_for_lamination_is_left_all_round() -> None:
    """5 mm: common practice, no source."""
    drill = load("wide-start")
    for paper, (wide, high) in SHEETS.items():
        walked(make_card(drill, main_setting(drill), paper=paper, sealed=True).pdf, (wide * MM, high * MM), 5 * MM)


def test_large_print_is_refused_where_it_cannot_fit() -> None:
    with pytest.raises(KeyError, match="large print does not fit A6; choose one of a4, letter"):
        chosen_paper("a6", large_print=True)
