"""Errors and cautions: balls that cannot be played as they are drawn."""

from __future__ import annotations

from collections.abc import Iterator
from functools import partial
from typing import Final

from designer.court.regions import as_player, region_box
from designer.drill.base import ON_THE_LINE, Point
from designer.drill.drill import Drill
from designer.drill.edits import put
from designer.drill.movement import FEEDS, SERVES
from designer.drill.setting import At, setting_at
from designer.play.sequence import Step
from designer.review.check import Check, check
from designer.wording.names import letter, shot_name
from designer.wording.telling import Telling

SLACK: Final = 0.1
"""A ball drawn so near a line, in metres, is drawn on it."""


def flight_checks(told: Telling) -> Iterator[Check]:
    """Yield what is wrong with the balls of one setting."""
    for step in told.sequence.steps:
        if step.shot.stroke == "shadow swing":
            continue
        yield from _bounces(told, step)
        yield from _same_side(told, step)
        if step.landing is not None and step.placed:
            yield from _landing(told, step, step.landing)


def _bounces(told: Telling, step: Step) -> Iterator[Check]:
    """Yield an error for a volley of a ball that is said to bounce first: ``bounces`` stands with the ball it meets."""
    earlier = told.setting.shots.get(told.sequence.before.get(step.shot.id) or "")
    if step.shot.stroke == "volley" and earlier is not None and (earlier.bounces or 0) > 0:
        text = f"{shot_name(told, step.shot)} is a volley, but {shot_name(told, earlier)} is said to bounce first"
        mend = partial(_on_the_full, at=told.at, id=earlier.id)
        yield check("error", "volley-bounces", text, step.shot.id, earlier.id, at=told.at, mend=mend)


def _on_the_full(drill: Drill, *, at: At, id: str) -> Drill:
    shot = setting_at(drill, at).shots.get(id)
    return drill if shot is None else put(drill, at, shot.changed(bounces=0))


def _same_side(told: Telling, step: Step) -> Iterator[Check]:
    """Yield an error for a ball that is hit again by the side that has just hit it."""
    earlier = told.sequence.step(told.sequence.before.get(step.shot.id) or "")
    if earlier is None or step.feed or earlier.feed or step.shot.stroke in FEEDS | SERVES:
        return
    if earlier.hitter == step.hitter and earlier.placed and step.placed:
        names = f"{shot_name(told, earlier.shot)} and {shot_name(told, step.shot)}"
        text = f"{letter(told, step.hitter)} hits {names}, one after the other"
        yield check("error", "hits-twice", text, earlier.shot.id, step.shot.id, at=told.at)


def _landing(told: Telling, step: Step, landing: Point) -> Iterator[Check]:
    if landing[1] * step.contact[1] > 0 and step.shot.stroke not in ("drop feed", "hand feed"):
        text = f"{shot_name(told, step.shot)} lands on the side that it is hit from"
        yield check("error", "own-side", text, step.shot.id, at=told.at)
        return
    if step.shot.stroke in SERVES:
        yield from _serve(told, step, landing)
    elif not _in_court(told, landing):
        text = f"{shot_name(told, step.shot)} is drawn out of the court"
        yield check("caution", "drawn-out", text, step.shot.id, at=told.at)


def _in_court(told: Telling, landing: Point) -> bool:
    ground = told.ground
    return abs(landing[0]) <= ground.outer + SLACK and abs(landing[1]) <= ground.baseline + SLACK


def _serve(told: Telling, step: Step, landing: Point) -> Iterator[Check]:
    """Yield an error for a serve that is not drawn into the box across: ITF Rules of Tennis, rules 17 and 18."""
    box = region_box(told.ground, "service boxes")
    if box is None:
        return
    across, along = as_player(landing, "far" if landing[1] > 0 else "near")
    server, _ = as_player(step.contact, step.end)
    too_long = along > box[3] + SLACK or abs(across) > box[1] + SLACK
    # Whoever serves from the right serves to the receiver's right.
    wrong_box = abs(server) > ON_THE_LINE and abs(across) > SLACK and server * across < 0
    if too_long or wrong_box:
        why = "outside the service boxes" if too_long else "into the box straight ahead, not the one across"
        text = f"{shot_name(told, step.shot)} is drawn {why}"
        yield check("error", "serve-box", text, step.shot.id, at=told.at)
