"""Distances in words. The counts are worked out by hand from 27 in to a racket and 1 yd to a stride."""

import pytest

from designer.wording.counts import halves, listed, lowered, many, number, ordinal
from designer.wording.units import RACKET, STRIDE, distance, height


@pytest.mark.parametrize(
    ("metres", "direction", "words"),
    [
        (RACKET, "across", "1 racket"),
        (2 * RACKET, "across", "2 rackets"),
        (0.5 * RACKET, "across", "½ racket"),
        (2.5 * RACKET, "across", "2½ rackets"),
        (STRIDE, "along", "1 stride"),
        (3 * STRIDE, "along", "3 strides"),
        (0.5 * STRIDE, "along", "½ stride"),
        # Neither a stride nor two: counted in rackets, as an adult lays a racket down.
        (RACKET, "along", "1 racket"),
        (2.2 * STRIDE, "along", "2 strides"),
        (2.4 * STRIDE, "along", "2½ strides"),
    ],
)
def test_across_is_counted_in_rackets_and_along_in_strides(metres, direction, words):
    assert distance(metres, direction) == words


def test_what_a_rule_depends_on_is_never_rounded():
    # 2.5 m is no count: a coach who lays out 2½ strides would put the line 21 cm wrong.
    assert distance(2.5, "along", exact=True) == "2.5 m"
    assert distance(2 * STRIDE, "along", exact=True) == "2 strides"


def test_feet_and_metres():
    # 1 in is 0.0254 m exactly; a singles sideline is 13 ft 6 in from the middle (rules of tennis).
    assert distance(4.1148, "across", "feet") == "13 ft 6 in"
    assert distance(0.9144, "along", "feet") == "3 ft"
    assert distance(0.0762, "across", "feet") == "3 in"
    assert distance(4.1148, "across", "metres") == "4.11 m"
    assert height(0.9144, "rackets") == "0.91 m"


def test_counts_in_words():
    assert [number(n) for n in (1, 12, 13)] == ["one", "twelve", "13"]
    assert [ordinal(n) for n in (1, 3, 10, 11, 22, 23)] == ["first", "third", "tenth", "11th", "22nd", "23rd"]
    assert many(1, "start") == "one start"
    assert many(20, "start") == "20 starts"
    assert halves(3.5) == "3½"
    assert listed(["A", "B", "C"]) == "A, B and C"


def test_a_letter_is_never_made_small():
    assert lowered("A bounces") == "A bounces"
    assert lowered("Serve wide") == "serve wide"
    assert lowered("“Stop” freezes") == "“Stop” freezes"
