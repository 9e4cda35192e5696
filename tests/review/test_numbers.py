"""Checks that need numbers. The sentences are held to what the numbers themselves say, which have their own oracles."""

import re

import pytest
from hypothesis import given, settings
from review.situations import AT, END, FEED, RALLY, REPLY, A, B, drill, keys, only, run
from strategies import drills

from designer.bundle import sample
from designer.drill.base import place
from designer.drill.drill import Drill
from designer.drill.items import Basket
from designer.drill.movement import Shot
from designer.numbers.shots import shot_numbers
from designer.review.checks import checks
from designer.review.numbers import LATE, number_checks

SAMPLES = sorted(path.name for path in sample().glob("*.drill.json"))
WIDE = Shot(id="wide", by="A", after="feed", contact=place(2.0, -12.5), to=place(-3.0, 6.0))


def found(*records, level="club", **values):
    return tuple(number_checks(drill(*records, **values), AT, level))


def test_a_plain_rally_has_nothing_to_say():
    assert found(*RALLY) == ()


def test_who_comes_too_late_is_named_with_the_seconds():
    # B stands in the left corner behind the baseline and is drawn to meet a hard ball at the other side.
    away = B.changed(place=place(7.0, 13.0))
    answer = Shot(id="answer", by="B", after="reply", contact=place(-3.5, 12.5), to=place(0.0, -9.0))
    records = (A, away, FEED, REPLY.changed(to=place(-3.0, 9.0)), answer, run("B", "reply", -3.5, 12.8))
    late = only(found(*records, level="tournament"), "out-of-reach")
    meeting = shot_numbers(drill(*records), AT, "tournament").shot("reply").meetings[0]
    assert meeting.spare < -LATE
    assert f"{-meeting.spare:.1f} s too late at tournament level" in late.sentence.text
    assert late.weight == "caution"
    assert set(late.about) == {"reply", "answer", "run"}


def test_a_ball_that_nobody_can_hit_so_is_an_error():
    # 60 m is farther than anything that anybody hits.
    far = Shot(id="reply", by="A", after="feed", contact=place(0.0, -40.0), to=place(0.0, 59.0))
    bad = only(found(A, B, FEED, far), "no-launch")
    assert bad.weight == "error"
    assert "cannot be hit as it is drawn" in bad.sentence.text


def test_balls_beyond_the_level_are_said_once_and_only_for_that_level():
    records = (A, B, FEED, REPLY.changed(to=place(-2.0, 11.0)))
    beyond = only(found(*records, level="starter"), "beyond-level")
    assert set(beyond.about) == {"feed", "reply"}
    assert "starter level" in beyond.sentence.text
    assert "beyond-level" not in keys(found(*records, level="tour"))


def test_a_ball_into_the_net_is_said():
    # From behind the baseline nothing comes over a net of 0.9 m and down again 0.3 m behind it.
    low = REPLY.changed(stroke="slice", contact=place(0.0, -12.0), to=place(0.0, 0.3))
    net = only(found(A, B, FEED, low), "net-not-cleared")
    assert net.weight == "caution"
    hit = shot_numbers(drill(A, B, FEED, low), AT).shot("reply").strike
    assert f"{-hit.clearance:.1f} m too low" in net.sentence.text


def test_a_basket_that_is_empty_half_way_is_said_unless_balls_are_picked_up_in_between():
    basket = Basket(kind="basket", id="basket", place=place(1.0, 13.0), balls=10)
    assert "basket-empty" in keys(found(*RALLY, basket, minutes=30))
    assert "basket-empty" not in keys(found(*RALLY, basket.changed(balls=400), minutes=30))
    ten = END.changed(kind="total", to=None, starts=10)
    assert "basket-empty" not in keys(found(*RALLY[:-1], ten, basket, minutes=30))


def test_a_finish_of_hours_is_said():
    assert "finish-too-long" in keys(found(*RALLY[:-1], END.changed(to=30), minutes=4))
    assert "finish-too-long" not in keys(found(*RALLY, minutes=30))


@pytest.mark.parametrize("name", SAMPLES)
@pytest.mark.parametrize("level", ["club", "tournament"])
def test_the_academy_s_own_drills_are_not_scolded(name, level):
    # Their author plays them at these levels. What may be said is a doubt about one ball that is cut off at the net.
    whole = Drill.model_validate_json(sample(name).read_bytes())
    said = [each for each in number_checks(whole, None, level) if each.weight != "suggestion"]
    assert {each.key for each in said} <= {"out-of-reach"}
    assert len(said) <= 1


def test_the_review_makes_them_when_it_is_told_who_plays():
    whole = drill(A, B, FEED, REPLY.changed(to=place(-2.0, 11.0)))
    assert "beyond-level" not in keys(checks(whole))
    assert "beyond-level" in keys(checks(whole, players="starter"))


@given(drills(most_progressions=1))
@settings(max_examples=10)
def test_whatever_is_drawn_the_numbers_never_give_up(whole):
    for each in number_checks(whole, None, "club"):
        assert not re.search(r"\bNone\b|\bnan\b|\binf\b", each.sentence.text)
        assert each.at is not None
