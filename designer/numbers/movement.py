"""Running: v(t) = v_max (1 - e^(-t/tau)) from standing, along paths with corners, until a ball is within reach.

Sources: Furusawa, Hill & Parkinson 1927; Samozino et al. 2016; Clark et al. 2017.
"""

from __future__ import annotations

import itertools
import math
from collections.abc import Sequence
from typing import Final

from designer.drill.base import Point
from designer.numbers.levels import Movement
from designer.numbers.roots import root

_SHARP: Final = 1e-9


def covered(seconds: float, movement: Movement) -> float:
    """Return how many metres somebody runs in ``seconds`` from standing: v_max (t - tau (1 - e^(-t/tau)))."""
    if seconds <= 0:
        return 0.0
    top, tau = movement.top_speed, movement.time_constant
    return top * (seconds + tau * math.expm1(-seconds / tau))


def time_to_cover(metres: float, movement: Movement, *, speed: float = 0.0) -> float:
    """Return the seconds that ``metres`` take somebody who runs already at ``speed`` (m/s), 0 for standing."""
    if metres <= 0:
        return 0.0
    ahead = _time_at(speed, movement)
    goal = covered(ahead, movement) + metres
    # Never slower than by the straight line that the curve tends to.
    latest = goal / movement.top_speed + movement.time_constant
    return root(lambda seconds: covered(seconds, movement) - goal, ahead, latest, near=1e-12) - ahead


def _time_at(speed: float, movement: Movement) -> float:
    """Return how long after a standing start ``speed`` is reached."""
    share = min(speed / movement.top_speed, 1 - 1e-9)
    return -movement.time_constant * math.log1p(-share) if share > 0 else 0.0


def _speed_at(seconds: float, movement: Movement) -> float:
    return -movement.top_speed * math.expm1(-seconds / movement.time_constant)


def length(path: Sequence[Point]) -> float:
    """Return how long a path of points is, metres."""
    return sum(math.dist(start, end) for start, end in itertools.pairwise(path))


def path_time(path: Sequence[Point], movement: Movement) -> float:
    """Return the seconds it takes to run along ``path``.

    At a corner the part of the speed that points the new way is kept, and none of the rest: a right angle is a new
    start. Common practice, no source.
    """
    seconds, speed = 0.0, 0.0
    legs = [(start, end) for start, end in itertools.pairwise(path) if math.dist(start, end) > _SHARP]
    for number, (start, end) in enumerate(legs):
        if number:
            speed *= max(0.0, _cosine(legs[number - 1], (start, end)))
        metres = math.dist(start, end)
        taken = time_to_cover(metres, movement, speed=speed)
        speed = _speed_at(_time_at(speed, movement) + taken, movement)
        seconds += taken
    return seconds


def _cosine(first: tuple[Point, Point], second: tuple[Point, Point]) -> float:
    (ax, ay), (bx, by) = ((end[0] - start[0], end[1] - start[1]) for start, end in (first, second))
    return (ax * bx + ay * by) / (math.hypot(ax, ay) * math.hypot(bx, by))


def path_to_reach(path: Sequence[Point], ball: Point, reach: float) -> tuple[Point, ...]:
    """Return ``path``, led on to ``ball`` and cut off where that first comes within ``reach`` metres."""
    whole = (*path, ball)
    kept: list[Point] = [whole[0]]
    if math.dist(whole[0], ball) <= reach:
        return tuple(kept)
    for start, end in itertools.pairwise(whole):
        share = _enters(start, end, ball, reach)
        if share is not None:
            kept.append((start[0] + share * (end[0] - start[0]), start[1] + share * (end[1] - start[1])))
            break
        kept.append(end)
    return tuple(kept)


def _enters(start: Point, end: Point, middle: Point, radius: float) -> float | None:
    """Return how far along from ``start`` to ``end``, as a share, a circle is entered; None where it is not."""
    dx, dy = end[0] - start[0], end[1] - start[1]
    fx, fy = start[0] - middle[0], start[1] - middle[1]
    a, b, c = dx * dx + dy * dy, fx * dx + fy * dy, fx * fx + fy * fy - radius * radius
    inside = b * b - a * c
    if a < _SHARP * _SHARP or inside < 0:
        return None
    share = (-b - math.sqrt(inside)) / a
    return share if 0 <= share <= 1 else None


def time_needed(path: Sequence[Point], ball: Point, movement: Movement, *, warned: bool = False) -> float:
    """Return the seconds from the opponent's hit until ``ball`` is within reach, going along ``path``.

    ``warned``: the ball is called or known, so nobody has to wait to see where it goes.
    """
    run = path_time(path_to_reach(path, ball, movement.reach), movement)
    return run + (0.0 if warned else movement.delay)
