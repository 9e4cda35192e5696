"""Places of the court in words: from the nearest painted landmark, in at most two counts."""

from __future__ import annotations

from dataclasses import replace
from typing import Final

from designer.court.readings import Offset, Reading, reading
from designer.court.regions import End, end_of
from designer.court.standards import Ground
from designer.drill.base import ON_THE_LINE, Letter, Point
from designer.wording.units import RACKET, Units, distance

_JUST: Final = 0.25
"""Nearer to a line than this, in metres, is "just behind" it: nobody counts a third of a racket."""
_AGAINST: Final = RACKET / 2
"""Nearer to a fence than this, in metres, is against it."""


def place_words(
    ground: Ground,
    point: Point,
    units: Units = "rackets",
    *,
    owner: Letter | None = None,
    exact: bool = False,
) -> str:
    """Return where ``point`` (metres) is: "2 rackets in from the left singles line, 1 stride inside the baseline".

    ``owner`` is who plays at that end: "B's left singles line". With ``exact``, a distance that is no whole count is
    given in metres.
    """
    return reading_words(_read(ground, point), units, owner=f"{owner}'s" if owner else None, exact=exact)


def _read(ground: Ground, point: Point) -> Reading:
    """Return the reading, from the middle where nothing is painted there and it is nearer than a sideline."""
    found = reading(ground, point)
    across = found.across
    painted = ground.centre_line or ground.standard.centre_mark is not None
    if painted or across is None or "singles line" not in across.line or across.direction != "in from":
        return found
    if abs(point[0]) > across.count_metres + ON_THE_LINE:
        return found
    right = (point[0] > 0) == (found.end != "far")
    return replace(found, across=Offset("the middle", abs(point[0]), "right of" if right else "left of"))


def standing_words(
    ground: Ground, point: Point, units: Units = "rackets", *, owner: str | None = None, exact: bool = False
) -> str:
    """Return where a person or a thing stands: as ``place_words``, with "on" before a crossing of lines."""
    found = _read(ground, point)
    words = reading_words(found, units, owner=owner, exact=exact)
    return f"on {words}" if found.crossing is not None else words


def reading_words(found: Reading, units: Units, *, owner: str | None = None, exact: bool = False) -> str:
    """Return a reading in words; ``owner`` is such as "B's" and is put to the first landmark."""
    if found.crossing is not None:
        return owned(found.crossing, owner)
    if found.half_way is not None:
        first, second = sorted(found.half_way, key=lambda crossing: crossing not in ("the T", "the centre mark"))
        # What belongs to neither end, such as the middle of the net, leaves it to the other to say whose it is.
        whose = owned(first, owner)
        return f"half-way between {whose} and {owned(second, owner) if whose == first else second}"
    across, along = found.across, found.along
    if across is None or along is None:
        return ""
    if across.line == "the centre mark" and along.line in ("the service line", "the net"):
        across = replace(across, line="the T")
    behind = _behind_a_mark(across, along, units, owner, exact=exact)
    if behind:
        return behind
    first = offset_words(across, "across", units, owner, exact=exact)
    beyond = "fence" in across.line or across.direction == "out from"
    own = None if owner is not None and owner in first else owner
    return f"{first}, {offset_words(along, 'along', units, own, exact=exact, beyond=beyond)}"


def _behind_a_mark(across: Offset, along: Offset, units: Units, owner: str | None, *, exact: bool) -> str:
    """Return "1 stride behind the centre mark", "2 strides behind the T" for a place straight behind it or before it."""
    if across.direction != "on" or along.direction not in ("behind", "inside"):
        return ""
    if (across.line, along.line) not in (("the centre mark", "the baseline"), ("the T", "the service line")):
        return ""
    return f"{_count(along, 'along', units, exact=exact)} {along.direction} {owned(across.line, owner)}"


def offset_words(
    offset: Offset,
    axis: str,
    units: Units,
    owner: str | None = None,
    *,
    exact: bool = False,
    beyond: bool = False,
) -> str:
    """Return one count in words: "2 rackets in from the left singles line", "on the service line".

    ``beyond``: the place lies beside the court, where a line is only level with it.
    """
    line = owned(offset.line, owner)
    if offset.direction == "half-way" and offset.other is not None:
        if {offset.line, offset.other} == {"the left singles line", "the right singles line"}:
            return "in the middle"
        return f"half-way between {line} and {offset.other}"
    if offset.direction == "on":
        return f"{'level with' if beyond else 'on'} {line}"
    if "fence" in offset.line and offset.count_metres <= _AGAINST:
        return f"against {line}"
    count = _count(offset, axis, units, exact=exact)
    # Nobody reads "6 in in from".
    direction = "inside" if offset.direction == "in from" and count.endswith(" in") else offset.direction
    return f"{count} {direction} {line}"


def _count(offset: Offset, axis: str, units: Units, *, exact: bool) -> str:
    if units == "rackets" and offset.count_metres < _JUST and not exact:
        return "just"
    return distance(offset.count_metres, "across" if axis == "across" else "along", units, exact=exact)


def end_seen(point: Point) -> End | None:
    """Return the end at which ``point`` is, None for a place on the net's own line, which is read from the near end."""
    return None if abs(point[1]) <= ON_THE_LINE else end_of(point)


def owned(landmark: str, owner: str | None) -> str:
    """Return "B's left singles line" for "the left singles line"; what both ends share is nobody's."""
    if landmark in ("the left side fence", "the right side fence"):
        side = landmark.split(" ", 2)[1]
        return f"the side fence on {owner} {side}" if owner is not None else landmark
    if owner is not None and landmark.startswith("the net at the "):
        return landmark.replace("at the ", f"at {owner} ", 1)
    if owner is None or not landmark.startswith("the ") or landmark.startswith(("the net", "the middle")):
        return landmark
    return f"{owner} {landmark.removeprefix('the ')}"
