"""How a drawn ball is struck: from contact, landing place, stroke and level to speed, angle and flight.

A stroke is hit as the level usually hits it. Where the usual speed would not clear the net on the way to the drawn place
it is hit more slowly, and said to be; where the place is too far for it, that is said, and what it would take.
"""

from __future__ import annotations

import math
from dataclasses import dataclass, replace
from functools import lru_cache
from typing import Final

from designer.drill.base import Point
from designer.drill.movement import FEEDS, SERVES, Pace, Spin, Wing
from designer.drill.people import Hand
from designer.numbers.aiming import (
    Arc,
    Box,
    Hit,
    Window,
    check_contact,
    distance,
    high_ball,
    least_speed,
    low_ball,
    speed_at,
    window,
)
from designer.numbers.bounce import Bounce, second_flight
from designer.numbers.flight import FASTEST, Flight, Launch, flight, topspin_of
from designer.numbers.levels import Level
from designer.numbers.over_net import over_net_by
from designer.numbers.problems import Impossible, OutOfReach
from designer.numbers.surroundings import Surroundings

PACES: Final[dict[Pace | None, float]] = {None: 1.0, "full": 1.0, "medium": 0.8, "half": 0.65, "soft": 0.5}
"""Share of the level's usual speed. Common practice, no source."""

_THROWN_UP: Final = 25.0
"""Degrees at which a hand feed leaves that does not cross the net. Common practice, no source."""

_STEEPEST: Final[dict[Pace | None, float]] = {None: 24.0, "full": 24.0, "medium": 24.0, "half": 28.0, "soft": 35.0}
"""Degrees: a ball that its speed would make leave more steeply is hit harder, so as to leave at that angle.

Nobody lobs because a card says "half pace". Common practice, no source.
"""

_LOBBED: Final = 50.0
"""Degrees at which a lob leaves that its usual speed does not carry far enough. Common practice, no source."""

_LET_FALL: Final = 1.5
"""A drop feed that lands nearer than this, in metres, is let fall and not hit."""

_BESIDE: Final = 0.05

_MOST_OF_USUAL: Final = 1.5
"""How many times the usual speed is looked at when a height over the net is drawn."""

_SIDE_SHARE: Final = 0.7
_LEAST_SIDESPIN: Final = 700.0
"""Sidespin, where it is drawn: a share of the usual spin, and at least so many rpm. Common practice, no source."""


@dataclass(frozen=True, slots=True)
class Wanted:
    """A ball as it is drawn: where it is met and lands, how, by whom. ``box``: the court that it must land in."""

    contact: Point
    landing: Point
    stroke: str | None
    wing: Wing | None
    hand: Hand
    height: float | None
    over_net: float | None
    pace: Pace | None
    spin: Spin | None
    box: Box
    level: Level
    around: Surroundings
    arrives: float | None = None
    """How high it is to be at ``landing``, where that is no bounce: the ball is played to somebody who volleys it."""


@dataclass(frozen=True, slots=True)
class Strike:
    """How that ball is hit and what it does. Metres, seconds, m/s, degrees, rpm.

    ``usual``: the speed that the level would use; ``most``: as hard as it can. ``clearance``: bottom of the ball over the net, None where it does not
    cross. ``bounce_height``: how high its middle comes up after the bounce. ``window``: None where the ball does not cross
    the net, or has none. ``problem``: a sentence on why it cannot be played so, "" where it can.
    """

    speed: float
    usual: float
    most: float
    angle: float
    height: float
    topspin: float
    sidespin: float
    flight: Flight
    bounce: Bounce
    after: Flight
    clearance: float | None
    window: Window | None
    problem: str

    @property
    def slowed(self) -> bool:
        """Whether it is hit more slowly than usual, so that it comes down in time."""
        return self.speed < 0.97 * self.usual

    @property
    def harder(self) -> bool:
        """Whether it is hit harder than usual, or than its word for pace says, so that it gets there."""
        return self.speed > 1.03 * self.usual

    @property
    def time(self) -> float:
        """Seconds from the hit to the bounce."""
        return self.flight.time

    @property
    def bounce_height(self) -> float:
        """How high the middle of the ball comes up after its bounce."""
        return self.after.apex.z

    @property
    def bounce_spin(self) -> float:
        """Topspin after the bounce, rpm."""
        vx, vy, _ = self.bounce.velocity
        return topspin_of(self.bounce.spin, vx, vy)


@dataclass(frozen=True, slots=True)
class _Stroke:
    """What the level makes of the words of a shot."""

    hit: Hit
    usual: float
    most: float
    clearance: float
    words: str


def crosses(wanted: Wanted) -> bool:
    """Whether a ball goes over the net."""
    return wanted.contact[1] * wanted.landing[1] < 0


@lru_cache(maxsize=4096)
def struck(wanted: Wanted) -> Strike:
    """Return how the ball is hit. Kept for each ball, so that dragging one thing costs only what it touches.

    Raises ``Impossible`` with a sentence where no ball can be hit at all: from behind the fence, from under the ground,
    on to the hitter's own side, or farther than anything carries.
    """
    if wanted.stroke == "drop feed" and math.dist(wanted.contact, wanted.landing) < _BESIDE:
        # Let fall on the spot: a hand's breadth towards the net, so that it has a direction.
        ahead = -math.copysign(_BESIDE, wanted.contact[1])
        wanted = replace(wanted, landing=(wanted.contact[0], wanted.contact[1] + ahead))
    stroke = _stroke(wanted)
    check_contact(stroke.hit, wanted.around)
    if not crosses(wanted) and not _stays(wanted):
        raise Impossible(
            f"This {stroke.words} lands on the hitter's own side, {abs(wanted.landing[1]):.1f} m before the net;"
            " expected a place beyond it."
        )
    arc, problem = _arc(wanted, stroke)
    return _strike(wanted, stroke, arc, problem)


def _stays(wanted: Wanted) -> bool:
    """Whether a ball may come down at the hitter's own end: one that is thrown, let fall or fed from beside a player."""
    return wanted.stroke in ("hand feed", "drop feed", "racket feed", "machine feed")


def _stroke(wanted: Wanted) -> _Stroke:
    habit = wanted.level.habit(wanted.stroke, wanted.wing)
    usual = habit.speed.number * PACES[wanted.pace]
    top, side = habit.topspin.number, 0.0
    if wanted.spin == "flat":
        top = 0.0
    elif wanted.spin == "slice":
        top = min(top, wanted.level.habit("slice").topspin.number)
    elif wanted.spin == "topspin":
        top = max(abs(top), wanted.level.habit("drive").topspin.number)
    elif wanted.spin == "sidespin":
        # Off the racket of a right-hander's forehand or serve the ball bends to the hitter's left.
        to_right = (wanted.hand == "left") != (wanted.wing == "backhand")
        side = math.copysign(max(_SIDE_SHARE * abs(top), _LEAST_SIDESPIN), 1 if to_right else -1)
    height = habit.height.number if wanted.height is None else wanted.height
    hit = Hit(wanted.contact, height, usual, top, side, wanted.arrives)
    as_hard_as = "drive" if wanted.stroke in FEEDS or wanted.stroke == "lob" else wanted.stroke
    fullest = wanted.level.habit(as_hard_as, wanted.wing).speed.number
    return _Stroke(hit, usual, max(usual, fullest), habit.clearance.number, wanted.stroke or "drive")


def _arc(wanted: Wanted, stroke: _Stroke) -> tuple[Arc, str]:
    """Return the way the ball is hit, and the sentence on why that cannot be, "" where it can."""
    hit, place, around = stroke.hit, wanted.landing, wanted.around
    if wanted.over_net is not None and crosses(wanted):
        fastest = min(_MOST_OF_USUAL * stroke.usual, FASTEST)
        arc = over_net_by(hit, place, wanted.over_net, around, fastest=fastest)
        if arc is not None:
            return arc, ""
        arc, _ = _usual_arc(wanted, stroke)
        return arc, (
            f"No {stroke.words} of up to {fastest:.0f} m/s passes {wanted.over_net:.1f} m over the net and lands there."
        )
    return _usual_arc(wanted, stroke)


def _usual_arc(wanted: Wanted, stroke: _Stroke) -> tuple[Arc, str]:
    hit, place, around = stroke.hit, wanted.landing, wanted.around
    special = _special_arc(wanted, stroke)
    if special is not None:
        return special, ""
    arc = low_ball(hit, place, around)
    if arc is None or arc.angle > _STEEPEST[wanted.pace]:
        harder = _harder(wanted, stroke, _STEEPEST[wanted.pace])
        if harder is not None:
            return harder, ""
    if arc is None:
        # However steeply it must leave: what the level can just reach is not beyond it.
        arc = low_ball(replace(hit, speed=stroke.most), place, around)
    if arc is None:
        return _beyond(wanted, stroke)
    over = around.clears(arc.flight)
    if not crosses(wanted) or (over is not None and over >= stroke.clearance):
        return arc, ""
    slower = over_net_by(hit, place, stroke.clearance, around, fastest=stroke.usual)
    if slower is not None:
        return slower, ""
    if over is not None and over >= 0:
        return arc, ""
    return arc, f"No {stroke.words} of up to {stroke.usual:.0f} m/s clears the net and lands there."


def _harder(wanted: Wanted, stroke: _Stroke, angle: float) -> Arc | None:
    """Return a ball hit harder than its word for pace or feed says, up to a full drive, so that it gets there as usual."""
    speed = speed_at(stroke.hit, wanted.landing, angle, wanted.around, fastest=stroke.most)
    if speed is None:
        return None
    hit = replace(stroke.hit, speed=speed)
    return (high_ball if angle > 45 else low_ball)(hit, wanted.landing, wanted.around)


def _special_arc(wanted: Wanted, stroke: _Stroke) -> Arc | None:
    """Return the arc of a stroke that is no low ball at its usual speed, None where it is or cannot be."""
    hit, place, around = stroke.hit, wanted.landing, wanted.around
    if not crosses(wanted):
        return _thrown(wanted, stroke)
    if wanted.stroke in ("drop shot", "hand feed"):
        return over_net_by(hit, place, stroke.clearance, around, fastest=stroke.usual)
    if wanted.stroke == "lob":
        return high_ball(hit, place, around) or _harder(wanted, stroke, _LOBBED)
    return None


def _thrown(wanted: Wanted, stroke: _Stroke) -> Arc | None:
    """Return a ball that is thrown up or let fall at the feeder's own end."""
    far = distance(stroke.hit, wanted.landing)
    if wanted.stroke == "drop feed" and far < _LET_FALL:
        angle = 0.0
    elif wanted.stroke == "hand feed":
        angle = _THROWN_UP
    else:
        return None
    speed = speed_at(stroke.hit, wanted.landing, angle, wanted.around, fastest=_MOST_OF_USUAL * stroke.usual)
    if speed is None:
        return None
    return low_ball(replace(stroke.hit, speed=speed), wanted.landing, wanted.around)


def _beyond(wanted: Wanted, stroke: _Stroke) -> tuple[Arc, str]:
    """Return the slowest ball that gets there, and the sentence that it is beyond the level."""
    hit, place, around = stroke.hit, wanted.landing, wanted.around
    far = distance(hit, place)
    least = least_speed(hit, place, around, fastest=FASTEST)
    arc = None if least is None else low_ball(replace(hit, speed=least * 1.001 + 0.01), place, around)
    if least is None or arc is None:
        raise OutOfReach(f"Nothing that anybody hits carries {far:.0f} m.", "the speed")
    return arc, (
        f"A {stroke.words} of {stroke.most:.0f} m/s does not carry {far:.1f} m; it takes at least {least:.0f} m/s"
        f" ({wanted.level.title.lower()})."
    )


def _strike(wanted: Wanted, stroke: _Stroke, arc: Arc, problem: str) -> Strike:
    around = wanted.around
    start = arc.flight.states[0]
    if wanted.arrives is not None:
        # The flight ended in the air, at the racket; let it go on to the ground.
        struck = Launch((start.x, start.y, start.z), (start.vx, start.vy, start.vz), arc.flight.spin)
        arc = Arc(arc.angle, flight(struck, around.ball, density=around.density))
    bounce, after = second_flight(arc.flight, around.ball, around.surface, density=around.density)
    hit = replace(stroke.hit, speed=start.speed, arrives=None)
    found: Window | None = None
    if crosses(wanted):
        towards = (start.x + start.vx, start.y + start.vy)
        try:
            found = window(hit, towards, wanted.box, around, near=arc.angle)
        except OutOfReach:
            problem = problem or _why_not(wanted, arc, stroke)
    return Strike(
        speed=start.speed,
        usual=stroke.usual,
        most=stroke.most,
        angle=arc.angle,
        height=hit.height,
        topspin=hit.topspin,
        sidespin=hit.sidespin,
        flight=arc.flight,
        bounce=bounce,
        after=after,
        clearance=around.clears(arc.flight) if crosses(wanted) else None,
        window=found,
        problem=problem,
    )


def _why_not(wanted: Wanted, arc: Arc, stroke: _Stroke) -> str:
    over = wanted.around.clears(arc.flight)
    if over is not None and over < 0:
        return f"This {stroke.words} hits the net, {-over:.2f} m below its top."
    left, right, low, high = wanted.box
    x, y = wanted.landing
    out = max(left - x, x - right, low - y, y - high)
    where = "the service box" if wanted.stroke in SERVES else "the court"
    return f"This {stroke.words} lands {out:.1f} m outside {where}." if out > 0 else ""
