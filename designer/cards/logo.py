"""An academy's logo on a card: a PNG, or the plain part of SVG that a logo is drawn with, as vectors.

Of an SVG are read ``path``, ``rect``, ``circle``, ``ellipse``, ``polygon``, ``polyline`` and ``line`` with ``fill``, ``stroke``
and ``stroke-width``, in groups, in a ``viewBox``. Anything else is left out and said.
"""

from __future__ import annotations

import io
import re
import xml.etree.ElementTree as ET
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any, Final

from designer.cards.typeface import painted

if TYPE_CHECKING:
    from reportlab.pdfgen.canvas import Canvas

_NAMESPACE: Final = "{http://www.w3.org/2000/svg}"
_SHAPES: Final = ("path", "rect", "circle", "ellipse", "polygon", "polyline", "line")
_IGNORED: Final = ("title", "desc", "metadata", "defs", "g", "svg")
MOST_ELEMENTS: Final = 500


class UnreadableLogo(ValueError):
    """The logo cannot be drawn; its text says why."""


@dataclass(frozen=True, slots=True)
class Shape:
    """One shape of a logo: its outline as operators of a page, and how it is painted; None is not at all."""

    outline: str
    fill: str | None
    stroke: str | None
    width: float
    is_round: bool


@dataclass(frozen=True, slots=True)
class Logo:
    """Shapes in the units of their ``view`` box (x, y, width, height), y downwards."""

    view: tuple[float, float, float, float]
    shapes: tuple[Shape, ...]
    notices: tuple[str, ...]
    picture: Any = None
    """What a PNG holds, as reportlab draws it; its shapes are none."""

    @property
    def ratio(self) -> float:
        """Width over height."""
        return self.view[2] / self.view[3]


def read_logo(logo: str | bytes) -> Logo:
    """Return the logo in the text of an SVG file or the bytes of a PNG.

    Raises ``UnreadableLogo`` where it is no plain SVG drawing and no PNG.
    """
    found = _read_png(logo) if isinstance(logo, bytes) else _read_svg(logo)
    if not 1 / _LONGEST_SIDE <= found.ratio <= _LONGEST_SIDE:
        raise UnreadableLogo(
            f"the logo is more than {_LONGEST_SIDE} times as long as it is wide; nothing of it could be seen"
        )
    return found


_LONGEST_SIDE: Final = 20
"""The sides of a logo stand in no greater ratio."""


def _read_png(data: bytes) -> Logo:
    from reportlab.lib.utils import ImageReader

    try:
        picture = ImageReader(io.BytesIO(data))
        width, height = picture.getSize()
        picture.getRGBData()  # type: ignore[no-untyped-call]  # unpacked here, so that a damaged one is told of before the page is begun
    except Exception as error:
        raise UnreadableLogo("the logo is a damaged PNG") from error
    return Logo((0.0, 0.0, float(width), float(height)), (), (), picture)


def _read_svg(svg: str) -> Logo:
    if "<!DOCTYPE" in svg or "<!ENTITY" in svg:
        raise UnreadableLogo("the logo has a document type declaration, which a plain SVG drawing does not need")
    try:
        root = ET.fromstring(svg)  # noqa: S314  entities and document types are refused above
    except ET.ParseError as error:
        raise UnreadableLogo(f"the logo is not well-formed SVG: {error}") from error
    if root.tag != f"{_NAMESPACE}svg":
        raise UnreadableLogo("the logo is not an SVG file: its first element is not svg")
    numbers = [float(number) for number in re.findall(r"-?\d+(?:\.\d+)?", root.get("viewBox", ""))]
    if len(numbers) != 4 or numbers[2] <= 0 or numbers[3] <= 0:
        raise UnreadableLogo("the logo has no viewBox of four numbers")
    shapes: list[Shape] = []
    unknown: set[str] = set()
    _collect(root, {"fill": "#000000"}, shapes, unknown)
    if len(shapes) > MOST_ELEMENTS:
        raise UnreadableLogo(f"the logo has more than {MOST_ELEMENTS} shapes")
    if sum(len(shape.outline) for shape in shapes) > _LONGEST:
        raise UnreadableLogo("the logo has more points than a logo needs; have it drawn more simply")
    notices = (f"The logo's {', '.join(sorted(unknown))} cannot be drawn on a card.",) if unknown else ()
    return Logo((numbers[0], numbers[1], numbers[2], numbers[3]), tuple(shapes), notices)


def _shape(element: ET.Element, style: dict[str, str]) -> Shape:
    try:
        fill, stroke = (_painted(style.get(name, "none")) for name in ("fill", "stroke"))
        width = float(style.get("stroke-width", "1").removesuffix("px"))
        outline = _outline(element)
    except Exception as error:
        tag = element.tag.removeprefix(_NAMESPACE)
        raise UnreadableLogo(f"a {tag} of the logo cannot be drawn; expected plain numbers and colours") from error
    if not 0 <= width < _THICKEST:
        raise UnreadableLogo("the logo has a line that is too thick to be one of a logo")
    return Shape(outline, fill, stroke, width, style.get("stroke-linecap") == "round")


def _painted(colour: str) -> str | None:
    """Return a colour that can be set, None for none. Raises ``ValueError``."""
    if colour in ("none", "transparent"):
        return None
    if colour == "currentColor":
        return "#000000"
    painted(colour)
    return colour


_THICKEST: Final = 1e6
_LONGEST: Final = 200_000
"""So many characters of outline has no logo: it stands on every page of a handbook."""
_DEEPEST: Final = 50


def _collect(
    element: ET.Element,
    inherited: dict[str, str],
    shapes: list[Shape],
    unknown: set[str],
    depth: int = 0,
) -> None:
    if depth > _DEEPEST or len(shapes) > MOST_ELEMENTS:
        raise UnreadableLogo(f"the logo has more than {MOST_ELEMENTS} shapes, or groups in groups beyond {_DEEPEST}")
    style = inherited | {
        name: value for name in ("fill", "stroke", "stroke-width", "stroke-linecap") if (value := element.get(name))
    }
    tag = element.tag.removeprefix(_NAMESPACE)
    if tag in _SHAPES and element.get("transform") is None:
        shape = _shape(element, style)
        if shape.outline and (shape.fill or shape.stroke):
            shapes.append(shape)
    elif tag not in _IGNORED or element.get("transform"):
        unknown.add(tag)
    for child in element:
        _collect(child, style, shapes, unknown, depth + 1)


def draw_logo(canvas: Canvas, logo: Logo, x: float, y: float, height: float, only: str | None = None) -> None:
    """Draw ``logo`` with its lower left corner at (x, y) points, ``height`` points high; ``only`` is one ink for all."""
    left, top, _, tall = logo.view
    scale = height / tall
    if logo.picture is not None:
        canvas.drawImage(logo.picture, x, y, height * logo.ratio, height, mask="auto")
        return
    canvas.saveState()
    canvas.translate(x, y + height)
    canvas.scale(scale, -scale)
    canvas.translate(-left, -top)
    for shape in logo.shapes:
        if shape.fill is not None:
            canvas.setFillColor(painted(only or shape.fill))
        if shape.stroke is not None:
            canvas.setStrokeColor(painted(only or shape.stroke))
            canvas.setLineWidth(shape.width)
            canvas.setLineCap(int(shape.is_round))
        operator = "B" if shape.fill and shape.stroke else "f" if shape.fill else "S"
        canvas.addLiteral(f"{shape.outline}\n{operator}")
    canvas.restoreState()


def _outline(element: ET.Element) -> str:
    """Return the outline of an SVG shape as operators of a PDF page, in the drawing's own units. Raises ``ValueError``."""
    from fontTools.pens.reportLabPen import ReportLabPen
    from fontTools.svgLib.path.parser import parse_path
    from fontTools.svgLib.path.shapes import PathBuilder
    from reportlab.graphics.shapes import Path

    builder = PathBuilder()
    builder.add_path_from_element(element)
    written: list[str] = []
    for words in builder.paths:
        pen = ReportLabPen({}, path=Path())
        parse_path(words, pen)
        points = iter(pen.path.points)
        for operator in pen.path.operators:
            count, sign = _OPERATORS[operator]
            written.append(" ".join((*(f"{next(points):.4f}" for _ in range(count)), sign)))
    return "\n".join(written)


_OPERATORS: Final = ((2, "m"), (2, "l"), (6, "c"), (0, "h"))
"""How many numbers each of reportlab's path operators takes, and how ISO 32000-1, 8.5.2, writes it."""
