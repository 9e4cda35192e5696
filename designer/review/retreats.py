"""Cautions for people who go backwards: under a high ball, away from the net, and with balls about.

Reminders after real falls: turn and run, do not back-pedal; the dangerous ball is the one behind whoever looks up. The
distances are coaches' practice with no source.
"""

from __future__ import annotations

from collections.abc import Iterator
from functools import partial
from typing import Final

from designer.drill.base import Point
from designer.drill.items import BallMachine, Basket
from designer.review.check import Check, check
from designer.review.said import is_said, with_safety
from designer.wording.counts import listed
from designer.wording.names import letter, shot_name
from designer.wording.telling import Telling

BACK: Final = 1.5
"""Metres away from the net from which somebody runs and does not step."""

_TURNS: Final = (
    "turn and run",
    "turn side",
    "side-on",
    "sideways",
    "back-pedal",
    "backpedal",
    "backwards",
    "turn first",
)
_CLEARED: Final = ("collect", "pick up", "picked up", "gather", "clear")

TURN: Final = "For a high ball turn side-on and run; never back-pedal."
CLEAR: Final = "Balls behind a player are cleared before the next feed."


def retreat_cautions(told: Telling) -> Iterator[Check]:
    """Yield a caution for each person who goes back under a high ball, unless the author speaks of turning."""
    yield from _loose_balls(told)
    if is_said(told, _TURNS):
        return
    seen: set[str] = set()
    for who, metres, why, about in (*_under_high_balls(told), *_retreats(told)):
        if who not in seen:
            seen.add(who)
            text = f"{letter(told, who)} goes back {metres:.1f} m {why}: turn side-on and run, never back-pedal"
            mend = partial(with_safety, text=TURN)
            yield check("caution", "back-pedal", text, *about, at=told.at, danger=True, mend=mend)


Found = tuple[str, float, str, tuple[str, ...]]
"""(who, metres back, why, what it is about)"""


def _under_high_balls(told: Telling) -> Iterator[Found]:
    """Yield whoever meets a lob, or smashes, farther from the net than where the ball before was hit."""
    for step in told.sequence.steps:
        earlier = told.sequence.step(told.sequence.before.get(step.shot.id) or "")
        if earlier is None:
            continue
        lobbed = earlier.shot.stroke == "lob"
        if step.hitter == earlier.hitter or not (lobbed or step.shot.stroke == "smash"):
            continue
        metres = _back(
            told.sequence.person_at(step.hitter, earlier.shot.id), told.sequence.person_at(step.hitter, step.shot.id)
        )
        if metres >= BACK:
            why = f"under {shot_name(told, earlier.shot)}" if lobbed else f"for {shot_name(told, step.shot)}"
            yield step.hitter, metres, why, (earlier.shot.id, step.shot.id)


def _retreats(told: Telling) -> Iterator[Found]:
    """Yield whoever runs back while a lob is in the air, or is drawn to retreat."""
    for run in sorted(told.setting.runs.values(), key=lambda run: run.id):
        path = told.sequence.run_paths.get(run.id, ())
        during = told.setting.shots.get(run.during or "")
        lobbed = during is not None and during.stroke == "lob" and during.by != run.by
        if len(path) > 1 and (lobbed or run.purpose == "retreat"):
            metres = _back(path[0], path[-1])
            if metres >= BACK:
                why = f"under {shot_name(told, during)}" if lobbed and during is not None else "from the net"
                yield run.by, metres, why, (run.id, *((during.id,) if during is not None else ()))


def _back(start: Point | None, end: Point | None) -> float:
    """Return how far somebody goes away from the net, 0 where it is more to the side than back."""
    if start is None or end is None or start[1] * end[1] <= 0:
        return 0.0
    back = abs(end[1]) - abs(start[1])
    return back if back >= abs(end[0] - start[0]) / 2 else 0.0


def _loose_balls(told: Telling) -> Iterator[Check]:
    """Yield a suggestion where one fed ball follows another, somebody runs, and nobody says who clears them."""
    setting = told.setting
    if any(spot.task == "collects" for spot in setting.spots.values()) or is_said(told, _CLEARED):
        return
    if any("ball" in text.lower() for text in told.drill.safety):
        return
    stocks = [item.id for item in setting.items.values() if isinstance(item, Basket | BallMachine)]
    runners = sorted({run.by for run in setting.runs.values()} & set(told.playing))
    if stocks and runners and any(step.feed for step in told.sequence.steps):
        who = listed([letter(told, one) for one in runners])
        text = f"fed balls lie about where {who} runs: say when they are cleared, those behind a player first"
        yield check("suggestion", "loose-balls", text, *stocks, at=told.at, mend=partial(with_safety, text=CLEAR))
