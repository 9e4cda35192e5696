"""One ball in the air: drag, lift of spin in three dimensions, spin constant; fourth-order Runge-Kutta, true roots.

    dv/dt = -k C_D |v| v + k C_L |v|² n - g z      k = (air density) A / (2 m)      n = (spin x v) / |spin x v|

The axes are the program's: x to the right as seen from the near end, y along the court to the far end, z up; metres,
seconds, radians a second. The ball is where its middle is; it lands when that is one radius above the ground.
"""

from __future__ import annotations

import itertools
import math
from bisect import bisect_right
from collections.abc import Callable
from dataclasses import dataclass, field
from typing import Final, NamedTuple

from designer.drill.base import Point
from designer.numbers.balls import AIR_DENSITY, GRAVITY, Ball
from designer.numbers.problems import Impossible, within

STEP: Final = 0.03
"""Seconds a step. Landing places then agree with an adaptive solver at a tolerance of 1e-11 to a thousandth of 1 mm."""

LONGEST: Final = 20.0
"""A ball that is longer in the air than this, in seconds, is given up."""

FASTEST: Final = 100.0
MOST_SPIN: Final = 10_000.0
HIGHEST: Final = 10.0

_SQUARE: Final = 1e-9

RPM: Final = 2 * math.pi / 60
"""Radians a second in one turn a minute."""

Vector = tuple[float, float, float]


class State(NamedTuple):
    """The ball at one time: seconds since the hit, metres, metres a second."""

    time: float
    x: float
    y: float
    z: float
    vx: float
    vy: float
    vz: float

    @property
    def speed(self) -> float:
        """Metres a second."""
        return math.sqrt(self.vx * self.vx + self.vy * self.vy + self.vz * self.vz)

    @property
    def descent(self) -> float:
        """Degrees below the horizontal that it flies at; negative while it rises."""
        return math.degrees(math.atan2(-self.vz, math.hypot(self.vx, self.vy)))

    @property
    def place(self) -> Point:
        """Where it is above the ground, (x, y)."""
        return (self.x, self.y)


@dataclass(frozen=True, slots=True)
class Launch:
    """How a ball leaves: where its middle is, its velocity in m/s, its spin as a vector in radians a second."""

    at: Vector
    velocity: Vector
    spin: Vector = (0.0, 0.0, 0.0)

    @property
    def speed(self) -> float:
        """Metres a second."""
        return math.sqrt(sum(part * part for part in self.velocity))

    @property
    def angle(self) -> float:
        """Degrees above the horizontal."""
        return math.degrees(math.atan2(self.velocity[2], math.hypot(self.velocity[0], self.velocity[1])))

    @property
    def state(self) -> State:
        """The ball at the hit."""
        return State(0.0, *self.at, *self.velocity)


def launch(
    contact: Point,
    towards: Point,
    *,
    height: float,
    speed: float,
    angle: float,
    topspin: float = 0.0,
    sidespin: float = 0.0,
) -> Launch:
    """Return a launch from ``contact`` in the direction of ``towards``, ``angle`` degrees up, both spins in rpm.

    Topspin positive dips; sidespin positive curves to the hitter's right. Raises ``Impossible`` with a sentence where a
    value is no number or cannot be.
    """
    within(speed, "A speed", 0.1, FASTEST, "m/s")
    within(angle, "A launch angle", -89.9, 89.9, "degrees")
    within(topspin, "A spin", -MOST_SPIN, MOST_SPIN, "rpm")
    within(sidespin, "A sidespin", -MOST_SPIN, MOST_SPIN, "rpm")
    within(height, "A contact height", 0.0, HIGHEST, "m")
    across, along = towards[0] - contact[0], towards[1] - contact[1]
    distance = math.hypot(across, along)
    if not math.isfinite(distance) or distance < 1e-9:
        raise Impossible("The ball is sent nowhere: where it is hit and where it goes are the same place.")
    right, ahead = across / distance, along / distance
    level = speed * math.cos(math.radians(angle))
    top, side = topspin * RPM, sidespin * RPM
    return Launch(
        at=(contact[0], contact[1], height),
        velocity=(level * right, level * ahead, speed * math.sin(math.radians(angle))),
        # Topspin turns about the axis to the hitter's left, sidespin to the right about the one that points down.
        spin=(-top * ahead, top * right, -side),
    )


def topspin_of(spin: Vector, across: float, along: float) -> float:
    """Return the part of ``spin`` that is topspin for a ball going (across, along), in rpm."""
    level = math.hypot(across, along)
    return 0.0 if level < 1e-12 else (spin[1] * across - spin[0] * along) / level / RPM


Pull = Callable[[float, float, float], Vector]


def pull(ball: Ball, density: float, spin: Vector, velocity: Vector | None = None) -> Pull:
    """Return the function from velocity to acceleration for this ball, air density (kg/m³) and spin (rad/s).

    ``velocity``: that of the start, where it is known; with spin square to it the ball stays in one plane, and less has to
    be computed.
    """
    k = density * math.pi * ball.diameter**2 / (8 * ball.mass)
    wx, wy, wz = spin
    if wx == wy == wz == 0.0:
        return _pull_without_spin(ball, k)
    level = wz == 0.0 and velocity is not None and abs(wx * velocity[0] + wy * velocity[1]) < _SQUARE
    return _pull_in_plane(ball, k, wx, wy) if level and ball.law.drag is None else _pull_in_space(ball, k, spin)


def _pull_without_spin(ball: Ball, k: float) -> Pull:
    sqrt = math.sqrt
    drag = k * (ball.drag if ball.law.drag is None else ball.law.drag[0])

    def pulled(vx: float, vy: float, vz: float) -> Vector:
        slow = -drag * sqrt(vx * vx + vy * vy + vz * vz)
        return slow * vx, slow * vy, slow * vz - GRAVITY

    return pulled


def _pull_in_plane(ball: Ball, k: float, wx: float, wy: float) -> Pull:
    sqrt = math.sqrt
    a, b = ball.law.lift
    drag, lift = k * ball.drag, k * ball.radius
    bound = a * ball.radius * sqrt(wx * wx + wy * wy)

    def pulled(vx: float, vy: float, vz: float) -> Vector:
        speed = sqrt(vx * vx + vy * vy + vz * vz)
        slow, up = -drag * speed, lift * speed / (bound + b * speed)
        rise = up * vz
        return slow * vx + wy * rise, slow * vy - wx * rise, slow * vz + up * (wx * vy - wy * vx) - GRAVITY

    return pulled


def _pull_in_space(ball: Ball, k: float, spin: Vector) -> Pull:
    sqrt = math.sqrt
    wx, wy, wz = spin
    a, b = ball.law.lift
    radius, bent = ball.radius, ball.law.drag
    drag, lift = k * ball.drag, k * radius

    def pulled(vx: float, vy: float, vz: float) -> Vector:
        cx, cy, cz = wy * vz - wz * vy, wz * vx - wx * vz, wx * vy - wy * vx
        speed = sqrt(vx * vx + vy * vy + vz * vz)
        if speed == 0.0:
            return 0.0, 0.0, -GRAVITY
        surface = radius * sqrt(cx * cx + cy * cy + cz * cz) / speed
        up = lift * speed / (a * surface + b * speed)
        if bent is None:
            slow = -drag * speed
        elif surface == 0.0:
            slow = -k * bent[0] * speed
        else:
            slow = -k * speed * (bent[0] + (bent[1] + bent[2] * (surface / speed) ** -bent[3]) ** bent[4])
        return slow * vx + up * cx, slow * vy + up * cy, slow * vz + up * cz - GRAVITY

    return pulled


def after(state: State, seconds: float, pulled: Pull) -> State:
    """Return ``state`` one Runge-Kutta step of ``seconds`` later."""
    time, x, y, z, vx, vy, vz = state
    half = seconds / 2
    ax, ay, az = pulled(vx, vy, vz)
    vx1, vy1, vz1 = vx + half * ax, vy + half * ay, vz + half * az
    bx, by, bz = pulled(vx1, vy1, vz1)
    vx2, vy2, vz2 = vx + half * bx, vy + half * by, vz + half * bz
    cx, cy, cz = pulled(vx2, vy2, vz2)
    vx3, vy3, vz3 = vx + seconds * cx, vy + seconds * cy, vz + seconds * cz
    dx, dy, dz = pulled(vx3, vy3, vz3)
    sixth = seconds / 6
    return State(
        time + seconds,
        x + sixth * (vx + 2 * (vx1 + vx2) + vx3),
        y + sixth * (vy + 2 * (vy1 + vy2) + vy3),
        z + sixth * (vz + 2 * (vz1 + vz2) + vz3),
        vx + sixth * (ax + 2 * (bx + cx) + dx),
        vy + sixth * (ay + 2 * (by + cy) + dy),
        vz + sixth * (az + 2 * (bz + cz) + dz),
    )


def _crossing(state: State, later: State, axis: int, level: float, pulled: Pull) -> State:
    """Return the ball between two states where its coordinate ``axis`` (1 x, 2 y, 3 z) is ``level``; a true root."""
    low, high = 0.0, later[0] - state[0]
    rising = later[axis] > state[axis]
    seconds = high * (level - state[axis]) / (later[axis] - state[axis])
    found = state
    for _ in range(40):
        found = after(state, seconds, pulled)
        off = found[axis] - level
        if abs(off) < 1e-10:
            break
        if (off > 0) == rising:
            high = seconds
        else:
            low = seconds
        rate = found[axis + 3]
        newton = seconds - off / rate if rate else low
        # Newton from inside the bracket; halving where it would leave it.
        seconds = newton if low < newton < high else (low + high) / 2
    return found


@dataclass(frozen=True, slots=True)
class Flight:
    """One arc, from the hit or a bounce to the ground. ``net``: at the net's plane, None where it does not get there.

    ``states`` are a step apart, the landing the last of them.
    """

    states: tuple[State, ...] = field(repr=False)
    landing: State
    net: State | None
    spin: Vector
    pulled: Pull = field(repr=False, compare=False)

    @property
    def time(self) -> float:
        """Seconds in the air."""
        return self.landing.time - self.states[0].time

    @property
    def apex(self) -> State:
        """Where it is highest."""
        start = self.states[0]
        if start.vz <= 0:
            return start
        for state, later in itertools.pairwise(self.states):
            if later.vz <= 0:
                return _highest(state, later, self.pulled)
        return self.landing

    def at(self, time: float) -> State:
        """Return the ball at ``time``, seconds since the hit; the ends of the arc for a time outside it."""
        first, last = self.states[0], self.states[-1]
        if time <= first.time:
            return first
        if time >= last.time:
            return last
        state = self.states[bisect_right(self.states, time, key=lambda state: state.time) - 1]
        return after(state, time - state.time, self.pulled)

    def along(self, y: float) -> State | None:
        """Return the ball as it first crosses the line at ``y`` along the court, None where it never does."""
        for state, later in itertools.pairwise(self.states):
            if (state.y < y <= later.y) or (later.y <= y < state.y):
                return _crossing(state, later, 2, y, self.pulled)
        return None


def _highest(state: State, later: State, pulled: Pull) -> State:
    low, high = 0.0, later.time - state.time
    for _ in range(60):
        middle = (low + high) / 2
        found = after(state, middle, pulled)
        if found.vz > 0:
            low = middle
        else:
            high = middle
        if high - low < 1e-9:
            break
    return after(state, (low + high) / 2, pulled)


def flight(
    hit: Launch,
    ball: Ball,
    *,
    density: float = AIR_DENSITY,
    from_time: float = 0.0,
    floor: float | None = None,
    step: float = STEP,
) -> Flight:
    """Return the flight of ``hit`` to the ground, which nothing stops: a net or a fence in its way is the caller's.

    ``floor``: the height of the ball's middle when it lands, metres; one radius unless given. Raises ``Impossible``
    where it starts below that, or never comes down.
    """
    ground = ball.radius if floor is None else floor
    lowest = min(ground, ball.radius)
    if hit.at[2] < lowest - 1e-9 or not all(math.isfinite(part) for part in (*hit.at, *hit.velocity, *hit.spin)):
        raise Impossible(
            f"The middle of the ball is {hit.at[2]:.3g} m above the ground at the hit; it cannot be lower than its radius,"
            f" {lowest:.3g} m."
        )
    pulled = pull(ball, density, hit.spin, hit.velocity)
    state = State(from_time, *hit.at, *hit.velocity)
    states = [state]
    net: State | None = None
    for _ in range(round(LONGEST / step)):
        later = after(state, step, pulled)
        landed = later.z <= ground and later.vz < 0
        if landed:
            later = _crossing(_above(state, ground, pulled, step), later, 3, ground, pulled)
        if net is None and (state.y < 0 <= later.y or later.y <= 0 < state.y):
            net = _crossing(state, later, 2, 0.0, pulled)
        states.append(later)
        if landed:
            return Flight(tuple(states), later, net, hit.spin, pulled)
        state = later
    raise Impossible(f"The ball is still in the air after {LONGEST:g} s; expected a slower one or less backspin.")


def _above(state: State, ground: float, pulled: Pull, step: float) -> State:
    """Return ``state``, or where it starts on the ground and rises within the step, the top of that rise."""
    if state.z > ground or state.vz <= 0:
        return state
    return _highest(state, after(state, step, pulled), pulled)
