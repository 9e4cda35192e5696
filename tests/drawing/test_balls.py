import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from designer.drawing import balls
from designer.drawing.geometry import Route, contains
from designer.drawing.pen import Pen
from designer.drawing.primitives import Dots, Ellipse, Path

PEN = Pen(1.0)
LEVEL = Route(((0.0, 0.0), (100.0, 0.0)))


def inked(shapes):
    return [shape for shape in shapes if not (shape.style.stroke or shape.style.fill or "").startswith("casing")]


@pytest.mark.parametrize(("kind", "length", "width"), [("ball path", 6.6, 5.2), ("feed", 6.6, 5.2), ("fan", 5.1, 4.1)])
def test_heads_end_a_casing_before_the_bounce_and_their_shafts_reach_into_them(kind, length, width):
    (head,) = inked(balls.head(PEN, LEVEL, kind))
    tip, left, right = head.points
    assert tip == pytest.approx((97.3, 0.0))
    assert tip[0] - left[0] == pytest.approx(length)
    assert math.dist(left, right) == pytest.approx(width)
    (shaft,) = inked(balls.shaft(PEN, LEVEL, kind))
    assert left[0] <= shaft.points[-1][0] < tip[0]


def test_a_feed_is_hollow_and_a_hit_is_full():
    assert inked(balls.head(PEN, LEVEL, "feed"))[0].style.fill == "paper"
    assert inked(balls.head(PEN, LEVEL, "ball path"))[0].style.fill == "ball"


def test_a_path_with_no_room_for_a_line_has_none():
    assert list(balls.shaft(PEN, Route(((0.0, 0.0), (5.0, 0.0))), "ball path")) == []


def test_the_switched_ball_begins_with_a_whole_dash():
    (shaft,) = inked(balls.shaft(Pen(1.0, switched=True), LEVEL, "ball path"))
    assert shaft.style.dash == (4.4, 2.6)
    assert shaft.points[0] == (0.0, 0.0)


def test_a_recovery_ends_on_two_feet_with_toes_to_the_net():
    shapes = inked(balls.recovery(PEN, LEVEL, (0.0, 1.0)))
    feet = [shape for shape in shapes if isinstance(shape, Ellipse)]
    assert math.dist(feet[0].centre, feet[1].centre) == pytest.approx(5.0)
    # The longer radius lies along the toes.
    assert [foot.turn for foot in feet] == [90, 90]
    assert all(foot.radii[0] > foot.radii[1] for foot in feet)
    (dots,) = (shape for shape in shapes if isinstance(shape, Dots))
    gaps = [other[0] - one[0] for one, other in zip(dots.centres, dots.centres[1:], strict=False)]
    assert gaps == [pytest.approx(2.9)] * len(gaps)
    assert dots.centres[-1][0] < feet[0].centre[0] - 2.7


def test_a_run_has_an_open_head():
    *_, head = inked(balls.run(PEN, LEVEL))
    assert not head.closed
    assert head.style.fill is None
    assert head.points[1] == (100.0, 0.0)


around = st.tuples(st.floats(-60, 60), st.floats(-60, 60)).filter(lambda at: math.hypot(*at) > 25)


@given(around)
def test_the_flag_points_at_the_bounce_from_any_side_and_stops_short_of_it(centre):
    _, tip, _ = balls.flag_nib(PEN, (0.0, 0.0), centre, "open")
    assert math.hypot(*tip) == pytest.approx(balls.FLAG_REACH)
    shapes = inked(shape for shape in balls.flag(PEN, (0.0, 0.0), centre) if isinstance(shape, Path))
    box = next(shape.points for shape in shapes if len(shape.points) == 4)
    assert not contains(box, (0.0, 0.0))
