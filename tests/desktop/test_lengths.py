"""Lengths as they are typed, against the definitions of the units."""

import math

import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from designer.desktop.lengths import metres_typed
from designer.wording.units import distance

INCH = 0.0254
"""Weights and Measures Act 1985, schedule 1: a yard is 0.9144 m exactly, a foot a third and an inch a thirty-sixth of it."""
RACKET = 27 * INCH
"""An adult racket is 27 in long: common practice, no source. ITF Rules of Tennis, rule 4, allows up to 29 in."""
STRIDE = 36 * INCH
"""A long step of a yard: common practice, no source."""


@pytest.mark.parametrize(
    ("text", "metres"),
    [
        ("1.5 m", 1.5),
        ("1,5m", 1.5),
        ("150 cm", 1.5),
        ("1 m 50", 1.5),
        (".5 metres", 0.5),
        ("5 ft 2", 62 * INCH),
        ("5 feet 2 inches", 62 * INCH),
        ("5'2\"", 62 * INCH),
        ("5’ 2”", 62 * INCH),
        ("62 in", 62 * INCH),
        ("3 yards", 3 * 36 * INCH),
        ("2 rackets", 2 * RACKET),
        ("a racket", RACKET),
        ("half a racket", RACKET / 2),
        ("2½ strides", 2.5 * STRIDE),
        ("2 1/2 strides", 2.5 * STRIDE),
        ("two and a half strides", 2.5 * STRIDE),
        ("3 strides and 1 racket", 3 * STRIDE + RACKET),
        ("−1 racket", -RACKET),
        ("0", 0.0),
    ],
)
def test_a_length_is_read_in_the_unit_it_is_typed_in(text, metres):
    assert metres_typed(text) == pytest.approx(metres, abs=1e-9)


@pytest.mark.parametrize(
    ("direction", "units", "metres"),
    [
        ("across", "rackets", 2 * RACKET),
        ("along", "rackets", 2 * STRIDE),
        ("along", "metres", 2.0),
        ("across", "feet", 24 * INCH),
    ],
)
def test_a_bare_number_counts_what_the_window_counts(direction, units, metres):
    assert metres_typed("2", direction, units) == pytest.approx(metres)


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("", "nothing written"),
        ("near the net", "“near”"),
        ("2 bananas", "“bananas”"),
        ("1/0 m", "“1/0”"),
        ("5 ft 2 ft", "no smaller"),
        ("2 rackets 3", "without a unit"),
        ("1000 m", "1000 m; a court"),
        ("1e9 m", "“e”"),
        ("9" * 400, "too long"),
    ],
)
def test_what_is_no_length_is_told_with_what_was_expected(text, said):
    with pytest.raises(ValueError, match=said) as reason:
        metres_typed(text)
    assert "Traceback" not in str(reason.value)


@given(st.text(max_size=12))
@example("INF")
@example("nan m")
def test_whatever_is_typed_is_a_length_or_a_sentence(text):
    try:
        metres = metres_typed(text)
    except ValueError as reason:
        assert str(reason).endswith(".")  # noqa: PT017 - either may come
    else:
        assert math.isfinite(metres)


@given(st.integers(1, 200_000), st.sampled_from(["across", "along"]), st.sampled_from(["rackets", "metres", "feet"]))
def test_every_distance_that_is_shown_can_be_typed(tenths, direction, units):
    metres = tenths / 10_000
    words = distance(metres, direction, units, exact=True)
    # To the inch in feet, to three centimetres of a count in rackets and strides, else to the centimetre.
    assert metres_typed(words, direction, units) == pytest.approx(metres, abs=0.031)
