"""Where something stands in a drill file, in words: "progression 2, items, 'tick', corners"."""

from __future__ import annotations

from typing import Any, Final

Location = tuple[str | int, ...]

_NOT_SAID: Final = frozenset({"changes"})
_NUMBERED: Final = {"progressions": "progression", "easier": "easier", "harder": "harder", "others": "other variation"}
_POINT: Final = frozenset({"at"})
_POINTS: Final = frozenset({"corners", "via"})


MISSING: Final = object()
"""What ``found`` returns where there is nothing."""


def found(raw: Any, location: Location) -> Any:
    """Return what stands at ``location`` in ``raw``, plain JSON data, ``MISSING`` where nothing does."""
    for step in location:
        if isinstance(raw, dict):
            raw = raw.get(step, MISSING)
        elif isinstance(raw, list) and isinstance(step, int):
            raw = raw[step] if step < len(raw) else MISSING
        else:
            return MISSING
    return raw


def location_words(raw: Any, location: Location) -> str:
    """Return ``location`` (keys and indices into ``raw``, plain JSON data) in words; "" for the whole file."""
    words: list[str] = []
    value = raw
    before: str | int | None = None
    for step in location:
        inside = found(value, (step,))
        if isinstance(step, int):
            _say_entry(words, before, step, inside)
        elif step not in _NOT_SAID:
            words.append(step if step.isprintable() and len(step) <= 60 else f"{step[:60]!r}")
        value, before = inside, step
    return ", ".join(words)


def _say_entry(words: list[str], before: str | int | None, index: int, entry: Any) -> None:
    """Add what the entry ``index`` of the list ``before`` is called."""
    if isinstance(before, str) and before in _NUMBERED:
        words[-1] = f"{_NUMBERED[before]} {index + 1}"
    elif isinstance(before, str) and before in _POINTS:
        words[-1] = f"{before} {index + 1}"
    elif (before in _POINT or isinstance(before, int)) and index < 2:
        words.append("xy"[index])
    elif isinstance(entry, dict) and isinstance(id := entry.get("id", entry.get("letter")), str):
        words.append(repr(id[:60]))
    else:
        words.append(f"entry {index + 1}")
