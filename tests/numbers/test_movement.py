"""Running against the closed form of the exponential sprint (Furusawa, Hill & Parkinson 1927), and scipy live."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from designer.numbers.levels import Movement
from designer.numbers.movement import covered, length, path_time, path_to_reach, time_needed, time_to_cover


def runner(top, tau, reaction=0.25, reach=1.0):
    return Movement(top, tau, reaction, split_step=True, without_split_step=0.104, reach=reach)


# Closed form, worked outside the program.
@pytest.mark.parametrize(
    ("top", "tau", "seconds", "metres"), [(8.0, 0.8, 0.5, 1.0257), (8.0, 0.8, 1.0, 3.4336), (7.0, 1.0, 1.0, 2.5752)]
)
def test_metres_in_so_many_seconds(top, tau, seconds, metres):
    assert covered(seconds, runner(top, tau)) == pytest.approx(metres, abs=6e-5)


@pytest.mark.parametrize(
    ("top", "tau", "metres", "seconds"),
    [
        (8.0, 0.8, 1, 0.4931),
        (8.0, 0.8, 2, 0.7280),
        (8.0, 0.8, 3, 0.9225),
        (8.0, 0.8, 4, 1.0970),
        (8.0, 0.8, 5, 1.2592),
        (8.0, 0.8, 6, 1.4133),
        (8.0, 0.8, 10, 1.9829),
        (7.0, 1.0, 3, 1.0935),
        (7.0, 1.0, 5, 1.4886),
        (7.0, 1.0, 10, 2.3314),
    ],
)
def test_seconds_for_so_many_metres(top, tau, metres, seconds):
    assert time_to_cover(metres, runner(top, tau)) == pytest.approx(seconds, abs=6e-5)


@given(metres=st.floats(0.01, 40), top=st.floats(3, 10), tau=st.floats(0.4, 1.5), speed=st.floats(0, 1))
def test_time_is_the_inverse_of_distance(metres, top, tau, speed):
    movement = runner(top, tau)
    taken = time_to_cover(metres, movement, speed=speed * top * 0.99)
    ahead = -tau * math.log1p(-speed * 0.99)
    assert covered(ahead + taken, movement) - covered(ahead, movement) == pytest.approx(metres, rel=1e-7, abs=1e-9)


def test_the_sprint_solves_its_own_equation():
    from scipy.integrate import solve_ivp

    # dv/dt = (v_max - v)/tau, integrated by scipy.
    found = solve_ivp(lambda _t, s: (s[1], (7.5 - s[1]) / 0.9), (0, 2.0), (0, 0), rtol=1e-11, atol=1e-12)
    assert covered(2.0, runner(7.5, 0.9)) == pytest.approx(found.y[0][-1], abs=1e-8)


def test_reach_example():
    # Worked: the canonical drive is met 1 m behind the baseline 1.13334 s after the hit; 0.25 s to react leaves
    # 0.88334 s, that is 2.07718 m at 7 m/s and 1 s, and a metre of reach.
    movement = runner(7.0, 1.0)
    assert covered(1.13334 - 0.25, movement) == pytest.approx(2.07718, abs=6e-6)
    assert time_needed([(0.0, -12.8872)], (3.07718, -12.8872), movement) == pytest.approx(1.13334, abs=6e-6)


def test_a_ball_within_reach_costs_only_the_reaction():
    assert time_needed([(0.0, -12.0)], (0.9, -12.0), runner(7, 1)) == 0.25
    assert time_needed([(0.0, -12.0)], (0.9, -12.0), runner(7, 1), warned=True) == 0


def test_a_straight_path_costs_no_more_for_being_cut():
    movement = runner(7, 1)
    whole = path_time([(0, 0), (6, 0)], movement)
    assert path_time([(0, 0), (2, 0), (2, 0), (6, 0)], movement) == pytest.approx(whole, abs=1e-9)


@pytest.mark.parametrize("degrees", [30, 90, 150])
def test_corners_cost_time(degrees):
    movement = runner(7, 1)
    turn = math.radians(degrees)
    path = [(0, 0), (3, 0), (3 + 3 * math.cos(turn), 3 * math.sin(turn))]
    straight, stop = path_time([(0, 0), (6, 0)], movement), 2 * path_time([(0, 0), (3, 0)], movement)
    assert straight < path_time(path, movement) <= stop + 1e-9
    assert (path_time(path, movement) == pytest.approx(stop)) == (degrees >= 90)


def test_where_a_path_is_cut_off():
    assert path_to_reach([(0, 0), (4, 0)], (4.7, 0), 1.0)[-1] == pytest.approx((3.7, 0))
    assert path_to_reach([(0, 0)], (0.5, 0.5), 1.0) == ((0, 0),)
    # Past the ball and away: cut where it first comes near.
    assert length(path_to_reach([(0, 0), (10, 0)], (5, 0), 1.0)) == pytest.approx(4)


def test_length():
    assert length([(0, 0), (3, 4), (3, 4), (6, 8)]) == 10
