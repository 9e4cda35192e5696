"""The odds of a score: who wins it and how many points it takes, each point won alike and apart from the others.

Every function is exact where it is given fractions. ``point`` is the chance of the first player to win a point.
Sources: Carter & Crews, American Statistician 28 (1974) 130, from memory; Newton & Keller, Stud. Appl. Math. 114 (2005) 241.
"""

from __future__ import annotations

import math
from collections.abc import Hashable, Iterator
from dataclasses import dataclass
from functools import lru_cache
from typing import Final, Literal

from designer.numbers.chain import ENDLESS, Number, Walk, walk, walks
from designer.numbers.problems import Impossible

MOST: Final = 1000
"""The highest score that a finish may ask for, as in the drill's records."""

MOST_TRIES: Final = 100_000
_SMALL: Final = 200
"""Points up to which a race is added up without logarithms."""

_MOST_DIGITS: Final = 100
"""Tries of more digits than this are for ever."""


@dataclass(frozen=True, slots=True)
class Odds:
    """Chances that the first player wins, that they lose, that it ends level; and the points to expect."""

    win: Number
    lose: Number
    level: Number
    points: Number


def chance(value: Number, what: str) -> Number:
    """Return ``value`` unchanged; raise ``Impossible`` with a sentence where it is no number from 0 to 1."""
    if not math.isfinite(value):
        raise Impossible(f"{what} must be a number from 0 to 1, not {value}.")
    if not 0 <= value <= 1:
        raise Impossible(f"{what} of {float(value):g} cannot be; expected a number from 0 to 1.")
    return value


def whole(value: int, what: str, least: int = 1, most: int = MOST) -> int:
    """Return ``value`` unchanged; raise ``Impossible`` with a sentence where it is not from ``least`` to ``most``."""
    if not least <= value <= most:
        raise Impossible(f"{what} of {value} cannot be computed; expected {least} to {most}.")
    return value


def deuce(point: Number, margin: int = 2, lead: int = 0) -> Odds:
    """Return the odds of getting ``margin`` points ahead from a lead of ``lead``: the gambler's ruin, in closed form."""
    chance(point, "The chance of a point")
    whole(margin, "A margin", most=20)
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
    whole(to, "A goal")
    whole(margin, "A margin", most=20)
    _check_ends(to, cap, start)
    return _race(to, point, margin, cap, start)


def _check_ends(to: int, cap: int | None, start: tuple[int, int]) -> None:
    if cap is not None and cap < to:
        raise Impossible(f"The cap of {cap} is below the goal of {to}; expected {to} or more.")
    if cap is not None:
        whole(cap, "A cap")
    if max(start) >= to:
        raise Impossible(f"A start score of {max(start)} is no lower than the goal of {to}.")
    if min(start) < 0:
        raise Impossible(f"A start score of {min(start)} cannot be; expected 0 or more.")


def _race(to: int, point: Number, margin: int, cap: int | None, start: tuple[int, int]) -> Odds:
    """Add up the scores at which somebody first gets to the goal; who is not yet far enough ahead goes on from there."""
    other = 1 - point
    win: Number = 0
    lose: Number = 0
    points: Number = 0
    going: dict[tuple[int, int], Number] = {}
    for own, against, up, wins in ((start[0], start[1], point, True), (start[1], start[0], other, False)):
        for behind, share in enumerate(_reaches(to - own, to - against, up), against):
            points += share * (to - own + behind - against)
            if to - behind < margin and cap != to:
                score = (to, behind) if wins else (behind, to)
                going[score] = going.get(score, 0) + share
            elif wins:
                win += share
            else:
                lose += share
    if cap is not None:
        rest = _to_the_cap(going, point, to, margin, cap)
        return Odds(win + rest.win, lose + rest.lose, 0, points + rest.points)
    for (first, second), share in going.items():
        rest = deuce(point, margin, first - second)
        win, lose, points = win + share * rest.win, lose + share * rest.lose, points + share * rest.points
    return Odds(win, lose, 0, points)


def _reaches(needs: int, short_of: int, point: Number) -> Iterator[Number]:
    """Yield the chances to win ``needs`` points while the other wins 0, 1, ... and fewer than ``short_of``."""
    other = 1 - point
    if isinstance(point, float) and 0 < point < 1 and needs + short_of > _SMALL:
        # Logarithms: the powers of a long race are smaller than any float.
        up, down = needs * math.log(point), math.log(other)
        for behind in range(short_of):
            ways = math.lgamma(needs + behind) - math.lgamma(behind + 1) - math.lgamma(needs)
            yield math.exp(ways + up + behind * down)
        return
    share: Number = point**needs
    for behind in range(short_of):
        yield share
        share = share * other * (needs + behind) / (behind + 1)


def _to_the_cap(going: dict[tuple[int, int], Number], point: Number, to: int, margin: int, cap: int) -> Odds:
    """Return how scores go on, each with its chance, of which one is at the goal and nobody far enough ahead."""
    win: Number = 0
    lose: Number = 0
    points: Number = 0
    waiting = dict(going)
    for total in range(to, 2 * cap):
        for score in [score for score in waiting if sum(score) == total]:
            share = waiting.pop(score)
            found = decided(*score, to, margin, cap)
            if found is not None:
                win, lose = (win + share, lose) if found == "win" else (win, lose + share)
                continue
            points += share
            for after, part in (((score[0] + 1, score[1]), point), ((score[0], score[1] + 1), 1 - point)):
                if part:
                    waiting[after] = waiting.get(after, 0) + share * part
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
    whole(to, "A tie-break")
    whole(margin, "A margin", most=20)
    _check_ends(to, cap, start)
    win: Number = 0
    lose: Number = 0
    points: Number = 0
    top = to if cap is None else cap
    leads = _in_turn(serve, other_serve, 1 if cap is not None else margin)
    # Point by point: the chances of what the first player has, from ``least`` on, of all that is still undecided.
    row: list[Number] = [1]
    least, number = start[0], 0
    while row:
        wins = serve if _serves_first(number) else 1 - other_serve
        points += sum(row)
        row = [stays * (1 - wins) + comes * wins for stays, comes in zip([*row, 0], [0, *row], strict=True)]
        number += 1
        for place in _at_the_ends(row, least, sum(start) + number, to):
            share, first = row[place], least + place
            second = sum(start) + number - first
            found = decided(first, second, to, margin, cap)
            if found is None and max(first, second) >= top:
                rest = leads[first - second, number % 4]
                win += share * rest.ends.get("win", 0)
                lose += share * rest.ends.get("lose", 0)
                points += share * rest.steps
            elif found is None:
                continue
            elif found == "win":
                win += share
            else:
                lose += share
            row[place] = 0
        row, least = _trimmed(row, least)
    return Odds(win, lose, 0, points)


def _trimmed(row: list[Number], least: int) -> tuple[list[Number], int]:
    """Return a row of scores without the places at its ends that have no share, and the score that it begins with."""
    held = [place for place, share in enumerate(row) if share]
    return (row[held[0] : held[-1] + 1], least + held[0]) if held else ([], least)


def _at_the_ends(row: list[Number], least: int, total: int, to: int) -> list[int]:
    """Return the places of a row of scores at which either player is at the goal, each that has a share once."""
    low = range(min(max(total - to - least + 1, 0), len(row)))
    high = range(max(to - least, len(low)), len(row))
    return [place for place in (*low, *high) if row[place]]


@lru_cache(maxsize=64)
def _in_turn(serve: Number, other_serve: Number, margin: int) -> dict[tuple[int, int], Walk]:
    """Return how it ends once only the lead counts, by the lead and by how far the round of four serves is."""

    def moves(state: tuple[int, int]) -> list[tuple[Number, tuple[int, int]]]:
        wins = serve if _serves_first(state[1]) else 1 - other_serve
        later = (state[1] + 1) % 4
        return [(wins, (state[0] + 1, later)), (1 - wins, (state[0] - 1, later))]

    def ended(state: tuple[int, int]) -> Hashable | None:
        return None if abs(state[0]) < margin else ("win" if state[0] > 0 else "lose")

    return walks([(lead, turn) for lead in range(1 - margin, margin) for turn in range(4)], moves, ended)


def decided(first: int, second: int, to: int, margin: int, cap: int | None) -> Literal["win", "lose"] | None:
    """Return who has won at a score, None while it goes on."""
    far = max(first, second) >= to and abs(first - second) >= margin
    capped = cap is not None and max(first, second) >= cap and first != second
    return ("win" if first > second else "lose") if far or capped else None


def in_a_row(count: int, success: Number) -> Number:
    """Return the tries to expect until ``count`` successes in a row: (1 - pⁿ)/((1 - p) pⁿ), here as a plain sum."""
    chance(success, "The chance of a success")
    whole(count, "A number in a row")
    if success == 0:
        raise Impossible(ENDLESS)
    if count * -math.log10(success) > _MOST_DIGITS:
        raise Impossible(f"{count} in a row at {float(success):.0%} each never comes; expected a lower number.")
    return sum(1 / success**n for n in range(1, count + 1))


def in_a_row_within(count: int, success: Number, tries: int) -> Number:
    """Return the chance of ``count`` successes in a row in at most ``tries``."""
    chance(success, "The chance of a success")
    whole(count, "A number in a row")
    whole(tries, "A number of tries", least=0, most=MOST_TRIES)
    if tries < count:
        return 0
    row = success**count
    # not_yet[n]: no run in n tries. The first run ends with try n if a miss, and no run before it, went ahead of it.
    not_yet: list[Number] = [*([1] * count), 1 - row]
    for number in range(count + 1, tries + 1):
        not_yet.append(not_yet[-1] - not_yet[number - count - 1] * (1 - success) * row)
    return 1 - not_yet[tries]


def plus_minus(to: int, success: Number, *, floor: int | None = 0, start: int = 0) -> Number:
    """Return the tries to expect until a score that rises by 1 with each success and falls by 1 with each miss is ``to``.

    ``floor``: it falls no lower. Raises ``Impossible`` where there is none and it may never get there.
    """
    chance(success, "The chance of a success")
    whole(to, "A goal")
    if floor is None:
        if success <= 1 - success:
            raise Impossible(ENDLESS)
        return (to - start) / (2 * success - 1)
    if success == 0:
        raise Impossible(ENDLESS)
    # Tries to get one higher: at the floor 1/p, above it one more for each time it falls back.
    up: Number = 1 / success
    found: Number = 0
    for score in range(floor, to):
        if score > floor:
            up = (1 + (1 - success) * up) / success
        if score >= start:
            found += up
    if found > 10**_MOST_DIGITS:
        raise Impossible(ENDLESS)
    return found
