"""Many balls at once against one at a time, which is checked against scipy in test_flight."""

import math
import subprocess
import sys
from dataclasses import replace

import numpy as np
import pytest

from designer.numbers.balls import ball, law
from designer.numbers.bounce import bounce, second_flight
from designer.numbers.cloud import bounces, cloud, launches
from designer.numbers.flight import RPM, Launch, flight
from designer.numbers.surfaces import surface

COUNT = 60


@pytest.fixture
def balls():
    chance = np.random.default_rng(5)
    at = np.stack((chance.uniform(-4, 4, COUNT), np.full(COUNT, -11.8872), chance.uniform(0.4, 2.7, COUNT)))

    def made(sidespin):
        velocity, spin = launches(
            chance.uniform(-0.3, 0.3, COUNT),
            chance.uniform(8, 45, COUNT),
            np.radians(chance.uniform(-4, 40, COUNT)),
            chance.uniform(-2500, 3500, COUNT) * RPM,
            chance.uniform(-1, 1, COUNT) * sidespin * RPM,
        )
        return at, velocity, spin

    return made


@pytest.mark.parametrize("sidespin", [0, 2000])
@pytest.mark.parametrize("name", ["constant drag", "drag grows with spin"])
def test_each_ball_flies_as_it_does_alone(balls, sidespin, name):
    flown = replace(ball(), law=law(name))
    at, velocity, spin = balls(sidespin)
    found = cloud(at, velocity, spin, flown)
    assert np.isfinite(found.crossing[0]).sum() > COUNT / 3
    for n in range(COUNT):
        alone = flight(Launch(tuple(at[:, n]), tuple(velocity[:, n]), tuple(spin[:, n])), flown, step=0.01)
        assert found.landing[:, n] == pytest.approx(alone.landing, abs=2e-5)
        if alone.net is None:
            assert math.isnan(found.crossing[0, n])
        else:
            assert found.crossing[:, n] == pytest.approx(alone.net, abs=2e-5)


def test_bounces_and_the_flight_after_them(balls):
    at, velocity, spin = balls(1500)
    first = cloud(at, velocity, spin, ball()).landing
    left, turning = bounces(first, spin, ball(), surface("clay"))
    second = cloud(first[1:4], left, turning, ball(), from_time=first[0], line=9.0)
    for n in range(COUNT):
        alone = flight(Launch(tuple(at[:, n]), tuple(velocity[:, n]), tuple(spin[:, n])), ball())
        off = bounce(alone.landing, alone.spin, ball(), surface("clay"))
        assert left[:, n] == pytest.approx(off.velocity, abs=1e-4)
        assert turning[:, n] == pytest.approx(off.spin, abs=1e-2)
        _, arc = second_flight(alone, ball(), surface("clay"))
        assert second.landing[:3, n] == pytest.approx(arc.landing[:3], abs=1e-3)


def test_a_line_of_its_own_for_each_ball(balls):
    at, velocity, spin = balls(0)
    lines = np.linspace(-11.5, -10.5, COUNT)
    found = cloud(at, velocity, spin, ball(), line=lines)
    crossed = np.isfinite(found.crossing[0])
    assert crossed.all()
    assert found.crossing[2] == pytest.approx(lines, abs=1e-6)


def test_one_ball_does_not_load_numpy():
    code = (
        "import sys; from designer.numbers.balls import ball; from designer.numbers.flight import flight, launch;"
        "from designer.numbers import accuracy, aiming, bounce, movement, recovery, scoring, shots, timing;"
        "flight(launch((0, -11), (0, 0), height=1, speed=30, angle=10), ball());"
        "assert not {'numpy', 'scipy'} & set(sys.modules), 'loaded'"
    )
    assert subprocess.run([sys.executable, "-c", code], check=False).returncode == 0
