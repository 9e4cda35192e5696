"""The odds of a score: who wins it and how many points it takes, each point won alike and apart from the others.

Every function is exact where it is given fractions. ``point`` is the chance of the first player to win a point.
Sources: Carter & Crews, American Statistician 28 (1974) 130, from memory; Newton & Keller, Stud. Appl. Math. 114 (2005) 241.
"""

from __future__ import annotations

import math
from collections.abc import Hashable, Sequence
from dataclasses import dataclass
from typing import Final

from designer.numbers.chain import ENDLESS, MOST_STATES, Number, walk, walk_for
from designer.numbers.problems import Impossible

MOST: Final = 1000
"""The highest score that a finish may ask for, as in the drill's records."""


@dataclass(frozen=True, slots=True)
class Odds:
    """Chances that the first player wins, that they lose, that it ends level; and the points to expect."""

    win: Number
    lose: Number
    level: Number
    points: Number


@dataclass(frozen=True, slots=True)
class Gain:
    """What one rally may bring: its chance, and what it adds to either score (below nothing takes off)."""

    chance: Number
    first: int = 0
    second: int = 0


def chance(value: Number, what: str) -> Number:
    """Return ``value`` unchanged; raise ``Impossible`` with a sentence where it is no number from 0 to 1."""
    if not math.isfinite(value):
        raise Impossible(f"{what} must be a number from 0 to 1, not {value}.")
    if not 0 <= value <= 1:
        raise Impossible(f"{what} of {float(value):g} cannot be; expected a number from 0 to 1.")
    return value


def _whole(value: int, what: str, least: int = 1, most: int = MOST) -> int:
    if not least <= value <= most:
        raise Impossible(f"{what} of {value} cannot be computed; expected {least} to {most}.")
    return value


def deuce(point: Number, margin: int = 2, lead: int = 0) -> Odds:
    """Return the odds of getting ``margin`` points ahead from a lead of ``lead``: the gambler's ruin, in closed form."""
    chance(point, "The chance of a point")
    _whole(margin, "A margin", most=20)
    other = 1 - point
    steps = 2 * margin
    done = lead + margin
    if point == other:
        return Odds(done * point / margin, 1 - done * point / margin, 0, done * (steps - done))
    if point in (0, 1):
        return Odds(point, other, 0, margin - lead if point == 1 else done)
    if margin == 2 and lead == 0:
        # The usual deuce, written so that nothing cancels near one half.
        ends = point * point + other * other
        return Odds(point * point / ends, other * other / ends, 0, 2 / ends)
    up = sum(point ** (steps - 1 - n) * other**n for n in range(steps))
    win = sum(point ** (steps - 1 - n) * other**n for n in range(done)) / up
    points = _ruin_steps(point, steps, done)
    return Odds(win, 1 - win, 0, points)


def _ruin_steps(point: Number, steps: int, done: int) -> Number:
    """Return the steps to expect from ``done`` on a ladder of ``steps`` rungs, without dividing by ``p - q``."""

    def moves(rung: int) -> list[tuple[Number, int]]:
        return [(point, rung + 1), (1 - point, rung - 1)]

    return walk(done, moves, lambda rung: "end" if rung in (0, steps) else None).steps


def race(to: int, point: Number, *, margin: int = 1, cap: int | None = None, start: tuple[int, int] = (0, 0)) -> Odds:
    """Return the odds of a race to ``to`` points, ``margin`` ahead; at ``cap`` points the lead no longer matters.

    ``start``: what either begins with. Raises ``Impossible`` with a sentence for what cannot be.
    """
    chance(point, "The chance of a point")
    _whole(to, "A goal")
    _whole(margin, "A margin", most=20)
    if cap is not None and cap < to:
        raise Impossible(f"The cap of {cap} is below the goal of {to}; expected {to} or more.")
    if max(start) >= to:
        raise Impossible(f"A start score of {max(start)} is no lower than the goal of {to}.")
    return _race(to, point, margin, cap, start)


def _race(to: int, point: Number, margin: int, cap: int | None, start: tuple[int, int]) -> Odds:
    """Walk forward over all scores; what gets to the end within the margin goes on from there in closed form."""
    other = 1 - point
    highest = to if cap is None or margin == 1 else cap
    win: Number = 0
    lose: Number = 0
    points: Number = 0
    row: dict[int, Number] = {start[1]: 1}
    for first in range(start[0], highest + 1):
        following: dict[int, Number] = {}
        for second in range(start[1], highest + 1):
            share = row.get(second, 0)
            if share == 0:
                continue
            leads = first - second
            capped = cap is not None and max(first, second) >= cap
            if capped or (max(first, second) >= to and abs(leads) >= margin):
                win, lose = (win + share, lose) if leads > 0 else (win, lose + share)
            elif cap is None and max(first, second) >= to:
                rest = deuce(point, margin, leads)
                win, lose, points = win + share * rest.win, lose + share * rest.lose, points + share * rest.points
            else:
                points += share
                row[second + 1] = row.get(second + 1, 0) + share * other
                following[second] = following.get(second, 0) + share * point
        row = following
    return Odds(win, lose, 0, points)


def game(point: Number, *, advantage: bool = True) -> Odds:
    """Return the odds of a game: four points, two clear, or with the deciding point at three all (no-ad)."""
    return race(4, point, margin=2 if advantage else 1)


def _serves_first(number: int) -> bool:
    """Whether the first server serves point ``number``, counted from 0: one, then two and two (Rule 5b)."""
    return (number + 1) // 2 % 2 == 0


def tie_break(
    to: int,
    serve: Number,
    other_serve: Number,
    *,
    margin: int = 2,
    cap: int | None = None,
    start: tuple[int, int] = (0, 0),
) -> Odds:
    """Return the odds of a tie-break with the serve in turn, for the player who serves first.

    ``serve``: that player's chance on their own serve; ``other_serve``: the opponent's on theirs.
    """
    chance(serve, "The chance of a point")
    chance(other_serve, "The chance on the other's serve")
    _whole(to, "A tie-break")
    _whole(margin, "A margin", most=20)
    if max(start) >= to:
        raise Impossible(f"A start score of {max(start)} is no lower than the goal of {to}.")
    if to * to > MOST_STATES:
        raise Impossible(f"A tie-break to {to} cannot be computed; expected 1 to {math.isqrt(MOST_STATES)}.")

    def moves(score: tuple[int, int, int]) -> list[tuple[Number, tuple[int, int, int]]]:
        first, second, number = score
        wins = serve if _serves_first(number) else 1 - other_serve
        return [
            (wins, _folded(first + 1, second, number + 1, to, cap)),
            (1 - wins, _folded(first, second + 1, number + 1, to, cap)),
        ]

    def ended(score: tuple[int, int, int]) -> Hashable | None:
        return _decided(score[0], score[1], to, margin, cap)

    found = walk((*start, 0), moves, ended)
    return Odds(found.ends.get("win", 0), found.ends.get("lose", 0), 0, found.steps)


def _folded(first: int, second: int, number: int, to: int, cap: int | None) -> tuple[int, int, int]:
    """Return a score with what no longer matters left out: once both are at the goal only the lead counts."""
    over = 0 if cap is not None else max(min(first, second) - to, 0)
    return first - over, second - over, number % 4


def _decided(first: int, second: int, to: int, margin: int, cap: int | None) -> Hashable | None:
    if cap is not None and max(first, second) >= cap and first != second:
        return "win" if first > second else "lose"
    if max(first, second) >= to and abs(first - second) >= margin:
        return "win" if first > second else "lose"
    return None


def contest(
    gains: Sequence[Gain],
    to: int,
    *,
    margin: int = 1,
    cap: int | None = None,
    floor: int | None = None,
    start: tuple[int, int] = (0, 0),
    rallies: int | None = None,
) -> Odds:
    """Return the odds of a race in which a rally may bring more than one point, nothing, or take points off.

    ``floor``: no score falls below it. ``rallies``: it stops after so many, and who leads has won. ``points`` of the
    answer are rallies, those that bring nothing included.
    """
    _check_gains(gains)
    _whole(to, "A goal")

    def moves(score: tuple[int, int]) -> list[tuple[Number, tuple[int, int]]]:
        return [(gain.chance, _kept(score[0] + gain.first, score[1] + gain.second, to, cap, floor)) for gain in gains]

    def ended(score: tuple[int, int]) -> Hashable | None:
        first, second = score
        if first == second and first >= to and margin == 1:
            return "level"
        return _decided(first, second, to, margin, cap)

    if rallies is None:
        found = walk(start, moves, ended)
        return Odds(found.ends.get("win", 0), found.ends.get("lose", 0), found.ends.get("level", 0), found.steps)
    scores, expected = walk_for(start, moves, ended, rallies)
    return _leaders(scores, expected)


def _check_gains(gains: Sequence[Gain]) -> None:
    total = float(sum(gain.chance for gain in gains))
    if any(gain.chance < 0 for gain in gains) or abs(total - 1) > 1e-9:
        raise Impossible(f"The chances of what a rally brings add up to {total:g}; expected 1.")
    if all(gain.first == gain.second == 0 for gain in gains if gain.chance):
        raise Impossible(ENDLESS)


def _kept(first: int, second: int, to: int, cap: int | None, floor: int | None) -> tuple[int, int]:
    if floor is not None:
        first, second = max(first, floor), max(second, floor)
    over = 0 if cap is not None or floor is not None else max(min(first, second) - to, 0)
    return first - over, second - over


def _leaders(scores: dict[tuple[int, int], Number], expected: Number) -> Odds:
    win = sum(share for (first, second), share in scores.items() if first > second)
    lose = sum(share for (first, second), share in scores.items() if first < second)
    return Odds(win, lose, 1 - win - lose, expected)


def fixed_starts(gains: Sequence[Gain], rallies: int, *, start: tuple[int, int] = (0, 0)) -> Odds:
    """Return the odds of the higher total after ``rallies``; ``level`` is the chance of equal totals."""
    _check_gains(gains)
    _whole(rallies, "A number of starts")
    lead: dict[int, Number] = {start[0] - start[1]: 1}
    for _ in range(rallies):
        later: dict[int, Number] = {}
        for ahead, share in lead.items():
            for gain in gains:
                after = ahead + gain.first - gain.second
                later[after] = later.get(after, 0) + share * gain.chance
        lead = later
    win = sum(share for ahead, share in lead.items() if ahead > 0)
    level = lead.get(0, 0)
    return Odds(win, 1 - win - level, level, rallies)


def goal_within(gains: Sequence[Gain], to: int, rallies: int) -> Number:
    """Return the chance that the first score reaches ``to`` in at most ``rallies``."""
    scores, _ = walk_for(
        0,
        lambda score: [(gain.chance, min(score + gain.first, to)) for gain in gains],
        lambda score: "there" if score >= to else None,
        rallies,
    )
    return scores.get(to, 0)


def in_a_row(count: int, success: Number) -> Number:
    """Return the tries to expect until ``count`` successes in a row: (1 - pⁿ)/((1 - p) pⁿ), here as a plain sum."""
    chance(success, "The chance of a success")
    _whole(count, "A number in a row")
    if success == 0:
        raise Impossible(ENDLESS)
    return sum(1 / success**n for n in range(1, count + 1))


def in_a_row_within(count: int, success: Number, tries: int) -> Number:
    """Return the chance of ``count`` successes in a row in at most ``tries``."""
    chance(success, "The chance of a success")
    _whole(count, "A number in a row")
    scores, _ = walk_for(
        0,
        lambda run: [(success, run + 1), (1 - success, 0)],
        lambda run: "there" if run >= count else None,
        tries,
    )
    return scores.get(count, 0)


def plus_minus(to: int, success: Number, *, floor: int | None = 0, start: int = 0) -> Number:
    """Return the tries to expect until a score that rises by 1 with each success and falls by 1 with each miss is ``to``.

    Raises ``Impossible`` where there is no floor and it may never get there.
    """
    chance(success, "The chance of a success")
    _whole(to, "A goal")
    if floor is None:
        if success <= 1 - success:
            raise Impossible(ENDLESS)
        return (to - start) / (2 * success - 1)
    lowest = floor
    found = walk(
        start,
        lambda score: [(success, score + 1), (1 - success, max(score - 1, lowest))],
        lambda score: "there" if score >= to else None,
    )
    return found.steps
