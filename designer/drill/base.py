"""The ground every record stands on: one base class and the few value types that all records share."""

from __future__ import annotations

import re
from typing import Annotated, Any, Final, Literal, Self

from pydantic import AfterValidator, BaseModel, ConfigDict, Field, StringConstraints

FARTHEST: Final = 100.0
"""No place on or round a court lies farther than this from the net's centre, in metres."""

ON_THE_LINE: Final = 0.005
"""Two places nearer than this, in metres, are the same place to a player: "on the line"."""


def to_tenth_millimetre(value: float) -> float:
    """Return ``value`` (metres) rounded to 0.1 mm, never as minus zero: 1 in is 0.0254 m, so painted lines stay exact."""
    return round(value, 4) + 0.0


Metres = Annotated[float, Field(ge=-FARTHEST, le=FARTHEST), AfterValidator(to_tenth_millimetre)]
"""A signed distance in metres, stored to 0.1 mm."""

Length = Annotated[float, Field(ge=0, le=FARTHEST), AfterValidator(to_tenth_millimetre)]
"""A distance that cannot be negative, in metres, stored to 0.1 mm."""

Point = tuple[Metres, Metres]
"""(x, y) in metres from the net's centre: x to the right as seen from the near end, y towards the far end."""

ID_PATTERN: Final = r"^[a-z][a-z0-9-]{0,39}\z"
LETTER_PATTERN: Final = r"^[A-Z]\z"
_PUBLISHED = {ID_PATTERN: r"^[a-z][a-z0-9-]{0,39}$", LETTER_PATTERN: r"^[A-Z]$"}


def _whole(pattern: str) -> AfterValidator:
    compiled = re.compile(pattern.removesuffix(r"\z"))

    def check(value: str) -> str:
        if compiled.fullmatch(value) is None:
            raise ValueError(f"{value!r} does not match {_PUBLISHED[pattern]}")
        return value

    return AfterValidator(check)


Id = Annotated[str, _whole(ID_PATTERN), Field(json_schema_extra={"pattern": _PUBLISHED[ID_PATTERN]})]
"""A record's name inside one drill. It means nothing by itself and has no space, so a court region is never an id."""

Letter = Annotated[str, _whole(LETTER_PATTERN), Field(json_schema_extra={"pattern": _PUBLISHED[LETTER_PATTERN]})]
"""A job, not a person: people move between letters at a swap."""

Text = Annotated[str, StringConstraints(max_length=20_000)]
"""Plain text with a few tokens: ``{left} {right} {deuce} {ad} {A} {cone-home}``; ``{{`` is a brace."""

Area = Annotated[str, StringConstraints(min_length=1, max_length=80)]
"""The id of an area, line or hoop, or the words for a region or painted line of the court ("right half")."""

Purpose = Literal["in a row", "normal aim", "bonus"]
"""What a target is for, where the scoring does not say it: a run in a row, the normal aim of the drill, a bonus."""

Degrees = Annotated[int, Field(ge=0, le=359)]
"""Whole degrees clockwise from the direction of the far end: 90 faces the right-hand fence."""

Count = Annotated[int, Field(ge=1, le=1000)]

Ids = tuple[Id, ...]

Heading = Literal["near", "far"]


class Record(BaseModel):
    """A frozen value. Fields that a later format adds are kept and written back."""

    model_config = ConfigDict(
        frozen=True,
        strict=True,
        extra="allow",
        allow_inf_nan=False,
        defer_build=True,
        validate_by_name=True,
        validate_by_alias=True,
        serialize_by_alias=True,
    )

    def changed(self, /, **values: Any) -> Self:
        """Return this record with ``values`` in place of its own, validated afresh.

        Raises ``pydantic.ValidationError`` where a value does not fit its field.
        """
        return type(self)(**(dict(self) | values))

    def declared(self, field: str) -> Any:
        """Return the value of a field that this class declares, None for any other: an unknown field may hold anything."""
        return getattr(self, field) if field in type(self).model_fields else None


class Noted(Record):
    """A record with an id, and with a note that is printed after the sentence made from its data."""

    id: Id
    note: Text = ""


class Place(Record):
    """A point measured from something else: from ``on`` (an id or a job's letter) or from the net's centre."""

    on: Id | Letter | None = None
    at: Point = (0.0, 0.0)


def place(x: float, y: float) -> Place:
    """Return the free place at (x, y) metres from the net's centre."""
    return Place(at=(x, y))
