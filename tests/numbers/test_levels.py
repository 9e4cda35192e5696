"""Levels: complete, in order, and sprint figures against the times they were fitted to."""

import math

import pytest

from designer.drill.movement import Stroke
from designer.numbers.levels import LEVELS, USUAL, level, of_age
from designer.numbers.movement import time_to_cover
from designer.numbers.problems import Impossible, NoSuch


@pytest.mark.parametrize("name", LEVELS)
def test_every_level_knows_every_stroke(name):
    for stroke in Stroke.__args__:
        if stroke != "shadow swing":
            habit = level(name).habit(stroke, "backhand")
            assert habit.speed.number > 0
            assert habit.height.number > 0


@pytest.mark.parametrize("stroke", ["drive", "serve", "second serve", "volley", "lob", "slice"])
def test_better_players_hit_harder(stroke):
    speeds = [level(name).habit(stroke).speed.number for name in LEVELS]
    assert speeds == sorted(speeds)


def test_better_players_run_faster_and_miss_less():
    assert [level(name).movement.top_speed for name in LEVELS] == sorted(
        level(name).movement.top_speed for name in LEVELS
    )
    spreads = [level(name).spread.across for name in LEVELS]
    assert spreads == sorted(spreads, reverse=True)


# Kovalchik & Reid, J. Sports Sci. Med. 16 (2017), table 4, medians, km/h.
@pytest.mark.parametrize(
    ("name", "stroke", "wing", "speed"),
    [
        ("tour", "drive", "forehand", 119),
        ("tour", "drive", "backhand", 108),
        ("tour", "serve", None, 179),
        ("tournament", "drive", "forehand", 113),
        ("tournament", "drive", "backhand", 105),
        ("tournament", "serve", None, 158),
    ],
)
def test_speeds_are_those_of_ball_tracking(name, stroke, wing, speed):
    habit = level(name).habit(stroke, wing)
    assert habit.speed.number * 3.6 == pytest.approx(speed, rel=0.015)
    assert habit.speed.sourced


def test_what_no_source_was_found_for_says_so():
    values = dict(level("club").values)
    assert not values["volley: speed_mps"].sourced
    assert "no source" in values["spread: across_m"].source
    assert values["movement: without_split_step_s"].sourced


# Fernandez-Fernandez, Ulbricht & Ferrauti, Br. J. Sports Med. 48 (2014) i22, table 1: 10 and 20 m, federation boys. The
# gates start 0.3 s after the first move (a choice between 0.2 and 0.5 s, from memory).
@pytest.mark.parametrize(
    ("years", "ten", "twenty"), [(12, 2.04, 3.64), (14, 1.96, 3.47), (16, 1.85, 3.25), (18, 1.77, 3.09)]
)
def test_age_groups_run_their_sprint_times(years, ten, twenty):
    runner = of_age(level("tour"), years).movement
    if years < 18:
        assert time_to_cover(10, runner) - 0.3 == pytest.approx(ten, abs=2e-3)
        assert time_to_cover(20, runner) - 0.3 == pytest.approx(twenty, abs=2e-3)
    else:
        # A tour player's own 8.0 m/s is lower than the fit for the fastest boys.
        assert runner.top_speed == 8.0


# The same fits: seconds to 2.7, 4 and 5 m.
@pytest.mark.parametrize(
    ("years", "times"), [(12, (1.004, 1.276, 1.469)), (14, (0.981, 1.243, 1.429)), (16, (0.944, 1.194, 1.369))]
)
def test_age_groups_over_short_ways(years, times):
    runner = of_age(level("tour"), years).movement
    assert [time_to_cover(metres, runner) for metres in (2.7, 4, 5)] == pytest.approx(times, abs=1e-3)


def test_an_age_never_makes_anybody_faster():
    assert of_age(level("starter"), 16).movement == level("starter").movement
    assert of_age(level("club"), 40) is level("club")
    assert of_age(level("club"), 8).movement.top_speed < of_age(level("club"), 12).movement.top_speed
    with pytest.raises(Impossible, match="expected 1 to 120"):
        of_age(level("club"), 0)


def test_the_spread_of_strong_players():
    # Delgado-García et al., Int. J. Racket Sports Sci. 1(2) (2019) 24: 95 % landing ellipses of 38.8 to 55.5 m² for two
    # advanced players; a normal ellipse of 95 % has the area 5.99146 pi sigma sigma.
    spread = level("tournament").spread
    area = 5.99146 * math.pi * spread.across * spread.along
    assert 38.8 < area < 55.5


def test_split_step():
    # Uzu, Shinya & Oda, J. Sports Sci. 27 (2009) 1233: 868 against 764 ms.
    assert level("tour").movement.without_split_step == pytest.approx(0.868 - 0.764)
    assert level("tour").movement.delay == level("tour").movement.reaction
    assert level("starter").movement.delay == pytest.approx(level("starter").movement.reaction + 0.104)


def test_spread_grows_with_distance_and_feeds_are_steadier():
    club = level(USUAL)
    near, far = club.spread_of("drive", 10), club.spread_of("drive", 20)
    assert (far.across, far.along) == (2 * near.across, 2 * near.along)
    assert club.spread_of("hand feed", 10).across == near.across / 2


def test_one_levels_spread_can_be_fitted():
    own = level("club").with_spread(0.5, "4 of 10")
    assert own.spread.across == level("club").spread.across / 2
    assert own.fitted == "4 of 10"
    assert own != level("club")


def test_an_unknown_level_lists_the_levels():
    with pytest.raises(NoSuch, match="'expert'; there are starter, social, club, tournament, tour"):
        level("expert")
