"""What does not fit a drill's records, in words: never the validator's own text."""

from __future__ import annotations

import json
from collections.abc import Iterable, Mapping
from typing import Any, Final

from pydantic import ValidationError

from designer.storage.location import MISSING, Location, found, location_words

MOST_FAULTS: Final = 10
"""No more are told at once: the first ones are mended first."""

REQUIRED: Final[Mapping[str, str]] = {
    "area": "the id of an area, line or hoop, or a region of the court",
    "at": "'contact', 'net', 'highest' or 'arrival'",
    "by": "the letter of a job",
    "check": "the key of a check",
    "corners": "a list of points [x, y] in metres",
    "direction": "a direction such as 'cross-court'",
    "do": "what must be done, such as 'keep'",
    "form": "'rectangle', 'ellipse' or 'polygon'",
    "gives": 'what follows, such as {"then": "replay"}',
    "height": "a height in metres",
    "id": "an id such as 'cone-7h2kq'",
    "job": "the letter of a job",
    "kind": "a kind, such as 'cone' for an item",
    "letter": "one capital letter",
    "must": 'what must be done, such as {"do": "use stroke"}',
    "on": "a list of events",
    "place": 'a place such as {"at": [0.0, -11.8872]}',
    "progressions": "a list of at least one progression",
    "reason": "a text",
    "shape": "a shape with a 'form' and 'corners'",
    "text": "a text",
    "then": "what follows, such as 'replay'",
    "to": 'a place such as {"at": [0.0, -11.8872]}',
    "what": "what happens, such as 'landed'",
    "where": "a list of areas",
}
"""What is expected where a field that every record of its kind has is missing."""

_TYPES: Final[Mapping[str, str]] = {
    "bool_type": "true or false",
    "date_from_datetime_inexact": 'a date such as "2026-05-01"',
    "date_from_datetime_parsing": 'a date such as "2026-05-01"',
    "date_parsing": 'a date such as "2026-05-01"',
    "date_type": 'a date such as "2026-05-01"',
    "dict_type": "an object in braces",
    "finite_number": "a finite number",
    "float_parsing": "a number",
    "float_type": "a number",
    "int_from_float": "a whole number",
    "int_parsing": "a whole number",
    "int_parsing_size": "a whole number of fewer digits",
    "int_type": "a whole number",
    "model_attributes_type": "an object in braces",
    "model_type": "an object in braces",
    "string_type": "text",
    "string_unicode": "text",
    "tuple_type": "a list",
}
_PATTERNS: Final[Mapping[str, str]] = {
    "^[a-z][a-z0-9-]{0,39}$": "an id: a small letter, then at most 39 small letters, digits or hyphens",
    "^[A-Z]$": "one capital letter",
    "^[a-z][a-z0-9-]{0,39}(:[a-z0-9-]{1,40})?$": 'a tag such as "level:club"',
    "^[a-z]{2,3}(-[A-Za-z0-9]{2,8})*$": 'a language such as "en"',
    "^#[0-9A-Fa-f]{6}$": 'a colour such as "#17202A"',
    r"^[1-9][0-9]{0,3}\.[1-9][0-9]{0,3}$": 'a section and a place in it, such as "3.12"',
    "^([0-9a-f]{64})?$": "a SHA-256 in 64 hexadecimal digits",
    "^[!-~]*$": "plain letters, digits and signs without spaces",
}
_TAGGED: Final = frozenset({"shape", "must"})


def faults(raw: Any, error: ValidationError) -> tuple[str, ...]:
    """Return what is wrong in ``raw`` (plain JSON data) as phrases "place: what, expected what", at most ten.

    Where there are more, the last phrase says how many.
    """
    expectations: dict[Location, list[str]] = {}
    for location, expected in _each(raw, error):
        phrases = expectations.setdefault(location, [])
        if expected not in phrases:
            phrases.append(expected)
    told = [_phrase(raw, location, expected) for location, expected in expectations.items()]
    if len(told) > MOST_FAULTS:
        told[MOST_FAULTS:] = [f"and {len(told) - MOST_FAULTS} more"]
    return tuple(told)


def fault_locations(raw: Any, error: ValidationError) -> tuple[Location, ...]:
    """Return where in ``raw`` something does not fit, each place once."""
    return tuple(dict.fromkeys(location for location, _ in _each(raw, error)))


def _each(raw: Any, error: ValidationError) -> Iterable[tuple[Location, str]]:
    for fault in error.errors(include_url=False, include_input=False):
        location = _location(raw, fault["loc"], missing=fault["type"] == "missing")
        if not _beside_the_point(raw, location, fault):
            yield location, _expected(location, fault)


def _location(raw: Any, loc: Location, *, missing: bool) -> Location:
    """Return ``loc`` without the steps that name a branch of the validator and stand for nothing in ``raw``."""
    location: list[str | int] = []
    value = raw
    tag_follows = False
    for number, step in enumerate(loc):
        last = missing and number == len(loc) - 1
        if tag_follows:
            tag_follows = False
        elif isinstance(value, dict) and isinstance(step, str) and (last or step in value):
            location.append(step)
            value = value.get(step)
            tag_follows = step in _TAGGED
        elif isinstance(value, list) and isinstance(step, int) and (last or step < len(value)):
            location.append(step)
            value = value[step] if step < len(value) else None
            tag_follows = location[-3:-1] == ["changes", "items"]
    return tuple(location)


def _beside_the_point(raw: Any, location: Location, fault: Any) -> bool:
    """Whether the validator only says again what it has said elsewhere, or speaks of a branch that is not meant."""
    value = found(raw, location)
    if fault["type"] == "too_short" and isinstance(value, list):
        return len(value) >= int(fault["ctx"]["min_length"])  # entries that do not fit are not counted by the validator
    if fault["type"] == "missing" and "when" in location and location[-1] in ("what", "area"):
        entry = found(raw, location[:-1])
        return isinstance(entry, dict) and ("what" in entry or "area" in entry)
    return False


def _expected(location: Location, fault: Any) -> str:
    """Return what was expected, in words, for one of the validator's errors."""
    kind, values = fault["type"], fault.get("ctx", {})
    if kind == "missing":
        last = location[-1] if location else ""
        return REQUIRED.get(last, "a value") if isinstance(last, str) else "a number"
    if kind == "value_error":
        return next(
            (words for pattern, words in _PATTERNS.items() if str(values["error"]).endswith(pattern)), "another"
        )
    if kind == "string_pattern_mismatch":
        return _PATTERNS.get(values["pattern"], "another text")
    if kind == "literal_error":
        return str(values["expected"])
    limits = {
        "greater_than_equal": lambda: f"at least {values['ge']:g}",
        "less_than_equal": lambda: f"at most {values['le']:g}",
        "string_too_long": lambda: f"at most {values['max_length']} characters",
        "string_too_short": lambda: f"at least {_counted(values['min_length'], 'character', 'characters')}",
        "too_short": lambda: f"at least {_counted(values['min_length'], 'entry', 'entries')}",
        "too_long": lambda: f"at most {_counted(values['max_length'], 'entry', 'entries')}",
    }
    return limits[kind]() if kind in limits else _TYPES.get(kind, "another value")


def _counted(number: int, one: str, more: str) -> str:
    return f"{number} {one if number == 1 else more}"


def _phrase(raw: Any, location: Location, expected: list[str]) -> str:
    where = location_words(raw, location)
    value = found(raw, location)
    what = "is missing" if value is MISSING else shown(value)
    phrase = f"{what}, expected {' or '.join(expected)}"
    return f"{where}: {phrase}" if where else phrase


def shown(value: Any) -> str:
    """Return a piece of JSON data as a reader of the file would know it again, at most some 40 characters."""
    if isinstance(value, dict):
        return "an object" if value else "an empty object"
    if isinstance(value, list):
        return f"a list of {len(value)}" if value else "an empty list"
    text = json.dumps(value, ensure_ascii=False)
    text = "".join(char if char.isprintable() else "�" for char in text)
    return text if len(text) <= 40 else f"{text[:38]}…"
