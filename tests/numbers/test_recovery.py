"""Where to recover to: the bisector against a table worked outside the program, the extremes against brute force.

The table's frame: its x runs along the court and its y to the same side as x here; the opponent hits from the far end.
"""

import math

import pytest

from designer.numbers.aiming import Hit, fly
from designer.numbers.levels import LEVELS, level
from designer.numbers.problems import Impossible
from designer.numbers.recovery import azimuth_of, bisector, on_line, recovery, spare

BASELINE, SINGLES, SERVICE = 11.8872, 4.1148, 6.4008
DEEP = ((-SINGLES, -BASELINE), (SINGLES, -BASELINE))
SHARP = ((-SINGLES, -SERVICE), (SINGLES, -BASELINE))


# Worked outside the program: straight flight; extremes the deep corners, or cross-court to service line and sideline.
@pytest.mark.parametrize(
    ("contact", "extremes", "azimuths", "half", "at_baseline", "behind"),
    [
        ((0, 11.8872), DEEP, (-9.8193, 9.8193), 0, 0, 0),
        ((0, 11.8872), SHARP, (-12.6804, 9.8193), -1.4305, -0.5937, -0.6187),
        ((3, 11.8872), DEEP, (-16.6605, 2.6847), -6.9879, 0.0860, -0.0366),
        ((3, 11.8872), SHARP, (-21.2581, 2.6847), -9.2867, -0.8876, -1.0511),
        ((4.1148, 11.8872), DEEP, (-19.0935, 0), -9.5467, 0.1164, -0.0518),
        ((4.1148, 11.8872), SHARP, (-24.2277, 0), -12.1139, -0.9880, -1.2026),
        ((3, 12.3872), DEEP, (-16.3358, 2.6295), -6.8532, 0.0826, -0.0376),
        ((3, 12.3872), SHARP, (-20.7411, 2.6295), -9.0558, -0.8689, -1.0283),
    ],
)
def test_table_of_bisectors(contact, extremes, azimuths, half, at_baseline, behind):
    # The table counts angles towards +x; the hitter at the far end has that on the left.
    found = [-math.degrees(azimuth_of(contact, place)) for place in extremes]
    assert found == pytest.approx(azimuths, abs=6e-5)
    middle = bisector(contact, *extremes)
    assert -math.degrees(middle) == pytest.approx(half, abs=6e-5)
    assert on_line(contact, middle, -BASELINE)[0] == pytest.approx(at_baseline, abs=6e-5)
    assert on_line(contact, middle, -BASELINE - 1)[0] == pytest.approx(behind, abs=6e-5)


def from_here(contact, name, around):
    return recovery(contact, level(name), level(name).movement, around)


CONTACTS = [(0.0, 11.8872), (3.0, 12.4), (-4.1148, -12.0), (2.0, -7.0)]


@pytest.mark.parametrize("contact", CONTACTS)
@pytest.mark.parametrize("name", ["club", "tour"])
def test_the_widest_ball_just_clears_the_net_and_is_just_in(around, contact, name):
    found = from_here(contact, name, around)
    for extreme in (found.left, found.right):
        assert around.clears(extreme.flight) > -0.005
        x, y = extreme.landing
        assert abs(x) <= SINGLES
        assert y * contact[1] < 0
        if extreme.limit == "the sideline":
            assert abs(x) == pytest.approx(SINGLES, abs=2e-3)


@pytest.mark.parametrize("contact", CONTACTS)
def test_no_wider_ball_goes_in(around, contact):
    # Brute force: half a degree wider, every launch angle, both strokes.
    found = from_here(contact, "tournament", around)
    forward = math.copysign(1.0, -contact[1])
    for side, extreme in ((-1, found.left), (1, found.right)):
        azimuth = extreme.azimuth + side * math.radians(0.5)
        towards = (contact[0] + forward * math.sin(azimuth), contact[1] + forward * math.cos(azimuth))
        for stroke in ("drive", "slice"):
            habit = level("tournament").habit(stroke)
            hit = Hit(contact, habit.height.number, habit.speed.number, habit.topspin.number)
            for tenth in range(-100, 300, 2):
                flown = fly(hit, towards, tenth / 10, around, coarse=True)
                cleared = around.clears(flown)
                landed_in = abs(flown.landing.x) <= SINGLES and abs(flown.landing.y) <= BASELINE
                assert cleared is None or cleared < 0 or not landed_in


def test_both_ends_see_the_same(around):
    far, near = from_here((3.0, 12.0), "club", around), from_here((-3.0, -12.0), "club", around)
    assert far.at_baseline == pytest.approx((-near.at_baseline[0], -near.at_baseline[1]), abs=1e-6)
    assert far.left.azimuth == pytest.approx(near.left.azimuth, abs=1e-9)


def test_from_the_middle_one_waits_in_the_middle(around):
    found = from_here((0.0, 11.8872), "club", around)
    for place in (found.at_baseline, found.behind, found.equal_time):
        assert place[0] == pytest.approx(0, abs=1e-5)
    assert found.at_baseline[1] == -BASELINE
    assert found.behind[1] == -BASELINE - 1


def test_a_wide_ball_asks_for_a_place_on_the_other_side(around):
    # Benguigui et al., Scientific Reports 14 (2024) 3364: experts wait on the side away from a wide opponent.
    for name in ("club", "tournament", "tour"):
        assert -3 < from_here((3.0, 11.8872), name, around).at_baseline[0] < -0.3


def test_equal_time_is_equal_and_is_not_the_bisector(around):
    found = from_here((3.0, 11.8872), "tournament", around)
    own = level("tournament").movement
    from designer.numbers.recovery import _playable

    left, right = (spare(found.equal_time, _playable(e.flight, around), own) for e in (found.left, found.right))
    assert left == pytest.approx(right, abs=1e-4)
    assert found.equal_time[0] != pytest.approx(found.behind[0], abs=0.05)


@pytest.mark.parametrize("name", LEVELS)
def test_doubles_opens_the_angles(around, name):
    singles = from_here((0.0, 11.8872), name, around)
    doubles = recovery((0.0, 11.8872), level(name), level(name).movement, around, half_width=5.4864)
    assert doubles.right.azimuth > singles.right.azimuth


def test_what_has_no_answer_is_said_in_a_sentence(around):
    with pytest.raises(Impossible, match="every angle is open"):
        from_here((0.0, 0.1), "club", around)
    with pytest.raises(
        Impossible, match=r"From 0\.0 m beside the middle and 17\.0 m from the net a starter has no ball"
    ):
        from_here((0.0, 17.0), "starter", around)
