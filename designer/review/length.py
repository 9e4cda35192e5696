"""A suggestion: words that nobody can keep in mind between the explanation and the first ball."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from designer.drill.drill import Drill
from designer.drill.setting import At, addresses
from designer.review.check import Check, check
from designer.wording.card import card_words
from designer.wording.reading_time import BUDGETS, SPOKEN, seconds_aloud, word_count

TWICE: Final = 2
"""So many times the budget is too much; a little over it is only shown by the seconds under the card."""


def spoken_words(drill: Drill, at: At) -> int:
    """Return how many words a player hears before the first ball: steps, rules and points of the player's card."""
    card = card_words(drill, at, "player")
    sections = (section for key in SPOKEN if (section := card.section(key)) is not None)
    return sum(word_count(each.text) for section in sections for each in section.sentences if not each.missing)


def length_suggestions(drill: Drill, at: At | None) -> Iterator[Check]:
    """Yield one suggestion for the setting whose card takes longest to read aloud, where that is twice the usual time."""
    places = addresses(drill) if at is None else (at,)
    count, longest = max(((spoken_words(drill, place), place) for place in places), key=lambda found: found[0])
    budget = BUDGETS["player"]
    if count >= TWICE * budget:
        text = (
            f"steps, rules and points take {seconds_aloud(count)} s to read aloud to a player; "
            f"half a minute is what one listens to: shorten a note, or give a rule to a later progression"
        )
        yield check("suggestion", "reads-long", text, at=longest)
