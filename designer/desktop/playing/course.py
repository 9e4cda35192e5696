"""How a sequence goes in time: when each ball is hit, where it is meanwhile, and where everybody is. No Qt.

Balls fly as the numbers say, and people run as their level does. What nothing is known of, such as a ball without a landing
place, is passed over in a moment.
"""

from __future__ import annotations

import itertools
import math
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Final

from designer.drill.base import Point
from designer.drill.places import locate
from designer.numbers.movement import covered, length, path_time, path_to_reach, time_to_cover
from designer.numbers.problems import Impossible
from designer.numbers.shots import numbers_of
from designer.numbers.situation import Situation
from designer.numbers.strike import Strike
from designer.play.sequence import Step

UNKNOWN: Final = 1.0
"""Seconds for a ball of which nothing is drawn but who hits it."""

NEW_BALL: Final = 0.8
"""Seconds between a ball that is over and the next that is fed."""

AT_THE_END: Final = 0.6
"""Seconds after the last ball has bounced twice."""


@dataclass(frozen=True, slots=True)
class Way:
    """Somebody on the way: from when, after how many seconds' wait, along which points."""

    starts: float
    delay: float
    points: tuple[Point, ...]


@dataclass(frozen=True, slots=True)
class Leg:
    """One ball in play, in seconds from the start: hit at ``starts``, over or met at ``ends``."""

    step: Step
    strike: Strike | None
    starts: float
    ends: float


@dataclass(frozen=True, slots=True)
class Moment:
    """What is to be seen: the ball's (x, y, height) in metres, None where it is not known; everybody's place."""

    leg: Leg
    ball: tuple[float, float, float] | None
    people: Mapping[str, Point]


class Course:
    """The balls chosen so far, from the first on, and what may follow the last of them.

    ``first``: the id of the ball to begin with, None for the first of the drill. Raises ``ValueError`` with a sentence
    where no ball is drawn or they come after one another in a circle.
    """

    def __init__(self, here: Situation, first: str | None = None) -> None:
        self.here = here
        self._numbers = numbers_of(here)
        self._legs: list[Leg] = []
        self._ways: dict[str, list[Way]] = {}
        self._stands: dict[str, Point] = {}
        steps = here.sequence.steps
        if not steps:
            raise Impossible("There is no ball to play yet: draw one first.")
        begin = here.sequence.step(first) if first is not None else None
        self._firsts = tuple(step for step in steps if here.sequence.before[step.shot.id] is None)
        for spot in here.setting.spots.values():
            place = None if begin is None else here.sequence.person_at(spot.job, begin.shot.id)
            place = place or locate(here.setting, spot.place)
            if place is not None:
                self._stands[spot.job] = place
        if begin is not None:
            self._hit(begin, 0.0)
        elif len(self._firsts) == 1:
            self._hit(self._firsts[0], 0.0)
        self._go_on()

    @property
    def legs(self) -> tuple[Leg, ...]:
        """Return the balls chosen so far."""
        return tuple(self._legs)

    @property
    def ends(self) -> float:
        """Return the seconds up to which the course is known."""
        return self._legs[-1].ends if self._legs else 0.0

    @property
    def choices(self) -> tuple[Step, ...]:
        """Return the balls of which one must be chosen to go on, () where the course is whole."""
        if not self._legs:
            return self._firsts
        following = self.here.sequence.following(self._legs[-1].step.shot.id)
        return following if len(following) > 1 else ()

    def choose(self, shot: str) -> bool:
        """Go on with the ball of this id; return whether it is one of those that may follow."""
        step = next((each for each in self.choices if each.shot.id == shot), None)
        if step is None:
            return False
        self._follow(step)
        self._go_on()
        return True

    def back_to(self, number: int) -> None:
        """Forget what was chosen after the ball of this number, counted from 0."""
        kept = [leg.step.shot.id for leg in self._legs[: number + 1]]
        fresh = Course(self.here, kept[0])
        for id in kept[1:]:
            if id not in {leg.step.shot.id for leg in fresh.legs}:
                fresh.choose(id)
        self._legs, self._ways, self._stands = fresh._legs, fresh._ways, fresh._stands

    def at(self, seconds: float) -> Moment | None:
        """Return what is to be seen so many seconds after the start; None before the first ball is chosen."""
        if not self._legs:
            return None
        leg = next((each for each in reversed(self._legs) if each.starts <= seconds), self._legs[0])
        people = {letter: self._place(letter, seconds) for letter in self._stands}
        return Moment(leg, self._ball(leg, seconds - leg.starts), people)

    def standing(self) -> Mapping[str, Point]:
        """Return where everybody is before the first ball."""
        return dict(self._stands)

    # the balls

    def _go_on(self) -> None:
        """Add what follows without a choice."""
        while self._legs:
            following = self.here.sequence.following(self._legs[-1].step.shot.id)
            if len(following) != 1:
                return
            self._follow(following[0])

    def _follow(self, step: Step) -> None:
        if not self._legs:
            self._hit(step, 0.0)
            return
        last = self._legs[-1]
        meeting = self._meeting(last, step)
        ends = last.ends
        if meeting is not None:
            ends = last.starts + meeting
        self._legs[-1] = Leg(last.step, last.strike, last.starts, ends)
        self._reach(last, step)
        self._hit(step, ends + (NEW_BALL if step.feed else 0.0))

    def _meeting(self, last: Leg, step: Step) -> float | None:
        numbers = self._numbers.shot(last.step.shot.id)
        met = () if numbers is None else numbers.meetings
        return next((each.there_is for each in met if each.shot == step.shot.id), None)

    def _hit(self, step: Step, starts: float) -> None:
        numbers = self._numbers.shot(step.shot.id)
        strike = None if numbers is None else numbers.strike
        self._legs.append(Leg(step, strike, starts, starts + self._lasts(step, strike)))
        for run in step.runs:
            path = self.here.sequence.run_paths.get(run.id, ())
            if len(path) > 1:
                self._send(run.by, starts, (self._place(run.by, starts, path[0]), *path[1:]), known=step.feed)

    def _lasts(self, step: Step, strike: Strike | None) -> float:
        """Return how long a ball is looked at where nobody has met it yet: to the first meeting, else two bounces."""
        if strike is None:
            return UNKNOWN
        numbers = self._numbers.shot(step.shot.id)
        met = [] if numbers is None else [each.there_is for each in numbers.meetings]
        return min(met) if met else strike.after.landing.time + AT_THE_END

    def _ball(self, leg: Leg, seconds: float) -> tuple[float, float, float] | None:
        if leg.strike is None or seconds > leg.strike.after.landing.time:
            return None
        arc = leg.strike.flight if seconds <= leg.strike.flight.landing.time else leg.strike.after
        state = arc.at(seconds)
        return (state.x, state.y, state.z)

    # the people

    def _reach(self, last: Leg, step: Step) -> None:
        """Send the next hitter to the ball where no run is drawn for that."""
        if step.feed or any(run.by == step.hitter for run in last.step.runs) or step.hitter not in self._stands:
            return
        place = self._place(step.hitter, last.starts)
        path = path_to_reach((place,), step.contact, self.here.level.movement.reach)
        if len(path) > 1:
            self._send(step.hitter, last.starts, path, known=last.step.feed)

    def _send(self, letter: str, starts: float, points: tuple[Point, ...], *, known: bool) -> None:
        delay = 0.0 if known else self.here.level.movement.delay
        self._ways.setdefault(letter, []).append(Way(starts, delay, points))
        self._stands.setdefault(letter, points[0])

    def _place(self, letter: str, seconds: float, otherwise: Point = (0.0, 0.0)) -> Point:
        way = next((each for each in reversed(self._ways.get(letter, [])) if each.starts <= seconds), None)
        if way is None:
            return self._stands.get(letter, otherwise)
        movement = self.here.level.movement
        whole = length(way.points)
        if whole < 1e-6:
            return way.points[-1]
        # Corners cost time; spread over the whole way that is as good as true to look at.
        slowed = time_to_cover(whole, movement) / max(path_time(way.points, movement), 1e-9)
        gone = covered(max(0.0, seconds - way.starts - way.delay) * slowed, movement)
        return _along(way.points, min(gone, whole))


def _along(points: tuple[Point, ...], metres: float) -> Point:
    """Return the place so many metres along a path."""
    for start, end in itertools.pairwise(points):
        size = math.dist(start, end)
        if metres <= size and size > 0:
            share = metres / size
            return (start[0] + share * (end[0] - start[0]), start[1] + share * (end[1] - start[1]))
        metres -= size
    return points[-1]
