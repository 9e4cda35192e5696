"""The scene: kept in step with a picture by touching only the marks that differ."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import Final

from PySide6.QtCore import QObject, QPointF, QRectF
from PySide6.QtWidgets import QGraphicsScene

from designer.desktop.canvas.live import Change
from designer.desktop.canvas.mark_item import Key, MarkItem
from designer.desktop.canvas.still import CROWDED, StillItem
from designer.drawing.picture import Picture
from designer.drawing.primitives import Layer, Mark
from designer.drawing.themes import Theme

REACH: Final = 60.0
"""The pictures of what stands still cover so many metres round the net: all that can be seen."""

MOST_MINDED: Final = 700
"""Among more marks than this a guide's words find no free place, and looking for one takes time."""

MOST_DRAWN: Final = 24
"""Of more marks than this that move at once a guide's words do not keep clear."""

JUST_OVER: Final = 99.0
"""The height of what stands still over what moves: over every mark, under handles and guide."""


class CourtScene(QGraphicsScene):
    """One item for each mark, found by the mark's key; nothing else holds an item."""

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        # A few hundred items that move all the time: an index costs more than it finds.
        self.setItemIndexMethod(QGraphicsScene.ItemIndexMethod.NoIndex)
        self._items: dict[Key, MarkItem] = {}
        self._order: tuple[Key, ...] = ()
        self._theme: Theme | None = None
        self._marks: tuple[Mark, ...] = ()
        self._pictured: dict[Key, Mark] = {}
        self._pictured_by_id: dict[str, list[Mark]] = {}
        self._live: set[Key] = set()
        self._still: set[Key] = set()
        self._still_items: tuple[StillItem, ...] = ()

    def reconcile(self, picture: Picture, theme: Theme) -> frozenset[Key]:
        """Show ``picture``; return the keys of the marks that were added, changed or removed."""
        self._wake()
        self._settle(self._live)
        repaint_all = theme is not self._theme and theme != self._theme
        self._theme = theme
        others = None if repaint_all else self._others_in_place(picture.marks)
        touched = self._take_all(picture.marks, repaint_all=repaint_all) if others is None else self._take(others)
        self._marks = picture.marks
        self._pictured_by_id = {}
        return frozenset(touched)

    def _others_in_place(self, marks: tuple[Mark, ...]) -> list[Mark] | None:
        """Return those of ``marks`` that stand in place of another of the same key; None where more than that differs.

        Marks that are made from the same values are one object, so most need no look.
        """
        if len(marks) != len(self._marks):
            return None
        pairs = [(old, new) for old, new in zip(self._marks, marks, strict=True) if old is not new]
        return None if any(old.key != new.key for old, new in pairs) else [new for _, new in pairs]

    def _take(self, marks: list[Mark]) -> set[Key]:
        """Show each of ``marks`` in place of the one of its key."""
        touched = set()
        for mark in marks:
            item = self._items[mark.key]
            if item.mark != mark:
                item.show_mark(mark, self.theme)
                touched.add(mark.key)
            self._pictured[mark.key] = mark
        return touched

    def _take_all(self, marks: tuple[Mark, ...], *, repaint_all: bool) -> set[Key]:
        """Show ``marks`` and nothing else, in their order."""
        touched: set[Key] = set()
        order: list[Key] = []
        for mark in marks:
            key = mark.key
            order.append(key)
            item = self._items.get(key)
            if item is None:
                item = self._items[key] = MarkItem(mark, self.theme)
                self.addItem(item)
            elif repaint_all or (item.mark is not mark and item.mark != mark):
                item.show_mark(mark, self.theme)
            else:
                continue
            touched.add(key)
        for key in self._items.keys() - set(order):
            self.removeItem(self._items.pop(key))
            touched.add(key)
        self._stack(marks, tuple(order))
        self._pictured = {mark.key: mark for mark in marks}
        return touched

    def show_change(self, change: Change) -> frozenset[Key]:
        """Show ``change`` over the last whole picture, in place of any earlier one; return the keys that it concerns."""
        concerned = set(change.offsets) | change.hidden | {mark.key for mark in change.marks}
        if self._still & concerned:
            self._wake()
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
        self._hold_still()
        return frozenset(concerned)

    @property
    def theme(self) -> Theme:
        """Return the theme of what is shown; ``LookupError`` before there is a picture."""
        if self._theme is None:
            raise LookupError("there is no picture yet")
        return self._theme

    @property
    def still(self) -> frozenset[Key]:
        """Return the keys of the marks that are shown in one picture while others move, none at rest."""
        return frozenset(self._still)

    def _hold_still(self) -> None:
        """On a crowded court show all that is not live as two pictures, one under what moves and one over it."""
        if self._still or not self._live or len(self._items) < CROWDED:
            return
        moving = [self._items[key].zValue() for key in self._live]
        height = min(moving, default=0.0)
        resting = {key: item for key, item in self._items.items() if key not in self._live and item.isVisible()}
        self._still = set(resting)
        for item in resting.values():
            item.setVisible(False)
        below = [item for item in resting.values() if item.zValue() < height]
        above = [item for item in resting.values() if item.zValue() >= height]
        everywhere = QRectF(-REACH, -REACH, 2 * REACH, 2 * REACH)
        self._still_items = (StillItem(everywhere, below, -1.0), StillItem(everywhere, above, JUST_OVER))
        for still in self._still_items:
            self.addItem(still)

    def _wake(self) -> None:
        """Show each mark by itself again."""
        if not self._still:
            return
        for key in self._still:
            self._items[key].setVisible(True)
        self._still.clear()
        for still in self._still_items:
            self.removeItem(still)
        self._still_items = ()

    def pictured(self, id: str) -> tuple[Mark, ...]:
        """Return the marks of the record ``id`` on the last whole picture."""
        if not self._pictured_by_id:
            for mark in self._marks:
                if mark.id is not None:
                    self._pictured_by_id.setdefault(mark.id, []).append(mark)
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

    def hidden_by(self, boxes: Sequence[QRectF]) -> list[int]:
        """Return for each of ``boxes`` how many people, things, digits and words it would hide; nothing on a crowded court."""
        if len(self._items) > MOST_MINDED:
            return [0] * len(boxes)
        round_all = QRectF()
        for box in boxes:
            round_all = round_all.united(box)
        near = [
            there
            for key, item in self._items.items()
            if item.mark.layer > Layer.BALLS
            and item.mark.id is not None
            and (there := item.sceneBoundingRect()).intersects(round_all)
            and (item.isVisible() or key in self._still)
        ]
        return [sum(there.intersects(box) for there in near) for box in boxes]

    def drawn_under(self, boxes: Sequence[QRectF]) -> list[int]:
        """Return for each of ``boxes`` how many of the marks that a gesture draws lie under it; nothing where many move."""
        if len(self._live) > MOST_DRAWN:
            return [0] * len(boxes)
        drawn = [item for key in self._live if (item := self._items[key]).isVisible()]
        return [sum(item.ink().intersects(box.translated(-item.pos())) for item in drawn) for box in boxes]

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
        for key, item in self._items.items():
            id = item.mark.id
            shown = item.isVisible() or key in self._still
            if id is None or not shown or not item.sceneBoundingRect().intersects(box):
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
