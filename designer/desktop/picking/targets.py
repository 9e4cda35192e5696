"""What can be picked on the court for a field of a form: things drawn there, people, painted lines and parts of the court."""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from typing import Any, Final

from designer.court.regions import End, line_by_words, region
from designer.court.standards import Ground
from designer.drill.base import Point
from designer.drill.places import is_letter
from designer.drill.setting import Setting

ENDS: Final[tuple[End, ...]] = ("near", "far")


@dataclass(frozen=True, slots=True)
class Target:
    """One thing to pick: the ``value`` it stands for, its words, and what shows it.

    Either ``id``, a record that is drawn, or ``outline`` in court metres: two points for a painted line, else the
    corners of a part of the court. What lies at both ends is two targets of one value.
    """

    value: Any
    words: str
    id: str | None = None
    outline: tuple[Point, ...] = ()

    @property
    def is_line(self) -> bool:
        """Whether it is a painted line."""
        return len(self.outline) == 2


def targets(setting: Setting, ground: Ground, options: Iterable[tuple[Any, str]]) -> tuple[Target, ...]:
    """Return those of ``options``, values with their words, that lie on the court: what is drawn, then lines and regions."""
    drawn: list[Target] = []
    painted: list[Target] = []
    for value, words in options:
        if not isinstance(value, str):
            continue
        if is_letter(value):
            spot = setting.spot_of(value)
            drawn += [] if spot is None else [Target(value, words, id=spot.id)]
        elif any(value in getattr(setting, kind) for kind in ("spots", "items", "shots", "runs")):
            drawn.append(Target(value, words, id=value))
        else:
            painted += _painted(ground, value, words)
    return (*drawn, *sorted(painted, key=lambda target: (not target.is_line, _size(target.outline))))


def _painted(ground: Ground, value: str, words: str) -> list[Target]:
    found: list[Target] = []
    for end in ENDS:
        outline = line_by_words(ground, value, end) or region(ground, value, end)
        if outline is not None and all(set(outline) != set(other.outline) for other in found):
            found.append(Target(value, words, outline=outline))
    return found


def under(found: Sequence[Target], point: Point, ids: Sequence[str], reach: float) -> tuple[Target, ...]:
    """Return the targets at ``point``, best first.

    ``ids`` are the records there, the uppermost first. Then come painted lines within ``reach`` metres, then regions,
    the smaller before those that hold them.
    """
    drawn = sorted((target for target in found if target.id in ids), key=lambda target: ids.index(target.id or ""))
    lines = [target for target in found if target.is_line and _apart(target.outline, point) <= reach]
    lines.sort(key=lambda target: _apart(target.outline, point))
    regions = [target for target in found if len(target.outline) > 2 and _holds(target.outline, point)]
    return (*drawn, *lines, *regions)


def _apart(line: tuple[Point, ...], point: Point) -> float:
    (x0, y0), (x1, y1) = line
    length = math.dist(*line)
    along = 0.0 if length == 0 else ((point[0] - x0) * (x1 - x0) + (point[1] - y0) * (y1 - y0)) / length**2
    along = max(0.0, min(1.0, along))
    return math.dist(point, (x0 + along * (x1 - x0), y0 + along * (y1 - y0)))


def _holds(corners: tuple[Point, ...], point: Point) -> bool:
    """Whether ``point`` is in an upright rectangle, as every region is."""
    across, along = [x for x, _ in corners], [y for _, y in corners]
    return min(across) <= point[0] <= max(across) and min(along) <= point[1] <= max(along)


def _size(corners: tuple[Point, ...]) -> float:
    across, along = [x for x, _ in corners], [y for _, y in corners]
    return (max(across) - min(across)) * (max(along) - min(along))
