"""One mark of the picture as an item of the scene: its primitives, ready to be painted, and nothing else."""

from __future__ import annotations

from PySide6.QtCore import QRectF
from PySide6.QtGui import QPainter, QPainterPath
from PySide6.QtWidgets import QGraphicsItem, QStyleOptionGraphicsItem, QWidget

from designer.drawing.primitives import Mark
from designer.drawing.qt import Ready, paint_ready, path_shape, ready
from designer.drawing.themes import Theme

Key = tuple[str | None, str, str]
"""What tells one mark from all others of a picture."""


class MarkItem(QGraphicsItem):
    """Shows one mark. Scene coordinates are metres on the page, y counted down."""

    def __init__(self, mark: Mark, theme: Theme) -> None:
        super().__init__()
        self.mark = mark
        self._theme = theme
        self._bounds = _rectangle(mark)
        self._ready: tuple[Ready, ...] | None = None
        self._ink: QPainterPath | None = None

    def show_mark(self, mark: Mark, theme: Theme) -> None:
        """Show another mark in place of the one shown so far."""
        self.prepareGeometryChange()
        self.mark, self._theme = mark, theme
        self._bounds = _rectangle(mark)
        self._ready = self._ink = None
        self.setPos(0, 0)
        self.update()

    def boundingRect(self) -> QRectF:
        return self._bounds

    def paint(self, painter: QPainter, _option: QStyleOptionGraphicsItem, _widget: QWidget | None = None) -> None:
        """Paint the mark."""
        self.paint_at_rest(painter)

    def paint_at_rest(self, painter: QPainter) -> None:
        """Paint the mark where its picture has it; ``painter`` is in scene coordinates where the item was not moved."""
        if self._ready is None:
            self._ready = ready(self.mark, self._theme)
        paint_ready(painter, self._ready)

    def ink(self) -> QPainterPath:
        """Return the outline of the mark's ink, without holes; made when it is first asked for."""
        if self._ink is None:
            self._ink = path_shape(self.mark)
        return self._ink


def _rectangle(mark: Mark) -> QRectF:
    left, low, right, high = mark.bounds
    return QRectF(left, -high, right - left, high - low)
