"""Suggestions: what decides rallies and has not been said, each with the edit that gives the usual answer.

What is asked, and in which words, is the wording's: see ``designer.wording.questions``.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from functools import partial
from typing import Any, Final

from designer.drill.conditions import Event, In, Outcome
from designer.drill.drill import Drill
from designer.drill.edits import put
from designer.drill.rules import Points, Start
from designer.drill.setting import At, setting_at
from designer.review.check import Check, Mend
from designer.review.walk import replaced, value_at, values_in
from designer.wording import questions as wording
from designer.wording.asking import Question
from designer.wording.sentence import Sentence
from designer.wording.telling import Telling


def questions(told: Telling) -> Iterator[Check]:
    """Yield a suggestion for each question that the setting leaves open; a blank court is asked nothing."""
    if not told.setting.shots:
        return
    for found in wording.questions(told):
        asked = found.asked
        about = tuple(id for id in asked.about if " " not in id)
        mend = _mend(told, found, asked.about)
        yield Check("suggestion", found.kind, _as_check(found), told.at, about, mend=mend)


def _as_check(found: Question) -> Sentence:
    """Return the question with its usual answer."""
    asked = found.asked
    parts = (*asked.parts, f" Usual: {found.usual}.") if found.usual else asked.parts
    return Sentence(asked.key, parts, asked.about)


def _mend(told: Telling, found: Question, about: tuple[str, ...]) -> Mend | None:
    """Return the edit that gives the usual answer, None where there is none."""
    if found.kind == "start":
        firsts = [step.shot.id for step in told.sequence.steps if step.digit == 1]
        return partial(_with_start, at=told.at, shot=firsts[0]) if firsts else None
    if found.kind in _EDGES:
        mend = _EDGES[found.kind] if found.usual else None
        return None if mend is None else partial(mend, at=told.at, id=about[-1], area=about[0])
    if found.kind in _HOUSE:
        return partial(_with_house, values=_HOUSE[found.kind])
    if found.kind == "unreached":
        return partial(_with_replay, at=told.at, shot=about[0])
    values = _FIELDS.get(found.kind) if found.usual else None
    return None if values is None else partial(values, at=told.at, id=about[0])


def _with_start(drill: Drill, *, at: At, shot: str) -> Drill:
    return put(drill, at, Start(id=_free_id(setting_at(drill, at).ids(), "start"), shot=shot))


def _with_replay(drill: Drill, *, at: At, shot: str) -> Drill:
    missed = Event(what="missed", of=(shot,), untouched=True)
    id = _free_id(setting_at(drill, at).ids(), "out-of-reach")
    return put(drill, at, Points(id=id, on=(missed,), gives=Outcome(then="replay")))


def _free_id(taken: frozenset[str], stem: str) -> str:
    return next(id for n in range(1, 10_000) if (id := stem if n == 1 else f"{stem}-{n}") not in taken)


def _with_house(drill: Drill, *, values: dict[str, Any]) -> Drill:
    return drill.changed(house=drill.house.changed(**values))


_HOUSE: Final[dict[str, dict[str, Any]]] = {
    "caller": {"called_by": ("receiver",)},
    "doubt": {"in_doubt": "replay"},
    "come-in": {"come_in": ("anyone",)},
    "played-feed": {"feed_played": "accepted"},
    "stop": {"stopped": Outcome(then="replay")},
}


def _with_values(drill: Drill, *, at: At, id: str, values: dict[str, Any]) -> Drill:
    record = setting_at(drill, at).find(id)
    return drill if record is None else put(drill, at, record.changed(**values))


def _from_middle(drill: Drill, *, at: At, id: str) -> Drill:
    rule = setting_at(drill, at).find(id)
    return drill if rule is None else put(drill, at, rule.changed(must=rule.must.changed(from_middle="either")))


_FIELDS: Final[dict[str, Callable[..., Drill]]] = {
    "bad": partial(_with_values, values={"bad": Outcome(then="replay")}),
    "last-rally": partial(_with_values, values={"last_rally": "played out"}),
    "level": partial(_with_values, values={"level": "one more each"}),
    "from-middle": _from_middle,
}


def _by_bounce(drill: Drill, *, at: At, id: str, area: str) -> Drill:
    return _with_places(drill, at, id, area, "judged", "bounce")


def _edge_in(drill: Drill, *, at: At, id: str, area: str) -> Drill:
    return _with_places(drill, at, id, area, "line", "in")


_EDGES: Final[dict[str, Callable[..., Drill] | None]] = {"judged": _by_bounce, "edge": _edge_in, "volleyed": None}


def _with_places(drill: Drill, at: At, id: str, area: str, field: str, answer: str) -> Drill:
    """Return ``drill`` with an open field of every place ``area`` in one record answered, where a ball is judged."""
    record = setting_at(drill, at).find(id)
    if record is None:
        return drill
    for path, value in values_in(record):
        if not isinstance(value, In) or value.area != area or getattr(value, field) is not None:
            continue
        if not _strikes(value_at(record, path[:-2])) and (field == "judged" or value.judged == "bounce"):
            record = replaced(record, path, value.changed(**{field: answer}))
    return put(drill, at, record)


def _strikes(event: Any) -> bool:
    """Whether it is a ball that strikes a thing: nothing has to be judged about where it is."""
    return isinstance(event, Event) and event.what == "struck"
