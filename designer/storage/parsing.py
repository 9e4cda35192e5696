"""Bytes of unknown origin as plain JSON data, or a sentence that says where they are wrong."""

from __future__ import annotations

import codecs
import json
import math
from typing import Any, Final, NoReturn

from designer.storage.location import Location, location_words

LARGEST: Final = 20_000_000
"""No drill file is longer, in bytes; a drill of 100 items has about 30,000."""

DEEPEST: Final = 100
"""No drill nests lists and objects deeper; what this program writes has 15 levels."""

_EXPECTED: Final = {
    "Expecting value": "expected a value",
    "Expecting ',' delimiter": "expected a comma or a closing bracket",
    "Expecting ':' delimiter": "expected a colon",
    "Expecting property name enclosed in double quotes": "expected a key in double quotes",
    "Illegal trailing comma before end of object": "a comma stands before the closing bracket",
    "Illegal trailing comma before end of array": "a comma stands before the closing bracket",
    "Unterminated string starting at": "a text that begins here has no closing quote",
    "Invalid control character at": "a line break or control character stands inside a text; expected \\n or \\u and four digits",
    "Invalid \\escape": 'a backslash is followed by something unknown; expected one of \\" \\\\ \\/ \\b \\f \\n \\r \\t \\u',
    "Invalid \\uXXXX escape": "expected four hexadecimal digits after \\u",
    "Extra data": "something follows after the last bracket",
}
_WIDE: Final = (
    (codecs.BOM_UTF32_LE, "UTF-32"),
    (codecs.BOM_UTF32_BE, "UTF-32"),
    (codecs.BOM_UTF16_LE, "UTF-16"),
    (codecs.BOM_UTF16_BE, "UTF-16"),
)


class Unreadable(Exception):
    """A file cannot be read as a drill; the text says which file, where in it, what is wrong and what was expected."""


class _Twice(dict[str, Any]):
    """An object in which a key stands twice."""

    key: str


def parse(data: bytes, name: str, kind: str = "a drill file") -> Any:
    """Return the JSON data in ``data``; sentences call the file ``name`` and say that ``kind`` was expected.

    Raises ``Unreadable``.
    """
    if len(data) > LARGEST:
        raise Unreadable(too_large(name, LARGEST, kind))
    text = _text(data, name, kind)
    try:
        raw = json.loads(text, object_pairs_hook=_object)
    except json.JSONDecodeError as error:
        raise Unreadable(_not_json(text, name, kind, error)) from error
    except RecursionError as error:
        raise Unreadable(_too_deep(name, kind)) from error
    except ValueError as error:  # a whole number of more than 4,300 digits
        raise Unreadable(f"{name}: holds a number of thousands of digits; expected numbers of a court.") from error
    _look_through(raw, name, kind)
    return raw


def too_large(name: str, limit: int, kind: str = "a drill file") -> str:
    """Return the sentence for a file of more than ``limit`` bytes where ``kind`` was expected."""
    least = f"{limit // 1_000_000} MB" if limit >= 1_000_000 else f"{limit // 1_000} kB"
    return f"{name}: is larger than {least}; expected {kind}."


def _text(data: bytes, name: str, kind: str) -> str:
    for mark, encoding in _WIDE:
        if data.startswith(mark):
            raise Unreadable(f"{name}: is written in {encoding}; expected UTF-8. Save it again as UTF-8.")
    if b"\0" in data[:4] and b"{" in data[:4]:
        raise Unreadable(f"{name}: is written in UTF-16 or UTF-32; expected UTF-8. Save it again as UTF-8.")
    data = data.removeprefix(codecs.BOM_UTF8)
    try:
        text = data.decode()
    except UnicodeDecodeError as error:
        line = data.count(b"\n", 0, error.start) + 1
        raise Unreadable(
            f"{name}: line {line} holds the byte {data[error.start]:02X}, which is not UTF-8; expected text in UTF-8."
        ) from error
    if not text.strip():
        raise Unreadable(f"{name}: is empty; expected {kind}.")
    return text


def _not_json(text: str, name: str, kind: str, error: json.JSONDecodeError) -> str:
    begins = text.lstrip()[:1]
    if begins not in ("{", "["):
        return f"{name}: is not {kind}; expected JSON that begins with a brace, found {_shown(text)}."
    cut_short = error.pos >= len(text.rstrip()) or error.msg.startswith("Unterminated string")
    what = _EXPECTED.get(error.msg.removesuffix(" at"), _EXPECTED.get(error.msg, "is not JSON"))
    where = f"{name}: line {error.lineno}, column {error.colno}: {what}"
    return f"{where}; the file may have been cut short." if cut_short else f"{where}."


def _shown(text: str) -> str:
    begins = "".join(char if char.isprintable() else "�" for char in text.strip()[:20])
    return f"“{begins}”" if len(text.strip()) <= 20 else f"“{begins}…”"


def _too_deep(name: str, kind: str) -> str:
    return f"{name}: lists and objects stand more than {DEEPEST} deep in one another; expected {kind}."


def _object(pairs: list[tuple[str, Any]]) -> dict[str, Any]:
    made = dict(pairs)
    if len(made) == len(pairs):
        return made
    seen: set[str] = set()
    twice = _Twice(made)
    twice.key = next(key for key, _ in pairs if key in seen or seen.add(key))  # type: ignore[func-returns-value]
    return twice


def _look_through(raw: Any, name: str, kind: str) -> None:
    """Raise ``Unreadable`` at the first thing in ``raw`` that JSON readers take in different ways."""

    def refuse(place: Location, what: str) -> NoReturn:
        where = location_words(raw, place)
        raise Unreadable(f"{name}: {where}: {what}." if where else f"{name}: {what}.")

    waiting: list[tuple[Location, Any]] = [((), raw)]
    while waiting:
        place, value = waiting.pop()
        if len(place) > DEEPEST:
            raise Unreadable(_too_deep(name, kind))
        if isinstance(value, float) and not math.isfinite(value):
            refuse(place, "is no finite number; expected a number")
        elif isinstance(value, str) and not _whole(value):
            refuse(place, "holds half of a character (a lone surrogate); expected text")
        elif isinstance(value, _Twice):
            refuse(place, f"the key “{value.key}” stands twice; expected it once")
        elif isinstance(value, dict):
            for key in value:
                if not _whole(key):
                    refuse(place, "a key holds half of a character (a lone surrogate); expected text")
            waiting.extend(((*place, key), part) for key, part in reversed(value.items()))
        elif isinstance(value, list):
            waiting.extend(((*place, number), part) for number, part in reversed(list(enumerate(value))))


def _whole(text: str) -> bool:
    if text.isascii():
        return True
    try:
        text.encode()
    except UnicodeEncodeError:
        return False
    return True
