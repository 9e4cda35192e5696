import pytest

from designer.desktop.canvas.live import moves
from designer.drill.base import place
from designer.drill.edits import delete, move, put
from designer.drill.items import Cone
from designer.drill.rules import Bounces, Rule
from designer.drill.setting import setting_at


def moved(hand, drill):
    return moves(hand.setting, setting_at(drill, hand.view.at))


def test_nothing_changed_is_nothing_to_show(hand):
    found = moved(hand, hand.document.drill)
    assert (dict(found.carried), found.redrawn, found.gone) == ({}, frozenset(), frozenset())


def test_a_thing_that_is_carried_is_not_drawn_anew(hand):
    found = moved(hand, move(hand.document.drill, hand.view.at, ("cone", "zone", "line"), (0.3, -0.2)))
    assert {id: pytest.approx(by) for id, by in found.carried.items()} == dict.fromkeys(
        ("cone", "zone", "line"), (0.3, -0.2)
    )
    assert not found.redrawn


def test_a_player_who_is_carried_takes_the_arrows_that_begin_there(hand):
    found = moved(hand, move(hand.document.drill, hand.view.at, ("spot-b",), (1.0, 0.0)))
    assert set(found.carried) == {"spot-b"}
    assert "feed" in found.redrawn


def test_a_player_who_is_carried_over_the_net_turns_round_and_is_drawn_anew(hand):
    found = moved(hand, move(hand.document.drill, hand.view.at, ("spot-b",), (0.0, -20.0)))
    assert "spot-b" in found.redrawn


def test_arrows_tied_to_a_thing_are_drawn_anew_and_those_before_and_after_them(hand):
    hand.drag_handle("reply", "landing", (-3.0, 9.0))
    found = moved(hand, move(hand.document.drill, hand.view.at, ("zone",), (0.0, 0.5)))
    assert set(found.carried) == {"zone"}
    assert {"reply", "feed"} <= found.redrawn, "the ball of the feed goes on to where the reply is met"


def test_a_thing_that_is_reshaped_is_drawn_anew(hand):
    zone = hand.setting.items["zone"]
    wider = zone.changed(shape=zone.shape.changed(corners=((-4.0, 6.0), (1.0, 11.0))))
    found = moved(hand, put(hand.document.drill, hand.view.at, wider))
    assert found.redrawn == {"zone"}


def test_a_thing_that_changes_its_looks_while_it_is_carried_is_drawn_anew(hand):
    line = hand.setting.items["line"].changed(corners=((4.0, 2.0), (4.0, 5.0)), marked="chalk")
    assert moved(hand, put(hand.document.drill, hand.view.at, line)).redrawn == {"line"}


def test_what_comes_and_what_goes(hand):
    new = put(hand.document.drill, hand.view.at, Cone(kind="cone", id="new", place=place(1.0, 1.0)))
    assert moved(hand, new).redrawn == {"new"}
    found = moved(hand, delete(hand.document.drill, hand.view.at, ("feed",)))
    assert found.gone == {"feed"}
    assert "reply" in found.redrawn


def test_what_stands_on_a_thing_moves_with_it(hand):
    on_zone = Cone(kind="cone", id="tied", place=place(0.5, 0.5).changed(on="zone"))
    hand.document.perform("Add a cone", put(hand.document.drill, hand.view.at, on_zone))
    found = moved(hand, move(hand.document.drill, hand.view.at, ("zone",), (1.0, 0.0)))
    assert found.carried["tied"] == pytest.approx((1.0, 0.0))


def test_a_rule_may_change_the_looks_of_anything_so_all_is_pictured(hand):
    rule = Rule(id="rule", who=("A",), must=Bounces(do="bounces", least=1))
    assert moved(hand, put(hand.document.drill, hand.view.at, rule)) is None
