"""Barriers behind a player: never the usual way, refused for under-tens, and a danger that must be accepted by name.

Coaches' practice with no source: prefer a rule to an object, and a flat line to a thing that stands.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from functools import partial
from typing import Any, Final

from designer.court.regions import STRIDE
from designer.drill.drill import Drill
from designer.drill.edits import put
from designer.drill.items import Barrier, Line
from designer.drill.rules import UseStroke
from designer.drill.setting import At, setting_at
from designer.play.layout import points_of
from designer.review.check import Check, called, check
from designer.review.geometry import point_to_path
from designer.wording.names import letter, shot_name
from designer.wording.telling import Telling

KNEE: Final = 0.4
"""A thing lower than this, in metres, is not noticed."""
CLEAR: Final = 2.0
"""How far a barrier stands from the fence behind it, in metres."""
YOUNG: Final = 10
"""Under-tens: ITF Rules of Tennis, Appendix VI, sets courts and balls of their own for them."""


def barrier_cautions(told: Telling) -> Iterator[Check]:
    """Yield what is to be said of the barriers of one setting."""
    setting = told.setting
    barriers = [item for item in setting.items.values() if isinstance(item, Barrier)]
    if not barriers:
        return
    ids = tuple(sorted(item.id for item in barriers))
    high = sorted(shot.id for shot in setting.shots.values() if shot.stroke in ("lob", "smash"))
    if high:
        names = " and ".join(shot_name(told, setting.shots[id]) for id in high)
        text = f"a barrier stands while {names} is played: nobody goes back for a high ball with something behind"
        yield check("caution", "barrier-high-ball", text, *ids, *high, at=told.at, danger=True)
    elif not is_young(told.drill) and not any(_forbids_lobs(rule) for rule in setting.rules.values()):
        text = "a barrier stands and no rule keeps lobs out: say that a high ball is let go"
        yield check("caution", "barrier-no-rule", text, *ids, at=told.at, danger=True)
    for item in barriers:
        left = min((told.ground.back_fence - abs(y) for _, y in points_of(setting, item)), default=math.inf)
        if left < CLEAR - 0.005:
            text = f"{called(told, item.id)} is {max(left, 0):.1f} m from the back fence: leave {CLEAR:.0f} m clear"
            yield check("caution", "barrier-fence", text, item.id, at=told.at, danger=True)
        if is_young(told.drill):
            text = f"no barrier for players under {YOUNG}: {called(told, item.id)} must be a flat line"
            mend = partial(flattened, at=told.at, id=item.id)
            yield check("error", "barrier-young", text, item.id, at=told.at, danger=True, mend=mend)
        else:
            yield from _barrier(told, item)


def barriers_for_starters(told: Telling) -> Iterator[Check]:
    """Yield a caution for each barrier of a setting that starters are to play: coaches' practice, no source."""
    for item in told.setting.items.values():
        if isinstance(item, Barrier) and not is_young(told.drill):
            text = f"starters play with {called(told, item.id)} behind them: not for beginners, a flat line instead"
            mend = partial(flattened, at=told.at, id=item.id)
            yield check("caution", "barrier-beginners", text, item.id, at=told.at, danger=True, mend=mend)


def is_young(drill: Drill) -> bool:
    """Whether a drill is also for under-tens."""
    return drill.age is not None and drill.age[0] < YOUNG


def flattened(drill: Drill, *, at: At, id: str) -> Drill:
    """Return ``drill`` with a flat line where a barrier stands, under the same id."""
    item = setting_at(drill, at).items.get(id)
    if not isinstance(item, Barrier):
        return drill
    kept = item.model_dump(exclude={"kind", "height", *(item.model_extra or ())})
    return put(drill, at, Line(**(kept | {"kind": "line", "marked": "throw-down"})))


def _barrier(told: Telling, item: Barrier) -> Iterator[Check]:
    name = called(told, item.id)
    text = (
        f"{name} is a thing to back into: a flat line does the same and cannot be fallen over; if a thing, then soft, light,"
        " bright and at least knee-high, and never for beginners"
    )
    if item.height is not None and item.height < KNEE:
        text = f"{name} is lower than a knee, so it is not noticed: use a flat line instead"
    mend = partial(flattened, at=told.at, id=item.id)
    yield check("caution", "barrier", text, item.id, at=told.at, danger=True, mend=mend)
    corners = points_of(told.setting, item)
    for who in sorted({step.hitter for step in told.sequence.steps}):
        places = [
            told.sequence.person_at(step.hitter, step.shot.id) for step in told.sequence.steps if step.hitter == who
        ]
        nearest = min((point_to_path(place, corners) for place in places if place is not None), default=math.inf)
        if nearest < STRIDE - 0.005:
            text = f"{name} is {nearest:.1f} m from {letter(told, who)} at a hit: leave at least a long stride"
            yield check("caution", "barrier-near", text, item.id, _spot(told, who), at=told.at, danger=True)


def _forbids_lobs(rule: Any) -> bool:
    must = rule.must
    return isinstance(must, UseStroke) and rule.never and "lob" in must.strokes


def _spot(told: Telling, who: str) -> str:
    """Return the id by which a person is lit up on the drawing."""
    spot = told.setting.spot_of(who)
    return who if spot is None else spot.id
