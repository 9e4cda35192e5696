"""What a picture is made of: a few shapes in metres, each with a style that names colours by their role.

Axes are those of the page: x to the right, y up, the origin at the middle of the net. On an upright page that is not
turned they are the court's own axes; `page.Page` converts between the two. Letters stand upright on the page.
"""

from __future__ import annotations

import math
from collections.abc import Iterable
from dataclasses import dataclass
from enum import IntEnum
from typing import Literal

Point = tuple[float, float]
Bounds = tuple[float, float, float, float]
"""(left, low, right, high) in metres."""

Align = Literal["left", "middle", "right"]
Cap = Literal["butt", "round"]


class Layer(IntEnum):
    """The order of marks from below. HALO is left free for what a screen lays under a picked mark."""

    GROUND = 0
    AREAS = 1
    COURT = 2
    LINES = 3
    HALO = 4
    RUNS = 5
    FAN = 6
    FEEDS = 7
    BALLS = 8
    KIT = 9
    PEOPLE = 10
    HEADS = 11
    DIGITS = 12
    WORDS = 13


@dataclass(frozen=True, slots=True)
class Style:
    """How a shape is drawn: colours by role (see `themes`), stroke and dashes in metres. No stroke where width is 0."""

    stroke: str | None = None
    width: float = 0.0
    dash: tuple[float, ...] = ()
    cap: Cap = "butt"
    fill: str | None = None


@dataclass(frozen=True, slots=True)
class Path:
    """A line through ``points``. Where ``curved``, points are a start, then (control, control, end) for each curve."""

    points: tuple[Point, ...]
    style: Style
    closed: bool = False
    curved: bool = False


@dataclass(frozen=True, slots=True)
class Strokes:
    """Many separate straight strokes of one style, as in a hatch."""

    lines: tuple[tuple[Point, Point], ...]
    style: Style


@dataclass(frozen=True, slots=True)
class Dots:
    """Many filled dots of one radius in metres."""

    centres: tuple[Point, ...]
    radius: float
    style: Style


@dataclass(frozen=True, slots=True)
class Ellipse:
    """An ellipse round ``centre``; ``turn`` is in degrees against the clock."""

    centre: Point
    radii: tuple[float, float]
    style: Style
    turn: float = 0.0


@dataclass(frozen=True, slots=True)
class Words:
    """One line of upright text. ``at`` is on its baseline: at its left end, middle or right end. ``size`` is the em, in metres."""

    text: str
    at: Point
    size: float
    colour: str
    bold: bool = False
    align: Align = "left"


Primitive = Path | Strokes | Dots | Ellipse | Words


@dataclass(frozen=True, slots=True)
class Mark:
    """One mark on the picture. ``id`` is the record it stands for (None for the court's own marks).

    ``kind`` is its class. One record may have several marks: (id, kind, part) is unique on a picture. Marks compare by value, so a screen redraws
    only those that differ. ``bounds`` is the smallest upright rectangle round its ink and casing, in metres.
    """

    id: str | None
    kind: str
    layer: int
    primitives: tuple[Primitive, ...]
    bounds: Bounds
    part: str = ""

    @property
    def key(self) -> tuple[str | None, str, str]:
        """Return what tells this mark from every other of its picture."""
        return (self.id, self.kind, self.part)


def mark(id: str | None, kind: str, layer: Layer, primitives: Iterable[Primitive], part: str = "") -> Mark:
    """Return the mark of ``primitives`` with its bounds."""
    shapes = tuple(primitives)
    return Mark(id, kind, int(layer), shapes, bounds_of(shapes), part)


def bounds_of(primitives: Iterable[Primitive]) -> Bounds:
    """Return the smallest upright rectangle round all ink of ``primitives``; (0, 0, 0, 0) where there is none."""
    boxes = [_bounds(primitive) for primitive in primitives]
    if not boxes:
        return (0.0, 0.0, 0.0, 0.0)
    return (
        min(box[0] for box in boxes),
        min(box[1] for box in boxes),
        max(box[2] for box in boxes),
        max(box[3] for box in boxes),
    )


def _bounds(shape: Primitive) -> Bounds:
    if isinstance(shape, Words):
        return words_bounds(shape)
    half = shape.style.width / 2 if shape.style.stroke else 0.0
    if isinstance(shape, Ellipse):
        turn = math.radians(shape.turn)
        across = math.hypot(shape.radii[0] * math.cos(turn), shape.radii[1] * math.sin(turn)) + half
        along = math.hypot(shape.radii[0] * math.sin(turn), shape.radii[1] * math.cos(turn)) + half
        x, y = shape.centre
        return (x - across, y - along, x + across, y + along)
    if isinstance(shape, Dots):
        points, half = shape.centres, half + shape.radius
    elif isinstance(shape, Strokes):
        points = tuple(point for line in shape.lines for point in line)
    else:
        points = shape.points
    if not points:
        return (0.0, 0.0, 0.0, 0.0)
    across_all = [x for x, _ in points]
    along_all = [y for _, y in points]
    return (min(across_all) - half, min(along_all) - half, max(across_all) + half, max(along_all) + half)


def words_bounds(words: Words) -> Bounds:
    """Return the box of one line of text from its descenders to the top of its tallest letters."""
    from designer.drawing.words import text_width

    width = text_width(words.text, words.size, words.bold)
    left = words.at[0] - {"left": 0.0, "middle": width / 2, "right": width}[words.align]
    return (left, words.at[1] - 0.22 * words.size, left + width, words.at[1] + 0.76 * words.size)
