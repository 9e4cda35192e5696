"""An academy's own TrueType: made here from a few of the bundled face's signs, under another name and twice as wide."""

import functools
import io
import struct

import pypdf
import pytest
from cards.book_of_samples import drill
from fontTools import subset
from fontTools.ttLib import TTFont

from designer.bundle import resource
from designer.cards.card import make_card
from designer.cards.typeface import UnreadableTypeface, own_faces, read_typeface, runs
from designer.drawing.words import in_bundled_faces, set_in, text_width
from designer.drill.setting import main_setting

LETTERS = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789.,:;?!()-+ ’"


@functools.cache
def own(letters=LETTERS, forbidden=0):
    font = TTFont(resource("fonts", "NotoSans-Regular.ttf"))
    for table in ("GSUB", "GPOS", "GDEF"):  # nothing here is shaped, and reading them takes ten times the rest
        del font[table]
    options = subset.Options(notdef_outline=True, glyph_names=True)
    maker = subset.Subsetter(options)
    maker.populate(text=letters)
    maker.subset(font)
    for glyph, (width, bearing) in font["hmtx"].metrics.items():
        font["hmtx"].metrics[glyph] = (2 * width, bearing)
    font["OS/2"].fsType = forbidden
    for record in font["name"].names:
        record.string = "AlderQuay"
    file = io.BytesIO()
    font.save(file)
    return file.getvalue()


def test_words_are_measured_in_the_face_and_pictures_in_the_bundled_one():
    usual = text_width("Court", 10)
    with set_in(read_typeface(own())):
        assert text_width("Court", 10) == pytest.approx(2 * usual)
        assert in_bundled_faces(text_width)("Court", 10) == usual
    assert text_width("Court", 10) == usual


def test_what_the_face_lacks_comes_from_the_bundled_one():
    with set_in(read_typeface(own())):
        pieces = runs("Run ≥ 3 Ω", bold=False)
        assert [text for _, text in pieces] == ["Run ", "≥", " 3 ", "Ω"]
        assert len({name for name, _ in pieces}) == 2
        assert text_width("Ω", 10) < 10
    assert len(runs("Run Ω", bold=False)) == 1


def test_a_card_is_set_in_the_face_which_is_inside_it_and_the_court_is_not():
    wide = drill()
    card = make_card(wide, main_setting(wide), typeface=(own(), None))
    page = pypdf.PdfReader(io.BytesIO(card.pdf)).pages[0]
    fonts = [font.get_object() for font in page["/Resources"]["/Font"].values()]
    names = {str(font["/BaseFont"]) for font in fonts}
    assert any("AlderQuay" in name for name in names)
    assert any("NotoSans" in name for name in names), "the letters on the court are signs, and stay"
    assert all("/FontFile2" in font["/FontDescriptor"] for font in fonts)
    text = " ".join(page.extract_text().split())
    assert "Wide Ball, Recover, Play the Point" in text
    assert "deuce" in text
    assert card.notices == ()


def damaged(table: str) -> bytes:
    """A face whose ``table`` says nothing but the greatest numbers. ISO/IEC 14496-22: tag, check sum, offset, length."""
    data = bytearray(own())
    at = data.index(table.encode(), 12)
    start, length = struct.unpack_from(">LL", data, at + 8)
    data[start : start + length] = b"\xff" * length
    return bytes(data)


@pytest.mark.parametrize(
    ("made", "says"),
    [
        (lambda: b"\0\1\0\0 nothing", "damaged"),
        (lambda: own(letters="abc"), "has no sign for"),
        (lambda: own(forbidden=0x0002), "does not allow"),
        (lambda: damaged("glyf"), "damaged"),
        (lambda: damaged("hmtx"), "times as wide"),
        (lambda: damaged("loca"), "draws nothing"),
    ],
)
def test_a_face_that_cannot_be_used_is_left_out_with_a_sentence(made, says):
    data = made()
    with pytest.raises(UnreadableTypeface, match=says):
        read_typeface(data)
    faces, notices = own_faces((data, None))
    assert faces is None
    assert says in notices[0]
