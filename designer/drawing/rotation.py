"""A swap as a picture: a small court for each round with everybody where that round has them, and the way to the next.

Curves that go to the other end go round the net, outside the court, so that nobody takes them for runs of the rally.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping, Sequence
from typing import Final

from designer.court.standards import Ground, ground
from designer.drawing import court_marks
from designer.drawing.geometry import grown
from designer.drawing.page import Page
from designer.drawing.pen import Pen
from designer.drawing.picture import Picture
from designer.drawing.primitives import Layer, Mark, Path, Point, Primitive, Style, mark
from designer.drawing.samples import shifted
from designer.drawing.themes import Theme
from designer.drawing.words import in_bundled_faces
from designer.drill.drill import Drill
from designer.drill.places import locate
from designer.drill.setting import At, Setting, setting_at
from designer.play.layout import turned_point
from designer.play.rotation import LosesPerson, NotWorkedOut, Round, full_turn, group_of, rounds

STRIP_UNIT: Final = 0.45
"""Metres of court a mark unit on a card: a court is then some 14 mm wide with its run-off."""
MOST: Final = 8
"""Courts that are drawn at most: after eight nobody follows."""
_RADIUS: Final = 6.2
_LETTER: Final = 9.0
_HEAD: Final = 9.0
_ASIDE: Final = 2.4
"""How far outside the doubles line a way round the net lies, in metres."""
_STEPS: Final = 24
_GAP: Final = 9.0
"""Between two courts, in u."""


@in_bundled_faces
def rotation_picture(
    drill: Drill,
    at: At,
    *,
    unit: float,
    theme: Theme,
    people: int | None = None,
    columns: int = 4,
) -> Picture | None:
    """Return the rounds of the setting at ``at`` as small courts, ``columns`` side by side; None where nobody moves.

    ``unit`` is how many metres of court one mark unit is on the medium, ``people`` how many players there are, by default
    as many as there are places. Where it depends on who wins only the first round is drawn. Raises ``KeyError`` where the
    drill has no such setting.
    """
    setting = setting_at(drill, at)
    played = _played(setting, drill, people)
    if not played:
        return None
    court = ground(drill.court)
    pen = Pen(unit, switched=theme.switched)
    places = [_places(pen, setting, each) for each in played]
    played = played[:-1] if len(played) > 1 else played
    side, back = _reach(court, pen, places)
    wide, tall = 2 * side + _GAP * unit, 2 * back + _HEAD * 1.6 * unit
    marks: list[Mark] = []
    for number, each in enumerate(played):
        last = number == len(played) - 1 and ends_after(setting, len(played))
        now, after = places[number], places[number if last else min(number + 1, len(places) - 1)]
        row, column = divmod(number, columns)
        corner = (column * wide + side, -row * tall - back)
        shapes = [
            *_court(court, pen),
            *pen.lines((str(each.number),), (0.0, back + 0.7 * _HEAD * unit), _HEAD, "ink", bold=True, cased=False),
            *_ways(court, pen, now, after),
            *_people(pen, setting, each, now),
        ]
        marks.append(mark(None, "round", Layer.PEOPLE, (shifted(shape, corner) for shape in shapes), str(each.number)))
    boxes = [each.bounds for each in marks]
    extent = (min(b[0] for b in boxes), min(b[1] for b in boxes), max(b[2] for b in boxes), max(b[3] for b in boxes))
    return Picture(tuple(marks), grown(extent, 0.4 * unit), (), unit, Page())


def rotation_strip(drill: Drill, at: At, *, width: float, theme: Theme) -> Picture | None:
    """Return the rounds of a group of three or more at the scale of a card, in rows at most ``width`` u wide.

    They are those of everybody there is a place for, else of the smallest group: so where somebody would wait in every
    round, and only a note says when that person comes in. None where only two change places, nobody moves, or who goes
    where depends on who wins.
    """
    group = len(group_of(setting_at(drill, at), drill.jobs))
    least = group if drill.players is None else min(group, drill.players[0])
    for people in dict.fromkeys((group, least)):
        row = rotation_picture(drill, at, unit=STRIP_UNIT, theme=theme, people=people, columns=MOST)
        left_out = people > least and _somebody_waits_always(setting_at(drill, at), drill, people)
        if row is None or people < 3 or len(row.marks) < 2 or left_out:
            continue
        wide = (row.extent[2] - row.extent[0]) / len(row.marks) / STRIP_UNIT
        rows = -(-len(row.marks) // max(1, int(width / wide)))
        columns = -(-len(row.marks) // rows)  # as many in each row: none stands alone in the last
        return rotation_picture(drill, at, unit=STRIP_UNIT, theme=theme, people=people, columns=columns)
    return None


def ends_after(setting: Setting, count: int) -> bool:
    """Whether play ends with so many rounds, so that nobody goes back to where the first one began."""
    end = setting.finish
    by_rounds = all(e.what == "round" for s in setting.swaps.values() if s.moves or s.table for e in s.on)
    return end is not None and by_rounds and end.rounds == count > 1


def _somebody_waits_always(setting: Setting, drill: Drill, people: int) -> bool:
    """Whether one person holds the same waiting job in all rounds."""
    waiting = {spot.job for spot in setting.spots.values() if spot.task == "waits"}
    stays = [
        {(job, who) for job, who in each.people.items() if job in waiting} for each in _played(setting, drill, people)
    ]
    return bool(stays) and bool(set.intersection(*stays))


def _played(setting: Setting, drill: Drill, people: int | None) -> tuple[Round, ...]:
    """Return the rounds to draw, and the one after them for the ways that lead to it; () where none can be told."""
    if len(group_of(setting, drill.jobs, people)) < 2:
        return ()
    if not any(swap.moves or swap.table for swap in setting.swaps.values()):
        return ()
    try:
        turn = full_turn(setting, drill.jobs, people=people)
        count = 1 if turn is None else min(turn, MOST) + 1
        return rounds(setting, drill.jobs, count, people=people)
    except (LosesPerson, NotWorkedOut):
        return ()


def _places(pen: Pen, setting: Setting, each: Round) -> dict[str, Point]:
    """Return where everybody stands in a round, by the letter that the person began with.

    Places that are so near each other that two letters would lie on one another are drawn further apart.
    """
    least = (2 * _RADIUS + 1.5) * pen.unit
    found: dict[str, Point] = {}
    for job in sorted(each.people):
        spot = setting.spot_of(job)
        point = None if spot is None else locate(setting, spot.place)
        if point is None:
            continue
        x, y = point
        while any(math.dist((x, y), other) < least - 1e-9 for other in found.values()):
            x += least / 4 if x >= 0 else -least / 4
        found[job] = (x, y)
    return {each.people[job]: _turned(each, point) for job, point in found.items()}


def _turned(each: Round, point: Point) -> Point:
    x, y = turned_point(point) if each.turned else point
    return (-x, y) if each.mirrored else (x, y)


def _reach(court: Ground, pen: Pen, places: Sequence[Mapping[str, Point]]) -> tuple[float, float]:
    """Return half the width and half the height of one small court with everybody in it, in metres."""
    room = (_RADIUS + 1.5) * pen.unit
    across = [abs(x) + room for each in places for x, _ in each.values()]
    along = [abs(y) + room for each in places for _, y in each.values()]
    return max([court.outer + _ASIDE + 0.4, *across]), max([court.baseline + room, *along])


def _court(court: Ground, pen: Pen) -> Iterator[Primitive]:
    yield Path(court_marks.outline(court), Style(fill="court"), closed=True)
    for line in court.lines:
        yield Path(line.as_tuple(), pen.style("court line", 0.5))
    yield Path(((-court.net.ends_x, 0.0), (court.net.ends_x, 0.0)), pen.style("net", 1.4))


def _people(pen: Pen, setting: Setting, each: Round, now: Mapping[str, Point]) -> Iterator[Primitive]:
    """Yield everybody as a letter in a ring, dashed for who waits or collects."""
    rest = {person for job, person in each.people.items() if getattr(setting.spot_of(job), "task", "waits") != "plays"}
    for person in sorted(now):
        yield from _person(pen, person, now[person], rests=person in rest)
        job = next(job for job, holder in each.people.items() if holder == person)
        if each.turned and job != person:
            # Whoever stays where they are and has another job is told so.
            beside = (now[person][0] + (_RADIUS + 2.0) * pen.unit, now[person][1])
            yield pen.words(f"as {job}", beside, 8.5, "ink", align="left")


def _person(pen: Pen, letter: str, at: Point, *, rests: bool) -> Iterator[Primitive]:
    dash = (2.2, 1.6) if rests else ()
    yield from pen.disc(at, _RADIUS, pen.style("ink", 0.8 if rests else 1.2, dash, fill="paper"))
    yield pen.words(letter, at, _LETTER, "ink", bold=not rests)


def round_sign(pen: Pen, letter: str, *, rests: bool) -> Iterator[Primitive]:
    """Yield the sign of somebody in a round, from (0, 0) to the right: who rests, 22 u wide, else who goes elsewhere next."""
    if rests:
        yield from _person(pen, letter, (11 * pen.unit, 0.0), rests=True)
        return
    at, end = (_RADIUS * pen.unit, 0.0), (_GOES * pen.unit, 0.0)
    yield from _person(pen, letter, at, rests=False)
    yield from _way(pen, at, end, _bow(pen, at, end))


_GOES: Final = 38.0
"""How far in u the arrow of that sign leads, less the room for a ring at its end."""


def _ways(court: Ground, pen: Pen, now: Mapping[str, Point], after: Mapping[str, Point]) -> Iterator[Primitive]:
    """Yield a curve with an open head for everybody who stands elsewhere in the next round."""
    for person in sorted(now):
        if person in after and math.dist(now[person], after[person]) > 0.05:
            yield from _way(pen, now[person], after[person], _bends(court, pen, now[person], after[person]))


def _way(pen: Pen, start: Point, end: Point, bends: tuple[Point, Point]) -> Iterator[Primitive]:
    gap = (_RADIUS + 1.6) * pen.unit
    first = _towards(start, bends[0], gap)
    last = _towards(end, bends[1], gap)
    points = tuple(_on_curve((first, *bends, last), step / _STEPS) for step in range(_STEPS + 1))
    yield Path(points, pen.style("ink", 0.9, (3.0, 1.8)))
    away = (last[0] - bends[1][0], last[1] - bends[1][1])
    length = math.hypot(*away) or 1.0
    tip, left, right = pen.head(last, (away[0] / length, away[1] / length), 5.0, 4.6)
    yield Path((left, tip, right), pen.style("ink", 1.0))


def _bends(court: Ground, pen: Pen, start: Point, end: Point) -> tuple[Point, Point]:
    """Return the two points that a curve leans to: outside the court to the other end, else to one side of the straight."""
    if start[1] * end[1] < 0:
        # Those who go away keep to the right of the picture and those who come to the left, so that none meet.
        side = 1.0 if end[1] > start[1] else -1.0
        aim = side * (court.outer + _ASIDE)
        lean = (8 * aim - start[0] - end[0]) / 6
        return (lean, start[1] * 0.75), (lean, end[1] * 0.75)
    return _bow(pen, start, end)


def _bow(pen: Pen, start: Point, end: Point) -> tuple[Point, Point]:
    """Return the two points that a curve leans to which keeps to one side of the straight."""
    dx, dy = end[0] - start[0], end[1] - start[1]
    along = math.hypot(dx, dy) or 1.0
    bow = max(min(0.3 * along, 2.5), 2 * pen.unit * _RADIUS - 0.3 * along)
    aside = (dy / along * bow, -dx / along * bow)
    return (
        (start[0] + dx / 3 + aside[0], start[1] + dy / 3 + aside[1]),
        (start[0] + 2 * dx / 3 + aside[0], start[1] + 2 * dy / 3 + aside[1]),
    )


def _on_curve(points: Sequence[Point], share: float) -> Point:
    """Return the point of a cubic curve at ``share`` of its way: a drawn line's bounds are those of its ink."""
    rest = 1 - share
    weights = (rest**3, 3 * rest * rest * share, 3 * rest * share * share, share**3)
    return (
        math.fsum(w * x for w, (x, _) in zip(weights, points, strict=True)),
        math.fsum(w * y for w, (_, y) in zip(weights, points, strict=True)),
    )


def _towards(point: Point, goal: Point, length: float) -> Point:
    apart = math.dist(point, goal) or 1.0
    share = min(1.0, length / apart)
    return (point[0] + (goal[0] - point[0]) * share, point[1] + (goal[1] - point[1]) * share)
