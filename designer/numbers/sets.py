"""The odds of a set and of a match: games with the serve in turn, a tie-break at six all.

Source: Newton & Keller, Stud. Appl. Math. 114 (2005) 241. Exact where it is given fractions.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from designer.numbers.chain import Number
from designer.numbers.scoring import chance, game, tie_break

GAMES: Final = 6
_TIE_BREAK: Final = 7


@dataclass(frozen=True, slots=True)
class SetOdds:
    """The chance that whoever serves first wins a set, and the points and games to expect, a tie-break being one game."""

    win: Number
    points: Number
    games: Number


def tie_break_set(serve: Number, other_serve: Number) -> SetOdds:
    """Return the odds of a set to six, two clear, with a tie-break to 7 at six all, for the player who serves first.

    ``serve``: that player's chance of a point on their own serve; ``other_serve``: the opponent's on theirs.
    """
    own = game(chance(serve, "The chance of a point"))
    others = game(chance(other_serve, "The chance on the other's serve"))
    win: Number = 0
    points: Number = 0
    games: Number = 0
    shares: dict[tuple[int, int], Number] = {(0, 0): 1}
    for played in range(2 * GAMES):
        holds = own.win if played % 2 == 0 else 1 - others.win
        length = own.points if played % 2 == 0 else others.points
        games += sum(shares.values())
        points += length * sum(shares.values())
        after: dict[tuple[int, int], Number] = {}
        for (first, second), share in shares.items():
            for score, part in (((first + 1, second), share * holds), ((first, second + 1), share * (1 - holds))):
                if max(score) >= GAMES and abs(score[0] - score[1]) >= 2:
                    win += part if score[0] > score[1] else 0
                else:
                    after[score] = after.get(score, 0) + part
        shares = after
    level = sum(shares.values())
    if level:
        decider = tie_break(_TIE_BREAK, serve, other_serve)
        win, points, games = win + level * decider.win, points + level * decider.points, games + level
    return SetOdds(win, points, games)


def best_of_three(chance_of_a_set: Number) -> Number:
    """Return the chance to win two sets of three; who serves first in a set does not change it."""
    won = chance(chance_of_a_set, "The chance of a set")
    return won * won * (3 - 2 * won)


def reaches_deuce(point: Number) -> Number:
    """Return the chance that a game comes to deuce, three points all: 20 p³q³."""
    won = chance(point, "The chance of a point")
    return 20 * (won * (1 - won)) ** 3
