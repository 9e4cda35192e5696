"""How it looks on the court when a form waits for something to be picked there."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import TYPE_CHECKING, Final

from PySide6.QtCore import QPointF
from PySide6.QtGui import QBrush, QPainterPath

from designer.desktop.canvas.ink import InkItem, Stroke, label_at, pen, tint
from designer.desktop.canvas.overlay import LOOKS, without_words
from designer.desktop.fonts import NOTE, font
from designer.drawing.qt import path_shape

if TYPE_CHECKING:
    from designer.desktop.canvas.court_canvas import CourtCanvas
    from designer.desktop.picking.targets import Target

ABOVE: Final = 110.0
ROUND: Final = 5.0
"""How far the ring round a thing that can be picked stands off it, in pixels."""


class PickLayer:
    """Rings round what can be picked, a fill on what is chosen, and a strong edge with its name on what a press would take."""

    def __init__(self, canvas: CourtCanvas) -> None:
        self._canvas = canvas
        self._paths: dict[Target, QPainterPath] = {}
        self._offered, self._chosen, self._current = InkItem(ABOVE), InkItem(ABOVE + 1), InkItem(ABOVE + 2)
        for item in (self._offered, self._chosen, self._current):
            canvas.court_scene.addItem(item)

    def forget(self) -> None:
        """Forget the outlines: what they go round, or how large it is seen, is not as it was."""
        self._paths.clear()

    def show(self, found: Sequence[Target], chosen: Iterable[Target], current: Target | None) -> None:
        """Show what can be picked, what is chosen, and what is meant now."""
        look, scale = LOOKS[self._canvas.view.theme], self._canvas.pixels_per_metre
        dashed = pen(look.highlighter_edge, 1.4, scale, dash=(4, 3))
        drawn = [target for target in found if target.id is not None]
        self._offered.draw(tuple(Stroke(self._path(target), dashed) for target in drawn), 2 / scale)
        edge = pen(look.highlighter_edge, 2, scale)
        filled = QBrush(tint(look.highlighter_edge, 0.26))
        self._chosen.draw(tuple(Stroke(self._path(target), edge, filled) for target in chosen), 2 / scale)
        if current is None:
            self._current.draw()
            self._current.say((), look, font(NOTE), scale)
            return
        path = self._path(current)
        strokes = (
            Stroke(path, pen(look.panel, 6, scale, opacity=0.8)),
            Stroke(path, pen(look.highlighter_edge, 3, scale), QBrush(tint(look.highlighter_edge, 0.18))),
        )
        self._current.draw(strokes, 6 / scale)
        box = path.boundingRect()
        at = QPointF(box.center().x(), box.top())
        label = label_at(current.words, at, self._canvas.sight.seen, font(NOTE), scale)
        self._current.say((label,), look, font(NOTE), scale)

    def remove(self) -> None:
        """Leave the court."""
        for item in (self._offered, self._chosen, self._current):
            self._canvas.court_scene.removeItem(item)

    def _path(self, target: Target) -> QPainterPath:
        if target not in self._paths:
            self._paths[target] = self._outline(target)
        return self._paths[target]

    def _outline(self, target: Target) -> QPainterPath:
        sight = self._canvas.sight
        path = QPainterPath()
        if target.id is not None:
            for item in without_words(self._canvas.court_scene.marks_of((target.id,))):
                path = path.united(path_shape(item.mark, ROUND / sight.scale).translated(item.pos()))
            return without_holes(path)
        points = [sight.to_scene(point) for point in target.outline]
        path.moveTo(points[0])
        for point in points[1:]:
            path.lineTo(point)
        if not target.is_line:
            path.closeSubpath()
        return path


def without_holes(path: QPainterPath) -> QPainterPath:
    """Return the outermost rings of ``path``: what is inside of them, such as a letter in its disc, stays clear."""
    rings = path.simplified().toSubpathPolygons()
    boxes = [ring.boundingRect() for ring in rings]
    made = QPainterPath()
    for number, (ring, box) in enumerate(zip(rings, boxes, strict=True)):
        if not any(other.contains(box) and other != box for place, other in enumerate(boxes) if place != number):
            made.addPolygon(ring)
            made.closeSubpath()
    return made
