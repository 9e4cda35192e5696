"""Clearance over the net. Heights of the net: ITF Rules of Tennis, Rule 1; a straight line between strap and support."""

import pytest

from designer.court.standards import ground
from designer.drill.drill import Court
from designer.numbers.balls import ball
from designer.numbers.flight import flight, launch
from designer.numbers.surfaces import surface
from designer.numbers.surroundings import Surroundings


def over(court, x):
    around = Surroundings(ground(court), ball(), surface())
    return around.clears(flight(launch((x, -11.8872), (x, 0), height=1, speed=30, angle=12, topspin=2000), ball()))


def test_the_canonical_drive_clears_the_middle():
    # Solved with scipy outside the program: the bottom of the ball 1.17977 m over 0.9144 m.
    assert over(Court(), 0.0) == pytest.approx(1.17977, abs=6e-6)


@pytest.mark.parametrize(
    ("supports", "x", "net"), [("posts", 4.1148, 1.01237), ("sticks", 4.1148, 1.03909), ("posts", -2, 0.96202)]
)
def test_the_net_is_higher_at_the_side_and_higher_still_with_sticks(supports, x, net):
    assert over(Court(supports=supports), x) == pytest.approx(1.17977 + 0.9144 - net, abs=1e-5)


def test_beyond_the_posts_there_is_no_net():
    assert over(Court(), 6.9) == pytest.approx(1.17977 + 0.9144, abs=1e-5)


def test_what_lies_behind_the_fence():
    around = Surroundings(ground(Court()), ball(), surface())
    assert not around.behind_the_fence((0.0, -17.3))
    assert around.behind_the_fence((0.0, -17.9))
    assert around.behind_the_fence((9.2, 3.0))


def test_a_ball_that_falls_short_clears_nothing():
    around = Surroundings(ground(Court()), ball(), surface())
    assert around.clears(flight(launch((0, -11.8872), (0, 0), height=1, speed=8, angle=25), ball())) is None
