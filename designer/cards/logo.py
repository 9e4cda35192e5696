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

if TYPE_CHECKING:
    from reportlab.pdfgen.canvas import Canvas

_NAMESPACE: Final = "{http://www.w3.org/2000/svg}"
_SHAPES: Final = ("path", "rect", "circle", "ellipse", "polygon", "polyline", "line")
_IGNORED: Final = ("title", "desc", "metadata", "defs", "g", "svg")
MOST_ELEMENTS: Final = 500


class UnreadableLogo(ValueError):
    """The logo cannot be drawn; its text says why."""


@dataclass(frozen=True, slots=True)
class Logo:
    """Shapes in the units of their ``view`` box (x, y, width, height), y downwards."""

    view: tuple[float, float, float, float]
    shapes: tuple[tuple[ET.Element, dict[str, str]], ...]
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
    return _read_png(logo) if isinstance(logo, bytes) else _read_svg(logo)


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
    shapes: list[tuple[ET.Element, dict[str, str]]] = []
    unknown: set[str] = set()
    _collect(root, {"fill": "#000000"}, shapes, unknown)
    if len(shapes) > MOST_ELEMENTS:
        raise UnreadableLogo(f"the logo has more than {MOST_ELEMENTS} shapes")
    notices = (f"The logo's {', '.join(sorted(unknown))} cannot be drawn on a card.",) if unknown else ()
    return Logo((numbers[0], numbers[1], numbers[2], numbers[3]), tuple(shapes), notices)


def _collect(
    element: ET.Element,
    inherited: dict[str, str],
    shapes: list[tuple[ET.Element, dict[str, str]]],
    unknown: set[str],
) -> None:
    style = inherited | {
        name: value for name in ("fill", "stroke", "stroke-width", "stroke-linecap") if (value := element.get(name))
    }
    tag = element.tag.removeprefix(_NAMESPACE)
    if tag in _SHAPES and element.get("transform") is None:
        shapes.append((element, style))
    elif tag not in _IGNORED or element.get("transform"):
        unknown.add(tag)
    for child in element:
        _collect(child, style, shapes, unknown)


def draw_logo(canvas: Canvas, logo: Logo, x: float, y: float, height: float, only: str | None = None) -> None:
    """Draw ``logo`` with its lower left corner at (x, y) points, ``height`` points high; ``only`` is one ink for all."""
    from fontTools.pens.reportLabPen import ReportLabPen
    from fontTools.svgLib.path.parser import parse_path
    from fontTools.svgLib.path.shapes import PathBuilder
    from reportlab.graphics.shapes import Path as _Path

    left, top, _, tall = logo.view
    scale = height / tall
    if logo.picture is not None:
        canvas.drawImage(logo.picture, x, y, height * logo.ratio, height, mask="auto")
        return
    canvas.saveState()
    canvas.translate(x, y + height)
    canvas.scale(scale, -scale)
    canvas.translate(-left, -top)
    for element, style in logo.shapes:
        builder = PathBuilder()
        builder.add_path_from_element(element)
        for words in builder.paths:
            pen = ReportLabPen({}, path=_Path())
            parse_path(words, pen)
            _draw_path(canvas, pen.path, style, only)
    canvas.restoreState()


def _draw_path(canvas: Canvas, drawn: Any, style: dict[str, str], only: str | None) -> None:
    path = canvas.beginPath()
    points = iter(drawn.points)
    for operator in drawn.operators:
        if operator == 0:
            path.moveTo(next(points), next(points))
        elif operator == 1:
            path.lineTo(next(points), next(points))
        elif operator == 2:
            path.curveTo(*(next(points) for _ in range(6)))
        else:
            path.close()
    fill, stroke = style.get("fill", "none"), style.get("stroke", "none")
    if fill != "none":
        canvas.setFillColor(only or fill)
    if stroke != "none":
        canvas.setStrokeColor(only or stroke)
        canvas.setLineWidth(float(style.get("stroke-width", "1")))
        canvas.setLineCap(1 if style.get("stroke-linecap") == "round" else 0)
    canvas.drawPath(path, stroke=int(stroke != "none"), fill=int(fill != "none"))
