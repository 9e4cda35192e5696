"""Each reason to snap is tried with things whose places are counted by hand, and said in words."""

import pytest

from designer.court.standards import ground
from designer.desktop.canvas.snapping import jump, neighbours
from designer.drill.base import Place, place
from designer.drill.drill import Court
from designer.drill.items import Area, Cone, Line, Rectangle
from designer.drill.movement import Shot
from designer.drill.people import Spot
from designer.drill.setting import EMPTY

GROUND = ground(Court())
REACH = 0.3


def cones(*places):
    return EMPTY.having(
        *(Cone(kind="cone", id=f"cone-{number}", place=place(*at)) for number, at in enumerate(places, 1))
    )


def jumped(setting, point, but=(), also=()):
    return jump(GROUND, point, REACH, neighbours(setting, but), also)


def test_alone_on_the_court_it_is_lines_rackets_and_strides():
    found = jumped(EMPTY, (4.05, 11.8))
    assert (found.point, found.reasons) == ((4.1148, 11.8872), ("where lines cross",))
    assert jumped(EMPTY, (2.74, -6.5)).reasons == ("half rackets", "on the service line")
    assert jumped(EMPTY, (2.74, -6.5)).lines == ()


def test_in_line_with_something_beats_what_is_only_counted():
    # 2.5 m is 1.2 m left of a racket's count, so only the cone can be meant.
    setting = cones((2.5, -3.1))
    found = jumped(setting, (2.6, -9.05))
    assert found.point[0] == 2.5
    assert "in line with cone" in found.reasons
    assert ((2.5, -3.1), found.point) in found.lines


def test_a_painted_line_beats_a_thing_that_is_as_near():
    setting = cones((3.95, -3.0))
    assert jumped(setting, (4.05, -9.0)).point[0] == 4.1148


def test_the_third_of_a_row_keeps_its_space():
    setting = cones((1.0, -8.0), (1.9, -8.0))
    found = jumped(setting, (2.9, -8.1))
    assert found.point == (2.8, -8.0)
    assert found.reasons[0] == "as far from cone 2 as that is from cone 1"


def test_half_way_between_two_things():
    setting = cones((1.0, -8.0), (2.9, -8.0))
    found = jumped(setting, (2.0, -8.1))
    assert found.point == (1.95, -8.0)
    assert found.reasons[0] == "half-way from cone 1 to cone 2"


@pytest.mark.parametrize(
    ("near", "there", "words"),
    [
        ((-2.1, -8.05), (-2.13, -8.0), "mirrors cone across the centre line"),
        ((2.1, 8.05), (2.13, 8.0), "mirrors cone across the net"),
        ((-2.1, 8.05), (-2.13, 8.0), "stands as cone does at the other end"),
    ],
)
def test_symmetry_about_the_centre_line_and_the_net(near, there, words):
    found = jumped(cones((2.13, -8.0)), near)
    assert found.point == there
    assert found.reasons[0] == words


def test_corners_ends_and_landings_count_as_well():
    zone = Area(
        kind="area", id="zone", name="deep", shape=Rectangle(form="rectangle", corners=((-3.3, 6.0), (-1.1, 9.0)))
    )
    line = Line(kind="line", id="line", corners=((2.2, -5.0), (3.2, -5.0)))
    shot = Shot(id="shot", by="A", to=place(1.22, 7.7))
    setting = EMPTY.having(zone, line, shot)
    assert "in line with a corner of area “deep”" in jumped(setting, (-1.2, -7.1)).reasons
    assert "in line with an end of line" in jumped(setting, (2.25, -7.1)).reasons
    assert "in line with the landing of ball 1" in jumped(setting, (1.25, -7.1)).reasons


def test_what_is_moved_and_what_goes_along_with_it_is_no_reason():
    cone = Cone(kind="cone", id="cone", place=place(2.5, -3.1))
    tied = Cone(kind="cone", id="tied", place=Place(on="cone", at=(0.0, -1.0)))
    by_a = Cone(kind="cone", id="by-a", place=Place(on="A", at=(0.15, 0.0)))
    setting = EMPTY.having(cone, tied, by_a, Spot(id="spot", job="A", place=place(2.4, -11.0)))
    assert {point.id for point in neighbours(setting, ("cone",)).points} == {"by-a", "spot"}
    assert {point.id for point in neighbours(setting, ("spot",)).points} == {"cone", "tied"}


def test_a_leg_lies_straight_across_from_where_it_began():
    found = jumped(EMPTY, (2.0, -8.05), also=((-1.0, -8.0),))
    assert found.point[1] == -8.0
    assert "straight across" in found.reasons


def test_nothing_near_leaves_the_point_and_gives_no_reason():
    found = jump(GROUND, (2.55, -9.5), 0.01, neighbours(EMPTY))
    assert (found.point, found.reasons) == ((2.55, -9.5), ())
