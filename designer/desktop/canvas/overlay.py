"""States of marks on the court, and what guides a gesture: halo, handles, rings, the reading. On screen only."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from functools import partial
from itertools import pairwise
from typing import Final

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QBrush, QColor, QPainterPath, QPainterPathStroker, QPolygonF

from designer.desktop.canvas.bench import Bench, Guide
from designer.desktop.canvas.handles import BETWEEN, Handle, handles
from designer.desktop.canvas.ink import (
    CHANGED,
    HALO,
    HANDLE,
    RING,
    InkItem,
    Label,
    Stroke,
    handle_box,
    label_at,
    parted,
    pen,
    tag_at,
    tint,
)
from designer.desktop.canvas.mark_item import MarkItem
from designer.desktop.canvas.scene import CourtScene
from designer.desktop.fonts import NOTE, font
from designer.desktop.look import BLACK, DARK, LIGHT, Look
from designer.drawing.page import Page
from designer.drawing.primitives import Layer, Mark, Path
from designer.drawing.qt import path_shape
from designer.drill.base import Point

LOOKS: Final[dict[str, Look]] = {look.name: look for look in (LIGHT, DARK, BLACK)}
ABOVE_ALL: Final = 100.0
SNAP_ARM: Final = 1.4
"""How far the lines of a snapped point reach, in metres."""


@dataclass(frozen=True, slots=True)
class Sight:
    """How the court is seen now: pixels a metre, metres a mark unit, how the page lies, and the part that is seen."""

    scale: float
    unit: float
    page: Page
    seen: QRectF

    def to_scene(self, point: Point) -> QPointF:
        """Return where ``point`` of the court is in the scene."""
        x, y = self.page.to_page(point)
        return QPointF(x, -y)


class Overlay:
    """Draws over one scene for one view."""

    def __init__(self, scene: CourtScene, bench: Bench) -> None:
        self._scene = scene
        self._bench = bench
        self._view = bench.view
        self._changed = InkItem(Layer.HALO + 0.2)
        self._halo = InkItem(Layer.HALO + 0.4)
        self._hover = InkItem(Layer.HALO + 0.6)
        self._ring = InkItem(ABOVE_ALL)
        self._handles = InkItem(ABOVE_ALL + 1)
        self._guide = InkItem(ABOVE_ALL + 2)
        self._cross = InkItem(ABOVE_ALL + 3)
        for item in (self._changed, self._halo, self._hover, self._ring, self._handles, self._guide, self._cross):
            scene.addItem(item)

    @property
    def look(self) -> Look:
        """Return the colours that go with the court's theme."""
        return LOOKS[self._view.theme]

    def show_states(self, sight: Sight, *, focused: bool) -> None:
        """Show what is picked, changed and hovered as it is now; ``focused`` adds the ring of the keyboard."""
        look, view, scale = self.look, self._view, sight.scale
        if view.document.previewing:
            self._show_gesture(sight)
            return
        changed = self._outline(view.changed_ids() - view.selection, CHANGED / 2 / scale)
        self._changed.draw(self._filled(changed, look.highlighter_edge, 0.55))
        halo = self._outline(view.selection, HALO / 2 / scale)
        self._halo.draw(self._filled(halo, look.highlighter_edge, 0.42))
        hovered = () if view.hovered is None or view.hovered in view.selection else (view.hovered,)
        edge = self._outline(hovered, 3 / scale)
        self._hover.draw(
            () if edge is None else (Stroke(edge.simplified(), pen(look.highlighter_edge, 1, scale)),), 1 / scale
        )
        self._show_handles(sight)
        self._show_ring(sight, focused=focused)

    def _show_gesture(self, sight: Sight) -> None:
        """While something is pulled: halo and handles of one thing follow; several show by themselves that they move.

        What another tool draws is not what was picked before it.
        """
        pulled = self._view.selection if self._view.tool == "select" and len(self._view.selection) == 1 else ()
        halo = self._outline(pulled, HALO / 2 / sight.scale)
        self._halo.draw(self._filled(halo, self.look.highlighter_edge, 0.42))
        self._hover.draw()
        self._ring.draw()
        if pulled:
            self._show_handles(sight)
        else:
            self._handles.draw()

    @property
    def said(self) -> tuple[Label, ...]:
        """Return what the guide says, where it stands."""
        return self._guide.labels

    def handles(self, sight: Sight) -> tuple[Handle, ...]:
        """Return the handles that are shown: those of what is picked alone."""
        if len(self._view.selection) != 1:
            return ()
        setting = self._view.setting
        return handles(setting, next(iter(self._view.selection)), sight.unit, self._bench.play(setting))

    def show_guide(self, guide: Guide, sight: Sight) -> None:
        """Show what a gesture says."""
        look, scale = self.look, sight.scale
        strokes: list[Stroke] = []
        if guide.band is not None:
            path = QPainterPath()
            path.addRect(QRectF(sight.to_scene(guide.band[0]), sight.to_scene(guide.band[1])).normalized())
            strokes.append(
                Stroke(path, pen(look.highlighter_edge, 1, scale), QBrush(tint(look.highlighter_edge, 0.12)))
            )
        strokes += self._why(guide, sight)
        if guide.at is not None:
            dot = QPainterPath()
            dot.addEllipse(sight.to_scene(guide.at), 3 / scale, 3 / scale)
            strokes.append(Stroke(dot, pen(look.ink, 1.2, scale), QBrush(QColor(look.highlighter_edge))))
        self._guide.draw(tuple(strokes), 2 / scale)
        face = font(NOTE)
        labels = [tag_at(words, sight.to_scene(at), face, scale) for at, words in guide.tags]
        if len(labels) == 2:
            labels[:] = parted(labels[0], labels[1], 4 / scale)
        if guide.at is not None and guide.words:
            at = sight.to_scene(guide.at)
            hides = partial(self._hidden_by, sight, guide)
            words = f"{guide.words[:1].upper()}{guide.words[1:]}"
            labels.append(label_at(words, at, sight.seen, face, scale, hides))
        self._guide.say(tuple(labels), look, face, scale)

    def _hidden_by(self, sight: Sight, guide: Guide, boxes: Sequence[QRectF]) -> list[int]:
        """Return how much each of ``boxes`` would hide: a handle or a corner counts most, then what the gesture draws."""
        marks, drawn = self._scene.hidden_by(boxes), self._scene.drawn_under(boxes)
        points = [self.handle_point(handle, sight) for handle in self.handles(sight)]
        points += [sight.to_scene(point) for point in (*guide.leg, *guide.outline)]
        edge = HANDLE / sight.scale
        grown = [box.adjusted(-edge, -edge, edge, edge) for box in boxes]
        return [
            mark + 2 * ink + 4 * sum(map(box.contains, points))
            for mark, ink, box in zip(marks, drawn, grown, strict=True)
        ]

    def _why(self, guide: Guide, sight: Sight) -> Iterator[Stroke]:
        """Yield what shows why a point has jumped, the legs so far, and the part of the court that a press would take."""
        edge, scale = self.look.highlighter_edge, sight.scale
        if guide.outline:
            part = QPainterPath()
            part.addPolygon(QPolygonF([sight.to_scene(point) for point in guide.outline]))
            part.closeSubpath()
            yield Stroke(part, pen(edge, 2, scale), QBrush(tint(edge, 0.18)))
        if len(guide.leg) > 1:
            yield Stroke(_lines(pairwise(guide.leg), sight), pen(edge, 1.6, scale))
        lines = [*guide.lines]
        if guide.at is not None and guide.snapped:
            x, y = guide.at
            lines += [((x - SNAP_ARM, y), (x + SNAP_ARM, y)), ((x, y - SNAP_ARM), (x, y + SNAP_ARM))]
        if lines:
            yield Stroke(_lines(lines, sight), pen(edge, 1, scale, dash=(4, 3)))

    def show_cross(self, cross: Point | None, sight: Sight) -> None:
        """Show where the keyboard presses."""
        if cross is None:
            self._cross.draw()
            return
        at, scale = sight.to_scene(cross), sight.scale
        path = QPainterPath()
        for x, y in ((1, 0), (-1, 0), (0, 1), (0, -1)):
            path.moveTo(at + QPointF(x, y) * (4 / scale))
            path.lineTo(at + QPointF(x, y) * (14 / scale))
        under = Stroke(path, pen(self.look.panel, 4, scale))
        self._cross.draw((under, Stroke(path, pen(self.look.ink, 2, scale))), 3 / scale)

    def _outline(self, ids: Iterable[str], reach: float) -> QPainterPath | None:
        """Return the ink of all marks of ``ids``, ``reach`` metres wider, as one path; None where there is none."""
        marks = without_words(self._scene.marks_of(ids))
        if not marks:
            return None
        path = QPainterPath()
        for item in marks:
            path.addPath(self._round(item.mark, reach).translated(item.pos()))
        path.setFillRule(path.fillRule().WindingFill)
        return path

    @staticmethod
    def _round(mark: Mark, reach: float) -> QPainterPath:
        """Return the ink of ``mark``, ``reach`` metres wider. Of an area it is a band along its edge: the inside stays clear."""
        if not mark.kind.endswith(" area"):
            return path_shape(mark, reach)
        outline = mark.primitives[0]
        if mark.layer != Layer.AREAS or not isinstance(outline, Path):
            return QPainterPath()
        stroker = QPainterPathStroker()
        stroker.setWidth(2 * reach)
        stroker.setJoinStyle(Qt.PenJoinStyle.RoundJoin)
        path = QPainterPath()
        path.addPolygon(QPolygonF([QPointF(x, -y) for x, y in (*outline.points, outline.points[0])]))
        return stroker.createStroke(path)

    def _filled(self, path: QPainterPath | None, colour: str, opacity: float) -> tuple[Stroke, ...]:
        return () if path is None else (Stroke(path, None, QBrush(tint(colour, opacity))),)

    def _show_handles(self, sight: Sight) -> None:
        look = self.look
        edge, fill = pen(look.ink, 1.6, sight.scale), QBrush(QColor(look.panel))
        boxes = (
            Stroke(
                handle_box(self.handle_point(handle, sight), sight.scale, between=handle.part in BETWEEN), edge, fill
            )
            for handle in self.handles(sight)
        )
        self._handles.draw(tuple(boxes), 2 / sight.scale)

    def handle_point(self, handle: Handle, sight: Sight) -> QPointF:
        """Return where ``handle`` stands in the scene: 6 pixels outside a shape that is too small to hold it."""
        at = sight.to_scene(handle.at)
        if handle.part != "corner":
            return at
        corners = [sight.to_scene(other.at) for other in self.handles(sight)]
        box = QRectF(corners[0], corners[0])
        for corner in corners:
            box = box.united(QRectF(corner, corner).adjusted(0, 0, 1e-9, 1e-9))
        if max(box.width(), box.height()) * sight.scale >= 24:
            return at
        out = at - box.center()
        step = 6 / sight.scale
        return at + QPointF(step if out.x() > 0 else -step, step if out.y() > 0 else -step)

    def _show_ring(self, sight: Sight, *, focused: bool) -> None:
        alone = focused and len(self._view.selection) == 1
        marks = without_words(self._scene.marks_of(self._view.selection)) if alone else []
        if not marks:
            self._ring.draw()
            return
        box = QRectF()
        for item in marks:
            box = box.united(item.sceneBoundingRect())
        reach = 8 / sight.scale
        path = QPainterPath()
        path.addRoundedRect(box.adjusted(-reach, -reach, reach, reach), 4 / sight.scale, 4 / sight.scale)
        self._ring.draw((Stroke(path, pen(self.look.ink, RING, sight.scale)),), RING / sight.scale)


def _lines(pieces: Iterable[tuple[Point, Point]], sight: Sight) -> QPainterPath:
    path = QPainterPath()
    for start, end in pieces:
        path.moveTo(sight.to_scene(start))
        path.lineTo(sight.to_scene(end))
    return path


def without_words(marks: list[MarkItem]) -> list[MarkItem]:
    """Return ``marks`` without the names that stand beside them: it is the thing itself that is picked."""
    return [item for item in marks if item.mark.layer != Layer.WORDS] or marks
