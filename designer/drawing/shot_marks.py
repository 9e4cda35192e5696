"""Marks of the balls in play and of the players' runs."""

from __future__ import annotations

import math
from collections.abc import Container
from dataclasses import dataclass
from functools import lru_cache
from typing import Final

from designer.drawing import balls, people
from designer.drawing.geometry import Route, ahead, bounds_of_points, grown, overlap, unit_vector
from designer.drawing.placing import FORBIDDEN, PATH, best
from designer.drawing.plan import Plan
from designer.drawing.primitives import Bounds, Layer, Point
from designer.drill.movement import FEEDS
from designer.drill.places import locate
from designer.play.rally import is_recovery, opening_shot
from designer.play.sequence import Step
from designer.wording.spoken import label

OWN_PLACE: Final = 1.2
"""A contact nearer than this to where its hitter is drawn, in metres, has no bar: the person shows it."""

ANYWHERE: Final = 46.0
"""Length in u of the path of a ball that may go anywhere."""

TRIES: Final = (0.30, 0.44, 0.58, 0.70, 0.20)
FURTHER_TRIES: Final = (0.37, 0.51, 0.64, 0.76, 0.25, 0.82)


@dataclass(frozen=True, slots=True)
class Flight:
    """A step as it is drawn: ``kind`` is "ball path", "feed" or "fan"; ``lands`` where a place is given for it.

    The drawn line begins ``begin`` metres along the route: outside the disc of whoever stands on its start.
    """

    step: Step
    route: Route
    kind: str
    lands: bool
    begin: float = 0.0

    @property
    def id(self) -> str:
        """The shot's id."""
        return self.step.shot.id


@lru_cache(maxsize=512)
def _route(points: tuple[Point, ...], bend: float) -> Route:
    return Route(points, bend=bend)


def flights(plan: Plan, only: Container[str] | None = None) -> tuple[Flight, ...]:
    """Return how each step is drawn, in order of play; those of the shots ``only`` where given."""
    if plan.sequence is None:
        return ()
    return tuple(_flight(plan, step) for step in plan.sequence.steps if only is None or step.shot.id in only)


def _flight(plan: Plan, step: Step) -> Flight:
    start = plan.page.to_page(step.contact)
    kind = "fan" if len(step.fan) > 1 else "feed" if step.shot.stroke in FEEDS else "ball path"
    if step.landing is not None:
        end, lands = plan.page.to_page(step.landing), True
    else:
        away = -1.0 if step.contact[1] > 0 else 1.0
        aim = plan.page.to_page((step.contact[0] * 0.3, away * plan.ground.baseline * 0.7))
        end, lands = ahead(start, unit_vector(start, aim), ANYWHERE * plan.unit), False
    route = _route((start, end), step.shot.bend or 0.0)
    return Flight(step, route, kind, lands, _begin(plan, route))


def _begin(plan: Plan, route: Route) -> float:
    """Return how far along a route its line leaves the disc of the person it starts in."""
    for centre in plan.discs:
        reach = (people.RADIUS + 1.65) * plan.sign_pen.unit
        if math.dist(route.at(0.0), centre) < reach - 1e-6:
            steps = (route.length * index / 200 for index in range(100))
            return next((way for way in steps if math.dist(route.at(way), centre) >= reach), 0.0)
    return 0.0


def ball_marks(plan: Plan, drawn: tuple[Flight, ...]) -> None:
    """Add paths, heads, bounces, contacts and the balls going on, and note their space."""
    layers = {"ball path": Layer.BALLS, "feed": Layer.FEEDS, "fan": Layer.FAN}
    for flight in drawn:
        route = flight.route
        plan.draw(flight.id, flight.kind, layers[flight.kind], balls.shaft, route, flight.kind, flight.begin)
        ends = f"{flight.id} ends"  # which its own digit must not cover either
        head = plan.draw(flight.id, flight.kind, Layer.HEADS, balls.head, route, flight.kind, part="head")
        plan.space.cross(route.samples, PATH, flight.id)
        plan.take(head, ends)
        if flight.kind == "feed":
            at = route.at(flight.begin)
            plan.take(plan.draw(flight.id, "feed", Layer.HEADS, balls.ring, at, part="ring"), ends)
        if flight.lands and flight.step.shot.bounces != 0:
            plan.take(plan.draw(flight.id, "bounce", Layer.HEADS, balls.bounce, route.at(route.length)), ends)
            _going_on(plan, flight)
        if _has_bar(plan, flight):
            start = route.at(0.0)
            plan.take(plan.draw(flight.id, "contact", Layer.HEADS, balls.contact, start, route.heading(0.0)), ends)


def _has_bar(plan: Plan, flight: Flight) -> bool:
    step = flight.step
    if flight.kind == "feed" or not step.placed or (step.alternatives and not step.first_of_fan and len(step.fan) > 1):
        return False
    spot = plan.setting.spot_of(step.hitter)
    own = None if spot is None else locate(plan.setting, spot.place)
    return step.contact_drawn or (own is not None and math.dist(own, step.contact) > OWN_PLACE)


def _going_on(plan: Plan, flight: Flight) -> None:
    if plan.sequence is None:
        return
    ends = {
        plan.page.to_page(step.contact) for step in plan.sequence.following(flight.id) if step.placed and not step.feed
    }
    start = flight.route.at(flight.route.length)
    for number, end in enumerate(sorted(ends)):
        if math.dist(start, end) > 4 * plan.unit:
            part = str(number) if number else ""
            plan.draw(flight.id, "going on", Layer.FAN, balls.going_on, start, end, part=part)
            plan.space.cross((start, end), PATH / 3, flight.id)


def run_marks(plan: Plan, only: Container[str] | None = None) -> None:
    """Add the runs, those called ``only`` where given, and note their space."""
    if plan.sequence is None:
        return
    for id, points in plan.sequence.run_paths.items():
        if only is not None and id not in only:
            continue
        run = plan.setting.runs[id]
        route = _route(tuple(map(plan.page.to_page, points)), 0.0)
        stop = route.length
        if is_recovery(plan.setting, run):
            net = plan.page.to_page((0.0, -1.0 if points[-1][1] > 0 else 1.0))
            stop = _free_end(plan, route)
            made = plan.draw(id, "recovery run", Layer.RUNS, balls.recovery, route, net, stop)
        else:
            made = plan.draw(id, "run", Layer.RUNS, balls.run, route)
        plan.space.cross(route.samples, PATH, id)
        if made is not None:
            tip, reach = route.at(stop), 4.2 * plan.unit
            plan.space.take((tip[0] - reach, tip[1] - reach, tip[0] + reach, tip[1] + reach), owner=id)


def _free_end(plan: Plan, route: Route) -> float:
    """Return where on a route the two feet stand: its end, or before it where they would hide what is there."""
    u = plan.unit
    for back in (0.0, 6.0, 8.0, 10.0, 12.0, 15.0, 18.0, 22.0):
        x, y = route.at(route.length - back * u)
        box = (x - 4.2 * u, y - 3.0 * u, x + 4.2 * u, y + 3.0 * u)
        if all(overlap(box, taken.box) == 0 or taken.cost < FORBIDDEN for taken in plan.space.near_boxes(box)):
            return max(route.length - back * u, route.length / 2)
    return max(route.length - 8 * u, route.length / 2)


def digit_marks(plan: Plan, drawn: tuple[Flight, ...]) -> None:
    """Add each step's digit on its path; a fan has one, with the pill, at its fork."""
    placed: list[Point] = []
    for flight in drawn:
        if flight.kind == "fan":
            if flight.step.first_of_fan:
                _fork(plan, flight, drawn)
            continue
        digit = str(flight.step.digit)
        at = _digit_place(plan, flight, balls.tag_width(digit), placed)
        placed.append(at)
        is_feed = flight.kind == "feed"
        made = plan.draw(flight.id, "step digit", Layer.DIGITS, balls.tag, at, digit, feed=is_feed, sign=True)
        plan.take(made, owner=f"{flight.id} digit")


def _digit_place(plan: Plan, flight: Flight, width: float, placed: list[Point]) -> Point:
    """Return where on its path a digit stands: the first try that is free, else the least bad."""
    u, route = plan.sign_pen.unit, flight.route
    half = (width / 2 * u, balls.TAG / 2 * u)
    best_place, best_cost = route.at(route.length / 2), math.inf
    for order, share in enumerate((*TRIES, *FURTHER_TRIES)):
        at = route.at(share * route.length)
        box = (at[0] - half[0], at[1] - half[1], at[0] + half[0], at[1] + half[1])
        cost = order * 0.5 + plan.space.cost(box, flight.id)
        cost += sum(60 * max(0.0, 1 - math.dist(at, other) / (18 * u)) for other in placed)
        cost += 30 * (1 - plan.space.distance_to_pieces(at, 10.5 * u, flight.id) / (10.5 * u))
        cost += 20 * max(0.0, 1 - abs(plan.page.to_court(at)[1]) / (7 * u))
        if cost < best_cost - 1e-9:
            best_place, best_cost = at, cost
        if order == len(TRIES) - 1 and best_cost < 4:
            break
    return best_place if best_cost < FORBIDDEN / 4 else _beside(plan, flight, half, best_place, best_cost)


def _beside(plan: Plan, flight: Flight, half: tuple[float, float], place: Point, cost: float) -> Point:
    """Return a place beside a path that is too short, or too crowded, to carry its digit; ``place`` if none is better."""
    u, route = plan.sign_pen.unit, flight.route
    choices: list[tuple[Point, Bounds, float]] = []
    for order, (share, aside) in enumerate(
        (share, side * gap) for gap in (8.5, 12.0, 17.0, 24.0) for share in (0.5, 0.3, 0.7) for side in (1, -1)
    ):
        x, y = ahead(route.at(share * route.length), route.heading(share * route.length), 0.0, aside * u)
        choices.append(((x, y), (x - half[0], y - half[1], x + half[0], y + half[1]), 20.0 + order))
    here = (place, (0.0, 0.0, 0.0, 0.0), cost)
    return best(plan.space, choices, f"{flight.id} digit", beside=here)[0]


def _fork(plan: Plan, flight: Flight, drawn: tuple[Flight, ...]) -> None:
    """Add the one tag and the pill of a fan, beside its contact."""
    u, digit = plan.sign_pen.unit, str(flight.step.digit)
    is_feed = flight.step.shot.stroke in FEEDS
    first, second = balls.tag_width(digit), balls.pill_width()
    width = first + 0.7 + second
    start = flight.route.at(0.0)
    ends = [other.route.at(other.route.length) for other in drawn if other.id in flight.step.fan]
    away = unit_vector((sum(x for x, _ in ends) / len(ends), sum(y for _, y in ends) / len(ends)), start)
    choices: list[tuple[Point, Bounds, float]] = []
    for number in range(16):
        angle = number * math.pi / 8
        direction = (math.cos(angle), math.sin(angle))
        for distance in (0.0, 4.0, 9.0):
            reach = (width / 2 + 5 + distance, balls.TAG / 2 + 5 + distance)
            at = (start[0] + direction[0] * reach[0] * u, start[1] + direction[1] * reach[1] * u)
            box = (at[0] - width / 2 * u, at[1] - 4.9 * u, at[0] + width / 2 * u, at[1] + 4.9 * u)
            behind = 1 - (direction[0] * away[0] + direction[1] * away[1])
            choices.append((at, box, distance * 0.6 + behind * 2.0))
    at, _, _ = best(plan.space, choices)
    left = at[0] - width / 2 * u
    tag_at = (left + first / 2 * u, at[1])
    pill_at = (left + (first + 0.7 + second / 2) * u, at[1])
    made = plan.draw(flight.id, "step digit", Layer.DIGITS, balls.tag, tag_at, digit, feed=is_feed, sign=True)
    plan.take(made, owner=f"{flight.id} digit")
    pill = plan.draw(flight.id, "fan", Layer.DIGITS, balls.pill, pill_at, part="or", sign=True)
    plan.take(pill, owner=f"{flight.id} digit")


def flag_mark(plan: Plan, drawn: tuple[Flight, ...]) -> None:
    """Add the open flag at the bounce of the last restricted ball."""
    if plan.sequence is None:
        return
    opening = opening_shot(plan.setting, plan.sequence)
    flight = next((flight for flight in drawn if flight.id == opening), None)
    if flight is None:
        return
    at = flight.route.at(flight.route.length)
    wide = (plan.ground.side_fence * 2) / plan.unit >= WIDE_COURT
    choices: list[tuple[tuple[Point, str], Bounds, float]] = []
    for words, dear in (("open from here", 0.0), ("open", 12.0)) if wide else (("open", 0.0),):
        text = label(words)
        half = (balls.flag_width(text) / 2, balls.FLAG_HEIGHT / 2)
        for across, along, own in _flag_offsets(half):
            centre = (at[0] + across * plan.unit, at[1] + along * plan.unit)
            room = grown(balls.flag_box(plan.pen, centre, text), FLAG_CLEAR * plan.unit)
            choices.append(((centre, text), room, own + dear))
    (centre, text), _, _ = best(plan.space, choices)
    made = plan.draw(flight.id, "open flag", Layer.DIGITS, balls.flag, at, centre, text)
    if made is not None:
        plan.space.take(balls.flag_box(plan.pen, centre, text), owner=f"{flight.id} flag")
        nib = balls.flag_nib(plan.pen, at, centre, text)
        plan.space.take(bounds_of_points(nib), owner=f"{flight.id} flag")


FLAG_CLEAR: Final = 3.5
"""How far the flag keeps clear of what else is drawn, in u."""

WIDE_COURT: Final = 212.6
"""A court this wide in u (75 mm at 1 pt) has room for "open from here"."""


def _flag_offsets(half: tuple[float, float]) -> list[tuple[float, float, float]]:
    """Return (across, along, own cost) in u of the flag's middle from the bounce, the best first."""
    offsets = []
    for gap, cost in ((9.0, 0.0), (14.0, 1.5), (20.0, 4.0), (28.0, 8.0)):
        for side in (1, -1):
            for rise, more in ((8.0, 0.0), (-8.0, 0.4), (15.0, 1.0), (-15.0, 1.2), (24.0, 3.0), (-24.0, 3.2)):
                offsets.append((side * (half[0] + gap), rise, cost + more))
    return sorted(offsets, key=lambda offset: offset[2])
