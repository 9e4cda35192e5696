import math

import pytest

from designer.drawing.primitives import Dots, Ellipse, Layer, Path, Strokes, Style, Words, bounds_of, mark

INK = Style(fill="ink")


def test_bounds_count_half_the_stroke():
    path = Path(((0.0, 0.0), (4.0, 2.0)), Style("ink", 0.5))
    assert bounds_of([path]) == (-0.25, -0.25, 4.25, 2.25)


def test_bounds_of_a_turned_ellipse_are_those_of_its_points():
    shape = Ellipse((1.0, 2.0), (3.0, 1.0), INK, 30.0)
    turn = math.radians(30)
    angles = [math.radians(degrees / 10) for degrees in range(3600)]
    across = [1 + 3 * math.cos(a) * math.cos(turn) - math.sin(a) * math.sin(turn) for a in angles]
    along = [2 + 3 * math.cos(a) * math.sin(turn) + math.sin(a) * math.cos(turn) for a in angles]
    assert bounds_of([shape]) == pytest.approx((min(across), min(along), max(across), max(along)), abs=1e-4)


def test_bounds_take_in_every_shape_of_a_mark():
    shapes = (
        Dots(((0.0, 0.0),), 0.5, INK),
        Strokes((((2.0, 2.0), (3.0, 3.0)),), Style("ink", 0.2)),
        Words("A", (-5.0, 0.0), 1.0, "ink", align="right"),
    )
    left, low, right, high = mark("x", "cone", Layer.KIT, shapes).bounds
    assert left < -5.5
    assert low == -0.5
    assert right == high == 3.1


def test_marks_of_equal_shapes_are_equal():
    def one(x):
        return mark("x", "cone", Layer.KIT, (Dots(((x, 0.0),), 0.5, INK),))

    assert one(1.0) == one(1.0)
    assert one(1.0) != one(1.5)
