"""A handbook: drills of an academy in numbered sections, each drill in a file of its own."""

from __future__ import annotations

from datetime import date
from typing import Annotated, Literal

from pydantic import Field, StringConstraints

from designer.drill.base import Record, Text
from designer.drill.drill import Language

Number = Annotated[str, StringConstraints(pattern=r"^[1-9][0-9]{0,3}\.[1-9][0-9]{0,3}$")]
"""Section and place, as in 3.12. It is stored, so that it survives whatever is put in before it."""


class Entry(Record):
    """One drill of a handbook: its number, its file by a path relative to the handbook, and how far it is checked."""

    number: Number
    file: Annotated[str, StringConstraints(min_length=1, max_length=400)]
    state: Literal["draft", "checked", "approved"] = "draft"
    by: Text = ""
    on: date | None = None


class BookSection(Record):
    """A section with its introduction and its drills."""

    title: Text
    introduction: Text = ""
    drills: tuple[Entry, ...] = ()


class Handbook(Record):
    """A handbook as it is saved."""

    format: Annotated[int, Field(ge=1, le=1)] = 1
    title: Text
    edition: Annotated[int, Field(ge=1, le=100_000)] = 1
    dated: date | None = None
    owner: Text = ""
    contact: Text = ""
    licence: Text = ""
    language: Language = "en"
    sections: tuple[BookSection, ...]

    def entries(self) -> tuple[Entry, ...]:
        """Return every entry in the order of the book."""
        return tuple(entry for section in self.sections for entry in section.drills)
