"""Rallies of the drawn part, played out many at a time: each ball flown, each run run, until it opens or ends.

A ball leaves as it is drawn, off by an angle and a heading whose spread gives the level's spread of landing places; it
flies, hits the net or clears it, bounces, and is met by the next hitter or not. Who comes late aims worse. What follows
the drawn part is a coin, its weight an input.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, field
from typing import TYPE_CHECKING, Any, Final

from designer.drill.base import Point
from designer.drill.conditions import Outcome
from designer.drill.movement import SERVES
from designer.numbers.aiming import Box, Hit, fly
from designer.numbers.cloud import bounces, cloud, launches
from designer.numbers.flight import RPM
from designer.numbers.movement import time_to_cover
from designer.numbers.payoffs import EQUAL, Rally, Sides, sides
from designer.numbers.problems import Impossible
from designer.numbers.situation import ON_THE_FULL, Situation
from designer.numbers.strike import Strike, Wanted
from designer.numbers.targets import Target, targets
from designer.numbers.timing import COMFORTABLE
from designer.play.sequence import Step

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Floats = NDArray[np.float64]
    Picked = NDArray[np.signedinteger[Any]]

STRETCHED: Final = 1.5
"""How many times wider a ball sprays that is met in the last moment; at ease it is once. Common practice, no source."""

_MOST_ANGLE: Final = math.radians(2.5)
_NOTHING, _FIRST, _SECOND, _OPEN = 0, 1, 2, 3


@dataclass(frozen=True, slots=True)
class Rallies:
    """What so many simulated starts came to: counts, and the seconds of play they took in all."""

    first: int
    second: int
    nothing: int
    opened: int
    seconds: float

    @property
    def count(self) -> int:
        """How many starts."""
        return self.first + self.second + self.nothing

    @property
    def rally(self) -> Rally:
        """The chances of one start."""
        return Rally(self.first / self.count, self.second / self.count, self.nothing / self.count)

    def plus(self, other: Rallies) -> Rallies:
        """Return both together."""
        return Rallies(
            self.first + other.first,
            self.second + other.second,
            self.nothing + other.nothing,
            self.opened + other.opened,
            self.seconds + other.seconds,
        )


def play_rallies(here: Situation, count: int, seed: int, *, open_point: float = EQUAL) -> Rallies:
    """Return ``count`` starts of a situation, the same for the same seed.

    ``open_point``: the first side's chance once the point is open. Raises ``Impossible`` where no ball is drawn, or where
    one that is drawn cannot be hit.
    """
    import numpy as np

    return _Court(here, count, np.random.default_rng(seed), open_point).played()


@dataclass(slots=True)
class _Court:
    """So many rallies under way: who has won each so far, and how late the next hitter is."""

    here: Situation
    count: int
    chance: np.random.Generator
    open_point: float
    result: Any = field(init=False)
    late: Any = field(init=False)
    seconds: float = 0.0
    both: Sides = field(init=False)

    def __post_init__(self) -> None:
        import numpy as np

        self.result = np.full(self.count, _OPEN)
        self.late = np.full(self.count, 1.0)
        self.both = sides(self.here)

    def played(self) -> Rallies:
        import numpy as np

        roots = [step for step in self.here.sequence.steps if self.here.sequence.before[step.shot.id] is None]
        if not roots:
            raise Impossible("No ball is drawn, so nothing can be played; expected a first shot.")
        roots = [step for step in roots if step.hitter == roots[0].hitter]
        self._choose(roots, np.arange(self.count))
        opened = int(np.count_nonzero(self.result == _OPEN))
        first = self.chance.random(self.count) < self.open_point
        self.result[(self.result == _OPEN) & first] = _FIRST
        self.result[self.result == _OPEN] = _SECOND
        if self._cooperative():
            opened = 0
        won, lost, nothing = (int(np.count_nonzero(self.result == value)) for value in (_FIRST, _SECOND, _NOTHING))
        return Rallies(won, lost, nothing, opened, self.seconds)

    def _cooperative(self) -> bool:
        kinds = {part.kind for part in self.here.setting.parts.values()}
        return kinds == {"cooperative"}

    def _choose(self, steps: Sequence[Step], who: Picked) -> None:
        """Play one of ``steps``, alternatives of one another, in each rally of ``who``."""
        if len(who) == 0:
            return
        picked = self.chance.integers(0, len(steps), len(who)) if len(steps) > 1 else None
        for number, step in enumerate(steps):
            self._step(step, who if picked is None else who[picked == number])

    def _step(self, step: Step, who: Picked) -> None:
        if len(who) == 0:
            return
        wanted, hit = self.here.wanted(step), self.here.strike(step)
        replies = self.here.sequence.following(step.shot.id)
        if wanted is None or hit is None:
            self.seconds += self.here.level.play.between_hits * len(who)
            self._choose(replies, who)
            return
        balls = _Balls(self.here, wanted, hit, self.late[who], self.chance)
        good = balls.good
        if step.shot.stroke in SERVES and self._serves(step) > 1:
            again = ~good
            if again.any():
                second = _Balls(self.here, wanted, hit, self.late[who[again]], self.chance)
                balls.replace(again, second)
                good = balls.good
        self.late[who] = 1.0
        self._end(who[~good], self._failed(step), step.hitter)
        who, balls = who[good], balls.kept(good)
        for target, outcome in self._demands(step):
            hit_it = _in_target(target, balls.places)
            self._end(who[~hit_it], outcome, step.hitter)
            who, balls = who[hit_it], balls.kept(hit_it)
        self._next(step, who, balls)

    def _next(self, step: Step, who: Picked, balls: _Balls) -> None:
        replies = self.here.sequence.following(step.shot.id)
        if not replies:
            self.seconds += float(balls.landing[0].sum())
            return
        picked = self.chance.integers(0, len(replies), len(who))
        for number, reply in enumerate(replies):
            mine = picked == number
            self._reply(step, reply, who[mine], balls.kept(mine))

    def _reply(self, step: Step, reply: Step, who: Picked, balls: _Balls) -> None:
        import numpy as np

        if len(who) == 0:
            return
        if reply.feed:
            self.seconds += float(balls.landing[0].sum())
            self._step(reply, who)
            return
        time, spare = balls.met(step, reply)
        self.seconds += float(time.sum())
        reached = spare >= 0
        self.late[who] = np.clip(1 + (STRETCHED - 1) * (1 - spare / COMFORTABLE), 1.0, STRETCHED)
        # Nobody gets a racket to it: a feed is fed again, a shot has won.
        missed = who[~reached]
        if step.feed and step.shot.stroke not in SERVES:
            self.result[missed] = _NOTHING
        else:
            self._won_by(missed, step.hitter)
        self._step(reply, who[reached])

    def _serves(self, step: Step) -> int:
        for start in self.here.setting.starts.values():
            if start.shot == step.shot.id:
                return start.serves.get(step.hitter, 2 if step.shot.stroke == "serve" else 1)
        return 2 if step.shot.stroke == "serve" else 1

    def _failed(self, step: Step) -> Outcome | None:
        """Return what follows a ball of ``step`` in the net or out."""
        if step.feed:
            starts = (start for start in self.here.setting.starts.values() if start.shot == step.shot.id)
            return next((start.bad for start in starts), None) or Outcome(then="replay")
        for part in self.here.setting.parts.values():
            if step.shot.id in part.shots and part.kind != "open":
                return part.failed
        return None

    def _demands(self, step: Step) -> list[tuple[Target, Outcome | None]]:
        found = []
        for target in targets(self.here, step):
            rule = self.here.setting.rules.get(target.by)
            start = self.here.setting.starts.get(target.by)
            if rule is not None:
                found.append((target, rule.breach or self._failed(step)))
            elif start is not None:
                found.append((target, start.bad or Outcome(then="replay")))
            elif target.by in self.here.setting.parts and target.purpose != "bonus":
                found.append((target, self._failed(step)))
        return found

    def _end(self, who: Picked, outcome: Outcome | None, doer: str) -> None:
        """End the rallies of ``who`` as ``outcome`` says; nothing said means the point is lost, as in any rally."""
        if outcome is not None and outcome.then == "opens":
            return
        paid_to_other = outcome is not None and outcome.then == "points" and outcome.to == "other"
        lost = outcome is None or outcome.then == "lose the point" or paid_to_other
        if lost and not self._cooperative():
            other = self.both.second if doer in self.both.first else self.both.first
            self._won_by(who, other[0] if other else "")
        else:
            self.result[who] = _NOTHING

    def _won_by(self, who: Picked, letter: str) -> None:
        if self._cooperative():
            self.result[who] = _NOTHING
        else:
            self.result[who] = _FIRST if letter in self.both.first else _SECOND


class _Balls:
    """The balls of one drawn shot in many rallies: states of shape (7, n) where they land, and whether each is good."""

    def __init__(self, here: Situation, wanted: Wanted, hit: Strike, late: Floats, chance: np.random.Generator) -> None:
        import numpy as np

        self.here, self.wanted, self.hit = here, wanted, hit
        count = len(late)
        start = hit.flight.states[0]
        angle_off, speed_off, aside = _scatter(wanted, hit)
        heading = math.atan2(start.vx, start.vy) + aside * late * chance.standard_normal(count)
        angle = math.radians(hit.angle) + angle_off * late * chance.standard_normal(count)
        speed = hit.speed + speed_off * late * chance.standard_normal(count)
        full = np.ones(count)
        velocity, self.spin = launches(
            heading, np.maximum(speed, 0.5), angle, hit.topspin * RPM * full, hit.sidespin * RPM * full
        )
        at = np.stack((start.x * full, start.y * full, start.z * full))
        line = wanted.landing[1] if wanted.arrives is not None else 0.0
        self.start, self.velocity = at, velocity
        flown = cloud(at, velocity, self.spin, here.around.ball, density=here.around.density)
        self.landing = flown.landing
        self.at_racket = None
        if wanted.arrives is not None:
            self.at_racket = cloud(
                at, velocity, self.spin, here.around.ball, line=line, density=here.around.density
            ).crossing
        self.good = self._over(flown.crossing) & self._in(wanted.box)

    def _over(self, crossing: Floats) -> Any:
        import numpy as np

        if self.hit.clearance is None:
            return np.ones(crossing.shape[1], bool)
        net = self.here.ground.net
        share = np.minimum(np.abs(crossing[1]) / net.support_x, 1.0)
        top = net.centre_height + (net.support_height - net.centre_height) * share
        with np.errstate(invalid="ignore"):
            return crossing[3] - self.here.around.ball.radius >= top

    def _in(self, box: Box) -> Any:
        import numpy as np

        x, y = self.landing[1], self.landing[2]
        if self.hit.clearance is None or self.at_racket is not None:
            return np.isfinite(y)
        left, right, low, high = box
        edge = self.here.around.ball.radius
        return (x >= left - edge) & (x <= right + edge) & (y >= low - edge) & (y <= high + edge)

    @property
    def places(self) -> Any:
        """Where they land: shape (2, n)."""
        return self.landing[1:3]

    def replace(self, where: Any, other: _Balls) -> None:
        """Put ``other``'s balls in place of those that ``where`` marks: a second serve."""
        self.landing[:, where], self.spin[:, where], self.good[where] = other.landing, other.spin, other.good
        self.start[:, where], self.velocity[:, where] = other.start, other.velocity
        if self.at_racket is not None and other.at_racket is not None:
            self.at_racket[:, where] = other.at_racket

    def kept(self, where: Any) -> _Balls:
        """Return the balls that ``where`` marks."""
        found = _Balls.__new__(_Balls)
        found.here, found.wanted, found.hit = self.here, self.wanted, self.hit
        found.landing, found.spin, found.good = self.landing[:, where], self.spin[:, where], self.good[where]
        found.start, found.velocity = self.start[:, where], self.velocity[:, where]
        found.at_racket = None if self.at_racket is None else self.at_racket[:, where]
        return found

    def _at(self, line: float) -> Any:
        """Return (time, x, y, height …) of each ball where it passes ``line`` metres along the court before its bounce."""
        around = self.here.around
        return cloud(self.start, self.velocity, self.spin, around.ball, line=line, density=around.density).crossing

    def met(self, step: Step, reply: Step) -> tuple[Any, Any]:
        """Return (seconds until the ball is met, seconds to spare) for each ball."""
        import numpy as np

        around = self.here.around
        racket = self.at_racket if reply.shot.stroke not in ON_THE_FULL else self._at(reply.contact[1])
        if racket is not None:
            # What bounces before it gets there is met at its bounce.
            met = np.where(np.isfinite(racket[0]), racket, self.landing)
        else:
            velocity, spin = bounces(self.landing, self.spin, around.ball, around.surface)
            after = cloud(
                self.landing[1:4],
                velocity,
                spin,
                around.ball,
                line=reply.contact[1],
                density=around.density,
                from_time=self.landing[0],
            )
            # A ball that does not come so far is met as it is about to bounce again.
            met = np.where(np.isfinite(after.crossing[0]), after.crossing, after.landing)
        # The drawn ball says how far the hitter is from it and what that leaves; each ball is so much farther or nearer.
        stands = self.here.sequence.person_at(reply.hitter, step.shot.id) or reply.contact
        movement = self.here.level.movement
        away = np.maximum(np.hypot(met[1] - stands[0], met[2] - stands[1]) - movement.reach, 0.0)
        grid = np.linspace(0.0, max(float(away.max(initial=0.0)), 1.0), 64)
        times = np.array([time_to_cover(float(metres), movement) for metres in grid])
        delay = 0.0 if step.feed and step.shot.stroke not in SERVES and not step.alternatives else movement.delay
        return met[0], met[0] - delay - np.interp(away, grid, times)


def _scatter(wanted: Wanted, hit: Strike) -> tuple[float, float, float]:
    """Return standard deviations of launch angle (rad), speed (m/s) and heading (rad) that give the level's spread.

    Where a degree hardly changes how far a ball goes, as in a lob, it is the speed that is off.
    """
    far = math.dist(wanted.contact, wanted.landing)
    spread = wanted.level.spread_of(wanted.stroke, max(far, 0.1))
    shot = Hit((0.0, 0.0), hit.height, hit.speed, hit.topspin, 0.0)

    def carried(angle: float, speed: float) -> float:
        struck = Hit(shot.contact, shot.height, speed, shot.topspin)
        return fly(struck, (0.0, 1.0), angle, wanted.around, coarse=True).landing.y

    by_angle = (carried(hit.angle + 0.25, hit.speed) - carried(hit.angle - 0.25, hit.speed)) / math.radians(0.5)
    by_speed = (carried(hit.angle, hit.speed * 1.01) - carried(hit.angle, hit.speed * 0.99)) / (0.02 * hit.speed)
    angle = min(spread.along / max(abs(by_angle), 1e-6), _MOST_ANGLE)
    rest = max(spread.along**2 - (angle * by_angle) ** 2, 0.0)
    return angle, math.sqrt(rest) / max(abs(by_speed), 1e-6), math.atan2(spread.across, max(far, 0.1))


def _in_target(target: Target, places: Any) -> Any:
    """Return which of ``places``, shape (2, n), lie in ``target``."""
    import numpy as np

    x, y = places
    if target.ellipse is not None:
        (x0, y0), (x1, y1) = target.ellipse
        return ((2 * x - x0 - x1) / (x1 - x0)) ** 2 + ((2 * y - y0 - y1) / (y1 - y0)) ** 2 <= 1
    inside = np.zeros(len(x), bool)
    for polygon in target.polygons:
        inside |= _in_polygon(polygon, x, y)
    for hole in target.holes:
        inside &= ~_in_polygon(hole, x, y)
    return inside


def _in_polygon(polygon: Sequence[Point], x: Any, y: Any) -> Any:
    import numpy as np

    inside = np.zeros(len(x), bool)
    for (x0, y0), (x1, y1) in zip(polygon, (*polygon[1:], polygon[0]), strict=True):
        if y0 != y1:
            inside ^= ((y0 > y) != (y1 > y)) & (x < x0 + (x1 - x0) * (y - y0) / (y1 - y0))
    return inside
