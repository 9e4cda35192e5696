"""The odds and the length of a setting's own finish, from what one rally brings."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache
from typing import Final, Literal

from designer.drill.rules import Finish
from designer.numbers.chain import Number
from designer.numbers.contest import MOST_RALLIES, Contest, Gain, fixed_starts, goal_within
from designer.numbers.problems import Impossible
from designer.numbers.scoring import MOST_TRIES, Odds, in_a_row, in_a_row_within, race, tie_break

_LONGER_THAN_A_LESSON: Final = 100_000.0

Unit = Literal["rallies", "hits", "starts"]


@dataclass(frozen=True, slots=True)
class FinishOdds:
    """What a finish comes to. ``odds``: for one against another, None where all play together.

    ``reached``: the chance that a goal is reached in the starts or minutes there are, None where there is no end to them.
    ``expected``: how many of ``unit`` it takes. ``minutes``: how long that is.
    """

    odds: Odds | None
    reached: float | None
    expected: float
    unit: Unit
    minutes: float


@dataclass(frozen=True, slots=True)
class Pace:
    """How quickly it goes: seconds from start to start, seconds from hit to hit, hits in a start."""

    start: float
    hit: float
    hits: float


def finish_odds(
    finish: Finish,
    gains: Sequence[Gain],
    success: float,
    pace: Pace,
    *,
    start: tuple[int, int] = (0, 0),
    serve: tuple[Number, Number] | None = None,
    people: int = 1,
) -> FinishOdds:
    """Return the odds of ``finish``.

    ``gains``: what one rally may bring either side. ``success``: the chance that a hit, or with fixed starts a start,
    counts for those who play together. ``serve``: the chance of a point on the own serve, for either, in a tie-break.
    ``people``: how many take turns where the starts are for each. Raises ``Impossible`` with a sentence where the finish does not say how far it goes, or never ends.
    """
    if finish.running:
        return _in_a_row(finish, success, pace)
    if finish.kind == "goal" or finish.scores == "all together":
        return _together(finish, gains, success, pace, people)
    if finish.kind == "total":
        return _total(finish, gains, pace, start)
    won = _share(gains)
    if finish.kind == "game":
        return _played(race(4, won, margin=1 if finish.margin == 1 else 2, start=start), gains, pace)
    if finish.kind == "tie-break":
        if _is_single(gains):
            own, other = serve or (won, 1 - won)
            return _played(tie_break(_goal(finish), own, other, margin=max(finish.margin, 2), start=start), gains, pace)
        return _race(finish, gains, pace, start, margin=max(finish.margin, 2))
    return _race(finish, gains, pace, start, margin=finish.margin)


def _is_single(gains: Sequence[Gain]) -> bool:
    """Whether a rally brings one point at most, and takes none off."""
    return all(gain.first >= 0 and gain.second >= 0 and gain.first + gain.second <= 1 for gain in gains)


def _share(gains: Sequence[Gain]) -> Number:
    """Return the first side's share of the rallies that bring anything."""
    won = sum(gain.chance for gain in gains if gain.first > gain.second)
    lost = sum(gain.chance for gain in gains if gain.first < gain.second)
    if won + lost == 0:
        raise Impossible("No rally brings a point, so it never ends; expected points for something that happens.")
    return won / (won + lost)


def _goal(finish: Finish) -> int:
    if not isinstance(finish.to, int):
        raise Impossible(f"The {finish.kind} does not say how far it goes; expected a score to reach.")
    return finish.to


def _played(odds: Odds, gains: Sequence[Gain], pace: Pace) -> FinishOdds:
    """Return odds in points as rallies: those that bring nothing only take time."""
    counting = sum(gain.chance for gain in gains if gain.first or gain.second)
    rallies = float(odds.points / counting)
    return FinishOdds(odds, None, rallies, "rallies", rallies * pace.start / 60)


def _race(finish: Finish, gains: Sequence[Gain], pace: Pace, start: tuple[int, int], *, margin: int) -> FinishOdds:
    if _is_single(gains) and finish.minutes is None and finish.floor is None:
        found = _played(race(_goal(finish), _share(gains), margin=margin, cap=finish.cap, start=start), gains, pace)
    else:
        in_time = None if finish.minutes is None else rallies_in(finish.minutes, pace)
        asked = _contest(tuple(gains), _goal(finish), margin, finish.cap, finish.floor, in_time)
        odds = asked.odds(start)
        found = FinishOdds(odds, None, float(odds.points), "rallies", float(odds.points) * pace.start / 60)
    return FinishOdds(found.odds, None, found.expected * finish.rounds, "rallies", found.minutes * finish.rounds)


@lru_cache(maxsize=16)
def _contest(
    gains: tuple[Gain, ...], to: int, margin: int, cap: int | None, floor: int | None, rallies: int | None
) -> Contest:
    """Return a contest, kept with all that is worked out for it: one is asked about from many start scores."""
    return Contest(gains, to, margin, cap, floor, rallies)


def rallies_in(minutes: float, pace: Pace) -> int:
    """Return how many rallies fit in so many minutes, one at least.

    Raises ``Impossible`` with a sentence where they are too many to follow.
    """
    found = max(1, round(minutes * 60 / pace.start))
    if found > MOST_RALLIES:
        raise Impossible(
            f"In {minutes:g} minutes there are {found} rallies, too many to follow; expected fewer minutes."
        )
    return found


def _total(finish: Finish, gains: Sequence[Gain], pace: Pace, start: tuple[int, int]) -> FinishOdds:
    rallies = finish.starts
    if rallies is None and finish.minutes is not None:
        rallies = rallies_in(finish.minutes, pace)
    if rallies is None:
        raise Impossible("The total does not say how many starts it counts; expected starts or minutes.")
    odds = fixed_starts(gains, rallies, start=start)
    expected = float(rallies)
    if finish.level in ("one more each", "next point") and odds.level:
        more = _share(gains)
        decided = sum(gain.chance for gain in gains if gain.first != gain.second)
        odds = Odds(odds.win + odds.level * more, odds.lose + odds.level * (1 - more), 0, odds.points)
        expected += float(1 / decided) if decided else 0.0
    return FinishOdds(odds, None, expected * finish.rounds, "rallies", expected * finish.rounds * pace.start / 60)


def _in_a_row(finish: Finish, success: float, pace: Pace) -> FinishOdds:
    hits = in_a_row(_goal(finish), success)
    if hits > _LONGER_THAN_A_LESSON:
        raise Impossible(
            f"{_goal(finish)} in a row take more than {_LONGER_THAN_A_LESSON:.0f} hits at {success:.0%} each;"
            " expected a lower number or a larger target."
        )
    # Each miss starts a new rally.
    misses = float(hits) * (1 - success)
    minutes = (float(hits) * pace.hit + misses * _gap(pace)) / 60
    reached = None
    if finish.minutes is not None:
        tries = min(round(float(hits) * finish.minutes / minutes), MOST_TRIES)
        reached = float(in_a_row_within(_goal(finish), success, tries))
    return FinishOdds(None, reached, float(hits), "hits", minutes)


def _gap(pace: Pace) -> float:
    return max(0.0, pace.start - pace.hits * pace.hit)


def _together(finish: Finish, gains: Sequence[Gain], success: float, pace: Pace, people: int) -> FinishOdds:
    to = _goal(finish)
    own = [Gain(gain.chance, gain.first + gain.second) for gain in gains]
    if finish.starts is not None:
        starts = finish.starts * (people if finish.each else 1)
        mean = float(sum(gain.chance * gain.first for gain in own))
        reached = float(goal_within(own, to, starts))
        return FinishOdds(None, reached, to / mean if mean > 0 else math.inf, "starts", starts * pace.start / 60)
    if finish.minutes is not None:
        rate = pace.hits * 60 / pace.start
        hits = min(round(finish.minutes * rate), 20_000)
        reached = float(goal_within([Gain(success, 1), Gain(1 - success)], to, hits)) if hits else 0.0
        return FinishOdds(None, reached, to / success if success else math.inf, "hits", float(finish.minutes))
    if success <= 0:
        raise Impossible("The goal is never reached at this level; expected a larger target or a lower goal.")
    hits_needed = to / success
    return FinishOdds(None, None, hits_needed, "hits", hits_needed * pace.start / max(pace.hits, 1e-9) / 60)
