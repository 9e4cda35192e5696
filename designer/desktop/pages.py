"""The pages of a PDF as pixels: what is printed and what the preview shows are the very pages of the card."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

from PySide6.QtCore import QMarginsF, QRect, QRectF, QSizeF
from PySide6.QtGui import QImage, QPageLayout, QPageSize, QPainter

if TYPE_CHECKING:
    from PySide6.QtPrintSupport import QPrinter

POINT: Final = 1 / 72
"""A point in inches: ISO 32000-1, 8.3.2.3, the default unit of a page."""

SHARPEST: Final = 600
"""More dots an inch are not sent to a printer: no eye sees them at arm's length, and pages become huge."""

BAND: Final = 600_000
"""Pixels sent to a printer at once: sending keeps Python to itself, and the window must be able to answer in between."""

OVERLAP: Final = 16
"""Rows of pixels that a band has in common with the one above it."""


@dataclass(frozen=True, slots=True)
class Sheet:
    """One page: its PDF, its number in it from 0, and its size in points."""

    pdf: bytes
    number: int
    width: float
    height: float


def sheets(pdf: bytes) -> tuple[Sheet, ...]:
    """Return the pages of ``pdf``."""
    from pypdfium2 import PdfDocument

    document = PdfDocument(pdf)
    try:
        return tuple(Sheet(pdf, number, *document.get_page_size(number)) for number in range(len(document)))
    finally:
        document.close()


def image(sheet: Sheet, scale: float) -> QImage:
    """Return the page, ``scale`` pixels to a point, every pixel opaque."""
    from pypdfium2 import PdfDocument

    document = PdfDocument(sheet.pdf)
    try:
        page = document[sheet.number]
        bitmap = page.render(scale=scale)
        made = QImage(bitmap.buffer, bitmap.width, bitmap.height, bitmap.stride, QImage.Format.Format_BGR888)
        return made.copy()  # the bitmap's memory goes with it
    finally:
        document.close()


def bands(sheet: Sheet, scale: float) -> Iterator[tuple[int, QImage]]:
    """Yield the page from above in bands, each with the row it begins in, ``scale`` pixels to a point.

    Each begins with the last rows of the one before: whatever makes pixels larger or smaller on the way, no gap can open.
    """
    from pypdfium2 import PdfDocument

    document = PdfDocument(sheet.pdf)
    try:
        page = document[sheet.number]
        width, height = math.ceil(page.get_width() * scale), math.ceil(page.get_height() * scale)
        rows = max(OVERLAP, BAND // width)
        for begin in range(0, height, rows):
            above, below = max(0, begin - OVERLAP), max(0, height - begin - rows)
            # Letters that a crop cuts have other greys along the cut: a row more is drawn there and left out.
            cut = 1 if above else 0
            # The reader rounds what is cropped up to whole pixels.
            crop = [max(0.0, (each - 0.5) / scale) for each in (0, below, 0, above - cut)]
            bitmap = page.render(scale=scale, crop=(crop[0], crop[1], crop[2], crop[3]))
            made = QImage(bitmap.buffer, bitmap.width, bitmap.height, bitmap.stride, QImage.Format.Format_BGR888)
            yield above, made.copy(0, cut, bitmap.width, bitmap.height - cut)
    finally:
        document.close()


def print_sheets(printer: QPrinter, pages: tuple[Sheet, ...], step: Callable[[int, int], None]) -> None:
    """Print ``pages``: in their true size in the middle of the paper, smaller where the paper is. May run off the window's thread.

    ``step`` is told (number from 1, count) before each page and may raise to stop; what was sent until then is printed.
    """
    printer.setFullPage(True)
    each = math.ceil(printer.resolution() / SHARPEST)
    # In a file that is read on a screen each band would be made smaller by itself, and seams would show.
    is_file = printer.outputFormat() == printer.OutputFormat.PdfFormat
    painter = QPainter()
    try:
        for number, sheet in enumerate(pages, 1):
            step(number, len(pages))
            _turn(printer, sheet)
            if number == 1 and not painter.begin(printer):
                raise ValueError("The printer does not answer.")
            if number > 1:
                printer.newPage()
            there = placed(sheet, printer.paperRect(printer.Unit.DevicePixel), printer.resolution())
            left, top = round(there.left()), round(there.top())
            scale = there.width() / sheet.width / each
            for row, band in ((0, image(sheet, scale)),) if is_file else bands(sheet, scale):
                painter.drawImage(QRect(left, top + row * each, band.width() * each, band.height() * each), band)
    finally:
        if painter.isActive():
            painter.end()


def _turn(printer: QPrinter, sheet: Sheet) -> None:
    lying = sheet.width > sheet.height
    printer.setPageOrientation(QPageLayout.Orientation.Landscape if lying else QPageLayout.Orientation.Portrait)


def placed(sheet: Sheet, paper: QRectF, dots: int) -> QRectF:
    """Return where on ``paper`` (in dots, ``dots`` to an inch) the page comes to lie."""
    width, height = sheet.width * POINT * dots, sheet.height * POINT * dots
    # A page that is the paper's own size but for rounding is not made smaller.
    share = min(1.0, (paper.width() + 1) / width, (paper.height() + 1) / height)
    width, height = width * share, height * share
    return QRectF((paper.width() - width) / 2, (paper.height() - height) / 2, width, height)


def fit_paper(printer: QPrinter, sheet: Sheet) -> None:
    """Ask the printer for paper of the size of ``sheet``; the user may choose another in the printer's own dialog."""
    upright = QSizeF(min(sheet.width, sheet.height), max(sheet.width, sheet.height))
    size = QPageSize(upright, QPageSize.Unit.Point, "", QPageSize.SizeMatchPolicy.FuzzyMatch)
    printer.setPageSize(size)
    printer.setPageMargins(QMarginsF())
