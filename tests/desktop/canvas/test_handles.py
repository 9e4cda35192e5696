import pytest

from designer.desktop.canvas.handles import facing_of, handles, pulled
from designer.drill.base import place
from designer.drill.edits import put
from designer.drill.items import Polygon
from designer.drill.people import Spot


def parts(hand, id):
    return [(handle.part, handle.index) for handle in handles(hand.setting, id, 0.06, hand.bench.play(hand.setting))]


def test_each_kind_of_thing_has_its_own_handles(hand):
    assert parts(hand, "zone") == [("corner", index) for index in range(4)]
    assert parts(hand, "line") == [("corner", 0), ("corner", 1)]
    assert parts(hand, "reply") == [("contact", 0), ("landing", 0)]
    assert parts(hand, "back") == [("new way-point", 0), ("end", 0)]
    assert parts(hand, "spot-a") == [("facing", 0)]
    assert parts(hand, "cone") == []
    assert parts(hand, "nothing") == []


def test_a_ball_hit_where_somebody_stands_can_be_pulled_by_its_start_too(hand):
    assert ("contact", 0) in parts(hand, "feed")


def test_a_run_has_a_handle_in_the_middle_of_where_it_really_goes(hand):
    found = {handle.part: handle.at for handle in handles(hand.setting, "back", 0.06, hand.bench.play(hand.setting))}
    assert found["new way-point"] == pytest.approx((1.5, -11.7)), "it begins where the run before it ended"


@pytest.mark.parametrize("index", range(4))
def test_any_corner_of_a_rectangle_is_pulled_and_the_one_opposite_stays(hand, index):
    corners = ((-4.0, 6.0), (0.0, 6.0), (0.0, 11.0), (-4.0, 11.0))
    handle = handles(hand.setting, "zone", 0.06)[index]
    assert handle.at == corners[index]
    drill = pulled(hand.document.drill, hand.view.at, handle, (-7.0, 3.0))
    hand.document.perform("Pull", drill)
    (x0, y0), (x1, y1) = hand.setting.items["zone"].shape.corners
    opposite = corners[(index + 2) % 4]
    assert {x0, x1} == {-7.0, opposite[0]}
    assert {y0, y1} == {3.0, opposite[1]}


def test_a_corner_of_a_polygon_is_pulled_alone(hand):
    zone = hand.setting.items["zone"]
    shape = Polygon(form="polygon", corners=((0.0, 0.0), (1.0, 0.0), (0.0, 1.0)))
    hand.document.perform("Shape", put(hand.document.drill, hand.view.at, zone.changed(shape=shape)))
    handle = handles(hand.setting, "zone", 0.06)[1]
    hand.document.perform("Pull", pulled(hand.document.drill, hand.view.at, handle, (2.0, 0.5)))
    assert hand.setting.items["zone"].shape.corners == ((0.0, 0.0), (2.0, 0.5), (0.0, 1.0))


def test_people_look_towards_the_net_unless_they_are_told_otherwise():
    near = Spot(id="a", job="A", place=place(0.0, -12.0))
    assert facing_of(near, (0.0, -12.0)) == 0
    assert facing_of(near, (0.0, 12.0)) == 180
    assert facing_of(near.changed(facing=90), (0.0, 12.0)) == 90


def test_a_handle_of_something_that_is_gone_changes_nothing(hand):
    handle = handles(hand.setting, "zone", 0.06)[0]
    from designer.drill.edits import delete

    drill = delete(hand.document.drill, hand.view.at, ("zone",))
    assert pulled(drill, hand.view.at, handle, (0.0, 0.0)) is drill
