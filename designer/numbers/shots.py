"""All numbers of a setting, shot by shot: the pure function that the screen, the report and the checks ask."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from functools import lru_cache, partial
from typing import Final

from designer.drill.base import Point
from designer.drill.drill import Drill
from designer.drill.setting import At
from designer.numbers.accuracy import PURPOSES, Landing, beyond, chance_in, fitted_factor, rate_in_words, size_for
from designer.numbers.aiming import Box
from designer.numbers.levels import USUAL, Habit, Level, level
from designer.numbers.problems import Impossible
from designer.numbers.recovery import Recovery, recovery
from designer.numbers.situation import Situation, half_width, inside_by, situation
from designer.numbers.strike import Strike, Wanted
from designer.numbers.targets import Purpose, Target, targets
from designer.numbers.timing import Meeting, RunTime, meetings, run_times
from designer.play.sequence import Step

_SHORTEST: Final = 0.05
"""Metres: a ball let fall has no spread to speak of."""


@dataclass(frozen=True, slots=True)
class TargetChance:
    """A target and the chance, 0 to 1, that one ball of this level lands in it after clearing the net."""

    target: Target
    chance: float

    @property
    def purpose(self) -> Purpose | None:
        """What it is for, on which the rate to wish for depends; None where neither drill nor scoring says it."""
        return self.target.purpose


@dataclass(frozen=True, slots=True)
class ShotNumbers:
    """What is known about one drawn ball.

    ``strike``: how it is hit and flies, None where no landing is drawn or it cannot be hit. ``inside``: how far inside the
    lines it lands, negative outside, None for a ball that stays at the feeder's end or is taken on the full. ``chance_in``: that it clears the
    net and lands in. ``meetings``: one for each shot that may follow. ``habit``: the level's own
    numbers that the strike rests on, each with its source. ``problem``: a sentence, "" where there is none.
    """

    shot: str
    digit: int
    by: str
    stroke: str
    strike: Strike | None
    habit: Habit | None
    inside: float | None
    chance_in: float | None
    targets: tuple[TargetChance, ...]
    meetings: tuple[Meeting, ...]
    runs: tuple[RunTime, ...]
    problem: str


@dataclass(frozen=True, slots=True)
class SettingNumbers:
    """The numbers of all shots in order of play, and sentences on what had to be assumed."""

    shots: tuple[ShotNumbers, ...]
    notices: tuple[str, ...]

    def shot(self, id: str) -> ShotNumbers | None:
        """Return the numbers of this shot, None where there is none."""
        return next((shot for shot in self.shots if shot.shot == id), None)


def shot_numbers(
    drill: Drill, at: At, players: Level | str = USUAL, *, drag: float | None = None, density: float | None = None
) -> SettingNumbers:
    """Return the numbers of every shot of the setting at ``at``, for players of a level.

    A ball's flight is worked out once and kept, so that a call after a small change costs only what the change touched.
    Raises ``ValueError`` with a sentence for shots in a circle or a level that is not there, ``KeyError`` for a setting
    that is not there; a shot that cannot be played has its sentence in ``problem``.
    """
    own = level(players) if isinstance(players, str) else players
    options = {} if density is None else {"density": density}
    return numbers_of(situation(drill, at, own, drag=drag, **options))


def numbers_of(here: Situation) -> SettingNumbers:
    """Return the numbers of every shot of a situation."""
    return SettingNumbers(tuple(_of_step(here, step) for step in here.sequence.steps), here.notices)


def _of_step(here: Situation, step: Step) -> ShotNumbers:
    problem, hit = "", None
    try:
        hit = here.strike(step)
    except Impossible as impossible:
        problem = str(impossible)
    met = () if hit is None else meetings(here, step, hit)
    wanted = here.wanted(step)
    crossing = hit is not None and hit.clearance is not None and wanted is not None and wanted.arrives is None
    return ShotNumbers(
        shot=step.shot.id,
        digit=step.digit,
        by=step.hitter,
        stroke=step.shot.stroke or "drive",
        strike=hit,
        habit=None if hit is None else here.level_of(step.hitter).habit(step.shot.stroke, step.wing),
        inside=inside_by(step.landing, here.box(step)) if crossing and step.landing is not None else None,
        chance_in=_chance_in(wanted, hit) if hit is not None and wanted is not None and crossing else None,
        targets=() if hit is None else _targets(here, step, hit),
        meetings=met,
        runs=run_times(here, step, met),
        problem=problem or ("" if hit is None else hit.problem),
    )


def landing_of(here: Situation, step: Step) -> Landing | None:
    """Return where balls of ``step`` come down, None where no landing is drawn."""
    if step.landing is None:
        return None
    x, y = step.landing[0] - step.contact[0], step.landing[1] - step.contact[1]
    far = max((x * x + y * y) ** 0.5, _SHORTEST)
    return Landing(step.landing, step.contact, here.level_of(step.hitter).spread_of(step.shot.stroke, far))


def _chance_in(wanted: Wanted, hit: Strike) -> float:
    return 0.0 if hit.window is None else _chance_in_box(wanted, hit.window.shortest)


@lru_cache(maxsize=4096)
def _chance_in_box(wanted: Wanted, shortest: float) -> float:
    spread = wanted.level.spread_of(wanted.stroke, _far(wanted))
    landing = Landing(wanted.landing, wanted.contact, spread)
    left = beyond(_corners(wanted.box), wanted.contact, wanted.landing, shortest)
    return chance_in(left, landing) if len(left) >= 3 else 0.0


def _far(wanted: Wanted) -> float:
    (x0, y0), (x1, y1) = wanted.contact, wanted.landing
    return float(max(((x1 - x0) ** 2 + (y1 - y0) ** 2) ** 0.5, _SHORTEST))


def _corners(box: Box) -> tuple[Point, ...]:
    left, right, low, high = box
    return ((left, low), (right, low), (right, high), (left, high))


def _targets(here: Situation, step: Step, hit: Strike) -> tuple[TargetChance, ...]:
    landing = landing_of(here, step)
    if landing is None:
        return ()
    shortest = 0.0 if hit.window is None else hit.window.shortest
    return tuple(
        TargetChance(target, _chance(_above_net(target, landing, shortest), landing)) for target in targets(here, step)
    )


def _above_net(target: Target, landing: Landing, shortest: float) -> Target:
    """Return what is left of ``target`` for balls that clear the net; an ellipse is left as it is."""
    if shortest <= 0 or target.ellipse is not None:
        return target

    def kept(polygons: tuple[tuple[Point, ...], ...]) -> tuple[tuple[Point, ...], ...]:
        cut = (beyond(polygon, landing.contact, landing.aim, shortest) for polygon in polygons)
        return tuple(polygon for polygon in cut if len(polygon) >= 3)

    return replace(target, polygons=kept(target.polygons), holes=kept(target.holes))


@lru_cache(maxsize=4096)
def _chance(target: Target, landing: Landing) -> float:
    return target.chance(landing)


def size_wished(here: Situation, shot: str, found: TargetChance) -> float | None:
    """Return how many times as wide and deep a target would have to be to be hit as often as its purpose wishes at least.

    1 where it is hit often enough; None where no size would do, no landing is drawn, or nobody has said what it is for.
    """
    step = here.sequence.step(shot)
    landing = None if step is None else landing_of(here, step)
    if found.purpose is None:
        return None
    wished = PURPOSES[found.purpose][0]
    if found.chance >= wished:
        return 1.0
    if landing is None:
        return None
    try:
        return size_for(found.target.outline, landing, wished)
    except Impossible:
        return None


def recoveries(here: Situation) -> Mapping[str, Recovery]:
    """Return, for each shot whose reply is drawn, where its hitter should wait for that reply: by shot id."""
    found = ((step.shot.id, recovery_after(here, step)) for step in here.sequence.steps)
    return {shot: place for shot, place in found if place is not None}


def recovery_after(here: Situation, step: Step) -> Recovery | None:
    """Return where the hitter of ``step`` should wait for the reply that is drawn.

    Where alternatives follow, the first is taken. None after shots that leave no such place, and for somebody who is at
    the net or goes there.
    """
    replies = [following for following in here.sequence.following(step.shot.id) if not following.feed]
    if step.feed or not replies or replies[0].hitter == step.hitter or _at_the_net(here, step):
        return None
    try:
        return recovery(replies[0].contact, here.level, here.level.movement, here.around, half_width=half_width(here))
    except Impossible:
        return None


def _at_the_net(here: Situation, step: Step) -> bool:
    nearest = here.ground.service_line or here.ground.baseline / 2
    after = here.sequence.person_after(step.hitter, step.shot.id)
    return any(abs(place[1]) < nearest for place in (step.contact, after) if place is not None)


def fitted(here: Situation, shot: str | None, hits: int, tries: int) -> Level:
    """Return the level with its spread fitted to one's own group, who hit the target of ``shot`` ``hits`` of ``tries``.

    ``shot``: None for the first drawn ball that has a target; a ball without one is fitted to the court it must land in.
    Raises ``Impossible`` with a sentence where there is no such ball, or no spread explains what was hit.
    """
    step = _with_target(here, shot)
    landing = landing_of(here, step)
    hit = here.strike(step)
    if landing is None or hit is None:
        raise Impossible(f"The shot {step.shot.id!r} has no landing place, so nothing can be fitted to it.")
    rate, _, _ = rate_in_words(hits, tries)
    shortest = 0.0 if hit.window is None else hit.window.shortest
    asked = targets(here, step)
    if asked:
        factor = fitted_factor(_above_net(asked[0], landing, shortest).chance, landing, rate)
    else:
        box = beyond(_corners(here.box(step)), landing.contact, landing.aim, shortest)
        factor = fitted_factor(partial(chance_in, box), landing, rate)
    return here.level.with_spread(factor, f"{hits} of {tries}")


def _with_target(here: Situation, shot: str | None) -> Step:
    for step in here.sequence.steps:
        if step.shot.id == shot or (shot is None and not step.feed and targets(here, step)):
            return step
    if shot is None:
        raise Impossible("No drawn ball has a target; name the shot that was counted.")
    raise Impossible(f"There is no shot {shot!r}; there are {', '.join(step.shot.id for step in here.sequence.steps)}.")
