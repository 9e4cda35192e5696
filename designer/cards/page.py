"""One page of a PDF: text, rules and colours on a reportlab canvas, in points from the lower left corner."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING, Final

from designer.cards.papers import Paper, Type
from designer.cards.text import Typesetter
from designer.cards.typeface import painted, runs
from designer.drawing.words import text_width

if TYPE_CHECKING:
    from reportlab.pdfgen.canvas import Canvas

NOTE_LINE: Final = "#C9C9C9"
"""Lines to write on: pale, so that a pencil shows."""


class Page:
    """What a card is drawn on. ``colours`` maps "ink", "soft", "brand" and "note" to #RRGGBB."""

    def __init__(self, canvas: Canvas, paper: Paper, colours: dict[str, str], typesetter: Typesetter) -> None:
        self.canvas = canvas
        self.paper = paper
        self.colours = colours
        self.typesetter = typesetter

    def write(self, text: str, x: float, base: float, type_: Type, colour: str = "ink") -> float:
        """Write one line with its base line at ``base`` and return where it ends."""
        shown = self.typesetter.clean(text)
        self.canvas.setFillColor(painted(self.colours.get(colour, colour)))
        end = x
        for name, part in runs(shown, bold=type_.bold):
            self.canvas.setFont(name, type_.size)
            self.canvas.drawString(end, base, part)
            end += text_width(part, type_.size, type_.bold)
        return end

    def write_right(self, text: str, right: float, base: float, type_: Type, colour: str = "ink") -> float:
        """Write one line that ends at ``right`` and return where it begins."""
        begin = right - text_width(self.typesetter.clean(text), type_.size, type_.bold)
        self.write(text, begin, base, type_, colour)
        return begin

    def rule(self, x: float, y: float, right: float, *, weight: float, colour: str) -> None:
        """Draw a level line from ``x`` to ``right``."""
        self.canvas.setStrokeColor(self.colours.get(colour, colour))
        self.canvas.setLineWidth(weight)
        self.canvas.setDash([])
        self.canvas.line(x, y, right, y)

    def box(self, x: float, y: float, width: float, height: float, colour: str) -> None:
        """Fill a rectangle whose lower left corner is at (x, y)."""
        self.canvas.setFillColor(self.colours.get(colour, colour))
        self.canvas.rect(x, y, width, height, stroke=0, fill=1)

    def frame(self, x: float, y: float, width: float, height: float, *, weight: float, colour: str) -> None:
        """Draw the outline of a rectangle whose lower left corner is at (x, y)."""
        self.canvas.setStrokeColor(self.colours.get(colour, colour))
        self.canvas.setLineWidth(weight)
        self.canvas.setDash([])
        self.canvas.rect(x, y, width, height, stroke=1, fill=0)

    def dot(self, x: float, y: float, radius: float, colour: str = "ink") -> None:
        """Fill a disc round (x, y)."""
        self.canvas.setFillColor(self.colours.get(colour, colour))
        self.canvas.circle(x, y, radius, stroke=0, fill=1)

    def polyline(self, points: Sequence[tuple[float, float]], *, weight: float, colour: str, closed: bool) -> None:
        """Draw a line through ``points`` with round joins."""
        path = self.canvas.beginPath()
        path.moveTo(*points[0])
        for point in points[1:]:
            path.lineTo(*point)
        if closed:
            path.close()
        self.canvas.setStrokeColor(self.colours.get(colour, colour))
        self.canvas.setLineWidth(weight)
        self.canvas.setLineJoin(1)
        self.canvas.setDash([])
        self.canvas.drawPath(path, stroke=1, fill=0)
