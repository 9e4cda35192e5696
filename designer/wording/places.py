"""Places of the court in words: from the nearest painted landmark, in at most two counts."""

from __future__ import annotations

from designer.court.readings import Offset, Reading, reading
from designer.court.regions import End
from designer.court.standards import Ground
from designer.drill.base import Letter, Point
from designer.wording.units import Units, distance

_BESIDE_BACK = ("the baseline",)


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
    return reading_words(reading(ground, point), units, owner=f"{owner}'s" if owner else None, exact=exact)


def reading_words(found: Reading, units: Units, *, owner: str | None = None, exact: bool = False) -> str:
    """Return a reading in words; ``owner`` is such as "B's" and is put to the first landmark."""
    if found.crossing is not None:
        return owned(found.crossing, owner)
    if found.half_way is not None:
        first, second = found.half_way
        return f"half-way between {owned(first, owner)} and {second}"
    across, along = found.across, found.along
    if across is None or along is None:
        return ""
    behind = _behind_the_mark(across, along, units, owner, exact=exact)
    if behind:
        return behind
    first = offset_words(across, "across", units, owner, exact=exact)
    own = None if across.line.startswith("the ") and owner and "line" in across.line else owner
    return f"{first}, {offset_words(along, 'along', units, own, exact=exact)}"


def _behind_the_mark(across: Offset, along: Offset, units: Units, owner: str | None, *, exact: bool) -> str:
    """Return "1 stride behind the centre mark" for a place straight behind it or inside it."""
    if across.direction != "on" or across.line != "the centre mark" or along.line != "the baseline":
        return ""
    count = distance(along.count_metres, "along", units, exact=exact)
    return f"{count} {'behind' if along.direction == 'behind' else 'inside'} {owned('the centre mark', owner)}"


def offset_words(offset: Offset, axis: str, units: Units, owner: str | None = None, *, exact: bool = False) -> str:
    """Return one count in words: "2 rackets in from the left singles line", "on the service line"."""
    line = owned(offset.line, owner)
    if offset.direction == "half-way" and offset.other is not None:
        return f"half-way between {line} and {offset.other}"
    if offset.direction == "on":
        return f"on {line}"
    count = distance(offset.count_metres, "across" if axis == "across" else "along", units, exact=exact)
    return f"{count} {offset.direction} {line}"


def owned(landmark: str, owner: str | None) -> str:
    """Return "B's left singles line" for "the left singles line"; what both ends share is nobody's."""
    if owner is None or landmark.startswith(("the net", "the middle of the net", "the T")):
        return landmark
    return f"{owner} {landmark.removeprefix('the ')}" if landmark.startswith("the ") else landmark


def end_words(end: End | None) -> str:
    """Return "at the near end"; "" for a place at the net."""
    return "" if end is None else f"at the {end} end"
