"""The sheet a picture is made on: what is known of the setting, the marks so far, and the space that is left."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, field, replace
from functools import lru_cache
from typing import Any

from designer.court.standards import Ground
from designer.drawing.geometry import grown, within
from designer.drawing.page import Page
from designer.drawing.pen import Pen
from designer.drawing.placing import Space
from designer.drawing.primitives import Bounds, Layer, Mark, Point, Primitive, mark
from designer.drill.people import Job
from designer.drill.setting import Setting
from designer.play.sequence import Sequence

Draw = Callable[..., Iterable[Primitive]]
"""A function of a pen and of values that can be told apart by their content."""


@dataclass(frozen=True, slots=True)
class Label:
    """Words that are wanted at something. ``box`` is what they name; ``outline`` its true corners where they may stand inside.

    Sizes are u. ``must_lead``: a leader is drawn wherever the words stand. ``outside``: places outside the sidelines are tried.
    """

    id: str | None
    kind: str
    part: str
    text: str
    size: float
    colour: str
    box: Bounds
    bold: bool = True
    outline: tuple[Point, ...] = ()
    must_lead: bool = False
    outside: bool = True
    leads: bool = True


@dataclass(slots=True)
class Plan:
    """What the makers of marks share. They add to ``marks``, note in ``space`` what is taken, and ask for ``labels``."""

    setting: Setting
    ground: Ground
    page: Page
    pen: Pen
    jobs: Mapping[str, Job]
    sequence: Sequence | None
    fence: Bounds
    space: Space
    words: bool = True
    patient: bool = False
    """Whether words are worth a long search: on paper they are, while something is dragged they are not."""
    you: str | None = None
    signs: float = 1.0
    """How many times larger than other marks people and digits are: on a poster they are read from further away."""
    marks: list[Mark] = field(default_factory=list)
    labels: list[Label] = field(default_factory=list)
    discs: list[Point] = field(default_factory=list)
    """Middles of the people drawn as discs that play."""

    @property
    def unit(self) -> float:
        """Metres a mark unit."""
        return self.pen.unit

    @property
    def sign_pen(self) -> Pen:
        """The pen that people and digits are drawn with."""
        return self.pen if self.signs == 1.0 else replace(self.pen, unit=self.pen.unit * self.signs)

    def add(self, id: str | None, kind: str, layer: Layer, shapes: Iterable[Primitive], part: str = "") -> Mark | None:
        """Add the mark of ``shapes`` and return it; none is added where there is nothing to draw."""
        made = mark(id, kind, layer, shapes, part)
        if not made.primitives:
            return None
        self.marks.append(made)
        return made

    def draw(
        self,
        id: str | None,
        kind: str,
        layer: Layer,
        draw: Draw,
        *arguments: Any,
        part: str = "",
        sign: bool = False,
        **options: Any,
    ) -> Mark | None:
        """Add what ``draw(pen, *arguments, **options)`` yields as a mark and return it, None where that is nothing.

        ``sign``: it is drawn with the pen of people and digits.
        Marks are remembered by what they are made from: after an edit only those that differ are made anew.
        """
        made = _drawn(
            draw, self.sign_pen if sign else self.pen, id, kind, layer, part, arguments, tuple(options.items())
        )
        if made.primitives:
            self.marks.append(made)
            return made
        return None

    def take(self, made: Mark | None, owner: str = "") -> None:
        """Note that nothing may cover ``made``."""
        if made is not None:
            self.space.take(made.bounds, owner=owner)

    def held(self, point: Point, margin: float) -> Point:
        """Return ``point`` of the page moved so that a symbol of ``margin`` u stays inside the fence it stands at.

        A place truly outside the fence is left where it is.
        """
        if not within(self.fence, point):
            return point
        left, low, right, high = grown(self.fence, -margin * self.unit)
        return (min(max(point[0], left), right), min(max(point[1], low), high))


@lru_cache(maxsize=8192)
def _drawn(
    draw: Draw,
    pen: Pen,
    id: str | None,
    kind: str,
    layer: Layer,
    part: str,
    arguments: tuple[Any, ...],
    options: tuple[tuple[str, Any], ...],
) -> Mark:
    return mark(id, kind, layer, draw(pen, *arguments, **dict(options)), part)
