"""Who a setting favours: its drawn part played out many times, its finish worked out from that and played as whole games.

Seeded, so the same drill gives the same figures. A first figure comes after few rallies and is refined; whoever asks can
follow it and stop it.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from typing import Any, Final

from designer.drill.rules import Finish
from designer.numbers.contest import MOST_RALLIES, Gain
from designer.numbers.finishes import FinishOdds, Pace, finish_odds, rallies_in
from designer.numbers.load import load, success_of_a_hit
from designer.numbers.payoffs import (
    BONUS,
    EQUAL,
    Rally,
    Side,
    Sides,
    gains,
    jobs_change,
    shared,
    sides,
    start_scores,
    starts_in_turn,
)
from designer.numbers.problems import Impossible
from designer.numbers.rallies import Rallies, play_rallies
from designer.numbers.shots import SettingNumbers, numbers_of
from designer.numbers.situation import Situation

RALLIES: Final = 4000
GAMES: Final = 10_000
_FIRST_FIGURE: Final = 200
_BATCH: Final = 750
_SURE: Final = 1.96
"""Standard deviations either side of a share for 19 chances in 20."""

MOST_TO_START: Final = 30
"""No side is given more points than this to start with."""

EVEN: Final = 0.02
"""A setting is called even where the chance to win is nearer than this to one half."""


@dataclass(frozen=True, slots=True)
class Games:
    """Whole games that were played out: the share the first side wins, the share that ends level, rallies in the mean."""

    count: int
    first: float
    level: float
    rallies: float


@dataclass(frozen=True, slots=True)
class Fairness:
    """How even a setting is. ``open_point`` and ``bonus`` are the inputs it rests on, to be shown and changed.

    ``win``: the first side's chance, worked out from the simulated rallies; ``least`` and ``most``: where it lies with 19
    chances in 20, as the rallies are so many and no more. ``even_start``: the start score (first, second) that comes
    nearest to even, None where a start score means nothing. ``evens_out``: people change jobs before the score is settled,
    so that what favours a job favours nobody in the end. ``in_turn``: both start rallies, though one start is drawn.
    ``favoured``: None where it is even.
    """

    sides: Sides
    rallies: Rallies
    gains: tuple[Gain, ...]
    finish: FinishOdds
    win: float
    least: float
    most: float
    games: Games | None
    even_start: tuple[int, int] | None
    evens_out: bool
    in_turn: bool
    open_point: float
    bonus: float
    seed: int

    @property
    def favoured(self) -> Side | None:
        """Which side the setting favours."""
        if abs(self.win - 0.5) < EVEN or self.least <= 0.5 <= self.most:
            return None
        return "first" if self.win > 0.5 else "second"


Progress = Callable[[Fairness, float], None]


def fairness(
    here: Situation,
    *,
    open_point: float = EQUAL,
    bonus: float = BONUS,
    seed: int = 1,
    rallies: int = RALLIES,
    games: int = GAMES,
    progress: Progress | None = None,
    cancelled: Callable[[], bool] | None = None,
) -> Fairness:
    """Return who the setting favours and by how much.

    ``games``: whole games to play out, 0 for none. ``progress`` is called with each figure so far and the share of the work done; ``cancelled`` is asked between batches,
    and the last figure is returned where it answers yes. Raises ``Impossible`` with a sentence where nobody plays against
    anybody, nothing is drawn, or the finish does not say how far it goes.
    """
    both = sides(here)
    finish = here.setting.finish
    if not both.second or finish is None or finish.scores == "all together" or finish.running or finish.kind == "goal":
        raise Impossible("Nobody plays against anybody here, so nobody is favoured.")
    numbers = numbers_of(here)
    asked = _Asked(here, numbers, both, finish, start_scores(here, both), open_point, bonus, seed)
    # Nobody looks at figures on the way: all at once is quicker.
    at_first = min(_FIRST_FIGURE, rallies) if progress is not None or cancelled is not None else rallies
    played = play_rallies(here, at_first, seed, open_point=open_point)
    found = asked.figure(played)
    batch = 1
    while played.count < rallies:
        if progress is not None:
            progress(found, played.count / rallies)
        if cancelled is not None and cancelled():
            return found
        more = play_rallies(here, min(_BATCH, rallies - played.count), seed + 7919 * batch, open_point=open_point)
        played = played.plus(more)
        found = asked.figure(played)
        batch += 1
    if games:
        found = replace(
            found, games=play_games(finish, found.gains, asked.pace(played), games, seed, start=asked.start)
        )
    if progress is not None:
        progress(found, 1.0)
    return found


@dataclass(frozen=True, slots=True)
class _Asked:
    here: Situation
    numbers: SettingNumbers
    both: Sides
    finish: Finish
    start: tuple[int, int]
    open_point: float
    bonus: float
    seed: int

    def pace(self, played: Rallies) -> Pace:
        """Return how quickly it goes, from the seconds that the rallies took and what is played after they open."""
        play = self.here.level.play
        drawn = played.seconds / played.count
        after = played.opened / played.count * play.hits * play.between_hits
        worked = load(self.here, self.numbers)
        hits = worked.hits if worked is not None else play.hits
        return Pace(drawn + after + play.between_rallies, play.between_hits, hits)

    def win(
        self, rally: Rally, pace: Pace, start: tuple[int, int] | None = None
    ) -> tuple[FinishOdds, tuple[Gain, ...], float]:
        serve = None
        if starts_in_turn(self.here, self.both):
            share = rally.first / max(rally.first + rally.second, 1e-12)
            # Whoever starts has the drawn starter's chance: the tie-break's serve in turn, an even share elsewhere.
            starter = share if self.both.of(self.here.sequence.steps[0].hitter) == "first" else 1 - share
            serve, rally = (starter, starter), shared(rally)
        own = gains(self.here, self.numbers, rally, bonus=self.bonus)
        odds = finish_odds(
            self.finish, own, success_of_a_hit(self.numbers), pace, start=start or self.start, serve=serve
        )
        assert odds.odds is not None
        return odds, own, float(odds.odds.win + odds.odds.level / 2)

    def figure(self, played: Rallies) -> Fairness:
        """Return the figure that so many rallies give."""
        pace = self.pace(played)
        odds, own, win = self.win(played.rally, pace)
        least, most = (self.win(_shifted(played, sign * _SURE), pace)[2] for sign in (-1, 1))
        return Fairness(
            sides=self.both,
            rallies=played,
            gains=own,
            finish=odds,
            win=win,
            least=min(least, win),
            most=max(most, win),
            games=None,
            even_start=self.even_start(played.rally, pace, win),
            evens_out=jobs_change(self.here, self.both),
            in_turn=starts_in_turn(self.here, self.both),
            open_point=self.open_point,
            bonus=self.bonus,
            seed=self.seed,
        )

    def even_start(self, rally: Rally, pace: Pace, win: float) -> tuple[int, int] | None:
        """Return the start score for the weaker side that brings it nearest to even: the more points, the more it wins."""
        if self.finish.kind not in ("race", "total", "tie-break"):
            return None
        weaker = 1 if win > 0.5 else 0
        highest = self.finish.to if isinstance(self.finish.to, int) else (self.finish.starts or 10)

        def start(points: int) -> tuple[int, int]:
            first, second = self.start
            return (first, second + points) if weaker else (first + points, second)

        def ahead(points: int) -> float:
            """How far the stronger side is still ahead of even."""
            now = win if points == 0 else self.win(rally, pace, start(points))[2]
            return now - 0.5 if weaker else 0.5 - now

        low, high = 0, min(highest - 1 - self.start[weaker], MOST_TO_START)
        while high - low > 1:
            middle = (low + high) // 2
            low, high = (middle, high) if ahead(middle) > 0 else (low, middle)
        return start(min((low, max(high, low)), key=lambda points: abs(ahead(points))))


def _shifted(played: Rallies, deviations: float) -> Rally:
    """Return the chances of a rally with the first side's share off by so many standard deviations."""
    rally = played.rally
    won = rally.first + rally.second
    if won <= 0:
        return rally
    share = rally.first / won
    off = deviations * math.sqrt(share * (1 - share) / (won * played.count))
    share = min(max(share + off, 0.0), 1.0)
    return Rally(won * share, won * (1 - share), rally.nothing)


def play_games(
    finish: Finish, own: Sequence[Gain], pace: Pace, count: int, seed: int, *, start: tuple[int, int] = (0, 0)
) -> Games:
    """Return ``count`` whole games from a start score, their rallies drawn from what one rally brings."""
    import numpy as np

    chance = np.random.default_rng(seed)
    edges = np.cumsum([float(gain.chance) for gain in own])
    first = np.array([gain.first for gain in own])
    second = np.array([gain.second for gain in own])
    if finish.kind == "total":
        times = _most_rallies(finish, pace)
        drawn = chance.multinomial(times, np.diff(edges, prepend=0.0) / edges[-1], size=count)
        a, b = start[0] + drawn @ first, start[1] + drawn @ second
        return Games(count, float((a > b).mean()), float((a == b).mean()), float(times))
    a, b, length = np.full(count, start[0]), np.full(count, start[1]), np.zeros(count, int)
    going = np.arange(count)
    for _ in range(_most_rallies(finish, pace)):
        drawn = np.minimum(np.searchsorted(edges, chance.random(len(going)) * edges[-1], side="right"), len(own) - 1)
        a[going] += first[drawn]
        b[going] += second[drawn]
        length[going] += 1
        going = going[~_over(finish, a[going], b[going])]
        if len(going) == 0:
            break
    if finish.floor is not None:
        # Who is down to it has lost, whatever the other has.
        a, b = (np.where(side <= finish.floor, finish.floor, side) for side in (a, b))
    return Games(count, float((a > b).mean()), float((a == b).mean()), float(length.mean()))


def _most_rallies(finish: Finish, pace: Pace) -> int:
    if finish.kind == "total" and finish.starts is not None:
        return finish.starts
    return MOST_RALLIES if finish.minutes is None else rallies_in(finish.minutes, pace)


def _over(finish: Finish, a: Any, b: Any) -> Any:
    """Return which games are decided, for arrays of scores."""
    import numpy as np

    to = 4 if finish.kind == "game" else (finish.to if isinstance(finish.to, int) else MOST_RALLIES)
    margin = finish.margin if finish.kind == "race" else 2
    if finish.kind == "game" and finish.margin == 1:
        margin = 1
    most, lead = np.maximum(a, b), np.abs(a - b)
    over = (most >= to) & (lead >= margin)
    if finish.cap is not None:
        over |= (most >= finish.cap) & (lead > 0)
    if finish.floor is not None:
        over |= np.minimum(a, b) <= finish.floor
    return over
