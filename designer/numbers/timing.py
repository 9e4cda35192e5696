"""Whether there is time: for each ball the seconds until it can be met, against the seconds it takes to get there."""

from __future__ import annotations

import itertools
import math
from dataclasses import dataclass
from typing import Final, Literal

from designer.drill.base import Point
from designer.drill.movement import FEEDS, Run
from designer.numbers.bounce import second_flight
from designer.numbers.flight import Flight, State
from designer.numbers.movement import length, path_time, path_to_reach
from designer.numbers.situation import ON_THE_FULL, Situation
from designer.numbers.strike import Strike
from designer.play.sequence import Step

COMFORTABLE: Final = 0.3
"""Seconds to spare from which on a ball is met at ease. Common practice, no source."""

BESIDE: Final = 1.0
"""A ball that passes farther than this, in metres, from the drawn contact is not the ball that is drawn."""

OVERHEAD: Final = 2.9
"""A ball higher than this, in metres, goes over a raised racket. Common practice, no source."""

LOWEST: Final = 0.25
"""A ball that has fallen lower than this, in metres, after its bounce is let go. Common practice, no source."""

IN_FRONT: Final = 2.0
"""A ball met farther than this, in metres, before the place where it would bounce is taken on the full."""

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

    ``there_is`` is None where nothing is drawn after it. ``purpose`` as drawn: an approach need not be finished in time.
    """

    run: str
    by: str
    purpose: str | None
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
    stands = here.sequence.person_after(following.hitter, step.shot.id)
    drawn = following.contact_drawn or stands is None
    arc, bounces = _arc(here, step, following, hit)
    met = _nearest(arc, following.contact if stands is None or drawn else stands, lowest=LOWEST if bounces else 0.0)
    path = _path(here, step, following.hitter)
    if path is None:
        run, needed = 0.0, None
    elif drawn:
        run, needed = _way_to(here, step, path, following.contact)
    else:
        # A contact that is not drawn is where the ball is easiest met: nobody lets it go by a metre away.
        met = _easiest(here, step, path, met, arc)
        run, needed = _way_to(here, step, path, met.place)
    aside = math.dist(met.place, following.contact) if drawn else 0.0
    return Meeting(
        shot=following.shot.id,
        hitter=following.hitter,
        there_is=met.time,
        needed=needed,
        run=run,
        aside=aside,
        height=met.z,
        bounces=bounces,
        problem=_problem(step, following, met, bounces, aside),
    )


def _way_to(here: Situation, step: Step, path: tuple[Point, ...], ball: Point) -> tuple[float, float]:
    """Return (metres to run, seconds needed) along ``path`` until ``ball`` is within reach."""
    movement = here.level.movement
    kept = path_to_reach(path, ball, movement.reach)
    return length(kept), path_time(kept, movement) + (0.0 if _known(step) else movement.delay)


def _easiest(here: Situation, step: Step, path: tuple[Point, ...], met: State, arc: Flight) -> State:
    """Return ``met`` where it is reached at ease, else the moment at which the ball leaves most time."""

    def spare(state: State) -> float:
        return state.time - _way_to(here, step, path, state.place)[1]

    if spare(met) >= COMFORTABLE:
        return met
    side = math.copysign(1.0, path[0][1])
    playable = [state for state in arc.states if LOWEST <= state.z <= OVERHEAD and state.y * side > 0]
    return max((met, *playable), key=spare)


def _problem(step: Step, following: Step, met: State, bounces: int, aside: float) -> str:
    if aside > BESIDE and bounces and met.z <= 2 * LOWEST and met.vz < 0:
        return f"The ball is on its way to a second bounce {aside:.1f} m before it gets to {following.hitter}."
    if aside > BESIDE:
        return f"The ball passes {aside:.1f} m from where {following.hitter} is drawn to meet it."
    if met.z > OVERHEAD:
        return f"The ball is {met.z:.1f} m high there and goes over {following.hitter}."
    if step.shot.bounces == 0 and bounces > 0:
        return f"The ball has bounced before it gets to {following.hitter}, who is to take it on the full."
    return ""


def _path(here: Situation, step: Step, letter: str) -> tuple[Point, ...] | None:
    """Return the way that ``letter`` goes while the ball of ``step`` is in the air, from where the last run ended."""
    stands = here.sequence.person_at(letter, step.shot.id)
    points = [point for run in step.runs if run.by == letter for point in here.sequence.run_paths.get(run.id, ())]
    if stands is None:
        return tuple(points) or None
    return (stands, *points)


def _known(step: Step) -> bool:
    """Whether everybody knows where a ball will go: it is fed, and nothing else is drawn in its stead."""
    return step.shot.stroke in FEEDS and not step.alternatives


def _arc(here: Situation, step: Step, following: Step, hit: Strike) -> tuple[Flight, int]:
    """Return the arc on which the ball is met, and how often it has bounced by then.

    On the full where that is drawn, or where the contact lies far in front of the bounce; else after the bounce.
    """
    bounces = step.shot.bounces
    stroke = following.shot.stroke
    towards = math.copysign(1.0, hit.flight.landing.y - hit.flight.states[0].y)
    before = (hit.flight.landing.y - following.contact[1]) * towards
    if bounces == 0 or (bounces is None and (stroke in ON_THE_FULL or (stroke is None and before > IN_FRONT))):
        return hit.flight, 0
    if bounces is not None and bounces > 1:
        around = here.around
        _, again = second_flight(hit.after, around.ball, around.surface, density=around.density)
        return again, 2
    return hit.after, 1


def _nearest(arc: Flight, place: Point, *, lowest: float = 0.0) -> State:
    """Return the ball of ``arc`` where it is nearest to ``place``, looking only where it is higher than ``lowest``.

    Where it never is as high as that, its highest point.
    """
    best: State | None = None
    nearest = math.inf
    for state, later in itertools.pairwise(arc.states):
        dx, dy = later.x - state.x, later.y - state.y
        size = dx * dx + dy * dy
        share = 0.0 if size == 0.0 else ((place[0] - state.x) * dx + (place[1] - state.y) * dy) / size
        share = min(max(share, 0.0), 1.0)
        far = math.dist((state.x + share * dx, state.y + share * dy), place)
        if far < nearest and min(state.z, later.z) >= lowest:
            best, nearest = arc.at(state.time + share * (later.time - state.time)), far
    return arc.apex if best is None else best


def run_times(here: Situation, step: Step, met: tuple[Meeting, ...]) -> tuple[RunTime, ...]:
    """Return the runs that are made while the ball of ``step`` is in the air."""
    return tuple(_run_time(here, step, run, met) for run in step.runs)


def _run_time(here: Situation, step: Step, run: Run, met: tuple[Meeting, ...]) -> RunTime:
    path = here.sequence.run_paths.get(run.id, ())
    movement = here.level.movement
    waits = run.purpose in (None, "reach") and any(meeting.hitter == run.by for meeting in met)
    return RunTime(
        run=run.id,
        by=run.by,
        purpose=run.purpose,
        metres=length(path),
        needed=path_time(path, movement) + (movement.delay if waits and not _known(step) else 0.0),
        there_is=min((meeting.there_is for meeting in met), default=None),
    )
