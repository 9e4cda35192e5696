"""How large things on the court are, how much of it they take, and how many pieces mark them, as a hand is told."""

from __future__ import annotations

import itertools
import math
from collections.abc import Sequence
from typing import Any, Final

from designer.court.readings import RACKET
from designer.court.standards import Ground
from designer.desktop.view import Units
from designer.drill.base import Point
from designer.drill.items import Area, Line, Marked, Obstacle
from designer.drill.places import corners_of
from designer.play.shares import line_shares, shares
from designer.wording.counts import digits
from designer.wording.kit import corner_discs, laid_along, line_pieces, throw_down_lines
from designer.wording.units import distance

DISCS_APART: Final = 3 * RACKET
"""Discs of one line stand no farther apart than this, one at each end. Common practice, no source."""

LONG: Final = 2.0
"""A line along the court that is shorter than this, in metres, is a tick and divides nothing."""


def length_of(corners: Sequence[Point]) -> float:
    """Return the length in metres of a line through ``corners``."""
    return sum(math.dist(one, other) for one, other in itertools.pairwise(corners))


def pieces_needed(corners: Sequence[Point], marked: Marked | None) -> int | None:
    """Return how many discs or throw-down lines mark a line, None for what is not laid piece by piece."""
    length = length_of(corners)
    if marked == "discs":
        return max(len(corners), math.ceil(length / DISCS_APART - 0.01) + 1)
    if marked == "throw-down":
        return laid_along(corners)
    return None


def size_words(ground: Ground, record: Any, units: Units) -> str:
    """Return how large a thing is that can be pulled larger: "2 rackets wide, 3 strides deep"; else "".

    With it come the share of the singles court, of its half and of the width, and the discs that it takes.
    """
    corners = corners_of(record)
    if len(corners) < 2:
        return ""
    if isinstance(record, Area | Obstacle):
        return ", ".join(_of_area(ground, record, corners, units))
    across, along = [x for x, _ in corners], [y for _, y in corners]
    level = max(across) - min(across) > max(along) - min(along)
    words = [f"{distance(length_of(corners), 'across' if level else 'along', units)} long"]
    if isinstance(record, Line):
        words += _of_line(ground, record)
    return ", ".join(words)


def _of_area(ground: Ground, record: Area | Obstacle, corners: tuple[Point, ...], units: Units) -> list[str]:
    across, along = [x for x, _ in corners], [y for _, y in corners]
    words = [
        f"{distance(max(across) - min(across), 'across', units)} wide",
        f"{distance(max(along) - min(along), 'along', units)} deep",
    ]
    if isinstance(record, Obstacle):
        return words
    found = shares(ground, record)
    if found is not None and found.half.share > 0.004:
        court, half, width = (per_cent(each.share) for each in (found.court, found.half, found.width))
        words.append(f"{court} of the court, {half} of its half, {width} of its width")
    if record.marked == "throw-down":
        words.append(digits(throw_down_lines(ground, record), "throw-down line"))
    discs = corner_discs(ground, record) if record.marked == "discs" else 0
    if discs:
        words.append(digits(discs, "disc"))
    return words


def _of_line(ground: Ground, line: Line) -> list[str]:
    words = []
    if line.marked == "discs":
        words.append(digits(line_pieces(line), "disc"))
    elif line.marked == "throw-down":
        words.append(digits(throw_down_lines(ground, line), "throw-down line"))
    elif line.marked is None:
        laid, discs = (pieces_needed(line.corners, marked) or 1 for marked in ("throw-down", "discs"))
        words.append(f"{digits(laid, 'throw-down line')} or {digits(discs, 'disc')}")
    if line.runs_on:
        words.append("imagined longer at both ends")
    parted = line_shares(ground, line) if length_of(line.corners) >= LONG else None
    if parted is not None and min(side.half.share for side in parted) > 0.004:
        left, right = (per_cent(side.half.share) for side in parted)
        words.append(f"{left} of the half left of it, {right} right")
    return words


def per_cent(share: float) -> str:
    """Return a share of 0 to 1 in words: "37 %"."""
    return f"{share * 100:.0f}\N{NO-BREAK SPACE}%"
