"""Walks against closed forms: the gambler's ruin, and the plain sum."""

from fractions import Fraction

import pytest

from designer.numbers.chain import walk
from designer.numbers.problems import Impossible


def ruin(point, rungs):
    return walk(
        rungs // 2,
        lambda n: [(point, n + 1), (1 - point, n - 1)],
        lambda n: {0: "lose", rungs: "win"}.get(n),
    )


def test_gamblers_ruin_in_fractions():
    # Closed form: (1 - r^k)/(1 - r^n), r = q/p, k of n rungs up; fair: k (n - k) steps.
    r = Fraction(2, 3)
    found = ruin(Fraction(3, 5), 10)
    assert found.ends["win"] == (1 - r**5) / (1 - r**10)
    assert ruin(Fraction(1, 2), 10).steps == 25
    assert found.ends["win"] + found.ends["lose"] == 1


def test_a_long_ladder_in_floats():
    r = 0.48 / 0.52
    assert ruin(0.52, 200).ends["win"] == pytest.approx((1 - r**100) / (1 - r**200), rel=1e-9)


def test_a_walk_that_never_ends_is_refused():
    with pytest.raises(Impossible, match="never ends"):
        walk(0, lambda n: [(1, 1 - n)], lambda n: None)


def test_too_many_states_are_refused():
    with pytest.raises(Impossible, match="lower goal"):
        walk(0, lambda n: [(1, n + 1)], lambda n: None)
