"""An area's share of the court: a fact of the trade, and shapely as the second opinion."""

import math

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st
from shapely.geometry import Point as Spot
from shapely.geometry import Polygon as Outline
from shapely.geometry import box
from shapely.validation import explain_validity

from designer.bundle import sample
from designer.court.standards import ground
from designer.drill.drill import Court, Drill
from designer.drill.items import Area, Ellipse, Line, Polygon, Rectangle, UnknownShape
from designer.drill.setting import main_setting, setting_at
from designer.play.shares import crosses_itself, line_shares, outline_shares, shares

TENNIS = ground(Court())
FOOT = 0.3048
RACKET = 27 * 0.0254
SINGLES, BASELINE = 27 / 2 * FOOT, 39 * FOOT  # ITF Rules of Tennis, Rule 1
FAR = box(-SINGLES, 0, SINGLES, BASELINE)
WHOLE = box(-SINGLES, -BASELINE, SINGLES, BASELINE)


def area(shape):
    return Area(kind="area", id="zone", shape=shape)


def rectangle(x0, y0, x1, y1):
    return area(Rectangle(form="rectangle", corners=((x0, y0), (x1, y1))))


def test_a_line_two_rackets_off_the_centre_gives_two_thirds_of_the_width():
    """Common practice, no source: between 65 and 70 per cent of the width for a right-hander's forehand.

    A racket is 27 in and the singles court 27 ft wide, so the court is 12 rackets wide and the forehand has 8 of them.
    """
    line = Line(kind="line", id="line", corners=((-2 * RACKET, -6.4), (-2 * RACKET, -11.0)))
    left, right = line_shares(TENNIS, line)
    assert right.width.amount == pytest.approx(8 * RACKET)
    assert right.width.per_cent == 66.7
    assert 65 <= right.width.per_cent <= 70
    assert right.half.per_cent == 66.7  # the line runs from net to baseline, so the areas are as the widths
    assert left.width.per_cent == 33.3


def test_the_academy_s_eight_rackets_are_two_thirds_too_whichever_hand():
    drill = Drill.model_validate_json(sample("forehand-on-eight.drill.json").read_bytes())
    setting = setting_at(drill, main_setting(drill))
    sides = [item for item in setting.items.values() if isinstance(item, Area) and "Eight" in item.name.title()]
    assert len(sides) == 2
    assert [shares(ground(drill.court), side).width.per_cent for side in sides] == [66.7, 66.7]


def test_the_whole_half_and_the_box():
    half = shares(TENNIS, rectangle(-SINGLES, 0, SINGLES, -BASELINE))
    assert (half.half.per_cent, half.court.per_cent, half.width.per_cent) == (100.0, 50.0, 100.0)
    assert half.area == pytest.approx(27 * 39 * FOOT**2)
    box_area = shares(TENNIS, rectangle(0, 0, SINGLES, 21 * FOOT))
    assert box_area.half.share == pytest.approx(21 / 39 / 2)  # half as wide, 21 ft of 39 long


def test_what_lies_outside_the_singles_court_counts_for_the_area_alone():
    alley = shares(TENNIS, rectangle(SINGLES, 2, SINGLES + 1.372, 8))
    assert alley.area == pytest.approx(6 * 1.372, abs=1e-3)
    assert (alley.court.amount, alley.half.amount, alley.width.amount) == (0, 0, 0)


def test_an_area_over_the_net_belongs_to_the_half_where_its_middle_is():
    found = shares(TENNIS, rectangle(-1, -1, 1, 3))
    assert found.court.amount == pytest.approx(8)
    assert found.half.amount == pytest.approx(6)


def test_left_and_right_are_those_of_the_player_at_that_end():
    far = Line(kind="line", id="line", corners=((2 * RACKET, 6.4), (2 * RACKET, 11.0)))
    left, right = line_shares(TENNIS, far)  # at the far end x > 0 is the left
    assert (left.width.per_cent, right.width.per_cent) == (33.3, 66.7)


def test_a_slanting_line_divides_the_area_where_it_crosses_it():
    slant = Line(kind="line", id="line", corners=((0.0, 0.0), (2.0, BASELINE)))
    left, right = line_shares(TENNIS, slant)
    assert left.half.share + right.half.share == pytest.approx(1)
    assert left.half.amount == pytest.approx((SINGLES + SINGLES - 2) / 2 * BASELINE)


@pytest.mark.parametrize("corners", [((-4, -8), (4, -8)), ((0, -3), (1, -4), (0, -5))])
def test_a_line_across_or_bent_has_no_sides(corners):
    assert line_shares(TENNIS, Line(kind="line", id="line", corners=corners)) is None


def test_what_has_no_inside_has_no_share():
    bow = ((0, 2), (3, 6), (3, 2), (0, 6))
    assert shares(TENNIS, area(Polygon(form="polygon", corners=bow))) is None
    assert shares(TENNIS, area(UnknownShape(form="star"))) is None
    assert shares(TENNIS, rectangle(1, 2, 1, 8)) is None


across, along = st.floats(-9, 9), st.floats(-16, 16)


@given(across, along, across, along)
def test_rectangles_agree_with_shapely(x0, y0, x1, y1):
    assume(abs(x1 - x0) > 1e-3 and abs(y1 - y0) > 1e-3)
    found = shares(TENNIS, rectangle(x0, y0, x1, y1))
    (left, low), (right, high) = rectangle(x0, y0, x1, y1).shape.corners
    drawn = box(min(left, right), min(low, high), max(left, right), max(low, high))
    assert found.area == pytest.approx(drawn.area, abs=1e-9)
    assert found.court.amount == pytest.approx(drawn.intersection(WHOLE).area, abs=1e-9)


@given(st.lists(st.tuples(across, along), min_size=3, max_size=9))
def test_polygons_agree_with_shapely(corners):
    drawn = Polygon(form="polygon", corners=tuple(corners)).corners
    outline = Outline(drawn)
    found = outline_shares(TENNIS, drawn)
    if found is None:
        assert not outline.is_valid or outline.area < 1e-6
        return
    half = (
        FAR if sum((max(y for _, y in drawn), min(y for _, y in drawn))) > 0 else box(-SINGLES, -BASELINE, SINGLES, 0)
    )
    assert found.area == pytest.approx(outline.area, abs=1e-6)
    assert found.half.amount == pytest.approx(outline.buffer(0).intersection(half).area, abs=1e-6)


@given(st.lists(st.tuples(st.integers(-4, 4), st.integers(-4, 4)), min_size=4, max_size=7, unique=True))
def test_whether_an_outline_crosses_itself_agrees_with_shapely(corners):
    # On a coarse grid edges often touch or lie on one another, which is where this goes wrong.
    assert crosses_itself(corners) == (not Outline(corners).is_valid), explain_validity(Outline(corners))


@given(st.floats(-5, 5), st.floats(-13, 13), st.floats(0.2, 6), st.floats(0.2, 6))
def test_ellipses_agree_with_shapely(x, y, wide, deep):
    ellipse = Ellipse(form="ellipse", corners=((x - wide, y - deep), (x + wide, y + deep)))
    (left, low), (right, high) = ellipse.corners
    found = shares(TENNIS, area(ellipse))
    round_one = Spot(0, 0).buffer(1, quad_segs=2000)
    points = [
        ((left + right) / 2 + px * (right - left) / 2, (low + high) / 2 + py * (high - low) / 2)
        for px, py in round_one.exterior.coords
    ]
    drawn = Outline(points)
    inside = drawn.intersection(WHOLE)
    assert found.area == pytest.approx(math.pi * (right - left) / 2 * (high - low) / 2)
    assert found.court.amount == pytest.approx(inside.area, abs=1e-3)
    half = drawn.intersection(FAR if low + high > 0 else box(-SINGLES, -BASELINE, SINGLES, 0))
    width = half.bounds[2] - half.bounds[0] if half.area > 1e-3 else 0
    if half.area > 1e-3:
        assert found.width.amount == pytest.approx(width, abs=2e-2)
