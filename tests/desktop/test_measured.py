"""Places measured from named lines, and things put there."""

import pytest

from designer.bundle import sample
from designer.court.standards import ground
from designer.desktop.measured import across, along, nearest, placed_at, point_at, seen_from, stands
from designer.drill.drill import Court, Drill
from designer.drill.setting import At, setting_at

# ITF Rules of Tennis, rule 1: 78 ft long, 27 ft wide for singles and 36 ft for doubles, service lines 21 ft from the net.
FOOT = 0.3048
SINGLES, DOUBLES, SERVICE, BASE = 13.5 * FOOT, 18 * FOOT, 21 * FOOT, 39 * FOOT

WIDE = Drill.model_validate_json(sample("wide-start.drill.json").read_bytes())
FED = At("p-fed")


@pytest.fixture(scope="module")
def court():
    return ground(Court())


@pytest.mark.parametrize(
    ("words", "right"),
    [
        ("in from the left singles line", -SINGLES + 1),
        ("out from the left doubles line", -DOUBLES - 1),
        ("in from the right doubles line", DOUBLES - 1),
        ("out from the right singles line", SINGLES + 1),
        ("left of the middle", -1),
        ("right of the middle", 1),
    ],
)
def test_a_metre_from_each_line_across_is_where_the_rules_put_it(court, words, right):
    (measure,) = [each for each in across(court) if each.words == words]
    assert measure.value(1.0) == pytest.approx(right, abs=1e-4)
    assert measure.count(measure.value(1.0)) == pytest.approx(1.0)


@pytest.mark.parametrize(
    ("words", "away"),
    [
        ("from the net", 1.0),
        ("in front of the service line", SERVICE - 1),
        ("behind the service line", SERVICE + 1),
        ("inside the baseline", BASE - 1),
        ("behind the baseline", BASE + 1),
    ],
)
def test_a_metre_from_each_line_along(court, words, away):
    (measure,) = [each for each in along(court) if each.words == words]
    assert measure.value(1.0) == pytest.approx(away, abs=1e-4)


@pytest.mark.parametrize(
    ("value", "words"),
    [
        (SINGLES - 0.5, "in from the right singles line"),
        (0.2, "right of the middle"),
        (-DOUBLES - 2, "out from the left"),
    ],
)
def test_a_place_is_offered_from_the_line_it_is_nearest_to(court, value, words):
    assert nearest(across(court), value).words.startswith(words)


def test_a_court_without_service_lines_has_none_to_measure_from():
    red = ground(Court(standard="red"))
    assert {"the service line" in each.words for each in along(red)} == {red.service_line is not None}
    assert all(each.value(0.5) is not None for each in (*across(red), *along(red)))


@pytest.mark.parametrize("point", [(1.0, -3.0), (-2.0, 8.5), (0.0, 0.0)])
def test_left_and_right_are_those_of_the_player_at_that_end(point):
    end, right, away = seen_from(point)
    assert point_at(end, right, away) == point
    assert away == abs(point[1])
    assert right == (point[0] if point[1] <= 0 else -point[0])


@pytest.mark.parametrize("id", ["spot-a", "reply-zone", "feed", "reply"])
def test_a_thing_stands_where_it_was_put(id):
    setting = setting_at(WIDE, FED)
    if setting.find(id) is None:
        pytest.fail(f"the sample has lost {id}")
    moved = placed_at(WIDE, FED, id, (1.0, -2.0))
    assert stands(moved, FED, id) == pytest.approx((1.0, -2.0), abs=1e-4)


def test_of_a_ball_only_the_landing_moves():
    before, moved = setting_at(WIDE, FED), setting_at(placed_at(WIDE, FED, "reply", (1.0, 5.0)), FED)
    assert moved.shots["reply"].contact == before.shots["reply"].contact
    assert moved.spots == before.spots


def test_what_lands_nowhere_has_no_place():
    free = next(shot.id for shot in setting_at(WIDE, FED).shots.values() if shot.to is not None)
    from designer.drill.edits import put

    shot = setting_at(WIDE, FED).shots[free]
    drill = put(WIDE, FED, shot.changed(to=None))
    assert stands(drill, FED, free) is None
    with pytest.raises(ValueError, match="no place"):
        placed_at(drill, FED, free, (0.0, 0.0))
