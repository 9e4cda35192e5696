import pytest

from designer.court.standards import ground
from designer.desktop.canvas.parts_of_court import parts_at
from designer.drill.drill import Court

GROUND = ground(Court())


def words(point, court=GROUND):
    return [part.words for part in parts_at(court, point)]


@pytest.mark.parametrize(
    ("point", "first"),
    [
        ((2.0, -3.0), "right service box"),
        ((-2.0, -3.0), "left service box"),
        ((2.0, 3.0), "left service box"),  # seen by the player at the far end
        ((4.8, -3.0), "right alley"),
        ((1.0, -9.0), "right back court"),
    ],
)
def test_the_smallest_painted_part_comes_first(point, first):
    assert words(point)[0] == first


def test_all_parts_of_the_back_court_can_be_had():
    found = words((1.0, -11.5))
    assert {"back court", "right half", "singles court", "depth strip at the baseline", "middle four rackets"} <= set(
        found
    )
    assert found.index("back court") < found.index("singles court") < found.index("depth strip at the baseline")


def test_three_strips_of_two_strides_fill_the_back_court():
    strips = [
        part for y in (-11.0, -9.0, -7.0) for part in parts_at(GROUND, (1.0, y)) if part.words.startswith("depth")
    ]
    # The back court is 18 ft deep: 39 - 21 (ITF Rules of Tennis, rule 1).
    assert [(part.corners[0][1], part.corners[1][1]) for part in strips] == [
        pytest.approx((-11.8872, -10.0584)),
        pytest.approx((-10.0584, -8.2296)),
        pytest.approx((-8.2296, -6.4008)),
    ]
    assert not any(part.painted for part in strips)


def test_off_the_court_there_is_no_part():
    assert words((7.0, -3.0)) == []
    assert words((0.0, -14.0)) == []


def test_a_court_without_service_lines_has_its_own_parts():
    red = ground(Court(standard="red"))
    assert words((0.5, -1.0), red)
    assert all(part.outline for part in parts_at(red, (0.5, -1.0)))
