"""Numbers as a card writes them."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

_WORDS: Final = (
    "no",
    "one",
    "two",
    "three",
    "four",
    "five",
    "six",
    "seven",
    "eight",
    "nine",
    "ten",
    "eleven",
    "twelve",
)
_ORDINALS: Final = ("first", "second", "third", "fourth", "fifth", "sixth", "seventh", "eighth", "ninth", "tenth")
_IRREGULAR: Final = {"is in": "are in", "is": "are", "half": "halves", "box": "boxes", "person": "people"}


def number(count: int) -> str:
    """Return how many as a word up to twelve, "one" to "twelve", else as digits."""
    return _WORDS[count] if 0 < count < len(_WORDS) else str(count)


def ordinal(count: int) -> str:
    """Return "first", "second" … as a word up to ten, else "11th"."""
    if 0 < count <= len(_ORDINALS):
        return _ORDINALS[count - 1]
    ending = "th" if count % 100 in (11, 12, 13) else {1: "st", 2: "nd", 3: "rd"}.get(count % 10, "th")
    return f"{count}{ending}"


def plural(word: str) -> str:
    """Return the plural of a countable word of the trade."""
    if word in _IRREGULAR:
        return _IRREGULAR[word]
    if word.endswith(("s", "x", "ch", "sh")):
        return f"{word}es"
    return f"{word}s"


def many(count: int, word: str) -> str:
    """Return "one start", "five starts", "20 starts"."""
    return f"{number(count)} {word if count == 1 else plural(word)}"


def digits(count: float, word: str) -> str:
    """Return "1 disc", "2 discs"; a half is "½ racket", and up to one of anything is singular."""
    return f"{halves(count)} {word if count <= 1 else plural(word)}"


def halves(count: float) -> str:
    """Return a count in whole and half numbers: "½", "2", "3½"."""
    whole, half = divmod(round(count * 2), 2)
    return f"{whole or ''}½" if half else str(whole)


def listed(words: Sequence[str], link: str = "and") -> str:
    """Return "a", "a and b", "a, b and c"."""
    if len(words) < 2:
        return "".join(words)
    return f"{', '.join(words[:-1])} {link} {words[-1]}"


def lowered(text: str) -> str:
    """Return ``text`` as it stands inside a sentence: its first letter small, unless it is a job's letter or a name."""
    first, _, _ = text.partition(" ")
    plain = len(first) > 1 and first[1:].islower() and first.isalpha()
    return text[:1].lower() + text[1:] if plain else text


def capital(text: str) -> str:
    """Return ``text`` with its first letter as a capital; a letter that stands after a sign or digit is left."""
    return text[:1].upper() + text[1:]
