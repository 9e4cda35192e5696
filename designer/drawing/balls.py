"""What the ball leaves on the picture: paths, feeds, fans, going on, bounces, contacts, digits and the open flag."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from designer.drawing.geometry import Route, ahead, rectangle, unit_vector
from designer.drawing.pen import DASH, Pen
from designer.drawing.primitives import Bounds, Dots, Ellipse, Path, Point, Primitive, Style
from designer.drawing.words import text_width

GAP: Final = 2.7
"""How far before the bounce a head ends, in u: its casing."""

HEAD: Final = (6.6, 5.2)
FAN_HEAD: Final = (5.1, 4.1)
TAG: Final = 9.8
TAG_TEXT: Final = 8.4
FLAG_HEIGHT: Final = 13.0
FLAG_TEXT: Final = 8.6
FLAG_REACH: Final = 4.4
"""How far from the bounce the flag's pointer ends, in u."""


def shaft(pen: Pen, route: Route, kind: str, begin: float = 0.0) -> Iterator[Primitive]:
    """Yield the line of a ball path, a feed or a branch of a fan, without its head; ``begin`` is metres along ``route``."""
    width, length = {"ball path": (1.6, HEAD[0]), "feed": (0.95, HEAD[0]), "fan": (0.75, FAN_HEAD[0])}[kind]
    start = begin + (2.1 + 0.95 / 2 if kind == "feed" else 0.0) * pen.unit
    end = route.length - (GAP + length - 0.4) * pen.unit
    if end <= start:
        return
    dash = DASH if pen.switched else ()
    yield from pen.route(route.cut(start, end), pen.style("ball", width, dash))


def ring(pen: Pen, at: Point) -> Iterator[Primitive]:
    """Yield the ring at the start of a feed."""
    yield Ellipse(at, (2.1 * pen.unit, 2.1 * pen.unit), pen.style("ball", 0.95, fill="paper"))


def head(pen: Pen, route: Route, kind: str) -> Iterator[Primitive]:
    """Yield the head at the end of a ball's way."""
    tip = route.at(max(route.length - GAP * pen.unit, 0.0))
    direction = route.heading(route.length)
    size = FAN_HEAD if kind == "fan" else HEAD
    if kind == "feed":
        yield from pen.cased(pen.head(tip, direction, *size), pen.style("ball", 0.95, cap="round", fill="paper"))
    else:
        yield from pen.cased(pen.head(tip, direction, *size), Style(fill="ball"))


def going_on(pen: Pen, start: Point, end: Point) -> Iterator[Primitive]:
    """Yield the hairline of a ball that goes on from its bounce to the next contact."""
    yield Path((start, end), pen.style("ball", 0.6))


def bounce(pen: Pen, at: Point) -> Iterator[Primitive]:
    """Yield the dot of a bounce."""
    yield Ellipse(at, (2.7 * pen.unit, 2.7 * pen.unit), Style(fill=pen.casing_role(at)))
    yield Ellipse(at, (1.8 * pen.unit, 1.8 * pen.unit), Style(fill="ball"))


def contact(pen: Pen, at: Point, direction: Point) -> Iterator[Primitive]:
    """Yield the bar of the strings across the start of a path that flies in ``direction``."""
    half = 3.7 * pen.unit
    ends = (ahead(at, direction, 0.0, half), ahead(at, direction, 0.0, -half))
    yield Path(ends, pen.style(pen.casing_role(at), 2.3 + 2))
    yield Path(ends, pen.style("ball", 2.3))


def tag_width(digit: str) -> float:
    """Return how wide a step's tag is, in u."""
    return max(TAG, text_width(digit, TAG_TEXT, bold=True) + 4.4)


def tag(pen: Pen, at: Point, digit: str, *, feed: bool) -> Iterator[Primitive]:
    """Yield a step's digit: full for a hit, open for a feed."""
    style = pen.style("ball", 0.95, fill="paper") if feed else Style(fill="ball")
    size = 0.95 if feed else 0.0
    yield from pen.box(at, tag_width(digit) - size, TAG - size, 1.8, style)
    yield pen.words(digit, at, TAG_TEXT, "ball" if feed else "paper", bold=True)


def pill_width(text: str = "or") -> float:
    """Return how wide the pill of a fan is, in u."""
    return text_width(text, TAG_TEXT, bold=True) + 7.0


def pill(pen: Pen, at: Point, text: str = "or") -> Iterator[Primitive]:
    """Yield the pill that says a fan is a choice."""
    yield from pen.box(at, pill_width(text) - 0.95, TAG - 0.95, TAG / 2, pen.style("ball", 0.95, fill="paper"))
    yield pen.words(text, at, TAG_TEXT, "ball", bold=True)


def flag_width(text: str) -> float:
    """Return how wide the box of the open flag is, in u."""
    return text_width(text, FLAG_TEXT, bold=True) + 10.0


def flag_box(pen: Pen, centre: Point, text: str) -> Bounds:
    """Return the box of the open flag in metres."""
    half = (flag_width(text) / 2 * pen.unit, FLAG_HEIGHT / 2 * pen.unit)
    return (centre[0] - half[0], centre[1] - half[1], centre[0] + half[0], centre[1] + half[1])


def flag_nib(pen: Pen, at: Point, centre: Point, text: str) -> tuple[Point, Point, Point]:
    """Return the corners of the flag's pointer; the second is its tip, short of the bounce ``at``."""
    left, low, right, high = flag_box(pen, centre, text)
    u = pen.unit
    if left - 2 * u < at[0] < right + 2 * u:  # straight above or below: the pointer leaves the long side
        side = low if at[1] < centre[1] else high
        stem = min(max(at[0], left + 7 * u), right - 7 * u)
        tip = (at[0], at[1] + (FLAG_REACH * u if at[1] < centre[1] else -FLAG_REACH * u))
        return ((stem - 5 * u, side), tip, (stem + 5 * u, side))
    edge, inward = (right, -1) if at[0] > centre[0] else (left, 1)
    near = low if at[1] < centre[1] else high
    tip = ahead(at, unit_vector(at, (edge, near)), FLAG_REACH * u)
    return ((edge + inward * 9 * u, near), tip, (edge, near + (6.5 * u if near == low else -6.5 * u)))


def flag(pen: Pen, at: Point, centre: Point, text: str = "open") -> Iterator[Primitive]:
    """Yield the open flag: its box round ``centre``, its pointer towards the bounce ``at``."""
    forms = (flag_nib(pen, at, centre, text), rectangle(flag_box(pen, centre, text)))
    role = pen.casing_role(centre)
    for points in forms:
        yield Path(points, Style(role, 2 * pen.unit, (), "round", role), closed=True)
    for points in forms:
        yield Path(points, Style(fill="ink"), closed=True)
    yield pen.words(text, centre, FLAG_TEXT, "paper", bold=True)


def run(pen: Pen, route: Route) -> Iterator[Primitive]:
    """Yield a run: long dashes and an open head."""
    style = pen.style("feet", 1.5) if pen.switched else pen.style("feet", 1.3, DASH)
    yield from pen.route(route.cut(0.0, max(route.length - 1.0 * pen.unit, 0.0)), style)
    tip, direction = route.at(route.length), route.heading(route.length)
    arms = tuple(ahead(tip, direction, -4.8 * pen.unit, side * pen.unit) for side in (3.2, -3.2))
    corners = (arms[0], tip, arms[1])
    yield Path(corners, pen.style(pen.casing_role(tip), 1.3 + 2, cap="round"))
    yield Path(corners, pen.style("feet", 1.5 if pen.switched else 1.3, cap="round"))


def recovery(pen: Pen, route: Route, toes: Point, end: float | None = None) -> Iterator[Primitive]:
    """Yield a run back: round dots that end on two feet, toes towards ``toes``; ``end`` is metres along ``route``."""
    end = route.length if end is None else end
    stop = max(end - 5.2 * pen.unit, 0.0)
    if stop > 3 * pen.unit:
        yield from pen.route_casing(route.cut(0.0, stop), 1.5)
        count = int(stop / (2.9 * pen.unit))
        places = tuple(route.at(index * 2.9 * pen.unit) for index in range(count + 1))
        yield Dots(places, 0.75 * pen.unit, Style(fill="feet"))
    yield from pen.feet(route.at(end), toes)
