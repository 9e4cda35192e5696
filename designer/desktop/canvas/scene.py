"""The scene: kept in step with a picture by touching only the marks that differ."""

from __future__ import annotations

from collections.abc import Iterable

from PySide6.QtCore import QObject, QPointF, QRectF
from PySide6.QtWidgets import QGraphicsScene

from designer.desktop.canvas.live import Change
from designer.desktop.canvas.mark_item import Key, MarkItem
from designer.drawing.picture import Picture
from designer.drawing.primitives import Layer, Mark
from designer.drawing.themes import Theme


class CourtScene(QGraphicsScene):
    """One item for each mark, found by the mark's key; nothing else holds an item."""

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        # A few hundred items that move all the time: an index costs more than it finds.
        self.setItemIndexMethod(QGraphicsScene.ItemIndexMethod.NoIndex)
        self._items: dict[Key, MarkItem] = {}
        self._order: tuple[Key, ...] = ()
        self._theme: Theme | None = None
        self._pictured: dict[Key, Mark] = {}
        self._pictured_by_id: dict[str, list[Mark]] = {}
        self._live: set[Key] = set()

    def reconcile(self, picture: Picture, theme: Theme) -> frozenset[Key]:
        """Show ``picture``; return the keys of the marks that were added, changed or removed."""
        touched: set[Key] = set()
        self._settle(self._live)
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
        self._pictured = {mark.key: mark for mark in picture.marks}
        self._pictured_by_id = {}
        for mark in picture.marks:
            if mark.id is not None:
                self._pictured_by_id.setdefault(mark.id, []).append(mark)
        return frozenset(touched)

    def show_change(self, change: Change) -> frozenset[Key]:
        """Show ``change`` over the last whole picture, in place of any earlier one; return the keys that it concerns."""
        concerned = set(change.offsets) | change.hidden | {mark.key for mark in change.marks}
        self._settle(self._live - concerned)
        self._live = concerned
        for key, (x, y) in change.offsets.items():
            self._items[key].setPos(x, -y)
        for key in change.hidden:
            self._items[key].setVisible(False)
        for mark in change.marks:
            item = self._items.get(mark.key)
            if item is None:
                item = self._items[mark.key] = MarkItem(mark, self.theme)
                item.setZValue(mark.layer + 1 - 1e-6)
                self.addItem(item)
            elif item.mark is not mark and item.mark != mark:
                item.show_mark(mark, self.theme)
            item.setVisible(True)
        return frozenset(concerned)

    @property
    def theme(self) -> Theme:
        """Return the theme of what is shown; ``LookupError`` before there is a picture."""
        if self._theme is None:
            raise LookupError("there is no picture yet")
        return self._theme

    def pictured(self, id: str) -> tuple[Mark, ...]:
        """Return the marks of the record ``id`` on the last whole picture."""
        return tuple(self._pictured_by_id.get(id, ()))

    def _settle(self, keys: Iterable[Key]) -> None:
        """Show the marks ``keys`` again as the last whole picture has them."""
        for key in tuple(keys):
            item, mark = self._items[key], self._pictured.get(key)
            if mark is None:
                self.removeItem(self._items.pop(key))
            else:
                if item.mark is not mark:
                    item.show_mark(mark, self.theme)
                item.setPos(0, 0)
                item.setVisible(True)
            self._live.discard(key)

    def marks_of(self, ids: Iterable[str]) -> list[MarkItem]:
        """Return the items of the records ``ids``."""
        wanted = frozenset(ids)
        return [item for (id, _, _), item in self._items.items() if id in wanted]

    def marks(self) -> dict[Key, Mark]:
        """Return every mark that is shown, by key."""
        return {key: item.mark for key, item in self._items.items()}

    @property
    def is_whole(self) -> bool:
        """Whether the last whole picture is shown as it is, with no change of a gesture over it."""
        return not self._live

    def item_of(self, key: Key) -> MarkItem:
        """Return the item of one mark; ``KeyError`` where there is none."""
        return self._items[key]

    def ids_at(self, at: QPointF, reach: float) -> tuple[str, ...]:
        """Return the ids of the marks within ``reach`` metres of ``at``, those that are hit themselves first.

        Among equals the uppermost comes first; the inside of an area comes after all that lies on it.
        """
        box = QRectF(at.x() - reach, at.y() - reach, 2 * reach, 2 * reach)
        found: list[tuple[int, float, str]] = []
        for item in self._items.values():
            id = item.mark.id
            if id is None or not item.isVisible() or not item.sceneBoundingRect().intersects(box):
                continue
            ink = item.ink()
            here = at - item.pos()
            if ink.contains(here):
                found.append((2 if item.mark.layer == Layer.AREAS else 0, -item.zValue(), id))
            elif ink.intersects(box.translated(-item.pos())):
                found.append((1, -item.zValue(), id))
        return tuple(dict.fromkeys(id for _, _, id in sorted(found)))

    def _stack(self, marks: tuple[Mark, ...], order: tuple[Key, ...]) -> None:
        """Give each item its height: by layer, then by its place in the picture."""
        if order == self._order:
            return
        self._order = order
        for place, mark in enumerate(marks):
            self._items[mark.key].setZValue(mark.layer + place / (len(order) + 1))
