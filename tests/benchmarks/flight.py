"""How quick flights and games are beside their peers: `python tests/benchmarks/flight.py`. Prints ratios; asserts nothing.

Five runs of each, in turn with the peer, medians. scipy's solve_ivp at rtol 1e-6, in its default method, is the peer, and
at rtol 1e-12 (DOP853) the judge of who is more exact. All with the ground and the net as events.
"""

from __future__ import annotations

import math
import random
import statistics
import sys
import time
from pathlib import Path

import numpy as np
from scipy.integrate import solve_ivp

sys.path.insert(0, str(Path(__file__).resolve().parents[2]))

from designer.bundle import sample
from designer.desktop.side_view.basis import Basis
from designer.desktop.side_view.panel import computed
from designer.drill.base import place
from designer.drill.edits import put
from designer.drill.setting import At, setting_at
from designer.numbers.balls import ball
from designer.numbers.cloud import cloud
from designer.numbers.fairness import fairness, play_games
from designer.numbers.finishes import Pace
from designer.numbers.flight import Launch, flight, launch
from designer.numbers.levels import level
from designer.numbers.recovery import recovery
from designer.numbers.shots import numbers_of, recoveries
from designer.numbers.situation import situation
from designer.numbers.strike import struck
from designer.review.checks import checks
from designer.storage.reading import open_drill

RUNS = 5
BALL = ball()


def peer(hit: Launch, rtol: float = 1e-6, method: str = "RK45"):
    """The same flight by solve_ivp, written for speed: plain floats, two dimensions where there is no sidespin."""
    k = 1.204 * math.pi * BALL.diameter**2 / (8 * BALL.mass)
    drag, radius = BALL.drag, BALL.radius
    top = math.sqrt(sum(part * part for part in hit.spin))
    level_speed = math.hypot(hit.velocity[0], hit.velocity[1])

    def rates(_time, state):
        _x, _z, vx, vz = state
        speed = math.sqrt(vx * vx + vz * vz)
        ratio = radius * top / speed
        lift = 1 / (2 + 1 / ratio) if ratio else 0.0
        return vx, vz, -k * speed * (drag * vx - lift * vz), -k * speed * (drag * vz + lift * vx) - 9.80665

    def ground(_time, state):
        return state[1] - radius

    def net(_time, state):
        return state[0] - 11.8872

    ground.terminal, ground.direction = True, -1
    start = [0.0, hit.at[2], level_speed, hit.velocity[2]]
    return solve_ivp(rates, (0, 20), start, method=method, rtol=rtol, atol=min(rtol, 1e-6), events=[ground, net])


def hits(count: int) -> list[Launch]:
    """Drives, lobs and serves straight ahead with topspin, seeded."""
    chance = random.Random(11)
    return [
        launch(
            (0.0, -11.8872),
            (0.0, 0.0),
            height=chance.uniform(0.5, 2.7),
            speed=chance.uniform(18, 45),
            angle=chance.uniform(4, 25),
            topspin=chance.uniform(200, 3000),
        )
        for _ in range(count)
    ]


def timed(work) -> float:
    start = time.perf_counter()
    work()
    return time.perf_counter() - start


def in_turn(*works) -> list[float]:
    """Median seconds of each work, run in turn so that a busy moment falls on all."""
    taken = [[timed(work) for work in works] for _ in range(RUNS)]
    return [statistics.median(column) for column in zip(*taken, strict=True)]


def one_flight() -> None:
    some = hits(40)
    own, other = in_turn(
        lambda: [flight(hit, BALL) for hit in some],
        lambda: [peer(hit) for hit in some],
    )
    exact = [peer(hit, 1e-12, "DOP853").y_events[0][0][0] for hit in some]
    own_off = max(abs(flight(hit, BALL).landing.y + 11.8872 - far) for hit, far in zip(some, exact, strict=True))
    peer_off = max(abs(peer(hit).y_events[0][0][0] - far) for hit, far in zip(some, exact, strict=True))
    print(
        f"one flight: {own / 40 * 1e3:.3f} ms, solve_ivp rtol 1e-6 {other / 40 * 1e3:.3f} ms: {own / other:.3f} of it"
    )
    print(f"  worst landing place: {own_off * 1e3:.6f} mm against {peer_off * 1e3:.6f} mm")


def many_flights() -> None:
    some = hits(10_000)
    at, velocity, spin = (np.array([getattr(hit, name) for hit in some]).T for name in ("at", "velocity", "spin"))
    cloud(at[:, :100], velocity[:, :100], spin[:, :100], BALL)
    own, other = in_turn(lambda: cloud(at, velocity, spin, BALL), lambda: [peer(hit) for hit in some[:100]])
    print(
        f"10 000 flights: {own * 1e3:.0f} ms; solve_ivp for each (100 run, scaled) {other * 100:.1f} s: {other * 100 / own:.0f} times faster"
    )


def games() -> None:
    drill = open_drill(sample("wide-start.drill.json")).drill
    here = situation(drill, At("p-fed"), level("tournament"))
    first: list[float] = []
    start = time.perf_counter()
    found = fairness(here, rallies=4000, games=10_000, progress=lambda *_: first.append(time.perf_counter() - start))
    whole = time.perf_counter() - start
    alone = timed(lambda: play_games(here.setting.finish, found.gains, Pace(20, 1.5, 4), 10_000, 1))
    print(
        f"10 000 games of the drawn part: {whole:.2f} s with 4000 rallies flown, first figure {first[0]:.2f} s;"
        f" the games alone {alone * 1e3:.0f} ms"
    )


def a_drill() -> None:
    """Every shot of a drill cold, scaled to 20 shots, and with all that is cached."""
    drill = open_drill(sample("a-chooses.drill.json")).drill
    here = situation(drill, At("p-change"), level("tournament"))
    shots = len(here.sequence.steps)

    def cold() -> None:
        struck.cache_clear()
        recovery.cache_clear()
        numbers_of(here)
        recoveries(here)

    cold()
    first, again = in_turn(cold, lambda: (numbers_of(here), recoveries(here)))
    print(
        f"{shots} shots cold {first * 1e3:.0f} ms, that is {first / shots * 20:.2f} s for 20; again {again * 1e3:.1f} ms"
    )


def a_drag() -> None:
    """What a drag recomputes from place to place: the ball that is pulled, and all that it touches."""
    drill = open_drill(sample("wide-start.drill.json")).drill
    at = At("p-fed")
    reply = setting_at(drill, at).shots["reply"]
    pulled = [put(drill, at, reply.changed(to=place(-2.0 - 0.02 * step, 9.0 + 0.01 * step))) for step in range(40)]
    computed(drill, at, "reply", Basis("club"), "metres")
    taken = []
    for one in pulled:
        # Processor time: a budget in milliseconds says nothing of a machine that is busy with something else.
        start = time.process_time()
        computed(one, at, "reply", Basis("club"), "metres")
        taken.append(time.process_time() - start)
    print(f"a drag, a picture: median {statistics.median(taken) * 1e3:.1f} ms, longest {max(taken) * 1e3:.1f} ms of 16")


def checks_of_all() -> None:
    """The whole review of each sample, numbers included, after the first, which loads what it needs."""
    drills = [open_drill(path).drill for path in sorted(sample().glob("*.drill.json"))]
    checks(drills[0], players="club")
    struck.cache_clear()
    taken = [timed(lambda drill=drill: checks(drill, players="club")) for drill in drills]
    print(f"checks of a drill with numbers: median {statistics.median(taken):.2f} s, longest {max(taken):.2f} s")


if __name__ == "__main__":
    one_flight()
    many_flights()
    games()
    a_drill()
    a_drag()
    checks_of_all()
