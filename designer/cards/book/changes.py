"""What has changed since the edition before: what is new, what is another drill now, what has moved, what is gone."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from typing import Final

from designer.cards.book.leaf import Leaf
from designer.cards.text import right_to_left
from designer.drill.handbook import Remembered


def changes(leaves: Sequence[Leaf], before: Mapping[str, Remembered], edition: int) -> Iterator[str]:
    """Yield a sentence for each drill that differs from the edition before, whose {number: drill} is ``before``."""
    if not before:
        yield "This is the first edition that is recorded." if edition == 1 else "The edition before is not recorded."
        return
    now = {leaf.entry.number: leaf for leaf in leaves if leaf.summary}
    left_out = {leaf.entry.number for leaf in leaves} - now.keys()
    said = [words for leaf in now.values() if (words := _said(leaf, before, _before(leaf, before, now)))]
    said += [
        " ".join(filter(None, (f"{'Left out' if number in left_out else 'Gone'}: {number}", _title(one)))) + "."
        for number, one in gone(leaves, before).items()
    ]
    yield from sorted(said, key=lambda words: _ORDER.index(words.partition(":")[0]))
    if not said:
        yield "No drill has changed since the edition before."


def gone(leaves: Sequence[Leaf], before: Mapping[str, Remembered]) -> dict[str, Remembered]:
    """Return the drills of the edition before that this one has under no number, gone or left out."""
    now = {leaf.entry.number: leaf for leaf in leaves if leaf.summary}
    came_from = {_before(leaf, before, now) for leaf in now.values()}
    return {number: one for number, one in before.items() if number not in came_from}


def _title(one: Remembered) -> str:
    return (
        "(a title that is written from right to left, which cannot be set)"
        if right_to_left((one.title,))
        else one.title
    )


_ORDER: Final = ("Changed", "Moved", "Gone", "Left out", "New")
"""Whoever holds the edition before exchanges, moves and takes out leaves before putting new ones in.

One left out could not be printed this time: its old leaf is kept.
"""


def _before(leaf: Leaf, before: Mapping[str, Remembered], now: Mapping[str, Leaf]) -> str | None:
    """Return the number that a drill had, None for a new one.

    One drill may stand twice, or be a copy that kept its id: the same number is meant first, then the same text, and
    none that still holds such a drill.
    """
    number, id = leaf.entry.number, _id(leaf)
    if number in before and before[number].id in ("", id):
        return number
    same = [old for old, one in before.items() if id and one.id == id and (old not in now or _id(now[old]) != id)]
    alike = [old for old in same if before[old].digest == leaf.digest]
    return next(iter((*alike, *same)), None)


def _id(leaf: Leaf) -> str:
    return leaf.summary.id if leaf.summary else ""


def _said(leaf: Leaf, before: Mapping[str, Remembered], old: str | None) -> str:
    """Return what is said of a drill that had the number ``old``, "" for nothing."""
    number = leaf.entry.number
    if old is None:
        return f"New: {number} {leaf.title}."
    moved = f", before {old}" if old != number else ""
    if before[old].digest != leaf.digest:
        return f"Changed: {number} {leaf.title}{moved}."
    return f"Moved: {number} {leaf.title}{moved}." if moved else ""
