import pytest
from fontTools.ttLib import TTFont
from hypothesis import given
from hypothesis import strategies as st

from designer.bundle import resource
from designer.drawing.words import is_shown, missing_glyphs, shown, text_width, wrap


@pytest.mark.parametrize(("bold", "file"), [(False, "NotoSans-Regular.ttf"), (True, "NotoSans-Bold.ttf")])
def test_a_width_is_the_sum_of_the_advances_that_the_font_file_states(bold, file):
    # Oracle: fontTools reads the face's hmtx table itself.
    font = TTFont(resource("fonts", file))
    advances, glyphs = font["hmtx"], font.getBestCmap()
    text = "Forehand cross-court, 12.80 m – Ärger €"
    expected = sum(advances[glyphs[ord(c)]][0] for c in text) * 9.5 / font["head"].unitsPerEm
    assert text_width(text, 9.5, bold) == pytest.approx(expected)


def test_a_width_is_the_one_that_the_pdf_writer_uses():
    # Oracle: reportlab's own measure of the same face.
    from reportlab.pdfbase import pdfmetrics

    from designer.drawing.pdf import register_fonts

    regular, bold = register_fonts()
    text = "AVATAR To. WAVE, +2"
    assert text_width(text, 12) == pytest.approx(pdfmetrics.stringWidth(text, regular, 12))
    assert text_width(text, 12, bold=True) == pytest.approx(pdfmetrics.stringWidth(text, bold, 12))


def test_what_the_font_lacks_is_named_once_in_order():
    assert missing_glyphs("go ⇄ then ☂ and ⇄ again\n\x00") == ("⇄", "☂")


def test_what_cannot_be_drawn_is_replaced_or_gone():
    assert shown("a\x00b ⇄ c\td\r\ne\ud800") == "ab ? c d\ne?"


@given(st.text())
def test_shown_text_has_a_glyph_for_every_sign(text):
    assert all(c == "\n" or is_shown(c) for c in shown(text))


@given(st.text(alphabet="abcdefghij klmno-MWi. ", max_size=80), st.floats(min_value=12, max_value=200), st.booleans())
def test_wrapped_lines_fit_and_lose_nothing_but_spaces(text, width, bold):
    lines = wrap(text, 9.5, width, bold)
    assert "".join(lines).replace(" ", "") == text.replace(" ", "")
    assert all(len(line) == 1 or text_width(line, 9.5, bold) <= width for line in lines)


def test_wrapping_keeps_line_breaks_and_unbreakable_spaces():
    assert wrap("one\n\ntwo", 10, 500) == ("one", "", "two")
    narrow = text_width("12\u00a0m", 10) + 0.1
    assert wrap("a 12\u00a0m", 10, narrow) == ("a", "12\u00a0m")
