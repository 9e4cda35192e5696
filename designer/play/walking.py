"""One short walk from the basket round everything that is laid out, and back."""

from __future__ import annotations

import math
from collections.abc import Sequence
from typing import Final

from designer.drill.base import Point
from designer.drill.items import Basket
from designer.drill.places import middle
from designer.drill.setting import Setting
from designer.play.layout import points_of, things_placed

SEARCHED: Final = 24
"""Stops up to which a shorter way is looked for: nobody lays out more by a list, and a list is made at every change."""
_FINE: Final = 1e-6
"""Ways that differ by less, in metres, are as long as each other."""


def laying_order(setting: Setting) -> tuple[str, ...]:
    """Return the ids of all things that have a place, in the order in which one short walk first comes to them.

    The walk begins and ends at the basket, without one at the middle of the net; copies at the other end are stops of it.
    A thing with several corners is one stop, at their middle.
    """
    stops = [
        (item.id, middle(points))
        for item, turned in things_placed(setting)
        if (points := points_of(setting, item, turned=turned))
    ]
    baskets = [(id, point) for id, point in stops if isinstance(setting.items.get(id), Basket)]
    start = baskets[0][1] if baskets else (0.0, 0.0)
    order = short_walk(start, [point for _, point in stops])
    return tuple(dict.fromkeys([*(id for id, _ in baskets), *(stops[number][0] for number in order)]))


def short_walk(start: Point, stops: Sequence[Point]) -> tuple[int, ...]:
    """Return an order of ``stops`` that makes a short way from ``start`` through all and back to it.

    Each stop is put where it makes the least detour, then pieces are turned round or moved as long as that shortens the
    way. Of the two directions it is the one that begins with the nearer stop, of two as near with the one named first: a
    mirrored court is walked alike.
    """
    places = [start, *stops]
    apart = [[math.dist(a, b) for b in places] for a in places]
    way = [0]
    for stop in range(1, len(places)):
        way.insert(_slot(apart[stop], apart, way), stop)
    while len(way) <= SEARCHED and _shortened(apart, way):
        pass
    order = way[1:]
    if order and (round(apart[0][order[-1]], 6), order[-1]) < (round(apart[0][order[0]], 6), order[0]):
        order.reverse()
    return tuple(stop - 1 for stop in order)


def _slot(to_stop: list[float], apart: list[list[float]], way: list[int]) -> int:
    """Return where in ``way`` a stop makes the least detour, the first of several such places."""
    best, least = 1, math.inf
    for slot, after in enumerate([*way[1:], way[0]], 1):
        before = way[slot - 1]
        detour = to_stop[before] + to_stop[after] - apart[before][after]
        if detour < least - _FINE:
            best, least = slot, detour
    return best


def _detour(apart: list[list[float]], way: list[int], slot: int, stop: int) -> float:
    before, after = way[slot - 1], way[slot % len(way)]
    return apart[before][stop] + apart[stop][after] - apart[before][after]


def _shortened(apart: list[list[float]], way: list[int]) -> bool:
    """Turn a piece of the way round, or move a stop, where that makes it shorter; return whether it did."""
    size = len(way)
    for first in range(1, size - 1):
        for last in range(first + 1, size):
            before, after = way[first - 1], way[(last + 1) % size]
            old = apart[before][way[first]] + apart[way[last]][after]
            if apart[before][way[last]] + apart[way[first]][after] < old - _FINE:
                way[first : last + 1] = reversed(way[first : last + 1])
                return True
    for place in range(1, size):
        stop = way[place]
        rest = way[:place] + way[place + 1 :]
        saved = _detour(apart, rest, place, stop)
        for slot in range(1, size):
            if _detour(apart, rest, slot, stop) < saved - _FINE:
                rest.insert(slot, stop)
                way[:] = rest
                return True
    return False
