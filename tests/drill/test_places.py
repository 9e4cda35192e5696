import pytest
from hypothesis import given
from strategies import metres, points, settings

from designer.drill.base import Place, place
from designer.drill.items import Area, Cone, Ellipse, Line, Polygon, Rectangle, Unknown
from designer.drill.movement import Run, Shot
from designer.drill.people import Spot
from designer.drill.places import anchor, corners_of, is_letter, locate, middle, moved
from designer.drill.setting import EMPTY

HOME = Cone(kind="cone", id="home", place=place(1.0, -2.0))


def test_a_free_place_is_where_it_says():
    assert locate(EMPTY, place(3.0, 4.0)) == (3.0, 4.0)


def test_a_tied_place_is_measured_from_what_it_is_tied_to():
    setting = EMPTY.having(HOME, Spot(id="spot-a", job="A", place=Place(on="home", at=(0.5, 0.0))))
    assert locate(setting, Place(on="A", at=(0.0, 1.0))) == (1.5, -1.0)


def test_shots_and_runs_are_anchors_by_their_ends():
    setting = EMPTY.having(
        Shot(id="feed", by="A", to=place(2.0, 6.0)), Run(id="back", by="A", to=Place(on="feed", at=(0.0, 1.0)))
    )
    assert anchor(setting, "back") == (2.0, 7.0)


@pytest.mark.parametrize(
    "shape",
    [
        Rectangle(form="rectangle", corners=((0.0, 2.0), (4.0, 0.0))),
        Ellipse(form="ellipse", corners=((0.0, 2.0), (4.0, 0.0))),
        Polygon(form="polygon", corners=((0.0, 0.0), (4.0, 1.0), (2.0, 2.0))),
    ],
)
def test_an_area_is_an_anchor_by_its_middle(shape):
    assert anchor(EMPTY.having(Area(kind="area", id="zone", shape=shape)), "zone") == (2.0, 1.0)


def test_a_rectangle_has_four_corners_in_order_round_it():
    area = Area(kind="area", id="zone", shape=Rectangle(form="rectangle", corners=((0.0, 2.0), (4.0, 0.0))))
    assert corners_of(area) == ((0.0, 2.0), (4.0, 2.0), (4.0, 0.0), (0.0, 0.0))


def test_what_is_not_there_is_nowhere():
    assert locate(EMPTY, Place(on="ghost")) is None
    assert locate(EMPTY, Place(on="Z")) is None
    assert anchor(EMPTY.having(Shot(id="feed", by="A")), "feed") is None


def test_places_tied_to_one_another_are_nowhere():
    setting = EMPTY.having(
        Cone(kind="cone", id="one", place=Place(on="two")), Cone(kind="cone", id="two", place=Place(on="one"))
    )
    assert anchor(setting, "one") is None


def test_an_unknown_item_may_call_anything_a_place_or_corners():
    odd = Unknown(kind="rebound wall", id="wall", corners="four", place=[1], shape=None)
    assert corners_of(odd) == ()
    assert anchor(EMPTY.having(odd), "wall") is None
    line = Line(kind="line", id="tick", corners=((0.0, 0.0), (1.0, 0.0)), shape={"form": "odd"})
    assert corners_of(line) == ((0.0, 0.0), (1.0, 0.0))


@given(settings())
def test_no_setting_is_too_odd_to_be_asked_where_things_are(setting):
    for _, record in setting.records():
        point = anchor(setting, record.id)
        assert point is None or len(point) == 2
        corners_of(record)


@given(points(), metres(-10, 10), metres(-10, 10))
def test_moving_there_and_back_again_comes_home(point, x, y):
    start = place(*point).at
    by = place(x, y).at
    assert moved(moved(start, by), (-by[0], -by[1])) == pytest.approx(start, abs=1e-9)


@given(points(), points())
def test_the_middle_is_as_far_from_both_corners(one, other):
    x, y = middle((one, other))
    assert x == pytest.approx((one[0] + other[0]) / 2, abs=0.00006)
    assert y == pytest.approx((one[1] + other[1]) / 2, abs=0.00006)


def test_a_letter_is_no_id():
    assert is_letter("A")
    assert not is_letter("a")
    assert not is_letter("AB")
