"""The three media show the same marks at the same places: numbers, not eyes.

Each mark is rendered alone, black on white, by Qt, by the PDF writer and a PDF renderer (pypdfium2), and by the SVG writer and
Qt's SVG renderer, all at three pixels a point. Where its ink lies (its centroid) and how much there is must agree.
"""

import io
import os
from dataclasses import replace

import numpy as np
import pypdfium2
import pytest
from PySide6.QtCore import QByteArray
from PySide6.QtGui import QImage, QPainter
from PySide6.QtSvg import QSvgRenderer
from reportlab.pdfgen.canvas import Canvas
from scipy.ndimage import gaussian_filter

from designer.bundle import sample as file_of
from designer.drawing import pdf, qt
from designer.drawing.picture import Picture
from designer.drawing.primitives import Layer, Words, mark
from designer.drawing.samples import kinds, sample, shifted
from designer.drawing.sheet import with_legend
from designer.drawing.svg import svg
from designer.drawing.themes import theme

NAMES = tuple(sorted(path.name.removesuffix(".drill.json") for path in file_of().glob("*.drill.json")))
POINTS = 157
"""The court's width on an A5 card."""

SCALE = 3
WIDTH = POINTS * SCALE
NEAR = 0.5 * SCALE
"""How far apart, in pixels, a mark may lie: half a point."""


def alone(picture):
    return [replace(picture, marks=(one,)) for one in picture.marks]


def darkness(pixels):
    return 255 - pixels[..., :3].astype(float).mean(axis=2)


def from_image(image):
    image = image.convertToFormat(QImage.Format.Format_RGB32)
    pixels = np.frombuffer(image.constBits(), np.uint8).reshape(image.height(), image.width(), 4)
    return darkness(pixels)


def by_qt(pictures, look):
    return [from_image(qt.image(picture, look, WIDTH)) for picture in pictures]


def by_svg(pictures, look):
    made = []
    for picture, seen in zip(pictures, by_qt([replace(p, marks=()) for p in pictures], look), strict=True):
        image = QImage(seen.shape[1], seen.shape[0], QImage.Format.Format_RGB32)
        image.fill(0xFFFFFFFF)
        renderer = QSvgRenderer(QByteArray(svg(picture, look, WIDTH).encode()))
        assert renderer.isValid()
        painter = QPainter(image)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        renderer.render(painter)
        painter.end()
        made.append(from_image(image))
    return made


def by_pdf(pictures, look):
    file = io.BytesIO()
    canvas = Canvas(file, initialFontName=pdf.register_fonts()[0])
    for picture in pictures:
        left, low, right, high = picture.extent
        scale = POINTS / (right - left)
        height = round((high - low) * scale * SCALE) / SCALE - 1e-3
        canvas.setPageSize((POINTS, height))
        # The other two count from the top, where the extent begins; a page counts from its foot.
        foot = height - (high - low) * scale
        pdf.draw(canvas, picture, look, 0, foot, scale)
        canvas.showPage()
    canvas.save()
    with pypdfium2.PdfDocument(file.getvalue()) as document:
        return [darkness(document[number].render(scale=SCALE).to_numpy()) for number in range(len(document))]


def centroid(ink):
    down, across = np.indices(ink.shape)
    return np.array([(across * ink).sum(), (down * ink).sum()]) / ink.sum()


def compare(pictures, look):
    for picture, one, *others in zip(
        pictures, by_qt(pictures, look), by_pdf(pictures, look), by_svg(pictures, look), strict=True
    ):
        key = picture.marks[0].key
        for medium, other in zip(("pdf", "svg"), others, strict=True):
            assert other.shape == one.shape, (key, medium)
            if one.sum() < 255 * 2:
                assert other.sum() < 255 * 3, (key, medium)
                continue
            assert np.abs(centroid(one) - centroid(other)).max() < NEAR, (key, medium)
            # Renderers part over how dark a hairline's edge is, by up to a fifth of its ink; a missing stroke is more.
            assert other.sum() == pytest.approx(one.sum(), rel=0.25), (key, medium)


THOROUGH = os.environ.get("HYPOTHESIS_PROFILE") == "thorough"


@pytest.mark.parametrize("name", ["short-approach"])
def test_every_mark_of_a_drill_lies_at_one_place_in_all_media(qapp, drawing, name):
    compare(alone(drawing.of(name))[:: 1 if THOROUGH else 6], theme("paper"))


@pytest.mark.parametrize("switched", [False, True])
def test_a_sample_of_every_class_is_alike_in_all_media(qapp, switched):
    look = theme("photocopy", switched=switched)
    marks = [
        mark(None, kind, Layer.KIT, (shifted(shape, (20.0, 30.0)) for shape in sample(kind, look, 1.0)))
        for kind in kinds()
    ]
    from designer.drawing.page import Page

    compare([Picture((one,), (0.0, 0.0, 80.0, 60.0), (), 1.0, Page()) for one in marks], look)


APART = 24
"""Of 255, after a blur of four pixels: renderers part over a letter by a pixel; a small area or label left out is more."""


@pytest.mark.parametrize("name", NAMES if THOROUGH else ("short-approach",))
def test_a_whole_picture_with_its_legend_is_alike_in_all_media(qapp, drawing, name):
    look = theme("paper")
    whole = [with_legend(drawing.of(name), look)]
    (screen,), (paper,), (file,) = by_qt(whole, look), by_pdf(whole, look), by_svg(whole, look)
    for other in (screen, file):
        assert np.abs(gaussian_filter(paper, 4) - gaussian_filter(other, 4)).max() < APART


def test_letters_are_as_wide_on_screen_as_on_paper(qapp, drawing):
    """Kerning would draw these letters together on screen: 4 % at this size, and the labels would no longer fit."""
    look = theme("photocopy")
    words = Words("AVATAR To. WAVE", (2.0, 10.0), 6.0, "ink", bold=True)
    picture = Picture(
        (mark(None, "note", Layer.WORDS, (words,)),), (0.0, 0.0, 80.0, 20.0), (), 1.0, drawing.of("wide-start").page
    )
    ends = [
        np.flatnonzero(ink.sum(axis=0) > 60)[[0, -1]] for (ink,) in (by_qt([picture], look), by_pdf([picture], look))
    ]
    assert np.abs(ends[0] - ends[1]).max() <= 1
