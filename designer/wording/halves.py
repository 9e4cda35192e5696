"""Where the parts of the court lie that a card names and no painted line bounds on every side, said once for the coach."""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import Final

from designer.court.readings import RACKET
from designer.wording.sentence import Lead, Sentence, sentence, sentences_of
from designer.wording.telling import Telling
from designer.wording.units import distance
from designer.wording.where import MIDDLE

_HALVES: Final = {"half": "as far as the singles line", "doubles half": "the alley included"}


def halves(told: Telling, text: str) -> tuple[Sentence, ...]:
    """Return where the halves and the middle lane are that ``text``, the rest of the card, names."""
    bullet = Lead("bullet")
    return tuple(sentence(f"layout:{key}", sentences_of(words), lead=bullet) for key, words in _places(told, text))


def _places(told: Telling, text: str) -> Iterator[tuple[str, str]]:
    for half, as_far in _HALVES.items():
        sides = sorted(set(re.findall(rf"\b(right|left) {half}\b(?! from)", text)))
        if len(sides) == 1:
            side = sides[0]
            words = f"{side} {half}: {side} of the centre line extended, {as_far}, as its player faces the net"
            yield half, words
        elif sides:
            yield half, f"{half.replace('half', 'halves')}: either side of the centre line extended, {as_far}"
    if MIDDLE in text:
        each = distance(2 * RACKET, "across", told.units, exact=True)
        yield "middle", f"{MIDDLE}: {each} either side of the middle, from the net to the baseline"
