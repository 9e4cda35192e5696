"""Distances as a coach counts them: rackets across, strides along, or metres, or feet and inches."""

from __future__ import annotations

from typing import Final, Literal

from designer.wording.counts import digits

Units = Literal["rackets", "metres", "feet"]
Direction = Literal["across", "along"]

RACKET: Final = 0.6858
"""An adult racket, 27 in, in metres."""
STRIDE: Final = 0.9144
"""A long stride, one yard, in metres."""
_INCH: Final = 0.0254
_NEAR: Final = 0.03
"""A distance this near a count in metres is that count: pacing errs by more."""

KEY: Final = "Rackets are adult rackets. Six strides make service line to baseline."
"""What a racket and a stride are, for whoever lays the drill out."""
EXACT: Final = "Exact: a rule depends on it."
"""What "exact" behind the name of a thing means."""


def distance(metres: float, direction: Direction, units: Units = "rackets", *, exact: bool = False) -> str:
    """Return a distance in words: "2 rackets", "1 stride", "1.37 m", "4 ft 6 in".

    In rackets and strides it is counted to the half: in rackets across, in strides along, and in rackets along where
    that is nearer and shorter than two strides. With ``exact``, a distance that is no such count is given in
    metres, since a rule depends on it.
    """
    metres = abs(metres)
    if units == "metres":
        return _metres(metres)
    if units == "feet":
        return _feet(metres)
    unit, count = _counted(metres, direction)
    if exact and abs(count * unit - metres) > _NEAR:
        return _metres(metres)
    return digits(count, "racket" if unit == RACKET else "stride")


def _counted(metres: float, direction: Direction) -> tuple[float, float]:
    rackets = max(0.5, round(metres / RACKET * 2) / 2)
    strides = max(0.5, round(metres / STRIDE * 2) / 2)
    if direction == "across":
        return RACKET, rackets
    whole = strides in (0.5, 1) and abs(strides * STRIDE - metres) <= _NEAR
    return (STRIDE, strides) if whole or metres >= 2 * STRIDE else (RACKET, rackets)


def height(metres: float, units: Units = "rackets") -> str:
    """Return a height in words: metres, or feet and inches; nobody counts a height in rackets."""
    return _feet(metres) if units == "feet" else _metres(metres)


def _metres(metres: float) -> str:
    return f"{metres:.2f}".rstrip("0").rstrip(".") + " m"


def _feet(metres: float) -> str:
    feet, inches = divmod(round(metres / _INCH), 12)
    if feet and inches:
        return f"{feet} ft {inches} in"
    return f"{feet} ft" if feet else f"{inches} in"
