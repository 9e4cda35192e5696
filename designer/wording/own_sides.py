"""On which hand a player finds the parts of the own court that both ends have under one name."""

from __future__ import annotations

from typing import Final

from designer.court.regions import as_player
from designer.drill.items import Area
from designer.drill.places import corners_of, middle
from designer.wording.counts import listed
from designer.wording.names import name_of, without_article
from designer.wording.sentence import unmarked
from designer.wording.telling import Telling

_BESIDE: float = 0.3
"""An area whose middle is nearer than this to the middle line, in metres, lies on neither hand."""


def own_sides(told: Telling, job: str) -> str:
    """Return "your eight-racket side is on your right, your four-racket side on your left"; "" where nothing is like that.

    Only what is not marked and stands once at each end, each with its own shape: of it the diagram shows two alike.
    """
    end = told.ends.get(job)
    if end is None:
        return ""
    areas = [item for item in told.setting.items.values() if isinstance(item, Area) and item.name.strip()]
    sides: dict[str, str] = {}
    for area in areas:
        twins = [other for other in areas if other.name == area.name and other.id != area.id]
        marked = area.marked not in (None, "in thought")
        if marked or area.both_ends or told.end_of_item(area.id) != end or len(twins) != 1:
            continue
        across, _ = as_player(middle(corners_of(area)), end)
        name = name_of(told, area.id)
        if name is not None and abs(across) > _BESIDE:
            sides[f"your {without_article(name)}"] = "right" if across > 0 else "left"
    first, *rest = sorted(sides, key=unmarked) or ("",)
    if not first:
        return ""
    said = listed([f"{first} is on your {sides[first]}", *(f"{name} on your {sides[name]}" for name in rest)])
    turns = any(getattr(item, "hand_of", None) == job for item in told.setting.items.values())
    hand = next((one.hand for one in told.drill.jobs if one.letter == job), None)
    # For somebody of the other hand the sides are mirrored, and the card must not say what is then untrue.
    return f"{said}; {_OTHER_HAND[hand]}-handed: the other way round" if turns and hand is not None else said


_OTHER_HAND: Final = {"right": "left", "left": "right"}
