"""The marks of the drawing as small pictures in the window: on the strip's buttons and as a sentence's bullet."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from functools import lru_cache
from typing import Final

from PySide6.QtCore import QRectF
from PySide6.QtGui import QPainter

from designer.desktop.look import Look
from designer.drawing import balls
from designer.drawing.geometry import Route
from designer.drawing.pen import Pen
from designer.drawing.primitives import Primitive, Words, bounds_of
from designer.drawing.qt import paint_primitive
from designer.drawing.samples import sample
from designer.drawing.themes import Theme, theme

UNIT: Final = 1.25
"""Pixels to one unit of the drawing's marks, in the window's bars and bullets."""


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


def _short_run(pen: Pen) -> Iterator[Primitive]:
    yield from balls.run(pen, Route(((0.0, 0.0), (14.0, 0.0))))


def _short_recovery(pen: Pen) -> Iterator[Primitive]:
    yield from balls.recovery(pen, Route(((0.0, 0.0), (10.0, 0.0))), (0.0, 1.0))


_OWN: Final[dict[str, Callable[[Pen], Iterator[Primitive]]]] = {
    "tool ball": _ball,
    "tool feed": _feed,
    "tool run": _run,
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
    scale = min(unit, box.width() / (right - left), box.height() / (high - low))
    painter.save()
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.translate(box.center())
    painter.scale(scale, scale)
    painter.translate(-(left + right) / 2, (low + high) / 2)
    for primitive in primitives:
        paint_primitive(painter, primitive, court)
    painter.restore()
