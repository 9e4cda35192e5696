"""Suggestions: what decides rallies and has not been said. Absent means unanswered, never a default."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from functools import partial
from typing import Any, Final

from designer.drill.base import Noted
from designer.drill.conditions import Event, In, Outcome
from designer.drill.drill import Drill, House
from designer.drill.edits import put
from designer.drill.movement import FEEDS, SERVES
from designer.drill.rules import Finish, Keep, Points, Rule, Start
from designer.drill.setting import At, setting_at
from designer.play.rally import parts
from designer.review.check import Check, Mend, called, check, record_name
from designer.review.walk import replaced, value_at, values_in
from designer.wording.names import shot_name
from designer.wording.telling import Telling

_WHOLE: Final = ("singles court", "doubles court")
"""Parts of the court whose outer lines are in by the rules of the game."""
_FEET: Final = ("one foot", "both feet")


def questions(told: Telling) -> Iterator[Check]:
    """Yield a suggestion for each question that the setting leaves open."""
    yield from _start(told)
    for start in _sorted(told.setting.starts):
        yield from _bad_ball(told, start)
    yield from _parts(told)
    for record in (*_sorted(told.setting.rules), *_sorted(told.setting.points), *_sorted(told.setting.starts)):
        yield from _judged(told, record)
    for rule in _sorted(told.setting.rules):
        if rule.breach is None:
            yield check(
                "suggestion", "breach", f"what does a breach of {record_name(told, rule)} cost?", rule.id, at=told.at
            )
    yield from _scoring(told)
    yield from _finish(told)
    yield from _who_calls(told)
    yield from _in_doubt(told)
    yield from _ball_on_court(told)
    yield from _runs(told)


def _sorted(records: Any) -> list[Any]:
    return [records[id] for id in sorted(records)]


def _start(told: Telling) -> Iterator[Check]:
    setting = told.setting
    if _played(told) and not setting.starts:
        firsts = [step for step in told.sequence.steps if step.digit == 1]
        mend = partial(_with_start, at=told.at, shot=firsts[0].shot.id) if firsts else None
        yield check("suggestion", "no-start", "how does it start?", at=told.at, mend=mend)


def _played(told: Telling) -> bool:
    """Whether a ball is played at all: shadow swings need neither a start nor points."""
    return any(shot.stroke != "shadow swing" for shot in told.setting.shots.values())


def _with_start(drill: Drill, *, at: At, shot: str) -> Drill:
    return put(drill, at, Start(id=_free_id(setting_at(drill, at).ids(), "start"), shot=shot))


def _free_id(taken: frozenset[str], stem: str) -> str:
    return next(id for n in range(1, 10_000) if (id := stem if n == 1 else f"{stem}-{n}") not in taken)


def _bad_ball(told: Telling, start: Start) -> Iterator[Check]:
    shot = told.setting.shots.get(start.shot or "")
    if shot is None or start.bad is not None:
        return
    if shot.stroke in SERVES:
        text = "what does a serve that is not good cost?"
        yield check("suggestion", "bad-feed", text, start.id, at=told.at)
    elif shot.stroke in FEEDS or start.good:
        text = f"what if {shot_name(told, shot)} is bad? Usual: replay"
        mend = _setting(told, start, bad=Outcome(then="replay"))
        yield check("suggestion", "bad-feed", text, start.id, at=told.at, mend=mend)


def _setting(told: Telling, record: Noted, **values: Any) -> Mend:
    """Return the edit that gives fields of a record their usual answer."""
    return partial(_with_values, at=told.at, id=record.id, values=values)


def _with_values(drill: Drill, *, at: At, id: str, values: dict[str, Any]) -> Drill:
    record = setting_at(drill, at).find(id)
    return drill if record is None else put(drill, at, record.changed(**values))


def _parts(told: Telling) -> Iterator[Check]:
    order = parts(told.setting)
    for number, part in enumerate(order):
        if part.kind != "forced":
            continue
        if part.failed is None:
            text = "what if the rally ends in the forced part with no rule broken?"
            yield check("suggestion", "part-failed", text, part.id, at=told.at)
        if not part.until and not part.shots and number + 1 < len(order):
            yield check("suggestion", "opens-when", "when does the forced part end?", part.id, at=told.at)


def _judged(told: Telling, record: Rule | Points | Start) -> Iterator[Check]:
    """Yield what is open about the places a record names: by what they are judged, and what their edge counts as."""
    places = [
        (path, value)
        for path, value in values_in(record)
        if isinstance(value, In) and not _strikes(value_at(record, path[:-2]))
    ]
    if isinstance(record, Rule) and not isinstance(record.must, Keep):
        places = [(path, value) for path, value in places if path[0] == "when"]
    open_judged = [(path, place) for path, place in places if place.judged is None]
    if open_judged:
        path, place = open_judged[0]
        text = f"what decides whether it is {_in(told, place)}: the bounce, the contact or the feet? Usual: the bounce"
        mend = partial(_everywhere, at=told.at, id=record.id, value=place.changed(judged="bounce"), paths=[path])
        yield check("suggestion", "judged", text, record.id, *_ids(place), at=told.at, mend=mend)
    edges = [(path, place) for path, place in places if place.line is None and _has_an_edge(told, place)]
    if edges:
        place = edges[0][1]
        text = f"does the edge of {called(told, place.area)} count as in? Usual: in"
        if " " in place.area or place.area not in told.setting.items:
            text = f"does a line count as in for “{place.area.removeprefix('the ')}”? Usual: in"
        mend = partial(_edges_in, at=told.at, id=record.id)
        yield check("suggestion", "line", text, record.id, *_ids(place), at=told.at, mend=mend)


def _strikes(event: Any) -> bool:
    """Whether it is a ball that strikes a thing: nothing has to be judged about where it is."""
    return isinstance(event, Event) and event.what == "struck"


def _in(told: Telling, place: In) -> str:
    name = f"the {place.area.removeprefix('the ')}" if " " in place.area else called(told, place.area)
    return f"{place.side} {name}" if place.side is not None else f"{'outside' if place.outside else 'in'} {name}"


def _ids(place: In) -> tuple[str, ...]:
    return () if " " in place.area else (place.area,)


def _has_an_edge(told: Telling, place: In) -> bool:
    if place.area in _WHOLE or place.judged in (None, "net"):
        return False
    return getattr(told.setting.items.get(place.area), "care", None) not in ("about", "anywhere")


def _everywhere(drill: Drill, *, at: At, id: str, value: In, paths: list[Any]) -> Drill:
    record = setting_at(drill, at).find(id)
    if record is None:
        return drill
    for path in paths:
        record = replaced(record, path, value)
    return put(drill, at, record)


def _edges_in(drill: Drill, *, at: At, id: str) -> Drill:
    record = setting_at(drill, at).find(id)
    if record is None:
        return drill
    for path, value in list(values_in(record)):
        if isinstance(value, In) and value.line is None and value.judged not in (None, "net"):
            record = replaced(record, path, value.changed(line="in"))
    return put(drill, at, record)


def _scoring(told: Telling) -> Iterator[Check]:
    setting = told.setting
    paid = [points for points in _sorted(setting.points) if points.gives.then == "points"]
    if not paid:
        if _played(told) and not _counts_without_points(setting.finish):
            yield check("suggestion", "no-points", "how are points won?", at=told.at)
        return
    plain = [points for points in paid if any(_is_plain_win(event) for event in points.on)]
    if not plain:
        return
    for points in paid:
        if points not in plain and points.beside is None:
            text = f"when {record_name(told, points)} and the rally won both fit: are both given, or the higher?"
            yield check("suggestion", "beside", text, points.id, plain[0].id, at=told.at)


def _is_plain_win(event: Any) -> bool:
    return event.what == "won" and not (event.and_ or event.when or event.where or event.strokes or event.of)


def _counts_without_points(finish: Finish | None) -> bool:
    """Whether the score is that of the game itself."""
    return finish is not None and finish.kind in ("game", "tie-break")


def _finish(told: Telling) -> Iterator[Check]:
    setting = told.setting
    finish = setting.finish
    if finish is None:
        if setting.shots:
            yield check("suggestion", "no-finish", "how does it end?", at=told.at)
        return
    if finish.kind in ("race", "goal") and finish.to is None:
        yield check("suggestion", "finish-to", "how many does it take?", finish.id, at=told.at)
    if finish.minutes is not None and finish.last_rally is None:
        text = "when time is called, is the last rally played out? Usual: yes"
        mend = _setting(told, finish, last_rally="played out")
        yield check("suggestion", "last-rally", text, finish.id, at=told.at, mend=mend)
    if finish.kind == "total" and finish.to is None and finish.level is None and finish.scores != "all together":
        text = "what if the totals are level? Usual: one more start each"
        mend = _setting(told, finish, level="one more each")
        yield check("suggestion", "level", text, finish.id, at=told.at, mend=mend)


def _needs_a_call(record: Any) -> bool:
    """Whether somebody has to judge something: where a ball bounced, where a foot was, whether a feed was good."""
    if isinstance(record, Start):
        return bool(record.good)
    return any(isinstance(value, In) for _, value in values_in(record))


def _callers(record: Any) -> bool:
    return any(getattr(value, "called_by", ()) for _, value in values_in(record))


def _answers(record: Any) -> bool:
    return any(getattr(value, "in_doubt", None) for _, value in values_in(record))


def _open(told: Telling, answered: Callable[[Any], bool]) -> list[str]:
    setting = told.setting
    records = (*_sorted(setting.rules), *_sorted(setting.points), *_sorted(setting.starts))
    return [record.id for record in records if _needs_a_call(record) and not answered(record)]


def _who_calls(told: Telling) -> Iterator[Check]:
    ids = [] if told.drill.house.called_by else _open(told, _callers)
    if ids:

        def own_lines(drill: Drill) -> Drill:
            return _with_house(drill, called_by=("receiver",))

        text = "who calls? Say it once for the whole drill. Usual: players call their own lines"
        yield check("suggestion", "who-calls", text, *ids, at=told.at, mend=own_lines)


def _in_doubt(told: Telling) -> Iterator[Check]:
    ids = [] if told.drill.house.in_doubt is not None else _open(told, _answers)
    if ids:

        def replay(drill: Drill) -> Drill:
            return _with_house(drill, in_doubt="replay")

        text = "what happens in doubt? Say it once for the whole drill. Usual: replay"
        yield check("suggestion", "in-doubt", text, *ids, at=told.at, mend=replay)


def _with_house(drill: Drill, **values: Any) -> Drill:
    house: House = drill.house
    return drill.changed(house=house.changed(**values))


def _ball_on_court(told: Telling) -> Iterator[Check]:
    if not told.setting.shots or told.drill.house.stopped is not None:
        return
    for points in told.setting.points.values():
        if points.gives.then == "replay" and any(event.what == "called" for event in points.on):
            return

    def replay(drill: Drill) -> Drill:
        return _with_house(drill, stopped=Outcome(then="replay"))

    text = 'what if a ball or a person comes on court? Usual: anyone calls "stop", replay'
    yield check("suggestion", "ball-on-court", text, at=told.at, mend=replay)


def _runs(told: Telling) -> Iterator[Check]:
    if not told.setting.shots:
        return
    for run in _sorted(told.setting.runs):
        if run.during is None:
            text = f"while which ball is {record_name(told, run)} made?"
            yield check("suggestion", "run-when", text, run.id, at=told.at)
