"""The bounce: the ball slips along the ground, or grips it.

Along the ground the impulse is friction's, ``mu (1 + e) |vz|``, against the slip of the ball's lowest point; where that
would more than stop the slip the ball grips, and leaves with ``e_x`` of the slip turned back. H. Brody's model of 1984
with R. Cross's grip (American Journal of Physics 70, 2002), the normal force through the middle. Spin about the
vertical is kept.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Literal

from designer.numbers.balls import AIR_DENSITY, Ball
from designer.numbers.flight import Flight, Launch, State, Vector, flight
from designer.numbers.surfaces import Surface


@dataclass(frozen=True, slots=True)
class Bounce:
    """How the ball leaves the ground: m/s, rad/s; and whether it slipped all through or gripped."""

    velocity: Vector
    spin: Vector
    mode: Literal["slips", "grips"]


def rebound(
    velocity: Vector,
    spin: Vector,
    *,
    radius: float,
    inertia: float,
    friction: float,
    restitution: float,
    grip_restitution: float,
) -> Bounce:
    """Return the bounce of a ball that comes down with ``velocity`` (m/s) and ``spin`` (rad/s)."""
    vx, vy, vz = velocity
    wx, wy, wz = spin
    slip_x, slip_y = vx - radius * wy, vy + radius * wx
    slip = math.hypot(slip_x, slip_y)
    rub = friction * (1 + restitution) * abs(vz)
    grip = inertia * (1 + grip_restitution) / (1 + inertia) * slip
    share = 0.0 if slip == 0.0 else min(rub, grip) / slip
    dx, dy = -share * slip_x, -share * slip_y
    turn = 1 / (inertia * radius)
    return Bounce(
        velocity=(vx + dx, vy + dy, restitution * abs(vz)),
        spin=(wx + turn * dy, wy - turn * dx, wz),
        mode="slips" if rub < grip else "grips",
    )


def bounce(landing: State, spin: Vector, ball: Ball, surface: Surface) -> Bounce:
    """Return how ``ball`` leaves ``surface`` after ``landing``."""
    return rebound(
        (landing.vx, landing.vy, landing.vz),
        spin,
        radius=ball.radius,
        inertia=ball.inertia,
        friction=surface.friction,
        restitution=surface.restitution_of(ball),
        grip_restitution=surface.grip_restitution,
    )


def second_flight(
    first: Flight, ball: Ball, surface: Surface, *, density: float = AIR_DENSITY
) -> tuple[Bounce, Flight]:
    """Return the bounce that ends ``first``, and the flight from it to the second bounce; times count from the hit."""
    off = bounce(first.landing, first.spin, ball, surface)
    at = (first.landing.x, first.landing.y, ball.radius)
    arc = flight(Launch(at, off.velocity, off.spin), ball, density=density, from_time=first.landing.time)
    return off, arc


def dropped_height(drop: float, ball: Ball) -> float:
    """Return how high, in metres, a ball let fall from ``drop`` metres comes back: the rebound test's restitution."""
    return drop * ball.drop_restitution**2
