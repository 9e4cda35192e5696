"""A part of a picture: the marks of a few records, for a screen on which only these change."""

from __future__ import annotations

from collections.abc import Container
from dataclasses import replace
from typing import Final

from designer.court.standards import ground
from designer.drawing import item_marks, people_marks, shot_marks
from designer.drawing.page import Page
from designer.drawing.picture import plan_of
from designer.drawing.primitives import Mark
from designer.drawing.themes import Theme
from designer.drill.drill import Drill
from designer.drill.movement import Shot
from designer.drill.setting import Setting
from designer.play.sequence import predecessors

UPRIGHT: Final = Page()


def part(
    drill: Drill,
    setting: Setting,
    ids: Container[str],
    *,
    unit: float,
    theme: Theme,
    you: str | None = None,
    page: Page = UPRIGHT,
) -> tuple[Mark, ...]:
    """Return the marks of the records ``ids`` alone, without words and digits.

    They are those of `picture` without words, but that the feet of a recovery run make no room for what stands there.
    """
    played = replace(setting, shots=_played_with(setting, ids))
    plan = plan_of(drill, played, ground(drill.court), page, unit, switched=theme.switched)
    plan.you, plan.words = you, False
    plan.space.idle = True
    people_marks.note_discs(plan)
    people_marks.people_marks(plan)  # everyone: a path begins outside the disc of whoever stands at its start
    plan.setting = replace(setting, items={id: item for id, item in setting.items.items() if id in ids})
    item_marks.item_marks(plan)
    item_marks.area_marks(plan, {})
    plan.setting = played
    shot_marks.ball_marks(plan, shot_marks.flights(plan, ids))
    shot_marks.run_marks(plan, ids)
    return tuple(mark for mark in plan.marks if mark.id in ids)


def _played_with(setting: Setting, ids: Container[str]) -> dict[str, Shot]:
    """Return the shots that say how those of ``ids`` are drawn: what leads to them, their alternatives, what follows."""
    before = predecessors(setting)
    drawn = {id for id in before if id in ids}
    drawn |= {run.during for run in setting.runs.values() if run.id in ids and run.during in before}
    beside = {before[id] for id in drawn}
    needed = {id for id, earlier in before.items() if id in drawn or earlier in beside or earlier in drawn}
    found: set[str] = set()
    waiting = list(needed)
    while waiting:
        id = waiting.pop()
        if id in found:
            continue
        found.add(id)
        shot = setting.shots[id]
        tied = (place.on for place in (shot.contact, shot.to) if place is not None)
        waiting += [other for other in (before[id], *tied) if other is not None and other in before]
    return {id: shot for id, shot in setting.shots.items() if id in found}
