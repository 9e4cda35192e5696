"""A place typed in words is where those words say, on every court and in every unit."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from designer.court.standards import court_names, ground
from designer.desktop.forms.box import Refused
from designer.desktop.forms.typed_places import metres_of, place_of, place_text
from designer.drill.drill import Court

TENNIS = ground(Court(standard="tennis"))
RACKET, STRIDE = 0.6858, 0.9144  # 27 in and 1 yd, exactly


# The lines are those of the ITF Rules of Tennis 2025, rule 1: baseline 39 ft and service line 21 ft from the net,
# singles lines 13 ft 6 in and doubles lines 18 ft from the middle.
@pytest.mark.parametrize(
    ("text", "point"),
    [
        ("near end: 2 rackets in from the left singles line, 1 stride inside the baseline", (-2.7432, -10.9728)),
        ("far end: 2 rackets in from the left singles line, 1 stride inside the baseline", (2.7432, 10.9728)),
        ("far: on the right doubles line, on the service line", (-5.4864, 6.4008)),
        ("Near end, the T", (0, -6.4008)),
        ("far end: 1½ strides behind the centre mark", (0, 13.2588)),
        ("near end: half-way between the T and the outer corner of the right service box", (2.05740, -6.4008)),
        ("near end: ½ racket left of the centre mark, 1.5 m behind the baseline.", (-0.3429, -13.3872)),
        ("near end: 1 ft 8 in in from the left doubles line, 2 ft 6 in from the net", (-4.9784, -0.762)),
        ("near end: 1 ft 8 in inside the left doubles line, on the baseline", (-4.9784, -11.8872)),
        ("2.74, -6.40", (2.74, -6.4)),
        ("−2.74; 6.4 m", (-2.74, 6.4)),
    ],
)
def test_a_place_is_where_its_words_say(text, point):
    assert place_of(TENNIS, text) == pytest.approx(point, abs=1e-4)


def test_words_without_an_end_mean_the_end_that_the_place_was_at():
    words = "1 racket right of the T, on the service line"
    assert place_of(TENNIS, words, "far") == pytest.approx((-RACKET, 6.4008))
    assert place_of(TENNIS, words, "near") == pytest.approx((RACKET, -6.4008))


@pytest.mark.parametrize(
    ("text", "sentence"),
    [
        ("somewhere", "is no place"),
        ("2 rackets in from the left singles line", "Please say a place"),
        ("2 rackets in from the tramline, on the baseline", "no line “the tramline” on this court"),
        ("2 elbows in from the left singles line, on the baseline", "“2 elbows” is no distance"),
        ("1, 500", "within 100 m"),
    ],
)
def test_what_is_no_place_is_refused_in_a_sentence(text, sentence):
    with pytest.raises(Refused, match=sentence):
        place_of(TENNIS, text)


def test_a_distance_is_said_in_any_unit():
    assert metres_of("2 rackets") == 2 * RACKET
    assert metres_of("1½ strides") == 1.5 * STRIDE
    assert metres_of("1.37 m") == 1.37
    assert metres_of("4 ft 6 in") == pytest.approx(54 * 0.0254)


@given(
    st.sampled_from(sorted(court_names())),
    st.sampled_from(["rackets", "metres", "feet"]),
    st.floats(-7, 7),
    st.floats(-15, 15),
    st.booleans(),
)
def test_what_a_form_says_of_a_place_leads_back_to_it(name, units, x, y, on_counts):
    if on_counts:
        x, y = round(x / RACKET * 2) * RACKET / 2, round(y / STRIDE) * STRIDE
    court = ground(Court(standard=name))
    # Pacing errs by more: the words name a count that is within 3 cm, and feet are said to the inch.
    assert math.dist(place_of(court, place_text(court, (x, y), units)), (x, y)) < 0.05
