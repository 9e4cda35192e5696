"""Situations to start from: laid out on every court as the rules have it, and readable as play at once."""

from random import Random

import pytest

from designer.court.standards import court_names, ground
from designer.desktop.blank import blank
from designer.desktop.situations import SITUATIONS, with_situation
from designer.drill.drill import Drill
from designer.drill.setting import main_setting, setting_at
from designer.play.sequence import sequence
from designer.review.checks import checks

BY_KEY = {situation.key: situation for situation in SITUATIONS}


def laid(key, court="tennis", hand="right"):
    source = Random(3)
    drill = blank(source, court)
    return with_situation(drill, main_setting(drill), BY_KEY[key], source, hand)


def setting_of(drill):
    return setting_at(drill, main_setting(drill))


@pytest.mark.parametrize("court", court_names())
@pytest.mark.parametrize("key", BY_KEY)
def test_each_is_a_whole_drill_on_every_court_without_an_error(key, court):
    drill = laid(key, court)
    assert Drill.model_validate(drill.model_dump()) == drill
    assert [check.sentence.text for check in checks(drill) if check.weight == "error"] == []
    here, setting = ground(drill.court), setting_of(drill)
    play = sequence(setting, here, drill.jobs)
    assert [step.digit for step in play.steps] == [1, 2]
    assert play.steps[0].hitter != play.steps[1].hitter
    landed = [step.landing for step in play.steps]
    assert all(abs(x) <= here.singles and abs(y) <= here.baseline for x, y in landed)
    assert [step.landing[1] * step.contact[1] < 0 for step in play.steps] == [True, True], "each ball crosses the net"


@pytest.mark.parametrize("key", ["serve", "return"])
def test_a_serve_is_struck_from_behind_the_baseline_into_the_box_diagonally_opposite(key):
    # ITF Rules of Tennis, rules 16 to 18: behind the baseline, between centre mark and sideline, into the diagonal court.
    drill = laid(key)
    here = ground(drill.court)
    (step, _) = sequence(setting_of(drill), here, drill.jobs).steps
    server = setting_of(drill).spot_of(step.hitter).place.at
    x, y = step.landing
    assert abs(server[1]) > here.baseline
    assert 0 < abs(server[0]) < here.singles
    assert server[0] * x < 0
    assert server[1] * y < 0
    assert 0 < abs(x) < here.singles
    assert abs(y) < here.service_line


def test_both_at_the_net_stand_inside_the_service_lines_and_let_nothing_bounce():
    drill = laid("at the net")
    here, setting = ground(drill.court), setting_of(drill)
    assert all(abs(spot.place.at[1]) < here.service_line for spot in setting.spots.values())
    assert {shot.bounces for shot in setting.shots.values()} == {0}


def test_the_short_ball_lands_before_the_service_line_and_is_run_to():
    drill = laid("short ball")
    here, setting = ground(drill.court), setting_of(drill)
    first = sequence(setting, here, drill.jobs).steps[0]
    assert abs(first.landing[1]) < here.service_line
    (run,) = setting.runs.values()
    assert (run.by, run.during) == ("A", first.shot.id)


def test_new_players_hold_the_racket_as_was_asked():
    assert {job.hand for job in laid("rally", hand="left").jobs} == {"left"}
