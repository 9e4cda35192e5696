"""First records of each kind, as a coach would begin them. What decides a rally is left open, to be asked for."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any, Final

from designer.desktop.forms.context import Context
from designer.desktop.forms.tables_rule import MUSTS
from designer.drill.conditions import Event, In, Outcome
from designer.drill.ids import new_id
from designer.drill.movement import FEEDS, SERVES
from designer.drill.rules import Finish, Part, Points, Rule, Start, Swap
from designer.drill.setting import Setting


def new_start(context: Context) -> Start:
    """Return a start by the first ball that is drawn, best a feed or a serve."""
    firsts = [shot for shot in context.setting.shots.values() if shot.after is None]
    firsts.sort(key=lambda shot: shot.stroke not in FEEDS | SERVES)
    named = {start.shot for start in context.setting.starts.values()}
    shot = next((each for each in firsts if each.id not in named), None)
    letters = context.letters
    by = (shot.by,) if shot is not None else letters[-1:]
    return Start(id=context.new_id("start"), shot=None if shot is None else shot.id, by=by)


def new_rule(context: Context, do: str) -> Rule:
    """Return a rule that asks for ``do``, for whoever plays first; what a breach costs is left open."""
    make = next(make for name, _, make in MUSTS if name == do)
    return Rule(id=context.new_id("rule"), who=context.letters[:1], must=make(context))


def new_points(context: Context) -> Points:
    """Return one point for a rally won."""
    return Points(
        id=context.new_id("points"),
        on=(Event(what="won"),),
        gives=Outcome(then="points", value=1),
    )


TARGETS: Final = {
    **dict.fromkeys(("area", "hoop"), "landed"),
    **dict.fromkeys(("cone", "disc", "basket", "obstacle"), "struck"),
}
"""What can be worth points, by its kind, and what a ball must do there for them."""


def new_worth(context: Context, item: Any) -> Points:
    """Return one point for a ball that lands in ``item``, one of ``TARGETS``, or strikes it."""
    what: Any = TARGETS[item.kind]
    place = In(area=item.id, judged="bounce" if what == "landed" else None)
    return Points(
        id=context.new_id("points"), on=(Event(what=what, where=(place,)),), gives=Outcome(then="points", value=1)
    )


def worth(setting: Setting, item: Any) -> Points | None:
    """Return the first points for a ball in ``item`` or at it, None where there are none."""
    every = (points for _, points in sorted(setting.points.items()))
    return next((each for each in every if any(place.area == item.id for on in each.on for place in on.where)), None)


def new_finish(context: Context) -> Finish:
    """Return a race to 11."""
    return Finish(id=context.new_id("finish"), kind="race", to=11)


def new_swap(context: Context) -> Swap:
    """Return a change of jobs after five starts: A becomes B, B becomes the next, the last becomes A."""
    letters = context.letters
    moves: dict[Any, Any] = dict(zip(letters, (*letters[1:], *letters[:1]), strict=True)) if len(letters) > 1 else {}
    return Swap(id=context.new_id("swap"), on=(Event(what="starts", count=5),), moves=moves)


def new_part(context: Context) -> Part:
    """Return a part that follows the last one: cooperative first, then forced, then open."""
    parts = context.setting.parts
    followed = {part.after for part in parts.values()}
    last = next((part for part in parts.values() if part.id not in followed), None)
    kind: Any = "cooperative" if last is None else "open" if last.kind == "forced" else "forced"
    return Part(id=context.new_id("part"), kind=kind, after=None if last is None else last.id)


def new_ending(context: Context) -> tuple[Part, Part]:
    """Return a restricted part that ends with the next ball of whoever puts the first one in, and the open one after it."""
    setting = context.setting
    firsts = [shot.by for shot in setting.shots.values() if shot.after is None]
    feeder = next(iter((*(by for start in setting.starts.values() for by in start.by), *firsts, "anyone")))
    ends: Any = Event(what="played", by=(feeder,), count=1)
    first = Part(id=context.new_id("part"), kind="forced", until=(ends,))
    then = Part(id=new_id("part", context.source, {*setting.ids(), first.id}), kind="open", after=first.id)
    return first, then


def new_unreached(context: Context, shot: str) -> Points:
    """Return a replay for a ball that nobody gets a racket to."""
    return Points(
        id=context.new_id("points"),
        on=(Event(what="missed", of=(shot,), untouched=True),),
        gives=Outcome(then="replay"),
    )


NEW: Final[dict[str, Callable[[Context], Any]]] = {
    "start": new_start,
    "points": new_points,
    "finish": new_finish,
    "swap": new_swap,
    "part": new_part,
}
"""What makes a first record of each kind that the card asks for, rules apart: they come in kinds of their own."""
