"""Cautions for people at the net: a ball fed, driven or smashed at them from a few metres.

The distances are coaches' practice with no source.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from designer.play.sequence import Step
from designer.review.check import Check, check
from designer.review.dangers import BALL_WIDTH, feeders
from designer.review.geometry import ahead_and_aside
from designer.wording.names import letter, shot_name
from designer.wording.telling import Telling

CLOSE: Final[dict[str | None, float]] = {
    None: 7.0,
    "drive": 7.0,
    "slice": 7.0,
    "racket feed": 6.0,
    "machine feed": 9.0,
    "smash": 10.0,
}
"""Metres from which a ball of this stroke cannot be got out of the way of."""

FARTHER: Final = 2.0
"""So much more for children."""
CHILDREN: Final = 12
_TAKEN_OFF: Final = ("soft", "half")
_SHORT: Final = 1.0
"""A ball that bounces so far in front of somebody is not played at them."""


def close_ball_cautions(told: Telling) -> Iterator[Check]:
    """Yield a caution for each ball that is hit hard at somebody at the net."""
    seen: set[tuple[str, str]] = set()
    feeding = feeders(told)  # who only feeds has a caution of their own
    for step in told.sequence.steps:
        if step.shot.stroke not in CLOSE or step.shot.pace in _TAKEN_OFF or step.landing is None or not step.placed:
            continue
        for spot in sorted(told.setting.spots.values(), key=lambda spot: spot.job):
            metres = _away(told, step, spot.job)
            if metres is not None and spot.job not in feeding and (step.hitter, spot.job) not in seen:
                seen.add((step.hitter, spot.job))
                text = (
                    f"{shot_name(told, step.shot)} goes straight at {letter(told, spot.job)}, {metres:.0f} m away at the net:"
                    " aim it to the side of the body, or take the pace off"
                )
                yield check("caution", "hard-at-net", text, step.shot.id, spot.id, at=told.at, danger=True)


def _away(told: Telling, step: Step, who: str) -> float | None:
    """Return how far somebody at the net is from a ball that is hit at them, None where it is far enough or goes by."""
    stands = told.sequence.person_at(who, step.shot.id)
    line = told.ground.service_line or told.ground.baseline / 2
    if stands is None or step.landing is None or stands[1] * step.contact[1] >= 0 or abs(stands[1]) > line:
        return None
    ahead, aside = ahead_and_aside(stands, step.contact, step.landing)
    flies, _ = ahead_and_aside(step.landing, step.contact, step.landing)
    young = told.drill.age is not None and told.drill.age[0] < CHILDREN
    near = CLOSE[step.shot.stroke] + (FARTHER if young else 0.0)
    hit = aside <= BALL_WIDTH and 0 < ahead <= near and flies >= ahead - _SHORT
    return ahead if hit else None
