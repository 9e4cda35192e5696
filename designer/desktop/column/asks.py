"""What the card asks for: questions that stand where their answers will stand, and what a press on each one opens."""

from __future__ import annotations

from collections.abc import Collection, Iterable
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any, Final

from designer.drill.conditions import In
from designer.drill.drill import Drill
from designer.drill.setting import At, Setting
from designer.wording.sentence import Sentence, sentence

if TYPE_CHECKING:
    from designer.wording.card import Reader, Section

AT_ONCE: Final = 3
"""How many questions a new card asks; the rest come once its first card is made."""

HEADINGS: Final = {
    "start": "Start",
    "steps": "What happens",
    "bounds": "Not allowed",
    "rules": "Rules",
    "points": "Points",
    "swap": "Swap",
    "cues": "Remember",
    "watch": "Watch for",
    "care": "Take care",
}
"""The sections that a question can call into being, in the order of a card."""

_MAKES: Final = {
    "question:start": "start",
    "question:rules": "rule",
    "question:points": "points",
    "question:finish": "finish",
    "ask:shot": "shot",
    "ask:swap": "swap",
    "ask:cues": "cues",
    "ask:watch_for": "watch_for",
    "ask:safety": "safety",
}
"""Questions that are answered by a record or a text that is not there yet."""

_FIELDS: Final = {
    "bad": "bad",
    "cost": "breach",
    "beside": "beside",
    "opens": "until",
    "failed": "failed",
    "from-middle": "must.from_middle",
    "run": "during",
    "to": "to",
    "last-rally": "last_rally",
    "level": "level",
    "moves": "moves",
}
"""Questions that are answered by a field of the record they name."""

_HOUSE: Final = {
    "doubt": "in_doubt",
    "caller": "called_by",
    "come-in": "come_in",
    "played-feed": "feed_played",
    "stop": "stopped",
}
"""Questions that are answered once for the whole drill."""

_PLACES: Final = {"edge": "line", "judged": "judged", "volleyed": "volleyed"}
"""Questions that are answered deep inside the record they name second: in a place that it judges by."""


_SHEETS: Final = {
    "start": ("drill:house", ""),
    "bounds": ("drill:house", ""),
    "rules": ("drill:house", ""),
    "layout": ("drill:court", ""),
    "you": ("drill:facts", ""),
    "care": ("drill:words", "safety"),
}
"""What opens for a sentence that is about no record: the sheet that its section is written from, and the field in it."""

_TEXTS: Final = {"cues": ("drill:words", "cues"), "watch": ("drill:words", "watch_for")}
"""Sections of texts as they were typed: whatever they speak of, their text is what a press is meant for."""

_CARE: Final = {
    "care:stop": ("drill:house", "stopped"),
    "care:accepted": ("drill:papers", "accepted"),
    "care:room": ("drill:court", "run_back"),
}

MENUS: Final = ("versions",)
"""What a sentence opens that is no form: the menu of versions, for what is said of left-handers."""


def behind(section: str, key: str, about: tuple[str, ...]) -> tuple[tuple[str, str], ...]:
    """Return what a press on a sentence of ``section`` may open, best first: what it is, and the field in its form."""
    if section in _TEXTS:
        return (_TEXTS[section],)
    if section == "left-handed":
        return (("versions", ""),)
    records = tuple((id, "") for id in about)
    care = next((sheet for start, sheet in _CARE.items() if key.startswith(start)), None)
    if section == "care" and care is not None:
        return (care, *records) if key.startswith("care:accepted") else (*records, care)
    return (*records, _SHEETS[section]) if section in _SHEETS else records


@dataclass(frozen=True, slots=True)
class Answer:
    """What a press on a question does: ``makes`` something new, or opens ``about`` at ``field``."""

    makes: str = ""
    about: str = ""
    field: str = ""


def asked(
    drill: Drill, setting: Setting, reader: Reader, sections: Iterable[Section]
) -> dict[str, tuple[Sentence, ...]]:
    """Return the questions by section: those of the card's words, then those for what is said outside of its rules."""
    found = {section.key: tuple(s for s in section.sentences if s.missing) for section in sections}
    own: list[tuple[str, str, str]] = []
    if not setting.shots:
        own.append(("steps", "shot", "Which ball is played first? Draw it."))
    if not setting.swaps and len(setting.spots) > 1:
        own.append(("swap", "swap", "When do you swap?"))
    if not drill.cues:
        own.append(("cues", "cues", "What do you say to the players?"))
    if reader != "player" and not drill.watch_for:
        own.append(("watch", "watch_for", "What do you watch for?"))
    if reader != "player" and not drill.safety:
        own.append(("care", "safety", "What must be looked after on your court?"))
    for section, make, question in own:
        found[section] = (*found.get(section, ()), sentence(f"ask:{make}", question, missing=True))
    return {key: questions for key, questions in found.items() if questions}


def usual_answers(drill: Drill, at: At) -> dict[str, str]:
    """Return the usual answer to each open question that has one, by the question's key; none on a blank court."""
    from designer.wording.questions import questions
    from designer.wording.telling import telling

    told = telling(drill, at)
    if not told.setting.shots:
        return {}
    return {question.asked.key: question.usual for question in questions(told) if question.usual}


def with_usual_answer(drill: Drill, at: At, key: str) -> Drill:
    """Return ``drill`` with the usual answer given to the open question ``key``; as it is where there is none."""
    from designer.review.questions import questions
    from designer.wording.telling import telling

    asked = next((check for check in questions(telling(drill, at)) if check.sentence.key == key), None)
    return drill if asked is None or asked.mend is None else asked.mend(drill)


def first_asked(
    questions: dict[str, tuple[Sentence, ...]], before: Collection[str] = ()
) -> dict[str, tuple[Sentence, ...]]:
    """Return the few questions that a new card asks at once: those of the keys ``before``, then the most wanted."""
    every = [question for group in questions.values() for question in group]
    every.sort(key=lambda question: (question.key not in before, _rank(question.key)))
    kept = {question.key for question in every[:AT_ONCE]}
    return {
        section: left
        for section, group in questions.items()
        if (left := tuple(question for question in group if question.key in kept))
    }


def _rank(key: str) -> int:
    from designer.wording.questions import FIRST

    return next((number for number, start in enumerate(FIRST) if key.startswith(start)), len(FIRST))


def answer_to(question: Sentence, setting: Setting) -> Answer:
    """Return what answers ``question``."""
    if question.key in _MAKES:
        return Answer(makes=_MAKES[question.key])
    kind = question.key.split(":")[1] if question.key.startswith("question:") else ""
    about = question.about[0] if question.about else ""
    if kind in _HOUSE:
        return Answer(about="drill:house", field=_HOUSE[kind])
    if kind in _PLACES and len(question.about) > 1:
        record = setting.find(question.about[1])
        return Answer(about=question.about[1], field=_holder(record, about, _PLACES[kind]))
    if kind == "unreached":
        return Answer(makes=f"unreached {about}")
    if kind in ("extra", "comes-in"):
        swap = next(iter(setting.swaps), "")
        field = "note" if kind == "extra" else "moves"
        return Answer(about=swap, field=field) if swap else Answer(makes="swap")
    return Answer(about=about, field=_FIELDS.get(kind, ""))


def _holder(record: Any, area: str, field: str) -> str:
    """Return the name of the row for ``record`` with a place of ``area`` that leaves ``field`` open, "" for none."""

    def open_in(value: Any) -> bool:
        return any(place.area == area and getattr(place, field) is None for place in _places(value))

    if record is None:
        return ""
    name = next((str(name) for name, value in record if open_in(value)), "")
    if name != "must":
        return name
    if not open_in(record.must.where[:1]):
        return "must.others"
    return "must.deed" if field == "judged" else f"must.{field}"


def _places(value: Any) -> Iterable[In]:
    if isinstance(value, In):
        yield value
    elif isinstance(value, tuple):
        for each in value:
            yield from _places(each)
    elif hasattr(value, "model_fields_set"):
        for _, each in value:
            yield from _places(each)
