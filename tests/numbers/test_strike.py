"""How a drawn ball is struck: the answer is flown and must do what was drawn."""

import math
from contextlib import suppress
from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from designer.court.standards import ground
from designer.drill.drill import Court
from designer.numbers.balls import ball
from designer.numbers.levels import LEVELS, level
from designer.numbers.problems import Impossible, OutOfReach
from designer.numbers.strike import Wanted, struck
from designer.numbers.surfaces import surface
from designer.numbers.surroundings import Surroundings

BASELINE, SINGLES, SERVICE = 11.8872, 4.1148, 6.4008
FAR = (-SINGLES, SINGLES, 0.0, BASELINE)


@pytest.fixture
def wanted(around):
    def make(**changes):
        usual = Wanted(
            contact=(0.5, -BASELINE),
            landing=(-1.0, 9.5),
            stroke=None,
            wing="forehand",
            hand="right",
            height=None,
            over_net=None,
            pace=None,
            spin=None,
            box=FAR,
            level=level("tournament"),
            around=around,
        )
        return replace(usual, **changes)

    return make


@pytest.mark.parametrize("name", ["club", "tournament", "tour"])
@pytest.mark.parametrize("stroke", [None, "slice", "lob", "racket feed"])
def test_it_lands_where_it_is_drawn_and_clears_the_net(wanted, name, stroke):
    found = struck(wanted(level=level(name), stroke=stroke))
    assert found.flight.landing.place == pytest.approx((-1.0, 9.5), abs=1e-4)
    assert found.clearance > 0
    assert found.problem == ""
    assert found.window.low < found.angle < found.window.high


def test_a_drive_has_the_levels_speed_and_spin(wanted):
    found = struck(wanted())
    habit = level("tournament").habit("drive", "forehand")
    assert (found.speed, found.topspin) == pytest.approx((habit.speed.number, habit.topspin.number))
    assert not found.slowed
    assert not found.harder


def test_a_short_ball_is_hit_more_slowly_and_says_so(wanted):
    found = struck(wanted(landing=(2.0, 4.0)))
    assert found.slowed
    assert found.clearance == pytest.approx(level("tournament").habit("drive").clearance.number, abs=2e-3)
    assert found.problem == ""


def test_a_soft_ball_is_slower_but_no_lob(wanted):
    soft, half, usual = (struck(wanted(pace=pace)) for pace in ("soft", "half", None))
    assert soft.speed < half.speed < usual.speed
    assert soft.harder
    assert soft.angle == pytest.approx(35.0, abs=0.1)


def test_the_height_over_the_net_that_is_drawn(wanted):
    found = struck(wanted(over_net=2.0))
    assert found.clearance == pytest.approx(2.0, abs=2e-3)
    assert found.flight.landing.place == pytest.approx((-1.0, 9.5), abs=1e-4)
    low = struck(wanted(over_net=0.05))
    assert "No drive of up to" in low.problem or low.clearance == pytest.approx(0.05, abs=2e-3)


def test_a_lob_goes_high(wanted):
    assert struck(wanted(stroke="lob")).flight.apex.z > 4


def test_spins_that_are_drawn(wanted):
    assert struck(wanted(spin="flat")).topspin == 0
    assert struck(wanted(spin="slice")).topspin < -1000
    assert struck(wanted(spin="topspin", stroke="slice")).topspin > 1000
    side = struck(wanted(spin="sidespin"))
    assert side.sidespin < -700
    assert struck(wanted(spin="sidespin", hand="left")).sidespin == -side.sidespin
    assert side.flight.landing.place == pytest.approx((-1.0, 9.5), abs=1e-4)


@pytest.mark.parametrize("name", ["club", "tournament", "tour"])
@pytest.mark.parametrize("stroke", ["serve", "second serve"])
def test_a_serve_goes_into_its_box(wanted, name, stroke):
    box = (-SINGLES, 0.0, 0.0, SERVICE)
    found = struck(wanted(stroke=stroke, contact=(0.4, -BASELINE), landing=(-1.5, 5.4), box=box, level=level(name)))
    assert found.flight.landing.place == pytest.approx((-1.5, 5.4), abs=1e-4)
    assert found.problem == ""


def test_a_hand_feed_stays_at_the_feeders_end(wanted):
    found = struck(wanted(stroke="hand feed", contact=(2.0, -8.0), landing=(0.5, -10.0)))
    assert found.clearance is None
    assert found.window is None
    assert found.flight.landing.place == pytest.approx((0.5, -10.0), abs=1e-4)
    assert 3 < found.speed < 8


def test_a_ball_that_is_let_fall(wanted):
    # Closed form without air: sqrt(2 (h - R)/g).
    found = struck(wanted(stroke="drop feed", contact=(0.7, -12.0), landing=(0.7, -11.9)))
    assert found.time == pytest.approx((2 * (0.8 - 0.0335) / 9.80665) ** 0.5, rel=0.02)
    on_the_spot = struck(wanted(stroke="drop feed", contact=(0.7, -12.0), landing=(0.7, -12.0)))
    assert on_the_spot.time == pytest.approx(found.time, rel=0.01)


def test_a_ball_for_a_volley_arrives_at_racket_height(wanted):
    found = struck(wanted(landing=(0.0, 3.0), arrives=1.2))
    assert found.flight.along(3.0).z == pytest.approx(1.2, abs=1e-3)
    assert found.flight.landing.y > 3.5


def test_beyond_the_level_says_what_it_takes(wanted):
    found = struck(wanted(level=level("starter")))
    assert found.problem.startswith("A drive of 13 m/s does not carry 21.4 m; it takes at least 1")
    assert found.flight.landing.place == pytest.approx((-1.0, 9.5), abs=1e-4)


def test_a_ball_that_lands_out_says_by_how_much(wanted):
    assert struck(wanted(landing=(-5.0, 9.5))).problem == "This drive lands 0.9 m outside the court."


@pytest.mark.parametrize(
    ("changes", "says"),
    [
        ({"landing": (0.0, -3.0)}, r"This drive lands on the hitter's own side, 3\.0 m before the net"),
        ({"contact": (0.0, -18.5)}, "behind the fence"),
        ({"contact": (9.5, -8.0)}, "behind the fence"),
        ({"height": 0.0}, r"cannot be lower than 0\.0335 m"),
        ({"landing": (0.0, 99.0)}, "Nothing that anybody hits carries"),
    ],
)
def test_what_cannot_be_hit_is_said_in_a_sentence(wanted, changes, says):
    with pytest.raises(Impossible, match=says) as refused:
        struck(wanted(**changes))
    assert str(refused.value).endswith(".")


def test_what_carries_nowhere_names_the_limit(wanted):
    with pytest.raises(OutOfReach) as refused:
        struck(wanted(landing=(0.0, 99.0)))
    assert refused.value.limit == "the speed"


@pytest.mark.parametrize("name", LEVELS)
def test_both_sides_and_both_ends_are_alike(wanted, name):
    usual = struck(wanted(level=level(name)))
    mirrored = struck(wanted(level=level(name), contact=(-0.5, -BASELINE), landing=(1.0, 9.5), hand="left"))
    turned = struck(
        wanted(
            level=level(name), contact=(-0.5, BASELINE), landing=(1.0, -9.5), box=(-SINGLES, SINGLES, -BASELINE, 0.0)
        )
    )
    for other in (mirrored, turned):
        assert (other.speed, other.angle, other.time, other.clearance) == pytest.approx(
            (usual.speed, usual.angle, usual.time, usual.clearance), abs=1e-6
        )


def test_a_ball_is_worked_out_once(wanted):
    assert struck(wanted()) is struck(wanted())


@settings(max_examples=60)
@given(
    contact=st.tuples(st.floats(-12, 12), st.floats(-20, 20)),
    landing=st.tuples(st.floats(-12, 12), st.floats(-20, 20)),
    stroke=st.sampled_from([None, "lob", "drop shot", "smash", "hand feed", "drop feed", "serve"]),
    height=st.sampled_from([None, 0.0, 0.5, 3.0, 50.0]),
    over_net=st.sampled_from([None, 0.0, 1.5, 60.0]),
    name=st.sampled_from(LEVELS),
)
def test_any_drawing_gives_a_ball_or_a_sentence(contact, landing, stroke, height, over_net, name):
    around = Surroundings(ground(Court()), ball(), surface())
    asked = Wanted(contact, landing, stroke, None, "right", height, over_net, None, None, FAR, level(name), around)
    with suppress(Impossible):
        found = struck(asked)
        assert math.isfinite(found.time)
        assert found.problem == "" or found.problem.endswith((".", ")."))
        assert found.flight.landing.z == pytest.approx(around.ball.radius, abs=1e-6)
