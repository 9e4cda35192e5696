from designer.desktop.canvas.deeds import duplicate_picked
from designer.desktop.canvas.names import called, description, full_name


def test_steps_are_named_after_what_they_are_done_to(hand):
    setting = hand.setting
    names = ("cone", "spot-a", "feed", "reply", "wide", "zone")
    assert [called(setting, (id,)) for id in names] == ["cone", "player A", "feed", "ball", "run of A", "area"]
    assert called(setting, ("cone", "zone", "feed")) == "3 items"


def test_things_of_a_kind_are_numbered_where_there_are_several(hand):
    assert full_name(hand.setting, "cone") == "Cone"
    hand.view.select(("cone",))
    duplicate_picked(hand.bench)
    (copy,) = hand.view.selection
    assert full_name(hand.setting, "cone") == "Cone 1"
    assert full_name(hand.setting, copy) == "Cone 2"
    assert full_name(hand.setting, "reply") == "Ball of A"
    assert [full_name(hand.setting, run) for run in ("wide", "back")] == ["Run 1 of A", "Run 2 of A"]
    assert full_name(hand.setting, "gone") == ""


def test_where_a_thing_is_is_said_from_the_painted_lines(hand):
    hand.view.set_snapping(True)
    hand.drag((2.0, -9.0), (2.74, -10.95))
    words = description(hand.setting, hand.bench.ground, "cone", "rackets")
    assert words == "2 rackets in from the right singles line, 1 stride inside the baseline"
    assert " m " in description(hand.setting, hand.bench.ground, "cone", "metres")


def test_every_thing_on_the_court_can_be_told_where_it_is(hand):
    for id in hand.setting.ids():
        assert full_name(hand.setting, id)
        assert description(hand.setting, hand.bench.ground, id, "rackets")
