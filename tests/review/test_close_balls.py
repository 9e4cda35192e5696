"""Hard balls at people at the net. Common practice, no source; the rest is held by the table of faults."""

import pytest
from review.situations import only, spot, told

from designer.drill.base import place
from designer.drill.movement import Shot
from designer.review.close_balls import close_ball_cautions


def found(stroke, from_y, at_y, *, pace=None, aside=0.0, **values):
    """A ball of A's to B, who stands at ``at_y`` and plays."""
    near, far = spot("A", 0.0, from_y), spot("B", aside, at_y)
    ball = Shot(id="ball", by="A", stroke=stroke, pace=pace, contact=place(0.0, from_y), to=place(0.0, at_y))
    back = Shot(id="back", by="B", after="ball", stroke="volley", to=place(0.0, -6.0))
    return tuple(close_ball_cautions(told(near, far, ball, back, **values)))


@pytest.mark.parametrize(
    ("stroke", "from_y"), [("drive", -3.0), ("racket feed", -2.5), ("machine feed", -4.0), ("smash", -5.0)]
)
def test_a_hard_ball_at_somebody_a_few_metres_away_is_a_danger(stroke, from_y):
    hard = only(found(stroke, from_y, 3.0), "hard-at-net")
    assert hard.danger
    assert set(hard.about) == {"ball", "spot-b"}


def test_volleys_soft_balls_balls_to_the_side_and_balls_from_the_baseline_are_practice():
    assert found("volley", -3.0, 3.0) == ()
    assert found("hand feed", -2.0, 2.0) == ()
    assert found("drive", -3.0, 3.0, pace="soft") == ()
    assert found("drive", -3.0, 3.0, aside=1.5) == ()
    assert found("drive", -11.9, 3.0) == ()


def test_children_have_less_time():
    assert found("racket feed", -4.0, 3.0) == ()
    assert only(found("racket feed", -4.0, 3.0, age=(8, 9)), "hard-at-net")
