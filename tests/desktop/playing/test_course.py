"""A sequence in time: what is seen agrees with what the numbers say of flights, meetings and runs."""

import itertools
import math

import pytest

from designer.bundle import sample
from designer.desktop.playing.course import Course
from designer.drill.drill import Drill, Progression
from designer.drill.setting import At
from designer.numbers.levels import level
from designer.numbers.movement import path_time
from designer.numbers.problems import Impossible
from designer.numbers.shots import numbers_of
from designer.numbers.situation import situation
from designer.storage.reading import open_drill


def here(name, at):
    return situation(open_drill(sample(f"{name}.drill.json")).drill, At(at), level("club"))


@pytest.fixture
def wide():
    return here("wide-start", "p-fed")


@pytest.fixture
def approach():
    return here("short-approach", "p-points")


def test_each_ball_is_hit_when_the_one_before_is_met(wide):
    course, numbers = Course(wide), numbers_of(wide)
    feed, reply, _ = course.legs
    assert reply.starts == pytest.approx(numbers.shot("feed").meetings[0].there_is)
    assert feed.ends == pytest.approx(reply.starts)


def test_a_new_ball_waits_until_the_old_one_has_bounced_twice(wide):
    _, reply, second = Course(wide).legs
    assert second.starts > reply.starts + reply.strike.after.landing.time


def test_the_ball_bounces_where_and_when_it_is_drawn_to(wide):
    course = Course(wide)
    leg = course.legs[0]
    x, y, height = course.at(leg.strike.flight.landing.time).ball
    assert (x, y) == pytest.approx(leg.step.landing, abs=0.02)
    assert height == pytest.approx(wide.around.ball.radius, abs=0.01)
    assert course.at(leg.strike.flight.landing.time / 2).ball[2] > 1.0


def test_nobody_is_faster_than_the_level_runs(wide):
    course, movement = Course(wide), wide.level.movement
    moments = [course.at(number * 0.02) for number in range(round(course.ends / 0.02))]
    for before, after in itertools.pairwise(moments):
        for letter, place in after.people.items():
            assert math.dist(before.people[letter], place) <= movement.top_speed * 0.02 + 1e-9


def test_a_run_takes_as_long_as_the_numbers_say(wide):
    course = Course(wide)
    path = wide.sequence.run_paths["out"]
    takes = path_time(path, wide.level.movement)
    assert course.at(0.0).people["A"] == pytest.approx(path[0])
    assert course.at(takes + 0.01).people["A"] == pytest.approx(path[-1], abs=0.01)
    assert math.dist(course.at(takes * 0.5).people["A"], path[-1]) > 0.3


def test_whoever_waits_stays(wide):
    course = Course(wide)
    assert course.at(course.ends).people["C"] == course.at(0.0).people["C"]


def test_it_stops_where_there_is_a_choice_and_goes_on_with_what_is_chosen(approach):
    course = Course(approach)
    assert {step.shot.id for step in course.choices} == {"pass-right", "lob", "pass-left"}
    ended = course.ends
    assert not course.choose("feed")
    assert course.choose("lob")
    assert course.choices == ()
    assert course.legs[-1].step.shot.id == "lob"
    assert course.ends > ended


def test_what_was_chosen_is_forgotten_on_the_way_back(approach):
    course = Course(approach)
    course.choose("lob")
    course.back_to(1)
    assert [leg.step.shot.id for leg in course.legs] == ["feed", "approach"]
    assert course.choose("pass-left")


def test_several_first_balls_are_a_choice_before_anything_moves():
    course = Course(here("volley-four", "p-together"))
    assert course.at(0.0) is None
    assert len(course.choices) == 2
    assert course.choose(course.choices[1].shot.id)
    assert course.at(0.0) is not None


def test_it_begins_at_any_ball_with_people_where_they_are_by_then(wide):
    course = Course(wide, "reply")
    assert course.legs[0].step.shot.id == "reply"
    assert course.at(0.0).people["A"] == pytest.approx(wide.sequence.person_at("A", "reply"))


def test_a_ball_without_a_landing_place_is_passed_over():
    course = Course(here("chalk-line", "p-points"))
    moments = [course.at(leg.starts + 0.1) for leg in course.legs]
    assert [moment.ball is None for moment in moments] == [False, True, True]


def test_nothing_to_play_is_said_in_a_sentence():
    with pytest.raises(Impossible, match="draw one first"):
        Course(situation(Drill(id="d", progressions=(Progression(id="p"),)), At("p"), level("club")))
