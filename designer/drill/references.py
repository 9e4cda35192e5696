"""The names by which one record speaks of another, in its fields and in the tokens of its texts."""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import Any, Final, TypeVar

from designer.drill.base import Record

FIELDS: Final = frozenset({"on", "after", "during", "shots", "shot", "of", "parts", "area"})
"""The fields that hold the id of another record, or several."""

_TOKEN: Final = re.compile(r"\{\{|\{([a-z][a-z0-9-]{0,39})\}")
_Record = TypeVar("_Record", bound=Record)


def renamed(record: _Record, names: Mapping[str, str]) -> _Record:
    """Return ``record`` with each reference to a key of ``names`` turned into its value; its own id stays."""
    values = {
        field: new
        for field in type(record).model_fields
        if field != "id" and (new := _renamed(old := getattr(record, field), names, refers=field in FIELDS)) is not old
    }
    return record.changed(**values) if values else record


def _renamed(value: Any, names: Mapping[str, str], *, refers: bool) -> Any:
    """Return ``value`` itself where nothing in it changes."""
    if isinstance(value, Record):
        return renamed(value, names)
    if isinstance(value, tuple):
        parts = tuple(_renamed(part, names, refers=refers) for part in value)
        return value if all(new is old for new, old in zip(parts, value, strict=True)) else parts
    if not isinstance(value, str):
        return value
    if refers:
        return names.get(value, value)
    changed = _TOKEN.sub(lambda found: f"{{{names.get(found[1], found[1])}}}" if found[1] else found[0], value)
    return value if changed == value else changed
