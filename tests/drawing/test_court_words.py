"""The court's own words on narrow paper, cut with lines and areas by shapely, a general geometry library."""

import pytest
from shapely.geometry import LineString, box

from designer.court.standards import ground
from designer.drawing.court_marks import fence
from designer.drawing.primitives import Words, words_bounds
from tests.drawing.conftest import A5
from tests.drawing.test_solved import covered

NARROW = A5 * 157.6 / 146
"""Metres a mark unit on a card of 3 × 5 in, whose court is 146 pt wide."""
LEAST = 8.0 / 0.98
"""Size in u of 8 pt, the trade's floor for labels, on a card printed up to 2 per cent smaller at 1 pt a unit."""


def court_words(made):
    """Return (text, size in u, box) of NET, YOU, deuce and ad."""
    return [
        (word.text, word.size / made.unit, words_bounds(word))
        for mark in made.marks
        if mark.kind == "court words"
        for word in mark.primitives
        if isinstance(word, Words)
    ]


@pytest.mark.parametrize("name", ["a-chooses", "return-past", "wide-start"])
def test_deuce_and_ad_stand_between_the_court_and_the_fence(drawing, name):
    court = ground(drawing.drill(name).court)
    made = drawing.of(name, unit=NARROW, patient=True)
    sides = [(size, where) for text, size, where in court_words(made) if text in ("deuce", "ad")]
    assert len(sides) == 4
    lines = [LineString(line.as_tuple()) for line in court.lines]
    room = box(*fence(court, made.page))
    for size, where in sides:
        assert size >= LEAST
        assert all(box(*where).distance(line) > made.unit for line in lines)
        assert room.contains(box(*where).buffer(made.unit))


@pytest.mark.parametrize(("name", "points"), [("volley-four", 146), ("volley-four", 133), ("one-lands-short", 146)])
def test_net_touches_no_line_and_no_area(drawing, name, points):
    """One has a strip along the whole net, the other somebody who waits where NET usually stands."""
    made = drawing.of(name, unit=A5 * 157.6 / points, patient=True)
    (where,) = (where for text, _, where in court_words(made) if text == "NET")
    areas = [box(*mark.bounds) for mark in made.marks if mark.kind == "keep out area" and mark.part.startswith("edge")]
    lines = [LineString(line.as_tuple()) for line in ground(drawing.drill(name).court).lines]
    assert len(areas) == (2 if name == "volley-four" else 0)
    assert all(box(*where).distance(each) > 0.5 * made.unit for each in (*areas, *lines))


def test_you_stays_inside_the_fence_of_a_court_on_its_side(drawing):
    made = drawing.of("a-chooses", unit=A5 * 157.6 / 120, patient=True, across=True)
    (where,) = (where for text, _, where in court_words(made) if text == "YOU")
    assert box(*fence(ground(drawing.drill("a-chooses").court), made.page)).contains(box(*where))


def test_deuce_is_left_out_where_it_would_hide_where_a_ball_is_met(drawing):
    """A red court on its side on 3 × 5 in has no free place left; the other words say which box is which."""
    metres = 2 * ground(drawing.drill("hoop-red").court).side_fence / 98
    made = drawing.of("hoop-red", unit=metres, patient=True, across=True, you="A")
    assert list(covered(made)) == []
    assert {text for text, _, _ in court_words(made)} == {"YOU", "NET", "deuce", "ad"}
