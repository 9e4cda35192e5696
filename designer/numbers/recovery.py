"""Where to wait for the next ball: on the bisector of the angles the opponent can hit, or where both ends take as long.

H. Cochet, 1933, tested and supported on tracked matches by Benguigui et al., Scientific Reports 14 (2024) 3364. The widest
angles are not assumed to be the corners: they are the widest at which a ball of the opponent's level clears the net and
lands in, whichever of the opponent's strokes does it.
"""

from __future__ import annotations

import math
from bisect import bisect_left
from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache
from typing import Final

from designer.drill.base import Point
from designer.numbers.aiming import Hit, Limit, fly, low_ball
from designer.numbers.bounce import second_flight
from designer.numbers.flight import Flight, State
from designer.numbers.levels import Level, Movement
from designer.numbers.movement import time_to_cover
from designer.numbers.problems import Impossible
from designer.numbers.roots import root
from designer.numbers.surroundings import Surroundings

BEHIND: Final = 1.0
"""The second place that is given, in metres behind the baseline."""

_STROKES: Final = ("drive", "slice")
_STROKES_AT_THE_NET: Final = ("volley",)
"""Strokes that the opponent may choose between; a drop shot or a lob is not what one waits for."""

_AT_THE_NET: Final = 4.5
"""An opponent nearer to the net than this, in metres, volleys. Common practice, no source."""

_ANGLES: Final = (-30, -20, -14, -10, -7, -5, -3, -1, 1, 3, 5, 7, 9, 11, 14, 17, 21, 26, 32, 38, 45)
"""Launch angles, degrees, at which an opponent's stroke is flown; what lies between is read off three of them."""

_WIDEST: Final = math.radians(80)
_CLOSE: Final = 0.3
_OVERHEAD: Final = 2.7
"""How high, in metres, a racket reaches. Common practice, no source."""
_JUST_IN: Final = 1e-3
_INWARD: Final = 1e-6


@dataclass(frozen=True, slots=True)
class Extreme:
    """The widest ball to one side: radians to the right of straight up the court for the hitter, and what ends it.

    ``landing``: where it comes down. ``stroke``: which of the opponent's strokes it is. ``flight`` goes to the ground.
    """

    azimuth: float
    stroke: str
    limit: Limit
    landing: Point
    flight: Flight


@dataclass(frozen=True, slots=True)
class Recovery:
    """Where to wait for a ball hit from ``contact``, as points on the court.

    ``at_baseline`` and ``behind`` lie on the bisector of the two extremes, at the own baseline and one metre behind it.
    ``equal_time`` lies level with ``behind``: from there both extreme balls leave as much time. ``left`` and ``right``
    are as the hitter of the ball sees them.
    """

    contact: Point
    left: Extreme
    right: Extreme
    azimuth: float
    at_baseline: Point
    behind: Point
    equal_time: Point | None


def azimuth_of(contact: Point, place: Point) -> float:
    """Return how many radians to the right of straight up the court a hitter at ``contact`` sees ``place``."""
    forward = -1.0 if contact[1] > 0 else 1.0
    return math.atan2((place[0] - contact[0]) * forward, (place[1] - contact[1]) * forward)


def on_line(contact: Point, azimuth: float, y: float) -> Point:
    """Return where the straight line from ``contact`` at ``azimuth`` radians crosses the line across at ``y``."""
    return (contact[0] + math.tan(azimuth) * (y - contact[1]), y)


def bisector(contact: Point, left: Point, right: Point) -> float:
    """Return the azimuth half-way between two places, in radians to the hitter's right: straight flight is assumed."""
    return (azimuth_of(contact, left) + azimuth_of(contact, right)) / 2


@lru_cache(maxsize=512)
def recovery(
    contact: Point, opponent: Level, own: Movement, around: Surroundings, *, half_width: float | None = None
) -> Recovery:
    """Return where to wait for the next ball of an opponent who hits from ``contact``.

    ``half_width``: half the court that counts, singles unless given. Raises ``Impossible`` with a sentence where the
    opponent has no ball that clears the net and lands in.
    """
    wide = around.ground.singles if half_width is None else half_width
    if abs(contact[1]) < _CLOSE:
        raise Impossible("At the net every angle is open; there is no place to recover to.")
    left, right = _extremes(contact, opponent, around, wide)
    azimuth = (left.azimuth + right.azimuth) / 2
    end = -math.copysign(around.ground.baseline, contact[1])
    back = end + math.copysign(BEHIND, end)
    return Recovery(
        contact=contact,
        left=left,
        right=right,
        azimuth=azimuth,
        at_baseline=on_line(contact, azimuth, end),
        behind=on_line(contact, azimuth, back),
        equal_time=equal_time((left.flight, right.flight), back, own, around),
    )


def _extremes(contact: Point, opponent: Level, around: Surroundings, wide: float) -> tuple[Extreme, Extreme]:
    strokes = _STROKES_AT_THE_NET if abs(contact[1]) < _AT_THE_NET else _STROKES
    low_balls = [_LowBalls(_hit(contact, stroke, opponent), stroke, around, wide) for stroke in strokes]
    found: list[Extreme] = []
    for side in (-1, 1):
        widest = [extreme for balls in low_balls if (extreme := balls.widest(side)) is not None]
        if not widest:
            x, y = contact
            raise Impossible(
                f"From {abs(x):.1f} m beside the middle and {abs(y):.1f} m from the net a {opponent.title.lower()} has no"
                " ball that clears the net and lands in."
            )
        found.append(max(widest, key=lambda extreme: side * extreme.azimuth))
    return found[0], found[1]


def _hit(contact: Point, stroke: str, opponent: Level) -> Hit:
    habit = opponent.habit(stroke)
    return Hit(contact, habit.height.number, habit.speed.number, habit.topspin.number)


class _LowBalls:
    """The lowest balls of one stroke that clear the net, for any azimuth.

    Flight is the same in every direction; only how far away the net is differs, and how high. So a few launch angles are
    flown once, straight ahead.
    """

    def __init__(self, hit: Hit, stroke: str, around: Surroundings, wide: float) -> None:
        self.hit = hit
        self.stroke = stroke
        self.around = around
        self.wide = wide
        self.forward = -1.0 if hit.contact[1] > 0 else 1.0
        away = Hit((0.0, 0.0), hit.height, hit.speed, hit.topspin)
        self.flown = [fly(away, (0.0, 1.0), angle, around, coarse=True) for angle in _ANGLES]
        self.farthest = max(flight.landing.y for flight in self.flown)

    def shortest(self, azimuth: float) -> float:
        """Return how far from the contact the ball lands that just clears the net; infinite where none does."""
        to_net = abs(self.hit.contact[1]) / math.cos(azimuth)
        at_net = on_line(self.hit.contact, azimuth, 0.0)
        needed = self.around.ground.net_height(at_net[0]) + self.around.ball.radius

        def height(number: int) -> float:
            state = self.flown[number].along(to_net)
            return -1.0 if state is None else state.z

        above = bisect_left(range(len(self.flown)), needed, key=height)
        if above == len(self.flown):
            return math.inf
        first = max(0, min(above - 1, len(self.flown) - 3))
        known = [(height(number), self.flown[number].landing.y) for number in range(first, first + 3)]
        return _between([(high, far) for high, far in known if high >= 0], needed)

    def inside(self, azimuth: float) -> tuple[float, float, Limit]:
        """Return how far along the line at ``azimuth`` the court beyond the net begins and ends, and at which line."""
        sine, cosine = math.sin(azimuth), math.cos(azimuth)
        right, away = self.hit.contact[0] * self.forward, abs(self.hit.contact[1])
        begins, ends = away / cosine, (away + self.around.ground.baseline) / cosine
        limit: Limit = "the back line"
        if abs(sine) < 1e-12:
            return (begins, ends, limit) if abs(right) <= self.wide else (1.0, 0.0, limit)
        sides = sorted(((-self.wide - right) / sine, (self.wide - right) / sine))
        if sides[1] < ends:
            ends, limit = sides[1], "the sideline"
        return max(begins, sides[0]), ends, limit

    def room(self, azimuth: float) -> float:
        """Return how much farther than the shortest ball the court goes on; negative where no ball lands in."""
        begins, ends, _ = self.inside(azimuth)
        if begins >= min(ends, self.farthest):
            return max(min(ends, self.farthest) - begins, -100.0) - 1e-9
        return max(min(ends, self.farthest) - max(begins, self.shortest(azimuth)), -100.0)

    def widest(self, side: int) -> Extreme | None:
        """Return the widest ball to one side (-1 left, 1 right), None where this stroke has none that lands in.

        A ball at a wide angle soon crosses the sideline and must be down by then: the widest is the one that only just
        clears the net and lands on the line.
        """
        contact = self.hit.contact
        tried = (side * math.radians(degrees) for degrees in range(72, -73, -4))
        inner = next((azimuth for azimuth in tried if self.room(azimuth) >= 0), None)
        if inner is None:
            return None
        outer = side * min(side * inner + math.radians(4), _WIDEST)
        azimuth = root(self.room, inner, outer, near=1e-8) - side * _INWARD if self.room(outer) < 0 else outer
        _, far, limit = self.inside(azimuth)
        if far > self.farthest:
            far, limit = self.farthest, "the speed"
        place = _from(contact, azimuth, far - _JUST_IN)
        arc = low_ball(self.hit, place, self.around)
        return None if arc is None else Extreme(azimuth, self.stroke, limit, place, arc.flight)


def _between(known: Sequence[tuple[float, float]], at: float) -> float:
    """Return the value at ``at`` of the polynomial through the points ``known``."""
    return sum(
        value * math.prod((at - other) / (place - other) for other, _ in known if other != place)
        for place, value in known
    )


def _from(contact: Point, azimuth: float, far: float) -> Point:
    forward = -1.0 if contact[1] > 0 else 1.0
    return (contact[0] + forward * far * math.sin(azimuth), contact[1] + forward * far * math.cos(azimuth))


def equal_time(balls: Sequence[Flight], y: float, own: Movement, around: Surroundings) -> Point | None:
    """Return the place on the line across at ``y`` from which both balls leave as many seconds to spare.

    This is not the bisector: that shares out the angle, this the seconds. None where one side always leaves more.
    """
    paths = [_playable(ball, around) for ball in balls]
    half = around.ground.side_fence

    def difference(x: float) -> float:
        first, second = (spare((x, y), path, own) for path in paths)
        return first - second

    if difference(-half) * difference(half) > 0:
        return None
    return (root(difference, -half, half, near=1e-6), y)


def _playable(ball: Flight, around: Surroundings) -> tuple[State, ...]:
    """Return a ball between its bounces, where a racket can reach it."""
    _, after = second_flight(ball, around.ball, around.surface, density=around.density)
    return tuple(state for state in after.states if state.z <= _OVERHEAD)


def spare(place: Point, path: Sequence[State], own: Movement) -> float:
    """Return the seconds to spare for somebody at ``place`` when the ball is hit, meeting it where that is easiest."""
    return max(
        state.time - own.delay - time_to_cover(max(0.0, math.dist(place, state.place) - own.reach), own)
        for state in path
    )
