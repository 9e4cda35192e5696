"""How much of a setting one picture has to show: one end of the court, and no more paths than an eye can follow."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from typing import Final

from designer.court.regions import End
from designer.drill.base import Point, place
from designer.drill.items import Note
from designer.drill.places import locate
from designer.drill.setting import Setting
from designer.play.layout import points_of, things_placed
from designer.play.rally import opening_shot
from designer.play.sequence import Sequence, Step

MOST_PATHS: Final = 6
"""More numbered paths than this on one court cannot be told apart: common practice, no source."""

AT_THE_NET: Final = 1.0
"""What lies no farther than this beyond the net, in metres, still belongs to the end before it."""


@dataclass(frozen=True, slots=True)
class Frame:
    """One picture of several: what stands over it, the shots it shows, and the setting with everybody where they are by then."""

    title: str
    shots: frozenset[str]
    setting: Setting


def end_in_use(setting: Setting, play: Sequence | None) -> End | None:
    """Return the only end at which anything stands or happens, None where both are in use or nothing is drawn."""
    found = [point[1] for point in _points(setting, play)]
    if not found or any(step.landing is None for step in (play.steps if play else ())):
        return None
    if max(found) <= AT_THE_NET and min(found) < -AT_THE_NET:
        return "near"
    if min(found) >= -AT_THE_NET and max(found) > AT_THE_NET:
        return "far"
    return None


def _points(setting: Setting, play: Sequence | None) -> Iterator[Point]:
    for spot in setting.spots.values():
        point = locate(setting, spot.place)
        if point is not None:
            yield point
    for item, copy in things_placed(setting):
        if not isinstance(item, Note):
            yield from points_of(setting, item, turned=copy)
    if play is None:
        return
    for step in play.steps:
        yield step.contact
        if step.landing is not None:
            yield step.landing
    for points in play.run_paths.values():
        yield from points


def frames(setting: Setting, play: Sequence | None) -> tuple[Frame, ...]:
    """Return the frames that a crowded setting is shown in, () where one picture is enough.

    The start with the ball that is put in, the restricted part, and the open part; a part that is itself too long is
    divided after each sixth ball.
    """
    if play is None or len({step.digit for step in play.steps}) <= MOST_PATHS:
        return ()
    opening = opening_shot(setting, play)
    last = next((step.digit for step in play.steps if step.shot.id == opening), None)
    parts: list[tuple[str, list[Step]]] = [("Start", [])]
    for step in play.steps:
        part = (
            "Start" if step.feed and step.digit == 1 else "Open" if last is not None and step.digit > last else "Then"
        )
        name, steps = parts[-1]
        if part != name or len({each.digit for each in steps} | {step.digit}) > MOST_PATHS:
            parts.append((part, []))
        parts[-1][1].append(step)
    return tuple(_frame(setting, play, name, steps) for name, steps in parts if steps or name == "Start")


def _frame(setting: Setting, play: Sequence, name: str, steps: list[Step]) -> Frame:
    """Return the frame of ``steps``, everybody where they are when the first of them is hit."""
    digits = sorted({step.digit for step in steps})
    count = f": ball {digits[0]}" if len(digits) == 1 else f": balls {digits[0]} to {digits[-1]}" if digits else ""
    moved = setting
    if steps and name != "Start":
        first = steps[0].shot.id
        spots = {
            id: spot.changed(place=place(*at))
            if spot.task == "plays" and (at := play.person_at(spot.job, first)) is not None
            else spot
            for id, spot in setting.spots.items()
        }
        moved = replace(setting, spots=spots)
    return Frame(f"{name}{count}", frozenset(step.shot.id for step in steps), moved)
