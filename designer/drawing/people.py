"""People on the picture. The nose of who plays stands on the exact place; who waits or collects is a thin broken ring."""

from __future__ import annotations

import math
from collections.abc import Iterator
from typing import Final, Literal

from designer.drawing.geometry import ahead
from designer.drawing.pen import Pen, aside
from designer.drawing.primitives import Ellipse, Path, Point, Primitive, Style

RADIUS: Final = 7.1
NOSE: Final = 3.6
WAITING: Final = 6.0
RACKET_AT: Final = 62.0
"""Degrees from where a person faces to the racket, on the hand's side."""

Look = Literal["plain", "you", "coach"]


def centre_of(pen: Pen, place: Point, facing: Point) -> Point:
    """Return the middle of the disc of a person whose nose is at ``place``."""
    return ahead(place, facing, -(RADIUS + NOSE) * pen.unit)


def racket_tip(pen: Pen, centre: Point, facing: Point, hand: str, turn: float = RACKET_AT) -> Point:
    """Return the middle of a person's racket."""
    return ahead(centre, aside(facing, turn, hand), (RADIUS + 3.2 + 3.3) * pen.unit)


def person(
    pen: Pen,
    place: Point,
    facing: Point,
    letter: str,
    *,
    hand: str = "right",
    look: Look = "plain",
    racket_turn: float = RACKET_AT,
) -> Iterator[Primitive]:
    """Yield a person with the nose on ``place``; ``facing`` is a unit vector of the page."""
    u = pen.unit
    centre = centre_of(pen, place, facing)
    casing = pen.casing_role(centre)
    side = aside(facing, racket_turn, hand)
    grip, throat = ahead(centre, side, RADIUS * u), ahead(centre, side, (RADIUS + 3.2) * u)
    strings = ahead(throat, side, 3.3 * u)
    degrees = math.degrees(math.atan2(side[1], side[0])) % 360
    nose = (
        place,
        ahead(place, facing, -(NOSE + 1.3) * u, 3.6 * u),
        ahead(place, facing, -(NOSE + 1.3) * u, -3.6 * u),
    )
    yield Ellipse(strings, (4.75 * u, 3.65 * u), Style(fill=casing), degrees)
    yield Path((grip, throat), pen.style(casing, 3.3))
    yield Path(nose, Style(casing, 2 * u, (), "round", casing), closed=True)
    yield Ellipse(centre, ((RADIUS + 1.65) * u, (RADIUS + 1.65) * u), Style(fill=casing))
    yield Path((grip, throat), pen.style("ink", 1.3))
    yield Ellipse(strings, (3.3 * u, 2.2 * u), pen.style("ink", 0.9, fill="paper"), degrees)
    yield Path(nose, Style(fill="ink"), closed=True)
    full = look == "you"
    yield Ellipse(centre, (RADIUS * u, RADIUS * u), pen.style("ink", 1.3, fill="ink" if full else "paper"))
    if look == "coach":
        yield Ellipse(centre, (5.1 * u, 5.1 * u), pen.style("ink", 0.7))
    size = 8.4 if look == "coach" else 9.6
    yield pen.words(letter, centre, size, "paper" if full else "ink", bold=True)


def waiting(pen: Pen, place: Point, letter: str) -> Iterator[Primitive]:
    """Yield someone who waits or collects: a ring centred on the place."""
    yield from pen.disc(place, WAITING, pen.style("ink", 0.75, (2.0, 1.7), fill="paper"))
    yield pen.words(letter, place, 8.6, "ink")
