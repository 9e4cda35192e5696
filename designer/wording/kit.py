"""What has to be carried to the court, counted from the drawing."""

from __future__ import annotations

from collections import Counter

from designer.court.readings import reading
from designer.court.standards import Ground
from designer.drill.drill import Drill
from designer.drill.items import Area, Barrier, Basket, Line, Thing, Unknown
from designer.drill.places import corners_of
from designer.drill.setting import At
from designer.wording.counts import digits
from designer.wording.sentence import typeset, unmarked
from designer.wording.telling import Telling, telling
from designer.wording.tokens import own_text

_ORDER = ("flat disc", "cone", "flat hoop", "throw-down line", "barrier", "height cord", "ball machine", "basket")
_NOUN = {
    "disc": "flat disc",
    "hoop": "flat hoop",
    "cone": "cone",
    "ball machine": "ball machine",
    "height cord": "height cord",
}


def kit(drill: Drill, at: At) -> tuple[str, ...]:
    """Return the kit at ``at``: "10 flat discs", "basket", "chalk", then what the author adds."""
    return kit_of(telling(drill, at))


def kit_of(told: Telling) -> tuple[str, ...]:
    """Return the kit of a telling, counted; a thing at both ends counts twice."""
    own = [typeset(unmarked(own_text(told, text))).rstrip(".") for text in told.drill.kit]
    return (*counted(told), *(text for text in own if text))


def counted(told: Telling) -> tuple[str, ...]:
    """Return only what the drawing shows, counted."""
    count: Counter[str] = Counter()
    stuff: dict[str, None] = {}
    for item in told.setting.items.values():
        if isinstance(item, Unknown) or not isinstance(item, Thing):
            continue
        copies = 2 if item.both_ends else 1
        if isinstance(item, Line | Area):
            _marked(told, item, copies, count, stuff)
        elif isinstance(item, Barrier):
            count["barrier"] += copies
        elif isinstance(item, Basket):
            count["basket"] += copies
        elif item.kind in _NOUN:
            count[_NOUN[item.kind]] += copies
    things = [
        noun if count[noun] == 1 and noun in ("basket", "ball machine") else digits(count[noun], noun)
        for noun in _ORDER
        if count[noun]
    ]
    return (*things, *stuff)


def _marked(told: Telling, item: Line | Area, copies: int, count: Counter[str], stuff: dict[str, None]) -> None:
    if item.marked == "discs":
        pieces = line_pieces(item) if isinstance(item, Line) else corner_discs(told.ground, item)
        count["flat disc"] += copies * pieces
    elif item.marked == "throw-down":
        count["throw-down line"] += copies * ((item.pieces if isinstance(item, Line) else None) or 1)
    elif item.marked in ("chalk", "tape"):
        stuff[item.marked] = None


def is_carried(item: object) -> bool:
    """Whether a thing is carried to the court or drawn on it, not only thought of."""
    return not isinstance(item, Line | Area) or item.marked not in (None, "in thought", "painted")


def line_pieces(line: Line) -> int:
    """Return how many discs mark a line: as many as said, else one at each given point."""
    return line.pieces if line.pieces is not None else len(line.corners)


def corner_discs(ground: Ground, area: Area) -> int:
    """Return how many discs mark an area: one at each corner that is no painted crossing."""
    return sum(reading(ground, corner).crossing is None for corner in corners_of(area))
