"""A place as a count from a named line across and one along, and the drill with a thing at such a place. No Qt here."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from designer.court.regions import End, as_player, end_of, from_player
from designer.court.standards import Ground
from designer.drill.base import Point, to_tenth_millimetre
from designer.drill.drill import Drill
from designer.drill.edits import move, put
from designer.drill.movement import Run, Shot
from designer.drill.places import anchor, moved
from designer.drill.setting import At, setting_at

NEAR_ENOUGH: Final = 1e-6


@dataclass(frozen=True, slots=True)
class Measure:
    """A line and a side of it: a place is ``count`` metres from ``origin`` in the direction of ``sign``.

    Across counts to the right of the middle, along from the net, both as the player of that end sees it.
    """

    words: str
    origin: float
    sign: int

    def value(self, count: float) -> float:
        """Return where ``count`` metres from the line are."""
        return self.origin + self.sign * count

    def count(self, value: float) -> float:
        """Return how many metres ``value`` is from the line; below nothing on its other side."""
        return (value - self.origin) * self.sign


def across(ground: Ground) -> tuple[Measure, ...]:
    """Return what can be measured from across the court, from the left to the right."""
    lines = [("singles line", ground.singles)]
    if ground.doubles is not None:
        lines.insert(0, ("doubles line", ground.doubles))
    lefts = [
        measure
        for name, at in lines
        for measure in (
            Measure(f"out from the left {name}", -at, -1),
            Measure(f"in from the left {name}", -at, 1),
        )
    ]
    rights = [
        measure
        for name, at in reversed(lines)
        for measure in (
            Measure(f"in from the right {name}", at, -1),
            Measure(f"out from the right {name}", at, 1),
        )
    ]
    return (*lefts, Measure("left of the middle", 0.0, -1), Measure("right of the middle", 0.0, 1), *rights)


def along(ground: Ground) -> tuple[Measure, ...]:
    """Return what can be measured from along the court, from the net to the back."""
    made = [Measure("from the net", 0.0, 1)]
    if ground.service_line is not None:
        made.append(Measure("in front of the service line", ground.service_line, -1))
        made.append(Measure("behind the service line", ground.service_line, 1))
    made.append(Measure("inside the baseline", ground.baseline, -1))
    made.append(Measure("behind the baseline", ground.baseline, 1))
    return tuple(made)


def nearest(measures: tuple[Measure, ...], value: float) -> Measure:
    """Return the one that ``value`` is the fewest metres from, on its own side."""
    fitting = [each for each in measures if each.count(value) >= -NEAR_ENOUGH]
    return min(fitting, key=lambda each: (round(each.count(value), 4), abs(each.origin)))


def point_at(end: End, right: float, away: float) -> Point:
    """Return the point of the court that the player at ``end`` sees ``right`` of the middle and ``away`` from the net."""
    x, y = from_player(right, away, end)
    return (to_tenth_millimetre(x), to_tenth_millimetre(y))


def seen_from(point: Point) -> tuple[End, float, float]:
    """Return the end that ``point`` is at, the near one at the net, and (right, away) as the player there sees it."""
    end: End = end_of(point) or "near"
    return (end, *as_player(point, end))


def stands(drill: Drill, at: At, id: str) -> Point | None:
    """Return the point of a thing that is placed: where it stands, the middle of a shape, a landing, a run's end."""
    record = setting_at(drill, at).find(id)
    if isinstance(record, Shot | Run) and record.to is None:
        return None
    return anchor(setting_at(drill, at), id)


def placed_at(drill: Drill, at: At, id: str, point: Point) -> Drill:
    """Return ``drill`` with that point of the thing at ``point``.

    Of a ball only the landing moves, of a run only the end. Raises ``ValueError`` where it has no place,
    ``pydantic.ValidationError`` where the point is off the drawing.
    """
    stood = stands(drill, at, id)
    if stood is None:
        raise ValueError("it has no place of its own")
    by = (point[0] - stood[0], point[1] - stood[1])
    record = setting_at(drill, at).find(id)
    if isinstance(record, Shot | Run) and record.to is not None:
        return put(drill, at, record.changed(to=record.to.changed(at=moved(record.to.at, by))))
    return move(drill, at, (id,), by)
