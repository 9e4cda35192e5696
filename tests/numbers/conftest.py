"""What the tests of numbers share: a tennis court, and an adaptive solver as the oracle for flights."""

import numpy as np
import pytest
from scipy.integrate import solve_ivp

from designer.court.standards import ground
from designer.drill.base import place
from designer.drill.drill import Court, Drill, Progression
from designer.drill.movement import Shot
from designer.drill.people import Job, Spot
from designer.drill.setting import EMPTY, At, difference
from designer.numbers.balls import ball
from designer.numbers.levels import level
from designer.numbers.situation import situation
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


@pytest.fixture
def drawn():
    """`drawn(*records, jobs=…, **court)`: the situation of a drill with these records, for a tournament junior."""

    def make(*records, players="tournament", jobs="AB", age=None, coach=(), left=(), **court):
        setting = EMPTY.having(*records)
        people = tuple(
            Job(
                letter=letter,
                by="coach" if letter in coach else "player",
                hand="left" if letter in left else "right",
            )
            for letter in jobs
        )
        progression = Progression(id="p", changes=difference(EMPTY, setting))
        drill = Drill(
            id="d",
            court=Court(**({"surface": "hard"} | court)),
            jobs=people,
            age=age,
            progressions=(progression,),
        )
        return situation(drill, At("p"), level(players) if isinstance(players, str) else players)

    return make


def spot(letter, x, y, **more):
    return Spot(id=f"spot-{letter.lower()}", job=letter, place=place(x, y), **more)


RALLY = (
    spot("A", 0.0, -12.8016),
    spot("B", 0.0, 12.8016),
    Shot(id="feed", by="B", stroke="racket feed", contact=place(0.0, 12.8), to=place(1.0, -8.5)),
    Shot(id="reply", by="A", after="feed", wing="forehand", to=place(-2.0, 9.4)),
    Shot(id="third", by="B", after="reply", to=place(2.5, -9.4)),
)
"""A rally of three balls; places invented."""


@pytest.fixture
def rally():
    return RALLY
