"""The court's own marks: ground, lines in play and not, net, fence."""

from __future__ import annotations

import itertools
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import lru_cache
from typing import Final

from designer.court.regions import region
from designer.court.standards import Ground, Net, PaintedLine
from designer.drawing.geometry import between, contains, point_to_piece, rectangle
from designer.drawing.page import Page
from designer.drawing.pen import Pen
from designer.drawing.primitives import Bounds, Ellipse, Layer, Mark, Path, Point, Primitive, Style, mark

IN_PLAY: Final = 1.0
OUT_OF_PLAY: Final = 0.5
NEAR_ENOUGH: Final = 0.06
"""A line this near the edge of what is in play, in metres, belongs to it: lines are measured at their outer edges."""

Polygon = tuple[Point, ...]


def outline(ground: Ground) -> Polygon:
    """Return the corners of the court to its outermost lines."""
    return rectangle((-ground.outer, -ground.baseline, ground.outer, ground.baseline))


def fence(ground: Ground, page: Page) -> Bounds:
    """Return the rectangle of the fences on the page: court and run-off."""
    return fence_box(page, ground.side_fence, ground.back_fence)


def fence_box(page: Page, side: float, back: float) -> Bounds:
    """Return the rectangle on the page of fences ``side`` and ``back`` metres from the middle of the net."""
    one, other = page.to_page((-side, -back)), page.to_page((side, back))
    return (min(one[0], other[0]), min(one[1], other[1]), max(one[0], other[0]), max(one[1], other[1]))


def in_play_regions(ground: Ground, words: str | None) -> tuple[Polygon, ...]:
    """Return what is in play at both ends for a court region by its words; the singles court where there is none."""
    found = [region(ground, words or "singles court", end) for end in ("near", "far")]
    return tuple(polygon for polygon in found if polygon is not None)


@dataclass(frozen=True, slots=True)
class Floor:
    """What of a ground is drawn, as a value that can be a key; ``assumed`` is for the sides and for behind the baselines."""

    lines: tuple[PaintedLine, ...]
    host_lines: tuple[PaintedLine, ...]
    net: Net
    outline: Polygon
    fence: tuple[float, float]
    assumed: tuple[bool, bool]


def court_marks(ground: Ground, page: Page, pen: Pen, in_play: Sequence[Polygon]) -> tuple[Mark, ...]:
    """Return the marks of the bare court; ``in_play`` are the regions whose lines are drawn thick."""
    floor = Floor(
        ground.lines,
        ground.host_lines,
        ground.net,
        outline(ground),
        (ground.side_fence, ground.back_fence),
        (ground.assumed_side_run, ground.assumed_run_back),
    )
    return _court_marks(floor, page, pen, tuple(in_play))


@lru_cache(maxsize=64)
def _court_marks(ground: Floor, page: Page, pen: Pen, in_play: tuple[Polygon, ...]) -> tuple[Mark, ...]:
    def placed(points: Sequence[Point]) -> tuple[Point, ...]:
        return tuple(map(page.to_page, points))

    side, back = ground.fence
    box = fence_box(page, side, back)
    floor = [
        Path(rectangle(box), Style(fill="run-off"), closed=True),
        Path(placed(ground.outline), Style(fill="court"), closed=True),
    ]
    thick, thin = split_lines(ground.lines, in_play)
    thin += [line.as_tuple() for line in ground.host_lines]
    painted: list[Primitive] = [
        *(shape for line in thin for shape in court_line(pen, *placed(line), is_thick=False)),
        *(shape for line in thick for shape in court_line(pen, *placed(line), is_thick=True)),
    ]
    return (
        mark(None, "ground", Layer.GROUND, floor),
        mark(None, "fence", Layer.COURT, _fence(ground, page, pen)),
        mark(None, "court lines", Layer.COURT, painted),
        mark(None, "net", Layer.COURT, _net(ground, page, pen)),
    )


def _fence(ground: Floor, page: Page, pen: Pen) -> Iterator[Primitive]:
    side, back = ground.fence
    assumed_side, assumed_back = ground.assumed
    for assumed, lines in (
        (assumed_side, (((-side, -back), (-side, back)), ((side, -back), (side, back)))),
        (assumed_back, (((-side, -back), (side, -back)), ((-side, back), (side, back)))),
    ):
        for start, end in lines:
            yield from fence_line(pen, page.to_page(start), page.to_page(end), assumed=assumed)


def fence_line(pen: Pen, start: Point, end: Point, *, assumed: bool) -> Iterator[Primitive]:
    """Yield a side of the fence, broken where its distance from the court is only assumed."""
    yield Path((start, end), pen.style("fence", 0.4, (3, 2) if assumed else ()))


def court_line(pen: Pen, start: Point, end: Point, *, is_thick: bool) -> Iterator[Primitive]:
    """Yield a painted line, a thick one where it bounds or crosses what is in play."""
    yield Path((start, end), pen.style("court line", IN_PLAY if is_thick else OUT_OF_PLAY))


def _net(ground: Floor, page: Page, pen: Pen) -> Iterator[Primitive]:
    ends = [page.to_page((sign * ground.net.ends_x, 0.0)) for sign in (-1, 1)]
    yield Path(tuple(ends), pen.style("net", 1.8))
    supports = {ground.net.ends_x, ground.net.support_x}
    for x in sorted(supports):
        for sign in (-1, 1):
            centre = page.to_page((sign * x, 0.0))
            yield Ellipse(centre, (1.7 * pen.unit, 1.7 * pen.unit), Style(fill="net"))


def split_lines(
    lines: Sequence[PaintedLine], in_play: Sequence[Polygon]
) -> tuple[list[tuple[Point, Point]], list[tuple[Point, Point]]]:
    """Return the pieces of the painted lines that bound or cross what is in play, and the other pieces."""
    thick: list[tuple[Point, Point]] = []
    thin: list[tuple[Point, Point]] = []
    for line in lines:
        cuts = sorted({0.0, 1.0, *_cuts(line, in_play)})
        for low, high in itertools.pairwise(cuts):
            start, end = between(line.start, line.end, low), between(line.start, line.end, high)
            middle = between(start, end, 0.5)
            (thick if any(_touches(polygon, middle) for polygon in in_play) else thin).append((start, end))
    return _joined(thick), _joined(thin)


def _joined(pieces: list[tuple[Point, Point]]) -> list[tuple[Point, Point]]:
    """Return the pieces with those that go straight on in each other made one."""
    joined: list[tuple[Point, Point]] = []
    for start, end in pieces:
        if joined and joined[-1][1] == start and point_to_piece(start, joined[-1][0], end) < 1e-6:
            joined[-1] = (joined[-1][0], end)
        else:
            joined.append((start, end))
    return joined


def _cuts(line: PaintedLine, polygons: Sequence[Polygon]) -> Iterator[float]:
    """Yield where along ``line``, 0 to 1, it meets the level or upright of a corner of what is in play."""
    dx, dy = line.end[0] - line.start[0], line.end[1] - line.start[1]
    for polygon in polygons:
        for x, y in polygon:
            for step, value, start in ((dx, x, line.start[0]), (dy, y, line.start[1])):
                if abs(step) > 1e-9 and 1e-6 < (share := (value - start) / step) < 1 - 1e-6:
                    yield share


def _touches(polygon: Polygon, point: Point) -> bool:
    if contains(polygon, point):
        return True
    edges = zip(polygon, (*polygon[1:], polygon[0]), strict=True)
    return any(point_to_piece(point, *edge) <= NEAR_ENOUGH for edge in edges)
