"""Lines that are laid on the court, by how they are marked."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Final

from designer.drawing import kit
from designer.drawing.geometry import Route, ahead, unit_vector
from designer.drawing.pen import Pen
from designer.drawing.primitives import Path, Point, Primitive

IN_THOUGHT: Final = (5.0, 4.0)


def line(pen: Pen, corners: Sequence[Point], marked: str) -> Iterator[Primitive]:
    """Yield a line through ``corners`` as it is marked; one whose marking is not known is drawn in thought."""
    draw = {"painted": _painted, "throw-down": _throw_down, "chalk": _chalk, "tape": _tape, "discs": _hairline}
    yield from draw.get(marked, in_thought)(pen, tuple(corners))


def pieces(pen: Pen, sides: Sequence[tuple[Point, Point]], marked: str) -> Iterator[Primitive]:
    """Yield several separate lines, each marked alike."""
    for side in sides:
        yield from line(pen, side, marked)


def in_thought(pen: Pen, corners: Sequence[Point]) -> Iterator[Primitive]:
    """Yield a line that nobody marks; also what runs on from any other."""
    yield Path(tuple(corners), pen.style("ink", 0.7, IN_THOUGHT))


def ways_in_thought(pen: Pen, ways: Sequence[tuple[Point, Point]]) -> Iterator[Primitive]:
    """Yield the ways on which a line runs on."""
    for way in ways:
        yield from in_thought(pen, way)


def discs_along(corners: Sequence[Point], pieces: int | None) -> tuple[Point, ...]:
    """Return where the discs of a line stand: ``pieces`` evenly along a line of two corners, else one at each corner."""
    if pieces is None or len(corners) != 2 or pieces < 3:
        return tuple(corners)
    route = Route(corners)
    return tuple(route.at(route.length * index / (pieces - 1)) for index in range(pieces))


def _painted(pen: Pen, corners: tuple[Point, ...]) -> Iterator[Primitive]:
    yield Path(corners, pen.style("court line", 1.0))


def _throw_down(pen: Pen, corners: tuple[Point, ...]) -> Iterator[Primitive]:
    yield from pen.route(corners, pen.style("ink", 2.8, (9, 1.5)))


def _chalk(pen: Pen, corners: tuple[Point, ...]) -> Iterator[Primitive]:
    bars = []
    for end, other in ((corners[0], corners[1]), (corners[-1], corners[-2])):
        inward = unit_vector(end, other)
        middle = ahead(end, inward, 0.65 * pen.unit)
        bars.append((ahead(middle, inward, 0.0, 3.1 * pen.unit), ahead(middle, inward, 0.0, -3.1 * pen.unit)))
    # All casing first: on a tick the bars stand so close that one would cut the other free.
    yield from (Path(bar, pen.style(pen.casing_role(bar[0]), 1.3 + 1.4)) for bar in bars)
    yield from pen.route(corners, pen.style("ink", 2.2))
    yield from (Path(bar, pen.style("ink", 1.3)) for bar in bars)


def _tape(pen: Pen, corners: tuple[Point, ...]) -> Iterator[Primitive]:
    half = (2.9 - 0.65) / 2 * pen.unit
    left, right = [], []
    for index, corner in enumerate(corners):
        before, after = corners[max(index - 1, 0)], corners[min(index + 1, len(corners) - 1)]
        direction = unit_vector(before, after)
        left.append(ahead(corner, direction, 0.0, half))
        right.append(ahead(corner, direction, 0.0, -half))
    yield from pen.cased((*left, *reversed(right)), pen.style("ink", 0.65, fill="paper"))


def _hairline(pen: Pen, corners: tuple[Point, ...]) -> Iterator[Primitive]:
    yield Path(corners, pen.style("ink", 0.6, (0.6, 2)))


def discs(pen: Pen, places: Sequence[Point]) -> Iterator[Primitive]:
    """Yield a disc at each of ``places``."""
    for place in places:
        yield from kit.disc(pen, place)
