"""The inverse of a flight: how to hit a ball so that it lands at a drawn place, and how much room there is for error.

The laws of flight are the same in every direction. So one flight straight ahead gives, for a launch angle, how far a ball
lands and how far it has curved aside; turned by that, it lands on the line to its place.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass, replace
from typing import Final, Literal

from designer.drill.base import Point
from designer.numbers.flight import STEP, Flight, flight, launch
from designer.numbers.problems import Impossible, OutOfReach
from designer.numbers.roots import greatest, root
from designer.numbers.surroundings import Surroundings

COARSE: Final = 0.1
"""Seconds a step while searching; the last steps of a search are flown finely."""

LEAST_ANGLE: Final = -80.0
MOST_ANGLE: Final = 85.0
TRIED: Final = (-80.0, -50.0, -30.0, -18.0, -10.0, -5.0, 0.0, 6.0, 12.0, 20.0, 30.0, 40.0, 50.0, 62.0, 74.0, 85.0)
"""Launch angles, degrees, that a search looks at first."""

CLOSE: Final = 1e-5
"""A ball that lands nearer than this to its place, in metres, lands there."""


@dataclass(frozen=True, slots=True)
class Hit:
    """How a ball is struck, all but its angle: from where, how high (m), how fast (m/s), with what spins (rpm).

    ``arrives``: how high above the ground it is to be at its place, for a ball that is taken before it bounces.
    """

    contact: Point
    height: float
    speed: float
    topspin: float = 0.0
    sidespin: float = 0.0
    arrives: float | None = None


@dataclass(frozen=True, slots=True)
class Arc:
    """One way to hit: the launch angle in degrees, and the flight."""

    angle: float
    flight: Flight


@dataclass(frozen=True, slots=True)
class Ways:
    """The low and the high ball that land at a place; both None where it is too far. ``farthest``: metres it can go."""

    low: Arc | None
    high: Arc | None
    farthest: float


def fly(hit: Hit, towards: Point, angle: float, around: Surroundings, *, coarse: bool = False) -> Flight:
    """Return the flight of ``hit`` sent in the direction of ``towards`` at ``angle`` degrees."""
    struck = launch(
        hit.contact,
        towards,
        height=hit.height,
        speed=hit.speed,
        angle=angle,
        topspin=hit.topspin,
        sidespin=hit.sidespin,
    )
    step = COARSE if coarse else STEP
    return flight(struck, around.ball, density=around.density, floor=hit.arrives, step=step)


def _carried(hit: Hit, angle: float, around: Surroundings, *, coarse: bool) -> tuple[float, float]:
    """Return (how far from the contact the ball lands, how many radians to the right of where it was sent)."""
    away = replace(hit, contact=(0.0, 0.0))
    landing = fly(away, (0.0, 1.0), angle, around, coarse=coarse).landing
    return math.hypot(landing.x, landing.y), math.atan2(landing.x, landing.y)


def turned(hit: Hit, place: Point, aside: float) -> Point:
    """Return the point to send a ball towards that curves ``aside`` radians to the right, so that it goes to ``place``."""
    heading = math.atan2(place[0] - hit.contact[0], place[1] - hit.contact[1]) - aside
    return (hit.contact[0] + math.sin(heading), hit.contact[1] + math.cos(heading))


def distance(hit: Hit, place: Point) -> float:
    """Return how far ``place`` is from the contact, in metres over the ground."""
    return math.hypot(place[0] - hit.contact[0], place[1] - hit.contact[1])


def ways_to(hit: Hit, place: Point, around: Surroundings) -> Ways:
    """Return the low and the high ball that land at ``place``, whatever stands in their way.

    Raises ``Impossible`` with a sentence where a value of ``hit`` cannot be.
    """
    low = low_ball(hit, place, around)
    best, farthest = _farthest(hit, place, around)
    return Ways(low, None if best is None else _high_ball(hit, place, best, around), farthest)


def low_ball(hit: Hit, place: Point, around: Surroundings) -> Arc | None:
    """Return the lowest ball that lands at ``place``, None where it is too far for this speed."""
    excess = _excess(hit, place, around)
    start = TRIED.index(0.0)
    more = excess(0.0)
    if more >= 0:
        for number in range(start, 0, -1):
            if excess(TRIED[number - 1]) < 0:
                return finely(hit, place, root(excess, TRIED[number - 1], TRIED[number], small=1e-3), around)
        return None
    for number in range(start + 1, len(TRIED)):
        before, more = more, excess(TRIED[number])
        if more >= 0:
            return finely(hit, place, root(excess, TRIED[number - 1], TRIED[number], small=1e-3), around)
        if more < before:
            # It falls shorter again: the farthest ball lies between, and may just be far enough.
            best, _ = _farthest(hit, place, around)
            rising = max(
                (angle for angle in TRIED if best is not None and angle < best and excess(angle) < 0), default=0
            )
            return None if best is None else finely(hit, place, root(excess, rising, best, small=1e-3), around)
    return None


def high_ball(hit: Hit, place: Point, around: Surroundings) -> Arc | None:
    """Return the highest ball that lands at ``place``, None where it is too far for this speed."""
    best, _ = _farthest(hit, place, around)
    return None if best is None else _high_ball(hit, place, best, around)


def _high_ball(hit: Hit, place: Point, best: float, around: Surroundings) -> Arc | None:
    excess = _excess(hit, place, around)
    for number in range(len(TRIED) - 1, 0, -1):
        upper, lower = TRIED[number], max(TRIED[number - 1], best)
        if lower >= upper:
            break
        if excess(lower) >= 0 > excess(upper):
            return finely(hit, place, root(excess, lower, upper, small=1e-3), around)
    return None


def _excess(hit: Hit, place: Point, around: Surroundings) -> Callable[[float], float]:
    far = distance(hit, place)
    return lambda angle: _carried(hit, angle, around, coarse=True)[0] - far


def _farthest(hit: Hit, place: Point, around: Surroundings) -> tuple[float | None, float]:
    """Return (the launch angle of the farthest ball, None where it falls short of ``place``; how far it goes)."""
    excess = _excess(hit, place, around)
    tried = [excess(angle) for angle in TRIED]
    best = tried.index(max(tried))
    angle = greatest(excess, TRIED[max(best - 1, 0)], TRIED[min(best + 1, len(TRIED) - 1)], near=0.01)
    more = excess(angle)
    return (angle if more >= 0 else None), distance(hit, place) + more


def finely(hit: Hit, place: Point, angle: float, around: Surroundings) -> Arc:
    """Return the arc near ``angle`` that lands within ``CLOSE`` of ``place``, by secants from the coarse answer."""
    far = distance(hit, place)
    before, (carried, aside) = angle, _carried(hit, angle, around, coarse=False)
    off_before = carried - far
    angle += 1e-3
    for _ in range(20):
        carried, aside = _carried(hit, angle, around, coarse=False)
        off = carried - far
        if abs(off) < CLOSE or off == off_before:
            break
        before, angle, off_before = angle, angle - off * (angle - before) / (off - off_before), off
    return Arc(angle, fly(hit, turned(hit, place, aside), angle, around))


def speed_at(hit: Hit, place: Point, angle: float, around: Surroundings, *, fastest: float) -> float | None:
    """Return the speed, m/s, at which a ball launched at ``angle`` degrees lands at ``place``; None above ``fastest``."""
    far = distance(hit, place)

    def excess(speed: float) -> float:
        return _carried(replace(hit, speed=speed), angle, around, coarse=True)[0] - far

    slow = 0.1
    if excess(fastest) < 0 or excess(slow) > 0:
        return None
    return root(excess, slow, fastest, near=1e-6, small=1e-4)


def least_speed(hit: Hit, place: Point, around: Surroundings, *, fastest: float) -> float | None:
    """Return the least speed, m/s, that carries a ball to ``place`` at any angle; None where ``fastest`` does not."""

    def slowness(angle: float) -> float:
        speed = speed_at(hit, place, angle, around, fastest=fastest)
        return -fastest * 2 if speed is None else -speed

    best = -slowness(greatest(slowness, -20.0, 70.0, near=0.05))
    return None if best > fastest else best


Box = tuple[float, float, float, float]
"""(left, right, low, high): least and most x, least and most y, of the part of the court a ball must land in."""

Limit = Literal["the net", "the back line", "the sideline", "the speed", "nothing"]


@dataclass(frozen=True, slots=True)
class Window:
    """The launch angles, in degrees, between which a ball clears the net and lands in; what ends it at either side.

    ``too_low`` and ``too_high`` say what the ball does just outside. ``shortest`` is how far from the contact, in
    metres, the lowest of these balls lands.
    """

    low: float
    high: float
    too_low: Limit
    too_high: Limit
    shortest: float

    @property
    def degrees(self) -> float:
        """How wide it is."""
        return self.high - self.low


def window(hit: Hit, towards: Point, box: Box, around: Surroundings, *, near: float) -> Window:
    """Return the window round the angle ``near`` for a ball sent towards ``towards``.

    Raises ``OutOfReach`` where the ball of angle ``near`` itself does not clear the net and land in ``box``.
    """

    def over(angle: float) -> float:
        found = around.clears(fly(hit, towards, angle, around, coarse=True))
        return -1.0 if found is None else found

    def inside(angle: float) -> float:
        return _inside(fly(hit, towards, angle, around, coarse=True).landing.place, box)[0]

    def good(angle: float) -> float:
        flown = fly(hit, towards, angle, around, coarse=True)
        cleared = around.clears(flown)
        return min(-1.0 if cleared is None else cleared, _inside(flown.landing.place, box)[0])

    if good(near) < 0:
        raise OutOfReach("No launch angle round this one clears the net and lands in.", "the net")
    low = _edge(good, near, -1)
    high = _edge(good, near, 1)
    shortest = fly(hit, towards, low, around).landing
    return Window(
        low=low,
        high=high,
        too_low=_limit(low - 1e-3, over, inside, hit, towards, box, around),
        too_high=_limit(high + 1e-3, over, inside, hit, towards, box, around),
        shortest=math.hypot(shortest.x - hit.contact[0], shortest.y - hit.contact[1]),
    )


def _edge(good: Callable[[float], float], near: float, way: int) -> float:
    """Return the angle at which ``good`` turns negative, going from ``near`` up (``way`` 1) or down (-1)."""
    inner, step = near, 0.5
    while LEAST_ANGLE < inner < MOST_ANGLE:
        outer = min(max(inner + way * step, LEAST_ANGLE), MOST_ANGLE)
        if good(outer) < 0:
            return root(good, inner, outer, near=1e-7, small=1e-7)
        inner, step = outer, step * 1.7
    return inner


def _limit(
    angle: float,
    over: Callable[[float], float],
    inside: Callable[[float], float],
    hit: Hit,
    towards: Point,
    box: Box,
    around: Surroundings,
) -> Limit:
    if not LEAST_ANGLE < angle < MOST_ANGLE:
        return "nothing"
    if over(angle) < 0:
        return "the net"
    if inside(angle) >= 0:
        return "nothing"
    return _inside(fly(hit, towards, angle, around, coarse=True).landing.place, box)[1]


def _inside(place: Point, box: Box) -> tuple[float, Limit]:
    """Return how far inside ``box`` a landing is, negative outside, and which edge is nearest."""
    left, right, low, high = box
    x, y = place
    back: Limit = "the back line"
    # The end of the box at the net is no line: a ball that clears the net has passed it.
    ends = (high - y) if high > 0 else (y - low)
    sides = min(x - left, right - x)
    return (ends, back) if ends < sides else (sides, "the sideline")


def check_contact(hit: Hit, around: Surroundings) -> None:
    """Raise ``Impossible`` with a sentence where a ball cannot be hit from there."""
    if around.behind_the_fence(hit.contact):
        x, y = hit.contact
        raise Impossible(
            f"The ball is hit from behind the fence, {abs(x):.2f} m from the middle and {abs(y):.2f} m from the net;"
            f" expected at most {around.ground.side_fence:.2f} m and {around.ground.back_fence:.2f} m."
        )
    if hit.height < around.ball.radius:
        raise Impossible(
            f"The ball is hit {hit.height:.3g} m above the ground; its middle cannot be lower than {around.ball.radius:.3g} m."
        )
