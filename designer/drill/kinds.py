"""Which list of a setting a record belongs to."""

from __future__ import annotations

from typing import Any

from designer.drill.items import Thing, Unknown
from designer.drill.movement import Run, Shot
from designer.drill.people import Spot
from designer.drill.rules import Finish, Part, Points, Rule, Start, Swap

_LISTS: tuple[tuple[type, str], ...] = (
    (Spot, "spots"),
    (Thing, "items"),
    (Unknown, "items"),
    (Shot, "shots"),
    (Run, "runs"),
    (Part, "parts"),
    (Rule, "rules"),
    (Points, "points"),
    (Start, "starts"),
    (Swap, "swaps"),
    (Finish, "finish"),
)


def kind_of(record: Any) -> str:
    """Return the name of the setting's field that holds ``record``; raise ``TypeError`` for anything else."""
    for type_, kind in _LISTS:
        if isinstance(record, type_):
            return kind
    raise TypeError(f"{type(record).__name__} is not a record of a setting")
