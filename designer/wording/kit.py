"""What has to be carried to the court, counted from the drawing."""

from __future__ import annotations

import itertools
import math
from collections import Counter
from collections.abc import Sequence
from typing import Final

from designer.court.readings import reading
from designer.court.standards import Ground
from designer.drill.base import Point
from designer.drill.drill import Drill
from designer.drill.items import Area, Barrier, Basket, Line, Thing, Unknown
from designer.drill.places import corners_of
from designer.drill.setting import At
from designer.wording.counts import digits
from designer.wording.sentence import typeset, unmarked
from designer.wording.telling import Telling, telling
from designer.wording.tokens import own_text

THROW_DOWN_EVERY: Final = 1.2192
"""One throw-down line is laid every 4 ft: about 2 ft long, and as much left free. Common practice, no source."""

ON_A_LINE: Final = 0.03
"""A side so near to a painted line, in metres, needs nothing laid: most of a line's own width."""

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
        count["throw-down line"] += copies * throw_down_lines(told.ground, item)
    elif item.marked in ("chalk", "tape"):
        stuff[item.marked] = None


def is_carried(item: object) -> bool:
    """Whether a thing is carried to the court or drawn on it, not only thought of."""
    return not isinstance(item, Line | Area) or item.marked not in (None, "in thought", "painted")


def line_pieces(line: Line) -> int:
    """Return how many discs mark a line: as many as said, else one at each given point."""
    return line.pieces if line.pieces is not None else len(line.corners)


def throw_down_lines(ground: Ground, item: Line | Area) -> int:
    """Return how many throw-down lines mark a line, or the sides of an area that are not painted already; at least 1.

    As many as said, else one every 4 ft of each.
    """
    if isinstance(item, Line):
        return item.pieces or laid_along(item.corners)
    corners = corners_of(item)
    sides = zip(corners, (*corners[1:], *corners[:1]), strict=True)
    return max(1, sum(laid_along(side) for side in sides if not _is_painted(ground, *side)))


def laid_along(corners: Sequence[Point]) -> int:
    """Return how many throw-down lines a line through ``corners`` takes, at least 1."""
    length = sum(math.dist(one, other) for one, other in itertools.pairwise(corners))
    return max(1, math.ceil(length / THROW_DOWN_EVERY - 0.01))


def _is_painted(ground: Ground, start: Point, end: Point) -> bool:
    """Whether one painted line runs along all of the side from ``start`` to ``end``."""
    return any(all(_away(corner, line.start, line.end) < ON_A_LINE for corner in (start, end)) for line in ground.lines)


def _away(point: Point, start: Point, end: Point) -> float:
    """Return how far ``point`` is from the nearest place of the piece from ``start`` to ``end``, in metres."""
    across, along = end[0] - start[0], end[1] - start[1]
    length = across * across + along * along
    share = ((point[0] - start[0]) * across + (point[1] - start[1]) * along) / length if length else 0.0
    share = min(1.0, max(0.0, share))
    return math.dist(point, (start[0] + share * across, start[1] + share * along))


def corner_discs(ground: Ground, area: Area) -> int:
    """Return how many discs mark an area: one at each corner that is no painted crossing."""
    return sum(reading(ground, corner).crossing is None for corner in corners_of(area))
