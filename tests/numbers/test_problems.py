import math

import pytest

from designer.numbers.problems import Impossible, OutOfReach, within


def test_a_value_in_its_range_comes_back_as_it_is():
    assert within(30.0, "A speed", 0.1, 100.0, "m/s") == 30.0


@pytest.mark.parametrize("value", [math.nan, math.inf, -math.inf])
def test_what_is_no_number_is_refused_in_a_sentence(value):
    with pytest.raises(Impossible, match=r"^A speed must be a number, not .*\.$"):
        within(value, "A speed", 0.1, 100.0, "m/s")


def test_what_is_out_of_range_says_what_was_expected():
    with pytest.raises(Impossible, match=r"^A speed of 300 m/s cannot be computed; expected 0\.1 to 100 m/s\.$"):
        within(300.0, "A speed", 0.1, 100.0, "m/s")


def test_every_problem_is_a_value_error():
    assert issubclass(Impossible, ValueError)
    assert OutOfReach("Too far.", "the speed").limit == "the speed"
