"""What of a handbook's own words cannot be printed: scripts that are declined, and signs that no face has."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from designer.cards.text import Typesetter, Unprintable, declined_words, right_to_left
from designer.cards.whereabouts import texts, where_written
from designer.drill.base import Record
from designer.drill.brand import Brand
from designer.drill.drill import Drill
from designer.drill.handbook import Handbook, Remembered


def refuse_declined(book: Handbook, brand: Brand | None) -> None:
    """Raise ``Unprintable`` where the handbook or its brand has letters that are written from right to left."""
    for name, record in _named(book, brand):
        sign = right_to_left(text for _, text in texts(record))
        if sign:
            raise Unprintable(declined_words(sign, f"in {where_written(record, sign)[0]} of the {name}", "handbook"))


def declined(drill: Drill) -> str:
    """Return why ``drill`` cannot stand in a handbook, "" where nothing in it is written from right to left."""
    sign = right_to_left(text for _, text in texts(drill))
    return declined_words(sign, f"in {where_written(drill, sign)[0]}", "sheet") if sign else ""


def declined_titles(gone: Mapping[str, Remembered]) -> tuple[str, ...]:
    """Return a sentence about each title of the edition before that is written from right to left; {number: drill}."""
    return tuple(
        f"The title of {number} in the record of the edition before is of a script that is written from right to left, which "
        "this program cannot set; what has changed names the number without it."
        for number, one in gone.items()
        if right_to_left((one.title,))
    )


def lacking(
    book: Handbook, brand: Brand | None, typesetter: Typesetter, told: Sequence[str], quoted: Mapping[str, str]
) -> tuple[str, ...]:
    """Return a sentence about each sign that could not be printed, with where in the handbook or its brand it stands.

    Signs of drills, which the sentences ``told`` tell of, are not told again. ``quoted`` is {place: text} of what is
    printed from elsewhere: why a drill is left out, a title of the edition before.
    """
    found = []
    for sign in typesetter.lacking():
        code = f"U+{ord(sign):04X}"
        places = [f"{place} of the {name}" for name, one in _named(book, brand) for place in where_written(one, sign)]
        places += [place for place, text in quoted.items() if sign in text]
        if places or not any(code in words for words in told):
            where = f" in {', '.join(places)}" if places else ""
            found.append(f"The font has no sign for {sign} ({code}){where}; a question mark stands in its place.")
    return tuple(found)


def _named(book: Handbook, brand: Brand | None) -> tuple[tuple[str, Record], ...]:
    return (("handbook", book), ("brand", brand)) if brand is not None else (("handbook", book),)
