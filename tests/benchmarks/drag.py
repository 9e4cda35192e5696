"""Dragging 20 of 200, 400 and 2,000 things on the canvas against a bare QGraphicsView: ``python -m tests.benchmarks.drag``.

The peer shows the very same marks as plain movable items, painted from the same primitives, and knows no drill: no edit, no
snapping, no arrow that follows. Five interleaved runs; the ratio of medians is printed. The time of a step is that in which this
process worked, since others may work beside it.
"""

from __future__ import annotations

import os
import random
import sys
import time
from collections.abc import Callable
from statistics import median

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

from PySide6.QtCore import QEvent, QPointF, QRectF, Qt
from PySide6.QtGui import QMouseEvent, QPainter
from PySide6.QtWidgets import QApplication, QFrame, QGraphicsItem, QGraphicsScene, QGraphicsView

from designer.desktop.canvas.court_canvas import CourtCanvas
from designer.desktop.document import Document
from designer.desktop.view import View
from designer.drawing.qt import paint_ready, ready
from designer.drill.base import place
from designer.drill.drill import Changes, Drill, Progression
from designer.drill.items import Cone
from designer.drill.movement import Shot
from designer.drill.people import Job, Spot
from designer.drill.places import anchor

RUNS = 5
STEPS = 40
ALLOWED = {200: 1.5, 400: 1.5, 2000: 1 / 3}
"""The largest ratio for so many things: the project's own aims."""
SIZE = (1200, 700)
LETTERS = "ABCDEFGH"
MOVABLE = QGraphicsItem.GraphicsItemFlag.ItemIsMovable | QGraphicsItem.GraphicsItemFlag.ItemIsSelectable


def crowded(count: int) -> Drill:
    """Return a drill with ``count`` things: eight people, a quarter arrows in rallies of five, the rest cones."""
    chance = random.Random(1)

    def somewhere() -> tuple[float, float]:
        return (chance.uniform(-7, 7), chance.uniform(-16, 16))

    spots = tuple(Spot(id=f"spot-{letter}".lower(), job=letter, place=place(*somewhere())) for letter in LETTERS)
    shots = tuple(
        Shot(
            id=f"shot-{number}",
            by=LETTERS[number % 8],
            after=f"shot-{number - 1}" if number % 5 else None,
            to=place(*somewhere()),
        )
        for number in range(count // 4)
    )
    cones = tuple(
        Cone(kind="cone", id=f"cone-{number}", place=place(*somewhere())) for number in range(count - count // 4 - 8)
    )
    changes = Changes(spots=spots, items=cones, shots=shots)
    jobs = tuple(Job(letter=letter) for letter in LETTERS)
    return Drill(id="d-crowd", jobs=jobs, progressions=(Progression(id="p", changes=changes),))


def chosen(count: int) -> tuple[str, ...]:
    """Return the ids that are dragged: three cones to each arrow."""
    cones = [f"cone-{number}" for number in range(count * 3 // 4)]
    return (*cones, *(f"shot-{number * 7}" for number in range(count - len(cones))))


class PlainItem(QGraphicsItem):
    """A mark that knows how to paint itself and nothing else."""

    def __init__(self, mark: object, theme: object, height: float, bounds: QRectF) -> None:
        super().__init__()
        self._ready = ready(mark, theme)  # type: ignore[arg-type]
        self._bounds = bounds
        self.setZValue(height)

    def boundingRect(self) -> QRectF:
        return self._bounds

    def paint(self, painter: QPainter, *_: object) -> None:
        paint_ready(painter, self._ready)


def bare(canvas: CourtCanvas, ids: tuple[str, ...]) -> tuple[QGraphicsView, QGraphicsScene]:
    """Return a plain view of the same marks, those of ``ids`` selected."""
    scene = QGraphicsScene()
    scene.setItemIndexMethod(QGraphicsScene.ItemIndexMethod.NoIndex)
    scene.setSceneRect(canvas.court_scene.sceneRect())
    for item in canvas.court_scene.marks_of({mark.id for mark in canvas.court_scene.marks().values()}):
        plain = PlainItem(item.mark, canvas.theme, item.zValue(), item.boundingRect())
        scene.addItem(plain)
        if item.mark.id in ids:
            plain.setFlags(MOVABLE)
            plain.setSelected(True)
        else:
            plain.setAcceptedMouseButtons(Qt.MouseButton.NoButton)
    view = QGraphicsView(scene)
    view.setFrameShape(QFrame.Shape.NoFrame)
    view.setRenderHint(QPainter.RenderHint.Antialiasing)
    view.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
    view.setVerticalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
    view.resize(*SIZE)
    view.show()
    view.setTransform(canvas.transform())
    view.centerOn(canvas.mapToScene(canvas.viewport().rect().center()))
    QApplication.processEvents()
    return view, scene


def send(view: QGraphicsView, kind: QEvent.Type, at: QPointF, held: Qt.MouseButton) -> None:
    """Send one mouse event and let the view repaint."""
    button = Qt.MouseButton.NoButton if kind == QEvent.Type.MouseMove else Qt.MouseButton.LeftButton
    where = QPointF(view.viewport().mapToGlobal(at.toPoint()))
    event = QMouseEvent(kind, at, where, button, held, Qt.KeyboardModifier.NoModifier)
    QApplication.sendEvent(view.viewport(), event)
    QApplication.processEvents()


def drag(view: QGraphicsView, start: QPointF, check: Callable[[], None]) -> float:
    """Drag from ``start`` there and nearly back; return the seconds of a step. ``check`` is called at the farthest point."""
    send(view, QEvent.Type.MouseButtonPress, start, Qt.MouseButton.LeftButton)
    begin, way = time.process_time(), 0.0
    for step in range(1, STEPS + 1):
        way = 2.0 * min(step, STEPS + 2 - step)
        send(view, QEvent.Type.MouseMove, start + QPointF(way, -way), Qt.MouseButton.LeftButton)
        if step == STEPS // 2:
            check()
    taken = (time.process_time() - begin) / STEPS
    send(view, QEvent.Type.MouseButtonRelease, start + QPointF(way, -way), Qt.MouseButton.NoButton)
    return taken


def measure(count: int, dragged: int) -> tuple[float, float]:
    """Return the median seconds of a step on the canvas and on the bare view."""
    drill, ids = crowded(count), chosen(dragged)
    document = Document(drill, source=random.Random(1))
    view = View(document)
    canvas = CourtCanvas(document, view)
    canvas.resize(*SIZE)
    canvas.show()
    QApplication.processEvents()
    plain, scene = bare(canvas, ids)
    view.select(ids)
    grip = anchor(view.setting, ids[0])
    assert grip is not None
    start = canvas.to_pixel(grip)
    rounds = []
    carried = [item for item in scene.items() if item.isSelected()]

    def canvas_drags() -> None:
        assert document.previewing

    def plain_drags() -> None:
        assert len(carried) >= dragged
        assert all(item.pos() != QPointF() for item in carried), "the peer drags as well"

    for _ in range(RUNS):
        rounds.append((drag(canvas, start, canvas_drags), drag(plain, start, plain_drags)))
        assert document.stack.undoText() == f"Move {dragged} items", "the drag is one step"
        document.undo()
        for item in carried:
            item.setPos(0, 0)
    mine, theirs = (median(column) for column in zip(*rounds, strict=True))
    canvas.hide()
    plain.hide()
    return mine, theirs


def main() -> int:
    """Print the ratio for each number of things; return 1 where one is over what is allowed for it."""
    _application = QApplication.instance() or QApplication(sys.argv)
    missed = False
    for count, most in ALLOWED.items():
        mine, theirs = measure(count, 20)
        missed |= mine / theirs > most
        print(
            f"20 of {count}: {mine * 1000:.1f} ms a step, bare view {theirs * 1000:.1f} ms, "
            f"ratio {mine / theirs:.2f}, at most {most:.2f}",
            flush=True,
        )
    return int(missed)


if __name__ == "__main__":
    sys.exit(main())
