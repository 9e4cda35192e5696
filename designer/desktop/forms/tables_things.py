"""The rows for what is drawn: people, balls, runs and the things on the court."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any, Final, get_args

from designer.desktop.forms import context as here
from designer.desktop.forms.context import Context
from designer.desktop.forms.fields import (
    Block,
    Choice,
    Field,
    Flag,
    Kinds,
    Line,
    Measure,
    Number,
    Pick,
    Points,
    Table,
    Where,
    words,
)
from designer.desktop.forms.tables_conditions import STROKES, WINGS
from designer.desktop.forms.tables_rules import NOTE, PURPOSE
from designer.drill.base import Point
from designer.drill.items import (
    Area,
    Barrier,
    Basket,
    Cone,
    Disc,
    Ellipse,
    HeightCord,
    Hoop,
    Marked,
    Note,
    Obstacle,
    Polygon,
    Rectangle,
    Unknown,
    UnknownShape,
)
from designer.drill.items import BallMachine as Machine
from designer.drill.items import Line as DrawnLine
from designer.drill.movement import Run, Shot
from designer.drill.people import Spot

MARKED: Final = words(*get_args(Marked))
CARE: Final = Field(
    "care",
    "How exactly",
    Choice((("exact", "exact"), ("about", "about"), ("anywhere", "anywhere"))),
)


def _where(label: str = "Where", *, optional: bool = False, name: str = "place") -> Field:
    return Field(name, label, Where(optional=optional))


_BOTH: Final = Field("both_ends", "", Flag("the same at the other end"), more=True)
_HAND: Final = Field("hand_of", "For the hand of", Pick(here.letters, "nobody’s"), more=True)
_THING: Final[Table] = (CARE, _BOTH, _HAND, NOTE)
_STANDING: Final[Table] = (_where(), *_THING)
_CORNERS: Final = Field("corners", "Corners", Points(2), more=True, drawn=True)

SPOT: Final[Table] = (
    Field("job", "Who", Pick(here.letters, optional=False), more=True, drawn=True),
    Field("task", "Does what", Choice(words("plays", "collects", "waits"), optional=False)),
    CARE,
    _where(),
    Field("facing", "Faces (degrees)", Number(0, 359), more=True),
    NOTE,
)

SHOT: Final[Table] = (
    Field("wing", "Stroke", Choice(WINGS)),
    Field("stroke", "Kind", Choice(STROKES)),
    Field("pace", "Pace", Choice(words("soft", "half", "medium", "full"))),
    Field("spin", "Spin", Choice(words("topspin", "slice", "flat", "sidespin")), more=True),
    Field("by", "Hit by", Pick(here.letters, optional=False), more=True, drawn=True),
    Field("after", "After", Pick(here.shots, "nothing: a first ball"), more=True, drawn=True),
    _where("Lands", optional=True, name="to"),
    Field("contact", "Hit at", Where(optional=True), more=True, drawn=True),
    Field("height", "Hit how high", Measure(), more=True),
    Field("over_net", "Over the net", Measure(), more=True),
    Field("bounces", "Bounces first", Number(0, 3), more=True),
    Field("bend", "Bends", Measure(-100), more=True),
    Field("called_by", "Called by", Pick(here.letters, "nobody"), more=True),
    Field("label", "Word on it", Line(follows=True), more=True),
    NOTE,
)

RUN: Final[Table] = (
    Field(
        "purpose",
        "What for",
        Choice((("reach", "to a ball"), ("recover", "get back"), ("approach", "go in"), ("retreat", "go back"))),
    ),
    Field("by", "Who runs", Pick(here.letters, optional=False), more=True, drawn=True),
    Field("during", "During", Pick(here.shots, "no ball")),
    _where("To", name="to"),
    Field("via", "By way of", Points(one="point"), more=True, drawn=True),
    NOTE,
)


NEW_SHAPE: Final = ((-2.0, 7.0), (2.0, 11.0))


def _shape(form: str) -> Callable[[Context], Any]:
    return lambda _: SHAPED[form](NEW_SHAPE)


def _four(corners: tuple[Point, ...]) -> tuple[Point, ...]:
    (left, low), (right, high) = corners
    return ((left, low), (right, low), (right, high), (left, high))


SHAPED: Final[dict[str, Callable[[Any], Any]]] = {
    "rectangle": lambda corners: Rectangle(form="rectangle", corners=corners),
    "ellipse": lambda corners: Ellipse(form="ellipse", corners=corners),
    "polygon": lambda corners: Polygon(form="polygon", corners=_four(corners)),
}
"""Makes each shape between two opposite corners."""


def reshaped(shape: Any, form: str) -> Any:
    """Return a shape of another form where ``shape`` is, as large as the rectangle round it."""
    corners = getattr(shape, "corners", None) or NEW_SHAPE
    across, along = [x for x, _ in corners], [y for _, y in corners]
    return SHAPED[form](((min(across), min(along)), (max(across), max(along))))


SHAPES: Final = (
    ("rectangle", "rectangle", _shape("rectangle")),
    ("ellipse", "ellipse", _shape("ellipse")),
    ("polygon", "corner by corner", _shape("polygon")),
)

AREA: Final[Table] = (
    Field("name", "Called", Line("reply zone")),
    Field("marked", "Shown by", Choice(MARKED)),
    CARE,
    Field("shape", "Shape", Kinds("form", SHAPES, reshaped), more=True, drawn=True),
    PURPOSE,
    _BOTH,
    _HAND,
    NOTE,
)

LINE: Final[Table] = (
    Field("name", "Called", Line("tick")),
    Field("marked", "Shown by", Choice(MARKED)),
    CARE,
    Field("pieces", "Pieces", Number(1, 200), lambda r: r.marked in ("throw-down", "discs")),
    Field("runs_on", "", Flag("imagined longer, to the next line")),
    _CORNERS,
    _BOTH,
    _HAND,
    NOTE,
)

TABLES: Final[dict[type, Any]] = {
    Spot: SPOT,
    Shot: SHOT,
    Run: RUN,
    Cone: _STANDING,
    Disc: _STANDING,
    Hoop: (_where(), CARE, PURPOSE, _BOTH, _HAND, NOTE),
    Basket: (Field("balls", "Balls in it", Number(0, 2000)), *_STANDING),
    Machine: (Field("facing", "Throws (degrees)", Number(0, 359)), *_STANDING),
    Note: (Field("text", "Words", Block()), *_STANDING),
    Obstacle: (Field("name", "What it is", Line("bench")), _CORNERS, *_THING),
    HeightCord: (Field("height", "How high", Measure(optional=False)), *_THING),
    DrawnLine: LINE,
    Barrier: (Field("height", "How high", Measure()), _CORNERS, *_THING),
    Area: AREA,
    Rectangle: (Field("corners", "Two corners", Points(2, 2)),),
    Ellipse: (Field("corners", "Two corners", Points(2, 2)),),
    Polygon: (Field("corners", "Corners", Points(3)),),
    Unknown: (),
    UnknownShape: (),
}
