"""Where the reader of a player's card stands."""

from __future__ import annotations

from typing import Final

from designer.drill.people import Spot
from designer.drill.places import locate
from designer.wording.layout import spot_words
from designer.wording.starts import other_court
from designer.wording.telling import Telling

_ACROSS: Final = 0.05
"""Nearer to the middle than this, in metres, nobody moves over for the other court."""


def own_place(told: Telling, spot: Spot) -> str:
    """Return where the reader stands; one of two moves over where it is served to both courts in turn."""
    place = spot_words(told, spot)
    if spot.care == "anywhere":
        return f"anywhere, for example {place}"
    point, other = locate(told.setting, spot.place), other_court(told)
    across = point is not None and abs(point[0]) > _ACROSS and spot.task == "plays" and len(told.playing) == 2
    return f"{place}; {other} side: mirrored" if other and across else place
