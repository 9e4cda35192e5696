"""What a check is, and what every check looks at."""

from __future__ import annotations

import difflib
from collections.abc import Callable, Iterable
from dataclasses import dataclass
from typing import Any, Literal

from designer.drill.drill import Drill
from designer.drill.movement import Run, Shot
from designer.drill.people import Spot
from designer.drill.rules import Finish, Part, Points, Rule, Start, Swap
from designer.drill.setting import At
from designer.wording.names import name_of, shot_name
from designer.wording.sentence import Sentence, ref, sentence
from designer.wording.telling import Telling

Weight = Literal["error", "caution", "suggestion"]
Mend = Callable[[Drill], Drill]


@dataclass(frozen=True, slots=True)
class Answer:
    """One answer to what a check asks: its words, and the edit that gives it."""

    words: str
    give: Mend


@dataclass(frozen=True, slots=True)
class Check:
    """One thing the review found.

    ``key`` names the kind of finding, and is what an author accepts. ``at`` is the setting it is about, None for the
    drill as a whole; ``about`` the ids it concerns. ``danger``: somebody could be hurt. ``mend`` is the edit that puts
    it right, where there is one that cannot be wrong or that gives the usual answer; ``answers`` those to choose from
    where only the author knows.
    """

    weight: Weight
    key: str
    sentence: Sentence
    at: At | None = None
    about: tuple[str, ...] = ()
    danger: bool = False
    mend: Mend | None = None
    answers: tuple[Answer, ...] = ()


def check(
    weight: Weight,
    key: str,
    text: str,
    *about: str,
    at: At | None = None,
    danger: bool = False,
    mend: Mend | None = None,
    answers: tuple[Answer, ...] = (),
) -> Check:
    """Return a check whose sentence is ``text``, names in it marked by ``ref``."""
    words = sentence(f"check:{key}:{':'.join(about)}", text, *about)
    return Check(weight, key, words, at, about, danger, mend, answers)


def nearest(word: str, known: Iterable[str]) -> str | None:
    """Return the known word that ``word`` was most likely meant to be, None where nothing is near."""
    found = difflib.get_close_matches(word, sorted(set(known)), 1, 0.7)
    return found[0] if found else None


def hint(word: str, known: Iterable[str]) -> str:
    """Return "; did you mean “cone”?" where a known word is near, else ""."""
    found = nearest(word, known)
    return "" if found is None else f"; did you mean “{found}”?"


def called(told: Telling, id: str) -> str:
    """Return what a card calls a thing, a person or a shot; the id in quotes where it has no name."""
    return name_of(told, id) or ref(id, f"“{id}”")


def record_name(told: Telling, record: Any) -> str:
    """Return what a check calls a record of the setting, marked by its id."""
    if isinstance(record, Shot):
        return shot_name(told, record)
    return ref(record.id, words) if (words := _record_words(record)) is not None else called(told, record.id)


def _record_words(record: Any) -> str | None:
    if isinstance(record, Spot):
        return f"{record.job}’s place"
    if isinstance(record, Run):
        return f"{record.by}’s run"
    if isinstance(record, Part):
        return f"the {record.kind} part"
    if isinstance(record, Rule):
        return f"the rule for {' and '.join(record.who)}" if record.who else "the rule for all"
    words: tuple[tuple[type, str], ...] = (
        (Points, "a line of the scoring"),
        (Start, "the start"),
        (Finish, "the finish"),
        (Swap, "the swap"),
    )
    return next((text for kind, text in words if isinstance(record, kind)), None)
