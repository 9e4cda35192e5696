import math

import pytest

from designer.numbers.roots import greatest, root


@pytest.mark.parametrize(
    ("function", "low", "high", "answer"),
    [
        (lambda x: x * x - 2, 0, 2, math.sqrt(2)),
        (lambda x: math.cos(x) - x, 0, 1, 0.7390851332151607),
        (lambda x: x**9, -1, 1.5, 0.0),
        (lambda x: 1 if x > 0.3 else -1, 0, 1, 0.3),
        (lambda x: 2 - x, 0, 5, 2.0),
    ],
)
def test_root(function, low, high, answer):
    assert root(function, low, high) == pytest.approx(answer, abs=2e-3 if answer == 0.0 else 1e-8)


def test_no_root_is_refused():
    with pytest.raises(ValueError, match="one sign"):
        root(lambda x: x * x + 1, -1, 1)


def test_greatest():
    assert greatest(lambda x: -((x - 0.7) ** 2), -3, 5) == pytest.approx(0.7, abs=1e-4)
