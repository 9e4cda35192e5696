"""Places as a coach reads them out. Positions are painted lines and whole counts from them, worked out by hand."""

import pytest

from designer.court.standards import ground
from designer.drill.drill import Court
from designer.wording.places import place_words, standing_words
from designer.wording.units import RACKET, STRIDE

TENNIS = ground(Court(run_back=5.4864, side_run=3.048))
RED = ground(Court(standard="red"))
BASE, SINGLES = 11.8872, 4.1148


@pytest.mark.parametrize(
    ("point", "words"),
    [
        (
            (-SINGLES + 2 * RACKET, -BASE + STRIDE),
            "2 rackets in from the left singles line, 1 stride inside the baseline",
        ),
        # The same place as that player sees it, from the other end.
        (
            (SINGLES - 2 * RACKET, BASE - STRIDE),
            "2 rackets in from the left singles line, 1 stride inside the baseline",
        ),
        ((0.0, -BASE - STRIDE), "1 stride behind the centre mark"),
        ((0.0, -6.4008), "the T"),
        ((0.0, -BASE), "the centre mark"),
        ((3 * RACKET, -BASE - STRIDE), "3 rackets right of the centre mark, 1 stride behind the baseline"),
        ((0.0, -9.144), "half-way between the T and the centre mark"),
        ((-5.4864 - 3.048 + 0.3, 0.0), "against the left side fence, level with the net"),
        ((RACKET, BASE + 5.4864 - 0.3), "1 racket left of the centre mark, against the back fence"),
        ((3 * RACKET, 6.5), "3 rackets left of the T, just behind the service line"),
    ],
)
def test_a_place_is_said_from_the_nearest_painted_lines(point, words):
    assert place_words(TENNIS, point) == words


def test_an_owner_is_put_to_the_first_landmark():
    point = (SINGLES - 2 * RACKET, BASE - STRIDE)
    assert (
        place_words(TENNIS, point, owner="B") == "2 rackets in from B's left singles line, 1 stride inside the baseline"
    )


def test_units_are_followed():
    point = (-SINGLES + 2 * RACKET, -BASE + STRIDE)
    assert place_words(TENNIS, point, "metres") == "1.37 m in from the left singles line, 0.91 m inside the baseline"
    assert place_words(TENNIS, point, "feet") == "4 ft 6 in inside the left singles line, 3 ft inside the baseline"


def test_a_person_stands_on_a_crossing():
    assert standing_words(TENNIS, (0.0, -BASE)) == "on the centre mark"


def test_a_court_with_nothing_painted_in_the_middle_is_counted_from_the_middle():
    # A red court has no centre line (ITF, smaller courts for ten-and-under).
    assert place_words(RED, (RACKET, -5.4864 + 2 * STRIDE)).startswith("1 racket right of the middle, ")
    assert place_words(RED, (0.0, -5.4864 - RACKET)) == "in the middle, 1 racket behind the baseline"
