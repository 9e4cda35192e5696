"""Where a function of one number is zero, and where it is greatest."""

from __future__ import annotations

import math
from collections.abc import Callable
from typing import Final

Function = Callable[[float], float]

_GOLDEN: Final = (math.sqrt(5) - 1) / 2


def root(function: Function, low: float, high: float, *, near: float = 1e-9, small: float = 0.0) -> float:
    """Return where ``function`` changes its sign between ``low`` and ``high``, to within ``near``.

    Stops too where its value is no farther from zero than ``small``. False position after Anderson and Björck, with
    halving where that dawdles. Raises ``ValueError`` where both ends have one sign.
    """
    at_low, at_high = function(low), function(high)
    if at_low == 0.0:
        return low
    if at_high == 0.0:
        return high
    if (at_low > 0) == (at_high > 0):
        raise ValueError(f"the function has one sign at {low:g} and {high:g}")
    for turn in range(200):
        middle = (low * at_high - high * at_low) / (at_high - at_low)
        if turn % 4 == 3 or not min(low, high) < middle < max(low, high):
            middle = (low + high) / 2
        at_middle = function(middle)
        if abs(at_middle) <= small or abs(high - low) < near:
            return middle
        if (at_middle > 0) == (at_high > 0):
            share = 1 - at_middle / at_high
            at_low *= share if share > 0 else 0.5
        else:
            low, at_low = high, at_high
        high, at_high = middle, at_middle
    return high


def greatest(function: Function, low: float, high: float, *, near: float = 1e-4) -> float:
    """Return where ``function``, which rises and then falls, is greatest between ``low`` and ``high``."""
    first, second = high - _GOLDEN * (high - low), low + _GOLDEN * (high - low)
    at_first, at_second = function(first), function(second)
    while high - low > near:
        if at_first < at_second:
            low, first, at_first = first, second, at_second
            second = low + _GOLDEN * (high - low)
            at_second = function(second)
        else:
            high, second, at_second = second, first, at_first
            first = high - _GOLDEN * (high - low)
            at_first = function(first)
    return (low + high) / 2
