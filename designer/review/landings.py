"""Errors: a ball that is asked for, or paid, where it can never land; and a start that its ball does not fit."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from functools import partial
from typing import Any

from designer.court.regions import region_box
from designer.drill.base import ON_THE_LINE
from designer.drill.conditions import Event, In
from designer.drill.drill import Drill
from designer.drill.edits import put
from designer.drill.items import Area, Hoop
from designer.drill.places import is_letter
from designer.drill.rules import Keep, Rule, Start
from designer.drill.setting import At, setting_at
from designer.play.layout import points_of
from designer.review.check import Check, called, check, record_name
from designer.review.endings import cannot
from designer.wording.names import letter, shot_name
from designer.wording.shapes import span
from designer.wording.telling import Telling


def landing_checks(told: Telling) -> Iterator[Check]:
    """Yield what is asked for or paid at the hitter's own end or outside what is in play, or never comes about."""
    for rule in told.setting.rules.values():
        yield from _rule(told, rule)
    for points in told.setting.points.values():
        if all(_never(told, event) for event in points.on):
            text = f"{record_name(told, points)} is never paid: what it waits for cannot happen"
            yield check("error", "points-never", text, points.id, at=told.at)
    for start in told.setting.starts.values():
        yield from _start(told, start)


def _rule(told: Telling, rule: Rule) -> Iterator[Check]:
    must = rule.must
    if not isinstance(must, Keep) or rule.never:
        return
    hitters = _hitters(told, rule.who, rule.of)
    for place in must.where:
        if _at_own_end(told, place, hitters):
            text = (
                f"{record_name(told, rule)} wants a ball to land in {called(told, place.area)}, at the hitter’s own end"
            )
            yield check("error", "own-end", text, rule.id, place.area, at=told.at)
        elif _out_of_play(told, place):
            text = (
                f"{record_name(told, rule)} wants a ball to land in {called(told, place.area)}, outside what is in play"
            )
            yield check("error", "out-of-play", text, rule.id, place.area, at=told.at)


def _hitters(told: Telling, who: Iterable[str], of: Iterable[str]) -> tuple[str, ...]:
    """Return the letters whose ball it is, () where that is anybody's, or a ball that is fed, thrown or dropped."""
    shots = [told.setting.shots[id] for id in of if id in told.setting.shots]
    if any(told.is_new_ball(shot) for shot in shots):
        return ()
    named = tuple(who) or tuple(shot.by for shot in shots)
    return named if all(is_letter(one) for one in named) else ()


def _at_own_end(told: Telling, place: In, hitters: tuple[str, ...]) -> bool:
    """Whether a ball is to bounce in a thing that lies at the end of everybody who can hit it."""
    item = told.setting.items.get(place.area)
    if not isinstance(item, Area | Hoop) or item.both_ends or place.outside or place.judged not in ("bounce", None):
        return False
    ends = {told.ends.get(one) for one in hitters}
    corners = points_of(told.setting, item)
    far = {y > 0 for _, y in corners if abs(y) > ON_THE_LINE}
    return bool(hitters) and len(far) == 1 and ends == {"far" if far.pop() else "near"}


def _out_of_play(told: Telling, place: In) -> bool:
    """Whether a ball is to bounce in an area that has no part in the region that is in play."""
    item = told.setting.items.get(place.area)
    play = None if told.setting.in_play is None else region_box(told.ground, told.setting.in_play)
    if not isinstance(item, Area) or place.outside or place.judged != "bounce" or play is None:
        return False
    corners = points_of(told.setting, item)
    if not corners or len({y > 0 for _, y in corners if abs(y) > ON_THE_LINE}) > 1:
        return False
    box = span(corners)
    left, right, front, back = play
    return (
        box.right <= left + ON_THE_LINE
        or box.left >= right - ON_THE_LINE
        or box.back <= front + ON_THE_LINE
        or box.front >= back - ON_THE_LINE
    )


def _never(told: Telling, event: Event) -> bool:
    """Whether what is paid can surely not come about."""
    if event.what in ("played", "landed"):
        hitters = _hitters(told, event.by, event.of)
        return cannot(told, event) or any(_at_own_end(told, place, hitters) for place in event.where)
    if event.what != "won":
        return False
    letters = {who for who in event.by if is_letter(who)}
    shots = {told.setting.shots[id].by for id in event.of if id in told.setting.shots}
    strangers = bool(letters) and len(letters) == len(event.by) and bool(shots) and not shots & letters
    return strangers or any(_never(told, inner) for inner in event.and_ if inner.what in ("played", "landed"))


def _start(told: Telling, start: Start) -> Iterator[Check]:
    shot = told.setting.shots.get(start.shot or "")
    if shot is None:
        return
    if start.by and shot.by not in start.by:
        who = " and ".join(letter(told, one) for one in start.by)
        text = f"{shot_name(told, shot)} is drawn for {letter(told, shot.by)}, and {who} is to put it in"
        mend = partial(_with_values, at=told.at, id=start.id, values={"by": (shot.by,)})
        yield check("error", "start-by", text, start.id, shot.id, at=told.at, mend=mend)
    if start.once is None and shot.after in told.setting.shots and not told.is_new_ball(shot):
        text = f"{record_name(told, start)} begins with {shot_name(told, shot)}, which answers another ball"
        yield check("error", "start-later", text, start.id, shot.id, at=told.at)


def _with_values(drill: Drill, *, at: At, id: str, values: dict[str, Any]) -> Drill:
    record = setting_at(drill, at).find(id)
    return drill if record is None else put(drill, at, record.changed(**values))
