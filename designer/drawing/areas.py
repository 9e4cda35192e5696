"""Areas: an edge, a hatch at one angle of the page, and words. What an area means decides its look."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from typing import Final, Literal

from designer.drawing.geometry import Chain, Polygon, between, hatch, rectangle
from designer.drawing.pen import Pen
from designer.drawing.primitives import Bounds, Dots, Ellipse, Path, Point, Primitive, Strokes, Style

Look = Literal["target", "rule", "paid", "keep out", "feed"]
CORNERS: Final = 12
"""A shape of more corners than this is a round one."""

COLOURS: Final[dict[str, str]] = {
    "target": "target",
    "rule": "ink",
    "paid": "ink",
    "keep out": "ink",
    "feed": "ball",
}
LEAST_HATCHED: Final = 8.0
"""A shape narrower than this, in u, has no hatch: one or two strokes would say nothing."""


def inside(
    pen: Pen, outline: Polygon, look: Look, *, free: Sequence[Bounds] = (), empty: bool = False
) -> Iterator[Primitive]:
    """Yield an area's tint and hatch; the hatch keeps out of the boxes ``free``, an ``empty`` one has none."""
    outline = tuple(outline)
    yield Path(outline, Style(fill=f"{'rule' if look == 'paid' else look} tint"), closed=True)
    if not empty and _narrowest(outline) >= LEAST_HATCHED * pen.unit:
        yield from _hatched(pen, outline, look, tuple(map(rectangle, free)))


def edge(
    pen: Pen, outline: Polygon, look: Look, *, round_in: tuple[Point, tuple[float, float]] | None = None
) -> Iterator[Primitive]:
    """Yield an area's whole edge; ``round_in`` is (centre, radii) of an ellipse."""
    if look == "feed":
        yield Dots(tuple(_round(outline, 2.5 * pen.unit)), 1.15 / 2 * pen.unit, Style(fill="ball"))
    elif round_in is not None:
        yield Ellipse(*round_in, _edge_style(pen, look))
    else:
        yield Path(tuple(outline), _edge_style(pen, look), closed=True)


def sides(pen: Pen, pieces: Sequence[tuple[Point, Point]], look: Look) -> Iterator[Primitive]:
    """Yield some sides of an area in its own style."""
    for start, end in pieces:
        if look == "feed":
            yield Dots(tuple(_round((start, end), 2.5 * pen.unit)), 1.15 / 2 * pen.unit, Style(fill="ball"))
        else:
            yield Path((start, end), _edge_style(pen, look))


def _edge_style(pen: Pen, look: Look) -> Style:
    if look == "target":
        return pen.style("target", 1.3)
    if look == "paid":
        return pen.style("ink", 1.3, (9, 2.4, 2.4, 2.4))
    return pen.style("ink", 2.1) if look == "keep out" else pen.style("ink", 0.9, (6, 2.4))


def _hatched(pen: Pen, outline: tuple[Point, ...], look: str, holes: Sequence[Polygon]) -> Iterator[Primitive]:
    u = pen.unit
    if look == "target":
        yield _strokes(hatch(outline, 45, 3.8 * u, holes), pen.style("target", 0.55))
    elif look == "keep out":
        both = [*hatch(outline, 45, 6.4 * u, holes), *hatch(outline, 135, 6.4 * u, holes)]
        yield _strokes(both, pen.style("ink", 0.55))
    elif look == "feed":
        yield _strokes(hatch(outline, 0, 3.8 * u, holes), pen.style("ball", 0.6, (3, 2.2)))
    elif look == "paid":
        yield _strokes(hatch(outline, 90, 7.6 * u, holes), pen.style("ink", 0.55, (3, 3)))
    else:
        yield Dots(tuple(_grid(outline, 4.6 * u, holes)), 0.55 * u, Style(fill="ink"))


def _round(outline: Polygon, pitch: float) -> Iterator[Point]:
    """Yield points about ``pitch`` apart round a polygon, one at each corner; of a rounded one, evenly."""
    if len(outline) > CORNERS:
        ring = Chain((*outline, outline[0]))
        count = max(1, round(ring.length / pitch))
        yield from (ring.at(ring.length * index / count) for index in range(count))
        return
    for start, end in zip(outline, (*outline[1:], outline[0]), strict=True):
        count = max(1, round(math.dist(start, end) / pitch))
        yield from (between(start, end, index / count) for index in range(count))


def _strokes(lines: list[tuple[Point, Point]], style: Style) -> Strokes:
    return Strokes(tuple(lines), style)


def _grid(outline: tuple[Point, ...], pitch: float, holes: Sequence[Polygon]) -> Iterator[Point]:
    """Yield the points of a triangular grid of the page that lie inside ``outline`` and outside ``holes``."""
    rise = pitch * 0.8660254
    for start, end in hatch(outline, 0, rise, holes):
        offset = pitch / 2 if round(start[1] / rise) % 2 else 0.0
        first = -int(-(start[0] + pitch * 0.2 - offset) // pitch)
        x = first * pitch + offset
        while x <= end[0] - pitch * 0.2:
            yield (x, start[1])
            x += pitch


def _narrowest(outline: Polygon) -> float:
    across = [x for x, _ in outline]
    along = [y for _, y in outline]
    return min(max(across) - min(across), max(along) - min(along))
