"""The legend: every class on a diagram that does not carry its own word, with a sample drawn by the marks' own code."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from typing import Final

from designer.drawing.primitives import Mark
from designer.wording.spoken import label


@dataclass(frozen=True, slots=True)
class LegendEntry:
    """One class of mark on a diagram: ``kind`` as `samples.sample` takes it, and the words beside its sample."""

    kind: str
    words: str


WORDS: Final = {
    "ball path": "ball",
    "feed": "feed",
    "fan": "or: a choice",
    "bounce": "bounce",
    "contact": "hit here",
    "run": "run",
    "recovery run": "run, ready",
    "target area": "target",
    "feed area": "feed area",
    "rule area": "rule area",
    "paid area": "for points",
    "keep out area": "keep out",
    "throw-down line": "throw-down",
    "chalk line": "chalk",
    "tape line": "tape",
    "line of discs": "discs",
    "line in thought": "imagined",
    "barrier": "barrier",
    "height cord": "cord",
    "cone": "cone",
    "disc": "flat disc",
    "hoop": "hoop",
    "basket": "basket",
    "ball machine": "ball machine",
}
"""Classes in the order of a legend."""


def legend_of(marks: Iterable[Mark]) -> tuple[LegendEntry, ...]:
    """Return the legend of the classes among ``marks``."""
    kinds = {mark.kind for mark in marks}
    return tuple(LegendEntry(kind, label(words)) for kind, words in WORDS.items() if kind in kinds)
