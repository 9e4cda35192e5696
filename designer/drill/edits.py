"""Edits: pure functions from a drill to another drill. The program changes a drill in no other way.

An edit of a setting computes the whole setting as it should be, then stores only what differs from the setting it
lies on. Settings above follow, except where they have their own record.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable
from typing import Any

from designer.drill.base import FARTHEST, Place, Point
from designer.drill.drill import Changes, Drill, Progression, Variation
from designer.drill.ids import Chooser, new_id
from designer.drill.items import Ellipse, Polygon, Rectangle
from designer.drill.kinds import kind_of
from designer.drill.order import circles
from designer.drill.places import anchor, is_letter, moved
from designer.drill.references import renamed
from designer.drill.setting import (
    EMPTY,
    KINDS,
    At,
    Setting,
    all_ids,
    all_settings,
    below,
    changes_at,
    difference,
    resolve,
    setting_at,
    variations,
)


def with_changes(drill: Drill, at: At, changes: Changes) -> Drill:
    """Return ``drill`` with ``changes`` as what the setting at ``at`` has of its own."""

    def own(variation: Variation) -> Variation:
        return variation.changed(changes=changes) if variation.id == at.variation else variation

    def rung(progression: Progression) -> Progression:
        if progression.id != at.progression:
            return progression
        if at.variation is None:
            return progression.changed(changes=changes)
        return progression.changed(
            easier=tuple(map(own, progression.easier)),
            harder=tuple(map(own, progression.harder)),
            others=tuple(map(own, progression.others)),
        )

    return drill.changed(progressions=tuple(map(rung, drill.progressions)))


def with_setting(drill: Drill, at: At, setting: Setting) -> Drill:
    """Return ``drill`` with the setting at ``at`` equal to ``setting``; places tied to what is gone are set free.

    Raises ``ValueError`` with a sentence where shots or parts would come after one another in a circle, be it in a
    setting above: no file may hold that.
    """
    before = dict(all_settings(drill))
    edited = _stored(drill, at, setting)
    after = dict(all_settings(edited))
    for address in tuple(after):
        freed = _freed(before[address], after[address])
        if freed is not after[address]:
            edited = _stored(edited, address, freed)
            after = dict(all_settings(edited))  # others lie on this one
        if circle := _new_circle(before[address], after[address]):
            raise ValueError(circle)
    return edited


def _new_circle(before: Setting, after: Setting) -> str:
    """Return the sentence for shots or parts that now come after one another in a circle, "" where none do."""
    if after.shots is before.shots and after.parts is before.parts:
        return ""
    found = next(circles(after), None)
    if found is None or next(circles(before), None) is not None:
        return ""
    kind, ids = found
    return f"{kind} {', '.join(ids)} would come after one another in a circle"


def _stored(drill: Drill, at: At, setting: Setting) -> Drill:
    own = difference(below(drill, at), setting)
    unknown = changes_at(drill, at).model_extra or {}
    return with_changes(drill, at, own.changed(**unknown))


def _freed(before: Setting, after: Setting) -> Setting:
    """Return ``after`` with each place that was tied to a record now gone rewritten to the point where that stood."""
    gone = before.ids() - after.ids()
    lost = {spot.job for spot in before.spots.values()} - {spot.job for spot in after.spots.values()}
    if not gone and not lost:
        return after

    def free(place: Place | None) -> Place | None:
        if place is None or place.on is None:
            return place
        if place.on not in gone and place.on not in lost:
            return place
        stood = anchor(before, place.on)
        return place if stood is None else place.changed(on=None, at=_in_the_world(moved(stood, place.at)))

    changed = [record for _, old in after.records() if (record := _with_places(old, free)) is not old]
    return after.having(*changed) if changed else after


def _in_the_world(point: Point) -> Point:
    """Return ``point``, or where it would leave the world a place at its edge: no file may hold what lies beyond."""
    x, y = (max(-FARTHEST, min(FARTHEST, value)) for value in point)
    return (x, y)


_PLACES = ("place", "to", "contact")


def _with_places(record: Any, change: Callable[[Place | None], Place | None]) -> Any:
    values = {
        name: new
        for name in _PLACES
        if isinstance(old := record.declared(name), Place) and (new := change(old)) is not old
    }
    return record.changed(**values) if values else record


def put(drill: Drill, at: At, *records: Any) -> Drill:
    """Return ``drill`` with ``records`` added to the setting at ``at``, each in place of the one of its id."""
    return with_setting(drill, at, setting_at(drill, at).having(*records))


def delete(drill: Drill, at: At, ids: Iterable[str]) -> Drill:
    """Return ``drill`` without the records ``ids`` at ``at``.

    A shot that came after a deleted one comes after that one's predecessor; a run during it and a part after it
    likewise. What ids rules and points name stays: the review says which point nowhere.
    """
    gone = frozenset(ids)
    setting = setting_at(drill, at)
    return with_setting(drill, at, _closed_up(setting, gone).without(*gone))


def _closed_up(setting: Setting, gone: frozenset[str]) -> Setting:
    """Return ``setting`` with the order of shots, runs and parts closed over the records in ``gone``."""

    def predecessor(records: Any, id: str | None) -> str | None:
        seen = set()
        while id in gone and id not in seen:
            seen.add(id)
            id = records[id].after if id in records else None
        return id if id not in gone else None

    changed: list[Any] = [
        shot.changed(after=predecessor(setting.shots, shot.after))
        for shot in setting.shots.values()
        if shot.after in gone and shot.id not in gone
    ]
    changed += [
        run.changed(during=predecessor(setting.shots, run.during))
        for run in setting.runs.values()
        if run.during in gone and run.id not in gone
    ]
    for part in setting.parts.values():
        shots = tuple(id for id in part.shots if id not in gone)
        after = predecessor(setting.parts, part.after)
        if part.id not in gone and (shots, after) != (part.shots, part.after):
            changed.append(part.changed(shots=shots, after=after))
    return setting.having(*changed) if changed else setting


def moved_record(record: Any, by: Point, tied_to: Callable[[str], bool] = lambda _: False) -> Any:
    """Return ``record`` with everything drawn at a free point moved by ``by`` (metres).

    A place tied to something moves with that thing, so only its own offset is kept, unless ``tied_to`` says that the
    thing stays: then the offset moves.
    """

    def shift(place: Place | None) -> Place | None:
        if place is None or (place.on is not None and tied_to(place.on)):
            return place
        return place.changed(at=moved(place.at, by))

    result = _with_places(record, shift)
    shape = record.declared("shape")
    if isinstance(shape, Rectangle | Ellipse | Polygon):
        result = result.changed(shape=shape.changed(corners=tuple(moved(corner, by) for corner in shape.corners)))
    for name in ("corners", "via"):
        points = record.declared(name)
        if points:
            result = result.changed(**{name: tuple(moved(point, by) for point in points)})
    return result


def move(drill: Drill, at: At, ids: Iterable[str], by: Point) -> Drill:
    """Return ``drill`` with the records ``ids`` at ``at`` moved by ``by`` = (x, y) metres.

    A place tied to something that moves too follows it and keeps its offset. Raises ``pydantic.ValidationError``
    where a place would leave the drawing (100 m).
    """
    chosen = frozenset(ids)
    setting = setting_at(drill, at)
    letters = {spot.job for spot in setting.spots.values() if spot.id in chosen}

    def follows(on: str) -> bool:
        return on in letters if is_letter(on) else on in chosen

    records = [moved_record(record, by, follows) for _, record in setting.records() if record.id in chosen]
    return with_setting(drill, at, setting.having(*records))


def duplicate(drill: Drill, at: At, ids: Iterable[str], by: Point, source: Chooser) -> tuple[Drill, tuple[str, ...]]:
    """Return ``drill`` with copies of the records ``ids`` moved by ``by`` metres, and the ids of the copies.

    References among the copied records, in their texts too, point to the copies; a spot is not copied, a job stands in
    one place.
    """
    setting = setting_at(drill, at)
    taken = set(all_ids(drill))
    names: dict[str, str] = {}
    originals = [r for k, r in setting.records() if r.id in frozenset(ids) and k not in ("spots", "finish")]
    for record in originals:
        names[record.id] = new_id(record.declared("kind") or kind_of(record).removesuffix("s"), source, taken)
        taken.add(names[record.id])
    copies = [
        renamed(moved_record(record, by, names.__contains__), names).changed(id=names[record.id])
        for record in originals
    ]
    return put(drill, at, *copies), tuple(names.values())


def follow_again(drill: Drill, at: At, ids: Iterable[str]) -> Drill:
    """Return ``drill`` with the records ``ids`` at ``at`` let go, so that they follow the setting below again."""
    let_go = frozenset(ids)
    own = changes_at(drill, at)
    values: dict[str, Any] = {
        kind: tuple(record for record in getattr(own, kind) if record.id not in let_go) for kind in KINDS
    }
    if own.finish is not None and own.finish.id in let_go:
        values["finish"] = None
    values["drop"] = tuple(id for id in own.drop if id not in let_go)
    return with_setting(drill, at, resolve(below(drill, at), own.changed(**values)))


def add_progression(drill: Drill, progression: Progression, after: str | None = None) -> Drill:
    """Return ``drill`` with ``progression`` after the one called ``after`` (last where None).

    Every setting stays as it was: the progression that now lies on the new one keeps its state.
    """
    ids = [existing.id for existing in drill.progressions]
    place = len(ids) if after is None else ids.index(after) + 1
    rungs = [*drill.progressions]
    rungs.insert(place, progression)
    return _relaid(drill, rungs, {progression.id: resolve(_state(drill, ids, place), progression.changes)})


def _state(drill: Drill, ids: list[str], place: int) -> Setting:
    return EMPTY if place == 0 else setting_at(drill, At(ids[place - 1]))


def remove_progression(drill: Drill, id: str) -> Drill:
    """Return ``drill`` without the progression; the others stay as they were. The last one cannot be removed."""
    rungs = [progression for progression in drill.progressions if progression.id != id]
    if not rungs:
        raise ValueError("a drill has at least one progression")
    edited = _relaid(drill, rungs)
    return edited.changed(main=None) if drill.main == id else edited


def reorder_progressions(drill: Drill, ids: Iterable[str]) -> Drill:
    """Return ``drill`` with its progressions in the order of ``ids``, every setting as it was."""
    by_id = {progression.id: progression for progression in drill.progressions}
    order = list(ids)
    if sorted(order) != sorted(by_id):
        raise ValueError("name every progression once")
    return _relaid(drill, [by_id[id] for id in order])


def _relaid(drill: Drill, rungs: list[Progression], new: dict[str, Setting] | None = None) -> Drill:
    """Return ``drill`` with ``rungs`` as its progressions, each stored anew so that its setting stays what it was."""
    states = {p.id: setting_at(drill, At(p.id)) for p in drill.progressions} | (new or {})
    laid: list[Progression] = []
    parent = EMPTY
    for rung in rungs:
        changes = difference(parent, states[rung.id]).changed(**(rung.changes.model_extra or {}))
        laid.append(rung.changed(changes=changes))
        parent = states[rung.id]
    return drill.changed(progressions=tuple(laid))


def change_progression(drill: Drill, id: str, **values: Any) -> Drill:
    """Return ``drill`` with the fields ``values`` of a progression (name, aim, minutes, note) changed."""
    return drill.changed(
        progressions=tuple(p.changed(**values) if p.id == id else p for p in drill.progressions),
    )


def add_variation(drill: Drill, progression: str, degree: str, variation: Variation) -> Drill:
    """Return ``drill`` with ``variation`` last among the "easier", "harder" or "others" of a progression."""
    return drill.changed(
        progressions=tuple(
            p.changed(**{degree: (*getattr(p, degree), variation)}) if p.id == progression else p
            for p in drill.progressions
        ),
    )


def change_variation(drill: Drill, at: At, **values: Any) -> Drill:
    """Return ``drill`` with the fields ``values`` of the variation at ``at`` (name, note) changed."""
    return _each_variation(drill, at, lambda variation: (variation.changed(**values),))


def remove_variation(drill: Drill, at: At) -> Drill:
    """Return ``drill`` without the variation at ``at``."""
    return _each_variation(drill, at, lambda _: ())


def _each_variation(drill: Drill, at: At, change: Callable[[Variation], tuple[Variation, ...]]) -> Drill:
    def rung(progression: Progression) -> Progression:
        if progression.id != at.progression:
            return progression
        degrees = {degree for degree, v in variations(progression) if v.id == at.variation}
        return progression.changed(
            **{
                degree: tuple(
                    new
                    for old in getattr(progression, degree)
                    for new in (change(old) if old.id == at.variation else (old,))
                )
                for degree in degrees
            },
        )

    return drill.changed(progressions=tuple(map(rung, drill.progressions)))
