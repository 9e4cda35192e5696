"""What a form waits for is seen: a ring round each thing that can be picked, the name of what a press would take."""

import pytest
from desktop import hand
from PySide6.QtCore import QEvent, QPointF
from PySide6.QtGui import QColor, QPainterPath

from designer.desktop.look import LIGHT
from designer.desktop.picking.layer import without_holes


@pytest.fixture
def canvas(wide_kept):
    window = wide_kept
    window.column.open("zone")
    hand.settle()
    hand.click(window.column.form.form.row("must.area").box.button)
    return window.canvas


def colours(canvas, points):
    """How near the colours at these points of the court are to that of the highlighter's edge, 0 for the very same."""
    image = canvas.grab().toImage()
    wanted = QColor(LIGHT.highlighter_edge)
    found = []
    for point in points:
        pixel = canvas.to_pixel(point).toPoint()
        colour = image.pixelColor(pixel)
        found.append(max(abs(a - b) for a, b in zip(colour.getRgb()[:3], wanted.getRgb()[:3], strict=True)))
    return found


def test_the_part_that_would_be_taken_has_an_edge_all_round_and_leaves_with_the_pick(canvas):
    # The left service box of the far end, its far edge on the service line 21 ft from the net (ITF Rules 2025, rule 1).
    edge = [(1.0, 6.4008), (3.0, 6.4008)]
    away = colours(canvas, edge)
    hand.mouse(canvas, QEvent.Type.MouseMove, (2.0, 3.0), hand.NONE, hand.NONE)
    hand.settle()
    lit = colours(canvas, edge)
    assert max(lit) < 40 < min(away)
    hand.press(canvas, (2.0, 3.0))
    assert min(colours(canvas, edge)) > 40


def test_a_ring_goes_round_a_thing_and_not_through_it(qapp):
    ring = QPainterPath()
    ring.addEllipse(0, 0, 10, 10)
    ring.addEllipse(3, 3, 4, 4)
    ring.addRect(20, 0, 2, 2)
    outer = without_holes(ring)
    assert outer.contains(QPointF(5, 5)), "the hole is filled"
    assert len(outer.toSubpathPolygons()) == 2
