"""The ball over the net by a drawn height: it does both, and quick and slow search agree."""

import math
import random

import pytest

from designer.numbers.aiming import Hit
from designer.numbers.over_net import _through_slowly, over_net_by

BASELINE = 11.8872


def test_over_the_net_by_a_wished_height(around):
    arc = over_net_by(Hit((2.0, -BASELINE), 0.9, 20, -1800), (1.0, 3.0), 0.4, around, fastest=40)
    assert around.clears(arc.flight) == pytest.approx(0.4, abs=2e-3)
    assert arc.flight.landing.place == pytest.approx((1.0, 3.0), abs=1e-4)
    assert over_net_by(Hit((0.0, -BASELINE), 1.0, 20), (0.0, 10.0), 30.0, around, fastest=20) is None


def test_the_search_over_all_angles_finds_the_same_ball(around):
    chance = random.Random(4)
    found = 0
    for _ in range(12):
        contact = (chance.uniform(-5, 5), -chance.uniform(2, 14))
        hit = Hit(contact, chance.uniform(0.3, 2.8), 20, chance.uniform(-2000, 3000), chance.choice((0, 1000)))
        place, over = (chance.uniform(-4, 4), chance.uniform(1, 11.5)), chance.uniform(0.1, 3)
        arc = over_net_by(hit, place, over, around, fastest=30)
        slowly = _through_slowly(hit, place, over, around, 30)
        if arc is None or slowly is None:
            assert slowly is None  # the scan misses balls that leave below its first angle, never the other way
            continue
        found += 1
        assert arc.angle == pytest.approx(slowly[0], abs=0.02)
        assert math.dist(arc.flight.landing.place, place) < 1e-4
    assert found > 4


@pytest.mark.parametrize("landing", [(0.0, -1e-283), (0.0, 0.0), (0.0, 5.0)])
def test_a_ball_that_goes_over_no_net_is_none(around, landing):
    assert over_net_by(Hit((0.0, 1.0), 1.0, 20), landing, 0.5, around, fastest=30) is None
