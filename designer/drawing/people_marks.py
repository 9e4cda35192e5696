"""Marks of the people on court."""

from __future__ import annotations

import itertools
import math
from collections.abc import Iterator, Sequence
from typing import Final

from designer.drawing import kit, people
from designer.drawing.geometry import ahead, between, point_to_piece
from designer.drawing.placing import FORBIDDEN
from designer.drawing.plan import Label, Plan
from designer.drawing.primitives import Layer, Point
from designer.drill.people import Job, Spot
from designer.drill.places import locate
from designer.wording.spoken import label


def note_discs(plan: Plan) -> None:
    """Note where the discs of those who play will be: what may stand a little aside keeps off them."""
    for spot, job, point in _everyone(plan):
        if spot.task == "plays" and job.by != "machine":
            plan.discs.append(people.centre_of(plan.sign_pen, plan.page.to_page(point), _facing(plan, spot, point)))


def _everyone(plan: Plan) -> Iterator[tuple[Spot, Job, Point]]:
    """Yield everyone who has a place, with their job: who plays first."""
    for spot in sorted(plan.setting.spots.values(), key=lambda spot: (spot.task != "plays", spot.job, spot.id)):
        point = locate(plan.setting, spot.place)
        if point is not None:
            yield spot, plan.jobs.get(spot.job, Job(letter=spot.job)), point


def people_marks(plan: Plan) -> None:
    """Add the mark of everyone who has a spot; a job done by a machine is drawn as one."""
    waiting: list[Point] = []
    for spot, job, point in _everyone(plan):
        at = plan.page.to_page(point)
        if spot.task != "plays":
            waiting.append(_waits(plan, spot, at, waiting))
        elif job.by == "machine":
            facing = _facing(plan, spot, point)
            made = plan.draw(spot.id, "ball machine", Layer.KIT, kit.ball_machine, at, facing, spot.job, sign=True)
            plan.take(made, owner=spot.id)
        else:
            _plays(plan, spot, job, point)


def _facing(plan: Plan, spot: Spot, point: Point) -> Point:
    """Return the direction on the page that someone faces: as given, else towards the net."""
    towards_net = 0 if point[1] < 0 else 180
    return plan.page.direction(towards_net if spot.facing is None else spot.facing)


def _waits(plan: Plan, spot: Spot, at: Point, others: Sequence[Point]) -> Point:
    """Add someone who waits or collects, a little aside where somebody else is drawn, and return where that is."""
    pen = plan.sign_pen
    at = plan.held(at, 8.0 * plan.signs)
    at = clear_of(at, plan.discs, (people.RADIUS + people.WAITING + APART) * pen.unit)
    at = clear_of(at, others, (2 * people.WAITING + APART) * pen.unit)
    kind = "waits"
    made = plan.draw(spot.id, kind, Layer.PEOPLE, people.waiting, at, spot.job, sign=True)
    plan.take(made, owner=spot.id)
    if made is not None and plan.words:
        plan.labels.append(
            Label(
                spot.id,
                kind,
                "words",
                label(spot.task),
                8.5,
                "soft",
                made.bounds,
                bold=False,
                outside=False,
                leads=False,
            )
        )
    return at


APART: Final = 2.0
"""How far apart, in u, rings keep whose places are nearly one."""


def clear_of(at: Point, others: Sequence[Point], reach: float) -> Point:
    """Return ``at``, moved straight away from whichever of ``others`` is nearer than ``reach``, all in metres."""
    for other in others:
        off = math.dist(at, other)
        if off < reach:
            away = ((at[0] - other[0]) / off, (at[1] - other[1]) / off) if off > 1e-6 else (0.0, -1.0)
            at = ahead(other, away, reach)
    return at


def _plays(plan: Plan, spot: Spot, job: Job, point: Point) -> None:
    pen = plan.sign_pen
    facing = _facing(plan, spot, point)
    at = plan.page.to_page(point)
    is_coach = job.by == "coach"
    look: people.Look = "coach" if is_coach else "you" if spot.job == plan.you else "plain"
    kind = "coach" if is_coach else "person"
    centre = people.centre_of(pen, at, facing)
    turn = _racket_turn(plan, centre, facing, job.hand)
    made = plan.draw(
        spot.id,
        kind,
        Layer.PEOPLE,
        people.person,
        at,
        facing,
        spot.job,
        hand=job.hand,
        look=look,
        racket_turn=turn,
        sign=True,
    )
    racket = people.racket_tip(pen, centre, facing, job.hand, turn)
    for middle, radius in ((centre, people.RADIUS + 1.2), (racket, 4.6), (between(centre, racket, 0.65), 2.0)):
        reach = radius * pen.unit
        box = (middle[0] - reach, middle[1] - reach, middle[0] + reach, middle[1] + reach)
        plan.space.take(box, owner=spot.id)
    nose = ahead(centre, facing, (people.RADIUS + people.NOSE / 2) * pen.unit)
    reach = 2 * pen.unit
    plan.space.take((nose[0] - reach, nose[1] - reach, nose[0] + reach, nose[1] + reach), owner=spot.id)
    if is_coach and made is not None and plan.words:
        plan.labels.append(
            Label(
                spot.id, kind, "words", label("coach"), 8.5, "ink", made.bounds, bold=False, outside=False, leads=False
            )
        )


def _racket_turn(plan: Plan, centre: Point, facing: Point, hand: str) -> float:
    """Return the angle from where a person faces to the racket: farther back where a run or something laid is in its way."""
    ways = () if plan.sequence is None else plan.sequence.run_paths.values()
    pieces = [pair for way in ways for pair in itertools.pairwise(map(plan.page.to_page, way))]
    for turn in (people.RACKET_AT, 95.0, 125.0):
        tip = people.racket_tip(plan.sign_pen, centre, facing, hand, turn)
        reach = RACKET_CLEAR * plan.sign_pen.unit
        box = (tip[0] - reach, tip[1] - reach, tip[0] + reach, tip[1] + reach)
        free = all(point_to_piece(tip, *piece) > reach for piece in pieces)
        if free and plan.space.cost(box) < FORBIDDEN / 8:
            return turn
    return people.RACKET_AT


RACKET_CLEAR: Final = 5.0
"""How far the middle of a racket keeps from a run, in u."""
