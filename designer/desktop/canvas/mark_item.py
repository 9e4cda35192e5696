"""One mark of the picture as an item of the scene: its primitives, ready to be painted, and nothing else."""

from __future__ import annotations

from PySide6.QtCore import QRectF
from PySide6.QtGui import QPainter, QPainterPath
from PySide6.QtWidgets import QGraphicsItem, QStyleOptionGraphicsItem, QWidget

from designer.drawing.primitives import Mark
from designer.drawing.qt import paint, path_shape
from designer.drawing.themes import Theme


class MarkItem(QGraphicsItem):
    """Shows one mark. Scene coordinates are metres on the page, y counted down."""

    def __init__(self, mark: Mark, theme: Theme) -> None:
        super().__init__()
        self.mark = mark
        self.theme = theme
        self._bounds = _rectangle(mark)
        self._shape: QPainterPath | None = None

    def show_mark(self, mark: Mark, theme: Theme) -> None:
        """Show another mark in place of the one shown so far."""
        self.prepareGeometryChange()
        self.mark, self.theme = mark, theme
        self._bounds = _rectangle(mark)
        self._shape = None
        self.update()

    def boundingRect(self) -> QRectF:
        return self._bounds

    def paint(self, painter: QPainter, _option: QStyleOptionGraphicsItem, _widget: QWidget | None = None) -> None:
        """Paint the mark."""
        paint(painter, (self.mark,), self.theme)

    def ink(self) -> QPainterPath:
        """Return the outline of the mark's ink, without holes; made when it is first asked for."""
        if self._shape is None:
            self._shape = path_shape(self.mark)
        return self._shape


def _rectangle(mark: Mark) -> QRectF:
    left, low, right, high = mark.bounds
    return QRectF(left, -high, right - left, high - low)
