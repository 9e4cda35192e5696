"""How hard a setting works its people: hits and metres a minute, work to rest, serves, and when the balls run out."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final

from designer.drill.items import Basket
from designer.drill.movement import FEEDS, SERVES
from designer.numbers.movement import length
from designer.numbers.shots import SettingNumbers, ShotNumbers
from designer.numbers.situation import Situation
from designer.play.rally import opening_part
from designer.play.sequence import Step

BETWEEN_FEEDS: Final = 5.0
"""Seconds from the end of one fed ball to the next feed where no point is played. Common practice, no source."""

LONGEST_RALLY: Final = 60.0
"""Hits after which a cooperative rally is taken to end: a new ball, a breath. Common practice, no source."""


@dataclass(frozen=True, slots=True)
class PersonLoad:
    """What one job does in a minute: hits of any kind, of them serves and overheads; balls fed; metres run."""

    letter: str
    hits: float
    serves: float
    overheads: float
    feeds: float
    metres: float


@dataclass(frozen=True, slots=True)
class Load:
    """The load of a setting.

    ``rally``: seconds of play in one start. ``between``: seconds from its end to the next. ``starts``: in a minute.
    ``balls``: new balls a minute. ``hits``: to expect in one start, the feed not counted. ``in_play``: balls there are,
    None where nobody says. ``empty_after``: minutes until they have all been played.
    """

    rally: float
    between: float
    hits: float
    balls: float
    in_play: int | None
    empty_after: float | None
    people: tuple[PersonLoad, ...]

    @property
    def starts(self) -> float:
        """Starts in a minute."""
        return 60.0 / (self.rally + self.between)

    @property
    def work_to_rest(self) -> float:
        """Seconds of rest to one of work."""
        return self.between / self.rally if self.rally > 0 else math.inf


def load(here: Situation, numbers: SettingNumbers) -> Load | None:
    """Return the load of a setting, None where no ball is drawn. Alternatives count in equal shares."""
    branches = list(branches_of(here))
    if not branches:
        return None
    share = 1 / len(branches)
    cooperative = _is_cooperative(here)
    opens = opening_part(here.setting) is not None or _is_open(here)
    play = here.level.play
    drawn_hits = sum(share * sum(1 for step in branch if not step.feed) for branch in branches)
    drawn_seconds = sum(share * _seconds(branch, numbers, play.between_hits) for branch in branches)
    more = _more_hits(numbers, drawn_hits) if cooperative else (play.hits if opens else 0.0)
    rally = drawn_seconds + more * play.between_hits
    between = play.between_rallies if opens or cooperative else BETWEEN_FEEDS
    starts = 60.0 / (rally + between)
    balls = starts * sum(share * sum(1 for step in branch if step.feed) for branch in branches)
    stock = balls_there_are(here)
    return Load(
        rally=rally,
        between=between,
        hits=drawn_hits + more,
        balls=balls,
        in_play=stock,
        empty_after=None if stock is None or balls == 0 else stock / balls,
        people=tuple(_person(here, letter, branches, starts, more) for letter in _players(here)),
    )


def _players(here: Situation) -> list[str]:
    hitters = {step.hitter for step in here.sequence.steps}
    runners = {run.by for run in here.setting.runs.values()}
    return sorted(hitters | runners)


def branches_of(here: Situation) -> Iterator[list[Step]]:
    """Yield the steps of each way a start can go, from the first ball to a last one."""
    for step in here.sequence.steps:
        if not here.sequence.following(step.shot.id):
            ways = here.sequence.branch(step.shot.id)
            yield [found for id in ways if (found := here.sequence.step(id)) is not None]


def _seconds(branch: list[Step], numbers: SettingNumbers, usual: float) -> float:
    """Return the seconds of play of one branch: each ball until it is met, the last until it bounces."""
    total = 0.0
    for step, following in zip(branch, [*branch[1:], None], strict=True):
        shot = numbers.shot(step.shot.id)
        total += usual if shot is None else _until(shot, following, usual)
    return total


def _until(shot: ShotNumbers, following: Step | None, usual: float) -> float:
    met = next((meeting for meeting in shot.meetings if following and meeting.shot == following.shot.id), None)
    if met is not None:
        return met.there_is
    return usual if shot.strike is None else shot.strike.time


def _is_cooperative(here: Situation) -> bool:
    kinds = [part.kind for part in here.setting.parts.values()]
    finish = here.setting.finish
    counted = finish is not None and (finish.running or finish.minutes is not None) and finish.starts is None
    return kinds == ["cooperative"] and counted


def _is_open(here: Situation) -> bool:
    return any(part.kind == "open" for part in here.setting.parts.values())


def _more_hits(numbers: SettingNumbers, drawn: float) -> float:
    """Return the hits to expect beyond the drawn ones in a rally that goes on until a miss."""
    success = success_of_a_hit(numbers)
    return max(0.0, min(1 / max(1 - success, 1 / LONGEST_RALLY), LONGEST_RALLY) - drawn)


def success_of_a_hit(numbers: SettingNumbers) -> float:
    """Return the mean chance that a drawn hit, feeds left out, does what is asked of it: its demands, else to be in."""
    chances = [chance for shot in numbers.shots if (chance := chance_of(shot)) is not None]
    return sum(chances) / len(chances) if chances else 0.0


def chance_of(shot: ShotNumbers) -> float | None:
    """Return the chance that one hit does what is asked of it; None for a feed, a serve, or where nothing is known."""
    if shot.stroke in FEEDS | SERVES:
        return None
    demands = [target.chance for target in shot.targets if target.purpose != "bonus"]
    return min(demands) if demands else shot.chance_in


def _person(here: Situation, letter: str, branches: list[list[Step]], starts: float, more: float) -> PersonLoad:
    share = starts / len(branches)
    own = [step for branch in branches for step in branch if step.hitter == letter]
    hits = [step for step in own if step.shot.stroke not in FEEDS]
    rallying = {step.hitter for branch in branches for step in branch if not step.feed}
    part = more * starts / len(rallying) if letter in rallying else 0.0
    runs = sum(
        length(here.sequence.run_paths.get(run.id, ()))
        for branch in branches
        for step in branch
        for run in step.runs
        if run.by == letter
    )
    return PersonLoad(
        letter=letter,
        hits=share * len(hits) + part,
        serves=share * sum(step.shot.stroke in SERVES for step in own),
        overheads=share * sum(step.shot.stroke in SERVES or step.shot.stroke == "smash" for step in own),
        feeds=share * sum(step.shot.stroke in FEEDS for step in own),
        metres=share * runs + part * here.level.play.metres,
    )


def balls_there_are(here: Situation) -> int | None:
    """Return the balls in all baskets that say how many they hold, else those the drill asks for; None where unsaid."""
    held = [item.balls for item in here.setting.items.values() if isinstance(item, Basket) and item.balls is not None]
    return sum(held) if held else here.drill.balls
