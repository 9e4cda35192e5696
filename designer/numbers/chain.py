"""Small Markov chains: how a walk from score to score ends, and how many steps it takes; exact for fractions."""

from __future__ import annotations

from collections.abc import Callable, Hashable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction
from typing import Final, TypeVar

from designer.numbers.problems import Impossible

Number = float | Fraction
State = TypeVar("State", bound=Hashable)

Moves = Callable[[State], Sequence[tuple[Number, State]]]
"""From a state to (chance, next state); chances of 0 may be left out, and add to 1."""

MOST_STATES: Final = 60_000
MOST_TOGETHER: Final = 400
"""States that can all come back to one another and so are solved together."""

ENDLESS: Final = "With these chances it never ends: expected a finish that somebody can reach."


@dataclass(frozen=True, slots=True)
class Walk:
    """Where a walk ends, each end with its chance, and the number of steps to expect."""

    ends: Mapping[Hashable, Number]
    steps: Number


def walk(start: State, moves: Moves[State], ended: Callable[[State], Hashable | None]) -> Walk:
    """Return how the walk from ``start`` ends. ``ended`` names the end a state is, None while it goes on.

    Raises ``Impossible`` where it need never end, or where there are more states than can be looked at.
    """
    return walks((start,), moves, ended)[start]


def walks(starts: Sequence[State], moves: Moves[State], ended: Callable[[State], Hashable | None]) -> dict[State, Walk]:
    """Return how the walk ends from each state that is reached from any of ``starts``; see ``walk``."""
    nexts = _reached(starts, moves, ended)
    names = sorted({end for state in nexts if (end := ended(state)) is not None}, key=str)
    size = len(names) + 1
    known: dict[State, list[Number]] = {}
    for state in nexts:
        end = ended(state)
        if end is not None:
            known[state] = [*(int(name == end) for name in names), 0]
    for together in _components(nexts):
        if together[0] in known:
            continue
        known.update(zip(together, _solved(together, nexts, known, size), strict=True))
    return {state: Walk(dict(zip(names, found[:-1], strict=True)), found[-1]) for state, found in known.items()}


def _reached(
    starts: Sequence[State], moves: Moves[State], ended: Callable[[State], Hashable | None]
) -> dict[State, list[tuple[Number, State]]]:
    nexts: dict[State, list[tuple[Number, State]]] = {}
    waiting = list(starts)
    while waiting:
        state = waiting.pop()
        if state in nexts:
            continue
        if len(nexts) >= MOST_STATES:
            raise Impossible(f"There are more than {MOST_STATES} scores to look at; expected a lower goal.")
        nexts[state] = [] if ended(state) is not None else [move for move in moves(state) if move[0] != 0]
        waiting.extend(following for _, following in nexts[state])
    return nexts


def _components(nexts: Mapping[State, list[tuple[Number, State]]]) -> Iterator[list[State]]:
    """Yield the sets of states that can come back to one another, each after all that it leads to (Tarjan)."""
    number: dict[State, int] = {}
    least: dict[State, int] = {}
    open_: dict[State, None] = {}
    for root in nexts:
        if root in number:
            continue
        trail = [(root, iter(nexts[root]))]
        number[root] = least[root] = len(number)
        open_[root] = None
        while trail:
            state, rest = trail[-1]
            following = next((after for _, after in rest if after not in number or after in open_), None)
            if following is not None:
                if following in number:
                    least[state] = min(least[state], number[following])
                else:
                    number[following] = least[following] = len(number)
                    open_[following] = None
                    trail.append((following, iter(nexts[following])))
                continue
            trail.pop()
            if trail:
                least[trail[-1][0]] = min(least[trail[-1][0]], least[state])
            if least[state] == number[state]:
                together: list[State] = []
                while not together or together[-1] != state:
                    together.append(open_.popitem()[0])
                yield together


def _solved(
    together: list[State],
    nexts: Mapping[State, list[tuple[Number, State]]],
    known: Mapping[State, list[Number]],
    size: int,
) -> list[list[Number]]:
    """Return the values of states that lead to one another: one linear equation for each, Gauss with pivots."""
    count = len(together)
    if count > MOST_TOGETHER:
        raise Impossible(f"More than {MOST_TOGETHER} scores come back to one another; expected a lower goal.")
    at = {state: row for row, state in enumerate(together)}
    rows: list[list[Number]] = []
    for state in together:
        row: list[Number] = [0] * (count + size)
        row[at[state]] += 1
        row[-1] += 1
        for chance, following in nexts[state]:
            if following in at:
                row[at[following]] -= chance
            else:
                for column, value in enumerate(known[following]):
                    row[count + column] += chance * value
        rows.append(row)
    return _eliminated(rows, count)


def _eliminated(rows: list[list[Number]], count: int) -> list[list[Number]]:
    for column in range(count):
        sizes = [abs(float(row[column])) for row in rows[column:]]
        pivot = column + sizes.index(max(sizes))
        if sizes[pivot - column] < 1e-13:
            raise Impossible(ENDLESS)
        rows[column], rows[pivot] = rows[pivot], rows[column]
        top = rows[column]
        for row in rows[column + 1 :]:
            if row[column] != 0:
                share = row[column] / top[column]
                for place in range(column, len(row)):
                    if top[place] != 0:
                        row[place] -= share * top[place]
    for column in range(count - 1, -1, -1):
        row = rows[column]
        for place in range(count, len(row)):
            row[place] = (
                row[place] - sum(row[other] * rows[other][place] for other in range(column + 1, count))
            ) / row[column]
    return [row[count:] for row in rows]
