"""The picked ball from the side, in metres along its way and above the ground: pure geometry, nothing painted."""

from __future__ import annotations

import math
from collections.abc import Iterable
from dataclasses import dataclass

from designer.drill.base import Point
from designer.numbers.aiming import Hit, fly
from designer.numbers.flight import Flight, State
from designer.numbers.problems import Impossible
from designer.numbers.shots import ShotNumbers
from designer.numbers.situation import Situation
from designer.numbers.strike import Strike

Line = tuple[Point, ...]
"""Points (metres from the contact along the way the ball is sent, metres above the ground)."""


@dataclass(frozen=True, slots=True)
class Met:
    """Where a ball is met: by whom, and there (along, height)."""

    letter: str
    at: Point


@dataclass(frozen=True, slots=True)
class Profile:
    """One ball from the side.

    ``flight`` ends at the bounce, ``after`` at the second one. ``window``: the lowest and the highest ball that clear the
    net and land in. ``net``: (along, height) of its top where the ball passes, None where it does not cross. ``inside``:
    from where to where along the ground a ball is in. ``lines``: where painted lines across the court are passed.
    """

    flight: Line
    after: Line
    window: tuple[Line, Line] | None
    net: Point | None
    inside: tuple[float, float] | None
    lines: tuple[float, ...]
    met: tuple[Met, ...]

    @property
    def top(self) -> float:
        """The highest that the ball, or any that is drawn round it, or the net comes."""
        heights = [height for line in (self.flight, self.after, *self.edges) for _, height in line]
        return max(heights) if self.net is None else max(*heights, self.net[1])

    @property
    def is_between(self) -> bool:
        """Whether the ball flies between the curves of its window: a steeper ball than the farthest one falls shorter."""
        return self.window is not None and self.window[1][-1][0] >= self.flight[-1][0]

    @property
    def edges(self) -> tuple[Line, ...]:
        """The curves of the window that are shown.

        The farthest ball may be a lob of four times the height of this one: where it is no edge of anything it would only
        press the ball down, or leave the frame.
        """
        if self.window is None:
            return ()
        return self.window if self.is_between else self.window[:1]

    @property
    def ends(self) -> tuple[float, float]:
        """Least and most metres along that are shown: from the contact to where it bounces a second time or is met."""
        last = max(s for s, _ in (*self.flight, *(one.at for one in self.met)))
        return (0.0, max(last, self.after[-1][0] if not self.met else last))


def profile(here: Situation, shot: ShotNumbers) -> Profile | None:
    """Return the ball of ``shot`` from the side, None where it cannot be hit or none is drawn."""
    hit, step = shot.strike, here.sequence.step(shot.shot)
    if hit is None or step is None:
        return None
    way = _Way(hit.flight)
    met = tuple(
        Met(meeting.hitter, way.seen(_ball_at(hit, meeting.there_is)))
        for meeting in shot.meetings
        if math.isfinite(meeting.there_is)
    )
    net = hit.flight.net
    left, right, low, high = here.box(step)
    crosses = hit.clearance is not None and net is not None
    return Profile(
        flight=way.line(hit.flight.states),
        after=way.line(hit.after.states),
        window=_window(here, hit, way) if crosses else None,
        net=(way.seen(net)[0], here.ground.net_height(net.x)) if crosses and net is not None else None,
        inside=way.inside(left, right, low, high) if crosses else None,
        lines=tuple(way.across(y) for y in _lines(here, high) if way.passes(y)) if crosses else (),
        met=met,
    )


def _lines(here: Situation, high: float) -> Iterable[float]:
    far = 1.0 if high > 0 else -1.0
    service = here.ground.service_line
    return tuple(far * y for y in (service, here.ground.baseline) if y is not None)


def _ball_at(hit: Strike, time: float) -> State:
    return hit.flight.at(time) if time <= hit.flight.landing.time else hit.after.at(time)


class _Way:
    """The vertical plane through the contact and the bounce."""

    def __init__(self, flown: Flight) -> None:
        start, end = flown.states[0], flown.landing
        self.x, self.y = start.x, start.y
        dx, dy = end.x - start.x, end.y - start.y
        size = math.hypot(dx, dy) or 1.0
        self.dx, self.dy = dx / size, dy / size

    def seen(self, state: State) -> Point:
        return ((state.x - self.x) * self.dx + (state.y - self.y) * self.dy, state.z)

    def line(self, states: Iterable[State]) -> Line:
        return tuple(self.seen(state) for state in states)

    def passes(self, y: float) -> bool:
        return abs(self.dy) > 1e-6 and (y - self.y) / self.dy > 0

    def across(self, y: float) -> float:
        """Return how far along the line across the court at ``y`` is passed."""
        return (y - self.y) / self.dy

    def inside(self, left: float, right: float, low: float, high: float) -> tuple[float, float] | None:
        """Return from where to where the way lies over a box of the court."""
        start, end = 0.0, math.inf
        for at, by, least, most in ((self.x, self.dx, left, right), (self.y, self.dy, low, high)):
            if abs(by) < 1e-9:
                if not least <= at <= most:
                    return None
                continue
            a, b = sorted(((least - at) / by, (most - at) / by))
            start, end = max(start, a), min(end, b)
        return (start, end) if start < end < math.inf else None


def _window(here: Situation, hit: Strike, way: _Way) -> tuple[Line, Line] | None:
    found = hit.window
    if found is None:
        return None
    start = hit.flight.states[0]
    struck = Hit((start.x, start.y), hit.height, hit.speed, hit.topspin, hit.sidespin)
    towards = (start.x + start.vx, start.y + start.vy)
    try:
        low, high = (fly(struck, towards, angle, here.around, coarse=True) for angle in (found.low, found.high))
    except Impossible:
        return None
    return way.line(low.states), way.line(high.states)
