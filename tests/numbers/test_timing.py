"""Time there is against time needed. The reach example is worked outside the program (see test_movement)."""

import math

import pytest

from designer.drill.base import place
from designer.drill.movement import Run, Shot
from designer.numbers.movement import path_time, path_to_reach
from designer.numbers.timing import COMFORTABLE, LOWEST, meetings, run_times, verdict


def met(here, shot):
    step = here.sequence.step(shot)
    return meetings(here, step, here.strike(step))


def test_words_for_seconds():
    assert [verdict(spare) for spare in (-0.01, 0.0, COMFORTABLE - 0.01, COMFORTABLE)] == [
        "out of reach",
        "stretched",
        "stretched",
        "comfortable",
    ]


def test_the_canonical_drive_is_met_a_metre_behind_the_baseline(drawn):
    # Solved with scipy outside the program: 30 m/s, 2000 rpm would be 1.13334 s; a tournament junior's 31 m/s, 1800 rpm
    # to the same place is a little quicker.
    hit = Shot(id="hit", by="A", contact=place(0, -11.8872), to=place(0, 10.814))
    back = Shot(id="back", by="B", after="hit", contact=place(0, 12.8872), to=place(0, -9))
    (found,) = met(drawn(hit, back), "hit")
    assert 1.05 < found.there_is < 1.13334
    assert found.aside < 1e-4
    assert found.bounces == 1
    assert 0.6 < found.height < 0.9
    assert found.needed is None  # nobody says where B stands


def test_a_drawn_run_is_timed_along_its_path(drawn, rally):
    bent = Run(id="out", by="A", during="feed", to=place(4.0, -12.0), via=((2.0, -13.0),))
    reply = Shot(id="reply", by="A", after="feed", wing="forehand", contact=place(4.7, -12.0), to=place(-2.0, 9.4))
    here = drawn(*rally[:3], reply, bent)
    (found,) = met(here, "feed")
    movement = here.level.movement
    path = path_to_reach(((0.0, -12.8016), (2.0, -13.0), (4.0, -12.0)), (4.7, -12.0), movement.reach)
    # A fed ball that always goes to one place is known: nobody waits to see it.
    assert found.needed == pytest.approx(path_time(path, movement))
    assert found.spare == pytest.approx(found.there_is - found.needed)
    (run,) = run_times(here, here.sequence.step("feed"), (found,))
    assert run.metres == pytest.approx(math.dist((0, -12.8016), (2, -13)) + math.dist((2, -13), (4, -12)))
    assert run.there_is == found.there_is


def test_every_branch_has_its_meeting(drawn, rally):
    line = Shot(id="line", by="A", after="feed", wing="forehand", to=place(3.0, 9.4))
    here = drawn(*rally, line)
    assert {meeting.shot for meeting in met(here, "feed")} == {"reply", "line"}
    assert [meeting.hitter for meeting in met(here, "reply")] == ["B"]
    assert met(here, "third") == ()


def test_a_choice_of_feeds_has_to_be_seen_first(drawn, rally):
    other = Shot(id="other", by="B", stroke="racket feed", contact=place(0.0, 12.8), to=place(-1.0, -8.5))
    one, two = drawn(*rally), drawn(*rally, other)
    assert met(two, "feed")[0].needed == pytest.approx(met(one, "feed")[0].needed + one.level.movement.delay)


def test_a_wider_ball_leaves_less_time(drawn, rally):
    spares = []
    for x in (0.5, 2.0, 3.8):
        here = drawn(*rally[:3], rally[3].changed(to=place(x, 9.4)), rally[4])
        spares.append(met(here, "reply")[0].spare)
    assert spares == sorted(spares, reverse=True)
    assert spares[0] > spares[2] + 0.3


def test_an_undrawn_contact_is_where_the_ball_is_easily_met(drawn, rally):
    (found,) = met(drawn(*rally), "reply")
    assert found.aside == 0
    assert found.height >= LOWEST
    assert found.problem == ""


def test_a_ball_that_passes_far_from_the_drawn_contact_says_so(drawn, rally):
    astray = rally[4].changed(contact=place(3.5, 12.0))
    (found,) = met(drawn(*rally[:4], astray), "reply")
    assert found.aside > 4
    assert "from where B is drawn to meet it" in found.problem


def test_a_volley_is_met_in_the_air(drawn, rally):
    volley = Shot(id="third", by="B", after="reply", stroke="volley", contact=place(-1.0, 4.0), to=place(2, -8))
    (found,) = met(drawn(*rally[:4], volley), "reply")
    assert found.bounces == 0
    assert found.there_is < 0.7


def test_a_ball_that_bounces_before_the_volleyer_says_so(drawn):
    feed = Shot(id="feed", by="B", stroke="racket feed", contact=place(0, 11), to=place(0, -4.0), bounces=0)
    hit = Shot(id="hit", by="A", after="feed", contact=place(0.0, -11.0), to=place(0, 8))
    (found,) = met(drawn(feed, hit), "feed")
    assert found.problem != ""


def test_a_fed_second_ball_waits_for_nobody(drawn, rally):
    second = Shot(id="second", by="B", after="reply", stroke="racket feed", to=place(0, -9))
    assert met(drawn(*rally[:4], second), "reply") == ()


def test_children_have_more_bounces_if_drawn(drawn, rally):
    feed = rally[2].changed(bounces=2)
    one, two = met(drawn(*rally), "feed")[0], met(drawn(*rally[:2], feed, *rally[3:]), "feed")[0]
    assert two.there_is > one.there_is
    assert (one.bounces, two.bounces) == (1, 2)
