from hypothesis import given
from hypothesis import strategies as st

from designer.drill.base import Place, place
from designer.drill.items import Cone, Disc, Line
from designer.drill.setting import EMPTY
from designer.play.layout import located_at_end, points_of, things_placed, turned_facing, turned_point

metres = st.integers(-300_000, 300_000).map(lambda tenths: tenths / 10_000)


def test_a_thing_at_both_ends_is_placed_twice():
    once = Cone(kind="cone", id="cone", place=place(1.0, -5.0))
    twice = Line(kind="line", id="line", corners=((-4.0, -8.0), (4.0, -8.0)), both_ends=True)
    placed = [(item.id, turned) for item, turned in things_placed(EMPTY.having(once, twice))]
    assert placed == [("cone", False), ("line", False), ("line", True)]


def test_the_copy_is_turned_half_round_not_reflected():
    setting = EMPTY.having(Disc(kind="disc", id="disc", place=place(3.0, -8.0), both_ends=True))
    (disc, _), (copy, turned) = things_placed(setting)
    assert points_of(setting, disc) == ((3.0, -8.0),)
    assert points_of(setting, copy, turned=turned) == ((-3.0, 8.0),)


def test_what_stands_nowhere_has_no_points():
    setting = EMPTY.having(Cone(kind="cone", id="cone", place=Place(on="gone")))
    assert points_of(setting, setting.items["cone"]) == ()


def test_a_place_tied_to_a_thing_at_both_ends_is_taken_at_the_end_asked_for():
    setting = EMPTY.having(Disc(kind="disc", id="disc", place=place(3.0, -8.0), both_ends=True))
    tied = Place(on="disc", at=(0.5, 0.0))
    assert located_at_end(setting, tied, far=False) == (3.5, -8.0)
    assert located_at_end(setting, tied, far=True) == (-3.5, 8.0)
    assert located_at_end(setting, place(1.0, -8.0), far=True) == (1.0, -8.0)


@given(metres, metres, st.integers(0, 359))
def test_half_a_turn_twice_is_no_turn(x, y, facing):
    assert turned_point(turned_point((x, y))) == (x, y)
    assert turned_facing(turned_facing(facing)) == facing
    assert str(turned_point((0.0, 0.0))) == "(0.0, 0.0)"
