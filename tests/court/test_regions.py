"""Regions and lines by words against areas from the rules' feet, with shapely as the oracle."""

import pytest
from hypothesis import given
from hypothesis import strategies as st
from shapely.geometry import LineString, Point, Polygon
from shapely.ops import unary_union

from designer.court.regions import (
    RACKET,
    STRIDE,
    as_player,
    from_player,
    line_by_words,
    line_words,
    region,
    region_words,
)
from designer.court.standards import ground
from designer.drill.drill import Court

FOOT = 0.3048
TENNIS = ground(Court())
RED = ground(Court(standard="red"))
ENDS = ("near", "far")
distances = st.floats(-20, 20, allow_nan=False)


def area(words, end="near", on=TENNIS):
    return Polygon(region(on, words, end))


@pytest.mark.parametrize(
    ("words", "square_feet"),
    [
        # Products of ITF Rules of Tennis, Rule 1: half length 39, service line 21, half widths 13.5 and 18 ft.
        ("singles court", 27 * 39),
        ("doubles court", 36 * 39),
        ("right half", 13.5 * 39),
        ("left doubles half", 18 * 39),
        ("back court", 27 * 18),
        ("doubles back court", 36 * 18),
        ("right service box", 13.5 * 21),
        ("service boxes", 27 * 21),
        ("left back court", 13.5 * 18),
        ("right alley", 4.5 * 39),
        ("between the service lines", 36 * 21),
    ],
)
@pytest.mark.parametrize("end", ENDS)
def test_regions_have_the_size_of_the_rules(words, square_feet, end):
    assert area(words, end).area == pytest.approx(square_feet * FOOT**2, rel=1e-9)


def test_a_service_box_is_the_table_s():
    # Computed from 21 by 13.5 ft apart from the program: 26.33801 square metres.
    assert area("deuce box").area == pytest.approx(26.33801, abs=1e-5)


@pytest.mark.parametrize("end", ENDS)
def test_right_is_right_of_the_player_who_faces_the_net(end):
    side = 1 if end == "near" else -1
    assert area("right half", end).centroid.x * side > 0
    assert area("left alley", end).centroid.x * side < 0
    assert region(TENNIS, "right service box", end) == region(TENNIS, "deuce box", end)
    assert region(TENNIS, "left service box", end) == region(TENNIS, "ad box", end)


def test_the_two_deuce_boxes_lie_across_the_net_from_each_other_on_the_diagonal():
    near, far = (area("deuce box", end).centroid for end in ENDS)
    assert (near.x, near.y) == pytest.approx((-far.x, -far.y))


@pytest.mark.parametrize("end", ENDS)
def test_the_doubles_court_is_cut_without_gap_or_overlap(end):
    parts = [
        area(words, end)
        for words in (
            "left service box",
            "right service box",
            "left back court",
            "right back court",
            "left alley",
            "right alley",
        )
    ]
    assert sum(part.area for part in parts) == pytest.approx(area("doubles court", end).area)
    assert unary_union(parts).symmetric_difference(area("doubles court", end)).area == pytest.approx(0, abs=1e-9)


def test_the_middle_four_rackets_are_two_each_side():
    # An adult racket is 27 in: from memory, common practice of laying out.
    left, _, right, _ = area("middle four rackets").bounds
    assert (left, right) == pytest.approx((-4.5 * FOOT, 4.5 * FOOT))
    assert pytest.approx(0.6858) == RACKET
    assert pytest.approx(3 * FOOT) == STRIDE


@pytest.mark.parametrize("end", ENDS)
@pytest.mark.parametrize("words", line_words(TENNIS))
def test_lines_by_words_lie_on_painted_lines(words, end):
    segment = LineString(line_by_words(TENNIS, words, end))
    if words == "the net":
        assert segment.length == pytest.approx(42 * FOOT)  # Table 5: 12.802 m from post to post
        return
    painted = [LineString(line.as_tuple()) for line in TENNIS.lines]
    assert any(line.buffer(1e-6).covers(segment) for line in painted)
    far = segment.centroid.y > 0
    assert far == (end == "far")


@pytest.mark.parametrize("end", ENDS)
def test_the_right_singles_line_is_right(end):
    (x, _), _ = line_by_words(TENNIS, "the right singles line", end)
    assert x == (4.1148 if end == "near" else -4.1148)


def test_a_court_without_a_line_has_no_such_words():
    assert region(RED, "right service box", "near") is None
    assert region(RED, "doubles court", "far") is None
    assert line_by_words(RED, "the service line", "near") is None
    assert set(region_words(RED)) == {"singles court", "right half", "left half", "middle four rackets"}
    assert "back court" not in region_words(RED)
    assert "back court" in region_words(TENNIS)
    assert region(TENNIS, "the moon", "near") is None


def test_no_words_could_be_an_id():
    assert all(" " in words for words in (*region_words(TENNIS), *line_words(TENNIS)))


@given(distances, distances, st.sampled_from(ENDS))
def test_seen_as_the_player_and_back(x, y, end):
    assert from_player(*as_player((x, y), end), end) == (x, y)


@given(distances, distances)
def test_the_ends_are_half_a_turn_apart(x, y):
    assert as_player((x, y), "near") == as_player((-x, -y), "far")
    assert area("right half", "near").contains(Point(x, y)) == area("right half", "far").contains(Point(-x, -y))
