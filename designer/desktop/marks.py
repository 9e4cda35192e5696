"""The marks of the drawing as small pictures in the window: on the strip's buttons and as a sentence's bullet."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from functools import lru_cache
from typing import Final

from PySide6.QtCore import QRectF
from PySide6.QtGui import QPainter

from designer.desktop.fonts import share
from designer.desktop.look import Look
from designer.drawing import areas, balls
from designer.drawing.geometry import Route, rectangle, round_points
from designer.drawing.pen import Pen
from designer.drawing.primitives import Path, Point, Primitive, Style, Words, bounds_of
from designer.drawing.qt import paint_primitive
from designer.drawing.samples import sample
from designer.drawing.themes import Theme, theme

UNIT: Final = 1.25
"""Pixels to one unit of the drawing's marks, in the window's bars and bullets; more where letters are larger."""


def _ball(pen: Pen) -> Iterator[Primitive]:
    route = Route(((0.0, 0.0), (25.0, 11.0)))
    yield from balls.shaft(pen, route, "ball path")
    yield from balls.head(pen, route, "ball path")
    yield from balls.contact(pen, route.at(0.0), route.heading(0.0))


def _feed(pen: Pen) -> Iterator[Primitive]:
    route = Route(((0.0, 0.0), (25.0, 11.0)))
    yield from balls.shaft(pen, route, "feed")
    yield from balls.head(pen, route, "feed")
    yield from balls.ring(pen, route.at(0.0))


def _run(pen: Pen) -> Iterator[Primitive]:
    yield from balls.run(pen, Route(((0.0, -7.0), (9.0, 3.0), (24.0, 3.0))))


def _outline(pen: Pen, corners: tuple[Point, ...]) -> Iterator[Primitive]:
    yield from areas.inside(pen, corners, "target")
    yield from areas.edge(pen, corners, "target")


def _round_area(pen: Pen) -> Iterator[Primitive]:
    centre, radii = (10.0, 0.0), (10.0, 6.0)
    yield from areas.inside(pen, round_points(centre, radii), "target")
    yield from areas.edge(pen, round_points(centre, radii), "target", round_in=(centre, radii))


def _polygon(pen: Pen) -> Iterator[Primitive]:
    corners = ((0.0, -4.0), (9.0, -6.5), (20.0, -1.0), (14.0, 6.5), (3.0, 5.0))
    yield from _outline(pen, corners)
    yield from (
        Path(rectangle((x - 1.6, y - 1.6, x + 1.6, y + 1.6)), Style(fill="ink"), closed=True) for x, y in corners
    )


def _court_area(pen: Pen) -> Iterator[Primitive]:
    yield from _outline(pen, rectangle((0.0, 0.0, 10.0, 7.0)))
    for way in (
        ((-1.0, 0.0), (21.0, 0.0)),
        ((0.0, -7.0), (0.0, 7.0)),
        ((10.0, 0.0), (10.0, 7.0)),
        ((20.0, -7.0), (20.0, 7.0)),
    ):
        yield Path(way, pen.style("court line", 1.2))


def _split_area(pen: Pen) -> Iterator[Primitive]:
    yield from _outline(pen, rectangle((0.0, -6.0, 20.0, 6.0)))
    yield Path(((7.0, -9.0), (13.0, 9.0)), pen.style("ink", 1.6))


def _short_run(pen: Pen) -> Iterator[Primitive]:
    yield from balls.run(pen, Route(((0.0, 0.0), (14.0, 0.0))))


def _short_recovery(pen: Pen) -> Iterator[Primitive]:
    yield from balls.recovery(pen, Route(((0.0, 0.0), (10.0, 0.0))), (0.0, 1.0))


_OWN: Final[dict[str, Callable[[Pen], Iterator[Primitive]]]] = {
    "tool ball": _ball,
    "tool feed": _feed,
    "tool run": _run,
    "tool round area": _round_area,
    "tool polygon": _polygon,
    "tool court area": _court_area,
    "tool split area": _split_area,
    "bullet run": _short_run,
    "bullet recover": _short_recovery,
}
"""Marks on their way for a tool's icon, and short ones for a bullet, where a legend's sample lies level and is long."""


@lru_cache(maxsize=256)
def _shapes(kind: str, text: str, name: str) -> tuple[tuple[Primitive, ...], Theme]:
    court = theme(name)
    shapes = tuple(_OWN[kind](Pen(1.0))) if kind in _OWN else sample(kind, court, 1.0, text=text)
    # On a button nothing lies below that a mark would have to be cut free from.
    return tuple(shape for shape in shapes if not _is_casing(shape)), court


def _is_casing(shape: Primitive) -> bool:
    if isinstance(shape, Words):
        return False
    return (shape.style.stroke or shape.style.fill or "").startswith("casing")


def paint_mark(painter: QPainter, kind: str, box: QRectF, look: Look, *, text: str = "", unit: float = UNIT) -> None:
    """Paint the drawing's sample of ``kind`` in the middle of ``box``, made smaller where it does not fit."""
    primitives, court = _shapes(kind, text, look.name)
    left, low, right, high = bounds_of(primitives)
    if right <= left or high <= low:
        return
    scale = min(unit * share(), box.width() / (right - left), box.height() / (high - low))
    painter.save()
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.translate(box.center())
    painter.scale(scale, scale)
    painter.translate(-(left + right) / 2, (low + high) / 2)
    for primitive in primitives:
        paint_primitive(painter, primitive, court)
    painter.restore()
