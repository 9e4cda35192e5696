"""When swaps come: the times in a session at which anything changes, each with what changes then."""

from __future__ import annotations

import itertools
from collections.abc import Iterable, Iterator, Sequence
from typing import Final

from designer.drill.rules import Swap
from designer.drill.setting import Setting

Moment = list[tuple[Swap, int]]
"""The swaps that come at one time, sooner ones first, each with how often it has come so far, from 1."""

_WITHIN: Final = ("won", "starts", "score")
"""What happens several times before a game or a round is over."""


def moments(setting: Setting) -> Iterator[Moment]:
    """Yield without end the times at which anything changes, each with the swaps that come then."""
    swaps = sorted(setting.swaps.values(), key=lambda swap: (swap.on[0].what not in _WITHIN, _count(swap), swap.id))
    come: dict[str, int] = {}

    def due(found: Iterable[Swap]) -> Moment:
        moment = []
        for swap in found:
            come[swap.id] = come.get(swap.id, 0) + 1
            moment.append((swap, come[swap.id]))
        return moment

    if not swaps:
        return
    inner = [swap for swap in swaps if swap.on[0].what in _WITHIN]
    outer = [swap for swap in swaps if swap.on[0].what not in _WITHIN]
    starts = _starts_a_game(setting, inner)
    for game in itertools.count(1):
        for start in range(1, starts + 1):
            before = (game - 1) * starts + start
            now = [swap for swap in inner if _comes(swap, before, start, starts)]
            ends = [swap for swap in outer if start == starts and game % _count(swap) == 0]
            if moment := due([*now, *ends] if _all_by_starts(inner) else now):
                yield moment
            if not _all_by_starts(inner) and (moment := due(ends)):
                yield moment


def _count(swap: Swap) -> int:
    event = swap.on[0]
    # A score is reached once a game, whatever it is; so many minutes are taken as one game.
    return 1 if event.what in ("score", "minutes") else event.count or 1


def _all_by_starts(inner: Iterable[Swap]) -> bool:
    return all(swap.on[0].what != "score" for swap in inner)


def _starts_a_game(setting: Setting, inner: Sequence[Swap]) -> int:
    """Return how many starts or rallies there are before the game or round is over."""
    counts = [_count(swap) for swap in inner if swap.on[0].what != "score"]
    if not counts:
        return 1
    finish = setting.finish
    most = max(counts)
    return most if finish is None or finish.starts is None else max(most, finish.starts)


def _comes(swap: Swap, before: int, start: int, starts: int) -> bool:
    if swap.on[0].what == "score":
        return start == starts  # once a game, before it is over
    return before % _count(swap) == 0


def period(setting: Setting) -> int:
    """Return after how many moments the same swaps come again, tables from their first row."""
    rows = [len(swap.table) for swap in setting.swaps.values() if swap.table]
    return max(rows, default=1)
