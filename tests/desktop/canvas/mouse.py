"""A mouse as a hand works it, sent to the viewport, and canvases to work it on."""

import random

from PySide6.QtCore import QEvent, QPointF, Qt
from PySide6.QtGui import QMouseEvent
from PySide6.QtWidgets import QApplication

from designer.desktop.canvas.court_canvas import CourtCanvas
from designer.desktop.canvas.lens import unit_metres
from designer.desktop.document import Document
from designer.desktop.view import View
from designer.drawing.picture import picture
from designer.drill.places import anchor

NONE = Qt.KeyboardModifier.NoModifier
LEFT, MIDDLE, RIGHT = Qt.MouseButton.LeftButton, Qt.MouseButton.MiddleButton, Qt.MouseButton.RightButton


def mouse(canvas, kind, pixel, button, held, keys=NONE):
    where = QPointF(canvas.viewport().mapToGlobal(pixel.toPoint()))
    QApplication.sendEvent(canvas.viewport(), QMouseEvent(kind, pixel, where, button, held, keys))


def press(canvas, pixel, button=LEFT, keys=NONE):
    mouse(canvas, QEvent.Type.MouseButtonPress, pixel, button, button, keys)


def moves(canvas, pixel, button=LEFT, keys=NONE):
    mouse(canvas, QEvent.Type.MouseMove, pixel, Qt.MouseButton.NoButton, button, keys)


def release(canvas, pixel, button=LEFT, keys=NONE):
    mouse(canvas, QEvent.Type.MouseButtonRelease, pixel, button, Qt.MouseButton.NoButton, keys)


def drag(canvas, start, end, button=LEFT, keys=NONE, steps=6):
    """A drag as a hand makes it, sent to the viewport."""
    press(canvas, start, button, keys)
    for step in range(1, steps + 1):
        moves(canvas, start + (end - start) * (step / steps), button, keys)
    release(canvas, end, button, keys)


def click(canvas, pixel, keys=NONE, button=LEFT):
    press(canvas, pixel, button, keys)
    release(canvas, pixel, button, keys)


def shown(qtbot, drill, size=(700, 900)):
    document = Document(drill, source=random.Random(3))
    canvas = CourtCanvas(document, View(document))
    qtbot.addWidget(canvas)
    canvas.resize(*size)
    canvas.show()
    qtbot.waitExposed(canvas)
    return canvas


def same_as_pictured(canvas, drill):
    """Whether the canvas shows exactly the picture of ``drill``, with nothing left of a gesture."""
    unit = unit_metres(canvas.pixels_per_metre)
    whole = picture(drill, canvas.view.at, unit=unit, theme=canvas.theme, rulers=True)
    marks = {key: mark for key, mark in canvas.court_scene.marks().items() if key[1] != "legend"}
    in_place = all(canvas.court_scene.item_of(key).pos() == QPointF() for key in marks)
    return in_place and marks == {mark.key: mark for mark in whole.marks}


def at(canvas, id):
    return anchor(canvas.view.setting, id)
