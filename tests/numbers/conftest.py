"""What the tests of numbers share: a tennis court, and an adaptive solver as the oracle for flights."""

import numpy as np
import pytest
from scipy.integrate import solve_ivp

from designer.court.standards import ground
from designer.drill.drill import Court
from designer.numbers.balls import ball
from designer.numbers.surfaces import surface
from designer.numbers.surroundings import Surroundings


@pytest.fixture
def around():
    """A hard tennis court, a yellow ball, air at 20 °C."""
    return Surroundings(ground(Court()), ball(), surface())


@pytest.fixture
def solved():
    """`solved(launch, ball, density, rtol)`: the flight by scipy's DOP853, an independent integrator of the same law."""

    def solve(launch, ball, density=1.204, rtol=1e-11):
        area = np.pi * ball.diameter**2 / 4
        k = density * area / (2 * ball.mass)
        spin = np.array(launch.spin)

        def rates(_time, state):
            velocity = state[3:]
            speed = np.linalg.norm(velocity)
            turn = np.cross(spin, velocity)
            size = np.linalg.norm(turn)
            pull = -k * ball.drag * speed * velocity
            if size > 0:
                ratio = ball.radius * (size / speed) / speed
                pull = pull + k * speed**2 / (2 + 1 / ratio) * turn / size
            return np.concatenate((velocity, pull - [0, 0, 9.80665]))

        def ground(_time, state):
            return state[2] - ball.radius

        def net(_time, state):
            return state[1]

        ground.terminal, ground.direction = True, -1
        start = [*launch.at, *launch.velocity]
        found = solve_ivp(rates, (0, 30), start, method="DOP853", rtol=rtol, atol=rtol, events=[ground, net])
        at_net = found.y_events[1]
        return {
            "time": found.t_events[0][0],
            "landing": found.y_events[0][0],
            "net": at_net[0] if len(at_net) else None,
        }

    return solve
