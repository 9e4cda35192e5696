import math

import pytest

from designer.desktop.canvas.handles import facing_of, handles, pulled
from designer.desktop.canvas.refused import Refused
from designer.drawing.picture import picture
from designer.drawing.themes import theme
from designer.drill.base import place
from designer.drill.edits import put
from designer.drill.items import Polygon
from designer.drill.people import Spot


def parts(hand, id):
    return [(handle.part, handle.index) for handle in handles(hand.setting, id, 0.06, hand.bench.play(hand.setting))]


def test_each_kind_of_thing_has_its_own_handles(hand):
    assert parts(hand, "zone") == [*(("corner", index) for index in range(4)), *(("side", index) for index in range(4))]
    assert parts(hand, "line") == [("corner", 0), ("corner", 1), ("new corner", 1)]
    assert parts(hand, "reply") == [("contact", 0), ("bend", 0), ("landing", 0)]
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


def pull(hand, id, part, to, index=0, reach=0.1):
    """Pull one handle of a thing and settle it."""
    found = handles(hand.setting, id, 0.06, hand.bench.play(hand.setting))
    handle = next(one for one in found if (one.part, one.index) == (part, index))
    hand.document.perform("Pull", pulled(hand.document.drill, hand.view.at, handle, to, reach=reach))


def picture_marks(hand, id):
    made = picture(hand.document.drill, hand.view.at, unit=0.06, theme=theme("light"))
    return [mark for mark in made.marks if mark.id == id]


def test_a_ball_is_bent_by_one_handle_and_pulled_straight_again(hand):
    # The reply goes from (3.2, -11) to (-2, 8): half-way at (0.6, -1.5); its right, as it flies, is (19, 5.2) turned to length 1.
    length = math.hypot(19, 5.2)
    right = (0.6 + 19 / length, -1.5 + 5.2 / length)
    pull(hand, "reply", "bend", right)
    assert hand.setting.shots["reply"].bend == pytest.approx(1.0, abs=0.01)
    found = {one.part: one.at for one in handles(hand.setting, "reply", 0.06, hand.bench.play(hand.setting))}
    assert found["bend"] == pytest.approx(right, abs=0.01), "the handle lies on the ball's way"
    (path,) = [mark.primitives[0].points for mark in picture_marks(hand, "reply") if mark.kind == "ball path"][:1]
    assert min(math.dist(point, right) for point in path) < 0.7, "and the ball is drawn through it"
    pull(hand, "reply", "bend", (0.65, -1.5))
    assert hand.setting.shots["reply"].bend is None


def test_a_run_gains_way_points_and_loses_one_that_is_pulled_straight(hand):
    pull(hand, "wide", "new way-point", (1.5, -9.0))
    assert hand.setting.runs["wide"].via == ((1.5, -9.0),)
    pull(hand, "wide", "new way-point", (2.8, -9.5), index=1)
    assert hand.setting.runs["wide"].via == ((1.5, -9.0), (2.8, -9.5))
    pull(hand, "wide", "way-point", (0.0, -8.0), index=0)
    assert hand.setting.runs["wide"].via == ((0.0, -8.0), (2.8, -9.5))
    pull(hand, "wide", "way-point", (1.5, -9.6), index=1)
    assert hand.setting.runs["wide"].via == ((0.0, -8.0),), "(0, -8), (1.5, -9.6), (3, -11.2) is a straight line"


def test_a_corner_is_put_into_a_line_and_laid_straight_again(hand):
    pull(hand, "line", "new corner", (4.0, 3.5), index=1)
    assert hand.setting.items["line"].corners == ((3.0, 2.0), (4.0, 3.5), (3.0, 5.0))
    pull(hand, "line", "corner", (3.02, 3.5), index=1)
    assert hand.setting.items["line"].corners == ((3.0, 2.0), (3.0, 5.0))


def test_one_side_of_a_rectangle_is_pulled_alone(hand):
    pull(hand, "zone", "side", (9.9, 7.0), index=0)
    assert hand.setting.items["zone"].shape.corners == ((-4.0, 7.0), (0.0, 11.0))


@pytest.mark.parametrize(
    ("id", "part", "index", "to"),
    [
        ("zone", "corner", 0, (-4.0, 11.0)),
        ("zone", "side", 1, (-4.0, 8.0)),
        ("line", "corner", 0, (3.0, 5.0)),
        ("reply", "landing", 0, (3.2, -11.0)),
        ("reply", "contact", 0, (-2.0, 8.0)),
        ("wide", "end", 0, (0.0, -12.0)),
    ],
)
def test_nothing_is_pulled_to_nothing(hand, id, part, index, to):
    before = hand.document.drill
    with pytest.raises(Refused, match=r"It (needs some|has to go somewhere)"):
        pull(hand, id, part, to, index)
    assert hand.document.drill is before
