"""How long a card takes to read aloud."""

from __future__ import annotations

import math
from typing import Final

WORDS_A_MINUTE: Final = 168
"""About 42 words in a spoken stretch of 15 seconds: a coach educator's limit for one explanation."""


def seconds_aloud(words: int) -> int:
    """Return how many whole seconds it takes to read this many words aloud, rounded up."""
    return math.ceil(words * 60 / WORDS_A_MINUTE)


def word_count(text: str) -> int:
    """Return how many words of ``text`` are spoken; a lone dash or sign is none."""
    return sum(any(character.isalnum() for character in word) for word in text.split())


BUDGETS: Final = {"player": 85, "coach": 150, "stand-in": 300}
"""Words of steps, rules and points that a reader takes in: a player half a minute's worth, a coach what stands beside the
diagram, a stand-in a page. Working budgets of the trade, no source."""
SPOKEN: Final = ("steps", "bounds", "rules", "points")
"""The sections of a card that are read aloud before play."""
