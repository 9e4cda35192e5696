"""What stands still while something is dragged over a crowded court: painted once, then shown as one picture."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import QPainter, QPixmap, QTransform
from PySide6.QtWidgets import QGraphicsItem, QStyleOptionGraphicsItem, QWidget

from designer.desktop.canvas.mark_item import MarkItem

CROWDED: Final = 300
"""From so many marks on it pays: below it, painting each mark at its own height is as quick and exact to the pixel."""


class StillItem(QGraphicsItem):
    """Shows many marks as one picture, made again only where the sight of them changes."""

    def __init__(self, bounds: QRectF, items: Sequence[MarkItem], height: float) -> None:
        """Show ``items`` at ``height`` among the others, none of which shows them meanwhile."""
        super().__init__()
        self._bounds = bounds
        self._items = tuple(sorted(items, key=lambda item: item.zValue()))
        self._made_for: tuple[QTransform, QSize, float] | None = None
        self._pixmap = QPixmap()
        self.setZValue(height)

    def boundingRect(self) -> QRectF:
        return self._bounds

    def paint(self, painter: QPainter, _option: QStyleOptionGraphicsItem, widget: QWidget | None = None) -> None:
        """Paint the picture, making it first where it is of another sight."""
        if widget is None:
            self._paint_each(painter)
            return
        sight = (painter.worldTransform(), widget.size(), widget.devicePixelRatioF())
        if sight != self._made_for:
            self._made_for = sight
            self._pixmap = self._made(*sight, painter.renderHints())
        painter.save()
        painter.setWorldTransform(QTransform())
        painter.drawPixmap(0, 0, self._pixmap)
        painter.restore()

    def _made(self, transform: QTransform, size: QSize, ratio: float, hints: QPainter.RenderHint) -> QPixmap:
        pixmap = QPixmap(size * ratio)
        pixmap.setDevicePixelRatio(ratio)
        pixmap.fill(Qt.GlobalColor.transparent)
        painter = QPainter(pixmap)
        painter.setRenderHints(hints)
        painter.setWorldTransform(transform)
        seen = transform.inverted()[0].mapRect(QRectF(0, 0, size.width(), size.height()))
        for item in self._items:
            if item.sceneBoundingRect().intersects(seen):
                item.paint_at_rest(painter)
        painter.end()
        return pixmap

    def _paint_each(self, painter: QPainter) -> None:
        for item in self._items:
            item.paint_at_rest(painter)
