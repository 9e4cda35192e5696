"""Kit on the picture: baskets, machines, cones, discs, hoops, barriers, obstacles and the cord over the net."""

from __future__ import annotations

import itertools
from collections.abc import Iterator, Sequence
from typing import Final

from designer.drawing.geometry import Route, ahead, grown
from designer.drawing.pen import Pen
from designer.drawing.primitives import Dots, Ellipse, Path, Point, Primitive, Strokes, Style

CORD_ASIDE: Final = 4.2
"""How far beyond the net, in u, a cord over it is drawn."""


def basket(pen: Pen, at: Point) -> Iterator[Primitive]:
    """Yield a basket of balls."""
    yield from pen.box(at, 10.4 - 1.1, 10.4 - 1.1, 1.6, pen.style("ink", 1.1, fill="paper"))
    steps = (-2.9 * pen.unit, 0.0, 2.9 * pen.unit)
    yield Dots(tuple((at[0] + x, at[1] + y) for y in steps for x in steps), 0.95 * pen.unit, Style(fill="ink"))


def ball_machine(pen: Pen, at: Point, facing: Point, letter: str) -> Iterator[Primitive]:
    """Yield a machine that throws towards ``facing``, a unit vector of the page."""
    u = pen.unit
    back, front = ahead(at, facing, -6.6 * u), ahead(at, facing, 6.6 * u)
    wedge = (
        ahead(back, facing, 0.0, 7.8 * u),
        ahead(front, facing, 0.0, 4.2 * u),
        ahead(front, facing, 0.0, -4.2 * u),
        ahead(back, facing, 0.0, -7.8 * u),
    )
    yield from pen.cased(wedge, pen.style("ink", 1.6, fill="paper"))
    mouth = ahead(front, facing, 2.6 * u)
    ends = (ahead(mouth, facing, 0.0, 4.4 * u), ahead(mouth, facing, 0.0, -4.4 * u))
    yield Path(ends, pen.style(pen.casing_role(mouth), 4.0))
    yield Path(ends, pen.style("ink", 2.0))
    yield pen.words(letter, ahead(at, facing, -0.8 * u), 8.6, "ink", bold=True)


def cone(pen: Pen, at: Point) -> Iterator[Primitive]:
    """Yield a cone: a solid triangle with a band, on a foot."""
    x, y = at
    u = pen.unit
    low = y - 3.15 * u

    def half(above: float) -> float:
        return 3.7 * u * (7.5 - above) / 7.5

    body = ((x - 3.7 * u, low), (x + 3.7 * u, low), (x, low + 7.5 * u))
    foot = ((x - 4.9 * u, low - 1.2 * u), (x + 4.9 * u, low - 1.2 * u), (x + 4.9 * u, low), (x - 4.9 * u, low))
    band = tuple(
        (x + side * half(above), low + above * u) for side, above in ((-1, 2.6), (1, 2.6), (1, 3.7), (-1, 3.7))
    )
    role = pen.casing_role(at)
    for points in (body, foot):
        yield Path(points, Style(role, 2 * u, (), "round", role), closed=True)
    for points in (body, foot):
        yield Path(points, Style(fill="ink"), closed=True)
    yield Path(band, Style(fill="paper"), closed=True)


def disc(pen: Pen, at: Point) -> Iterator[Primitive]:
    """Yield a flat disc."""
    yield from pen.disc(at, 3.0 - 1.9 / 2, pen.style("ink", 1.9, fill="paper"))


def hoop(pen: Pen, at: Point, across: float) -> Iterator[Primitive]:
    """Yield a hoop of ``across`` metres, drawn at least 10 u wide: two rings."""
    u = pen.unit
    radius = max(across, 10 * u) / 2 - 0.35 * u
    role = pen.casing_role(at)
    yield Ellipse(at, (radius - 0.85 * u, radius - 0.85 * u), Style(role, 4.4 * u))
    yield Ellipse(at, (radius, radius), pen.style("ink", 0.7))
    yield Ellipse(at, (radius - 1.7 * u, radius - 1.7 * u), pen.style("ink", 0.7))


def barrier(pen: Pen, corners: Sequence[Point]) -> Iterator[Primitive]:
    """Yield a soft barrier: a line with rungs."""
    u = pen.unit
    yield Path(tuple(corners), Style(pen.casing_role(corners[0]), 8 * u))
    yield Path(tuple(corners), pen.style("ink", 1.5))
    rungs: list[tuple[Point, Point]] = []
    for start, end in itertools.pairwise(corners):
        route = Route((start, end))
        count = max(int(route.length / (5 * u)), 1)
        slack = (route.length - count * 5 * u) / 2
        for index in range(count + 1):
            at = route.at(slack + index * 5 * u)
            direction = route.heading(0.0)
            rungs.append((ahead(at, direction, 0.0, 3 * u), ahead(at, direction, 0.0, -3 * u)))
    yield Strokes(tuple(rungs), pen.style("ink", 1.1))


def obstacle(pen: Pen, corners: Sequence[Point]) -> Iterator[Primitive]:
    """Yield something that stands in the way: its true outline, filled; two corners are a wall or a post."""
    if len(corners) < 3:
        yield from pen.route(corners, pen.style("ink", 3.2))
        yield Path(tuple(corners), pen.style("obstacle", 1.0))
        return
    yield from pen.cased(corners, pen.style("ink", 1.3, fill="obstacle"))


def height_cord(pen: Pen, start: Point, end: Point, far: Point) -> Iterator[Primitive]:
    """Yield a cord over the net from ``start`` to ``end`` on the net, drawn on the side of ``far``, a unit vector."""
    ends = [ahead(point, far, CORD_ASIDE * pen.unit) for point in (start, end)]
    yield from pen.route(ends, pen.style("ink", 1.0, (7, 2, 1.2, 2)))
    for x, y in ends:
        box = grown((x, y, x, y), 1.5 * pen.unit)
        corners = ((box[0], box[1]), (box[2], box[1]), (box[2], box[3]), (box[0], box[3]))
        yield from pen.cased(corners, pen.style("ink", 1.0, fill="paper"))
