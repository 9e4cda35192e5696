"""Cautions from the drawing about room: by the net and its posts, next door, in front of others, for who collects.

The distances are coaches' practice with no source.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from typing import Final

from designer.drill.items import BallMachine
from designer.drill.movement import FEEDS
from designer.drill.places import locate
from designer.play.sequence import Step
from designer.review.check import Check, check, record_name
from designer.review.dangers import BALL_WIDTH, BODY, STOPPING, SWING, opens_on
from designer.review.geometry import ahead_and_aside, path_to_path, point_to_path
from designer.wording.counts import many
from designer.wording.names import letter, shot_name
from designer.wording.telling import Telling

BY_THE_POST: Final = 1.5
"""Who waits nearer than this to a net post is in the way of a ball or a runner."""
_COLLECTED: Final = ("collect", "pick up", "refill", "gather", "clear")


def room_cautions(told: Telling) -> Iterator[Check]:
    """Yield the cautions about room and balls of one setting."""
    yield from _by_the_post(told)
    yield from _through_the_net(told)
    yield from _next_door(told)
    yield from _partners_in_line(told)
    yield from _collecting(told)
    yield from _balls_run_out(told)


def _by_the_post(told: Telling) -> Iterator[Check]:
    for spot in sorted(told.setting.spots.values(), key=lambda spot: spot.job):
        stands = locate(told.setting, spot.place)
        if spot.task != "waits" or stands is None:
            continue
        if math.dist((abs(stands[0]), abs(stands[1])), (told.ground.net.ends_x, 0.0)) < BY_THE_POST:
            text = f"{letter(told, spot.job)} waits at the net post of a court that is played on: wait by the fence"
            yield check("caution", "waits-at-post", text, spot.id, at=told.at, danger=True)


def _through_the_net(told: Telling) -> Iterator[Check]:
    """Yield an error for a run through the net, and a caution for one that brushes a post."""
    ends = told.ground.net.ends_x
    for run in sorted(told.setting.runs.values(), key=lambda run: run.id):
        path = told.sequence.run_paths.get(run.id, ())
        if len(path) < 2:
            continue
        if path_to_path(path, ((-ends, 0.0), (ends, 0.0))) == 0.0:
            yield check(
                "error", "run-through-net", f"{record_name(told, run)} goes through the net", run.id, at=told.at
            )
        elif min(point_to_path((x, 0.0), path) for x in (-ends, ends)) < BODY:
            text = f"{record_name(told, run)} brushes a net post: go round it with a stride to spare"
            yield check("caution", "post-on-run", text, run.id, at=told.at, danger=True)


def _next_door(told: Telling) -> Iterator[Check]:
    """Yield what is to be said of a court next door with no fence between."""
    side = told.drill.court.neighbour
    if side is None:
        return
    where = "at both sides" if side == "both" else f"at the {side}"
    text = f"a court lies {where} with no fence between: agree with who plays there on a call when a ball rolls over"
    yield check("suggestion", "neighbour", text)
    outer = told.ground.outer
    for run in sorted(told.setting.runs.values(), key=lambda run: run.id):
        path = told.sequence.run_paths.get(run.id, ())
        if path and abs(path[-1][0]) > outer + STOPPING and opens_on(told.drill, path[-1][0]):
            text = f"{record_name(told, run)} ends on the way to the court next door"
            yield check("caution", "neighbour-run", text, run.id, at=told.at, danger=True)
    for spot in sorted(told.setting.spots.values(), key=lambda spot: spot.job):
        stands = locate(told.setting, spot.place)
        if spot.task == "plays" or stands is None or abs(stands[0]) <= outer or not opens_on(told.drill, stands[0]):
            continue
        text = f"{letter(told, spot.job)} stands towards the court next door, where balls come from behind"
        yield check("caution", "neighbour-wait", text, spot.id, at=told.at, danger=True)


def _partners_in_line(told: Telling) -> Iterator[Check]:
    """Yield a caution for a player in front of the hitter, at the same end and in the line of the ball."""
    seen: set[tuple[str, str]] = set()
    for step in told.sequence.steps:
        if step.landing is None or step.shot.stroke == "shadow swing" or not step.placed:
            continue
        for spot in sorted(told.setting.spots.values(), key=lambda spot: spot.job):
            stands = told.sequence.person_at(spot.job, step.shot.id)
            if spot.task != "plays" or spot.job == step.hitter or stands is None or (spot.job, step.hitter) in seen:
                continue
            ahead, aside = ahead_and_aside(stands, step.contact, step.landing)
            if ahead > SWING and stands[1] * step.contact[1] > 0 and aside <= BALL_WIDTH and _goes_over(step):
                seen.add((spot.job, step.hitter))
                text = f"{letter(told, spot.job)} stands in front of {letter(told, step.hitter)}, in the line of {shot_name(told, step.shot)}"
                yield check("caution", "partner-in-line", text, step.shot.id, spot.id, at=told.at, danger=True)


def _goes_over(step: Step) -> bool:
    return step.landing is not None and step.landing[1] * step.contact[1] < 0


def _collecting(told: Telling) -> Iterator[Check]:
    """Yield cautions for balls picked up while others fly: on the court that is played on, or before a machine."""
    machines = [item for item in told.setting.items.values() if isinstance(item, BallMachine)]
    ground = told.ground
    for spot in sorted(told.setting.spots.values(), key=lambda spot: spot.job):
        stands = locate(told.setting, spot.place)
        if spot.task != "collects" or stands is None:
            continue
        who = letter(told, spot.job)
        if machines:
            text = f"{who} collects while a machine feeds: switch it off before anybody walks in front of it"
            ids = (spot.id, *(item.id for item in machines))
            yield check("caution", "machine-collects", text, *ids, at=told.at, danger=True)
        if abs(stands[0]) <= ground.outer and abs(stands[1]) <= ground.baseline:
            text = f"{who} collects on the court that is played on: only between balls, or from behind the lines"
            yield check("caution", "collects-on-court", text, spot.id, at=told.at, danger=True)


def _balls_run_out(told: Telling) -> Iterator[Check]:
    """Yield a suggestion where more balls are fed before anybody stops than the drill has, and nobody collects."""
    drill, setting = told.drill, told.setting
    starts = _starts_before_a_stop(told)
    if drill.balls is None or starts is None or any(spot.task == "collects" for spot in setting.spots.values()):
        return
    texts = (*drill.safety, *drill.cues, *drill.kit, *(swap.note for swap in setting.swaps.values()))
    if any(word in text.lower() for text in texts for word in _COLLECTED):
        return
    needed = starts * _fed_a_start(told.sequence.steps)
    if needed > drill.balls:
        text = f"{many(starts, 'start')} take {needed} balls and there are {drill.balls}: say when they are collected"
        yield check("suggestion", "no-collect", text, at=told.at)


def _fed_a_start(steps: tuple[Step, ...]) -> int:
    """Return how many balls one start uses: the most that are fed one after another."""
    by_digit = {step.digit for step in steps if step.shot.stroke in FEEDS}
    return len(by_digit)


def _starts_before_a_stop(told: Telling) -> int | None:
    """Return after how many starts people change places or it is over, None where starts are not counted."""
    counts = [event.count or 1 for swap in told.setting.swaps.values() for event in swap.on if event.what == "starts"]
    finish = told.setting.finish
    counts += [] if finish is None or finish.starts is None else [finish.starts]
    return min(counts, default=None)
