"""What a form is declared with: a field says which value of a record it shows, in what words, by what kind of control."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, field
from typing import Any

from designer.desktop.forms.context import Context

Option = tuple[Any, str]
"""A value and the words that a coach reads for it."""

Options = tuple[Option, ...]


@dataclass(frozen=True, slots=True)
class Choice:
    """One of a few values. ``usual`` is offered, marked, while none is given; ``optional`` lets it be taken back."""

    options: Options
    usual: Any = None
    optional: bool = True


@dataclass(frozen=True, slots=True)
class Pick:
    """One of the values that the drill holds, such as its areas; ``nothing`` is what leaving it open is called."""

    options: Callable[[Context], Sequence[Option]]
    nothing: str = "–"
    optional: bool = True


@dataclass(frozen=True, slots=True)
class Many:
    """Any number of the values that the drill holds, as a tuple. ``usual`` is offered, as ``nothing`` says it, while empty."""

    options: Callable[[Context], Sequence[Option]]
    nothing: str = "–"
    usual: tuple[Any, ...] = ()
    none_yet: str = ""
    """Said in the list while the drill holds no such value."""


@dataclass(frozen=True, slots=True)
class Number:
    """A whole number, None where the box is empty and ``optional``. ``word`` is a value that stands beside numbers."""

    least: int = 0
    most: int = 1000
    unit: str = ""
    optional: bool = True
    word: str | None = None
    usual: int | None = None


@dataclass(frozen=True, slots=True)
class Span:
    """Two whole numbers, the least and the most, or None."""

    least: int = 1
    most: int = 100


@dataclass(frozen=True, slots=True)
class Measure:
    """A distance in metres, None where the box is empty and ``optional``. ``words`` may stand for one ("knee")."""

    least: float = 0.0
    most: float = 100.0
    optional: bool = True
    words: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Line:
    """One line of text; an empty one is None where ``optional``.

    With ``follows`` it is read by a card, with its tokens as words: people and sides in it follow the drill.
    """

    hint: str = ""
    optional: bool = False
    follows: bool = False


@dataclass(frozen=True, slots=True)
class Block:
    """Text of more than one line; people and sides in it follow the drill."""

    hint: str = ""


@dataclass(frozen=True, slots=True)
class Lines:
    """A tuple of texts, one a line; with ``follows`` people and sides in them follow the drill."""

    hint: str = "one a line"
    follows: bool = True


@dataclass(frozen=True, slots=True)
class Day:
    """A date, written year-month-day."""


@dataclass(frozen=True, slots=True)
class Flag:
    """Yes or no, said by ``words``. ``asked`` has a third answer: not known."""

    words: str
    asked: bool = False


@dataclass(frozen=True, slots=True)
class Where:
    """A place, picked or dragged on the court or typed as it is read; ``add`` is the word to press where there is none."""

    add: str = "Say where"
    optional: bool = False


@dataclass(frozen=True, slots=True)
class Points:
    """Corners or points on the way, each picked on the court or typed as it is read: at least so many, at most so many."""

    least: int = 0
    most: int | None = None
    one: str = "corner"


@dataclass(frozen=True, slots=True)
class Pairs:
    """A map from one value to another, a row a pair. ``values`` None asks for whole numbers."""

    keys: Callable[[Context], Sequence[Option]]
    values: Callable[[Context], Sequence[Option]] | None
    joined: str = "to"


@dataclass(frozen=True, slots=True)
class Rounds:
    """Rows of letters: who has which job, round by round."""


@dataclass(frozen=True, slots=True)
class Translations:
    """Texts in other languages: a line "language: text = translation" each."""


@dataclass(frozen=True, slots=True)
class One:
    """A record inside this one, made by ``make`` where there is none; ``add`` is the word on the button for it.

    ``usual`` are the words for what ``make`` makes, where that is the usual answer.
    """

    make: Callable[[Context], Any]
    add: str = "Say it"
    optional: bool = True
    usual: str = ""


@dataclass(frozen=True, slots=True)
class Cost:
    """What follows: an outcome, said in one row. ``usual`` are the words for what ``make`` makes, where that is usual."""

    make: Callable[[Context], Any]
    optional: bool = True
    usual: str = ""


@dataclass(frozen=True, slots=True)
class Hits:
    """From which hit of a rally to which: a pair of numbers, the second None for "to the end"."""


@dataclass(frozen=True, slots=True)
class Several:
    """Any number of records inside this one. ``least`` of them cannot be removed."""

    make: Callable[[Context], Any]
    add: str
    least: int = 0


@dataclass(frozen=True, slots=True)
class Kinds:
    """A record inside this one that is of one of several types. ``tag`` is the field that tells them apart.

    ``turn`` makes one type of another, where anything of it can be kept; else a new one is made.
    """

    tag: str
    options: tuple[tuple[str, str, Callable[[Context], Any]], ...]
    turn: Callable[[Any, str], Any] | None = None


@dataclass(frozen=True, slots=True)
class Either:
    """A tuple of records of one of two types: events that must have happened, or places a ball must be in."""

    first: Several
    first_words: str
    second: Several
    second_words: str
    is_second: Callable[[Any], bool]
    neither: str = "always"


Kind = (
    Choice
    | Pick
    | Many
    | Number
    | Span
    | Measure
    | Line
    | Block
    | Lines
    | Day
    | Flag
    | Where
    | Points
    | Pairs
    | Rounds
    | Translations
    | One
    | Cost
    | Hits
    | Several
    | Kinds
    | Either
)


def always(_: Any) -> bool:
    """Return True: the field is asked for whatever the record holds."""
    return True


@dataclass(frozen=True, slots=True)
class Part:
    """A value that a row shows which is no field of its record: part of one, or two at once.

    ``fits`` says which records have it; ``get`` returns it, ``put`` a record with another one; ``holds`` are the fields
    of the record that it stands for.
    """

    get: Callable[[Any], Any]
    put: Callable[[Any, Any, Context], Any]
    holds: tuple[str, ...]
    fits: Callable[[Any], bool] = always
    empty: Any = None


@dataclass(frozen=True, slots=True)
class Field:
    """One row of a form. ``shown`` says for which records it matters; ``more`` keeps it behind the word "More".

    ``offered`` says for which records its usual answer is the usual one. ``part`` is how its value is read and put where
    it is no field of the record; ``name`` then only names the row.
    What is filled in shows all the same, unless it is ``drawn``: the court shows that better.
    """

    name: str
    label: str
    kind: Kind
    shown: Callable[[Any], bool] = field(default=always)
    offered: Callable[[Any], bool] = field(default=always, kw_only=True)
    more: bool = False
    drawn: bool = False
    part: Part | None = None
    spoken: str = ""
    """What a screen reader says for it, where the label does not."""

    @property
    def holds(self) -> tuple[str, ...]:
        """Return the fields of the record that the row stands for."""
        return (self.name,) if self.part is None else self.part.holds

    def fits(self, record: Any) -> bool:
        """Whether ``record`` has this value at all."""
        return self.part is None or self.part.fits(record)

    def get(self, record: Any) -> Any:
        """Return the value."""
        return getattr(record, self.name) if self.part is None else self.part.get(record)

    def put(self, record: Any, value: Any, context: Context) -> Any:
        """Return ``record`` with another value; raise pydantic's ``ValidationError`` where it does not fit."""
        return record.changed(**{self.name: value}) if self.part is None else self.part.put(record, value, context)

    def is_filled(self, record: Any) -> bool:
        """Whether the value is another than that of a record in which it is not said."""
        if self.part is not None:
            return bool(self.get(record) != self.part.empty)
        left = type(record).model_fields[self.name].get_default(call_default_factory=True)
        return bool(getattr(record, self.name) != left)


Table = tuple[Field, ...]


def words(*values: str, **said: str) -> Options:
    """Return options whose words are the values themselves, but for those in ``said`` (spaces written as _)."""
    spoken = {name.replace("_", " "): text for name, text in said.items()}
    return tuple((value, spoken.get(value, value)) for value in values)
