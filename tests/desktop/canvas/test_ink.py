import pytest
from PySide6.QtCore import QPointF, QRectF

from designer.desktop.canvas.ink import InkItem, Stroke, handle_box, label_at, pen
from designer.desktop.fonts import NOTE, font

SEEN = QRectF(-10, -10, 20, 20)


@pytest.mark.parametrize("at", [QPointF(x, y) for x in (-9.9, 0, 9.9) for y in (-9.9, 0, 9.9)])
def test_a_label_stands_inside_what_is_seen_and_clear_of_its_point(qapp, at):
    label = label_at("1 racket in from the right singles line", at, SEEN, font(NOTE), scale=40)
    assert SEEN.contains(label.box)
    assert not label.box.contains(at)


def test_a_label_of_two_lines_is_taller_and_as_wide_as_the_longer(qapp):
    one = label_at("1 racket in from the right singles line", QPointF(), SEEN, font(NOTE), scale=40)
    two = label_at("1 racket in from the right singles line\n2 wide", QPointF(), SEEN, font(NOTE), scale=40)
    assert two.box.width() == pytest.approx(one.box.width())
    assert two.box.height() > 1.5 * one.box.height() - 10 / 40


def test_sizes_are_pixels_whatever_the_scale(qapp):
    for scale in (10.0, 40.0):
        assert handle_box(QPointF(), scale).boundingRect().width() * scale == pytest.approx(8)
        assert pen("#000000", 2, scale).widthF() * scale == pytest.approx(2)


def test_an_item_covers_all_it_draws_and_nothing_when_it_draws_nothing(qapp):
    item = InkItem(1.0)
    assert item.boundingRect().isEmpty()
    item.draw((Stroke(handle_box(QPointF(3, 4), 10), pen("#000000", 2, 10)),), 0.1)
    assert item.boundingRect().contains(QRectF(2.5, 3.5, 1, 1))
    item.draw()
    assert item.boundingRect().isEmpty()
