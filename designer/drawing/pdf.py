"""Marks on a reportlab canvas, as vectors and live text in the bundled font. Only this module and the cards know reportlab."""

from __future__ import annotations

import math
from functools import lru_cache
from typing import Any, Final

from designer.bundle import resource
from designer.drawing.picture import Picture
from designer.drawing.primitives import Dots, Path, Point, Primitive, Strokes, Style, Words
from designer.drawing.themes import Colour, Theme

REGULAR: Final = "NotoSans-Regular"
BOLD: Final = "NotoSans-Bold"
FAMILY: Final = "NotoSans"


@lru_cache(maxsize=1)
def register_fonts() -> tuple[str, str]:
    """Register the bundled faces with reportlab and return their names, regular and bold.

    Once a process: a second registration would silently turn bold text regular.
    """
    from reportlab.pdfbase import pdfmetrics
    from reportlab.pdfbase.ttfonts import TTFont

    for name in (REGULAR, BOLD):
        pdfmetrics.registerFont(TTFont(name, str(resource("fonts", f"{name}.ttf"))))
    pdfmetrics.registerFontFamily(FAMILY, normal=REGULAR, bold=BOLD, italic=REGULAR, boldItalic=BOLD)
    pdfmetrics.registerFontFamily(REGULAR, normal=REGULAR, bold=BOLD, italic=REGULAR, boldItalic=BOLD)
    return REGULAR, BOLD


def draw(canvas: Any, picture: Picture, theme: Theme, x: float, y: float, scale: float) -> None:
    """Draw ``picture`` with the lower left corner of its extent at (x, y) points; ``scale`` is points a metre."""
    left, low = picture.extent[:2]
    shapes = (shape for mark in picture.marks for shape in mark.primitives)
    canvas.saveState()
    if picture.cut:
        edge = canvas.beginPath()
        edge.rect(x, y, (picture.extent[2] - left) * scale, (picture.extent[3] - low) * scale)
        canvas.clipPath(edge, stroke=0, fill=0)
    draw_primitives(canvas, shapes, theme, (x - left * scale, y - low * scale), scale)
    canvas.restoreState()


def draw_primitives(canvas: Any, shapes: Any, theme: Theme, origin: Point, scale: float) -> None:
    """Draw primitives with the page's (0, 0) at ``origin`` points; ``scale`` is points a unit of the primitives."""
    register_fonts()
    canvas.saveState()
    canvas.setMiterLimit(10)
    pencil = _Pencil(canvas, theme, origin, scale)
    for shape in shapes:
        pencil.draw(shape)
    pencil.flush()
    canvas.restoreState()


class _Pencil:
    """Turns primitives into a page's operators; numbers are converted here, so that no letter has a size near nothing.

    Shapes are written as operators of ISO 32000-1, 8.5, to a hundredth of a point: reportlab's own paths give the same in
    five times the time, and a handbook has millions of points. What is not set anew keeps its value, so colour and pen are
    written only where they change.
    """

    def __init__(self, canvas: Any, theme: Theme, origin: Point, scale: float) -> None:
        self.canvas, self.theme, self.scale = canvas, theme, scale
        self.x, self.y = origin
        self._written: list[str] = []
        self._pen: tuple[object, ...] = ()
        self._fill: Colour | None = None
        self._stroke: Colour | None = None

    def draw(self, shape: Primitive) -> None:
        if isinstance(shape, Words):
            self.flush()
            self.words(shape)
            return
        painted = self.use(shape.style)
        if not painted:
            return
        if isinstance(shape, Path):
            self.path(shape)
        elif isinstance(shape, Strokes):
            painted = "S"
            self.strokes(shape)
        elif isinstance(shape, Dots):
            for centre in shape.centres:
                self.oval(centre, (shape.radius, shape.radius))
        else:
            self.oval(shape.centre, shape.radii, shape.turn)
        self._written.append(painted)

    def flush(self) -> None:
        """Write what is drawn so far."""
        if self._written:
            self.canvas.addLiteral("\n".join(self._written))
            self._written.clear()

    def use(self, style: Style) -> str:
        """Set colours, width and dashes; return the operator that paints a path with them, "" for nothing to paint."""
        fill = self.theme.colour(style.fill) if style.fill else None
        stroke = self.theme.colour(style.stroke) if style.stroke and style.width > 0 else None
        if fill and fill is not self._fill:
            self.opacity(fill, self._fill, self.canvas.setFillAlpha)
            self._written.append(f"{_rgb(fill)} rg")
            self._fill = fill
        if stroke:
            self._use_pen(stroke, style)
        return "B" if fill and stroke else "f" if fill else "S" if stroke else ""

    def _use_pen(self, stroke: Colour, style: Style) -> None:
        if stroke is not self._stroke:
            self.opacity(stroke, self._stroke, self.canvas.setStrokeAlpha)
            self._written.append(f"{_rgb(stroke)} RG")
            self._stroke = stroke
        pen = (style.width, style.cap, style.dash)
        if pen != self._pen:
            self._pen = pen
            ends = 1 if style.cap == "round" else 0
            dash = " ".join(f"{length * self.scale:.2f}" for length in style.dash)
            self._written.append(f"{style.width * self.scale:.3f} w {ends} J {ends} j [{dash}] 0 d")

    def opacity(self, colour: Colour, before: Colour | None, take: Any) -> None:
        """Let the canvas set the opacity, which is no plain operator, where it differs from the one before."""
        if before is None or colour.opacity != before.opacity:
            self.flush()
            take(colour.opacity)

    def path(self, shape: Path) -> None:
        if not shape.points:
            return
        x, y, scale, written = self.x, self.y, self.scale, self._written
        places = [f"{x + across * scale:.2f} {y + along * scale:.2f}" for across, along in shape.points]
        written.append(f"{places[0]} m")
        if shape.curved:
            for one, two, end in zip(places[1::3], places[2::3], places[3::3], strict=True):
                written.append(f"{one} {two} {end} c")
        else:
            written += [f"{place} l" for place in places[1:]]
        if shape.closed:
            written.append("h")

    def strokes(self, shape: Strokes) -> None:
        x, y, scale = self.x, self.y, self.scale
        self._written += [
            f"{x + a * scale:.2f} {y + b * scale:.2f} m {x + c * scale:.2f} {y + d * scale:.2f} l"
            for (a, b), (c, d) in shape.lines
        ]

    def oval(self, centre: Point, radii: Point, turn: float = 0.0) -> None:
        x, y = self.x + centre[0] * self.scale, self.y + centre[1] * self.scale
        across, along = radii[0] * self.scale, radii[1] * self.scale
        if turn:
            cos, sin = math.cos(math.radians(turn)), math.sin(math.radians(turn))
            points = [(a * across * cos - b * along * sin, a * across * sin + b * along * cos) for a, b in _ROUND]
        else:
            points = [(a * across, b * along) for a, b in _ROUND]
        places = [f"{x + a:.2f} {y + b:.2f}" for a, b in points]
        self._written.append(f"{places[0]} m")
        for start in (1, 4, 7, 10):
            self._written.append(f"{places[start]} {places[start + 1]} {places[start + 2]} c")
        self._written.append("h")

    def words(self, words: Words) -> None:
        colour = self.theme.colour(words.colour)
        if colour is None:
            return
        self.canvas.setFillColorRGB(*colour.rgb)
        self.canvas.setFillAlpha(colour.opacity)
        self._fill = None
        self.canvas.setFont(BOLD if words.bold else REGULAR, words.size * self.scale)
        write = {
            "left": self.canvas.drawString,
            "middle": self.canvas.drawCentredString,
            "right": self.canvas.drawRightString,
        }[words.align]
        write(self.x + words.at[0] * self.scale, self.y + words.at[1] * self.scale, words.text)


_BEND: Final = 4 / 3 * (math.sqrt(2) - 1)
"""How far the handles of a quarter circle of radius 1 reach, so that the curve meets its middle."""
_ROUND: Final = (
    (1.0, 0.0),
    *((1.0, _BEND), (_BEND, 1.0), (0.0, 1.0)),
    *((-_BEND, 1.0), (-1.0, _BEND), (-1.0, 0.0)),
    *((-1.0, -_BEND), (-_BEND, -1.0), (0.0, -1.0)),
    *((_BEND, -1.0), (1.0, -_BEND), (1.0, 0.0)),
)
"""A circle of radius 1 as a start and four curves of two handles and an end."""


@lru_cache(maxsize=256)
def _rgb(colour: Colour) -> str:
    return " ".join(f"{part:.4g}" for part in colour.rgb)
