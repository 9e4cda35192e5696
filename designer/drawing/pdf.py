"""Marks on a reportlab canvas, as vectors and live text in the bundled font. Only this module and the cards know reportlab."""

from __future__ import annotations

from functools import lru_cache
from typing import Any, Final

from designer.bundle import resource
from designer.drawing.picture import Picture
from designer.drawing.primitives import Dots, Ellipse, Path, Point, Primitive, Strokes, Style, Words
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
    canvas.restoreState()


class _Pencil:
    """Turns primitives into calls of a canvas; numbers are converted here, so that no letter has a size near nothing."""

    def __init__(self, canvas: Any, theme: Theme, origin: Point, scale: float) -> None:
        self.canvas, self.theme, self.origin, self.scale = canvas, theme, origin, scale

    def place(self, point: Point) -> Point:
        return (self.origin[0] + point[0] * self.scale, self.origin[1] + point[1] * self.scale)

    def draw(self, shape: Primitive) -> None:
        if isinstance(shape, Words):
            self.words(shape)
            return
        fill, stroke = self.use(shape.style)
        if not fill and not stroke:
            return
        if isinstance(shape, Path):
            self.path(shape, fill=fill, stroke=stroke)
        elif isinstance(shape, Strokes):
            self.canvas.lines([(*self.place(start), *self.place(end)) for start, end in shape.lines])
        elif isinstance(shape, Dots):
            self.dots(shape, fill=fill, stroke=stroke)
        else:
            self.ellipse(shape, fill=fill, stroke=stroke)

    def use(self, style: Style) -> tuple[bool, bool]:
        """Set colours, width and dashes; return whether to fill and whether to stroke."""
        fill = self.theme.colour(style.fill) if style.fill else None
        stroke = self.theme.colour(style.stroke) if style.stroke and style.width > 0 else None
        if fill:
            self.fill(fill)
        if stroke:
            self.canvas.setStrokeColorRGB(*stroke.rgb)
            self.canvas.setStrokeAlpha(stroke.opacity)
            self.canvas.setLineWidth(style.width * self.scale)
            is_round = 1 if style.cap == "round" else 0
            self.canvas.setLineCap(is_round)
            self.canvas.setLineJoin(is_round)
            self.canvas.setDash([length * self.scale for length in style.dash])
        return fill is not None, stroke is not None

    def fill(self, colour: Colour) -> None:
        self.canvas.setFillColorRGB(*colour.rgb)
        self.canvas.setFillAlpha(colour.opacity)

    def path(self, shape: Path, *, fill: bool, stroke: bool) -> None:
        points = [self.place(point) for point in shape.points]
        if not points:
            return
        path = self.canvas.beginPath()
        path.moveTo(*points[0])
        if shape.curved:
            for one, two, end in zip(points[1::3], points[2::3], points[3::3], strict=True):
                path.curveTo(*one, *two, *end)
        else:
            for point in points[1:]:
                path.lineTo(*point)
        if shape.closed:
            path.close()
        self.canvas.drawPath(path, stroke=int(stroke), fill=int(fill), fillMode=1)

    def dots(self, shape: Dots, *, fill: bool, stroke: bool) -> None:
        path = self.canvas.beginPath()
        for centre in shape.centres:
            path.circle(*self.place(centre), shape.radius * self.scale)
        self.canvas.drawPath(path, stroke=int(stroke), fill=int(fill), fillMode=1)

    def ellipse(self, shape: Ellipse, *, fill: bool, stroke: bool) -> None:
        x, y = self.place(shape.centre)
        across, along = (radius * self.scale for radius in shape.radii)
        if not shape.turn:
            self.canvas.ellipse(x - across, y - along, x + across, y + along, stroke=int(stroke), fill=int(fill))
            return
        self.canvas.saveState()
        self.canvas.translate(x, y)
        self.canvas.rotate(shape.turn)
        self.canvas.ellipse(-across, -along, across, along, stroke=int(stroke), fill=int(fill))
        self.canvas.restoreState()

    def words(self, words: Words) -> None:
        colour = self.theme.colour(words.colour)
        if colour is None:
            return
        self.fill(colour)
        self.canvas.setFont(BOLD if words.bold else REGULAR, words.size * self.scale)
        write = {
            "left": self.canvas.drawString,
            "middle": self.canvas.drawCentredString,
            "right": self.canvas.drawRightString,
        }[words.align]
        write(*self.place(words.at), words.text)
