"""A sample of each class of mark, by the marks' own code: for legends, for the bullets of steps and for the tools' icons."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import replace
from functools import lru_cache
from typing import Final

from designer.drawing import areas, balls, kit, lines, people
from designer.drawing.geometry import Route, rectangle
from designer.drawing.legend import LegendEntry
from designer.drawing.pen import DASH, Pen
from designer.drawing.primitives import Dots, Ellipse, Path, Point, Primitive, Strokes, Style
from designer.drawing.themes import Theme
from designer.drawing.words import in_bundled_faces

WIDTH: Final = 22.0
"""How wide a sample is, in u. It begins at (0, 0) and lies along that height; what is no line is centred in it."""

Draw = Callable[[Pen, str], Iterator[Primitive]]
UP: Final = (0.0, 1.0)


def sample(kind: str, theme: Theme, unit: float, text: str = "") -> tuple[Primitive, ...]:
    """Return a sample of ``kind``: 22 u wide from (0, 0) to the right, centred on the height 0.

    ``unit`` is the unit of the result's lengths a mark unit; ``text`` is a tag's digit, a person's letter, an area's words.
    Raises ``KeyError`` for a kind that has no sample.
    """
    return _sample(kind, theme.switched, unit, text)


@lru_cache(maxsize=512)
@in_bundled_faces
def _sample(kind: str, switched: bool, unit: float, text: str) -> tuple[Primitive, ...]:  # noqa: FBT001 - a cache key
    return tuple(_DRAW[kind](Pen(unit, switched=switched), text))


def kinds() -> tuple[str, ...]:
    """Return every kind that has a sample."""
    return tuple(_DRAW)


@in_bundled_faces
def legend_shapes(
    entries: Sequence[LegendEntry], theme: Theme, unit: float, *, columns: int, column_width: float, pitch: float = 13.0
) -> tuple[tuple[Primitive, ...], float]:
    """Return the legend drawn with its upper left corner at (0, 0), filled column by column, and its height.

    ``column_width`` and the result are in the unit that ``unit`` gives a mark unit in; ``pitch`` is u from row to row.
    """
    rows = -(-len(entries) // columns) if entries else 0
    shapes: list[Primitive] = []
    pen = Pen(unit)
    for number, entry in enumerate(entries):
        column, row = divmod(number, rows)
        corner = (column * column_width, -(row + 0.5) * pitch * unit)
        shapes += (shifted(shape, corner) for shape in sample(entry.kind, theme, unit))
        at = (corner[0] + (WIDTH + 4.5) * unit, corner[1])
        shapes.append(pen.words(entry.words, at, 9.0, "ink", align="left"))
    return tuple(shapes), rows * pitch * unit


def shifted(shape: Primitive, by: Point) -> Primitive:
    """Return ``shape`` moved by ``by``."""

    def moved(point: Point) -> Point:
        return (point[0] + by[0], point[1] + by[1])

    if isinstance(shape, Path):
        return replace(shape, points=tuple(map(moved, shape.points)))
    if isinstance(shape, Strokes):
        return replace(shape, lines=tuple((moved(start), moved(end)) for start, end in shape.lines))
    if isinstance(shape, Dots):
        return replace(shape, centres=tuple(map(moved, shape.centres)))
    if isinstance(shape, Ellipse):
        return replace(shape, centre=moved(shape.centre))
    return replace(shape, at=moved(shape.at))


def _level(pen: Pen, *, end: float = WIDTH) -> tuple[Point, Point]:
    return ((0.0, 0.0), (end * pen.unit, 0.0))


def _middle(pen: Pen) -> Point:
    return (WIDTH / 2 * pen.unit, 0.0)


def _ball(pen: Pen, kind: str, begin: float = 0.0) -> Iterator[Primitive]:
    route = Route(((begin * pen.unit, 0.0), ((WIDTH + balls.GAP) * pen.unit, 0.0)))
    yield from balls.shaft(pen, route, kind)
    yield from balls.head(pen, route, kind)
    if kind == "feed":
        yield from balls.ring(pen, route.at(0.0))


def _fan(pen: Pen, _: str) -> Iterator[Primitive]:
    for rise in (5.4, 0.0, -5.4):
        route = Route(((0.0, 0.0), ((WIDTH + balls.GAP) * pen.unit, rise * pen.unit)))
        yield from balls.shaft(pen, route, "fan")
        yield from balls.head(pen, route, "fan")


def _contact(pen: Pen, _: str) -> Iterator[Primitive]:
    yield Path(((1.2 * pen.unit, 0.0), (WIDTH * pen.unit, 0.0)), pen.style("ball", 1.6, DASH if pen.switched else ()))
    yield from balls.contact(pen, (1.2 * pen.unit, 0.0), (1.0, 0.0))


def _recovery(pen: Pen, _: str) -> Iterator[Primitive]:
    yield from balls.recovery(pen, Route(_level(pen, end=WIDTH - 3.5)), UP)


def _open(pen: Pen, text: str) -> Iterator[Primitive]:
    words = text or "open"
    centre = (balls.flag_width(words) / 2 * pen.unit, 0.0)
    yield Path(rectangle(balls.flag_box(pen, centre, words)), Style(fill="ink"), closed=True)
    yield pen.words(words, centre, balls.FLAG_TEXT, "paper", bold=True)


def _person(look: people.Look, hand: str = "right") -> Draw:
    def draw(pen: Pen, text: str) -> Iterator[Primitive]:
        nose = (_middle(pen)[0], (people.RADIUS + people.NOSE - 1.0) * pen.unit)
        yield from people.person(pen, nose, UP, text or ("C" if look == "coach" else "A"), hand=hand, look=look)

    return draw


def _area(look: areas.Look) -> Draw:
    def draw(pen: Pen, _: str) -> Iterator[Primitive]:
        u = pen.unit
        outline = rectangle((0.8 * u, -5.4 * u, (WIDTH - 0.8) * u, 5.4 * u))
        yield from areas.inside(pen, outline, look)
        yield from areas.edge(pen, outline, look)

    return draw


def _line(marked: str) -> Draw:
    return lambda pen, _: lines.line(pen, _level(pen), marked)


def _discs(pen: Pen, _: str) -> Iterator[Primitive]:
    ends = ((3.0 * pen.unit, 0.0), ((WIDTH - 3.0) * pen.unit, 0.0))
    yield from lines.line(pen, ends, "discs")
    yield from lines.discs(pen, ends)


def _obstacle(pen: Pen, _: str) -> Iterator[Primitive]:
    u = pen.unit
    yield from kit.obstacle(pen, rectangle((2 * u, -4 * u, (WIDTH - 2) * u, 4 * u)))


def _cord(pen: Pen, _: str) -> Iterator[Primitive]:
    u = pen.unit
    start, end = (2.0 * u, -kit.CORD_ASIDE * u), ((WIDTH - 2.0) * u, -kit.CORD_ASIDE * u)
    yield from kit.height_cord(pen, start, end, UP)


def _machine(pen: Pen, text: str) -> Iterator[Primitive]:
    yield from kit.ball_machine(pen, (_middle(pen)[0] - 1.5 * pen.unit, 0.0), (1.0, 0.0), text or "M")


def _hoop(pen: Pen, _: str) -> Iterator[Primitive]:
    yield from kit.hoop(pen, _middle(pen), 0.0)


_DRAW: Final[dict[str, Draw]] = {
    "ball path": lambda pen, _: _ball(pen, "ball path"),
    "feed": lambda pen, _: _ball(pen, "feed", 2.6),
    "fan": _fan,
    "bounce": lambda pen, _: balls.bounce(pen, _middle(pen)),
    "contact": _contact,
    "run": lambda pen, _: balls.run(pen, Route(_level(pen))),
    "recovery run": _recovery,
    "open flag": _open,
    "person": _person("plain"),
    "left-hander": _person("plain", "left"),
    "you": _person("you"),
    "coach": _person("coach"),
    "waits": lambda pen, text: people.waiting(pen, _middle(pen), text or "D"),
    "step digit": lambda pen, text: balls.tag(pen, _middle(pen), text or "2", feed=False),
    "feed digit": lambda pen, text: balls.tag(pen, _middle(pen), text or "1", feed=True),
    "choice": lambda pen, text: balls.pill(pen, _middle(pen), text or "or"),
    "basket": lambda pen, _: kit.basket(pen, _middle(pen)),
    "ball machine": _machine,
    "cone": lambda pen, _: kit.cone(pen, _middle(pen)),
    "disc": lambda pen, _: kit.disc(pen, _middle(pen)),
    "hoop": _hoop,
    "painted line": _line("painted"),
    "throw-down line": _line("throw-down"),
    "chalk line": _line("chalk"),
    "tape line": _line("tape"),
    "line of discs": _discs,
    "line in thought": _line("in thought"),
    "barrier": lambda pen, _: kit.barrier(pen, _level(pen)),
    "obstacle": _obstacle,
    "height cord": _cord,
    "target area": _area("target"),
    "rule area": _area("rule"),
    "paid area": _area("paid"),
    "keep out area": _area("keep out"),
    "feed area": _area("feed"),
    "share": lambda pen, text: iter((pen.words(text or "60 %", _middle(pen), 9.0, "ball", bold=True),)),
}
