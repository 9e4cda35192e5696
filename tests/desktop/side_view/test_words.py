"""The few words of a ball are those that the numbers themselves give, rounded to what a coach can use."""

import pytest

from designer.bundle import sample
from designer.desktop.side_view.words import few_words, more_words
from designer.drill.setting import At
from designer.numbers.shots import shot_numbers
from designer.storage.reading import open_drill


def numbers(name, at, shot, level="club"):
    return shot_numbers(open_drill(sample(f"{name}.drill.json")).drill, At(at), level).shot(shot)


def test_time_net_line_and_seconds_to_spare_in_that_order():
    shot = numbers("wide-start", "p-fed", "feed")
    hit, (meeting,) = shot.strike, shot.meetings
    assert few_words(shot) == (
        f"{hit.time:.1f} s; clears the net by {hit.clearance:.1f} m; lands {shot.inside:.1f} m in;"
        f" A has {meeting.spare:.1f} s to spare"
    )


def test_lengths_are_in_feet_for_whoever_counts_in_feet():
    shot = numbers("wide-start", "p-fed", "feed")
    # A foot is 0.3048 m: international yard and pound agreement, 1959.
    assert f"clears the net by {shot.strike.clearance / 0.3048:.1f} ft" in few_words(shot, "feet")


def test_somebody_too_late_is_said_with_the_seconds():
    shot = numbers("doubles-six", "p-two", "second", "tournament")
    late = next(each for each in shot.meetings if each.spare < 0)
    assert f"{late.hitter} comes {-late.spare:.1f} s too late" in few_words(shot)


def test_each_hitter_is_named_once_though_several_balls_may_follow():
    shot = numbers("short-approach", "p-points", "approach")
    assert len(shot.meetings) == 3
    assert few_words(shot).count("to spare") == 1


def test_a_problem_has_the_last_word():
    shot = numbers("one-lands-short", "p-together", "reply", "starter")
    assert shot.problem
    assert few_words(shot).endswith(shot.problem.rstrip("."))


def test_a_ball_without_a_landing_place_says_so():
    assert few_words(numbers("chalk-line", "p-points", "reply")) == "no landing place is drawn"


@pytest.mark.parametrize("level", ["club", "tour"])
def test_what_the_speed_rests_on_is_said(level):
    shot = numbers("a-chooses", "p-change", "b1", level)
    assert f"({shot.habit.speed.basis})" in more_words(shot, f"{level} level")
    assert f"At {level} level" in more_words(shot, f"{level} level")
