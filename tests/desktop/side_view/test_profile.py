"""The side view shows the ball that the numbers fly: its plane, its net, its window."""

import itertools
import math

import pytest

from designer.bundle import sample
from designer.desktop.side_view.profile import profile
from designer.drill.setting import At
from designer.numbers.levels import level
from designer.numbers.shots import numbers_of
from designer.numbers.situation import situation
from designer.storage.reading import open_drill


def seen(name, at, shot):
    here = situation(open_drill(sample(f"{name}.drill.json")).drill, At(at), level("club"))
    numbers = numbers_of(here).shot(shot)
    return here, numbers, profile(here, numbers)


def test_it_goes_from_the_contact_to_the_bounce():
    _, numbers, side = seen("wide-start", "p-fed", "reply")
    start, end = numbers.strike.flight.states[0], numbers.strike.flight.landing
    assert side.flight[0] == pytest.approx((0.0, start.z))
    assert side.flight[-1] == pytest.approx((math.dist(start.place, end.place), end.z))
    assert side.after[0][0] == pytest.approx(side.flight[-1][0])


def test_the_net_is_as_high_as_it_is_there_and_the_ball_as_far_over_it_as_the_numbers_say():
    here, numbers, side = seen("wide-start", "p-fed", "reply")
    along, height = side.net
    # ITF Rules of Tennis, rule 1: 0.914 m at the centre, 1.07 m at the posts.
    assert 0.914 - 1e-3 <= height <= 1.07 + 1e-3
    under = [(a, b) for a, b in itertools.pairwise(side.flight) if a[0] <= along <= b[0]]
    a, b = under[0]
    share = (along - a[0]) / (b[0] - a[0])
    ball = a[1] + share * (b[1] - a[1])
    assert ball - here.around.ball.radius - height == pytest.approx(numbers.strike.clearance, abs=0.01)


def test_the_lowest_ball_of_the_window_grazes_the_net_and_the_highest_lands_on_the_edge():
    here, numbers, side = seen("wide-start", "p-fed", "reply")
    assert numbers.strike.window.too_low == "the net"
    low, high = side.window
    along, height = side.net
    a, b = next((a, b) for a, b in itertools.pairwise(low) if a[0] <= along <= b[0])
    at_net = a[1] + (along - a[0]) / (b[0] - a[0]) * (b[1] - a[1])
    assert at_net - here.around.ball.radius == pytest.approx(height, abs=0.06)
    assert high[-1][0] == pytest.approx(side.inside[1], abs=0.1)


def test_a_ball_is_shown_as_in_from_the_net_to_the_edge_of_the_court():
    _, _, side = seen("wide-start", "p-fed", "reply")
    start, end = side.inside
    assert start == pytest.approx(side.net[0], abs=1e-6)
    assert start < side.flight[-1][0] < end


def test_whoever_meets_the_ball_stands_on_its_way():
    _, numbers, side = seen("wide-start", "p-fed", "feed")
    (met,) = side.met
    assert met.letter == "A"
    assert met.at[1] == pytest.approx(numbers.meetings[0].height)
    assert side.ends[1] >= met.at[0]


def test_a_thrown_ball_that_stays_at_its_end_has_no_net_and_a_ball_without_landing_no_picture():
    _, _, side = seen("hoop-red", "p-hand", "throw")
    assert side.net is None
    assert side.window is None
    assert seen("chalk-line", "p-points", "reply")[2] is None


def test_a_lob_does_not_fly_between_the_curves_of_its_window():
    # The steepest ball that is still in falls just behind the net, so the lob is no line between the two.
    assert seen("wide-start", "p-fed", "reply")[2].is_between
    assert not seen("doubles-six", "p-two", "lob")[2].is_between


def test_whatever_curve_is_shown_has_its_top_in_the_frame():
    for shot, curves in (("feed", 2), ("lob", 1)):
        side = seen("doubles-six", "p-two", shot)[2]
        assert len(side.edges) == curves
        assert all(height <= side.top for line in (side.flight, *side.edges) for _, height in line)
