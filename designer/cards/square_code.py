"""The square code that a telephone reads: an address in modules, with the address in words beside it."""

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import lru_cache
from typing import Final

from designer.cards.blocks import Block
from designer.cards.page import Page
from designer.cards.papers import MM, Type
from designer.cards.text import Typesetter, Unprintable
from designer.drawing.words import text_width

MODULE: Final = 0.5 * MM
"""Side of one module in points: common practice, no source; the inventor of the code asks for four printer dots."""
QUIET: Final = 4
"""Modules left white on each side: ISO/IEC 18004."""
MOST_LETTERS: Final = 120
"""A longer address makes a code too large for a card."""


@lru_cache(maxsize=16)
def modules(address: str) -> tuple[tuple[bool, ...], ...]:
    """Return the rows of modules of ``address`` at level Q, dark ones True, from the top; no quiet zone.

    Level Q still reads with a quarter of it rubbed away: ISO/IEC 18004. Raises ``Unprintable`` with a sentence where
    the address is too long or is not plain ASCII.
    """
    if not address.isascii() or not address.isprintable() or " " in address:
        raise Unprintable(f"{address!r} is no address for a code: expected plain letters, digits and signs, no spaces.")
    if len(address) > MOST_LETTERS:
        raise Unprintable(f"The address for the code has {len(address)} letters; expected at most {MOST_LETTERS}.")
    from reportlab.graphics.barcode.qrencoder import QRCode, QRErrorCorrectLevel

    made = QRCode(None, QRErrorCorrectLevel.Q)
    made.addData(address)
    made.make()
    return tuple(tuple(bool(module) for module in row) for row in made.modules)


@dataclass(frozen=True)
class SquareCode(Block):
    """The code of an address with its quiet zone, and the address in words at its right."""

    address: str
    type_: Type
    typesetter: Typesetter
    before: float = 0.0

    @property
    def side(self) -> float:
        """Side of the code with its quiet zone, in points."""
        return (len(modules(self.address)) + 2 * QUIET) * MODULE

    def height(self, width: float) -> float:
        """Return the height of the code or of the words, whichever is more."""
        return max(self.side, len(self.lines(width)) * self.type_.leading)

    def lines(self, width: float) -> tuple[str, ...]:
        """Return the address in lines beside the code: broken behind a stroke where it can be, for it is typed by hand."""
        room, lines = max(width - self.side, 40.0), [""]
        for piece in re.findall(r"[^/]*/+|[^/]+", self.address):
            if lines[-1] and text_width(lines[-1] + piece, self.type_.size) > room:
                lines.append(piece)
            else:
                lines[-1] += piece
        return tuple(part for line in lines for part in self.typesetter.lines(line, self.type_, room))

    def draw(self, page: Page, x: float, top: float, width: float) -> None:
        """Draw the modules, each run of dark ones as one bar, and write the address."""
        rows = modules(self.address)
        path = page.canvas.beginPath()
        for row, line in enumerate(rows):
            y = top - (row + QUIET + 1) * MODULE
            start = None
            for column, dark in enumerate((*line, False)):
                if dark and start is None:
                    start = column
                elif not dark and start is not None:
                    path.rect(x + (start + QUIET) * MODULE, y, (column - start) * MODULE, MODULE)
                    start = None
        page.canvas.setFillColor("#000000")
        page.canvas.drawPath(path, stroke=0, fill=1)
        base = top - self.side / 2 + (len(self.lines(width)) / 2 - 1) * self.type_.leading + 3
        for text in self.lines(width):
            page.write(text, x + self.side, base, self.type_)
            base -= self.type_.leading
