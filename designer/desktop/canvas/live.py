"""What a gesture changes on the court while it goes on: which marks only move, and which must be drawn anew.

A whole picture finds a place for every word again; a drag has no time for that at each step. What is carried keeps its
marks and its words, arrows tied to it are drawn anew, and the rest of the picture is made when the hand rests or lets go.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass
from typing import Any, Final

from designer.desktop.canvas.mark_item import Key
from designer.drawing.primitives import Layer, Mark, Path, Point
from designer.drill.items import Line
from designer.drill.people import Spot
from designer.drill.places import anchor, corners_of
from designer.drill.setting import KINDS, Setting

ON_COURT: Final = ("spots", "items", "shots", "runs")
OFF_COURT: Final = tuple(kind for kind in KINDS if kind not in ON_COURT)

ROUNDING: Final = 3e-4
"""Places are kept to 0.1 mm, so corners carried alike may differ by a little more than that."""


@dataclass(frozen=True, slots=True)
class Moves:
    """``carried`` only moves, by so many metres on court; ``redrawn`` must be drawn anew; ``gone`` is no longer there."""

    carried: Mapping[str, Point]
    redrawn: frozenset[str]
    gone: frozenset[str]


def moves(before: Setting, after: Setting) -> Moves | None:
    """Return what differs between two settings as a screen needs it, None where the whole picture may differ."""
    if (before.in_play, before.ball) != (after.in_play, after.ball):
        return None
    if any(getattr(before, kind) != getattr(after, kind) for kind in OFF_COURT):
        return None
    changed: dict[str, tuple[Any, Any]] = {}
    for kind in ON_COURT:
        old, new = getattr(before, kind), getattr(after, kind)
        for id in old.keys() | new.keys():
            if old.get(id) is not new.get(id):
                changed[id] = (old.get(id), new.get(id))
    if before.in_play in changed:
        return None
    carried: dict[str, Point] = {}
    redrawn: set[str] = set()
    for id, (was, now) in changed.items():
        by = None if was is None or now is None else _carried_by(before, after, was, now)
        if by is not None:
            carried[id] = by
        elif now is not None:
            redrawn.add(id)
    gone = frozenset(id for id, (_, now) in changed.items() if now is None)
    _add_tied_items(before, after, carried, redrawn)
    return Moves(carried, frozenset(redrawn | _arrows(after, carried.keys() | redrawn | gone, before)), gone)


def _carried_by(before: Setting, after: Setting, was: Any, now: Any) -> Point | None:
    """Return how far a thing has been carried, None where anything else about it changed, or its looks may have."""
    if type(was) is not type(now) or getattr(now, "both_ends", False) or (isinstance(now, Line) and now.runs_on):
        return None
    apart = ("place", "corners", "shape")
    values = vars(was)
    if any(value != values.get(name) for name, value in vars(now).items() if name not in apart):
        return None
    start, end = _outline(before, was), _outline(after, now)
    if len(start) != len(end) or not start or _form(was) != _form(now):
        return None
    by = (end[0][0] - start[0][0], end[0][1] - start[0][1])
    for (x0, y0), (x1, y1) in zip(start, end, strict=True):
        if abs(x1 - x0 - by[0]) > ROUNDING or abs(y1 - y0 - by[1]) > ROUNDING:
            return None
    turns = getattr(now, "facing", 0) is None and (start[0][1] < 0) != (end[0][1] < 0)
    return None if turns else by


def _outline(setting: Setting, record: Any) -> tuple[Point, ...]:
    """Return the points that a thing is drawn by, () for arrows and for what has no place."""
    corners = corners_of(record)
    if corners or not hasattr(record, "place"):
        return corners
    at = anchor(setting, record.id)
    return () if at is None else (at,)


def _form(record: Any) -> str:
    return getattr(getattr(record, "shape", None), "form", "")


def _add_tied_items(before: Setting, after: Setting, carried: dict[str, Point], redrawn: set[str]) -> None:
    """Add the things and people whose place is measured from what moves."""
    for kind in ("items", "spots"):
        for id, record in getattr(after, kind).items():
            place = getattr(record, "place", None)
            if place is None or place.on is None or id in carried or id in redrawn:
                continue
            was, now = anchor(before, id), anchor(after, id)
            if was is not None and now is not None and was != now:
                carried[id] = (now[0] - was[0], now[1] - was[1])


def _arrows(after: Setting, touched: Iterable[str], before: Setting) -> set[str]:
    """Return the balls and runs that are drawn differently because the records ``touched`` changed."""
    changed = set(touched)
    letters = {
        record.job if isinstance(record, Spot) else record.by
        for id in changed
        for setting in (before, after)
        if (record := setting.spots.get(id) or setting.runs.get(id)) is not None
    }
    found = {id for id in changed if id in after.shots or id in after.runs}
    tied = changed | letters
    for run in after.runs.values():
        if run.by in letters or run.to.on in tied:
            found.add(run.id)
            letters.add(run.by)
    for shot in after.shots.values():
        ends = {place.on for place in (shot.contact, shot.to) if place is not None}
        if shot.by in letters or ends & tied:
            found.add(shot.id)
    near = {shot.id for shot in after.shots.values() if shot.after in found or shot.after in changed}
    near |= {before.shots[id].after or "" for id in changed if id in before.shots}
    near |= {after.shots[id].after or "" for id in found if id in after.shots}
    return found | (near & after.shots.keys())


def words_carried(old: Iterable[Mark], new: Iterable[Mark]) -> Point:
    """Return how far the words and digits of an arrow go along, on the page: as far as the middle of its path."""
    was, now = _ends(old), _ends(new)
    if was is None or now is None:
        return (0.0, 0.0)
    return tuple(  # type: ignore[return-value]
        (now[0][axis] + now[1][axis] - was[0][axis] - was[1][axis]) / 2 for axis in (0, 1)
    )


def _ends(marks: Iterable[Mark]) -> tuple[Point, Point] | None:
    """Return where the longest path among ``marks`` begins and ends."""
    paths = [
        shape.points
        for mark in marks
        if mark.layer < Layer.HEADS
        for shape in mark.primitives
        if isinstance(shape, Path) and len(shape.points) > 1
    ]
    longest = max(
        paths, key=lambda points: abs(points[-1][0] - points[0][0]) + abs(points[-1][1] - points[0][1]), default=()
    )
    return (longest[0], longest[-1]) if longest else None


@dataclass(frozen=True, slots=True)
class Change:
    """What the scene is to show over its last whole picture, on the page: ``offsets`` by key, ``marks``, and what to hide."""

    offsets: Mapping[Key, Point]
    marks: tuple[Mark, ...]
    hidden: frozenset[Key]


def change(
    pictured: Callable[[str], Iterable[Mark]], moved: Moves, carried: Mapping[str, Point], marks: tuple[Mark, ...]
) -> Change:
    """Return how a scene takes over ``moved``; ``pictured`` gives the marks of a record on its last whole picture.

    ``carried`` is that of ``moved`` on the page; ``marks`` are the new ones of what is redrawn, words and digits left out.
    """
    offsets = {mark.key: by for id, by in carried.items() for mark in pictured(id)}
    hidden = {mark.key for id in moved.gone for mark in pictured(id)}
    new: dict[str | None, list[Mark]] = {}
    for mark in marks:
        new.setdefault(mark.id, []).append(mark)
    for id in moved.redrawn:
        now = new.get(id, [])
        keys = {mark.key for mark in now}
        was = list(pictured(id))
        along = words_carried(was, now)
        for mark in was:
            if mark.key in keys:
                continue
            if mark.layer in (Layer.DIGITS, Layer.WORDS):
                offsets[mark.key] = along
            else:
                hidden.add(mark.key)
    return Change(offsets, marks, frozenset(hidden))
