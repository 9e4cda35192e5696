"""The drawing's marks as icons: something is painted for each tool and each bullet, and it stays in its box."""

import pytest
from PySide6.QtCore import QRectF
from PySide6.QtGui import QImage, QPainter

from designer.desktop.column.sentence import _MARKS as BULLETS
from designer.desktop.icons import icon, paint_icon
from designer.desktop.look import BLACK, DARK, LIGHT
from designer.desktop.marks import paint_mark
from designer.desktop.strip import _MARKS as TOOLS
from designer.desktop.strip import COMMON, REST

KINDS = sorted({kind for tool in (*COMMON, *REST) if (kind := TOOLS.get(tool, tool))} | set(BULLETS.values()) | {"you"})


def painted(paint):
    """The smallest box round all that was painted on an empty image of 60 by 60."""
    image = QImage(60, 60, QImage.Format.Format_ARGB32)
    image.fill(0)
    painter = QPainter(image)
    paint(painter)
    painter.end()
    inked = [(x, y) for x in range(60) for y in range(60) if image.pixelColor(x, y).alpha() > 60]
    assert inked, "nothing was painted"
    across, along = zip(*inked, strict=True)
    return min(across), min(along), max(across), max(along)


@pytest.mark.parametrize("look", [LIGHT, DARK, BLACK], ids=lambda look: look.name)
@pytest.mark.parametrize("kind", KINDS)
def test_a_mark_is_painted_inside_its_box(qapp, look, kind):
    box = QRectF(10, 20, 40, 20)
    left, top, right, bottom = painted(lambda painter: paint_mark(painter, kind, box, look, text="A"))
    assert left >= 9
    assert right <= 51
    assert top >= 19
    assert bottom <= 41


@pytest.mark.parametrize("name", ["people", "court", "clock", "ball", "kit", "caution", "error", "suggestion"])
def test_an_icon_takes_the_colour_it_is_given(qapp, name):
    image = QImage(32, 32, QImage.Format.Format_ARGB32)
    image.fill(0)
    painter = QPainter(image)
    paint_icon(painter, name, QRectF(0, 0, 32, 32), "#FF0000")
    painter.end()
    solid = [image.pixelColor(x, y) for x in range(32) for y in range(32) if image.pixelColor(x, y).alpha() == 255]
    assert solid
    assert {(colour.red(), colour.green(), colour.blue()) for colour in solid} == {(255, 0, 0)}


def test_an_icon_is_sharp_on_a_screen_of_two_pixels_a_point(qapp):
    made = icon("undo", "#000000")
    assert {pixmap.width() for pixmap in made.availableSizes()} >= {16}
    assert made.pixmap(made.availableSizes()[0], 2.0).width() == 32
