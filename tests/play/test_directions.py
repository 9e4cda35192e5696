"""Directions against the trade's own definitions: cross-court crosses the lengthwise middle, down the line does not.

Common practice, no source, for the width of the middle (four rackets) and for contacts in it.
"""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from designer.court.standards import ground
from designer.drill.base import place
from designer.drill.drill import Court
from designer.drill.movement import Shot
from designer.drill.people import Job, Spot
from designer.drill.setting import EMPTY
from designer.play.directions import direction, inside, line_back, wing
from designer.play.sequence import sequence

TENNIS = ground(Court())
RED = ground(Court(standard="red"))


def shot(start, end, on=TENNIS, **values):
    play = sequence(EMPTY.having(Shot(id="one", by="A", contact=place(*start), to=place(*end), **values)), on, ())
    return play.steps[0], play, on


@pytest.mark.parametrize(
    ("start", "end", "expected"),
    [
        ((3.0, -11.0), (-3.0, 9.0), "cross-court"),
        ((3.0, -11.0), (3.0, 9.0), "down the line"),
        ((-3.0, 11.0), (3.0, -9.0), "cross-court"),
        ((-3.0, 11.0), (-3.0, -9.0), "down the line"),
        ((3.0, -11.0), (1.3716, 9.0), "middle"),  # two rackets from the middle, on the edge of the strip
        ((3.0, -11.0), (1.45, 9.0), "down the line"),
        ((0.5, -11.0), (3.0, 9.0), None),  # from the middle both answers would do
    ],
)
def test_directions(start, end, expected):
    assert direction(*shot(start, end)) == expected


def test_what_has_no_direction():
    assert direction(*shot((1.0, -12.0), (-3.0, 5.0), stroke="serve")) is None
    assert direction(*shot((3.0, -11.0), (3.0, -9.0))) is None  # a drop feed stays at its end
    play = sequence(EMPTY.having(Shot(id="one", by="A")), TENNIS, ())
    assert direction(play.steps[0], play, TENNIS) is None


def test_the_middle_is_as_wide_as_the_court_lets_it_be():
    assert direction(*shot((3.0, -5.0), (1.2, 4.0))) == "middle"
    assert direction(*shot((2.5, -5.0), (1.2, 4.0), RED)) == "down the line"


@given(st.floats(-5, 5), st.floats(-5, 5))
def test_mirrored_and_turned_shots_have_the_same_direction(x0, x1):
    found = direction(*shot((x0, -11.0), (x1, 9.0)))
    assert direction(*shot((-x0, -11.0), (-x1, 9.0))) == found
    assert direction(*shot((-x0, 11.0), (-x1, -9.0))) == found


@pytest.mark.parametrize(
    ("start", "end", "hand", "stroke_wing", "expected"),
    [
        # A right-hander's forehand from the left side: away across the body, or straight up the line.
        ((-3.0, -11.0), (3.0, 9.0), "right", "forehand", "inside-out"),
        ((-3.0, -11.0), (-3.0, 9.0), "right", "forehand", "inside-in"),
        ((3.0, -11.0), (-3.0, 9.0), "right", "forehand", None),
        ((3.0, -11.0), (-3.0, 9.0), "left", "forehand", "inside-out"),
        ((3.0, -11.0), (-3.0, 9.0), "right", "backhand", "inside-out"),
        ((3.0, 11.0), (-3.0, -9.0), "right", "forehand", "inside-out"),
    ],
)
def test_inside_balls(start, end, hand, stroke_wing, expected):
    one = Shot(id="one", by="A", contact=place(*start), to=place(*end), wing=stroke_wing)
    play = sequence(EMPTY.having(one), TENNIS, (Job(letter="A", hand=hand),))
    assert wing(play.steps[0]) == stroke_wing
    assert inside(play.steps[0], play, TENNIS) == expected


@pytest.mark.parametrize(
    ("back_to", "expected"), [(3.0, "same line back"), (-3.0, "new line"), (0.5, "same line back")]
)
def test_the_line_a_ball_goes_back_on(back_to, expected):
    play = sequence(
        EMPTY.having(
            Spot(id="spot-a", job="A", place=place(2.5, -12.0)),
            Shot(id="in", by="B", contact=place(3.0, 11.0), to=place(3.0, -9.0)),
            Shot(id="out", by="A", after="in", to=place(back_to, 9.0)),
        ),
        TENNIS,
        (),
    )
    assert line_back(play.step("in"), play, TENNIS) is None
    assert line_back(play.step("out"), play, TENNIS) == expected


# Each row is one ball as the hitter sees it, in rackets right of the middle: where the last ball was hit from (as its own
# hitter sees it), where this one is met and lands (the landing as the receiver sees it, so that cross-court keeps its side),
# the hand and the wing; then what the trade calls it. Half the singles court is six rackets; the middle is two each way.
# Common practice, no source.
RACKET = 0.6858
CASES = [
    # came from, met, lands, hand, wing, direction, inside, back
    (4.0, 4.0, 4.0, "right", "forehand", "cross-court", None, "same line back"),
    (4.0, 4.0, -4.0, "right", "forehand", "down the line", None, "new line"),
    (-4.0, -4.0, -4.0, "right", "backhand", "cross-court", None, "same line back"),
    (-4.0, -4.0, 4.0, "right", "backhand", "down the line", None, "new line"),
    (-4.0, 4.0, 4.0, "right", "forehand", "cross-court", None, "new line"),
    (-4.0, 4.0, -4.0, "right", "forehand", "down the line", None, "same line back"),
    (-4.0, -4.0, -4.0, "right", "forehand", "cross-court", "inside-out", "same line back"),
    (-4.0, -4.0, 4.0, "right", "forehand", "down the line", "inside-in", "new line"),
    (4.0, 4.0, 4.0, "right", "backhand", "cross-court", "inside-out", "same line back"),
    (4.0, 4.0, -4.0, "right", "backhand", "down the line", "inside-in", "new line"),
    # A left-hander's forehand side is the other one.
    (4.0, 4.0, 4.0, "left", "forehand", "cross-court", "inside-out", "same line back"),
    (4.0, 4.0, -4.0, "left", "forehand", "down the line", "inside-in", "new line"),
    (-4.0, -4.0, -4.0, "left", "forehand", "cross-court", None, "same line back"),
    (4.0, 4.0, 4.0, "left", "backhand", "cross-court", None, "same line back"),
    # From the middle, one racket to either side, there is neither a line nor a cross-court, and no inside ball.
    (4.0, 0.0, 4.0, "right", "forehand", None, None, "same line back"),
    (4.0, 1.0, -4.0, "right", "forehand", None, None, "new line"),
    (4.0, -1.0, 4.0, "left", "backhand", None, None, "same line back"),
    (4.0, 1.01, -4.0, "right", "forehand", "down the line", None, "new line"),
    # Into the middle strip, its edge counted in, is "middle" from anywhere; it is back on the line of a ball from near it.
    (4.0, 4.0, 2.0, "right", "forehand", "middle", None, "same line back"),
    (4.0, 4.0, 2.01, "right", "forehand", "cross-court", None, "same line back"),
    (4.0, 0.0, 0.0, "right", "forehand", "middle", None, "same line back"),
    (6.0, 6.0, 2.0, "right", "forehand", "middle", None, "same line back"),
    (6.0, 6.0, 1.99, "right", "forehand", "middle", None, "new line"),
    # On the lines: on the singles line is as wide as it gets, on the centre line is the middle.
    (6.0, 6.0, 6.0, "right", "forehand", "cross-court", None, "same line back"),
    (6.0, 6.0, -6.0, "right", "forehand", "down the line", None, "new line"),
    (0.0, 0.0, 6.0, "right", "forehand", None, None, "new line"),
]


@pytest.mark.parametrize("far", [False, True], ids=["near", "far"])
@pytest.mark.parametrize("case", CASES, ids=str)
def test_a_table_of_balls(case, far):
    came, met, lands, hand, stroke_wing, *expected = case

    def own(right, away):
        return (-right * RACKET, away) if far else (right * RACKET, -away)

    def theirs(right, away):
        return (right * RACKET, -away) if far else (-right * RACKET, away)

    play = sequence(
        EMPTY.having(
            Shot(id="in", by="B", contact=place(*theirs(came, 11.0)), to=place(*own(met, 9.0))),
            Shot(
                id="out",
                by="A",
                after="in",
                contact=place(*own(met, 11.0)),
                to=place(*theirs(lands, 9.0)),
                wing=stroke_wing,
            ),
        ),
        TENNIS,
        (Job(letter="A", hand=hand), Job(letter="B")),
    )
    step = play.step("out")
    assert [direction(step, play, TENNIS), inside(step, play, TENNIS), line_back(step, play, TENNIS)] == expected
