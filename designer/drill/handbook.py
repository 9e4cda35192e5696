"""A handbook: drills of an academy in numbered sections, each drill in a file of its own."""

from __future__ import annotations

from datetime import date
from typing import Annotated, Final, Literal, get_args

from pydantic import Field, StringConstraints

from designer.drill.base import Record, Text
from designer.drill.drill import House, Language, Tag

Number = Annotated[str, StringConstraints(pattern=r"^[1-9][0-9]{0,3}\.[1-9][0-9]{0,3}$")]
"""Section and place, as in 3.12. It is stored, so that it survives whatever is put in before it."""

Word = Annotated[str, StringConstraints(min_length=1, max_length=60)]

State = Literal["draft", "checked", "approved"]

Prints = Literal["whole", "every progression", "first sheet"]
"""What is printed of a drill: its sheets; those and a sheet for each other progression; or its first sheet alone."""

HouseRule = Literal[
    "objective",
    "replay rule",
    "stop word",
    "who calls",
    "doubt",
    "safety",
    "cues",
    "minutes",
    "players",
    "finish",
    "swap",
    "easier and harder",
    "situation",
    "stroke",
    "level",
    "intensity",
    "author",
    "no open question",
    "no error",
    "no caution left open",
]
"""What every drill of a handbook has to have; the review says how each is found out."""

HOUSE_RULES: Final[tuple[HouseRule, ...]] = get_args(HouseRule)


STOP_WORD: Final = "stop"
"""What is called for a ball or a person on court where neither a drill nor a house has a word of its own."""


class Entry(Record):
    """One drill of a handbook: its number, its file by a path relative to the handbook, and how far it is checked.

    ``seen`` is the SHA-256 of the drill's file when its state was given, so that a drill which has changed since is
    seen. ``see`` are the numbers of drills to look at as well, before those that are found to be alike. ``tags`` are the
    academy's own for this drill, beside those it has: its level, its stroke.
    """

    number: Number
    file: Annotated[str, StringConstraints(min_length=1, max_length=400)]
    state: State = "draft"
    by: Text = ""
    on: date | None = None
    seen: Annotated[str, StringConstraints(pattern=r"^([0-9a-f]{64})?$")] = ""
    prints: Prints = "whole"
    see: tuple[Number, ...] = ()
    tags: tuple[Tag, ...] = ()


class BookSection(Record):
    """A section with its introduction and its drills."""

    title: Text
    introduction: Text = ""
    drills: tuple[Entry, ...] = ()


class Term(Record):
    """A word of the academy's own with what it means, for the glossary."""

    word: Word
    means: Text


class Safety(Record):
    """What the safety page says beside the usual check of the court; what is absent is a line to write on."""

    before: tuple[Text, ...] = ()
    first_aid: Text = ""
    emergency: Text = ""
    heat: Text = ""
    lightning: Text = ""
    approved_by: Text = ""
    approved_on: date | None = None


class Handbook(Record):
    """A handbook as it is saved.

    ``vocabulary`` maps our words for situations, levels, strokes, kit and parts of the court to the academy's own.
    ``house`` answers for every drill that does not answer for itself, and ``house_rules`` are checked over all drills.
    With ``own_leaves`` sections and drills begin on a leaf of their own, so that one can be exchanged for another, and a
    back that is left empty has lines for notes; else page follows page.
    ``brand`` is a brand file in the handbook's folder; without one the nearest ``brand.json`` counts.
    """

    format: Annotated[int, Field(ge=1, le=1)] = 1
    title: Text
    edition: Annotated[int, Field(ge=1, le=100_000)] = 1
    dated: date | None = None
    owner: Text = ""
    contact: Text = ""
    licence: Text = ""
    language: Language = "en"
    brand: Text = ""
    paper: Literal["a4", "letter"] = "a4"
    attach: bool = True
    own_leaves: bool = False
    planners: Annotated[int, Field(ge=0, le=50)] = 2
    vocabulary: dict[Word, Word] = {}
    glossary: tuple[Term, ...] = ()
    house: House = House.model_construct()
    house_rules: tuple[HouseRule, ...] = ()
    safety: Safety = Safety.model_construct()
    sections: tuple[BookSection, ...]

    @property
    def stop_word(self) -> str:
        """What is called to stop play in every drill: the academy's word for “stop”, else that."""
        return next((own for word, own in self.vocabulary.items() if word.lower() == STOP_WORD), STOP_WORD)

    def entries(self) -> tuple[Entry, ...]:
        """Return every entry in the order of the book."""
        return tuple(entry for section in self.sections for entry in section.drills)


class Remembered(Record):
    """What is remembered of a drill in a printed edition: the SHA-256 of its file, its title and its id."""

    digest: str
    title: Text = ""
    id: str = ""


class Edition(Record):
    """The record of a printed edition, which lies beside the handbook."""

    title: Text = ""
    edition: int
    dated: date | None = None
    drills: dict[Number, Remembered]
