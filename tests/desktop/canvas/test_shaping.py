import pytest

from designer.desktop.canvas.refused import Refused
from designer.desktop.canvas.shaping import as_form, with_corners
from designer.drill.items import Area, Line, Polygon, Rectangle
from designer.drill.places import corners_of

SQUARE = ((0.0, 0.0), (2.0, 0.0), (2.0, 2.0), (0.0, 2.0))


def area(shape):
    return Area(kind="area", id="a", shape=shape)


def polygon(*corners):
    return area(Polygon(form="polygon", corners=corners))


def test_an_outline_cannot_be_pulled_across_itself():
    crossed = (SQUARE[0], SQUARE[2], SQUARE[1], SQUARE[3])
    with pytest.raises(Refused, match="cannot cross itself"):
        with_corners(polygon(*SQUARE), crossed)


def test_one_that_crosses_itself_already_can_be_mended_step_by_step():
    crossed = polygon(SQUARE[0], SQUARE[2], SQUARE[1], SQUARE[3])
    moved = (SQUARE[0], (3.0, 3.0), SQUARE[1], SQUARE[3])
    assert with_corners(crossed, moved).shape.corners == moved


def test_a_line_keeps_the_pieces_it_needs_and_those_that_were_chosen():
    needed = Line(kind="line", id="l", corners=((0, 0), (8.2296, 0)), marked="discs", pieces=5)
    half = ((0.0, 0.0), (4.1148, 0.0))
    assert with_corners(needed, half).pieces == 3
    assert with_corners(needed.changed(pieces=9), half).pieces == 9


def test_forms_turn_into_one_another_in_the_same_box():
    square = area(Rectangle(form="rectangle", corners=((0.0, 0.0), (2.0, 2.0))))
    assert corners_of(as_form(square, "polygon")) == SQUARE
    round_one = as_form(square, "ellipse")
    assert round_one.shape.corners == ((0.0, 0.0), (2.0, 2.0))
    with_many = corners_of(as_form(round_one, "polygon"))
    assert all((x - 1) ** 2 + (y - 1) ** 2 == pytest.approx(1, abs=1e-3) for x, y in with_many)
    assert as_form(as_form(square, "polygon"), "rectangle") == square
