import pytest

from designer.drill.base import place
from designer.drill.items import Area, Rectangle
from designer.drill.movement import Shot
from designer.drill.people import Spot
from designer.numbers.levels import level
from designer.numbers.situation import court_box, half_width, inside_by, situation

BASELINE, SINGLES, DOUBLES, SERVICE = 11.8872, 4.1148, 5.4864, 6.4008


def test_what_had_to_be_assumed_is_said(drawn, rally):
    assert drawn(*rally).notices == ()
    found = drawn(*rally, surface=None, wet=True).notices
    assert found == (
        "The surface is not said; the numbers are those of a hard court.",
        "The court is wet; the numbers are those of a dry one.",
    )


def test_singles_or_doubles_by_who_plays(drawn, rally):
    assert court_box(drawn(*rally), "far") == (-SINGLES, SINGLES, 0.0, BASELINE)
    partners = (
        Spot(id="spot-c", job="C", place=place(2, -3)),
        Spot(id="spot-d", job="D", place=place(2, 3)),
    )
    four = drawn(*rally, *partners, jobs="ABCD")
    assert court_box(four, "near") == (-DOUBLES, DOUBLES, -BASELINE, 0.0)
    assert half_width(four) == DOUBLES
    waiting = tuple(spot.changed(task="waits") for spot in partners)
    assert half_width(drawn(*rally, *waiting, jobs="ABCD")) == SINGLES


def test_a_serve_must_land_in_the_box_it_is_aimed_at(drawn):
    serve = Shot(id="serve", by="B", stroke="serve", contact=place(-0.5, BASELINE), to=place(2.4, -5.0))
    here = drawn(serve)
    assert here.box(here.sequence.steps[0]) == (0.0, SINGLES, -SERVICE, 0.0)


def test_the_youngest_age_slows_the_runners_down(drawn, rally):
    assert drawn(*rally, age=(7, 9)).level.movement.top_speed < drawn(*rally).level.movement.top_speed
    assert drawn(*rally, age=(30, 40)).level.movement == level("tournament").movement


def test_a_coach_feeds_at_least_like_a_club_player(drawn, rally):
    here = drawn(*rally, players="starter", coach=("B",))
    assert here.level_of("B") == level("club")
    assert here.level_of("A") == level("starter")


def test_drag_can_be_set(drawn, rally):
    here = drawn(*rally)
    at = next(iter(here.drill.progressions))
    from designer.drill.setting import At

    assert situation(here.drill, At(at.id), here.level, drag=0.6).around.ball.drag == 0.6


def test_how_far_inside_a_place_is():
    far = (-SINGLES, SINGLES, 0.0, BASELINE)
    assert inside_by((0.0, 10.8872), far) == pytest.approx(1.0)
    assert inside_by((4.0, 5.0), far) == pytest.approx(0.1148)
    # The net is no line: a ball just over it is inside by what it is from the sides.
    assert inside_by((0.0, 0.5), far) == pytest.approx(SINGLES)
    assert inside_by((0.0, 12.0), far) < 0


def test_a_ball_played_to_a_volleyer_arrives_in_the_air(drawn):
    feed = Shot(id="feed", by="B", stroke="racket feed", contact=place(0, 6), to=place(0.2, -3.0), bounces=0)
    volley = Shot(id="volley", by="A", after="feed", stroke="volley", contact=place(0.0, -3.0), to=place(0, 8))
    here = drawn(feed, volley)
    wanted = here.wanted(here.sequence.step("feed"))
    assert wanted.arrives == level("tournament").habit("volley").height.number
    deep = drawn(feed.changed(to=place(0.2, -9.0)), volley)
    assert deep.wanted(deep.sequence.step("feed")).arrives is None


def test_what_is_in_play_can_be_an_area(drawn, rally):
    half = Area(id="half", kind="area", shape=Rectangle(form="rectangle", corners=((-4.0, 0.0), (0.0, 10.0))))
    from dataclasses import replace

    here = drawn(*rally, half)
    assert court_box(replace(here, setting=replace(here.setting, in_play="half")), "far") == (-4.0, 0.0, 0.0, 10.0)
    assert court_box(replace(here, setting=replace(here.setting, in_play="right half")), "near") == (
        0.0,
        SINGLES,
        -BASELINE,
        0.0,
    )


def test_a_shadow_swing_and_a_ball_to_anywhere_have_no_numbers(drawn):
    here = drawn(Shot(id="swing", by="A", stroke="shadow swing", to=place(0, 9)), Shot(id="free", by="B"))
    assert [here.strike(step) for step in here.sequence.steps] == [None, None]
