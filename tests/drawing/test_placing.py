import pytest

from designer.drawing.placing import FORBIDDEN, PATH, Space, best

SHEET = (-50.0, -50.0, 50.0, 50.0)


@pytest.fixture
def space():
    return Space(1.0, SHEET)


def test_free_ground_costs_nothing(space):
    space.take((10.0, 10.0, 20.0, 20.0))
    assert space.cost((0.0, 0.0, 5.0, 5.0)) == 0
    assert space.cost((12.0, 12.0, 14.0, 14.0)) >= FORBIDDEN * 0.4


def test_a_long_line_is_found_wherever_it_is_crossed(space):
    space.cross([(-40.0, -40.0), (40.0, 40.0)], PATH)
    for middle in (-30.0, 0.0, 33.0):
        assert space.cost((middle - 1, middle - 1, middle + 1, middle + 1)) == pytest.approx(PATH * 2 * 2**0.5)


def test_ones_own_things_are_no_hindrance(space):
    space.take((0.0, 0.0, 5.0, 5.0), owner="zone")
    assert space.cost((1.0, 1.0, 2.0, 2.0), "zone") == 0
    assert space.cost((1.0, 1.0, 2.0, 2.0), "other") > 0


def test_leaving_the_sheet_costs(space):
    assert space.cost((45.0, 0.0, 55.0, 5.0)) > space.cost((45.0, 0.0, 51.0, 5.0)) > 0


def test_the_cheapest_place_wins_and_of_equals_the_first(space):
    space.take((0.0, 0.0, 5.0, 5.0))
    choices = [
        ("taken", (1.0, 1.0, 2.0, 2.0), 0.0),
        ("first", (10.0, 0.0, 12.0, 2.0), 3.0),
        ("second", (20.0, 0.0, 22.0, 2.0), 3.0),
    ]
    assert best(space, choices)[0] == "first"


def test_a_further_cost_can_turn_the_choice(space):
    choices = [("near", (0.0, 0.0, 1.0, 1.0), 0.0), ("far", (5.0, 0.0, 6.0, 1.0), 2.0)]
    assert best(space, choices, "", lambda what, _: 10.0 if what == "near" else 0.0)[0] == "far"


def test_no_choice_is_refused(space):
    with pytest.raises(ValueError, match="nothing to choose"):
        best(space, [])


def test_ground_is_bare_only_where_nothing_is_drawn(space):
    space.cross([(0.0, -20.0), (0.0, 20.0)], PATH)
    space.take((20.0, 20.0, 30.0, 30.0), 12.0, "side words")
    assert not space.is_bare((-1.0, 0.0, 1.0, 1.0))
    assert space.is_bare((21.0, 21.0, 22.0, 22.0))
