"""What has changed since the edition before: what is new, what is another drill now, what has moved, what is gone."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from typing import Final

from designer.cards.book.leaf import Leaf
from designer.drill.handbook import Remembered


def changes(leaves: Sequence[Leaf], before: Mapping[str, Remembered], edition: int) -> Iterator[str]:
    """Yield a sentence for each drill that differs from the edition before, whose {number: drill} is ``before``."""
    if not before:
        yield "This is the first edition that is recorded." if edition == 1 else "The edition before is not recorded."
        return
    was = {one.id: number for number, one in before.items() if one.id}
    now = {leaf.entry.number: leaf for leaf in leaves if leaf.summary}
    stays = {leaf.summary.id for leaf in now.values() if leaf.summary}
    said = [words for leaf in now.values() if (words := _said(leaf, before, was))]
    gone = [(number, one) for number, one in before.items() if (one.id or number) not in (stays if one.id else now)]
    said += [" ".join(filter(None, (f"Gone: {number}", one.title))) + "." for number, one in gone]
    yield from sorted(said, key=lambda words: _ORDER.index(words.partition(":")[0]))
    if not said:
        yield "No drill has changed since the edition before."


_ORDER: Final = ("Changed", "Moved", "Gone", "New")
"""Whoever holds the edition before exchanges, moves and takes out leaves before putting new ones in."""


def _said(leaf: Leaf, before: Mapping[str, Remembered], was: Mapping[str, str]) -> str:
    """Return what is said of a drill, "" for nothing."""
    number = leaf.entry.number
    id = leaf.summary.id if leaf.summary else ""
    old = was.get(id, number if number in before and not before[number].id else None)
    if old is None:
        return f"New: {number} {leaf.title}."
    moved = f", before {old}" if old != number else ""
    if before[old].digest != leaf.digest:
        return f"Changed: {number} {leaf.title}{moved}."
    return f"Moved: {number} {leaf.title}{moved}." if moved else ""
