"""How large the court is on screen: the mark unit of a scale, and the scale that shows a picture whole. Pure numbers."""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass
from typing import Final

from designer.drawing.primitives import Bounds

UNIT: Final = 1.42
UNIT_SCALE: Final = 23.0
UNIT_MOST: Final = 2.6
"""A mark unit is 1.42 px up to 23 px a metre, so that the smallest word is 12 px; then it grows by the root of the zoom."""

LEAST: Final = 4.0
MOST: Final = 500.0
"""Scales beyond these, in pixels a metre, show nothing that anyone could use."""

ACROSS_GAINS: Final = 1.3
"""Across is taken by itself where it shows the court so much larger."""

MARGIN: Final = 12.0
"""Room round a fitted picture, in pixels."""

SETTLED: Final = 0.01
"""A scale that changes by less than this share is found: a picture is dear, and no eye sees the rest."""


def unit_pixels(scale: float, letters: float = 1.0) -> float:
    """Return the mark unit in pixels at ``scale`` pixels a metre; ``letters`` is how much larger than usual words are to be.

    Smaller than usual they are not: the smallest word of a court is as small as one may be.
    """
    return max(letters, 1.0) * min(UNIT * math.sqrt(max(scale, UNIT_SCALE) / UNIT_SCALE), UNIT_MOST)


def unit_metres(scale: float, letters: float = 1.0) -> float:
    """Return the mark unit in metres at ``scale`` pixels a metre."""
    return unit_pixels(scale, letters) / scale


@dataclass(frozen=True, slots=True)
class Fit:
    """The largest scale at which a picture is seen whole, and its extent there in metres of the page."""

    scale: float
    extent: Bounds


def fitted(
    width: float,
    height: float,
    extent_at: Callable[[float], Bounds],
    court: tuple[float, float],
    letters: float = 1.0,
) -> Fit:
    """Return the fit of a picture of ``court`` (metres across the page, metres up it) into ``width`` by ``height`` pixels.

    ``extent_at`` says how far it reaches at a mark unit in metres: the marks round the court keep their size on screen,
    so they take more metres the smaller the court is drawn. Pictures are dear, so few are asked for.
    """
    room = (max(width - 2 * MARGIN, 1.0), max(height - 2 * MARGIN, 1.0))
    scale = clamped(0.8 * min(room[0] / court[0], room[1] / court[1]))
    extent = extent_at(unit_metres(scale, letters))
    for _ in range(4):
        fitting = _fitting_marks(room, extent, court, unit_metres(scale, letters), letters)
        if abs(fitting - scale) < SETTLED * scale:
            break
        scale = fitting
        extent = extent_at(unit_metres(scale, letters))
    return Fit(min(scale, _fitting(room, extent)), extent)


def most(width: float, height: float, court: tuple[float, float]) -> float:
    """Return the scale at which ``court`` alone would fill ``width`` by ``height`` pixels: no picture of it can be larger."""
    return max(min((width - 2 * MARGIN) / court[0], (height - 2 * MARGIN) / court[1]), LEAST)


def _fitting_marks(
    room: tuple[float, float], extent: Bounds, court: tuple[float, float], unit: float, letters: float
) -> float:
    """Return the scale at which the court fits with what stands round it, taking that to keep its size in mark units."""
    left, low, right, high = extent
    round_it = ((right - left - court[0]) / unit, (high - low - court[1]) / unit)
    scale = UNIT_SCALE
    for _ in range(6):
        marks = unit_pixels(scale, letters)
        scale = clamped(min((room[axis] - round_it[axis] * marks) / court[axis] for axis in (0, 1)))
    return scale


def _fitting(room: tuple[float, float], extent: Bounds) -> float:
    left, low, right, high = extent
    return clamped(min(room[0] / (right - left), room[1] / (high - low)))


def clamped(scale: float) -> float:
    """Return ``scale`` kept between the least and the most."""
    return min(max(scale, LEAST), MOST)


def lies_across(upright: Fit, across: Fit) -> bool:
    """Whether the court is so much larger across that it should lie so by itself."""
    return across.scale >= ACROSS_GAINS * upright.scale
