"""Marks on a Qt painter. The only module outside the desktop that knows Qt.

A painter's unit is a metre and its origin the middle of the net; (x, y) of the page is drawn at (x, -y), for Qt counts down.
"""

from __future__ import annotations

import math
from collections.abc import Iterable
from dataclasses import dataclass
from functools import lru_cache
from itertools import pairwise
from typing import Final

from PySide6.QtCore import QBuffer, QCoreApplication, QIODevice, QPointF, QRectF, Qt
from PySide6.QtGui import (
    QBrush,
    QColor,
    QFont,
    QFontDatabase,
    QGuiApplication,
    QImage,
    QPainter,
    QPainterPath,
    QPainterPathStroker,
    QPen,
    QTransform,
)

from designer.bundle import resource
from designer.drawing.picture import Picture
from designer.drawing.primitives import Dots, Ellipse, Mark, Path, Point, Primitive, Strokes, Style, Words, words_bounds
from designer.drawing.themes import Colour, Theme
from designer.drawing.words import text_width

FONT_PIXELS: Final = 100
"""Qt takes a font's size in whole pixels: letters are drawn this large in a frame made small."""


@lru_cache(maxsize=1)
def load_fonts() -> str:
    """Load the bundled faces into Qt, once, and return their family's name; needs a QGuiApplication.

    Raises ``RuntimeError`` with a sentence where Qt does not take a face.
    """
    families: list[str] = []
    for file in ("NotoSans-Regular.ttf", "NotoSans-Bold.ttf"):
        number = QFontDatabase.addApplicationFont(str(resource("fonts", file)))
        if number < 0:
            raise RuntimeError(f"Qt could not load the font {file}; install the program again.")
        families += QFontDatabase.applicationFontFamilies(number)
    return families[0]


def font(pixels: int, *, bold: bool = False) -> QFont:
    """Return the bundled face at a whole number of pixels, without kerning and hinting: as wide as in a PDF."""
    face = QFont(load_fonts())
    face.setPixelSize(pixels)
    face.setBold(bold)
    face.setKerning(False)
    face.setHintingPreference(QFont.HintingPreference.PreferNoHinting)
    return face


@lru_cache(maxsize=2)
def _drawing_font(bold: bool) -> QFont:  # noqa: FBT001 - a cache key
    return font(FONT_PIXELS, bold=bold)


def paint(painter: QPainter, marks: Iterable[Mark], theme: Theme) -> None:
    """Draw ``marks`` in their order; the painter's pen, brush and font are left changed, its transform is not."""
    for mark in marks:
        for primitive in mark.primitives:
            paint_primitive(painter, primitive, theme)


def paint_primitive(painter: QPainter, shape: Primitive, theme: Theme) -> None:
    """Draw one primitive."""
    if isinstance(shape, Words):
        _paint_words(painter, shape, theme)
        return
    pen, brush = _pen(shape.style, theme), _brush(shape.style, theme)
    if pen is None and brush is None:
        return
    painter.setPen(pen if pen is not None else Qt.PenStyle.NoPen)
    painter.setBrush(brush if brush is not None else Qt.BrushStyle.NoBrush)
    if isinstance(shape, Path):
        painter.drawPath(_outline(shape))
    elif isinstance(shape, Strokes):
        path = QPainterPath()
        for start, end in shape.lines:
            path.moveTo(start[0], -start[1])
            path.lineTo(end[0], -end[1])
        painter.drawPath(path)
    elif isinstance(shape, Dots):
        for x, y in shape.centres:
            painter.drawEllipse(QPointF(x, -y), shape.radius, shape.radius)
    elif shape.turn:
        painter.save()
        painter.translate(shape.centre[0], -shape.centre[1])
        painter.rotate(-shape.turn)
        painter.drawEllipse(QPointF(0, 0), *shape.radii)
        painter.restore()
    else:
        painter.drawEllipse(QPointF(shape.centre[0], -shape.centre[1]), *shape.radii)


@dataclass(frozen=True, slots=True)
class Ready:
    """A primitive turned into Qt's own objects, for a mark that is painted many times: a path, or a line of words."""

    path: QPainterPath
    pen: QPen
    brush: QBrush
    words: str = ""
    at: QPointF | None = None
    size: float = 0.0
    font: QFont | None = None


def ready(mark: Mark, theme: Theme) -> tuple[Ready, ...]:
    """Return what `paint_ready` needs to draw ``mark`` as `paint` does."""
    return tuple(made for primitive in mark.primitives if (made := _ready(primitive, theme)) is not None)


def paint_ready(painter: QPainter, shapes: Iterable[Ready]) -> None:
    """Draw what `ready` has returned."""
    for shape in shapes:
        painter.setPen(shape.pen)
        if shape.font is None or shape.at is None:
            painter.setBrush(shape.brush)
            painter.drawPath(shape.path)
            continue
        before = painter.worldTransform()
        painter.translate(shape.at)
        painter.scale(shape.size / FONT_PIXELS, shape.size / FONT_PIXELS)
        painter.setFont(shape.font)
        painter.drawText(QPointF(0, 0), shape.words)
        painter.setWorldTransform(before)


def _ready(shape: Primitive, theme: Theme) -> Ready | None:
    if isinstance(shape, Words):
        tint = theme.colour(shape.colour)
        if tint is None:
            return None
        width = text_width(shape.text, shape.size, shape.bold)
        left = shape.at[0] - {"left": 0.0, "middle": width / 2, "right": width}[shape.align]
        pen, font = QPen(colour(tint)), _drawing_font(shape.bold)
        return Ready(QPainterPath(), pen, QBrush(), shape.text, QPointF(left, -shape.at[1]), shape.size, font)
    pen_or_none, brush = _pen(shape.style, theme), _brush(shape.style, theme)
    if pen_or_none is None and brush is None:
        return None
    return Ready(_whole(shape), pen_or_none or QPen(Qt.PenStyle.NoPen), brush or QBrush())


def _whole(shape: Path | Strokes | Dots | Ellipse) -> QPainterPath:
    """Return the path of a whole primitive."""
    if isinstance(shape, Path):
        return _outline(shape)
    path = QPainterPath()
    path.setFillRule(Qt.FillRule.WindingFill)
    if isinstance(shape, Strokes):
        for start, end in shape.lines:
            path.moveTo(start[0], -start[1])
            path.lineTo(end[0], -end[1])
    elif isinstance(shape, Dots):
        for x, y in shape.centres:
            path.addEllipse(QPointF(x, -y), shape.radius, shape.radius)
    else:
        path.addEllipse(QPointF(0, 0), *shape.radii)
        path = QTransform().translate(shape.centre[0], -shape.centre[1]).rotate(-shape.turn).map(path)
    return path


def image(picture: Picture, theme: Theme, width: int, *, transparent: bool = False) -> QImage:
    """Return the whole picture ``width`` pixels wide on the theme's ground, every pixel opaque; or with no ground at all."""
    left, low, right, high = picture.extent
    scale = width / (right - left)
    made = QImage(width, max(1, round((high - low) * scale)), _FORMATS[transparent])
    made.fill(QColor(0, 0, 0, 0) if transparent else QColor(theme.ground.hex))
    painter = QPainter(made)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.scale(scale, scale)
    painter.translate(-left, high)
    paint(painter, picture.marks, theme)
    painter.end()
    return made


_FORMATS: Final = {False: QImage.Format.Format_RGB32, True: QImage.Format.Format_ARGB32_Premultiplied}


def png(picture: Picture, theme: Theme, width: int, *, transparent: bool = False) -> bytes:
    """Return the whole picture as a PNG file ``width`` pixels wide; no screen and no running application is needed."""
    _application()
    buffer = QBuffer()
    buffer.open(QIODevice.OpenModeFlag.WriteOnly)
    image(picture, theme, width, transparent=transparent).save(buffer, "PNG")  # type: ignore[call-overload]
    return bytes(buffer.data().data())


@lru_cache(maxsize=1)
def _application() -> QCoreApplication:
    """Return the running application, else one that has no screen: Qt has no fonts without one."""
    return QCoreApplication.instance() or QGuiApplication(["drill-designer", "-platform", "offscreen"])


def colour(colour: Colour) -> QColor:
    """Return Qt's form of ``colour``."""
    made = QColor(colour.hex)
    made.setAlphaF(colour.opacity)
    return made


def path_shape(mark: Mark, reach: float = 0.0) -> QPainterPath:
    """Return what a press on ``mark`` may hit: its ink without casing, ``reach`` metres wider on every side.

    Closed shapes and letters catch all over, without holes; y is counted down, as `paint` draws.
    """
    shape = QPainterPath()
    shape.setFillRule(Qt.FillRule.WindingFill)
    for primitive in mark.primitives:
        if isinstance(primitive, Words):
            left, low, right, high = words_bounds(primitive)
            shape.addRect(QRectF(left - reach, -high - reach, right - left + 2 * reach, high - low + 2 * reach))
        elif not _is_casing(primitive.style):
            shape.addPath(_caught(primitive, reach))
    return shape


def _is_casing(style: Style) -> bool:
    return (style.stroke or style.fill or "").startswith("casing")


def _caught(shape: Path | Strokes | Dots | Ellipse, reach: float) -> QPainterPath:
    path = QPainterPath()
    if isinstance(shape, Path):
        path = _outline(shape)
    elif isinstance(shape, Ellipse):
        count = 24
        turn = math.radians(shape.turn)
        for index in range(count):
            angle = 2 * math.pi * index / count
            x, y = shape.radii[0] * math.cos(angle), shape.radii[1] * math.sin(angle)
            point = (
                shape.centre[0] + x * math.cos(turn) - y * math.sin(turn),
                -shape.centre[1] - x * math.sin(turn) - y * math.cos(turn),
            )
            path.lineTo(*point) if index else path.moveTo(*point)
        path.closeSubpath()
    elif isinstance(shape, Dots):
        for x, y in shape.centres:
            path.addEllipse(QPointF(x, -y), shape.radius, shape.radius)
    width = shape.style.width + 2 * reach
    caught = QPainterPath()
    caught.setFillRule(Qt.FillRule.WindingFill)
    if not isinstance(shape, Path) or shape.closed or shape.style.fill:
        caught.addPath(_clockwise(path))
    if width > 0 and not isinstance(shape, Strokes):
        stroker = QPainterPathStroker()
        stroker.setWidth(width)
        stroker.setCapStyle(Qt.PenCapStyle.RoundCap)
        caught.addPath(stroker.createStroke(path))
    return caught


def _clockwise(path: QPainterPath) -> QPainterPath:
    """Return a closed path running with the clock, as Qt's own outlines do: where two ran against one another, both were lost."""
    corners = path.toFillPolygon().toList()
    twice = sum(one.x() * other.y() - other.x() * one.y() for one, other in pairwise(corners))
    return path if twice >= 0 else path.toReversed()


def _outline(shape: Path) -> QPainterPath:
    points: list[Point] = [(x, -y) for x, y in shape.points]
    path = QPainterPath()
    if not points:
        return path
    path.moveTo(*points[0])
    if shape.curved:
        for one, two, end in zip(points[1::3], points[2::3], points[3::3], strict=True):
            path.cubicTo(*one, *two, *end)
    else:
        for point in points[1:]:
            path.lineTo(*point)
    if shape.closed:
        path.closeSubpath()
    return path


@lru_cache(maxsize=1024)
def _pen_of(hex: str, opacity: float, style: Style) -> QPen:
    pen = QPen(colour(Colour(hex, opacity)), style.width)
    is_round = style.cap == "round"
    pen.setCapStyle(Qt.PenCapStyle.RoundCap if is_round else Qt.PenCapStyle.FlatCap)
    pen.setJoinStyle(Qt.PenJoinStyle.RoundJoin if is_round else Qt.PenJoinStyle.SvgMiterJoin)
    pen.setMiterLimit(10)
    if style.dash:
        pen.setDashPattern([length / style.width for length in style.dash])
    return pen


def _pen(style: Style, theme: Theme) -> QPen | None:
    tint = theme.colour(style.stroke) if style.stroke and style.width > 0 else None
    return None if tint is None else _pen_of(tint.hex, tint.opacity, style)


@lru_cache(maxsize=256)
def _brush_of(hex: str, opacity: float) -> QBrush:
    return QBrush(colour(Colour(hex, opacity)))


def _brush(style: Style, theme: Theme) -> QBrush | None:
    tint = theme.colour(style.fill) if style.fill else None
    return None if tint is None else _brush_of(tint.hex, tint.opacity)


def _paint_words(painter: QPainter, words: Words, theme: Theme) -> None:
    tint = theme.colour(words.colour)
    if tint is None:
        return
    width = text_width(words.text, FONT_PIXELS, words.bold)
    painter.save()
    painter.translate(words.at[0], -words.at[1])
    painter.scale(words.size / FONT_PIXELS, words.size / FONT_PIXELS)
    painter.setFont(_drawing_font(words.bold))
    painter.setPen(colour(tint))
    painter.drawText(QPointF({"left": 0.0, "middle": -width / 2, "right": -width}[words.align], 0), words.text)
    painter.restore()
