"""Signs that people write in notes and Noto Sans lacks, drawn here: arrows, ticks and crosses, boxes, stars, less and more.

Lengths are units of an em of 1000; y points up from the base line.
"""

from __future__ import annotations

import math
from collections.abc import Iterator

from shapely import LineString, MultiPolygon, Point, Polygon, box, unary_union
from shapely.affinity import rotate, scale, translate
from shapely.geometry.base import BaseGeometry
from shapely.geometry.polygon import orient

AXIS = 340.0
"""Height of the middle of an arrow: half of a capital's, near enough, so that it points from word to word."""
SIDE = 80.0
"""White space at either side of a sign."""


def signs(stroke: float) -> dict[int, tuple[int, BaseGeometry]]:
    """Return (advance, outline) of each sign by its code point, lines being ``stroke`` wide."""
    return {ord(sign): _set(shape) for sign, shape in _shapes(stroke)}


def contours(shape: BaseGeometry) -> Iterator[list[tuple[int, int]]]:
    """Yield the closed contours of an outline, the outer ones clockwise as TrueType has them, without the point that closes."""
    for part in shape.geoms if isinstance(shape, MultiPolygon) else (shape,):
        turned = orient(part, -1.0)
        for ring in (turned.exterior, *turned.interiors):
            yield [(round(x), round(y)) for x, y in list(ring.coords)[:-1]]


def _set(shape: BaseGeometry) -> tuple[int, BaseGeometry]:
    left, _, right, _ = shape.bounds
    return round(right - left + 2 * SIDE), translate(shape, SIDE - left)


def _shapes(stroke: float) -> Iterator[tuple[str, BaseGeometry]]:
    right = _arrow(stroke)
    for turns, sign in enumerate("→↗↑↖←↙↓↘"):
        yield sign, rotate(right, 45 * turns, origin=(0, AXIS))
    both = unary_union([translate(right, 90), translate(scale(right, -1, origin=(0, AXIS)), -90)])
    yield "↔", both
    yield "↕", rotate(both, 90, origin=(0, AXIS))
    yield "⇒", _double_arrow(stroke)
    for ticks, crosses, wide in (("✓", "✗", 1.0), ("✔", "✘", 1.5)):
        yield ticks, _lines(stroke * wide, [(0, 280), (200, 50), (580, 660)])
        yield crosses, _lines(stroke * wide, [(0, 60), (520, 640)], [(0, 640), (520, 60)])
    square = box(0, 40, 600, 640)
    frame = square.difference(square.buffer(-stroke, join_style="mitre"))
    yield "■", square
    yield "□", frame
    yield "☐", frame
    yield "☑", unary_union([frame, _lines(stroke, [(150, 330), (270, 190), (460, 500)])])
    disc = Point(0, AXIS).buffer(300, quad_segs=12)
    yield "●", disc
    yield "○", disc.difference(disc.buffer(-stroke))
    up = Polygon([(0, 60), (640, 60), (320, 620)])
    yield "▲", up
    yield "△", up.difference(up.buffer(-stroke, join_style="mitre"))
    yield "►", Polygon([(0, 40), (0, 640), (560, AXIS)])
    star = _star()
    yield "★", star
    yield "☆", star.difference(star.buffer(-0.7 * stroke, join_style="mitre", mitre_limit=3))
    less = _lines(stroke, [(460, 640), (0, 400), (460, 160)])
    under = _lines(stroke, [(0, 40), (460, 40)])
    yield "≤", unary_union([less, under])
    yield "≥", unary_union([scale(less, -1, origin=(230, AXIS)), under])


def _arrow(stroke: float) -> Polygon:
    half, tip, neck, wing = stroke / 2, 400, 130, 200
    above = [(-400, half), (neck, half), (neck, wing), (tip, 0)]
    below = [(x, -y) for x, y in reversed(above[:-1])]
    return Polygon([(x, AXIS + y) for x, y in (*above, *below)])


def _double_arrow(stroke: float) -> BaseGeometry:
    bars = [LineString([(-400, AXIS + y), (260, AXIS + y)]).buffer(stroke / 2, cap_style="flat") for y in (90, -90)]
    head = _lines(stroke, [(140, AXIS + 240), (380, AXIS), (140, AXIS - 240)])
    return unary_union([*bars, head])


def _lines(stroke: float, *paths: list[tuple[float, float]]) -> BaseGeometry:
    drawn = (LineString(path).buffer(stroke / 2, cap_style="flat", join_style="mitre") for path in paths)
    return unary_union(list(drawn))


def _star() -> Polygon:
    corners = [
        (math.cos(angle) * reach, AXIS + math.sin(angle) * reach)
        for number in range(10)
        for angle, reach in [(math.pi / 2 + number * math.pi / 5, 360 if number % 2 == 0 else 145)]
    ]
    return Polygon(corners)
