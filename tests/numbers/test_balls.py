"""Balls against ITF Rules of Tennis, Appendix I; air against the gas law and the International Standard Atmosphere."""

import math

import pytest

from designer.numbers.balls import air_density, air_laws, ball, ball_in_words, ball_names, law
from designer.numbers.problems import Impossible, NoSuch


def test_there_is_a_ball_for_every_stage():
    assert {"yellow", "green", "orange", "red", "red foam"} <= set(ball_names())
    assert "air" not in ball_names()


# Drop-test restitution sqrt(h/254 cm) from the rebounds of Appendix I (yellow: seen in full; the stage balls' rebounds:
# ITF, about slower balls), worked out in exact fractions outside the program.
@pytest.mark.parametrize(
    ("name", "least", "most"),
    [("yellow", 0.729, 0.761), ("green", 0.687, 0.729), ("orange", 0.643, 0.687), ("red", 0.595, 0.643)],
)
def test_drop_restitution_lies_in_the_band_of_the_rebound_test(name, least, most):
    low, high = ball(name).rebound
    assert math.sqrt(low / 2.54) == pytest.approx(least, abs=6e-4)
    assert math.sqrt(high / 2.54) == pytest.approx(most, abs=6e-4)
    assert least < ball(name).drop_restitution < most


def test_the_yellow_ball_is_the_middle_of_what_the_rules_allow():
    # Appendix I: 56.0 to 59.4 g, 6.54 to 6.86 cm.
    assert ball().mass == pytest.approx((0.0560 + 0.0594) / 2)
    assert ball().diameter == pytest.approx((0.0654 + 0.0686) / 2)


# Gas law p/(R T) with R 287.058: 0, 20, 30 °C at 101 325 Pa. ISA (ISO 2533) at its own temperatures: 15 °C less 6.5 °C a km.
@pytest.mark.parametrize(
    ("altitude", "temperature", "density"),
    [
        (0, 0, 1.29225),
        (0, 20, 1.20408),
        (0, 30, 1.16437),
        (0, 15, 1.2250),
        (610, 15 - 0.0065 * 610, 1.1548),
        (1219, 15 - 0.0065 * 1219, 1.0879),
        (1600, 15 - 0.0065 * 1600, 1.0476),
        (2240, 15 - 0.0065 * 2240, 0.9824),
    ],
)
def test_air_density(altitude, temperature, density):
    assert air_density(altitude, temperature) == pytest.approx(density, abs=6e-5)


@pytest.mark.parametrize(("altitude", "temperature"), [(9000, 20), (0, 80), (math.nan, 20), (0, math.inf)])
def test_air_that_nobody_plays_in_is_refused(altitude, temperature):
    with pytest.raises(Impossible, match=r"cannot be computed|must be a number"):
        air_density(altitude, temperature)


# C_L = 1/(2 + 1/S) and Stepanek 1988 (Am. J. Phys. 56, 138), tabulated outside the program.
@pytest.mark.parametrize(
    ("ratio", "lift", "lift_stepanek", "drag_stepanek", "drag_rounded"),
    [
        (0.05, 0.04545, 0.04621, 0.53614, 0.57813),
        (0.10, 0.08333, 0.08452, 0.56397, 0.60595),
        (0.15, 0.11538, 0.11680, 0.59099, 0.63296),
        (0.20, 0.14286, 0.14436, 0.61664, 0.65860),
        (0.25, 0.16667, 0.16818, 0.64040, 0.68236),
        (0.30, 0.18750, 0.18896, 0.66190, 0.70386),
        (0.40, 0.22222, 0.22349, 0.69750, 0.73946),
        (0.50, 0.25000, 0.25100, 0.72377, 0.76574),
        (1.00, 0.33333, 0.33300, 0.77678, 0.81878),
    ],
)
def test_laws_of_lift_and_drag(ratio, lift, lift_stepanek, drag_stepanek, drag_rounded):
    def coefficient(name):
        c, d, e, p, q = law(name).drag
        return c + (d + e * ratio**-p) ** q

    def lifted(name):
        a, b = law(name).lift
        return 1 / (a + b / ratio)

    assert lifted("constant drag") == pytest.approx(lift, abs=6e-6)
    assert lifted("drag grows with spin") == pytest.approx(lift_stepanek, abs=6e-6)
    assert coefficient("drag grows with spin") == pytest.approx(drag_stepanek, abs=6e-6)
    assert coefficient("drag grows with spin, rounded") == pytest.approx(drag_rounded, abs=6e-6)


def test_an_unknown_law_lists_the_laws():
    with pytest.raises(NoSuch, match="constant drag"):
        law("none")
    assert all(len(each.source) > 20 for each in air_laws().values())


@pytest.mark.parametrize(
    ("words", "name", "understood"),
    [
        (None, "yellow", True),
        ("red foam", "red foam", True),
        ("A green ball", "green", True),
        ("softer", "yellow", False),
        ("orange or red", "yellow", False),
    ],
)
def test_a_drills_words_for_its_ball(words, name, understood):
    found, known = ball_in_words(words)
    assert (found.name, known) == (name, understood)


def test_drag_can_be_set_but_not_to_nonsense():
    assert ball().with_drag(0.507).drag == 0.507
    with pytest.raises(Impossible, match="drag coefficient"):
        ball().with_drag(-1)
