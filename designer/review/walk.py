"""Going through a record and all that is inside it, and putting another value in one place of it."""

from __future__ import annotations

from typing import Any

from designer.drill.base import Record

Path = tuple[str | int, ...]
"""The way to a value inside a record: names of fields and numbers in tuples."""


def values_in(value: Any, *, but: str = "") -> list[tuple[Path, Any]]:
    """Return (path, value) for ``value`` and everything inside it: records, tuples, maps and plain values.

    What stands in a field named ``but`` is left out.
    """
    found: list[tuple[Path, Any]] = []

    def walk(value: Any, path: Path) -> None:
        found.append((path, value))
        if isinstance(value, Record):
            for name, inner in value.__dict__.items():
                if name != but:
                    walk(inner, (*path, name))
        elif isinstance(value, tuple):
            for number, inner in enumerate(value):
                walk(inner, (*path, number))
        elif isinstance(value, dict):
            for key, inner in value.items():
                walk(inner, (*path, key))

    walk(value, ())
    return found


def value_at(value: Any, path: Path) -> Any:
    """Return what stands at ``path`` inside ``value``."""
    for step in path:
        value = getattr(value, step) if isinstance(value, Record) and isinstance(step, str) else value[step]
    return value


def replaced(value: Any, path: Path, new: Any) -> Any:
    """Return ``value`` with ``new`` at ``path``; None at the end of a tuple's path takes the entry out."""
    if not path:
        return new
    step, *rest = path
    if isinstance(value, Record) and isinstance(step, str):
        return value.changed(**{step: replaced(getattr(value, step), tuple(rest), new)})
    if isinstance(value, dict):
        return {**value, step: replaced(value[step], tuple(rest), new)}
    inner = list(value)
    number = int(step)
    if not rest and new is None:
        del inner[number]
    else:
        inner[number] = replaced(inner[number], tuple(rest), new)
    return tuple(inner)


def owner(root: Any, path: Path) -> str | None:
    """Return the id of the innermost record on the way to ``path`` that has one and is not ``root``."""
    found = None
    for depth in range(1, len(path) + 1):
        id = getattr(value_at(root, path[:depth]), "id", None)
        if isinstance(id, str):
            found = id
    return found
