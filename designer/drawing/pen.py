"""The pen: it draws in mark units (u) wherever a place is in metres, and keeps the few forms that many marks share."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Final

from designer.drawing.geometry import ahead, between, contains, grown, rounded, turned
from designer.drawing.primitives import Align, Bounds, Cap, Ellipse, Path, Point, Primitive, Style, Words
from designer.drawing.words import CAP_HEIGHT, text_width

CASING: Final = 1.0
"""How far a mark's casing reaches beyond its ink, in u."""

TAILED: Final = frozenset("gjpqyQJ,;()ç")
"""Letters that reach below the line."""

DASH: Final = (4.4, 2.6)
"""Dash and gap of the broken one of ball and run, in u."""


@dataclass(frozen=True, slots=True)
class Pen:
    """``unit`` is metres a mark unit; ``court`` is the court's outline, in whose colour casing is laid inside it."""

    unit: float
    court: tuple[Point, ...] = ()
    switched: bool = False

    def style(
        self,
        stroke: str | None = None,
        width: float = 0.0,
        dash: Sequence[float] = (),
        *,
        cap: Cap = "butt",
        fill: str | None = None,
    ) -> Style:
        """Return a style whose width and dashes are given in u."""
        return Style(stroke, width * self.unit, tuple(length * self.unit for length in dash), cap, fill)

    def casing_role(self, at: Point) -> str:
        """Return the colour that cuts a mark free at ``at``: the court's, or that of the ground round it."""
        return "casing" if not self.court or contains(self.court, at) else "casing outside"

    def route(self, points: Sequence[Point], style: Style) -> Iterator[Primitive]:
        """Yield a way with casing under it."""
        yield from self.route_casing(points, style.width / self.unit)
        yield Path(tuple(points), style)

    def route_casing(self, points: Sequence[Point], width: float) -> Iterator[Primitive]:
        """Yield the casing alone of a way ``width`` u wide."""
        role = self.casing_role(between(points[0], points[-1], 0.5))
        cap: Cap = "round" if len(points) > 2 else "butt"
        yield Path(tuple(points), self.style(role, width + 2 * CASING, cap=cap))

    def cased(self, points: Sequence[Point], style: Style, *, curved: bool = False) -> Iterator[Primitive]:
        """Yield a closed form with casing round it."""
        role = self.casing_role(points[0])
        width = style.width + 2 * CASING * self.unit
        yield Path(tuple(points), Style(role, width, (), "round", role), closed=True, curved=curved)
        yield Path(tuple(points), style, closed=True, curved=curved)

    def disc(self, centre: Point, radius: float, style: Style) -> Iterator[Primitive]:
        """Yield a round form of ``radius`` u with casing round it."""
        outer = (radius + CASING) * self.unit + style.width / 2
        yield Ellipse(centre, (outer, outer), Style(fill=self.casing_role(centre)))
        yield Ellipse(centre, (radius * self.unit, radius * self.unit), style)

    def box(self, centre: Point, width: float, height: float, corner: float, style: Style) -> Iterator[Primitive]:
        """Yield an upright box of ``width`` by ``height`` u with rounded corners and casing."""
        half = (width * self.unit / 2, height * self.unit / 2)
        bounds = (centre[0] - half[0], centre[1] - half[1], centre[0] + half[0], centre[1] + half[1])
        reach = style.width / 2 + CASING * self.unit
        role = self.casing_role(centre)
        yield Path(
            rounded(grown(bounds, reach), corner * self.unit + reach), Style(fill=role), closed=True, curved=True
        )
        yield Path(rounded(bounds, corner * self.unit), style, closed=True, curved=True)

    def head(self, tip: Point, direction: Point, length: float, width: float) -> tuple[Point, Point, Point]:
        """Return the three corners of an arrow's head in u, the tip first."""
        back = ahead(tip, direction, -length * self.unit)
        half = width * self.unit / 2
        return (tip, ahead(back, direction, 0.0, half), ahead(back, direction, 0.0, -half))

    def words(
        self,
        text: str,
        at: Point,
        size: float,
        colour: str,
        *,
        bold: bool = False,
        align: Align = "middle",
    ) -> Words:
        """Return a line of text of ``size`` u whose capitals have the middle of their height at ``at``."""
        drop = CAP_HEIGHT / 2 * size * self.unit
        return Words(text, (at[0], at[1] - drop), size * self.unit, colour, bold, align)

    def lines(
        self,
        lines: Sequence[str],
        at: Point,
        size: float,
        colour: str,
        *,
        bold: bool = False,
        align: Align = "middle",
        cased: bool = True,
    ) -> Iterator[Primitive]:
        """Yield lines of text, the middle of the whole at ``at``, with casing under each where ``cased``."""
        step = size * 1.2 * self.unit
        role = self.casing_role(at)
        for index, line in enumerate(lines):
            place = (at[0], at[1] + step * ((len(lines) - 1) / 2 - index))
            box = self.text_box((line,), place, size, bold=bold, align=align)
            corner = CASING * self.unit
            if cased:
                yield Path(rounded(grown(box, corner), corner), Style(fill=role), closed=True, curved=True)
            yield self.words(line, place, size, colour, bold=bold, align=align)

    def text_box(
        self, lines: Sequence[str], at: Point, size: float, *, bold: bool = False, align: Align = "middle"
    ) -> Bounds:
        """Return the box of lines of text whose middle is at ``at``: for one line from its tails to its capitals' height."""
        width = max(text_width(line, size * self.unit, bold) for line in lines)
        left = at[0] - {"left": 0.0, "middle": width / 2, "right": width}[align]
        high = (len(lines) - 1) * size * 1.2 * self.unit / 2 + CAP_HEIGHT / 2 * size * self.unit
        tail = (0.22 if TAILED.intersection(lines[-1]) else 0.04) * size * self.unit
        return (left, at[1] - high - tail, left + width, at[1] + high)

    def feet(self, middle: Point, direction: Point) -> Iterator[Primitive]:
        """Yield two feet with their toes towards ``direction``."""
        degrees = _degrees(direction)
        role = self.casing_role(middle)
        places = [ahead(middle, direction, 0.0, side * self.unit) for side in (2.5, -2.5)]
        for place in places:
            yield Ellipse(place, (3.7 * self.unit, 2.45 * self.unit), Style(fill=role), degrees)
        for place in places:
            yield Ellipse(place, (2.7 * self.unit, 1.45 * self.unit), Style(fill="feet"), degrees)


def _degrees(direction: Point) -> float:
    import math

    return math.degrees(math.atan2(direction[1], direction[0])) % 360


def aside(direction: Point, degrees: float, hand: str) -> Point:
    """Return ``direction`` turned towards the side of ``hand``: "right" turns with the clock."""
    return turned(direction, -degrees if hand == "right" else degrees)
