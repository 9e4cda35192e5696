"""What comes onto the court when a thing of some kind is placed: pure edits, the same for a drop, a click and a key."""

from __future__ import annotations

from collections.abc import Collection, Iterable
from string import ascii_uppercase
from typing import Any, Final

from designer.drill.base import Place, Point
from designer.drill.drill import Drill
from designer.drill.edits import duplicate, put
from designer.drill.ids import Chooser, new_id
from designer.drill.items import (
    Area,
    BallMachine,
    Barrier,
    Basket,
    Cone,
    Disc,
    Ellipse,
    Hoop,
    Line,
    Note,
    Obstacle,
    Rectangle,
)
from designer.drill.people import Job, Spot
from designer.drill.places import locate, moved
from designer.drill.setting import At, addresses, setting_at

PLACED: Final = ("player", "coach", "cone", "disc", "hoop", "basket", "ball machine", "note")
"""The kinds that stand at one point."""

STRETCHED: Final = ("line", "barrier", "area", "round area", "obstacle")
"""The kinds that lie between two points."""

NEW_NOTE: Final = "Note"
"""What a new note says until it is given words: an empty one could not be seen."""

NAMES: Final = {
    "player": "a player",
    "coach": "the coach",
    "cone": "a cone",
    "disc": "a disc",
    "hoop": "a hoop",
    "basket": "a basket",
    "ball machine": "a ball machine",
    "note": "a note",
    "line": "a line",
    "barrier": "a barrier",
    "area": "an area",
    "round area": "a round area",
    "obstacle": "an obstacle",
    "ball": "a ball",
    "feed": "a feed",
    "run": "a run",
}
"""Each kind as it is said in the name of a step."""


class NoLetterLeft(Exception):
    """All twenty-six jobs are taken; the text says so to the user."""


def placed(drill: Drill, at: At, kind: str, point: Point, id: str) -> Drill:
    """Return ``drill`` with a thing of ``kind`` (one of ``PLACED``) called ``id`` at ``point``.

    A player takes the first job that nobody has in this setting, else a new one. Raises ``NoLetterLeft``.
    """
    place = Place(at=point)
    if kind in ("player", "coach"):
        drill, job = new_job(drill, at, kind)
        return put(drill, at, Spot(id=id, job=job.letter, place=place))
    makers: dict[str, Any] = {"cone": Cone, "disc": Disc, "hoop": Hoop, "basket": Basket, "ball machine": BallMachine}
    if kind == "note":
        item: Any = Note(kind="note", id=id, place=place, text=NEW_NOTE)
    else:
        item = makers[kind](kind=kind, id=id, place=place)
    return put(drill, at, item)


def stretched(drill: Drill, at: At, kind: str, start: Point, end: Point, id: str) -> Drill:
    """Return ``drill`` with a thing of ``kind`` (one of ``STRETCHED``) called ``id`` from ``start`` to ``end``."""
    (left, right), (low, high) = sorted((start[0], end[0])), sorted((start[1], end[1]))
    if kind in ("area", "round area"):
        box = ((left, low), (right, high))
        round_one = kind == "round area"
        shape = Ellipse(form="ellipse", corners=box) if round_one else Rectangle(form="rectangle", corners=box)
        item: Any = Area(kind="area", id=id, shape=shape)
    elif kind == "obstacle":
        item = Obstacle(kind="obstacle", id=id, corners=((left, low), (right, low), (right, high), (left, high)))
    elif kind == "barrier":
        item = Barrier(kind="barrier", id=id, corners=(start, end))
    else:
        item = Line(kind="line", id=id, corners=(start, end))
    return put(drill, at, item)


def copied(drill: Drill, at: At, ids: Iterable[str], by: Point, source: Chooser) -> tuple[Drill, tuple[str, ...]]:
    """Return ``drill`` with copies of ``ids`` moved by ``by`` metres, and the ids of the copies.

    The copy of a person is another player in the next free job.
    """
    chosen = tuple(ids)
    setting = setting_at(drill, at)
    drill, copies = duplicate(drill, at, chosen, by, source)
    for id in chosen:
        spot = setting.spots.get(id)
        stood = None if spot is None else locate(setting, spot.place)
        if stood is not None:
            new = fresh_id(drill, "player", source)
            drill, copies = placed(drill, at, "player", moved(stood, by), new), (*copies, new)
    return drill, copies


def new_job(drill: Drill, at: At, kind: str, but: Collection[str] = ()) -> tuple[Drill, Job]:
    """Return the job for a new "player" or "coach", and ``drill`` with that job among its own.

    ``but`` are letters that are spoken for. Raises ``NoLetterLeft``.
    """
    standing = {*but, *(spot.job for spot in setting_at(drill, at).spots.values())}
    by = "coach" if kind == "coach" else "player"
    for job in drill.jobs:
        if job.letter not in standing and job.by == by:
            return drill, job
    letters = {job.letter for job in drill.jobs} | standing
    free = [letter for letter in ascii_uppercase if letter not in letters]
    if not free:
        raise NoLetterLeft("there are no letters left: a drill has at most 26 jobs")
    job = Job(letter=free[0], by=by)  # type: ignore[arg-type]
    return drill.changed(jobs=(*drill.jobs, job)), job


def fresh_id(drill: Drill, kind: str, source: Chooser) -> str:
    """Return a new id for a thing of ``kind`` that no setting of ``drill`` knows."""
    return new_id("spot" if kind in ("player", "coach") else kind, source, _taken(drill))


def _taken(drill: Drill) -> frozenset[str]:
    """Return every id of every setting: an id means the same record in all of them."""
    return frozenset().union(*(setting_at(drill, at).ids() for at in addresses(drill)))
