"""The scene: kept in step with a picture by touching only the marks that differ."""

from __future__ import annotations

from collections.abc import Iterable

from PySide6.QtCore import QObject, QPointF, QRectF
from PySide6.QtGui import QPainterPathStroker
from PySide6.QtWidgets import QGraphicsScene

from designer.desktop.canvas.mark_item import MarkItem
from designer.drawing.picture import Picture
from designer.drawing.primitives import Mark
from designer.drawing.themes import Theme

Key = tuple[str | None, str, str]


class CourtScene(QGraphicsScene):
    """One item for each mark, found by the mark's key; nothing else holds an item."""

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        # A few hundred items that move all the time: an index costs more than it finds.
        self.setItemIndexMethod(QGraphicsScene.ItemIndexMethod.NoIndex)
        self._items: dict[Key, MarkItem] = {}
        self._order: tuple[Key, ...] = ()
        self._theme: Theme | None = None

    def reconcile(self, picture: Picture, theme: Theme) -> frozenset[Key]:
        """Show ``picture``; return the keys of the marks that were added, changed or removed."""
        touched: set[Key] = set()
        repaint_all = theme is not self._theme and theme != self._theme
        self._theme = theme
        order: list[Key] = []
        for mark in picture.marks:
            key = mark.key
            order.append(key)
            item = self._items.get(key)
            if item is None:
                item = self._items[key] = MarkItem(mark, theme)
                self.addItem(item)
            elif repaint_all or (item.mark is not mark and item.mark != mark):
                item.show_mark(mark, theme)
            else:
                continue
            touched.add(key)
        for key in self._items.keys() - set(order):
            self.removeItem(self._items.pop(key))
            touched.add(key)
        self._stack(picture.marks, tuple(order))
        return frozenset(touched)

    def marks_of(self, ids: Iterable[str]) -> list[MarkItem]:
        """Return the items of the records ``ids``."""
        wanted = frozenset(ids)
        return [item for (id, _, _), item in self._items.items() if id in wanted]

    def marks(self) -> dict[Key, Mark]:
        """Return every mark that is shown, by key."""
        return {key: item.mark for key, item in self._items.items()}

    def ids_at(self, at: QPointF, reach: float) -> tuple[str, ...]:
        """Return the ids of the marks within ``reach`` metres of ``at``, those that are hit themselves first.

        Among equals the uppermost comes first; the inside of an area comes after all that lies on it.
        """
        box = QRectF(at.x() - reach, at.y() - reach, 2 * reach, 2 * reach)
        stroker = QPainterPathStroker()
        stroker.setWidth(2 * reach)
        found: list[tuple[int, float, str]] = []
        for item in self._items.values():
            id = item.mark.id
            if id is None or not item.boundingRect().intersects(box):
                continue
            ink = item.ink()
            if ink.contains(at):
                found.append((0 if item.mark.kind not in GROUND_KINDS else 2, -item.zValue(), id))
            elif ink.intersects(box) or stroker.createStroke(ink).contains(at):
                found.append((1, -item.zValue(), id))
        return tuple(dict.fromkeys(id for _, _, id in sorted(found)))

    def _stack(self, marks: tuple[Mark, ...], order: tuple[Key, ...]) -> None:
        """Give each item its height: by layer, then by its place in the picture."""
        if order == self._order:
            return
        self._order = order
        for place, mark in enumerate(marks):
            self._items[mark.key].setZValue(mark.layer + place / (len(order) + 1))


GROUND_KINDS = frozenset({"target", "rule area", "keep out", "feed area", "area"})
"""Marks that lie under the things that stand on them."""
