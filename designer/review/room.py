"""Cautions from the drawing about room: people who wait by the net, balls that run out.

The distances are coaches' practice with no source.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from typing import Final

from designer.drill.movement import FEEDS
from designer.drill.places import locate
from designer.play.sequence import Step
from designer.review.check import Check, check
from designer.wording.counts import many
from designer.wording.names import letter
from designer.wording.telling import Telling

BY_THE_POST: Final = 1.5
"""Who waits nearer than this to a net post is in the way of a ball or a runner."""
_COLLECTED: Final = ("collect", "pick up", "refill", "gather", "clear")


def room_cautions(told: Telling) -> Iterator[Check]:
    """Yield the cautions about room and balls of one setting."""
    yield from _by_the_post(told)
    yield from _balls_run_out(told)


def _by_the_post(told: Telling) -> Iterator[Check]:
    for spot in sorted(told.setting.spots.values(), key=lambda spot: spot.job):
        stands = locate(told.setting, spot.place)
        if spot.task != "waits" or stands is None:
            continue
        if math.dist((abs(stands[0]), abs(stands[1])), (told.ground.net.ends_x, 0.0)) < BY_THE_POST:
            text = f"{letter(told, spot.job)} waits at the net post of a court that is played on: wait by the fence"
            yield check("caution", "waits-at-post", text, spot.id, at=told.at, danger=True)


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
