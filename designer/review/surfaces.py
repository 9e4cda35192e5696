"""Cautions and suggestions that hang on what the court is made of, whether it is wet, and how old the players are."""

from __future__ import annotations

from collections.abc import Iterator
from functools import partial
from typing import Final

from designer.drill.drill import CLUB_RUN_BACK, CLUB_SIDE_RUN, Drill
from designer.drill.edits import put
from designer.drill.items import Disc, Hoop, Line, Obstacle
from designer.drill.places import locate
from designer.drill.setting import At, setting_at
from designer.numbers.balls import ball_in_words
from designer.play.layout import points_of
from designer.review.barriers import is_young
from designer.review.check import Check, called, check
from designer.review.said import is_said
from designer.wording.counts import listed
from designer.wording.names import letter
from designer.wording.telling import Telling

ON_IT: Final = 0.7
"""Somebody so near a flat marker, in metres, stands on it."""
_MARKS: Final = ("spot", "mark", "disc", "hoop")
BY_THE_NET: Final = 2.0
"""A bench or an umpire's chair stands so near the line of the net on any court, beside it."""


def surface_cautions(told: Telling) -> Iterator[Check]:
    """Yield what is to be said of a wet court, of strips on clay and grass, and of things in the run-off."""
    court, setting = told.drill.court, told.setting
    runs = sorted(setting.runs)
    if court.wet and court.surface != "clay" and runs:
        text = "people run on a court that is said to be wet: wait until it is dry, or play it standing"
        yield check("caution", "wet-court", text, *runs, at=told.at, danger=True)
    for item in setting.items.values():
        if isinstance(item, Line) and item.marked == "throw-down" and court.surface in ("clay", "grass"):
            on_clay = court.surface == "clay"
            words = "clay needs no strip: scratch the line with a shoe" if on_clay else "on grass flat fabric only"
            mend = partial(_scratched, at=told.at, id=item.id) if on_clay else None
            yield check(
                "suggestion", "strip-surface", f"{called(told, item.id)}: {words}", item.id, at=told.at, mend=mend
            )
        if isinstance(item, Obstacle):
            yield from _in_the_run_off(told, item)


def _scratched(drill: Drill, *, at: At, id: str) -> Drill:
    item = setting_at(drill, at).items.get(id)
    return put(drill, at, item.changed(marked="chalk")) if isinstance(item, Line) else drill


def _in_the_run_off(told: Telling, item: Obstacle) -> Iterator[Check]:
    """Yield a caution for an obstacle nearer to the lines than the club minimum: ITF Technical Booklet 2015, table 5."""
    ground = told.ground
    near = [
        (max(abs(x) - ground.outer, 0.0), max(abs(y) - ground.baseline, 0.0))
        for x, y in points_of(told.setting, item)
        if abs(y) > BY_THE_NET
    ]
    if any(beside < CLUB_SIDE_RUN - 0.01 and behind < CLUB_RUN_BACK - 0.01 for beside, behind in near):
        text = (
            f"{called(told, item.id)} stands nearer to the lines than {CLUB_SIDE_RUN:.2f} m beside or"
            f" {CLUB_RUN_BACK:.2f} m behind the court: move it, or keep play away from it"
        )
        yield check("caution", "obstacle-near", text, item.id, at=told.at, danger=True)


def age_cautions(told: Telling) -> Iterator[Check]:
    """Yield what under-tens need: a court and a ball of their own, and a place to wait on."""
    drill, setting = told.drill, told.setting
    if not is_young(drill):
        return
    ball, _ = ball_in_words(setting.ball)
    if drill.court.standard == "tennis" and ball.name == "yellow":
        with_it = "a yellow ball" if setting.ball else "no slower ball named"
        text = (
            f"under-tens on a full court with {with_it}: take a smaller court or a slower ball, red, orange or green,"
            " which under-ten competition is played with"
        )
        yield check("caution", "young-court", text, at=told.at)
    flat = [locate(setting, item.place) for item in setting.items.values() if isinstance(item, Disc | Hoop)]
    waiting = [spot for spot in setting.spots.values() if spot.task == "waits"]
    lost = [
        spot
        for spot in sorted(waiting, key=lambda spot: spot.job)
        if (stands := locate(setting, spot.place)) is not None
        and not any(at is not None and abs(at[0] - stands[0]) + abs(at[1] - stands[1]) <= ON_IT for at in flat)
    ]
    if lost and not is_said(told, _MARKS):
        who = listed([letter(told, spot.job) for spot in lost])
        verb = "wait" if len(lost) > 1 else "waits"
        text = f"{who} {verb} without a mark: a disc to stand on keeps children out of the reach of rackets"
        yield check("suggestion", "young-spots", text, *(spot.id for spot in lost), at=told.at)
