"""What a ball is asked to hit: the areas that rules, points, parts and starts name for it, as shapes on the court."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any, Final, Literal

from designer.court.regions import End, line_by_words, region
from designer.drill.base import ON_THE_LINE, Point
from designer.drill.conditions import Event, In, Where
from designer.drill.items import Area, Ellipse, Hoop, Line
from designer.drill.places import corners_of, locate
from designer.drill.rules import Keep, Part, Points, Rule
from designer.numbers.accuracy import Landing, chance_in, chance_in_ellipse
from designer.numbers.situation import Situation, other_end
from designer.play.rally import opening_part
from designer.play.sequence import Step

if TYPE_CHECKING:
    from shapely.geometry.base import BaseGeometry

HOOP: Final = 0.35
"""Radius of a flat hoop, metres. Common practice, no source."""

_BEYOND: Final = 60.0
_ROUND: Final = 96

Purpose = Literal["in a row", "together", "restricted", "bonus", "normal aim", "feed"]
"""What a target is for: what the drill says of it, else what its scoring makes of it."""

_COSTS: Final = ("lose the point", "replay", "no score", "points", "opens", "start score")
"""What a breach can cost, so that the rule is a demand on every ball."""


@dataclass(frozen=True, slots=True)
class Target:
    """A place that a ball should land in: ``polygons`` go round it, ``holes`` round what is not meant in them.

    ``ellipse``: its corners where it is a plain ellipse, and nothing else then. ``where``: what is said of it.
    ``by``: the id of the rule, points, part or start that asks for it, or of the shot itself. ``purpose``: None where
    neither the drill nor its scoring says what it is for.
    """

    by: str
    areas: tuple[str, ...]
    purpose: Purpose | None
    polygons: tuple[tuple[Point, ...], ...]
    ellipse: tuple[Point, Point] | None = None
    holes: tuple[tuple[Point, ...], ...] = ()
    where: Where = ()

    def chance(self, landing: Landing) -> float:
        """Return the chance that a ball lands in it."""
        if self.ellipse is not None:
            return chance_in_ellipse(self.ellipse, landing)
        whole = sum(chance_in(polygon, landing) for polygon in self.polygons)
        return min(max(whole - sum(chance_in(hole, landing) for hole in self.holes), 0.0), 1.0)

    @property
    def outline(self) -> tuple[Point, ...]:
        """A polygon round it: the largest where there are several, many corners for an ellipse."""
        return _round(self.ellipse) if self.ellipse is not None else max(self.polygons, key=_area)

    def holds(self, place: Point) -> bool:
        """Whether ``place`` lies in it or on its edge."""
        if self.ellipse is not None:
            (x0, y0), (x1, y1) = self.ellipse
            across, along = (2 * place[0] - x0 - x1) / (x1 - x0), (2 * place[1] - y0 - y1) / (y1 - y0)
            return across * across + along * along <= 1 + 1e-9
        meant = any(_holds(polygon, place) for polygon in self.polygons)
        return meant and not any(_holds(hole, place) for hole in self.holes)

    @property
    def area(self) -> float:
        """Square metres."""
        if self.ellipse is not None:
            (x0, y0), (x1, y1) = self.ellipse
            return math.pi * abs(x1 - x0) * abs(y1 - y0) / 4
        return sum(_area(polygon) for polygon in self.polygons) - sum(_area(hole) for hole in self.holes)


def _holds(polygon: Sequence[Point], place: Point) -> bool:
    inside, (x, y) = False, place
    for (x0, y0), (x1, y1) in zip(polygon, (*polygon[1:], polygon[0]), strict=True):
        along = (x - x0) * (x1 - x0) + (y - y0) * (y1 - y0)
        size = (x1 - x0) ** 2 + (y1 - y0) ** 2
        aside = abs((x - x0) * (y1 - y0) - (y - y0) * (x1 - x0))
        if size > 0 and aside <= ON_THE_LINE * math.sqrt(size) and 0 <= along <= size:
            return True
        if (y0 > y) != (y1 > y) and x < x0 + (x1 - x0) * (y - y0) / (y1 - y0):
            inside = not inside
    return inside


def _area(polygon: Sequence[Point]) -> float:
    pairs = zip(polygon, (*polygon[1:], polygon[0]), strict=True)
    return abs(sum(x0 * y1 - x1 * y0 for (x0, y0), (x1, y1) in pairs)) / 2


def targets(here: Situation, step: Step) -> tuple[Target, ...]:
    """Return what the ball of ``step`` is asked or paid to hit, each shape once, what costs most first.

    What is only paid, or only holds at times, counts where the ball is aimed at it.
    """
    found: dict[tuple[str, ...], Target] = {}
    for by, where, purpose, always in _asked(here, step):
        areas = tuple(sorted({_words(place) for place in where}))
        if areas in found:
            continue
        shape = _shape(here, step, where)
        if shape is not None:
            target = Target(by, areas, purpose, *shape, where)
            if always or (step.landing is not None and target.holds(step.landing)):
                found[areas] = target
    return tuple(found.values())


def _words(place: In) -> str:
    side = "" if place.side is None else f"{place.side} "
    return f"{'not ' if place.outside else ''}{side}{place.area}"


Asked = tuple[str, Where, Purpose | None, bool]
"""(what asks, where, what for, whether it holds for every ball)"""


def _asked(here: Situation, step: Step) -> Iterator[Asked]:
    setting, shot = here.setting, step.shot
    if step.feed:
        for start in setting.starts.values():
            if start.shot == shot.id and start.good:
                yield start.id, start.good, "feed", True
        return
    for rule in setting.rules.values():
        if isinstance(rule.must, Keep) and not rule.never and _rule_means(here, step, rule):
            where = tuple(place for place in rule.must.where if place.judged in (None, "bounce"))
            if where and len(where) == len(rule.must.where):
                yield rule.id, where, rule.purpose or _said(here, where) or _demanded(here, rule), not rule.when
    for part in setting.parts.values():
        if shot.id in part.shots:
            for event in part.until:
                for where in _landings(event, step):
                    yield part.id, where, _said(here, where) or _ends(here, part, event), False
    yield from _paid(here, step)
    aimed = setting.items.get("" if shot.to is None else shot.to.on or "")
    if isinstance(aimed, Area | Hoop):
        yield shot.id, (In(area=aimed.id),), aimed.purpose, False


def _said(here: Situation, where: Where) -> Purpose | None:
    """Return what the one area that is meant is said to be for."""
    item = here.setting.items.get(where[0].area) if len(where) == 1 else None
    return item.purpose if isinstance(item, Area | Hoop) else None


def _demanded(here: Situation, rule: Rule) -> Purpose | None:
    """Return what a rule is for: a row, a shared count, a demand that costs something; None where it costs nothing."""
    setting = here.setting
    if (setting.finish is not None and setting.finish.running) or (rule.breach and rule.breach.then == "count to zero"):
        return "in a row"
    named = [setting.parts[id] for id in rule.parts if id in setting.parts] or list(setting.parts.values())
    if any(part.kind == "cooperative" for part in named):
        return "together"
    cost = rule.breach or next((part.failed for part in named if part.failed is not None), None)
    costs = cost is not None and cost.then in _COSTS
    return "restricted" if costs or opening_part(setting) is not None else None


def _ends(here: Situation, part: Part, event: Event) -> Purpose | None:
    """Return what a landing that ends a part is for."""
    if event.running and (event.count or 1) > 1:
        return "in a row"
    running = here.setting.finish is not None and here.setting.finish.running
    shared: Purpose = "in a row" if running else "together"
    return shared if part.kind == "cooperative" else "restricted"


def _paid(here: Situation, step: Step) -> Iterator[Asked]:
    for points in here.setting.points.values():
        if points.gives.then == "points" and step.hit >= points.from_hit:
            for event in points.on:
                for where in _landings(event, step):
                    said = points.purpose or _said(here, where)
                    yield points.id, where, said or _earned(here, step, points, event), False


def _earned(here: Situation, step: Step, points: Points, event: Event) -> Purpose | None:
    """Return what a paid landing is for: a row, a shared count, a bonus beside other points; None where it is all that is paid."""
    setting = here.setting
    running = setting.finish is not None and setting.finish.running
    if running or (event.running and (event.count or 1) > 1):
        return "in a row"
    parts = setting.parts.values()
    if any(part.kind == "cooperative" and (not part.shots or step.shot.id in part.shots) for part in parts):
        return "together"
    others = [each for each in setting.points.values() if each.id != points.id and each.gives.then == "points"]
    less = any(0 < (each.gives.value or 1) < (points.gives.value or 1) for each in others)
    won = any(other.what == "won" for each in others for other in each.on)
    game = setting.finish is not None and setting.finish.kind in ("game", "tie-break")
    beside = points.beside is not None or opening_part(setting) is not None
    return "bonus" if less or won or game or beside else None


def _rule_means(here: Situation, step: Step, rule: Any) -> bool:
    shot = step.shot
    if rule.of and shot.id not in rule.of:
        return False
    if rule.who and shot.by not in rule.who and not {"anyone", "doer"} & set(rule.who):
        return False
    if step.hit < rule.from_hit or (rule.to_hit is not None and step.hit > rule.to_hit):
        return False
    named = [here.setting.parts[id] for id in rule.parts if id in here.setting.parts]
    return not named or any(shot.id in part.shots for part in named)


def _landings(event: Event, step: Step) -> Iterator[Where]:
    """Yield where the ball of ``step`` must bounce for ``event`` to happen."""
    shot = step.shot
    meant = (not event.of or shot.id in event.of) and (
        not event.by or shot.by in event.by or bool({"anyone", "doer"} & set(event.by))
    )
    if event.what == "landed" and meant and event.where:
        where = tuple(place for place in event.where if place.judged in (None, "bounce"))
        if len(where) == len(event.where):
            yield where
    for inner in event.and_:
        yield from _landings(inner, step)


Shape = tuple[tuple[tuple[Point, ...], ...], tuple[Point, Point] | None, tuple[tuple[Point, ...], ...]]
"""(polygons, ellipse, holes)"""


def _shape(here: Situation, step: Step, where: Where) -> Shape | None:
    """Return the part of the court where all of ``where`` holds, None where one of them has no shape."""
    end = other_end(step.end)
    only = where[0]
    if len(where) == 1 and not only.outside and only.side is None:
        ellipse = _ellipse(here, only.area)
        if ellipse is not None:
            return (), ellipse, ()
        corners = _corners(here, only.area, end)
        return None if corners is None else ((corners,), None, ())
    from shapely.geometry import box

    left, right, low, high = here.box(step)
    whole: BaseGeometry = box(left, low, right, high)
    for place in where:
        geometry = _geometry(here, place, end)
        if geometry is None:
            return None
        whole = whole.difference(geometry) if place.outside else whole.intersection(geometry)
    parts = [part for part in getattr(whole, "geoms", [whole]) if part.geom_type == "Polygon" and part.area > 1e-6]
    outer = tuple(tuple(part.exterior.coords)[:-1] for part in parts)
    holes = tuple(tuple(ring.coords)[:-1] for part in parts for ring in part.interiors)
    return (outer, None, holes) if parts else None


def _ellipse(here: Situation, name: str) -> tuple[Point, Point] | None:
    item = here.setting.items.get(name)
    if isinstance(item, Area) and isinstance(item.shape, Ellipse):
        return item.shape.corners
    if isinstance(item, Hoop):
        place = locate(here.setting, item.place)
        if place is not None:
            return ((place[0] - HOOP, place[1] - HOOP), (place[0] + HOOP, place[1] + HOOP))
    return None


def _round(ellipse: tuple[Point, Point]) -> tuple[Point, ...]:
    """Return a polygon of as good as the same area as the ellipse in the rectangle between two corners."""
    (x0, y0), (x1, y1) = ellipse
    turns = (2 * math.pi * number / _ROUND for number in range(_ROUND))
    return tuple(
        ((x0 + x1) / 2 + abs(x1 - x0) / 2 * math.cos(turn), (y0 + y1) / 2 + abs(y1 - y0) / 2 * math.sin(turn))
        for turn in turns
    )


def _corners(here: Situation, name: str, end: End) -> tuple[Point, ...] | None:
    item = here.setting.items.get(name)
    if item is None:
        return region(here.ground, name, end)
    corners = tuple(corners_of(item)) if isinstance(item, Area) else ()
    if not corners:
        return None
    turned = getattr(item, "both_ends", False) and (sum(y for _, y in corners) > 0) != (end == "far")
    return tuple((-x, -y) for x, y in corners) if turned else corners


def _geometry(here: Situation, place: In, end: End) -> BaseGeometry | None:
    from shapely.geometry import Polygon

    if place.side is not None:
        return _beside_line(here, place, end)
    ellipse = _ellipse(here, place.area)
    if ellipse is not None:
        return Polygon(_round(ellipse))
    corners = _corners(here, place.area, end)
    return None if corners is None else Polygon(corners)


def _beside_line(here: Situation, place: In, end: End) -> BaseGeometry | None:
    """Return all that lies on one side of a line: "behind" is away from the net."""
    from shapely.geometry import Polygon

    item = here.setting.items.get(place.area)
    if isinstance(item, Line):
        corners: Sequence[Point] = item.corners
        if item.both_ends and (sum(y for _, y in corners) > 0) != (end == "far"):
            corners = [(-x, -y) for x, y in corners]
    else:
        corners = line_by_words(here.ground, place.area, end) or ()
    if len(corners) < 2:
        return None
    (x0, y0), (x1, y1) = corners[0], corners[-1]
    size = math.hypot(x1 - x0, y1 - y0)
    if size < 1e-9:
        return None
    ux, uy = (x1 - x0) / size, (y1 - y0) / size
    away = (-uy, ux)
    # From the net to the line is "behind" it; a line that runs up the court is measured from the middle outwards.
    outwards = (0.0, 1.0 if end == "far" else -1.0) if abs(ux) > abs(uy) else (math.copysign(1.0, x0 or 1.0), 0.0)
    if away[0] * outwards[0] + away[1] * outwards[1] < 0:
        away = (-away[0], -away[1])
    if place.side == "in front of":
        away = (-away[0], -away[1])
    start, stop = (x0 - ux * _BEYOND, y0 - uy * _BEYOND), (x1 + ux * _BEYOND, y1 + uy * _BEYOND)
    return Polygon(
        [
            start,
            stop,
            (stop[0] + away[0] * _BEYOND, stop[1] + away[1] * _BEYOND),
            (start[0] + away[0] * _BEYOND, start[1] + away[1] * _BEYOND),
        ]
    )
