"""What is put on the court: kit, marked lines, areas and obstacles."""

from __future__ import annotations

from typing import Annotated, Any, Final, Literal

from pydantic import Discriminator, Field, Tag

from designer.drill.base import Degrees, Id, Length, Letter, Noted, Place, Point, Purpose, Record, Text
from designer.drill.people import Care

Marked = Literal["throw-down", "chalk", "tape", "discs", "painted", "in thought"]
"""What shows a line or an area's edge. Discs stand at each corner that is no painted crossing."""


class Rectangle(Record):
    """A rectangle along the court's axes, by two opposite corners."""

    form: Literal["rectangle"]
    corners: tuple[Point, Point]


class Ellipse(Record):
    """The ellipse that fills the rectangle between two opposite corners."""

    form: Literal["ellipse"]
    corners: tuple[Point, Point]


class Polygon(Record):
    """A polygon by its corners, in order round it."""

    form: Literal["polygon"]
    corners: Annotated[tuple[Point, ...], Field(min_length=3)]


KNOWN_FORMS: Final = ("rectangle", "ellipse", "polygon")


class UnknownShape(Record):
    """A shape that this program does not know: kept as it is and written back."""

    form: Annotated[str, Field(json_schema_extra={"not": {"enum": list(KNOWN_FORMS)}})]


def _form(value: Any) -> str:
    form = value.get("form") if isinstance(value, dict) else getattr(value, "form", None)
    return form if form in KNOWN_FORMS else "unknown"


Shape = Annotated[
    Annotated[Rectangle, Tag("rectangle")]
    | Annotated[Ellipse, Tag("ellipse")]
    | Annotated[Polygon, Tag("polygon")]
    | Annotated[UnknownShape, Tag("unknown")],
    Discriminator(_form),
]


class Thing(Noted):
    """What all kit has: how exactly it stands, whether a copy stands at the other end, turned half round."""

    care: Care | None = None
    both_ends: bool = False
    hand_of: Letter | None = None


class Cone(Thing):
    """An upright marker."""

    kind: Literal["cone"]
    place: Place


class Disc(Thing):
    """A flat marker that can be stepped on."""

    kind: Literal["disc"]
    place: Place


class Hoop(Thing):
    """A flat hoop on the ground."""

    kind: Literal["hoop"]
    place: Place
    purpose: Purpose | None = None


class Basket(Thing):
    """A basket of balls."""

    kind: Literal["basket"]
    place: Place
    balls: Annotated[int, Field(ge=0, le=2000)] | None = None


class BallMachine(Thing):
    """A machine that throws balls in the direction it faces."""

    kind: Literal["ball machine"]
    place: Place
    facing: Degrees | None = None


class Note(Thing):
    """Words that stand on the drawing."""

    kind: Literal["note"]
    place: Place
    text: Text


class Obstacle(Thing):
    """Something that stands in the way: a bench, a post, a wall."""

    kind: Literal["obstacle"]
    corners: Annotated[tuple[Point, ...], Field(min_length=2)]
    name: Text = ""


class HeightCord(Thing):
    """A cord over the net, to be cleared."""

    kind: Literal["height cord"]
    height: Length


class Line(Thing):
    """A line that divides the court, or a tick; ``runs_on`` in thought to the next painted line or fence."""

    kind: Literal["line"]
    corners: Annotated[tuple[Point, ...], Field(min_length=2)]
    marked: Marked | None = None
    pieces: Annotated[int, Field(ge=1, le=200)] | None = None
    runs_on: bool = False
    name: Text = ""


class Barrier(Thing):
    """Something soft and light that stands along a line, ``height`` metres high."""

    kind: Literal["barrier"]
    corners: Annotated[tuple[Point, ...], Field(min_length=2)]
    height: Length | None = None


class Area(Thing):
    """A part of the court with a name. What it means is said by the rules and points that name it.

    ``purpose``: what it is for as a target, where none of these says so.
    """

    kind: Literal["area"]
    name: Text = ""
    shape: Shape
    marked: Marked | None = None
    purpose: Purpose | None = None


KNOWN_KINDS: Final = (
    "cone",
    "disc",
    "hoop",
    "basket",
    "ball machine",
    "note",
    "obstacle",
    "height cord",
    "line",
    "barrier",
    "area",
)


class Unknown(Record):
    """An item of a kind that this program does not know: kept as it is and written back."""

    kind: Annotated[str, Field(json_schema_extra={"not": {"enum": list(KNOWN_KINDS)}})]
    id: Id


def _kind(value: Any) -> str:
    kind = value.get("kind") if isinstance(value, dict) else getattr(value, "kind", None)
    return kind if kind in KNOWN_KINDS else "unknown"


Item = Annotated[
    Annotated[Cone, Tag("cone")]
    | Annotated[Disc, Tag("disc")]
    | Annotated[Hoop, Tag("hoop")]
    | Annotated[Basket, Tag("basket")]
    | Annotated[BallMachine, Tag("ball machine")]
    | Annotated[Note, Tag("note")]
    | Annotated[Obstacle, Tag("obstacle")]
    | Annotated[HeightCord, Tag("height cord")]
    | Annotated[Line, Tag("line")]
    | Annotated[Barrier, Tag("barrier")]
    | Annotated[Area, Tag("area")]
    | Annotated[Unknown, Tag("unknown")],
    Discriminator(_kind),
]
