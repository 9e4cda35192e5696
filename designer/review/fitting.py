"""Edits that make a drill fit what the numbers say: a target hit more often, a finish in time, a start score that evens."""

from __future__ import annotations

from functools import partial
from typing import Final

from designer.drill.base import Point
from designer.drill.drill import Drill
from designer.drill.edits import put
from designer.drill.items import Area
from designer.drill.places import corners_of
from designer.drill.setting import At, setting_at
from designer.numbers.accuracy import chance_in
from designer.numbers.shots import TargetChance, landing_of, size_wished
from designer.numbers.situation import Situation
from designer.review.check import Mend

MOST_TIMES: Final = 6.0
"""A target is not made more times as large than this: then another target is meant."""


def larger_target(here: Situation, at: At, shot: str, found: TargetChance) -> Mend | None:
    """Return the edit that enlarges a target until it is hit as often as its purpose wishes for at least.

    It stays inside the court. None where it is no area of the drill's own, or no size would do.
    """
    step = here.sequence.step(shot)
    item = here.setting.items.get(found.target.areas[0]) if len(found.target.areas) == 1 else None
    landing = None if step is None else landing_of(here, step)
    if step is None or landing is None or not isinstance(item, Area):
        return None
    times = size_wished(here, shot, found)
    left, right, low, high = here.box(step)

    def inside(point: Point) -> Point:
        return (min(max(point[0], left), right), min(max(point[1], low), high))

    own = corners_of(item)
    middle = (sum(x for x, _ in own) / len(own), sum(y for _, y in own) / len(own))
    stored = getattr(item.shape, "corners", None)
    if stored is None or times is None or not 1 < times <= MOST_TIMES:
        return None
    larger = tuple(
        inside((middle[0] + times * (x - middle[0]), middle[1] + times * (y - middle[1]))) for x, y in stored
    )
    enlarged = item.changed(shape=item.shape.changed(corners=larger))
    if chance_in(corners_of(enlarged), landing) <= found.chance:
        return None
    return partial(_put, at=at, record=enlarged)


def _put(drill: Drill, *, at: At, record: Area) -> Drill:
    return put(drill, at, record) if setting_at(drill, at).find(record.id) is not None else drill


def shorter_finish(here: Situation, at: At, minutes: float, taken: float) -> Mend | None:
    """Return the edit that lets the finish end in about so many minutes, where now it takes ``taken``."""
    finish = here.setting.finish
    if finish is None or not isinstance(finish.to, int) or finish.kind not in ("race", "tie-break"):
        return None
    to = max(1, int(finish.to * minutes / taken))
    return None if to >= finish.to else partial(_with_goal, at=at, to=to)


def _with_goal(drill: Drill, *, at: At, to: int) -> Drill:
    finish = setting_at(drill, at).finish
    return drill if finish is None else put(drill, at, finish.changed(to=to))


def start_score(here: Situation, at: At, letters: tuple[str, ...], points: int) -> Mend | None:
    """Return the edit that gives a side so many points to start with; None where no start is said."""
    start = next((each for each in here.setting.starts.values() if each.once is None), None)
    return None if start is None else partial(_with_score, at=at, id=start.id, letters=letters, points=points)


def _with_score(drill: Drill, *, at: At, id: str, letters: tuple[str, ...], points: int) -> Drill:
    start = setting_at(drill, at).starts.get(id)
    return drill if start is None else put(drill, at, start.changed(score=dict.fromkeys(letters, points)))
