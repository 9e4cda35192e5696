"""A small target is asked about before it is scolded: what for? The rates are those of ``numbers``, which have oracles."""

import pytest
from review.situations import AT, END, FEED, REPLY, START, WON, A, B, drill, keys, only

from designer.drill.base import place
from designer.drill.conditions import Event, In, Outcome
from designer.drill.items import Area, Hoop, Rectangle
from designer.drill.rules import Keep, Points, Rule
from designer.drill.setting import setting_at
from designer.numbers.accuracy import PURPOSES
from designer.numbers.shots import shot_numbers
from designer.review.numbers import number_checks
from designer.review.purposes import FAR
from designer.storage.reading import read_drill
from designer.storage.writing import drill_bytes

CORNER = Area(
    kind="area", id="corner", name="corner", shape=Rectangle(form="rectangle", corners=((-3.2, 9.5), (-1.2, 11.5)))
)
AIMED = REPLY.changed(to=place(-2.2, 10.5))
LANDS = Event(what="landed", where=(In(area="corner", judged="bounce", line="in"),))
HIT = Points(id="hit", on=(LANDS,), gives=Outcome(then="points", value=1))
RULE = Rule(id="aim", of=("reply",), must=Keep(do="keep", where=({"area": "corner"},)))
RALLY = (A, B, FEED, AIMED, START, CORNER)


def found(whole, level="club"):
    return tuple(number_checks(whole, AT, level))


def chance(whole):
    return shot_numbers(whole, AT, "club").shot("reply").targets[0].chance


@pytest.mark.parametrize(
    ("records", "keeper"),
    [((RULE,), "aim"), ((HIT,), "hit"), ((AIMED.changed(to={"on": "corner"}),), "corner")],
    ids=["a rule that costs nothing", "points and no others", "only drawn at"],
)
def test_nobody_is_scolded_for_a_target_before_it_is_said_what_it_is_for(records, keeper):
    whole = drill(*(r for r in RALLY if r.id not in {each.id for each in records}), *records)
    assert 0.05 < chance(whole) < FAR * PURPOSES["in a row"][0]
    asked = only(found(whole), "target-purpose")
    assert asked.weight == "suggestion"
    assert "target-rate" not in keys(found(whole))
    assert [answer.words for answer in asked.answers] == ["a run in a row", "the normal aim of the drill", "a bonus"]
    for answer, purpose in zip(asked.answers, ("in a row", "normal aim", "bonus"), strict=True):
        given = answer.give(whole)
        assert setting_at(given, AT).find(keeper).purpose == purpose
        assert "target-purpose" not in keys(found(given))
        assert read_drill(drill_bytes(given), "given.drill.json").drill == given


def test_the_same_target_is_too_small_for_a_row_and_right_for_a_bonus():
    asked = only(found(drill(*RALLY, HIT)), "target-purpose")
    row, _, bonus = (answer.give(drill(*RALLY, HIT)) for answer in asked.answers)
    scolded = only(found(row), "target-rate")
    assert scolded.weight == "caution"
    assert "eight to ten balls in ten" in scolded.sentence.text
    assert set(scolded.about) == {"reply", "corner", "hit"}
    assert "target-rate" not in keys(found(bonus))


@pytest.mark.parametrize(
    ("records", "wish"),
    [
        ((HIT, END.changed(kind="goal", to=10, running=True)), "in a row"),
        ((RULE.changed(breach=Outcome(then="count to zero")),), "in a row"),
        ((HIT, WON), None),
    ],
)
def test_where_the_scoring_says_what_it_is_for_nobody_is_asked(records, wish):
    said = found(drill(*RALLY, *records))
    assert "target-purpose" not in keys(said)
    assert ("target-rate" in keys(said)) == (wish is not None)


def test_a_bonus_that_every_ball_earns_is_none_and_a_hoop_is_a_target_too():
    court = CORNER.changed(shape=Rectangle(form="rectangle", corners=((-4.1148, 1.0), (4.1148, 11.8872))))
    easy = drill(A, B, FEED, REPLY.changed(to=place(-1.0, 7.0)), START, court, HIT, WON)
    assert only(found(easy, "tour"), "bonus-easy").weight == "suggestion"
    hoop = Hoop(kind="hoop", id="hoop", place=place(-2.2, 10.5), purpose="bonus")
    small = drill(*RALLY[:3], REPLY.changed(to={"on": "hoop"}), START, hoop)
    assert "two to four balls in ten is usual" in only(found(small), "target-rate").sentence.text


def test_children_and_what_is_hit_often_are_not_asked_about():
    assert "target-purpose" not in keys(found(drill(*RALLY, HIT, age=(8, 10))))
    half = CORNER.changed(shape=Rectangle(form="rectangle", corners=((-4.1148, 1.0), (1.0, 11.8872))))
    assert "target-purpose" not in keys(found(drill(*RALLY[:-1], half, HIT)))
