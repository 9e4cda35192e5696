"""Where digits and words go: a greedy search with a cost, so that none covers a head, a bounce or another word.

The search looks at nothing but numbers, takes things in the order they come and prefers the first of equals: the same drill
gives the same picture.
"""

from __future__ import annotations

import itertools
import math
from collections.abc import Callable, Container, Iterable, Iterator
from dataclasses import dataclass, field
from typing import Final, TypeVar

from designer.drawing.geometry import grown, inside_box, overlap, point_to_piece
from designer.drawing.primitives import Bounds, Point

Payload = TypeVar("Payload")
Held = TypeVar("Held")

FORBIDDEN: Final = 4000.0
"""The cost of covering a head, a bounce, a person, a digit or a word."""


@dataclass(frozen=True, slots=True)
class Piece:
    """A straight piece of something drawn, and what it costs to lay a word over one u of it."""

    start: Point
    end: Point
    cost: float
    owner: str = ""


@dataclass(frozen=True, slots=True)
class Taken:
    """A box that is taken. ``hard`` ones are not to be covered; ``owner`` may have words inside its own box."""

    box: Bounds
    cost: float = FORBIDDEN
    owner: str = ""


Cells = dict[tuple[int, int], list[tuple[float, float, float, float, Held]]]
"""By column and row of a cell: what lies in it, each with its box in front, which is looked at most."""


@dataclass(slots=True)
class Space:
    """What is on the picture so far. Boxes and pieces lie in square cells, so that a search looks only round itself."""

    unit: float
    extent: Bounds
    cell: float = 0.0
    boxes: Cells[Taken] = field(default_factory=dict)
    pieces: Cells[Piece] = field(default_factory=dict)
    idle: bool = False
    """Nothing will be searched for, so nothing is noted."""

    def __post_init__(self) -> None:
        self.cell = 40 * self.unit

    def _cells(self, box: Bounds) -> Iterator[tuple[int, int]]:
        left, low, right, high = (math.floor(value / self.cell) for value in box)
        for column in range(left, right + 1):
            for row in range(low, high + 1):
                yield column, row

    def take(self, box: Bounds, cost: float = FORBIDDEN, owner: str = "") -> None:
        """Note that ``box`` is taken."""
        if self.idle:
            return
        taken = Taken(box, cost, owner)
        for cell in self._cells(box):
            self.boxes.setdefault(cell, []).append((*box, taken))

    def release(self, owners: Container[str]) -> None:
        """Forget the boxes of these owners."""
        for cell, held in self.boxes.items():
            self.boxes[cell] = [one for one in held if one[4].owner not in owners]

    def cross(self, points: Iterable[Point], cost: float, owner: str = "") -> None:
        """Note a line through ``points``; covering one u of it costs ``cost``."""
        if self.idle:
            return
        chain = list(points)
        for start, end in itertools.pairwise(chain):
            piece = Piece(start, end, cost, owner)
            left, right = (start[0], end[0]) if start[0] < end[0] else (end[0], start[0])
            low, high = (start[1], end[1]) if start[1] < end[1] else (end[1], start[1])
            for cell in self._along(start, end):
                self.pieces.setdefault(cell, []).append((left, low, right, high, piece))

    def _along(self, start: Point, end: Point) -> Iterator[tuple[int, int]]:
        length = math.dist(start, end)
        steps = max(1, math.ceil(length / (self.cell / 2)))
        seen: set[tuple[int, int]] = set()
        for index in range(steps + 1):
            share = index / steps
            x, y = start[0] + (end[0] - start[0]) * share, start[1] + (end[1] - start[1]) * share
            cell = (math.floor(x / self.cell), math.floor(y / self.cell))
            if cell not in seen:
                seen.add(cell)
                yield cell

    def near_boxes(self, box: Bounds) -> Iterator[Taken]:
        """Yield each taken box that touches ``box``, once."""
        return _near(self.boxes, box, self.cell)

    def near_pieces(self, box: Bounds) -> Iterator[Piece]:
        """Yield each piece that may run through ``box``, once."""
        return _near(self.pieces, box, self.cell)

    def cost(self, box: Bounds, owner: str = "", limit: float = math.inf) -> float:
        """Return what it costs to lay something into ``box``; counting stops once ``limit`` is passed."""
        left, low, right, high = box
        edge = self.extent
        outside = max(0.0, edge[0] - left, right - edge[2]) + max(0.0, edge[1] - low, high - edge[3])
        total = 400.0 * outside / self.unit
        square = 40 * self.unit * self.unit
        for taken in self.near_boxes(box):
            other = taken.box
            width = min(right, other[2]) - max(left, other[0])
            height = min(high, other[3]) - max(low, other[1])
            if width > 0 and height > 0 and not (taken.owner and taken.owner == owner):
                total += taken.cost * (0.4 + width * height / square)
                if total > limit:
                    return total
        for piece in self.near_pieces(box):
            if piece.owner and piece.owner == owner:
                continue
            total += piece.cost * inside_box(piece.start, piece.end, box) / self.unit
            if total > limit:
                return total
        return total

    def cost_of_leader(self, start: Point, end: Point, owner: str = "") -> float:
        """Return what it costs to draw a leader from ``start`` to ``end``: it must not run over anything hard.

        Nor, where it can be helped, through an area that it does not belong to.
        """
        box = (min(start[0], end[0]), min(start[1], end[1]), max(start[0], end[0]), max(start[1], end[1]))
        total = math.dist(start, end) / self.unit * 0.1
        for taken in self.near_boxes(box):
            if taken.owner == owner or (taken.cost < FORBIDDEN and taken.cost != AREA):
                continue
            if inside_box(start, end, taken.box) > 0:
                total += FORBIDDEN / 8 if taken.cost >= FORBIDDEN else OTHER_AREA
        return total

    def is_bare(self, box: Bounds) -> bool:
        """Whether nothing at all lies under ``box``: words there need no casing."""
        taken = any(overlap(box, held.box) > 0 and held.owner not in UNSEEN for held in self.near_boxes(box))
        return not taken and all(inside_box(piece.start, piece.end, box) == 0 for piece in self.near_pieces(box))

    def distance_to_pieces(self, at: Point, reach: float, owner: str) -> float:
        """Return the distance from ``at`` to the nearest ball or feet of another owner, at most ``reach`` metres."""
        box = grown((*at, *at), reach)
        found = [
            point_to_piece(at, piece.start, piece.end)
            for piece in self.near_pieces(box)
            if piece.cost >= PATH and piece.owner != owner
        ]
        return min([reach, *found])


def _near(cells: Cells[Held], box: Bounds, size: float) -> Iterator[Held]:
    """Yield what lies in ``box``, in the order it is met: whoever has found enough stops there."""
    left, low, right, high = box
    met: set[int] = set()
    for column in range(int(left // size), int(right // size) + 1):
        for row in range(int(low // size), int(high // size) + 1):
            for x0, y0, x1, y1, held in cells.get((column, row), ()):
                if x0 <= right and x1 >= left and y0 <= high and y1 >= low and id(held) not in met:
                    met.add(id(held))
                    yield held


UNSEEN: Final = frozenset({"side words"})
"""Owners of boxes that only keep a place free: nothing is drawn there."""

PATH: Final = 3.0
"""Covering one u of a ball's or a person's way."""

PAINTED: Final = 0.4
"""Covering one u of a court line in play."""

OUT_OF_PLAY: Final = 0.2
"""Covering one u of a court line that is not in play."""

COURT: Final = "court"
ASIDE_OF_PLAY: Final = "court aside of play"
"""Owners of the painted lines in play and of the others."""

AREA: Final = 1.6
"""Covering some of an area."""


OTHER_AREA: Final = 60.0
"""What it costs a leader to run through an area of another name."""


def best(
    space: Space,
    choices: Iterable[tuple[Payload, Bounds, float]],
    owner: str = "",
    further: Callable[[Payload, Bounds], float] | None = None,
    beside: tuple[Payload, Bounds, float] | None = None,
) -> tuple[Payload, Bounds, float]:
    """Return the cheapest of ``choices``, each (what, its box, its own cost), with what it costs in all.

    ``further`` is a cost that is only asked for where a choice is the cheapest so far. ``beside`` is what an earlier
    search found: it stays unless something is cheaper. Raises ``ValueError`` where there is nothing to choose from.
    """
    chosen = beside
    for what, box, own in sorted(choices, key=_own_cost):
        limit = math.inf if chosen is None else chosen[2]
        if own >= limit:
            break
        total = own + space.cost(box, owner, limit - own)
        if further is not None and total < limit:
            total += further(what, box)
        if total < limit - 1e-9:
            chosen = (what, box, total)
    if chosen is None:
        raise ValueError("there is nothing to choose from")
    return chosen


def _own_cost(choice: tuple[object, Bounds, float]) -> float:
    return choice[2]
