import pytest
from PySide6.QtCore import QPointF
from PySide6.QtGui import QColor, QFontInfo

from designer.drawing import qt
from designer.drawing.themes import theme
from designer.drawing.words import text_width
from designer.drill.base import place
from designer.drill.items import Area, Hoop, Rectangle

pytestmark = pytest.mark.usefixtures("qapp")


def the_mark(picture, id, kind, part=""):
    return next(mark for mark in picture.marks if mark.key == (id, kind, part))


def test_the_bundled_family_is_used_and_not_the_machines():
    family = qt.load_fonts()
    face = qt.font(20, bold=True)
    assert family == "Noto Sans"
    assert QFontInfo(face).family() == family
    assert QFontInfo(face).bold()


def test_letters_are_as_wide_as_they_are_measured():
    from PySide6.QtGui import QFontMetricsF

    # Kerning alone would take 4 % off this text.
    text = "AVATAR To. WAVE 12.80 m"
    for bold in (False, True):
        measured = QFontMetricsF(qt.font(100, bold=bold)).horizontalAdvance(text)
        assert measured == pytest.approx(text_width(text, 100, bold), rel=5e-4)


def test_a_press_on_the_middle_of_a_ring_or_an_area_hits_it(drawing, pair):
    zone = Area(kind="area", id="zone", shape=Rectangle(form="rectangle", corners=((0.0, 6.4), (4.0, 11.0))))
    made = drawing.made(*pair, Hoop(kind="hoop", id="hoop", place=place(-3.0, -6.0)), zone)
    assert qt.path_shape(the_mark(made, "hoop", "hoop")).contains(QPointF(-3.0, 6.0))
    assert qt.path_shape(the_mark(made, "zone", "rule area")).contains(QPointF(2.0, -8.0))
    assert qt.path_shape(the_mark(made, "spot-a", "person")).contains(QPointF(0.0, 13.9))


def test_a_press_beside_a_path_hits_within_its_reach_and_no_farther(drawing):
    made = drawing.of("wide-start")
    shaft = the_mark(made, "reply", "ball path")
    (x0, y0), (x1, y1) = next(shape.points for shape in shaft.primitives if shape.style.stroke == "ball")
    length = ((x1 - x0) ** 2 + (y1 - y0) ** 2) ** 0.5
    across = ((y1 - y0) / length, -(x1 - x0) / length)

    def beside(metres):
        return QPointF((x0 + x1) / 2 + across[0] * metres, -(y0 + y1) / 2 - across[1] * metres)

    half = 1.6 / 2 * drawing.unit
    caught = qt.path_shape(shaft, 0.35)
    assert caught.contains(beside(half + 0.33))
    assert not caught.contains(beside(half + 0.37))
    assert not qt.path_shape(shaft).contains(beside(half + 0.05))


def test_an_image_has_the_width_asked_for_on_the_ground_of_its_theme(drawing):
    look = theme("dark")
    picture = drawing.of("wide-start")
    image = qt.image(picture, look, 300)
    left, low, right, high = picture.extent
    assert image.width() == 300
    assert image.height() == round(300 * (high - low) / (right - left))
    assert image.pixelColor(3, image.height() // 4) == QColor(look.ground.hex)


def test_a_mark_made_ready_is_painted_as_it_is_painted_at_once(drawing):
    from PySide6.QtGui import QImage, QPainter

    picture, look = drawing.of("short-approach"), theme("light")

    def drawn(how):
        image = QImage(500, 1000, QImage.Format.Format_RGB32)
        image.fill(0xFFFFFFFF)
        painter = QPainter(image)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.translate(250, 500)
        painter.scale(28, 28)
        how(painter)
        painter.end()
        return image

    def ready(painter):
        for mark in picture.marks:
            qt.paint_ready(painter, qt.ready(mark, look))

    one, other = drawn(lambda painter: qt.paint(painter, picture.marks, look)), drawn(ready)
    apart = sum(
        abs(one.pixelColor(x, y).lightness() - other.pixelColor(x, y).lightness()) > 48
        for x in range(0, 500, 3)
        for y in range(0, 1000, 3)
    )
    assert apart < 30
