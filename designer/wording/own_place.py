"""Where the reader of a player's card stands."""

from __future__ import annotations

from typing import Final

from designer.drill.people import Spot
from designer.drill.places import locate
from designer.wording.layout import spot_words
from designer.wording.starts import is_all_mirrored, moves_over, other_court
from designer.wording.telling import Telling

_ACROSS: Final = 0.05
"""Nearer to the middle than this, in metres, nobody moves over for the other court."""


def own_place(told: Telling, spot: Spot) -> str:
    """Return where the reader stands; one of two moves over where it is served to both courts in turn."""
    place = spot_words(told, spot)
    if spot.care == "anywhere":
        return f"anywhere, for example {place}"
    point, every = locate(told.setting, spot.place), is_all_mirrored(told)
    across = point is not None and abs(point[0]) > _ACROSS
    if not moves_over(told, spot) or not (across or every):
        return place
    return f"{place}; {other_court(told)} side: {'all ' if every else ''}mirrored"
