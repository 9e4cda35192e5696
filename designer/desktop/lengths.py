"""Lengths as a coach types them: "1.5 m", "5 ft 2", "2 rackets", "half a stride". No Qt here."""

from __future__ import annotations

import re
from fractions import Fraction
from typing import Final, Literal

from designer.wording.units import RACKET, STRIDE, Units

FARTHEST: Final = 100.0
"""No length on a court is longer, in metres."""

LONGEST: Final = 60
"""No length is written in more letters."""

_INCH: Final = 0.0254
"""Exactly: the international yard and pound agreement of 1959."""

_UNITS: Final = {
    "m": 1.0,
    "metre": 1.0,
    "meter": 1.0,
    "cm": 0.01,
    "centimetre": 0.01,
    "centimeter": 0.01,
    "mm": 0.001,
    "racket": RACKET,
    "racquet": RACKET,
    "r": RACKET,
    "stride": STRIDE,
    "step": STRIDE,
    "s": STRIDE,
    "yard": 36 * _INCH,
    "yd": 36 * _INCH,
    "foot": 12 * _INCH,
    "feet": 12 * _INCH,
    "ft": 12 * _INCH,
    "'": 12 * _INCH,
    "inch": _INCH,
    "inche": _INCH,
    "in": _INCH,
    '"': _INCH,
}
_FOOT: Final = 12 * _INCH
_SMALLER: Final = {_FOOT: _INCH, 1.0: 0.01}
"""What a bare number counts that follows a unit: "5 ft 2" ends in inches, "1 m 50" in centimetres."""

_WORDS: Final = {
    "a": 1,
    "an": 1,
    "one": 1,
    "two": 2,
    "three": 3,
    "four": 4,
    "five": 5,
    "six": 6,
    "seven": 7,
    "eight": 8,
    "nine": 9,
    "ten": 10,
}
_PARTS: Final = {"½": "1/2", "¼": "1/4", "¾": "3/4", "⅓": "1/3", "⅔": "2/3"}
_TOKEN: Final = re.compile(r"\d+\s*/\s*\d+|\d+(?:\.\d+)?|\.\d+|[a-z]+|['\"]|\S")

EXPECTED: Final = "a length such as “1.5 m”, “5 ft 2”, “2 rackets” or “3 strides”"


def metres_typed(text: str, direction: Literal["across", "along"] = "across", units: Units = "rackets") -> float:
    """Return the length that ``text`` says, in metres; a sign before it is kept.

    A bare number counts what ``units`` count in ``direction``: rackets across and strides along, or metres, or feet.
    Raises ``ValueError`` with a sentence.
    """
    if len(text) > LONGEST:
        raise ValueError(f"That is too long to be a length; expected {EXPECTED}.")
    words = _plain(text)
    sign = -1.0 if words[:1] == "-" else 1.0
    tokens = _TOKEN.findall(words.lstrip("+-").replace("half-", "half "))
    if not tokens:
        raise ValueError(f"There is nothing written; expected {EXPECTED}.")
    bare = {"metres": 1.0, "feet": _FOOT}.get(units) or (RACKET if direction == "across" else STRIDE)
    length = _sum(tokens, bare, text)
    if length > FARTHEST:
        raise ValueError(f"“{text.strip()}” is {length:.0f} m; a court and all round it is within {FARTHEST:.0f} m.")
    return sign * length


def _plain(text: str) -> str:
    """Return ``text`` in the few letters that are read: small, with points for commas and plain quotes."""
    words = text.strip().lower()
    for part, plain in _PARTS.items():
        words = words.replace(part, f" {plain}")
    words = re.sub(r"(?<=\d),(?=\d)", ".", words)
    words = words.replace("−", "-").replace("–", "-")
    words = words.replace("’", "'").replace("′", "'").replace("‘", "'")
    return words.replace("”", '"').replace("″", '"').replace("“", '"').replace("''", '"')


def _sum(tokens: list[str], bare: float, text: str) -> float:
    """Return the sum of counts and their units; a last bare count after a unit is one of the smaller unit."""
    length, before, place = 0.0, None, 0
    while place < len(tokens):
        count, place = _count(tokens, place, text)
        while place < len(tokens) and tokens[place] in ("of", "a", "an"):
            place += 1  # "half of a racket"
        unit = _unit(tokens[place]) if place < len(tokens) else None
        if unit is not None:
            place += 1
        elif place < len(tokens):
            raise ValueError(f"“{tokens[place]}” in “{text.strip()}” is no unit; expected {EXPECTED}.")
        elif before is None:
            unit = bare
        elif (unit := _SMALLER.get(before)) is None:
            raise ValueError(f"“{text.strip()}” ends in a number without a unit; expected {EXPECTED}.")
        if before is not None and unit >= before:
            raise ValueError(f"“{text.strip()}” goes from a unit to one that is no smaller; expected {EXPECTED}.")
        length, before = length + float(count) * unit, unit
        while place < len(tokens) and tokens[place] in ("and", "+"):
            place += 1
    return length


def _count(tokens: list[str], place: int, text: str) -> tuple[Fraction, int]:
    """Return the number that begins at ``place``, and the place after it: "2", "2 1/2", "half", "two and a half"."""
    token = tokens[place]
    if token == "half":  # noqa: S105 - no password, a word
        return Fraction(1, 2), place + 1
    number = _number(token)
    if number is None:
        raise ValueError(f"“{token}” in “{text.strip()}” is no number; expected {EXPECTED}.")
    place += 1
    rest = tokens[place : place + 3]
    if rest[:1] and "/" in rest[0] and number.denominator == 1:
        part = _number(rest[0])
        return number + (part or 0), place + 1
    if rest[:3] == ["and", "a", "half"]:
        return number + Fraction(1, 2), place + 3
    return number, place


def _number(token: str) -> Fraction | None:
    if token in _WORDS:
        return Fraction(_WORDS[token])
    try:
        return Fraction(token.replace(" ", ""))
    except (ValueError, ZeroDivisionError):
        return None


def _unit(token: str) -> float | None:
    return _UNITS.get(token) or _UNITS.get(token.removesuffix("s"))
