"""Readings as a coach lays things out. An adult racket (27 in) and a stride (1 yd) are common practice, no source.

The check is a round trip: whoever paces out what a reading says arrives where the thing is meant to stand.
"""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from designer.court.readings import RACKET, STRIDE, Offset, reading, snapped
from designer.court.regions import from_player, line_by_words
from designer.court.standards import court_names, ground
from designer.drill.drill import Court

TENNIS = ground(Court(run_back=5.4864, side_run=3.048))
GROUNDS = [ground(Court(standard=name)) for name in court_names()] + [TENNIS]
FENCES = {
    "the right side fence": lambda g: g.side_fence,
    "the left side fence": lambda g: -g.side_fence,
    "the back fence": lambda g: g.back_fence,
}
points = st.tuples(st.floats(-8.5, 8.5), st.floats(-17, 17))


def line_at(on, words, axis):
    """Where a line stands across (axis 0) or along (axis 1), as the near player sees it."""
    if words in FENCES:
        return FENCES[words](on)
    (x0, y0), (x1, y1) = line_by_words(on, words, "near")
    return ((x0 + x1) / 2, -(y0 + y1) / 2)[axis] if axis == 0 else -y0


def rounded(metres, unit, part):
    return round(metres / unit * part) / part * unit


def paced(on, offset, axis, unit, part):
    """Pace out one count from its line with a racket or in strides, as the near player."""
    start = line_at(on, offset.line, axis)
    if offset.direction == "half-way":
        return (start + line_at(on, offset.other, axis)) / 2
    count = rounded(offset.count_metres, unit, part)
    signs = {
        "on": 0,
        "in from": -1 if start > 0 else 1,
        "out from": 1 if start > 0 else -1,
        "right of": 1,
        "left of": -1,
        "inside": -1,
        "in front of": -1,
        "behind": 1,
        "from": 1,
    }
    return start + signs[offset.direction] * count


def crossing_at(on, words):
    """Where a crossing is, as the near player sees it, from the lengths of the court alone."""
    side = -1 if "left" in words else 1
    across = on.doubles if "doubles" in words else on.singles
    if words == "the middle of the net":
        return (0.0, 0.0)
    if words.startswith("the net at"):
        return (0.0 if "centre" in words else side * across, 0.0)
    if words == "the T":
        return (0.0, on.service_line)
    if words == "the centre mark":
        return (0.0, on.baseline)
    if "service box" in words:
        return (side * on.singles, on.service_line)
    return (side * across, on.baseline)


def laid_out(on, found):
    if found.crossing is not None:
        right, away = crossing_at(on, found.crossing)
    elif found.half_way is not None:
        first, second = (crossing_at(on, words) for words in found.half_way)
        right, away = ((first[0] + second[0]) / 2, (first[1] + second[1]) / 2)
    else:
        right = paced(on, found.across, 0, RACKET, 2)
        away = paced(on, found.along, 1, STRIDE, 1)
    return from_player(right, away, found.end or "near")


@given(points, st.sampled_from(GROUNDS))
def test_pacing_out_a_reading_gives_the_point_again(point, on):
    # On the grid (where a thing jumps to) the counts are whole: within a quarter racket and a quarter stride.
    at = snapped(on, point, reach=1.0).point
    x, y = laid_out(on, reading(on, at))
    assert abs(x - at[0]) <= RACKET / 4
    assert abs(y - at[1]) <= STRIDE / 4


@given(points, st.sampled_from(GROUNDS))
def test_off_the_grid_a_reading_is_off_by_half_a_count_at_most(point, on):
    x, y = laid_out(on, reading(on, point))
    assert abs(x - point[0]) <= RACKET / 4 + 0.006
    assert abs(y - point[1]) <= STRIDE / 2 + 0.006


@given(points, st.sampled_from(GROUNDS))
def test_both_ends_read_alike(point, on):
    here, there = reading(on, point), reading(on, (-point[0], -point[1]))
    assert (here.crossing, here.half_way) == (there.crossing, there.half_way)
    if abs(point[1]) > 0.005:
        assert (here.across, here.along) == (there.across, there.along)
        assert {here.end, there.end} == {"near", "far"}


@given(points, st.sampled_from(GROUNDS), st.floats(0, 1))
def test_a_point_never_jumps_farther_than_its_reach_and_stays_where_it_jumped(point, on, reach):
    snap = snapped(on, point, reach=reach)
    assert abs(snap.point[0] - point[0]) <= reach + 1e-4
    assert abs(snap.point[1] - point[1]) <= reach + 1e-4
    assert snap.reading == reading(on, snap.point)
    again = snapped(on, snap.point, reach=reach)
    assert again.point == pytest.approx(snap.point, abs=2e-4)


@pytest.mark.parametrize(
    ("point", "crossing"),
    [
        ((0.0, 6.4008), "the T"),
        ((0.0, -11.8872), "the centre mark"),
        ((4.1148, -11.8872), "the right singles corner"),
        ((4.1148, 11.8872), "the left singles corner"),
        ((-5.4864, -11.8872), "the left doubles corner"),
        ((-4.1148, 6.4008), "the outer corner of the right service box"),
        ((0.0, 0.0), "the middle of the net"),
    ],
)
def test_crossings_come_first(point, crossing):
    # Positions from ITF Rules of Tennis, Rule 1 (39, 21, 13.5, 18 ft).
    found = reading(TENNIS, point)
    assert found.crossing == crossing
    assert (found.across, found.along) == (None, None)


def test_the_middle_between_two_crossings_is_found_by_folding():
    assert reading(TENNIS, (0.0, -9.144)).half_way == ("the T", "the centre mark")
    found = reading(TENNIS, (2.0574, 6.4008))
    assert found.half_way == ("the outer corner of the left service box", "the T")


@pytest.mark.parametrize(
    ("point", "across", "along"),
    [
        # Positions of the invented academy's drills, worked out by hand in feet: 27 in a racket, 3 ft a stride.
        ((2.0574, -12.8016), ("the centre mark", 3 * RACKET, "right of"), ("the baseline", STRIDE, "behind")),
        ((-2.7432, -10.9728), ("the left singles line", 2 * RACKET, "in from"), ("the baseline", STRIDE, "inside")),
        ((-2.7432, 10.9728), ("the right singles line", 2 * RACKET, "in from"), ("the baseline", STRIDE, "inside")),
        ((0.6858, -8.2296), ("the centre mark", RACKET, "right of"), ("the service line", 2 * STRIDE, "behind")),
        ((-0.6858, 5.4864), ("the centre line", RACKET, "right of"), ("the service line", STRIDE, "in front of")),
        ((-8.5344, 0.0), ("the left side fence", 0.0, "on"), ("the net", 0.0, "on")),
        ((6.1722, -1.8288), ("the right doubles line", RACKET, "out from"), ("the net", 2 * STRIDE, "from")),
        ((0.0, 17.3736), ("the centre mark", 0.0, "on"), ("the back fence", 0.0, "on")),
    ],
)
def test_everything_else_is_two_counts_from_the_nearest_lines(point, across, along):
    found = reading(TENNIS, point)
    assert found.across == Offset(*((across[0], pytest.approx(across[1], abs=1e-4), across[2])))
    assert found.along == Offset(*((along[0], pytest.approx(along[1], abs=1e-4), along[2])))


def test_a_fence_whose_place_is_not_known_is_no_landmark():
    found = reading(ground(Court()), (0.0, 17.3736))
    assert found.along == Offset("the baseline", 5.4864, "behind")


def test_half_way_along_is_folded_and_across_is_counted():
    found = reading(TENNIS, (2.7432, 3.2004))
    assert found.along == Offset("the net", 3.2004, "half-way", "the service line")
    assert found.across == Offset("the left singles line", 1.3716, "in from")


def test_the_red_court_is_read_from_its_own_lines():
    red = ground(Court(standard="red"))
    assert reading(red, (-2.7432, -5.4864)).crossing == "the left singles corner"
    found = reading(red, (0.0, -6.1722))
    # Nothing is painted in its middle: fold the court.
    assert found.across == Offset("the left singles line", 2.7432, "half-way", "the right singles line")
    assert found.along == Offset("the baseline", 0.6858, "behind")
    words = {offset.line for x in (-2, 0, 2) for y in (-5, 2) for offset in [reading(red, (x, y)).along]}
    assert words <= {"the net", "the baseline"}


@pytest.mark.parametrize(
    ("point", "jumps_to", "why"),
    [
        ((4.0, -6.3), (4.1148, -6.4008), "crossing"),
        ((2.0, -12.7), (2.0574, -12.8016), "count"),
        ((4.05, -8.0), (4.1148, -8.2296), "line"),
        ((0.1, 9.0), (0.0, 9.144), "half-way"),
    ],
)
def test_a_point_jumps_to_what_it_is_near(point, jumps_to, why):
    snap = snapped(TENNIS, point, reach=0.25)
    assert snap.point == pytest.approx(jumps_to, abs=1e-4)
    assert snap.why == why


def test_a_point_near_nothing_stays():
    snap = snapped(TENNIS, (1.55, -9.5), reach=0.05)
    assert (snap.point, snap.why) == ((1.55, -9.5), "none")
