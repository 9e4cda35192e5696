"""Whether there is time: for each ball the seconds until it can be met, against the seconds it takes to get there."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Final, Literal

from designer.drill.base import Point
from designer.drill.movement import Run
from designer.numbers.flight import Flight, State
from designer.numbers.movement import length, path_time, path_to_reach
from designer.numbers.situation import Situation
from designer.numbers.strike import Strike
from designer.play.sequence import Step

COMFORTABLE: Final = 0.3
"""Seconds to spare from which on a ball is met at ease. Common practice, no source."""

BESIDE: Final = 1.0
"""A ball that passes farther than this, in metres, from the drawn contact is not the ball that is drawn."""

OVERHEAD: Final = 2.9
"""A ball higher than this, in metres, goes over a raised racket. Common practice, no source."""

Verdict = Literal["comfortable", "stretched", "out of reach"]


@dataclass(frozen=True, slots=True)
class Meeting:
    """How the next hitter meets a ball. Seconds from the hit, metres.

    ``needed``: reaction and run until the ball is within reach, None where nobody says where the hitter stands. ``aside``:
    how far from the drawn contact the ball passes. ``height``: of its middle there. ``bounces``: how often it has bounced
    by then. ``problem``: a sentence where the drawn contact does not fit the ball, "" where it does.
    """

    shot: str
    hitter: str
    there_is: float
    needed: float | None
    run: float
    aside: float
    height: float
    bounces: int
    problem: str

    @property
    def spare(self) -> float | None:
        """Seconds to spare, negative where the hitter comes too late."""
        return None if self.needed is None else self.there_is - self.needed

    @property
    def verdict(self) -> Verdict | None:
        """How well the hitter gets there."""
        return None if self.spare is None else verdict(self.spare)


@dataclass(frozen=True, slots=True)
class RunTime:
    """A drawn run: how long it is (m), the seconds it takes, and those there are until somebody hits next.

    ``there_is`` is None where nothing is drawn after it.
    """

    run: str
    by: str
    metres: float
    needed: float
    there_is: float | None

    @property
    def spare(self) -> float | None:
        """Seconds to spare, negative where the run is not finished in time."""
        return None if self.there_is is None else self.there_is - self.needed


def verdict(spare: float) -> Verdict:
    """Return the word for so many seconds to spare."""
    if spare < 0:
        return "out of reach"
    return "comfortable" if spare >= COMFORTABLE else "stretched"


def meetings(here: Situation, step: Step, hit: Strike) -> tuple[Meeting, ...]:
    """Return how each of the steps that may follow ``step`` meets its ball; balls that are fed anew wait for nobody."""
    return tuple(
        _meeting(here, step, following, hit)
        for following in here.sequence.following(step.shot.id)
        if not following.feed
    )


def _meeting(here: Situation, step: Step, following: Step, hit: Strike) -> Meeting:
    met, bounces = _met(following, hit)
    # A contact that is not drawn is where the ball comes past: nobody lets it go by a metre away.
    contact = following.contact if following.contact_drawn else met.place
    path = _path(here, step, following.hitter)
    needed = None
    run = 0.0
    if path is not None:
        movement = here.level.movement
        kept = path_to_reach(path, contact, movement.reach)
        run = length(kept)
        needed = movement.delay + path_time(kept, movement)
    aside = math.dist(met.place, contact)
    return Meeting(
        shot=following.shot.id,
        hitter=following.hitter,
        there_is=met.time,
        needed=needed,
        run=run,
        aside=aside,
        height=met.z,
        bounces=bounces,
        problem=_problem(following, met, bounces, aside, hit),
    )


def _problem(following: Step, met: State, bounces: int, aside: float, hit: Strike) -> str:
    wanted = following.shot.bounces
    twice = met.time >= hit.after.landing.time - 1e-9 and (wanted is None or wanted < 2)
    if twice:
        far = math.dist(hit.after.landing.place, following.contact)
        return f"The ball bounces a second time {far:.1f} m before it gets to {following.hitter}."
    if aside > BESIDE:
        return f"The ball passes {aside:.1f} m from where {following.hitter} is drawn to meet it."
    if met.z > OVERHEAD:
        return f"The ball is {met.z:.1f} m high there and goes over {following.hitter}."
    if wanted == 0 and bounces > 0:
        return f"The ball has bounced before it gets to {following.hitter}, who is to take it on the full."
    return ""


def _path(here: Situation, step: Step, letter: str) -> tuple[Point, ...] | None:
    """Return the way that ``letter`` goes while the ball of ``step`` is in the air, from where the last run ended."""
    stands = here.sequence.person_at(letter, step.shot.id)
    points = [point for run in step.runs if run.by == letter for point in here.sequence.run_paths.get(run.id, ())]
    if stands is None:
        return tuple(points) or None
    return (stands, *points)


def _met(following: Step, hit: Strike) -> tuple[State, int]:
    """Return the ball where it comes nearest to the drawn contact, and how often it has bounced by then.

    On the full where that is said, or where the contact lies before the bounce; else between the bounces, and at the
    latest at the second one.
    """
    place, bounces = following.contact, following.shot.bounces
    towards = math.copysign(1.0, hit.flight.landing.y - hit.flight.states[0].y)
    before = (place[1] - hit.flight.landing.y) * towards < 0
    if bounces == 0 or (bounces is None and before):
        found = hit.flight.along(place[1])
        if found is not None:
            return found, 0
        if bounces == 0:
            return _nearest(hit.after, place), 1
    if before:
        return _nearest(hit.after, place), 1
    found = hit.after.along(place[1])
    return (hit.after.landing if found is None else found), 1


def _nearest(arc: Flight, place: Point) -> State:
    return min(arc.states, key=lambda state: math.dist(state.place, place))


def run_times(here: Situation, step: Step, met: tuple[Meeting, ...]) -> tuple[RunTime, ...]:
    """Return the runs that are made while the ball of ``step`` is in the air."""
    return tuple(_run_time(here, run, met) for run in step.runs)


def _run_time(here: Situation, run: Run, met: tuple[Meeting, ...]) -> RunTime:
    path = here.sequence.run_paths.get(run.id, ())
    movement = here.level.movement
    waits = run.purpose in (None, "reach") and any(meeting.hitter == run.by for meeting in met)
    return RunTime(
        run=run.id,
        by=run.by,
        metres=length(path),
        needed=path_time(path, movement) + (movement.delay if waits else 0.0),
        there_is=min((meeting.there_is for meeting in met), default=None),
    )
