"""Many balls at once: the same flight and bounce as for one, on arrays.

Arrays are float64. Places, velocities (m/s) and spins (rad/s) have the shape (3, n); a state has the shape (7, n): time,
place, velocity. Without sidespin a ball stays in an upright plane and is followed in two dimensions, at a third of the
cost. numpy is imported when the first cloud is asked for, never for one ball.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any, Final

from designer.numbers.balls import AIR_DENSITY, GRAVITY, Ball
from designer.numbers.flight import LONGEST
from designer.numbers.surfaces import Surface

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Floats = NDArray[np.float64]
    Pull = Callable[[Floats], Floats]
    Picked = NDArray[np.signedinteger[Any]]

STEP: Final = 0.06
"""Seconds a step: landing places to a hundredth of 1 mm."""

_STILL_FLYING: Final = 0.7
"""Balls that have landed are taken out of the arrays once fewer than this share of them still fly."""


@dataclass(frozen=True, slots=True)
class Cloud:
    """Where n balls cross a line across the court and where they land: states of shape (7, n).

    ``crossing`` is NaN for balls that land before the line, and ``landing`` for those that never come down.
    """

    landing: Floats
    crossing: Floats


def launches(heading: Floats, speed: Floats, angle: Floats, topspin: Floats, sidespin: Floats) -> tuple[Floats, Floats]:
    """Return (velocity, spin), each of shape (3, n), for arrays of shape (n,).

    ``heading`` is radians clockwise from the direction of the far end, ``angle`` radians above the horizontal, speeds are
    m/s and spins rad/s, both signed as for one ball.
    """
    import numpy as np

    right, ahead = np.sin(heading), np.cos(heading)
    level = speed * np.cos(angle)
    velocity = np.stack((level * right, level * ahead, speed * np.sin(angle)))
    return velocity, np.stack((-topspin * ahead, topspin * right, -sidespin))


def cloud(
    at: Floats,
    velocity: Floats,
    spin: Floats,
    ball: Ball,
    *,
    line: float | Floats = 0.0,
    density: float = AIR_DENSITY,
    from_time: float | Floats = 0.0,
) -> Cloud:
    """Return the flights of n balls: to the ground, and over the line at ``line`` metres along the court."""
    import numpy as np

    count = at.shape[1]
    times = np.broadcast_to(np.asarray(from_time, float), (count,))
    lines = np.broadcast_to(np.asarray(line, float), (count,))
    level = np.maximum(np.hypot(velocity[0], velocity[1]), 1e-12)
    right, ahead = velocity[0] / level, velocity[1] / level
    if np.any(spin[2]) or np.any(np.abs(spin[0] * right + spin[1] * ahead) > 1e-9):
        states = np.concatenate((times[None], at, velocity))
        return Cloud(*_fly(states, _pull_in_space(ball, density, spin), ball.radius, 1, lines))
    # In the plane of the flight: how far along it, and how high.
    topspin = spin[1] * right - spin[0] * ahead
    with np.errstate(divide="ignore", invalid="ignore"):
        lines = np.where(np.abs(ahead) < 1e-9, np.nan, (lines - at[1]) / ahead)
    states = np.stack((times, np.zeros(count), at[2], level, velocity[2]))
    landing, crossing = _fly(states, _pull_in_plane(ball, density, topspin), ball.radius, 0, lines)

    def in_space(found: Floats) -> Floats:
        time, far, high, fast, up = found
        return np.stack((time, at[0] + far * right, at[1] + far * ahead, high, fast * right, fast * ahead, up))

    return Cloud(in_space(landing), in_space(crossing))


def _drag(ball: Ball, surface: Floats, speed: Floats) -> float | Floats:
    """Return the drag coefficient where it grows with spin, else the ball's own."""
    import numpy as np

    bent = ball.law.drag
    if bent is None:
        return ball.drag
    ratio = np.maximum(np.abs(surface), 1e-9) / np.maximum(speed, 1e-9)
    coefficient: Floats = bent[0] + (bent[1] + bent[2] * ratio ** -bent[3]) ** bent[4]
    return coefficient


def _pull_in_plane(ball: Ball, density: float, topspin: Floats) -> Callable[[Picked | None], Pull]:
    """Return a maker of the function from velocities (2, n) to accelerations, for all balls or for those picked."""
    import numpy as np

    k = density * math.pi * ball.diameter**2 / (8 * ball.mass)
    a, b = ball.law.lift

    def made(picked: Picked | None) -> Pull:
        surface = ball.radius * (topspin if picked is None else topspin[picked])
        lift, bound = k * surface, a * np.abs(surface) + 1e-12

        def pull(velocity: Floats) -> Floats:
            # In place where it can be: what a step costs is mostly moving arrays about.
            fast, up = velocity
            speed = fast * fast
            speed += up * up
            np.sqrt(speed, out=speed)
            turn = b * speed
            turn += bound
            np.divide(speed, turn, out=turn)
            turn *= lift
            speed *= -k * _drag(ball, surface, speed)
            result: Floats = velocity * speed
            result[0] += turn * up
            turn *= fast
            result[1] -= turn
            result[1] -= GRAVITY
            return result

        return pull

    return made


def _pull_in_space(ball: Ball, density: float, spin: Floats) -> Callable[[Picked | None], Pull]:
    """Return a maker of the function from velocities (3, n) to accelerations, for all balls or for those picked."""
    import numpy as np

    k = density * math.pi * ball.diameter**2 / (8 * ball.mass)
    a, b = ball.law.lift

    def made(picked: Picked | None) -> Pull:
        wx, wy, wz = spin if picked is None else spin[:, picked]

        def pull(velocity: Floats) -> Floats:
            vx, vy, vz = velocity
            speed = np.sqrt(vx * vx + vy * vy + vz * vz) + 1e-12
            across = np.stack((wy * vz - wz * vy, wz * vx - wx * vz, wx * vy - wy * vx))
            surface = ball.radius * np.sqrt(across[0] ** 2 + across[1] ** 2 + across[2] ** 2) / speed
            result: Floats = velocity * (-k * _drag(ball, surface, speed) * speed)
            across *= k * ball.radius * speed / (a * surface + b * speed)
            result += across
            result[2] -= GRAVITY
            return result

        return pull

    return made


def _after(state: Floats, seconds: float | Floats, pull: Pull) -> Floats:
    """Return the states (time, place, velocity) one Runge-Kutta step of ``seconds`` later."""
    import numpy as np

    size = len(state) // 2
    v0 = state[1 + size :]
    half, sixth = seconds / 2, seconds / 6
    a0 = pull(v0)
    v1 = v0 + half * a0
    a1 = pull(v1)
    v2 = v0 + half * a1
    a2 = pull(v2)
    v3 = v0 + seconds * a2
    a0 += pull(v3)
    a1 += a2
    a1 *= 2
    a0 += a1
    a0 *= sixth
    later = np.empty_like(state)
    later[0] = state[0] + seconds
    later[1 + size :] = v0 + a0
    v1 += v2
    v1 *= 2
    v1 += v0
    v1 += v3
    v1 *= sixth
    later[1 : 1 + size] = state[1 : 1 + size] + v1
    return later


def _roots(state: Floats, later: Floats, axis: int, level: float | Floats, pull: Pull) -> Floats:
    """Return the states where place coordinate ``axis`` is ``level``, by Newton's method kept inside the step."""
    import numpy as np

    place, rate = 1 + axis, 1 + axis + len(state) // 2
    whole = later[0] - state[0]
    seconds = whole * (level - state[place]) / (later[place] - state[place])
    found = _after(state, seconds, pull)
    for _ in range(3):
        seconds = np.clip(seconds - (found[place] - level) / found[rate], 0.0, whole)
        found = _after(state, seconds, pull)
    return found


def _fly(
    state: Floats, made: Callable[[Picked | None], Pull], ground: float, across: int, lines: Floats
) -> tuple[Floats, Floats]:
    """Return (landings, crossings): states where the balls come down, and where coordinate ``across`` is at its line."""
    import numpy as np

    size = len(state) // 2
    lands, crosses = _Found(size - 1, state.shape), _Found(across, state.shape)
    index = np.arange(state.shape[1])
    flying = np.ones(len(index), bool)
    pull, all_lines = made(None), lines
    side = np.sign(lines - state[1 + across])
    for _ in range(round(LONGEST / STEP)):
        later = _after(state, STEP, pull)
        down = np.nonzero(flying & (later[size] <= ground) & (later[2 * size] < 0))[0]
        lands.take(index[down], state[:, down], later[:, down])
        passed = np.nonzero(side * (later[1 + across] - lines) >= 0)[0]
        passed = passed[(side[passed] != 0) & flying[passed]]
        crosses.take(index[passed], state[:, passed], later[:, passed])
        side[passed] = 0
        state = later
        if len(down):
            flying[down] = False
            left = np.count_nonzero(flying)
            if left == 0:
                break
            if left < _STILL_FLYING * len(flying):
                state, lines, index, side = state[:, flying], lines[flying], index[flying], side[flying]
                flying = np.ones(left, bool)
                pull = made(index)
    landings, crossings = lands.roots(ground, made), crosses.roots(all_lines, made)
    # A ball may cross in the step in which it lands, but not after it has landed.
    crossings[:, crossings[0] > landings[0]] = np.nan
    return landings, crossings


class _Found:
    """The steps in which balls pass something: their roots are found all at once when all have been followed."""

    def __init__(self, axis: int, shape: tuple[int, ...]) -> None:
        self.axis, self.shape = axis, shape
        self.index: list[Picked] = []
        self.steps: list[tuple[Floats, Floats]] = []

    def take(self, index: Picked, state: Floats, later: Floats) -> None:
        """Remember the balls of ``index``, which pass between two states."""
        if len(index):
            self.index.append(index)
            self.steps.append((state, later))

    def roots(self, level: float | Floats, made: Callable[[Picked | None], Pull]) -> Floats:
        """Return the states in which they pass ``level``; NaN for balls that never do."""
        import numpy as np

        found = np.full(self.shape, np.nan)
        if self.index:
            index = np.concatenate(self.index)
            state, later = (np.concatenate(part, axis=1) for part in zip(*self.steps, strict=True))
            at = level if isinstance(level, float) else level[index]
            found[:, index] = _roots(state, later, self.axis, at, made(index))
        return found


def bounces(landing: Floats, spin: Floats, ball: Ball, surface: Surface) -> tuple[Floats, Floats]:
    """Return (velocity, spin) of n balls as they leave the ground; see ``bounce.rebound``."""
    import numpy as np

    restitution = surface.restitution_of(ball)
    vx, vy, vz = landing[4:7]
    slip_x, slip_y = vx - ball.radius * spin[1], vy + ball.radius * spin[0]
    slip = np.hypot(slip_x, slip_y)
    rub = surface.friction * (1 + restitution) * np.abs(vz)
    grip = ball.inertia * (1 + surface.grip_restitution) / (1 + ball.inertia) * slip
    share = np.minimum(rub, grip) / np.maximum(slip, 1e-12)
    dx, dy = -share * slip_x, -share * slip_y
    turn = 1 / (ball.inertia * ball.radius)
    velocity = np.stack((vx + dx, vy + dy, restitution * np.abs(vz)))
    return velocity, np.stack((spin[0] + turn * dy, spin[1] - turn * dx, spin[2]))
