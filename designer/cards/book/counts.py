"""What is counted over all drills: the indexes, and the balance of the book with what is missing."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Final

from designer.cards.blocks import Balanced, Block
from designer.cards.book.leaf import Leaf, Summary
from designer.cards.book.rows import Setter
from designer.numbers.levels import LEVELS
from designer.wording.vocabulary import STAGES, Vocabulary

Counts = dict[str, list[str]]
"""{name: numbers of the drills}."""

INDEXES: Final = (
    "Title",
    "Objective",
    "Situation",
    "Phase",
    "Stroke",
    "Level",
    "Players",
    "Kit",
    "Minutes",
    "Coach needed",
)
_FIRST_TO_LAST: Final = (*STAGES, *LEVELS)
"""Stages and levels from the first to the last; others come after them, by the alphabet."""

EXPECTED: Final = {
    "situation": ("serving", "returning", "both back", "coming in", "opponent at net"),
    "part of the rally": ("cooperative", "forced", "open"),
    "phase": ("defence", "neutral", "attack", "finish"),
    "stroke": ("serve", "forehand", "backhand", "volley", "slice", "lob", "smash", "drop shot"),
    "level": (),
    "intensity": ("recovery", "open pattern", "accuracy", "two on one", "closed", "point play", "match play"),
}
"""What a whole programme has something of, group by group. The five situations are those of ITF-family texts; the kinds
of intensity those of Murphy, Duffield, Kellett and Reid (2014); phases and strokes are common practice, no source."""


def indexes(leaves: Sequence[Leaf], vocabulary: Vocabulary | None = None) -> Iterator[tuple[str, Counts]]:
    """Yield (name of the index, {entry in the academy's words: numbers of the drills} in order).

    An index without entries is left out.
    """
    words = vocabulary or Vocabulary()
    found: dict[str, Counts] = {name: {} for name in INDEXES}
    for leaf in leaves:
        if leaf.summary is not None:
            for name, entry in _entries(leaf.summary):
                numbers = found[name].setdefault(entry, [])
                if leaf.entry.number not in numbers:
                    numbers.append(leaf.entry.number)
    for name, entries in found.items():
        if entries:
            said = words.named if name.lower() in EXPECTED else words.said
            shown: Counts = {}
            for entry in sorted(entries, key=_by_level) if name == "Level" else entries:
                shown.setdefault(said(entry), []).extend(entries[entry])
            yield name, shown if name == "Level" else {entry: shown[entry] for entry in sorted(shown, key=_natural)}


def _entries(one: Summary) -> Iterator[tuple[str, str]]:
    if one.title:
        yield "Title", one.title
    if one.aim:
        yield "Objective", one.aim
    for group in ("situation", "phase", "stroke", "level"):
        yield from ((group.capitalize(), name) for name in one.tagged(group))
    yield from (("Players", f"{count} player{'s' * (count != 1)}") for count in one.players)
    yield from (("Kit", thing) for thing in one.kit)
    if one.minutes:
        yield "Minutes", f"{one.minutes} min"
    yield "Coach needed", "yes" if one.coach else "no"


def _natural(words: str) -> tuple[int, str]:
    """Order by the number that the words begin with, then by the alphabet."""
    number = words.partition(" ")[0]
    return (int(number), words.lower()) if number.isdecimal() else (-1, words.lower())


def _by_level(words: str) -> tuple[int, str]:
    return (_FIRST_TO_LAST.index(words) if words in _FIRST_TO_LAST else len(_FIRST_TO_LAST), words.lower())


def balance(leaves: Sequence[Leaf]) -> Iterator[tuple[str, Counts, tuple[str, ...]]]:
    """Yield (group, {name: numbers}, numbers of the drills that say nothing) for each group of ``EXPECTED``.

    What is expected and has no drill stands there with none.
    """
    printed = [leaf for leaf in leaves if leaf.summary]
    for group, expected in EXPECTED.items():
        counts: Counts = {name: [] for name in expected}
        silent = []
        for leaf in printed:
            assert leaf.summary is not None
            names = _grouped(leaf.summary, group)
            for name in names:
                counts.setdefault(name, []).append(leaf.entry.number)
            if not names:
                silent.append(leaf.entry.number)
        if group == "level":
            counts = {name: counts[name] for name in sorted(counts, key=_by_level)}
        yield group, counts, tuple(silent)


def names(leaves: Sequence[Leaf]) -> set[str]:
    """Return every name that the balance counts or misses."""
    return {name for _, counts, _ in balance(leaves) for name in counts}


def _grouped(one: Summary, group: str) -> tuple[str, ...]:
    if group == "part of the rally":
        return one.parts
    return one.tagged("work" if group == "intensity" else group)


def index_pages(leaves: Sequence[Leaf], setter: Setter) -> Iterator[Block]:
    """Yield the indexes in two columns."""
    yield setter.title("Indexes")
    blocks: list[Block] = []
    for name, found in indexes(leaves, setter.vocabulary):
        blocks.append(setter.heading(name, before=9))
        blocks += [
            setter.indexed(f"{words.removesuffix('.')}: {', '.join(numbers)}") for words, numbers in found.items()
        ]
    if blocks:
        yield Balanced(tuple(blocks), setter.paper.gutter, before=6)


def balance_page(leaves: Sequence[Leaf], setter: Setter) -> Iterator[Block]:
    """Yield the counts, group by group, and what is missing."""
    printed = sum(leaf.summary is not None for leaf in leaves)
    yield setter.title("Balance")
    yield setter.text(
        f"{printed} drills. A drill counts wherever it has a place, so that sums may be larger. A whole bar is the whole book.",
        before=4,
    )
    for group, counts, silent in balance(leaves):
        yield setter.heading(group.capitalize())
        yield from setter.counted(counts, printed)
        missing = [setter.named(name) for name, numbers in counts.items() if not numbers]
        if missing:
            yield setter.said_already(f"Missing: {', '.join(missing)}.", before=3)
        if silent:
            all_silent = len(silent) == printed
            yield setter.text(
                "No drill says." if all_silent else f"Not said: {', '.join(silent)}.", before=3, colour="soft"
            )
