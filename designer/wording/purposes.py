"""What a target is for, in a coach's words, and how often it should then be hit."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any, Final

from designer.drill.base import Purpose
from designer.drill.conditions import Event
from designer.drill.items import Area, Hoop
from designer.drill.rules import Keep, Points, Rule
from designer.wording.counts import capital, listed, number
from designer.wording.sentence import Sentence, sentence
from designer.wording.telling import Telling
from designer.wording.where import area_name

MEANT: Final[dict[Purpose, str]] = {
    "in a row": "a run in a row",
    "normal aim": "the normal aim of the drill",
    "bonus": "a bonus",
}
"""What a target can be said to be for."""


def wished_words(purpose: str) -> str:
    """Return how often a target of this purpose is usually hit: "two to four balls in ten"."""
    from designer.numbers.accuracy import PURPOSES

    least, most = (round(rate * 10) for rate in PURPOSES[purpose])
    return f"{number(least)} to {number(most)} balls in ten"


def purposes(told: Telling) -> Iterator[Sentence]:
    """Yield, for whoever runs the drill, what its targets are said to be for."""
    setting = told.setting
    for record in (*setting.rules.values(), *setting.points.values(), *setting.items.values()):
        if not isinstance(record, Rule | Points | Area | Hoop) or record.purpose is None:
            continue
        areas = list(dict.fromkeys(_areas(record)))
        if not areas:
            continue
        names = capital(listed([area_name(told, area) for area in areas]))
        link = "is for" if record.purpose == "in a row" else "is"
        text = f"{names} {link} {MEANT[record.purpose]}: {wished_words(record.purpose)} should hit {'it' if len(areas) == 1 else 'them'}"
        yield sentence(f"purpose:{record.id}", text, record.id, *(area for area in areas if " " not in area))


def _areas(record: Any) -> Iterator[str]:
    """Yield the areas in which a record wants a ball to land."""
    if isinstance(record, Area | Hoop):
        yield record.id
    elif isinstance(record, Rule) and isinstance(record.must, Keep):
        yield from (place.area for place in record.must.where)
    elif isinstance(record, Points):
        for event in record.on:
            yield from _landed(event)


def _landed(event: Event) -> Iterator[str]:
    yield from (place.area for place in event.where)
    for inner in event.and_:
        yield from _landed(inner)
