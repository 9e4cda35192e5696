"""Where digits and words go: a greedy search with a cost, so that none covers a head, a bounce or another word.

The search looks at nothing but numbers, takes things in the order they come and prefers the first of equals: the same drill
gives the same picture.
"""

from __future__ import annotations

import itertools
import math
from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field
from typing import Final, TypeVar

from designer.drawing.geometry import grown, inside_box, overlap, point_to_piece
from designer.drawing.primitives import Bounds, Point

Payload = TypeVar("Payload")

FORBIDDEN: Final = 1000.0
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


@dataclass(slots=True)
class Space:
    """What is on the picture so far. Boxes and pieces lie in square cells, so that a search looks only round itself."""

    unit: float
    extent: Bounds
    cell: float = 0.0
    boxes: dict[tuple[int, int], list[Taken]] = field(default_factory=dict)
    pieces: dict[tuple[int, int], list[Piece]] = field(default_factory=dict)

    def __post_init__(self) -> None:
        self.cell = 24 * self.unit

    def _cells(self, box: Bounds) -> Iterator[tuple[int, int]]:
        left, low, right, high = (math.floor(value / self.cell) for value in box)
        for column in range(left, right + 1):
            for row in range(low, high + 1):
                yield column, row

    def take(self, box: Bounds, cost: float = FORBIDDEN, owner: str = "") -> None:
        """Note that ``box`` is taken."""
        taken = Taken(box, cost, owner)
        for cell in self._cells(box):
            self.boxes.setdefault(cell, []).append(taken)

    def cross(self, points: Iterable[Point], cost: float, owner: str = "") -> None:
        """Note a line through ``points``; covering one u of it costs ``cost``."""
        chain = list(points)
        for start, end in itertools.pairwise(chain):
            piece = Piece(start, end, cost, owner)
            for cell in self._along(start, end):
                self.pieces.setdefault(cell, []).append(piece)

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
        """Yield each taken box that may touch ``box``, once."""
        seen: set[int] = set()
        for cell in self._cells(box):
            for taken in self.boxes.get(cell, ()):
                if id(taken) not in seen:
                    seen.add(id(taken))
                    yield taken

    def near_pieces(self, box: Bounds) -> Iterator[Piece]:
        """Yield each piece that may run through ``box``, once."""
        seen: set[int] = set()
        for cell in self._cells(box):
            for piece in self.pieces.get(cell, ()):
                if id(piece) not in seen:
                    seen.add(id(piece))
                    yield piece

    def cost(self, box: Bounds, owner: str = "", limit: float = math.inf) -> float:
        """Return what it costs to lay something into ``box``; counting stops once ``limit`` is passed."""
        total = 0.0
        square = self.unit * self.unit
        for taken in self.near_boxes(box):
            if taken.owner and taken.owner == owner:
                continue
            shared = overlap(box, taken.box)
            if shared > 0:
                total += taken.cost * (0.2 + shared / square / 40)
                if total > limit:
                    return total
        for piece in self.near_pieces(box):
            if piece.owner and piece.owner == owner:
                continue
            total += piece.cost * inside_box(piece.start, piece.end, box) / self.unit
        left, low, right, high = self.extent
        outside = max(0.0, left - box[0]) + max(0.0, low - box[1]) + max(0.0, box[2] - right) + max(0.0, box[3] - high)
        return total + 400.0 * outside / self.unit

    def distance_to_pieces(self, at: Point, reach: float, owner: str) -> float:
        """Return the distance from ``at`` to the nearest ball or feet of another owner, at most ``reach`` metres."""
        box = grown((*at, *at), reach)
        found = [
            point_to_piece(at, piece.start, piece.end)
            for piece in self.near_pieces(box)
            if piece.cost >= PATH and piece.owner != owner
        ]
        return min([reach, *found])


PATH: Final = 6.0
"""Covering one u of a ball's or a person's way."""

PAINTED: Final = 0.5
"""Covering one u of a court line."""

HATCHED: Final = 0.04
"""Covering one square u of an area that is not one's own."""


def best(
    space: Space, choices: Iterable[tuple[Payload, Bounds, float]], owner: str = ""
) -> tuple[Payload, Bounds, float]:
    """Return the cheapest of ``choices``, each (what, its box, its own cost), and what it costs."""
    chosen: tuple[Payload, Bounds, float] | None = None
    for what, box, own in choices:
        if chosen is not None and own >= chosen[2]:
            continue
        limit = math.inf if chosen is None else chosen[2] - own
        total = own + space.cost(box, owner, limit)
        if chosen is None or total < chosen[2] - 1e-9:
            chosen = (what, box, total)
            if total == 0:
                break
    if chosen is None:
        raise ValueError("there is nothing to choose from")
    return chosen
