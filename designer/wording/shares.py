"""How much of the court each area is, for whoever sets a drill: its size, and its share of court, half and width."""

from __future__ import annotations

from typing import Final

from designer.drill.items import Area
from designer.play.shares import Share, shares
from designer.wording.counts import listed
from designer.wording.names import thing_name, without_article
from designer.wording.sentence import Sentence, ref, sentence
from designer.wording.telling import Telling
from designer.wording.units import Units

_SQUARE_FOOT: Final = 0.3048**2
_SPOT: Final = 0.01
"""What takes less of its half than this is a spot, not a part of the court."""
_OF: Final = ("of the singles court", "of its half", "of its width")


def share_line(told: Telling) -> tuple[Sentence, ...]:
    """Return one sentence with the size and the shares of every area that takes a part of the singles court.

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
            name = without_article(thing_name(told, item) or "area")
            parts = tuple(map(per_cent, (found.court, found.half, found.width)))
            said.setdefault((name, square(found.area, told.units), parts), id)
    if not said:
        return ()
    if len(said) == 1:
        ((name, size, parts), id), *_ = said.items()
        words = ", ".join(f"{part} {of}" for part, of in zip(parts, _OF, strict=True))
        return (sentence("shares", f"{ref(id, name)}: {size}; {words}"),)
    each = (f"{ref(id, name)} {', '.join((size, *parts))}" for (name, size, parts), id in sorted(said.items()))
    return (sentence("shares", f"size, then share {listed(_OF)}: {'; '.join(each)}"),)


def square(metres: float, units: Units = "rackets") -> str:
    """Return an area in words: "12.5 m²", "135 ft²"."""
    return f"{metres / _SQUARE_FOOT:.0f} ft²" if units == "feet" else f"{metres:.1f} m²"


def per_cent(share: Share) -> str:
    """Return a share in per cent to a tenth: "66.7 %", "50 %"."""
    return f"{share.per_cent:.1f}".removesuffix(".0") + "\N{NO-BREAK SPACE}%"
