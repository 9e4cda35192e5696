"""Cross references: which drills of a book are worth a look from another one."""

from __future__ import annotations

from collections import Counter, defaultdict
from collections.abc import Mapping, Sequence
from typing import Final

from designer.cards.book.leaf import Leaf

MOST: Final = 3
WEIGHTS: Final = {"situation": 3, "stroke": 2, "level": 1, "stage": 1, "phase": 1, "work": 1}
"""How much a shared tag of each group counts; a designer's choice, no source."""

LEAST: Final = 4
"""Drills that share less than this are not alike: one situation alone is not enough."""

_FAMILIAR: Final = 60
"""A tag that more drills than this share says nothing; only the nearest of them are compared."""


def alike(leaves: Sequence[Leaf]) -> dict[str, tuple[str, ...]]:
    """Return {number: numbers of the drills to look at as well}: those the entry names, then those most alike.

    Drills are alike that share tags of ``WEIGHTS``; of equally alike ones the nearest in the book come first. Numbers
    without a printed drill are left out.
    """
    printed = [leaf for leaf in leaves if leaf.summary]
    place = {leaf.entry.number: number for number, leaf in enumerate(printed)}
    by_tag: dict[str, list[int]] = defaultdict(list)
    for number, leaf in enumerate(printed):
        for tag in _tags(leaf):
            by_tag[tag].append(number)
    return {leaf.entry.number: _of(leaf, number, printed, by_tag, place) for number, leaf in enumerate(printed)}


def _of(
    leaf: Leaf, here: int, printed: Sequence[Leaf], by_tag: Mapping[str, list[int]], place: Mapping[str, int]
) -> tuple[str, ...]:
    shared: Counter[int] = Counter()
    for tag in _tags(leaf):
        others = by_tag[tag]
        if len(others) > _FAMILIAR:
            middle = others.index(here)
            others = others[max(0, middle - _FAMILIAR // 2) : middle + _FAMILIAR // 2]
        for other in others:
            shared[other] += WEIGHTS[tag.partition(":")[0]]
    del shared[here]
    ranked = sorted(shared, key=lambda other: (-shared[other], abs(other - here), other))
    found = [printed[other].entry.number for other in ranked if shared[other] >= LEAST]
    named = [number for number in leaf.entry.see if number in place and number != leaf.entry.number]
    return tuple(dict.fromkeys((*named, *found[: max(0, MOST - len(named))])))


def _tags(leaf: Leaf) -> list[str]:
    tags = leaf.summary.tags if leaf.summary else ()
    return [tag for tag in tags if tag.partition(":")[0] in WEIGHTS]
