import pytest

from designer.desktop.canvas import arrows
from designer.drill.base import place
from designer.drill.edits import delete, put
from designer.drill.movement import Shot
from designer.drill.people import Spot
from designer.drill.places import anchor


def test_the_next_ball_follows_the_last_one_or_the_one_that_is_picked(hand):
    assert arrows.last_shot(hand.setting).id == "reply"
    assert arrows.last_shot(hand.setting, frozenset({"feed", "cone"})).id == "feed"
    assert arrows.last_shot(delete_all(hand)) is None


def delete_all(hand):
    from designer.drill.setting import setting_at

    return setting_at(delete(hand.document.drill, hand.view.at, ("feed", "reply")), hand.view.at)


def test_a_circle_of_shots_is_counted_without_end(hand):
    ring = (Shot(id="x", by="A", after="y"), Shot(id="y", by="B", after="x"))
    assert arrows.depths(hand.setting.having(*ring))["x"] == 1


def test_somebody_is_where_the_last_run_ended(hand):
    assert arrows.whereabouts(hand.setting, "A") == (0.0, -12.2)
    assert arrows.whereabouts(hand.setting, "B") == (0.0, 12.0)
    assert arrows.whereabouts(hand.setting, "Z") is None


def test_whoever_waits_hits_no_ball(hand):
    waiting = Spot(id="spot-c", job="C", place=place(0.0, 5.0), task="waits")
    hand.document.perform("Wait", put(hand.document.drill, hand.view.at, waiting))
    assert set(arrows.people(hand.setting)) == {"A", "B"}
    assert arrows.nearest_person(hand.setting, (0.0, 5.0)) == "B"


def test_a_ball_is_not_met_by_whoever_has_just_hit_it_unless_nobody_else_is_there(hand):
    assert arrows.nearest_person(hand.setting, (0.0, -10.0)) == "A"
    assert arrows.nearest_person(hand.setting, (0.0, -10.0), but="A") == "B"
    hand.document.perform("Alone", delete(hand.document.drill, hand.view.at, ("spot-b",)))
    assert arrows.nearest_person(hand.setting, (0.0, -10.0), but="A") == "A"


@pytest.mark.parametrize(
    ("end", "during", "purpose"),
    [
        ((2.0, -2.0), None, "approach"),
        ((0.0, -16.0), None, "retreat"),
        ((0.5, -12.3), None, None),
    ],
)
def test_a_run_that_goes_with_no_ball_is_judged_by_its_direction(hand, end, during, purpose):
    hand.document.perform("No runs", delete(hand.document.drill, hand.view.at, ("wide", "back")))
    assert arrows.purpose(hand.setting, "A", end, during) == purpose


def test_a_run_tied_to_a_thing_ends_where_it_was_let_go(hand):
    drill = arrows.with_run(hand.document.drill, hand.view.at, "A", (2.1, -9.2), id="new", under=("cone",))
    hand.document.perform("Run", drill)
    assert anchor(hand.setting, "new") == (2.1, -9.2)
    assert hand.setting.runs["new"].to.on == "cone"
