"""Balls and runs as they are drawn: who hits, what follows what, and what a run is for. Pure edits and guesses."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final, Literal

from designer.desktop.canvas.handles import tied
from designer.desktop.canvas.placing import NoLetterLeft
from designer.drill.base import Place, Point
from designer.drill.drill import Drill
from designer.drill.edits import put
from designer.drill.movement import FEEDS, Run, Shot
from designer.drill.people import Job
from designer.drill.places import anchor, locate
from designer.drill.setting import At, Setting, setting_at
from designer.play.sequence import predecessors

Purpose = Literal["reach", "recover", "approach", "retreat"]

NEAR_THE_NET: Final = 4.5
"""A run that ends nearer to the net than this, in metres, and leads forward is taken for an approach."""

A_STEP: Final = 0.9144
"""Differences under one stride say nothing about where a run leads."""


MEETS: Final = 1.5
"""A run that ends so near to where a ball is met, in metres, leads to it: a stride and a racket away."""

MACHINE_LETTERS: Final = "MNOPQRSTUVWXYZABCDEFGHIJKL"
"""A machine is M where that letter is free."""


@dataclass(frozen=True, slots=True)
class Flight:
    """From where a ball is hit (None: where the hitter stands) to where it lands, and the ids at that place."""

    contact: Place | None
    landing: Point
    under: tuple[str, ...] = ()


def distance(a: Point, b: Point) -> float:
    """Return the distance from ``a`` to ``b`` in metres."""
    return math.hypot(b[0] - a[0], b[1] - a[1])


def depths(setting: Setting) -> dict[str, int]:
    """Return for each shot, by id, how many are played before it on its branch; a circle is cut where it closes."""
    before = predecessors(setting)
    found = {}
    for id in before:
        trail = {id}
        earlier = before[id]
        while earlier is not None and earlier not in trail:
            trail.add(earlier)
            earlier = before[earlier]
        found[id] = len(trail) - 1
    return found


def last_shot(setting: Setting, picked: frozenset[str] = frozenset()) -> Shot | None:
    """Return the shot that the next one follows: the one that is picked, else the last that is drawn."""
    depth = depths(setting)
    last: Shot | None = None
    for shot in [setting.shots[id] for id in setting.shots if id in picked] or setting.shots.values():
        if last is None or depth[shot.id] >= depth[last.id]:
            last = shot
    return last


def run_during(setting: Setting, by: str, to: Point, picked: frozenset[str] = frozenset()) -> str | None:
    """Return the shot that a run of ``by`` to ``to`` is made during, None where no ball is drawn.

    To where this person meets a ball, and has not run yet: while that ball comes. Else the picked shot, else the last.
    """
    done = {run.during for run in setting.runs.values() if run.by == by}
    for shot in setting.shots.values():
        met = locate(setting, shot.contact) if shot.by == by and shot.contact is not None else None
        if met is not None and shot.after is not None and shot.after not in done and distance(met, to) <= MEETS:
            return shot.after
    last = last_shot(setting, picked)
    return None if last is None else last.id


def whereabouts(setting: Setting, letter: str) -> Point | None:
    """Return where the person in job ``letter`` is after all that is drawn: the end of the last run, else the spot."""
    depth = depths(setting)
    runs = [run for run in setting.runs.values() if run.by == letter]
    if runs:
        last = max(enumerate(runs), key=lambda numbered: (depth.get(numbered[1].during or "", -1), numbered[0]))[1]
        end = locate(setting, last.to)
        if end is not None:
            return end
    return anchor(setting, letter)


def people(setting: Setting) -> dict[str, Point]:
    """Return where each person who plays is, by letter."""
    found = {}
    for spot in setting.spots.values():
        at = whereabouts(setting, spot.job)
        if at is not None and spot.task == "plays":
            found[spot.job] = at
    return found


def nearest_person(setting: Setting, point: Point, but: str | None = None) -> str | None:
    """Return the letter of who is nearest to ``point``: someone other than ``but`` where there is anyone else."""
    there = people(setting)
    others = {letter: at for letter, at in there.items() if letter != but} or there
    return min(others, key=lambda letter: (distance(others[letter], point), letter), default=None)


def next_letter(setting: Setting, letter: str) -> str:
    """Return the letter of the next person who plays after ``letter``, the first after the last."""
    letters = sorted(people(setting))
    if letter in letters:
        return letters[(letters.index(letter) + 1) % len(letters)]
    return letters[0] if letters else letter


def with_kind_turned(drill: Drill, at: At, id: str) -> Drill | None:
    """Return ``drill`` with the shot ``id`` a feed where it was a shot, and a shot where it was a feed; None for no shot."""
    setting = setting_at(drill, at)
    shot = setting.shots.get(id)
    if shot is None:
        return None
    if shot.stroke in FEEDS:
        return put(drill, at, shot.changed(stroke=None))
    job = drill.job(shot.by)
    return put(drill, at, shot.changed(stroke="machine feed" if job and job.by == "machine" else "racket feed"))


def person_under(setting: Setting, under: Sequence[str]) -> str | None:
    """Return the letter of the person among the ids ``under``, the uppermost first, or None."""
    return next((setting.spots[id].job for id in under if id in setting.spots), None)


def feeds(drill: Drill, setting: Setting, letter: str) -> bool:
    """Whether a first ball by this person is taken for a feed: the coach, a machine, or whoever has fed or is said to."""
    job = drill.job(letter)
    if job is not None and (job.by != "player" or "feed" in job.role.lower()):
        return True
    return any(shot.by == letter and shot.stroke in FEEDS for shot in setting.shots.values())


def with_ball(
    drill: Drill,
    at: At,
    by: str,
    flight: Flight,
    *,
    id: str,
    follows: str | None = None,
    feed: bool = False,
) -> Drill:
    """Return ``drill`` with one more shot, called ``id``.

    It comes after the shot ``follows``; from the same hitter it is another choice beside that one, unless it is fed. A choice is
    met where the others are.
    """
    setting = setting_at(drill, at)
    before = setting.shots.get(follows or "")
    after = None if before is None else before.id
    if before is not None and before.by == by and not feed:
        after = before.after
    first = not setting.shots
    fed = feed or (first and feeds(drill, setting, by))
    job = drill.job(by)
    machine = job is not None and job.by == "machine"
    stroke: Literal["machine feed", "racket feed"] | None = (
        ("machine feed" if machine else "racket feed") if fed else None
    )
    shot = Shot(
        id=id,
        by=by,
        after=after,
        stroke=stroke,
        contact=flight.contact or _met_with(setting, by, after, fed=fed),
        to=tied(setting, flight.landing, flight.under),
    )
    return put(drill, at, shot)


def _met_with(setting: Setting, by: str, after: str | None, *, fed: bool) -> Place | None:
    """Return where another choice of the same hit is met: choices part from one place, wherever that was drawn."""
    if fed or after is None:
        return None
    beside = (shot for shot in setting.shots.values() if (shot.by, shot.after) == (by, after))
    return next((shot.contact for shot in beside if shot.contact is not None), None)


def with_run(
    drill: Drill,
    at: At,
    by: str,
    to: Point,
    *,
    id: str,
    under: tuple[str, ...] = (),
    via: tuple[Point, ...] = (),
    during: str | None = None,
) -> Drill:
    """Return ``drill`` with one more run of the person ``by``, called ``id`` and made during the shot ``during``."""
    setting = setting_at(drill, at)
    run = Run(
        id=id,
        by=by,
        during=during,
        to=tied(setting, to, under),
        via=via,
        purpose=purpose(setting, by, to, during),
    )
    return put(drill, at, run)


def met_at(setting: Setting, point: Point, reach: float) -> Shot | None:
    """Return the ball that is met within ``reach`` metres of ``point``, at a place that no run of its hitter leads to yet."""
    led = {(run.by, run.during) for run in setting.runs.values()}
    for shot in setting.shots.values():
        met = locate(setting, shot.contact) if shot.contact is not None else None
        if met is not None and distance(met, point) <= reach and shot.after and (shot.by, shot.after) not in led:
            return shot
    return None


def with_way_to(drill: Drill, at: At, shot: Shot, id: str) -> Drill:
    """Return ``drill`` with a run, called ``id``, that brings the hitter of ``shot`` to where it is met."""
    met = locate(setting_at(drill, at), shot.contact) if shot.contact is not None else None
    return drill if met is None else with_run(drill, at, shot.by, met, id=id, during=shot.after)


def purpose(setting: Setting, by: str, to: Point, during: str | None) -> Purpose | None:
    """Return what a run to ``to`` is most likely for, None where nothing speaks for anything.

    Back to where one stood, or away from a ball one has just hit: to recover. To where the ball comes down: to reach.
    """
    home, start = anchor(setting, by), whereabouts(setting, by)
    if home is None or start is None:
        return None
    shot = setting.shots.get(during or "")
    landing = locate(setting, shot.to) if shot is not None and shot.to is not None else None
    own = shot is not None and shot.by == by
    if distance(start, home) - distance(to, home) > A_STEP:
        return "recover"
    if landing is not None and not own and distance(to, landing) < distance(start, landing):
        return "reach"
    forward = abs(start[1]) - abs(to[1])
    if forward > A_STEP and abs(to[1]) < NEAR_THE_NET:
        return "approach"
    if forward < -2 * A_STEP:
        return "retreat"
    return "recover" if own else None


def with_machine_job(drill: Drill) -> tuple[Drill, str]:
    """Return ``drill`` with a job that is done by a machine, and its letter: the one it has, else a new one."""
    for job in drill.jobs:
        if job.by == "machine":
            return drill, job.letter
    taken = {job.letter for job in drill.jobs}
    letter = next((letter for letter in MACHINE_LETTERS if letter not in taken), None)
    if letter is None:
        raise NoLetterLeft("there are no letters left: a drill has at most 26 jobs")
    return drill.changed(jobs=(*drill.jobs, Job(letter=letter, by="machine"))), letter
