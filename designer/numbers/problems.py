"""What cannot be computed, said in a sentence for the user."""

from __future__ import annotations

import math


class Impossible(ValueError):
    """What was asked for cannot be; the text is a whole sentence for the user."""


class NoSuch(Impossible):
    """A ball, surface, level or stroke of that name is not there; the text lists what there is."""


class OutOfReach(Impossible):
    """No ball of this speed and spin does what was asked for. ``limit`` says in a few words what stands in the way."""

    def __init__(self, sentence: str, limit: str) -> None:
        super().__init__(sentence)
        self.limit = limit


def within(value: float, what: str, least: float, most: float, unit: str) -> float:
    """Return ``value`` unchanged; raise ``Impossible`` where it is no number from ``least`` to ``most``."""
    if not math.isfinite(value):
        raise Impossible(f"{what} must be a number, not {value}.")
    if not least <= value <= most:
        raise Impossible(f"{what} of {value:g} {unit} cannot be computed; expected {least:g} to {most:g} {unit}.")
    return value
