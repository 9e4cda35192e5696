"""Where in a drill or a handbook something is written, in words that its author knows the place by."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any, Final

from designer.drill.base import Record

_NOUNS: Final = {
    "cues": "cue",
    "watch_for": "“watch for”",
    "safety": "caution",
    "kit": "kit",
    "sources": "source",
    "jobs": "job",
    "spots": "person",
    "items": "thing on the court",
    "shots": "shot",
    "runs": "run",
    "parts": "part of a rally",
    "rules": "rule",
    "points": "point",
    "starts": "start",
    "swaps": "swap",
    "progressions": "progression",
    "easier": "easier form",
    "harder": "harder form",
    "others": "other form",
    "accepted": "accepted caution",
    "sections": "section",
    "drills": "drill",
    "glossary": "glossary entry",
    "before": "check before a session",
}


def where_written(record: Record, sign: str) -> tuple[str, ...]:
    """Return where ``sign`` stands in a record: "the objective", "cue 2", "the introduction of section 1".

    Translations of a drill are not looked at: they are not printed.
    """
    found = (_words(path) for path, text in texts(record) if sign in text)
    return tuple(dict.fromkeys(found))


def texts(record: Record) -> Iterator[tuple[tuple[str | int, ...], str]]:
    """Yield (path, text) of every text in a record, translations left out."""
    yield from _texts(record.model_dump(exclude={"translations"}), ())


def _texts(value: Any, path: tuple[str | int, ...]) -> Iterator[tuple[tuple[str | int, ...], str]]:
    if isinstance(value, str):
        yield path, value
    elif isinstance(value, dict):
        for key, inner in value.items():
            yield from _texts(inner, (*path, key))
    elif isinstance(value, list | tuple):
        for number, inner in enumerate(value):
            yield from _texts(inner, (*path, number))


def _words(path: tuple[str | int, ...]) -> str:
    """Return a path in words, the innermost first."""
    said: list[str] = []
    for number, part in enumerate(path):
        if isinstance(part, int):
            said.append(f"{_NOUNS.get(str(path[number - 1]), str(path[number - 1]))} {part + 1}")
    last = path[-1]
    if len(path) > 1 and path[-2] == "vocabulary":
        return f"the academy’s word for “{last}”"
    if isinstance(last, str):
        field = f"the {last.replace('_', ' ')}"
        if not said:
            return field
        said[-1] = f"{field} of {said[-1]}"
    return " in ".join(reversed(said))
