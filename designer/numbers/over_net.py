"""The ball that lands at a drawn place and passes over the net by a drawn height: both its angle and its speed are sought."""

from __future__ import annotations

import itertools
import math
from dataclasses import replace
from typing import Final

from designer.drill.base import Point
from designer.numbers.aiming import LEAST_ANGLE, MOST_ANGLE, TRIED, Arc, Hit, distance, finely, fly, speed_at
from designer.numbers.balls import GRAVITY
from designer.numbers.flight import FASTEST
from designer.numbers.roots import root
from designer.numbers.surroundings import Surroundings

_STEPS: Final = 12
_LEAST_SPEED: Final = 0.5
_FASTER_FOR_AIR: Final = 1.12
"""Where Newton's method starts from: about so much faster than without air."""

_NO_WAY: Final = 1e-6
"""Metres."""


def over_net_by(hit: Hit, place: Point, clearance: float, around: Surroundings, *, fastest: float) -> Arc | None:
    """Return the ball that lands at ``place`` and clears the net by ``clearance`` metres, at whatever speed that takes.

    Speed follows from the angle, and the steeper the angle the higher over the net. None where no speed up to
    ``fastest`` does it.
    """
    found = _through(hit, place, clearance, around) or _through_slowly(hit, place, clearance, around, fastest)
    if found is None or found[1] > fastest:
        return None
    angle, speed = found
    return finely(replace(hit, speed=speed), place, angle, around)


def _through(hit: Hit, place: Point, clearance: float, around: Surroundings) -> tuple[float, float] | None:
    """Return (angle, speed) of that ball by Newton's method from the parabola through its points; None where that fails."""
    start = _parabola(hit, place, clearance, around)
    if start is None:
        return None
    far = distance(hit, place)

    def off(angle: float, speed: float) -> tuple[float, float] | None:
        flown = fly(replace(hit, speed=speed), place, angle, around, coarse=True)
        over = around.clears(flown)
        return None if over is None else (math.dist(hit.contact, flown.landing.place) - far, over - clearance)

    angle, speed = start
    for _ in range(_STEPS):
        if not (LEAST_ANGLE < angle < MOST_ANGLE and _LEAST_SPEED < speed < FASTEST):
            return None
        here, steeper, faster = off(angle, speed), off(angle + 0.01, speed), off(angle, speed * 1.001)
        if here is None or steeper is None or faster is None:
            return None
        if max(map(abs, here)) < 1e-5:
            return angle, speed
        a, b = ((steeper[row] - here[row]) / 0.01 for row in (0, 1))
        c, d = ((faster[row] - here[row]) / (0.001 * speed) for row in (0, 1))
        whole = a * d - b * c
        if whole == 0:
            return None
        angle -= (here[0] * d - here[1] * c) / whole
        speed -= (here[1] * a - here[0] * b) / whole
    return None


def _parabola(hit: Hit, place: Point, clearance: float, around: Surroundings) -> tuple[float, float] | None:
    """Return the launch without air that passes so high over the net and comes down at ``place``, faster for the air."""
    (x0, y0), (x1, y1) = hit.contact, place
    if y0 * y1 >= 0:
        return None
    share = y0 / (y0 - y1)
    far, near = distance(hit, place), share * distance(hit, place)
    if near < _NO_WAY or far - near < _NO_WAY:
        return None
    end = around.ball.radius if hit.arrives is None else hit.arrives
    top = around.ground.net_height(x0 + share * (x1 - x0)) + clearance + around.ball.radius
    # height(s) = h + s t - s² k through the net and the place
    slope_net, slope_end = (top - hit.height) / near, (end - hit.height) / far
    bend = (slope_net - slope_end) / (far - near)
    if bend <= 0:
        return None
    angle = math.atan(slope_net + bend * near)
    return math.degrees(angle), _FASTER_FOR_AIR * math.sqrt(GRAVITY / (2 * bend)) / math.cos(angle)


def _through_slowly(
    hit: Hit, place: Point, clearance: float, around: Surroundings, fastest: float
) -> tuple[float, float] | None:
    """Return (angle, speed) of that ball by looking at every angle; None where there is none."""

    def excess(angle: float) -> float:
        speed = speed_at(hit, place, angle, around, fastest=fastest)
        if speed is None:
            return math.nan
        found = around.clears(fly(replace(hit, speed=speed), place, angle, around, coarse=True))
        return (-1.0 if found is None else found) - clearance

    tried = [(angle, more) for angle in TRIED if not math.isnan(more := excess(angle))]
    for (angle, more), (next_angle, next_more) in itertools.pairwise(tried):
        if more <= 0 <= next_more:
            chosen = root(excess, angle, next_angle, near=1e-6, small=1e-4)
            speed = speed_at(hit, place, chosen, around, fastest=fastest)
            return None if speed is None else (chosen, speed)
    return None
