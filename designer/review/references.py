"""Errors: a record that names something that is not there, and orders that run in a circle."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from functools import partial
from typing import Any, Final, Literal

from designer.court.regions import line_words, region_words
from designer.court.standards import court_names, court_standard, known_court
from designer.drill.base import Place, place
from designer.drill.drill import Drill
from designer.drill.edits import put, with_setting
from designer.drill.items import Area, Hoop, Line
from designer.drill.movement import Run, Shot
from designer.drill.people import Job, Spot
from designer.drill.places import anchor, is_letter
from designer.drill.rules import UnknownMust
from designer.drill.setting import At, Setting, setting_at
from designer.play.sequence import circle
from designer.review.check import Check, Mend, called, check, hint, nearest, record_name
from designer.review.walk import Path, replaced, value_at, values_in
from designer.wording.sentence import ref
from designer.wording.telling import Telling

Expected = Literal["person", "shot", "part", "shot or run", "place", "area"]

_FIELDS: Final[dict[str, Expected]] = {
    "job": "person",
    "hand_of": "person",
    "by": "person",
    "who": "person",
    "called_by": "person",
    "during": "shot",
    "shots": "shot",
    "shot": "shot",
    "parts": "part",
    "of": "shot or run",
    "area": "area",
}
_KEYS: Final = ("serves", "score", "moves", "table")
_WORDS: Final = {
    "shot": "a shot",
    "part": "a part of the rally",
    "shot or run": "a shot or a run",
    "place": "a thing, a person or a shot",
    "area": "an area, a line or a hoop",
}


def reference_errors(told: Telling) -> Iterator[Check]:
    """Yield an error for each name in the setting that names nothing, or something of the wrong kind."""
    for _, record in told.setting.records():
        for path, name, expected in names_in(record):
            found = _error(told, record, path, name, expected)
            if found is not None:
                yield found
    yield from _in_play(told)
    yield from _without_a_place(told)
    yield from _circles(told)
    yield from _starts(told)
    yield from _unknown_rules(told)


def names_in(record: Any) -> Iterator[tuple[Path, str, Expected]]:
    """Yield (path, name, what it should be) for every id and letter that ``record`` names."""
    for path, value in values_in(record):
        if not isinstance(value, str | dict | Place):
            continue
        field = next((step for step in reversed(path) if isinstance(step, str)), "")
        if any(key in path for key in _KEYS):
            if isinstance(value, dict):
                yield from (((*path, key), key, "person") for key in value)
            elif isinstance(value, str):
                yield path, value, "person"
        elif isinstance(value, str) and field in _FIELDS:
            yield path, value, _FIELDS[field]
        elif isinstance(value, str) and path == ("after",):
            yield path, value, "shot" if isinstance(record, Shot) else "part"
        elif isinstance(value, Place) and value.on is not None:
            yield (*path, "on"), value.on, "place"


def _known(setting: Setting, told: Telling, expected: Expected) -> set[str]:
    if expected == "shot":
        return set(setting.shots)
    if expected == "part":
        return set(setting.parts)
    if expected == "shot or run":
        return {*setting.shots, *setting.runs}
    if expected == "place":
        return {*setting.items, *setting.spots, *setting.shots, *setting.runs, *(s.job for s in setting.spots.values())}
    areas = {item.id for item in setting.items.values() if isinstance(item, Area | Line | Hoop)}
    return {*areas, *region_words(told.ground), *line_words(told.ground)}


def _error(told: Telling, record: Any, path: Path, name: str, expected: Expected) -> Check | None:
    if expected == "person":
        return _no_job(told, record, name) if is_letter(name) and told.drill.job(name) is None else None
    known = _known(told.setting, told, expected)
    who = record_name(told, record)
    if name in known:
        return _tied_to_itself(told, record, path, name) if expected == "place" else None
    if expected == "place" and is_letter(name):
        return check("error", "points-nowhere", f"{who} names {name}, who has no place here", record.id, at=told.at)
    mend = _renaming(told, record, path, name, known)
    if told.setting.find(name) is not None:
        text = f"{who} names {called(told, name)}, but {_WORDS[expected]} is expected"
        return check("error", "wrong-kind", text, record.id, name, at=told.at, mend=mend)
    kind = "a part or line of this court" if " " in name else _WORDS[expected]
    text = f"{who} names “{name}” where {kind} is expected, and there is none of that name{hint(name, known)}"
    return check("error", "points-nowhere", text, record.id, at=told.at, mend=mend)


def _renaming(told: Telling, record: Any, path: Path, name: str, known: set[str]) -> Mend | None:
    """Return the edit that writes the name that was meant, or takes a name out of a list or an order."""
    if path == ("after",):
        order = told.setting.shots if isinstance(record, Shot) else told.setting.parts
        known = {id for id in known if not _comes_after(order, id, record.id)}
    meant = nearest(name, known)
    if meant is None and not (isinstance(path[-1], int) or path in (("after",), ("during",))):
        return None
    return partial(_with_name, at=told.at, id=record.id, path=path, name=meant)


def _comes_after(order: Mapping[str, Any], id: str | None, earlier: str) -> bool:
    """Whether ``id`` is ``earlier`` or comes after it, be it by way of others: going after it would make a circle."""
    seen: set[str] = set()
    while id is not None and id in order and id not in seen:
        if id == earlier:
            return True
        seen.add(id)
        id = order[id].after
    return False


def _with_name(drill: Drill, *, at: At, id: str, path: Path, name: str | None) -> Drill:
    record = setting_at(drill, at).find(id)
    return drill if record is None else put(drill, at, replaced(record, path, name))


def _no_job(told: Telling, record: Any, name: str) -> Check:
    def with_job(drill: Drill) -> Drill:
        return drill if drill.job(name) is not None else drill.changed(jobs=(*drill.jobs, Job(letter=name)))

    text = f"{record_name(told, record)} names {name}, but the drill has no job {name}"
    return check("error", "no-job", text, record.id, at=told.at, mend=with_job)


def _tied_to_itself(told: Telling, record: Any, path: Path, name: str) -> Check | None:
    stands: Place = value_at(record, path[:-1])
    if anchor(told.setting, name) is not None or not isinstance(stands, Place):
        return None
    lost = told.setting.find(name)
    if lost is not None and getattr(lost, "to", True) is None:
        text = f"{record_name(told, record)} goes to where {called(told, name)} lands, but that is not drawn"
    else:
        text = f"{record_name(told, record)} is tied to {called(told, name)}, whose own place leads nowhere"
    return check("error", "points-nowhere", text, record.id, name, at=told.at)


def _in_play(told: Telling) -> Iterator[Check]:
    name = told.setting.in_play
    known = _known(told.setting, told, "area")
    if name is None or name in known:
        return
    meant = nearest(name, known)

    def with_nearest(drill: Drill) -> Drill:
        from dataclasses import replace

        return with_setting(drill, told.at, replace(setting_at(drill, told.at), in_play=meant))

    text = f"“{name}” is said to be in play, but this court has no such part{hint(name, known)}"
    yield check("error", "points-nowhere", text, at=told.at, mend=None if meant is None else with_nearest)


def _without_a_place(told: Telling) -> Iterator[Check]:
    setting = told.setting
    acting: dict[str, Shot | Run] = {run.by: run for run in setting.runs.values()}
    acting.update((shot.by, shot) for shot in setting.shots.values())
    for letter, record in sorted(acting.items()):
        if setting.spot_of(letter) is None and told.drill.job(letter) is not None:
            text = f"{letter} has no place on the court, so {record_name(told, record)} starts from nowhere"
            mend = partial(_with_spot, at=told.at, letter=letter, baseline=told.ground.baseline)
            yield check("error", "no-place", text, record.id, at=told.at, mend=mend)


def _with_spot(drill: Drill, *, at: At, letter: str, baseline: float) -> Drill:
    """Return ``drill`` with ``letter`` a stride behind a baseline, at the end where fewer stand."""
    setting = setting_at(drill, at)
    near = sum(spot.place.at[1] < 0 for spot in setting.spots.values())
    end = -1 if near * 2 <= len(setting.spots) else 1
    taken = setting.ids()
    id = next(name for n in range(1000) if (name := f"spot-{letter.lower()}{n or ''}") not in taken)
    return put(drill, at, Spot(id=id, job=letter, place=place(0.0, end * (baseline + 0.9144))))


def _circles(told: Telling) -> Iterator[Check]:
    ring = circle(told.setting)
    if ring:
        names = ", ".join(ref(id, f"“{id}”") for id in sorted(ring))
        text = f"the shots {names} come after one another in a circle: one of them must be the first"
        yield check("error", "shot-circle", text, *sorted(ring), at=told.at)
    parts = told.setting.parts
    for part in parts.values():
        seen = [part.id]
        while (after := parts[seen[-1]].after) is not None and after in parts and after not in seen:
            seen.append(after)
        if after == part.id and part.id == min(seen):
            text = "the parts of the rally come after one another in a circle: one of them must be the first"
            yield check("error", "part-circle", text, *sorted(seen), at=told.at)


def _starts(told: Telling) -> Iterator[Check]:
    for start in told.setting.starts.values():
        if start.shot is not None:
            continue
        firsts = [s for s in told.sequence.steps if s.digit == 1 and (not start.by or s.hitter in start.by)]
        mend = None
        if firsts and start.once is None:
            shot = firsts[0].shot.id
            mend = partial(_with_name, at=told.at, id=start.id, path=("shot",), name=shot)
        text = "the start does not say with which shot it begins" if firsts else "there is no shot to start with"
        yield check("error", "no-shot", text, start.id, at=told.at, mend=mend)


def _unknown_rules(told: Telling) -> Iterator[Check]:
    for rule in told.setting.rules.values():
        if isinstance(rule.must, UnknownMust):
            text = (
                f"{record_name(told, rule)} demands “{rule.must.do}”, which this program does not know: "
                "nobody can play by it until it is said in another way"
            )
            yield check("error", "unknown-rule", text, rule.id, at=told.at)


def drill_errors(drill: Drill) -> Iterator[Check]:
    """Yield errors of the drill as a whole: a court that is not known, a main progression that is not there."""
    court = drill.court
    if not known_court(court.standard):
        yield _unknown_court(court.standard, "standard", "the tennis court is drawn instead")
    host = court.hosted_on
    if host is not None and not known_court(host):
        yield _unknown_court(host, "hosted_on", "its lines are left out")
    elif host is not None and known_court(court.standard) and host not in court_standard(court.standard).hosted_on:
        text = f"nothing is known of a {court.standard} court laid out on a {host} court; its lines are left out"
        yield check("caution", "no-host", text)
    ids = [progression.id for progression in drill.progressions]
    if drill.main is not None and drill.main not in ids:

        def without_main(changed: Drill) -> Drill:
            return changed.changed(main=None)

        text = f"the main progression “{drill.main}” is not there; the first is taken{hint(drill.main, ids)}"
        yield check("error", "points-nowhere", text, mend=without_main)


def _unknown_court(name: str, field: str, instead: str) -> Check:
    meant = nearest(name, court_names())

    def renamed(drill: Drill) -> Drill:
        return drill.changed(court=drill.court.changed(**{field: meant}))

    known = ", ".join(court_names())
    text = f"there is no court called “{name}”; {instead}. There are: {known}"
    return check("error", "no-court", text, mend=None if meant is None else renamed)
