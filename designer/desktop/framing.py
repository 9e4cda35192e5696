"""Which part of the court is looked at: a half of it, or what is picked. Works on whatever way the court lies."""

from __future__ import annotations

from collections.abc import Iterable
from typing import TYPE_CHECKING, Final, Literal

from PySide6.QtCore import QMarginsF, QPointF, QRectF

from designer.court.readings import STRIDE
from designer.court.standards import ground

if TYPE_CHECKING:
    from designer.desktop.canvas.court_view import CourtView

ROUND: Final = 36.0
"""Pixels left free round what is framed: handles and words stand there."""

LEAST: Final = 6.0
"""No less than so many metres are shown, however small a thing is: a cone alone says nothing."""


def frame_half(view: CourtView, end: Literal["near", "far"]) -> None:
    """Show one half of the court, with its run-off and a stride past the net. It is about as wide as deep."""
    court = ground(view.document.shown.court)
    sign = -1 if end == "near" else 1
    corners = [(-court.side_fence, sign * court.back_fence), (court.side_fence, -sign * STRIDE)]
    box = QRectF(view.to_pixel(corners[0]), view.to_pixel(corners[1])).normalized()
    frame_pixels(view, box)


def frame_picked(view: CourtView, ids: Iterable[str]) -> bool:
    """Show ``ids`` as large as they fit; return False where none of them is drawn."""
    box = view.rectangle_of(ids)
    if box.isNull():
        return False
    least = LEAST * view.pixels_per_metre
    across, along = (max(0.0, (least - side) / 2) for side in (box.width(), box.height()))
    frame_pixels(view, box.marginsAdded(QMarginsF(across, along, across, along)))
    return True


def frame_pixels(view: CourtView, box: QRectF) -> None:
    """Zoom and pan so that ``box``, in pixels of the viewport as it is now, fills the viewport."""
    if box.isEmpty():
        return
    room = view.viewport().rect()
    middle = QPointF(room.center())
    factor = min((room.width() - 2 * ROUND) / box.width(), (room.height() - 2 * ROUND) / box.height())
    before = view.pixels_per_metre
    view.zoom(factor, middle)
    grown = view.pixels_per_metre / before  # a scale beyond sense is not taken
    view.pan((middle - (middle + (box.center() - middle) * grown)).toPoint())
