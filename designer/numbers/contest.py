"""The odds of scores to which one rally may bring several points, nothing, or take points off.

Exact where it is given fractions, but for races in which points are taken off: those are followed until a part in 10¹² is
still open. What would take long is refused with a sentence, never begun.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction
from functools import cached_property
from typing import Any, Final

from designer.numbers.chain import ENDLESS, Number, walks
from designer.numbers.problems import Impossible
from designer.numbers.scoring import Odds, decided, whole

MOST_STATES: Final = 60_000
"""Scores that are looked at; a race to 240 with bonus points."""

MOST_RALLIES: Final = 5000
MOST_WORK: Final = 3_000_000
"""Scores times rallies that are looked at."""

_DEEP: Final = 1
"""A score that is taken down without a floor is followed to so many times the goal below nothing."""

_DONE: Final = 1e-12
Score = tuple[int, int]
Value = tuple[Number, Number, Number]
"""(chance that the first side wins, that it ends level, rallies to expect)."""


@dataclass(frozen=True, slots=True)
class Gain:
    """What one rally may bring: its chance, and what it adds to either score (below nothing takes off)."""

    chance: Number
    first: int = 0
    second: int = 0


@dataclass(frozen=True)
class Contest:
    """A race in which a rally may bring more than one point; ``odds`` gives its odds from any start score.

    ``margin``: points ahead to win. ``cap``: the score at which the lead no longer matters. ``floor``: who is down to it
    has lost. ``rallies``: it stops after so many, and who leads has won. Raises ``Impossible`` with a sentence for what
    cannot be or would take long.
    """

    gains: tuple[Gain, ...]
    to: int
    margin: int = 1
    cap: int | None = None
    floor: int | None = None
    rallies: int | None = None

    def __post_init__(self) -> None:
        _check_gains(self.gains)
        whole(self.to, "A goal")
        if self.cap is not None and self.cap < self.to:
            raise Impossible(f"The cap of {self.cap} is below the goal of {self.to}; expected {self.to} or more.")
        if self.floor is not None and self.floor >= 0:
            raise Impossible(f"A score of {self.floor} loses, and everybody starts there; expected one below 0.")
        if self.rallies is not None:
            whole(self.rallies, "A number of rallies", most=MOST_RALLIES)

    def odds(self, start: Score = (0, 0)) -> Odds:
        """Return the odds from a start score; ``points`` are rallies, those that bring nothing included."""
        if max(start) >= self.to or min(start) < 0:
            raise Impossible(f"A start score of {max(start)} is no lower than the goal of {self.to}.")
        win, level, steps = self._values(start)
        return Odds(win, 1 - win - level, level, steps)

    def _values(self, start: Score) -> Value:
        if self.rallies is None and self._only_up:
            return self._upward[start]
        return self._followed.value(start)

    @property
    def _only_up(self) -> bool:
        return all(gain.first >= 0 and gain.second >= 0 for gain in self.gains)

    def ended(self, first: int, second: int) -> Value | None:
        """Return what a score that decides is worth, None where it goes on."""
        if self.floor is not None and min(first, second) <= self.floor:
            return (int(second <= self.floor < first), int(max(first, second) <= self.floor), 0)
        if first == second and first >= self.to and self.margin == 1:
            return (0, 1, 0)
        found = decided(first, second, self.to, self.margin, self.cap)
        return None if found is None else (int(found == "win"), 0, 0)

    # only up: from the highest scores down, each worth what the rallies from it lead to

    @cached_property
    def _upward(self) -> dict[Score, Value]:
        top = self.to if self.cap is None else self.cap
        if self.to**2 + 2 * self.margin * (top - self.to) > MOST_STATES:
            raise Impossible(f"A race to {self.to} with such points has too many scores; expected a lower goal.")
        leads = self._leads(self.margin if self.cap is None else 1)
        known: dict[Score, Value] = {}

        def worth(first: int, second: int) -> Value:
            found = known.get((first, second))
            if found is None:
                found = self.ended(first, second) or leads[first - second]
                known[first, second] = found
            return found

        moves = [gain for gain in self.gains if gain.chance and (gain.first or gain.second)]
        stays = 1 - sum(gain.chance for gain in moves)
        for first in range(top - 1, -1, -1):
            for second in self._still_open(first, top):
                win: Number = 0
                level: Number = 0
                steps: Number = 1
                for gain in moves:
                    after = worth(first + gain.first, second + gain.second)
                    win += gain.chance * after[0]
                    level += gain.chance * after[1]
                    steps += gain.chance * after[2]
                goes = 1 - stays
                known[first, second] = (win / goes, level / goes, steps / goes)
        return known

    def _still_open(self, first: int, top: int) -> Iterator[int]:
        """Yield, from the highest, the second scores below ``top`` at which it still goes on."""
        if first < self.to:
            yield from range(min(top, max(self.to, first + self.margin)) - 1, -1, -1)
        else:
            yield from range(min(top, first + self.margin) - 1, max(first - self.margin, -1), -1)

    def _leads(self, margin: int) -> dict[int, Value]:
        """Return what each lead is worth once only the lead counts."""

        def moves(lead: int) -> list[tuple[Number, int]]:
            return [(gain.chance, lead + gain.first - gain.second) for gain in self.gains]

        def ended(lead: int) -> str | None:
            return None if abs(lead) < margin else ("win" if lead > 0 else "lose")

        found = walks(range(1 - margin, margin), moves, ended)
        return {lead: (walked.ends.get("win", 0), 0, walked.steps) for lead, walked in found.items()}

    # against the clock, or with points taken off: rally after rally

    @cached_property
    def _followed(self) -> _Followed:
        return _Followed.of(self)


def contest(gains: Sequence[Gain], to: int, *, start: Score = (0, 0), **options: int | None) -> Odds:
    """Return the odds of one contest from ``start``; the options are those of ``Contest``."""
    return Contest(tuple(gains), to, **options).odds(start)  # type: ignore[arg-type]


def _check_gains(gains: Sequence[Gain]) -> None:
    total = float(sum(gain.chance for gain in gains))
    if any(gain.chance < 0 for gain in gains) or abs(total - 1) > 1e-9:
        raise Impossible(f"The chances of what a rally brings add up to {total:g}; expected 1.")
    if all(gain.first == gain.second == 0 for gain in gains if gain.chance):
        raise Impossible(ENDLESS)


@dataclass(frozen=True)
class _Followed:
    """The worth of every score on a square from ``low`` up, after so many rallies: an array of shape (3, size²)."""

    low: int
    size: int
    worth: Any

    def value(self, start: Score) -> Value:
        place = (start[0] - self.low) * self.size + start[1] - self.low
        win, level, steps = self.worth[:, place].tolist()
        return (win, level, steps)

    @staticmethod
    def of(asked: Contest) -> _Followed:
        import numpy as np

        gains = [gain for gain in asked.gains if gain.chance]
        most = max(max(abs(gain.first), abs(gain.second)) for gain in gains)
        base = asked.to if asked.cap is None else asked.cap
        low, top = _lowest(asked, gains, most), base + 2 * (asked.margin + most)
        size = top - low + 1
        if size**2 * (asked.rallies or 2 * asked.to) > MOST_WORK:
            raise Impossible(f"A race to {asked.to} with such points takes too long to follow; expected a lower goal.")
        scores = [(first, second) for first in range(low, top + 1) for second in range(low, top + 1)]
        ends = [asked.ended(*score) for score in scores]
        going = np.array([end is None for end in ends])
        exact = any(isinstance(gain.chance, Fraction) for gain in gains) and asked.rallies is not None
        worth = np.array([end or _leader(asked, *score) for end, score in zip(ends, scores, strict=True)], object).T
        worth = worth if exact else worth.astype(float)
        firsts, seconds = (np.array(side) for side in zip(*scores, strict=True))
        places = []
        for gain in gains:
            first, second = firsts[going] + gain.first, seconds[going] + gain.second
            # Far above the goal only the lead counts; below what is followed nothing falls.
            over = np.maximum(np.minimum(first, second) - base - asked.margin - most, 0)
            first, second = (np.clip(side - over, low, top) - low for side in (first, second))
            places.append((gain.chance if exact else float(gain.chance), first * size + second))
        return _Followed(low, size, _rally_after_rally(asked, worth, going, places, exact=exact))


def _lowest(asked: Contest, gains: Sequence[Gain], most: int) -> int:
    if all(gain.first >= 0 and gain.second >= 0 for gain in gains):
        return 0
    if asked.floor is not None:
        return asked.floor - most
    for side in ("first", "second"):
        if sum(float(gain.chance) * getattr(gain, side) for gain in gains) > 0:
            return -_DEEP * asked.to - most
    if asked.rallies is None:
        raise Impossible(ENDLESS)
    return -min(asked.rallies * most, _DEEP * asked.to + most)


def _leader(asked: Contest, first: int, second: int) -> Value:
    """Return what a score is worth at which it stops without being decided."""
    return (0, 0, 0) if asked.rallies is None else (int(first > second), int(first == second), 0)


def _rally_after_rally(
    asked: Contest, worth: Any, going: Any, places: Sequence[tuple[Number, Any]], *, exact: bool
) -> Any:
    import numpy as np

    open_ = going.astype(object if exact else float)
    most = asked.rallies if asked.rallies is not None else MOST_WORK // max(len(going), 1)
    for _ in range(most):
        after, still = worth.copy(), open_.copy()
        after[:, going] = sum(chance * worth[:, place] for chance, place in places)
        after[2, going] += 1
        still[going] = sum(chance * open_[place] for chance, place in places)
        worth, open_ = after, still
        if asked.rallies is None and float(np.max(open_)) < _DONE:
            return worth
    if asked.rallies is None:
        raise Impossible(ENDLESS)
    return worth


def fixed_starts(gains: Sequence[Gain], rallies: int, *, start: Score = (0, 0)) -> Odds:
    """Return the odds of the higher total after ``rallies``; ``level`` is the chance of equal totals."""
    _check_gains(gains)
    whole(rallies, "A number of starts", most=MOST_RALLIES)
    least = min(gain.first - gain.second for gain in gains)
    one: list[Number] = [0] * (max(gain.first - gain.second for gain in gains) - least + 1)
    for gain in gains:
        one[gain.first - gain.second - least] += gain.chance
    lead = _power(one, rallies)
    # The first entry is a lead of ``rallies`` times the least, on top of the start.
    even = -(rallies * least + start[0] - start[1])
    level: Number = lead[even] if 0 <= even < len(lead) else 0
    win: Number = sum(lead[max(even + 1, 0) :])
    return Odds(win, 1 - win - level, level, rallies)


def goal_within(gains: Sequence[Gain], to: int, rallies: int) -> Number:
    """Return the chance that the first score reaches ``to`` in at most ``rallies``."""
    whole(rallies, "A number of starts", most=20_000)
    if any(gain.first < 0 for gain in gains):
        alone = tuple(Gain(gain.chance, gain.first) for gain in gains)
        return Contest(alone, to, rallies=rallies).odds().win if rallies <= MOST_RALLIES else 1
    one: list[Number] = [0] * (max(gain.first for gain in gains) + 1)
    for gain in gains:
        one[gain.first] += gain.chance
    short = _power(one, rallies, keep=to)
    return max(1 - sum(short), 0)


def _power(one: Sequence[Number], times: int, *, keep: int | None = None) -> list[Number]:
    """Return the chances of the sum of ``times`` draws from ``one``, by squaring; the first ``keep`` of them."""
    import numpy as np

    exact = any(isinstance(chance, Fraction) for chance in one)
    square = np.array(one, object if exact else float)[:keep]
    found = np.array([1], object if exact else float)
    while times:
        if times & 1:
            found = np.convolve(found, square)[:keep]
        times >>= 1
        if times:
            square = np.convolve(square, square)[:keep]
    return list(found) if exact else [float(chance) for chance in found]
