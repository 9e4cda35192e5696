"""Cautions from the drawing: where somebody could trip, be hit, or run into something.

Nothing here says that a drill is safe. The distances are coaches' practice with no source unless one is named.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any, Final

from designer.court.regions import RACKET
from designer.court.standards import Ground
from designer.drill.base import Point
from designer.drill.drill import CLUB_RUN_BACK, CLUB_SIDE_RUN, Drill
from designer.drill.items import Area, BallMachine, Barrier, Basket, Cone, Disc, Hoop, Line, Obstacle
from designer.drill.movement import FEEDS, Run
from designer.drill.places import locate
from designer.play.layout import points_of, things_placed
from designer.play.sequence import Step
from designer.review.check import Check, called, check, record_name
from designer.review.geometry import ahead_and_aside, closed, inside, path_to_path, point_to_path
from designer.wording.names import letter, shot_name
from designer.wording.sentence import ref
from designer.wording.telling import Telling

BODY: Final = 0.45
"""Half the width of a runner with the feet apart."""
BEHIND: Final = 1.0
"""An object nearer than this behind a hitter is in the way of a step back."""
ARM: Final = 0.7
CHILDREN_MORE: Final = 0.5
"""Among under-tens so much more room: swung rackets are their commonest injury. A red court still has its two lanes."""
SWING: Final = RACKET + ARM
"""How far one racket reaches from the middle of its player."""
STOPPING: Final = 1.5
"""Room that a runner needs to stop before a fence."""
BALL_WIDTH: Final = 0.75
"""Somebody nearer than this to a ball's line stands in it."""
FED_FROM: Final = 0.3
"""Whoever feeds from the far service line, or less than this inside it, has the time that coaches want."""
CONE: Final = math.radians(8)
"""How far a hit may go astray to either side."""
PAST: Final = 3.0
"""How far behind its bounce a ball still counts."""
YOUNG: Final = 10
"""Under-tens: ITF Rules of Tennis, Appendix VI, sets courts and balls of their own for them."""

_RAISED: Final = (Cone, Barrier, Obstacle)
_UNDERFOOT: Final = (Cone, Disc, Hoop, Basket, BallMachine, Barrier, Obstacle)


@dataclass(frozen=True, slots=True)
class Placed:
    """A thing that can be stepped on or run into: its record and its outline, a path or one point."""

    item: Any
    outline: tuple[Point, ...]
    solid: bool

    def distance(self, path: tuple[Point, ...]) -> float:
        """Return how far the thing is from a path."""
        if self.solid and any(inside(point, self.outline) for point in path):
            return 0.0
        return path_to_path(path, self.outline)


def danger_cautions(told: Telling) -> Iterator[Check]:
    """Yield the cautions that the drawing of one setting gives."""
    things = list(_placed(told))
    yield from _on_run_paths(told, things)
    yield from _behind_hitters(told, things)
    yield from _in_the_line(told)
    yield from _runs_at_fences(told)
    yield from _beyond_wide_runs(told, things)
    yield from _raised(told)
    yield from _too_close(told)


def _placed(told: Telling) -> Iterator[Placed]:
    for item, turned in things_placed(told.setting):
        points = points_of(told.setting, item, turned=turned)
        if not points:
            continue
        if isinstance(item, Obstacle):
            yield Placed(item, tuple(closed(points)), solid=len(points) > 2)
        elif isinstance(item, Barrier) or (isinstance(item, Line) and item.marked == "throw-down"):
            yield Placed(item, points, solid=False)
        elif isinstance(item, Line | Area) and item.marked == "discs":
            yield from (Placed(item, (point,), solid=False) for point in points)
        elif isinstance(item, _UNDERFOOT):
            yield Placed(item, points, solid=False)


def _flat(item: Any) -> bool:
    return isinstance(item, Disc | Hoop | Line | Area)


def _is_strip(item: Any) -> bool:
    return isinstance(item, Line) and item.marked == "throw-down"


def _stood_on(told: Telling, thing: Placed) -> bool:
    places = [locate(told.setting, spot.place) for spot in told.setting.spots.values()]
    return any(place is not None and thing.distance((place,)) <= BODY for place in places)


def _spot(told: Telling, who: str) -> str:
    """Return the id by which a person is lit up on the drawing."""
    spot = told.setting.spot_of(who)
    return who if spot is None else spot.id


def _words(told: Telling, item: Any) -> str:
    """Return what a thing underfoot is called: of a line or an area of discs, the discs."""
    name = called(told, item.id)
    return f"a disc of {name}" if isinstance(item, Line | Area) and item.marked == "discs" else name


def _on_run_paths(told: Telling, things: list[Placed]) -> Iterator[Check]:
    for run in sorted(told.setting.runs.values(), key=lambda run: run.id):
        path = told.sequence.run_paths.get(run.id, ())
        found: set[str] = set()
        for thing in things:
            if thing.item.id in found or thing.distance(path) > BODY:
                continue
            if run.to.on == thing.item.id and not _is_strip(thing.item):
                continue  # it is run to
            if _flat(thing.item) and _stood_on(told, thing):
                continue  # a spot marker is there to be stepped on
            found.add(thing.item.id)
            yield _on_a_run_path(told, run, thing.item)


def _on_a_run_path(told: Telling, run: Run, item: Any) -> Check:
    who, thing = letter(told, run.by), _words(told, item)
    way = ref(run.id, "run")
    if _is_strip(item):
        verb = "ends on" if run.to.on == item.id else "crosses"
        text = f"{who}’s {way} {verb} {thing}: flat strips slide on a wet or dusty court, and none belongs where a player turns"
        return check("caution", "strip-on-run", text, run.id, item.id, at=told.at, danger=True)
    if _flat(item):
        text = f"{who}’s {way} passes over {thing}: flat ones only, on a dry court"
        return check("caution", "flat-on-run", text, run.id, item.id, at=told.at, danger=True)
    text = f"{thing} stands on {who}’s {way}"
    return check("caution", "object-on-run", text, run.id, item.id, at=told.at, danger=True)


def _behind_hitters(told: Telling, things: list[Placed]) -> Iterator[Check]:
    seen: set[tuple[str, str]] = set()
    for step in told.sequence.steps:
        stands = told.sequence.person_at(step.hitter, step.shot.id)
        if stands is None or not step.placed:
            continue
        for thing in things:
            if (step.hitter, thing.item.id) in seen or isinstance(thing.item, Barrier):
                continue
            if isinstance(thing.item, Basket) and step.shot.stroke in FEEDS:
                continue  # a feeder's basket stands beside and behind the feeder
            if _just_behind(stands, thing):
                seen.add((step.hitter, thing.item.id))
                verb = "lies" if _flat(thing.item) else "stands"
                text = f"{_words(told, thing.item)} {verb} within 1 m behind {letter(told, step.hitter)} at {shot_name(told, step.shot)}"
                yield check("caution", "object-behind", text, thing.item.id, step.shot.id, at=told.at, danger=True)


def _just_behind(stands: Point, thing: Placed) -> bool:
    away = 1 if stands[1] > 0 else -1
    if len(thing.outline) == 1:
        behind, aside = ahead_and_aside(thing.outline[0], stands, (stands[0], stands[1] + away))
        return 0.05 < behind <= BEHIND and aside <= BODY
    step_back = (stands, (stands[0], stands[1] + away * (BEHIND - BODY)))
    return thing.distance(step_back) <= BODY and any((y - stands[1]) * away > 0.05 for _, y in thing.outline)


def _in_the_line(told: Telling) -> Iterator[Check]:
    """Yield cautions for feeders near the net and for people who wait where a hit may go."""
    setting = told.setting
    feeding = feeders(told)
    waiting = {spot.job: spot for spot in setting.spots.values() if spot.task != "plays"}
    seen: set[tuple[str, str]] = set()
    for step in told.sequence.steps:
        thrown = step.feed and step.shot.stroke not in ("machine feed", "racket feed")
        if thrown or step.landing is None or step.shot.stroke == "shadow swing":
            continue
        aimed = step.shot.to.on if step.shot.to is not None else None
        for who in sorted({*feeding, *waiting} - {step.hitter, aimed}):
            key = "feeder-in-line" if who in feeding else "waiting-in-line"
            stands = told.sequence.person_at(who, step.shot.id)
            if (
                stands is None
                or (who, key) in seen
                or not _in_the_way(told, step, stands, waits=key != "feeder-in-line")
            ):
                continue
            if who in waiting and waiting[who].task == "collects" and _behind_the_bounce(step, stands):
                continue  # whoever collects stands where the balls go
            seen.add((who, key))
            text = f"{letter(told, who)} stands in the line of {shot_name(told, step.shot)}"
            ends = (
                ": move aside, or feed from farther back" if key == "feeder-in-line" else ": wait where no hit can go"
            )
            yield check("caution", key, text + ends, step.shot.id, _spot(told, who), at=told.at, danger=True)


def opens_on(drill: Drill, x: float) -> bool:
    """Whether another court lies at the side of the middle that ``x`` is on, with no fence between."""
    return drill.court.neighbour in ("both", "right" if x > 0 else "left")


def feeders(told: Telling) -> set[str]:
    """Return who only feeds: people and machines that make no other shot."""
    feeding: dict[str, bool] = {}
    for step in told.sequence.steps:
        feeding[step.hitter] = feeding.get(step.hitter, True) and step.shot.stroke in FEEDS
    return {who for who, only in feeding.items() if only}


def _in_the_way(told: Telling, step: Step, stands: Point, *, waits: bool) -> bool:
    landing = step.landing or step.contact
    ahead, aside = ahead_and_aside(stands, step.contact, landing)
    flight = math.dist(step.contact, landing)
    if waits:
        return 0 < ahead <= flight + PAST and aside <= max(BALL_WIDTH, ahead * math.tan(CONE))
    service = told.ground.service_line or told.ground.baseline
    return 0 < ahead <= flight + PAST and aside <= BALL_WIDTH and abs(stands[1]) < service - FED_FROM


def _behind_the_bounce(step: Step, stands: Point) -> bool:
    landing = step.landing or step.contact
    ahead, _ = ahead_and_aside(stands, step.contact, landing)
    return ahead >= math.dist(step.contact, landing)


def _runs_at_fences(told: Telling) -> Iterator[Check]:
    ground = told.ground
    for run in sorted(told.setting.runs.values(), key=lambda run: run.id):
        path = told.sequence.run_paths.get(run.id, ())
        if not path:
            continue
        x, y = path[-1]
        fences = [(ground.back_fence - abs(y), "back", ground.assumed_run_back)]
        if not opens_on(told.drill, x):
            fences.append((ground.side_fence - abs(x), "side", ground.assumed_side_run))
        for left, fence, assumed in fences:
            if left < STOPPING:
                room = f"{max(left, 0):.1f} m before the {fence} fence" if left > 0.05 else f"at the {fence} fence"
                told_so = " (run-off not stated: the club minimum is assumed)" if assumed else ""
                text = f"{record_name(told, run)} ends {room}{told_so}: a runner needs {STOPPING} m to stop"
                yield check("caution", "run-at-fence", text, run.id, at=told.at, danger=True)


def _beyond_wide_runs(told: Telling, things: list[Placed]) -> Iterator[Check]:
    """Yield cautions for things in the way of a player who runs wide and cannot stop at once."""
    for run in sorted(told.setting.runs.values(), key=lambda run: run.id):
        path = told.sequence.run_paths.get(run.id, ())
        if len(path) < 2 or run.purpose == "recover":
            continue
        (x0, _), (x, y) = path[-2:]
        side = 1 if x > 0 else -1
        if abs(x) < told.ground.singles - RACKET or (x - x0) * side <= 0:
            continue
        onwards = ((x, y), (side * told.ground.side_fence, y))
        for thing in things:
            if not _flat(thing.item) and thing.distance(path) > BODY and thing.distance(onwards) <= STOPPING / 2:
                text = f"{_words(told, thing.item)} stands where {letter(told, run.by)} runs out wide: keep the way to the side fence clear"
                yield check("caution", "object-beyond-run", text, run.id, thing.item.id, at=told.at, danger=True)


def _raised(told: Telling) -> Iterator[Check]:
    drill = told.drill
    raised = sorted(item.id for item in told.setting.items.values() if isinstance(item, _RAISED))
    strips = sorted(
        item.id
        for item in told.setting.items.values()
        if (isinstance(item, Line | Area) and item.marked in ("throw-down", "discs")) or isinstance(item, Disc | Hoop)
    )
    cones = [id for id in raised if not isinstance(told.setting.items[id], Barrier)]
    if cones and drill.age is not None and drill.age[0] < YOUNG:
        names = ", ".join(called(told, id) for id in cones)
        text = f"players under {YOUNG} and raised things on court: {names}; flat ones are not fallen over"
        yield check("caution", "raised-young", text, *cones, at=told.at, danger=True)
    if raised and drill.court.wet:
        text = f"a wet court and raised things on it: {', '.join(called(told, id) for id in raised)}"
        yield check("caution", "raised-wet", text, *raised, at=told.at, danger=True)
    if strips and drill.court.wet and drill.court.surface not in ("clay", "grass"):
        text = f"a wet court: flat pieces slide underfoot: {', '.join(called(told, id) for id in strips)}"
        yield check("caution", "strip-wet", text, *strips, at=told.at, danger=True)


def _too_close(told: Telling) -> Iterator[Check]:
    """Yield cautions for people whom a racket reaches, at each hit and along the runs before it: hitters, and who waits."""
    others = sorted(spot.job for spot in told.setting.spots.values())
    seen: set[tuple[str, ...]] = set()
    young = told.drill.age is not None and told.drill.age[0] < YOUNG
    for step in told.sequence.steps:
        stands = told.sequence.person_at(step.hitter, step.shot.id)
        if stands is None or step.shot.stroke in ("hand feed", "drop feed", "machine feed"):
            continue
        for who in others:
            pair = tuple(sorted((who, step.hitter)))
            if who == step.hitter or pair in seen:
                continue
            path = _while_coming(told, who, step)
            room = (2 * SWING - ARM if _swings(told, who) else SWING) + (CHILDREN_MORE if young else 0.0)
            apart = point_to_path(stands, path)
            if path and (path[-1][1] > 0) == (stands[1] > 0) and apart < room - 0.005:
                seen.add(pair)
                text = (
                    f"{letter(told, pair[0])} and {letter(told, pair[1])} are {apart:.1f} m apart "
                    f"at {shot_name(told, step.shot)}: {'among children ' if young else ''}a swing needs {room:.1f} m"
                )
                ids = (_spot(told, pair[0]), _spot(told, pair[1]), step.shot.id)
                yield check("caution", "too-close", text, *ids, at=told.at, danger=True)


def _while_coming(told: Telling, who: str, step: Step) -> tuple[Point, ...]:
    """Return where ``who`` is while the ball comes that ``step`` hits: the run made meanwhile, or one place."""
    earlier = told.sequence.before.get(step.shot.id)
    runs = [
        run for run in told.setting.runs.values() if run.by == who and run.during == earlier and earlier is not None
    ]
    for run in runs:
        path = told.sequence.run_paths.get(run.id)
        if path is not None:
            return path
    stands = told.sequence.person_at(who, step.shot.id)
    return () if stands is None else (stands,)


def _swings(told: Telling, who: str) -> bool:
    """Whether somebody swings a racket: everybody who plays and does not only throw, drop or load balls."""
    spot = told.setting.spot_of(who)
    if spot is not None and spot.task != "plays":
        return False
    own = [step.shot.stroke for step in told.sequence.steps if step.hitter == who]
    return not own or any(stroke not in ("hand feed", "drop feed", "machine feed") for stroke in own)


def run_off_cautions(drill: Drill, ground: Ground) -> Iterator[Check]:
    """Yield cautions for a stated run-off below the club minimum: ITF Technical Booklet 2015, table 5, notes d and e."""
    for stated, least, name in (
        (drill.court.run_back, CLUB_RUN_BACK, "behind the baseline"),
        (drill.court.side_run, CLUB_SIDE_RUN, "beside the court"),
    ):
        if stated is not None and stated < least - 0.01:
            text = f"{stated:.2f} m {name} is less than the {least:.2f} m recommended for club play"
            yield check("caution", "run-off", text, danger=True)
    if ground.assumed:
        text = "the room round the court is not stated: the club minimum is assumed, 5.49 m behind and 3.05 m beside"
        yield check("suggestion", "run-off-assumed", text)
