"""What the setting in view takes away or moves, as it was in the one below: pale on the court while changes are marked."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from PySide6.QtCore import QObject

from designer.desktop.canvas.mark_item import MarkItem
from designer.desktop.ladder import owns
from designer.drawing.part import part
from designer.drawing.primitives import Layer, Mark
from designer.drill.setting import below

if TYPE_CHECKING:
    from designer.desktop.canvas.court_canvas import CourtCanvas

PALE: Final = 0.38
"""How much of a mark is left of what is no longer so."""


class Ghosts(QObject):
    """Shows over one court how the setting below had what is changed."""

    def __init__(self, canvas: CourtCanvas) -> None:
        super().__init__(canvas)
        self._canvas = canvas
        self._items: list[MarkItem] = []
        view = canvas.view
        for signal in (view.at_changed, view.marking_changed, view.theme_changed, canvas.sight_changed):
            signal.connect(self.follow)
        view.document.changed.connect(self.follow)
        self.follow()

    def marks(self) -> tuple[Mark, ...]:
        """Return the marks that are shown."""
        return tuple(item.mark for item in self._items)

    def follow(self, *_: object) -> None:
        """Show what is gone or was otherwise, or nothing while changes are not marked."""
        scene = self._canvas.court_scene
        for item in self._items:
            scene.removeItem(item)
        self._items = []
        if not self._canvas.view.marking:
            return
        for mark in self._before():
            item = MarkItem(mark, self._canvas.theme)
            item.setOpacity(PALE)
            item.setZValue(Layer.HALO - 0.5)
            scene.addItem(item)
            self._items.append(item)

    def _before(self) -> tuple[Mark, ...]:
        """Return the marks of what is gone, and of what is drawn otherwise now, as the setting below has them."""
        canvas, view = self._canvas, self._canvas.view
        drill = view.document.drill
        ids = frozenset(own.id for own in owns(drill, view.at) if own.how != "new")
        if not ids:
            return ()
        sight = canvas.sight
        made = part(
            drill, below(drill, view.at), ids, unit=sight.unit, theme=canvas.theme, you=view.you, page=sight.page
        )
        now = {mark.key: mark for id in ids for mark in canvas.court_scene.pictured(id)}
        return tuple(mark for mark in made if now.get(mark.key) != mark)
