"""A logo is drawn from plain SVG or a PNG; what is more than a logo, or less than one, is refused with a sentence."""

import io

import pypdfium2
import pytest
from PIL import Image
from reportlab.pdfgen.canvas import Canvas

from designer.bundle import sample
from designer.cards.logo import MOST_ELEMENTS, UnreadableLogo, draw_logo, read_logo

SVG = '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 20 10">{}</svg>'


def painted(logo, only=None):
    """The page on which the logo stands 40 points high at (10, 10), as a picture of a pixel a point."""
    file = io.BytesIO()
    canvas = Canvas(file, pagesize=(100, 60))
    draw_logo(canvas, read_logo(logo), 10, 10, 40, only)
    canvas.save()
    return pypdfium2.PdfDocument(file.getvalue())[0].render(scale=1).to_pil().convert("RGB")


def test_shapes_stand_where_they_are_in_the_drawing_with_their_colours():
    drawing = SVG.format(
        '<g fill="#FF0000"><rect x="0" y="0" width="10" height="10"/></g>'
        '<circle cx="15" cy="5" r="4" fill="none" stroke="#0000FF" stroke-width="2"/>'
    )
    page = painted(drawing)
    assert page.getpixel((20, 30)) == (255, 0, 0)
    assert page.getpixel((70, 30)) == (255, 255, 255)
    assert page.getpixel((86, 30)) == (0, 0, 255)
    assert page.getpixel((95, 30)) == (255, 255, 255)
    assert painted(drawing, only="#333333").getpixel((20, 30)) == (0x33, 0x33, 0x33)


def test_a_png_is_drawn_with_what_shines_through_it():
    file = io.BytesIO()
    picture = Image.new("RGBA", (20, 10), (0, 0, 0, 0))
    picture.paste((0, 128, 0, 255), (0, 0, 10, 10))
    picture.save(file, "PNG")
    page = painted(file.getvalue())
    assert page.getpixel((20, 30)) == (0, 128, 0)
    assert page.getpixel((80, 30)) == (255, 255, 255)
    assert read_logo(file.getvalue()).ratio == 2.0


def test_the_academys_own_logo_has_its_two_colours():
    colours = {colour for _, colour in painted(sample("alder-quay.svg").read_text("utf-8")).getcolors(10_000)}
    assert {(0x1C, 0x50, 0x49), (0xB8, 0x62, 0x2B)} <= colours


@pytest.mark.parametrize(
    ("logo", "says"),
    [
        ("<svg", "not well-formed"),
        ("<html/>", "first element is not svg"),
        ('<svg xmlns="http://www.w3.org/2000/svg"/>', "no viewBox"),
        ("<!DOCTYPE svg><svg/>", "document type"),
        (SVG.format('<rect width="1" height="1" fill="url(#a)"/>'), "cannot be drawn"),
        (SVG.format('<path d="M0 0 L1 1" stroke="#000" stroke-width="thick"/>'), "cannot be drawn"),
        (SVG.format("<g>" * 60 + "</g>" * 60), "groups in groups"),
        (SVG.format('<rect width="1" height="1"/>' * (MOST_ELEMENTS + 1)), "more than 500 shapes"),
        (SVG.format('<path d="M0 0' + " L1 1 L2 0" * 10_000 + '"/>'), "more points than a logo needs"),
        (b"\x89PNG\r\n\x1a\n nothing", "damaged PNG"),
        (
            '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 1 900"><path d="M0 0L1 900z"/></svg>',
            "20 times as long",
        ),
    ],
)
def test_what_is_no_logo_is_refused_with_a_sentence(logo, says):
    with pytest.raises(UnreadableLogo, match=says):
        read_logo(logo)


def test_what_a_logo_has_beyond_plain_shapes_is_left_out_and_told():
    logo = read_logo(SVG.format('<text>A</text><rect width="1" height="1" transform="scale(2)"/>'))
    assert logo.notices == ("The logo's rect, text cannot be drawn on a card.",)
