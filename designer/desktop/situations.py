"""Situations to start from: who stands where, and the ball that begins it. Pure edits of a blank drill."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any, Final

from designer.court.readings import RACKET, STRIDE
from designer.court.standards import Ground, ground
from designer.drill import edits
from designer.drill.base import Place, Point, to_tenth_millimetre
from designer.drill.drill import Drill
from designer.drill.ids import Chooser, new_id
from designer.drill.movement import Run, Shot
from designer.drill.people import Hand, Job, Spot
from designer.drill.setting import At, setting_at


@dataclass(frozen=True, slots=True)
class Lines:
    """The measures of a court that a situation is laid out by, in metres from the middle of the net."""

    baseline: float
    service: float
    half: float

    @classmethod
    def of(cls, here: Ground) -> Lines:
        """Return those of ``here``; a court without a service line is halved where one would be."""
        service = here.service_line if here.service_line is not None else here.baseline * 7 / 13
        return cls(here.baseline, service, here.singles)


@dataclass(frozen=True, slots=True)
class Layout:
    """Where A and B stand, what they are there for, and what moves. Points are (right, away) of the near player."""

    a: Point
    b: Point
    roles: tuple[str, str]
    moves: tuple[Shot | Run, ...]


def _shot(id: str, by: str, to: Point | str, **values: Any) -> Shot:
    place = Place(on=to) if isinstance(to, str) else Place(at=_exact(to))
    return Shot(id=id, by=by, to=place, **values)


def _exact(point: Point) -> Point:
    return (to_tenth_millimetre(point[0]), to_tenth_millimetre(point[1]))


def _rally(lines: Lines) -> Layout:
    back, deep = lines.baseline + STRIDE, (lines.baseline + lines.service) / 2
    feed = _shot("feed", "A", (0.0, deep), stroke="drop feed")
    reply = _shot("reply", "B", (0.0, -deep), after="feed")
    return Layout((0.0, -back), (0.0, back), ("starts the rally", ""), (feed, reply))


def _serve(lines: Lines) -> Layout:
    serve = _shot("serve", "A", (-lines.half / 2, lines.service - STRIDE), stroke="serve")
    reply = _shot("return", "B", (lines.half / 2, STRIDE - lines.baseline), after="serve")
    return Layout(
        (RACKET, -(lines.baseline + RACKET / 2)),
        (RACKET - lines.half, lines.baseline + STRIDE),
        ("serves", "returns"),
        (serve, reply),
    )


def _return(lines: Lines) -> Layout:
    serve = _shot("serve", "B", (lines.half / 2, STRIDE - lines.service), stroke="serve")
    reply = _shot("return", "A", (-lines.half / 2, lines.baseline - 2 * STRIDE), after="serve")
    return Layout(
        (lines.half - RACKET, -(lines.baseline + STRIDE)),
        (-RACKET, lines.baseline + RACKET / 2),
        ("returns", "serves"),
        (serve, reply),
    )


def _short_ball(lines: Lines) -> Layout:
    short = (RACKET, STRIDE - lines.service)
    feed = _shot("feed", "B", short, stroke="racket feed")
    approach = _shot("approach", "A", (-lines.half / 2, lines.baseline - STRIDE), after="feed")
    # The hitter goes behind the bounce: the ball comes on to them.
    run = Run(
        id="run-in", by="A", during="feed", to=Place(at=_exact((short[0], short[1] - STRIDE))), purpose="approach"
    )
    back = lines.baseline + STRIDE
    return Layout((0.0, -back), (0.0, back), ("steps in", "feeds"), (feed, approach, run))


def _at_the_net(lines: Lines) -> Layout:
    near = max(lines.service - 2 * STRIDE, lines.service / 2)
    feed = _shot("feed", "A", "B", stroke="racket feed", bounces=0)
    reply = _shot("volley", "B", "A", after="feed", stroke="volley", bounces=0)
    return Layout((0.0, -near), (0.0, near), ("feeds", ""), (feed, reply))


@dataclass(frozen=True, slots=True)
class Situation:
    """One of the five that matches are made of; ``step`` names the step that lays it out."""

    key: str
    name: str
    step: str
    lay: Callable[[Lines], Layout]


SITUATIONS: Final = (
    Situation("rally", "Rally", "Start from a rally", _rally),
    Situation("serve", "Serve", "Start from a serve", _serve),
    Situation("return", "Return", "Start from a return", _return),
    Situation("short ball", "Short ball", "Start from a short ball", _short_ball),
    Situation("at the net", "Both at the net", "Start with both at the net", _at_the_net),
)
"""Rally, serve, return, short ball, both at the net: common practice, no source."""


def with_situation(drill: Drill, at: At, situation: Situation, source: Chooser, hand: Hand = "right") -> Drill:
    """Return ``drill`` with A and B and the first balls of ``situation``; those that are new play with ``hand``."""
    layout = situation.lay(Lines.of(ground(drill.court)))
    taken = set(setting_at(drill, at).ids())
    names: dict[str, str] = {}
    for record in layout.moves:
        names[record.id] = new_id("run" if isinstance(record, Run) else "shot", source, taken)
        taken.add(names[record.id])
    moves = [_renamed(record, names) for record in layout.moves]
    spots = []
    for letter, point in (("A", layout.a), ("B", layout.b)):
        id = new_id("spot", source, taken)
        taken.add(id)
        spots.append(Spot(id=id, job=letter, place=Place(at=_exact(point))))
    known = {job.letter for job in drill.jobs}
    roles = dict(zip("AB", layout.roles, strict=True))
    jobs = (*drill.jobs, *(Job(letter=each, hand=hand, role=roles[each]) for each in "AB" if each not in known))
    return edits.put(drill.changed(jobs=jobs, players=drill.players or (2, 2)), at, *spots, *moves)


def _renamed(record: Shot | Run, names: dict[str, str]) -> Shot | Run:
    values: dict[str, Any] = {"id": names[record.id]}
    if isinstance(record, Shot) and record.after is not None:
        values["after"] = names[record.after]
    if isinstance(record, Run) and record.during is not None:
        values["during"] = names[record.during]
    return record.changed(**values)
