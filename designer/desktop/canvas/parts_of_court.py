"""Parts of the court that become an area by one press: which ones lie under a point, the smallest painted one first."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from designer.court.regions import STRIDE, End, as_player, end_of, from_player, region_box, region_words
from designer.court.standards import Ground
from designer.desktop.canvas.bench import Bench
from designer.desktop.canvas.placing import fresh_id
from designer.drill.base import ON_THE_LINE, Point
from designer.drill.edits import put
from designer.drill.items import Area, Rectangle

Box = tuple[float, float, float, float]
"""(left, right, front, back) as the player at that end sees it."""

STRIP: Final = 2 * STRIDE
"""How deep a depth strip is: two strides, a third of the way from the service line to the baseline."""

NOT_BY_LINES: Final = ("middle four rackets", "between the service lines")
SAME: Final = {"deuce box", "ad box", "past the service line"}
"""Other words for a region that already has some."""


@dataclass(frozen=True, slots=True)
class CourtPart:
    """A rectangle of the court with its words; ``painted`` where painted lines are all its sides."""

    words: str
    corners: tuple[Point, Point]
    painted: bool

    @property
    def outline(self) -> tuple[Point, ...]:
        """The four corners, going round it."""
        (left, low), (right, high) = self.corners
        return ((left, low), (right, low), (right, high), (left, high))


def parts_at(ground: Ground, point: Point) -> tuple[CourtPart, ...]:
    """Return the parts of the court round ``point``: painted ones from the smallest on, then strips by depth.

    () where the point is on no part of the court.
    """
    end: End = end_of(point) or "near"
    right, away = as_player(point, end)
    painted: list[tuple[str, Box]] = []
    counted: list[tuple[str, Box]] = []
    for words in region_words(ground):
        box = region_box(ground, words)
        if box is None or words in SAME or not _inside(box, right, away):
            continue
        (counted if words in NOT_BY_LINES else painted).append((words, box))
    painted.sort(key=lambda named: (_size(named[1]), named[0]))
    named = [(words, box, True) for words, box in painted]
    named += [(words, box, False) for words, box in (*_strips(ground, right, away), *counted)]
    return tuple(CourtPart(words, _corners(box, end), by_lines) for words, box, by_lines in named)


def _strips(ground: Ground, right: float, away: float) -> list[tuple[str, Box]]:
    """Return the depth strip round a point of the back court, counted from the baseline."""
    back = ground.baseline
    front = ground.service_line if ground.service_line is not None else 0.0
    if abs(right) > ground.singles or not front <= away <= back:
        return []
    number = min(int((back - away) / STRIP), int((back - front) / STRIP + 0.01) - 1)
    if number < 0:
        return []
    words = ("depth strip at the baseline", "depth strip in the middle", "depth strip at the service line")
    name = words[number] if number < len(words) else "depth strip"
    return [(name, (-ground.singles, ground.singles, back - (number + 1) * STRIP, back - number * STRIP))]


def _inside(box: Box, right: float, away: float) -> bool:
    left, to, front, back = box
    near = ON_THE_LINE
    return left - near <= right <= to + near and front - near <= away <= back + near


def _size(box: Box) -> float:
    return round((box[1] - box[0]) * (box[3] - box[2]), 3)


def _corners(box: Box, end: End) -> tuple[Point, Point]:
    left, right, front, back = box
    (x0, y0), (x1, y1) = from_player(left, front, end), from_player(right, back, end)
    return (min(x0, x1), min(y0, y1)), (max(x0, x1), max(y0, y1))


def add_part(bench: Bench, part: CourtPart, *_: object) -> None:
    """Make a part of the court an area and pick it."""
    id = fresh_id(bench.drill, "area", bench.source)
    shape = Rectangle(form="rectangle", corners=part.corners)
    area = Area(kind="area", id=id, shape=shape, marked="painted" if part.painted else None)
    bench.perform(f"Add the {part.words}", put(bench.drill, bench.at, area), (id,))
