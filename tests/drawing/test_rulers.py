import itertools

import pytest

from designer.drawing.primitives import Strokes, Words
from designer.drawing.words import text_width
from designer.drill.drill import Court


def rulers(made):
    return {mark.part: mark for mark in made.marks if mark.kind == "rulers"}


def test_numbers_stand_at_painted_lines_only_and_count_rackets_and_strides(drawing, pair):
    marks = rulers(drawing.made(*pair, rulers=True))
    words = {part: [s.text for s in mark.primitives if isinstance(s, Words)] for part, mark in marks.items()}
    # A stride is a yard: 7 from the net to the service line, 13 to the baseline; a racket is 27 in: 6 and 8 to the sidelines.
    assert sorted(words["along"]) == sorted(["net", "7", "13", "7", "13", "strides"])
    assert sorted(words["across"]) == sorted(["0", "6", "8", "6", "8", "rackets"])


@pytest.mark.parametrize(
    ("units", "across", "along"),
    [
        # ITF Rules of Tennis, rule 1: 27 and 36 ft wide, 78 ft long, service lines 21 ft from the net; a foot is 0.3048 m.
        (
            "metres",
            ["0", "4.11", "5.49", "4.11", "5.49", "metres"],
            ["net", "6.40", "11.89", "6.40", "11.89", "metres"],
        ),
        ("feet", ["0", "13½", "18", "13½", "18", "feet"], ["net", "21", "39", "21", "39", "feet"]),
    ],
)
def test_they_count_in_the_units_that_are_chosen(drawing, pair, units, across, along):
    marks = rulers(drawing.made(*pair, rulers=True, units=units))
    words = {part: [s.text for s in mark.primitives if isinstance(s, Words)] for part, mark in marks.items()}
    assert sorted(words["across"]) == sorted(across)
    assert sorted(words["along"]) == sorted(along)


@pytest.mark.parametrize("across", [False, True])
def test_ticks_are_a_stride_and_a_racket_apart_and_outside_the_fence(drawing, pair, across):
    made = drawing.made(*pair, rulers=True, across=across)
    for part, pitch in (("along", 0.9144), ("across", 0.6858)):
        ticks = next(s for s in rulers(made)[part].primitives if isinstance(s, Strokes))
        places = sorted(made.page.to_court(start)[1 if part == "along" else 0] for start, _ in ticks.lines)
        gaps = [later - earlier for earlier, later in itertools.pairwise(places)]
        assert gaps == [pytest.approx(pitch)] * len(gaps)
        assert 0.0 in [pytest.approx(value) for value in places]


def test_a_small_court_counts_to_its_own_lines(drawing, pair):
    marks = rulers(drawing.made(rulers=True, court=Court(standard="red")))
    words = [s.text for s in marks["across"].primitives if isinstance(s, Words)]
    assert sorted(words) == sorted(["0", "4", "4", "rackets"])


@pytest.mark.parametrize("larger", [1.0, 1.5, 2.0])
def test_the_word_of_a_ruler_never_stands_on_its_numbers(drawing, pair, larger):
    made = drawing.made(*pair, rulers=True, unit=larger * 1.42 / 18)
    words = [s for s in rulers(made)["across"].primitives if isinstance(s, Words)]
    word = next(s for s in words if s.text == "rackets")
    for number in (s for s in words if s is not word):
        beside = word.at[0] + text_width(word.text, word.size) < number.at[0] - text_width(number.text, number.size) / 2
        assert beside or word.at[1] < number.at[1] - number.size


def test_no_rulers_unless_they_are_asked_for(drawing, pair):
    assert rulers(drawing.made(*pair)) == {}
