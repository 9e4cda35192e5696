"""The marks of the drawing as small pictures in the window: on the strip's buttons and as a sentence's bullet."""

from __future__ import annotations

from functools import lru_cache

from PySide6.QtCore import QRectF
from PySide6.QtGui import QPainter

from designer.desktop.look import Look
from designer.drawing.primitives import Primitive, bounds_of
from designer.drawing.qt import paint_primitive
from designer.drawing.samples import sample
from designer.drawing.themes import Theme, theme

UNIT = 1.25
"""Pixels to one unit of the drawing's marks, in the window's bars and bullets."""


@lru_cache(maxsize=256)
def _sample(kind: str, text: str, name: str) -> tuple[tuple[Primitive, ...], Theme]:
    court = theme(name)
    return sample(kind, court, 1.0, text=text), court


def paint_mark(painter: QPainter, kind: str, box: QRectF, look: Look, *, text: str = "", unit: float = UNIT) -> None:
    """Paint the drawing's sample of ``kind`` in the middle of ``box``, made smaller where it does not fit."""
    primitives, court = _sample(kind, text, look.name)
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
