"""Pages of a PDF on paper: as many, as large, and with the same ink."""

import io
from random import Random

import numpy as np
import pypdf
import pytest
from PySide6.QtCore import QRectF, Qt
from PySide6.QtGui import QImage, QPainter
from PySide6.QtPrintSupport import QPrinter

from designer.cards.card import make_card
from designer.desktop import pages
from designer.desktop.blank import blank
from designer.desktop.pages import Sheet, bands, fit_paper, image, placed, print_sheets, sheets
from designer.desktop.situations import SITUATIONS, with_situation
from designer.drill.setting import main_setting

MM = 72 / 25.4
A5, A4 = (148 * MM, 210 * MM), (210 * MM, 297 * MM)
"""ISO 216."""


@pytest.fixture(scope="module")
def pdf():
    source = Random(3)
    drill = blank(source)
    drill = with_situation(drill, main_setting(drill), SITUATIONS[1], source)
    return make_card(drill, main_setting(drill), paper="a5", reader="coach").pdf


def test_the_pages_are_those_of_the_card(qapp, pdf):
    read = pypdf.PdfReader(io.BytesIO(pdf))
    found = sheets(pdf)
    assert len(found) == len(read.pages)
    assert (found[0].width, found[0].height) == pytest.approx(A5, abs=0.5)
    shown = image(found[0], 0.5)
    assert (shown.width(), shown.height()) == pytest.approx((A5[0] / 2, A5[1] / 2), abs=1)


def test_what_is_printed_is_as_large_as_the_card_and_has_its_ink(qapp, pdf, tmp_path):
    printer = QPrinter()
    printer.setOutputFormat(QPrinter.OutputFormat.PdfFormat)
    printer.setOutputFileName(str(tmp_path / "printed.pdf"))
    printer.setResolution(100)
    each, told = sheets(pdf), []
    fit_paper(printer, each[0])
    print_sheets(printer, each, lambda number, count: told.append((number, count)))
    printed = sheets((tmp_path / "printed.pdf").read_bytes())
    assert told == [(number, len(each)) for number in range(1, len(each) + 1)]
    assert len(printed) == len(each)
    assert (printed[0].width, printed[0].height) == pytest.approx(A5, abs=1)
    assert ink(each[0]) > 0.02
    assert ink(printed[0]) == pytest.approx(ink(each[0]), rel=0.05)


def ink(sheet):
    """How much ink a page has on the whole: 0 for bare paper, 1 for black."""
    small = image(sheet, 1.0).scaled(30, 42, mode=Qt.TransformationMode.SmoothTransformation)
    points = [(x, y) for x in range(small.width()) for y in range(small.height())]
    return 1 - sum(small.pixelColor(x, y).lightnessF() for x, y in points) / len(points)


def test_a_page_in_bands_is_the_page(qapp, pdf, monkeypatch):
    """Laid one over another where they say they begin, the bands show what the page shows, but for rounding."""
    monkeypatch.setattr(pages, "BAND", 40_000)
    (sheet, *_), scale = sheets(pdf), 1.3
    whole = image(sheet, scale)
    laid, count = QImage(whole.size(), whole.format()), 0
    painter = QPainter(laid)
    for row, band in bands(sheet, scale):
        painter.drawImage(0, row, band)
        assert band.width() * band.height() < 2 * 40_000
        count += 1
    painter.end()
    assert count > 3
    rounded = [each.convertToFormat(QImage.Format.Format_RGB32) for each in (laid, whole)]
    one, other = (np.frombuffer(each.constBits(), np.uint8).astype(int) for each in rounded)
    assert np.abs(one - other).max() <= 3


def test_stopping_stops_between_two_pages(qapp, pdf, tmp_path):
    printer = QPrinter()
    printer.setOutputFormat(QPrinter.OutputFormat.PdfFormat)
    printer.setOutputFileName(str(tmp_path / "printed.pdf"))
    printer.setResolution(72)
    told = []

    def step(number, count):
        told.append(number)
        if number == 2:
            raise InterruptedError

    with pytest.raises(InterruptedError):
        print_sheets(printer, sheets(pdf) * 3, step)
    assert told == [1, 2]


def test_a_small_card_on_large_paper_keeps_its_size_and_a_large_one_on_small_paper_is_made_to_fit(qapp):
    dots = 72
    small = Sheet(b"", 0, *A5)
    on_a4 = placed(small, QRectF(0, 0, *A4), dots)
    assert (on_a4.width(), on_a4.height()) == pytest.approx(A5)
    assert on_a4.center().x() == pytest.approx(A4[0] / 2)
    on_a5 = placed(Sheet(b"", 0, *A4), QRectF(0, 0, *A5), dots)
    assert on_a5.width() <= A5[0] + 1
    assert on_a5.width() / on_a5.height() == pytest.approx(A4[0] / A4[1])
