"""How much of the court each area is, for whoever sets a drill: its size, and its share of court, half and width."""

from __future__ import annotations

from typing import Final

from designer.drill.items import Area
from designer.play.shares import Share, shares
from designer.wording.counts import listed
from designer.wording.names import thing_name, without_article
from designer.wording.sentence import Sentence, ref, sentence, sentences_of
from designer.wording.telling import Telling
from designer.wording.units import Units

_SQUARE_FOOT: Final = 0.3048**2
_SPOT: Final = 0.01
"""What takes less of its half than this is a spot, not a part of the court."""
_OF: Final = ("of the singles court", "of its half", "of its width")


def share_line(told: Telling) -> tuple[Sentence, ...]:
    """Return what tells the size and the shares of every area that takes a part of the singles court.

    Areas alike, such as those of two players, are named once. () where there is none, and for a player, who lays out
    nothing. Shares are those inside the singles court; what lies outside it counts only to the size.
    """
    if told.brief:
        return ()
    said: dict[tuple[str, str, tuple[str, ...]], str] = {}
    for id in sorted(told.setting.items):
        item = told.setting.items[id]
        found = shares(told.ground, item) if isinstance(item, Area) else None
        if found is not None and _SPOT <= found.half.share < 1:
            name = thing_name(told, item) or "the area"
            parts = tuple(map(per_cent, (found.court, found.half, found.width)))
            said.setdefault((name, square(found.area, told.units), parts), id)
    if not said:
        return ()
    each: list[str] = []
    for (name, size, parts), id in sorted(said.items(), key=lambda one: without_article(one[0][0])):
        # What the shares are of is said with the first.
        told_of = parts if each else tuple(f"{part} {of}" for part, of in zip(parts, _OF, strict=True))
        each.append(f"{ref(id, name)} takes {size}: {listed(told_of)}")
    return (sentence("shares", sentences_of(*each)),)


def square(metres: float, units: Units = "rackets") -> str:
    """Return an area in words: "12.5 m²", "135 ft²"."""
    return f"{metres / _SQUARE_FOOT:.0f} ft²" if units == "feet" else f"{metres:.1f} m²"


def per_cent(share: Share) -> str:
    """Return a share in per cent to a tenth: "66.7 %", "50 %"."""
    return f"{share.per_cent:.1f}".removesuffix(".0") + "\N{NO-BREAK SPACE}%"
