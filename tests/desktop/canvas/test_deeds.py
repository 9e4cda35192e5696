from designer.desktop.canvas import deeds
from designer.drill.conditions import In
from designer.drill.edits import put
from designer.drill.rules import Keep, Rule


def test_the_walk_goes_by_people_then_play_then_kit(hand):
    assert deeds.step_order(hand.setting) == (
        "spot-a",
        "spot-b",
        "feed",
        "wide",
        "reply",
        "back",
        "cone",
        "zone",
        "line",
    )


def test_walking_picks_one_thing_after_another_and_lets_go_past_the_end(hand):
    walked = []
    while deeds.walk(hand.bench):
        walked += hand.view.selection
    assert tuple(walked) == deeds.step_order(hand.setting)
    assert hand.view.selection == frozenset()
    assert deeds.walk(hand.bench, back=True)
    assert hand.view.selection == {"line"}


def test_the_walk_is_complete(hand):
    assert set(deeds.step_order(hand.setting)) == deeds.on_court(hand.setting)


def test_all_that_is_drawn_is_picked(hand):
    deeds.pick_all(hand.bench)
    assert hand.view.selection == deeds.on_court(hand.setting)


def test_rules_that_are_picked_in_the_card_are_not_deleted_by_a_key_on_the_court(hand):
    from designer.drill.conditions import Event, Outcome
    from designer.drill.edits import put
    from designer.drill.rules import Points

    points = Points(id="rally", on=(Event(what="won"),), gives=Outcome(then="points", value=1))
    hand.document.perform("Points", put(hand.document.drill, hand.view.at, points))
    hand.view.select(("rally",))
    assert not deeds.delete_picked(hand.bench)
    assert "rally" in hand.setting.points


def test_a_nudge_past_the_end_of_the_drawing_is_refused_in_words(hand):
    hand.view.select(("cone",))
    deeds.nudge_picked(hand.bench, (99.0, 0.0))
    assert hand.setting.items["cone"].place.at == (2.0, -9.0)
    assert hand.said == ["That is as far as the drawing goes."]


def test_a_copy_that_would_leave_the_drawing_is_refused_in_words(hand):
    deeds_before = hand.document.stack.count()
    hand.drag((2.0, -9.0), (2.0, -49.0))
    hand.view.select(("cone",))
    for _ in range(60):
        deeds.nudge_picked(hand.bench, (0.0, -0.9144))
    deeds.duplicate_picked(hand.bench)
    assert "There is no room for a copy there." in hand.said
    assert hand.document.stack.count() <= deeds_before + 2


def test_deleting_what_a_rule_needs_is_said_and_can_be_undone(hand):
    keep = Keep(do="keep", where=(In(area="zone", judged="bounce"),))
    rule = Rule(id="r", who=("A",), must=keep)
    hand.document.perform("Rule", put(hand.document.drill, hand.view.at, rule))
    hand.view.select(("zone",))
    assert deeds.delete_picked(hand.bench)
    assert hand.said == ["The rule still speaks of what is gone. Undo brings it back."]
    hand.document.undo()
    assert "zone" in hand.setting.items
    hand.view.select(("cone",))
    deeds.delete_picked(hand.bench)
    assert len(hand.said) == 1, "nothing speaks of the cone"
