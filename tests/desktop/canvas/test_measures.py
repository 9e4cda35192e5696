import pytest

from designer.court.standards import ground
from designer.desktop.canvas.measures import pieces_needed, size_words
from designer.drill.base import place
from designer.drill.drill import Court
from designer.drill.items import Area, Barrier, Cone, Line, Rectangle

GROUND = ground(Court())
NB = "\N{NO-BREAK SPACE}"


def line(*corners, **more):
    return Line(kind="line", id="l", corners=corners, **more)


def test_an_area_is_said_in_what_a_coach_has_in_hand_with_its_share():
    shape = Rectangle(form="rectangle", corners=((0.0, 6.4008), (4.1148, 10.9728)))
    area = Area(kind="area", id="a", shape=shape, marked="discs")
    # 13 ft 6 in by 15 ft of 27 by 39 (ITF Rules of Tennis, rule 1). Two corners are painted crossings and need no disc.
    assert (
        size_words(GROUND, area, "rackets")
        == f"6 rackets wide, 5 strides deep, 10{NB}% of the court, 19{NB}% of its half, 50{NB}% of its width, 2 discs"
    )


def test_throw_down_lines_are_counted_for_the_sides_that_are_painted_nowhere():
    shape = Rectangle(form="rectangle", corners=((0.0, 8.2296), (4.1148, 11.8872)))
    area = Area(kind="area", id="a", shape=shape, marked="throw-down")
    # Two sides lie on the baseline and the singles line. The others, 4.1148 m and 3.6576 m, take one every 4 ft (1.2192 m): 4 and 3.
    assert size_words(GROUND, area, "metres").endswith("7 throw-down lines")


def test_a_line_says_its_length_what_it_takes_to_lay_it_and_what_it_divides():
    across = line((-4.1148, -8.2296), (4.1148, -8.2296))
    assert size_words(GROUND, across, "rackets") == "12 rackets long, 7 throw-down lines or 5 discs"
    along = line((1.3716, -11.8872), (1.3716, 0.0), marked="discs", pieces=5, runs_on=True)
    # 1.3716 m is two rackets of the six from the middle to the singles line: 8 of 12 rackets lie left of it.
    assert (
        size_words(GROUND, along, "metres")
        == f"11.89 m long, 5 discs, imagined longer at both ends, 67{NB}% of the half left of it, 33{NB}% right"
    )


def test_a_barrier_says_its_length_and_what_stands_at_one_place_nothing():
    assert size_words(GROUND, Barrier(kind="barrier", id="b", corners=((0, 0), (0, 2.7432))), "metres") == "2.74 m long"
    assert size_words(GROUND, Cone(kind="cone", id="c", place=place(0.0, 1.0)), "metres") == ""


@pytest.mark.parametrize(
    ("corners", "marked", "count"),
    [
        (((0, 0), (8.2296, 0)), "discs", 5),  # three rackets apart
        (((0, 0), (0.5, 0)), "discs", 2),  # one at each end
        (((0, 0), (1, 0), (1, 1)), "discs", 3),  # one at each corner
        (((0, 0), (8.2296, 0)), "throw-down", 7),  # one every 4 ft
        (((0, 0), (0.3, 0)), "throw-down", 1),
        (((0, 0), (8.2296, 0)), "chalk", None),
    ],
)
def test_pieces_are_counted_from_the_length(corners, marked, count):
    assert pieces_needed(corners, marked) == count
