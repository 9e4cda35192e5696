"""The inverse of flights: against windows solved outside the program, and against flying the answer."""

import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from designer.court.standards import ground
from designer.drill.drill import Court
from designer.numbers.aiming import (
    Hit,
    check_contact,
    fly,
    high_ball,
    least_speed,
    low_ball,
    ways_to,
    window,
)
from designer.numbers.balls import ball
from designer.numbers.problems import Impossible, OutOfReach
from designer.numbers.surfaces import surface
from designer.numbers.surroundings import Surroundings

BASELINE = 11.8872
SINGLES = (-4.1148, 4.1148, 0.0, BASELINE)
TENNIS = Surroundings(ground(Court()), ball(), surface())


def test_the_angle_that_lands_a_metre_inside(around):
    # Solved with scipy outside the program: 12.0715° at 30 m/s, 2000 rpm, from 1.0 m.
    arc = low_ball(Hit((0.0, -BASELINE), 1.0, 30, 2000), (0.0, BASELINE - 1), around)
    assert arc.angle == pytest.approx(12.0715, abs=6e-5)


# Solved with scipy outside the program: straight ahead from the baseline at 1.0 m; low edge just over the net's middle,
# high edge on the outer edge of the baseline.
@pytest.mark.parametrize(
    ("speed", "rpm", "low", "high", "degrees"),
    [
        (20, 0, 9.823, 25.312, 15.489),
        (25, 0, 6.114, 13.484, 7.369),
        (25, 2000, 8.524, 19.105, 10.581),
        (25, 3000, 9.155, 20.535, 11.380),
        (30, 0, 4.150, 8.360, 4.210),
        (30, 1000, 5.428, 11.211, 5.784),
        (30, 2000, 6.276, 13.061, 6.785),
        (30, 3000, 6.880, 14.359, 7.479),
        (35, 0, 2.977, 5.447, 2.471),
        (35, 2000, 4.884, 9.589, 4.705),
        (35, 3000, 5.461, 10.809, 5.347),
        (40, 3000, 4.501, 8.489, 3.988),
    ],
)
def test_launch_windows(around, speed, rpm, low, high, degrees):
    hit = Hit((0.0, -BASELINE), 1.0, speed, rpm)
    near = low_ball(hit, (0.0, 9.0), around).angle
    found = window(hit, (0.0, BASELINE), SINGLES, around, near=near)
    assert (found.low, found.high, found.degrees) == pytest.approx((low, high, degrees), abs=6e-4)
    assert (found.too_low, found.too_high) == ("the net", "the back line")


def test_a_serves_window_is_about_two_degrees(around):
    # H. Brody 1987 by R. Cross, Ball Trajectories: about two degrees, smaller when faster or from lower.
    box = (-4.1148, 0.0, 0.0, 6.4008)

    def degrees(speed, height, rpm=0):
        hit = Hit((0.3, -BASELINE), height, speed, rpm)
        near = low_ball(hit, (-2.0, 5.9), around).angle
        return window(hit, (-2.0, 5.9), box, around, near=near).degrees

    usual = degrees(40, 2.7)
    assert 1.5 < usual < 2.6
    assert degrees(50, 2.7) < usual < degrees(40, 2.9)
    assert degrees(40, 2.7, 2000) > usual


places = st.tuples(st.floats(-4, 4), st.floats(2, 11.5))


@settings(max_examples=40)
@given(place=places, speed=st.floats(15, 40), rpm=st.floats(-1500, 3000), side=st.floats(-1500, 1500))
def test_what_is_found_lands_there(place, speed, rpm, side):
    hit = Hit((1.0, -BASELINE - 0.5), 1.0, speed, rpm, side)
    ways = ways_to(hit, place, TENNIS)
    far = math.hypot(place[0] - 1.0, place[1] + BASELINE + 0.5)
    assert (ways.low is None) == (ways.farthest < far)
    for arc in (ways.low, ways.high):
        if arc is not None:
            assert arc.flight.landing.place == pytest.approx(place, abs=1e-4)
            assert arc.flight.states[0].speed == pytest.approx(speed)
    if ways.low and ways.high:
        assert ways.low.angle <= ways.high.angle


def test_too_slow_has_no_solution_and_says_how_far(around):
    ways = ways_to(Hit((0.0, -BASELINE), 1.0, 10, 0), (0.0, 9.0), around)
    assert (ways.low, ways.high) == (None, None)
    assert 8 < ways.farthest < 12
    assert high_ball(Hit((0.0, -BASELINE), 1.0, 10, 0), (0.0, 9.0), around) is None


def test_the_farthest_ball_is_the_last_that_has_a_solution(around):
    hit = Hit((0.0, -BASELINE), 1.0, 16, 0)
    far = ways_to(hit, (0.0, 9.0), around).farthest
    assert low_ball(hit, (0.0, far - 0.01 - BASELINE), around) is not None
    assert low_ball(hit, (0.0, far + 0.01 - BASELINE), around) is None


def test_the_least_speed_is_just_enough(around):
    hit = Hit((0.0, -BASELINE), 1.0, 20, 500)
    least = least_speed(hit, (0.0, 11.0), around, fastest=60)
    assert low_ball(Hit((0.0, -BASELINE), 1.0, least + 0.05, 500), (0.0, 11.0), around) is not None
    assert low_ball(Hit((0.0, -BASELINE), 1.0, least - 0.05, 500), (0.0, 11.0), around) is None
    assert least_speed(hit, (0.0, 11.0), around, fastest=10) is None


def test_a_window_ends_where_the_flight_does(around):
    hit = Hit((3.0, -BASELINE), 1.0, 26, 1500)
    near = low_ball(hit, (-3.0, 8.0), around)
    towards = near.flight.states[1].place
    found = window(hit, towards, SINGLES, around, near=near.angle)
    low = fly(hit, towards, found.low, around)
    assert around.clears(low) == pytest.approx(0, abs=1e-3)
    assert found.too_high == "the sideline"
    assert abs(fly(hit, towards, found.high, around).landing.x) == pytest.approx(4.1148, abs=1e-3)


def test_a_ball_that_does_not_clear_the_net_has_no_window(around):
    with pytest.raises(OutOfReach):
        window(Hit((0.0, -BASELINE), 1.0, 30, 2000), (0.0, BASELINE), SINGLES, around, near=3.0)


def test_contacts_that_cannot_be(around):
    with pytest.raises(Impossible, match=r"behind the fence, 0\.00 m from the middle and 19\.00 m from the net"):
        check_contact(Hit((0.0, -19.0), 1.0, 20), around)
    with pytest.raises(Impossible, match=r"cannot be lower than 0\.0335 m"):
        check_contact(Hit((0.0, -12.0), 0.0, 20), around)
    check_contact(Hit((0.0, -12.8), 1.0, 20), around)
