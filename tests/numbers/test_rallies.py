"""Simulated rallies: seeded, and in agreement with the chances worked out without them."""

import numpy as np
import pytest

from designer.drill.base import place
from designer.drill.conditions import In, Outcome
from designer.drill.items import Area, Rectangle
from designer.drill.movement import Shot
from designer.drill.rules import Keep, Part, Rule, Start
from designer.numbers.aiming import Hit, fly
from designer.numbers.problems import Impossible
from designer.numbers.rallies import _Balls, _scatter, play_rallies
from designer.numbers.shots import numbers_of

FORCED = Part(id="forced", kind="forced", shots=("reply",), failed=Outcome(then="lose the point"))
OPEN = Part(id="open", after="forced", kind="open")


def flown(here, shot, count=20_000):
    step = here.sequence.step(shot)
    wanted, hit = here.wanted(step), here.strike(step)
    return _Balls(here, wanted, hit, np.ones(count), np.random.default_rng(4)), wanted, hit


def test_the_same_seed_gives_the_same_rallies(drawn, rally):
    here = drawn(*rally, FORCED, OPEN)
    assert play_rallies(here, 300, 5) == play_rallies(here, 300, 5)
    assert play_rallies(here, 300, 5) != play_rallies(here, 300, 6)


def test_landings_spread_as_the_level_says(drawn, rally):
    # The sample's standard deviations, along and across the line of the shot, against the level's; 20 000 balls.
    balls, wanted, _ = flown(drawn(*rally), "reply")
    line = np.array(wanted.landing) - np.array(wanted.contact)
    line /= np.linalg.norm(line)
    off = balls.landing[1:3].T - np.array(wanted.landing)
    distance = np.linalg.norm(np.array(wanted.landing) - np.array(wanted.contact))
    spread = wanted.level.spread.at(distance)
    assert np.std(off @ line) == pytest.approx(spread.along, rel=0.06)
    assert np.std(off @ np.array((line[1], -line[0]))) == pytest.approx(spread.across, rel=0.06)
    assert np.abs(np.mean(off, axis=0)).max() < 0.25


@pytest.mark.parametrize("players", ["club", "tournament", "tour"])
def test_the_share_that_is_in_agrees_with_the_normal_distribution(drawn, rally, players):
    here = drawn(*rally, players=players)
    balls, _, _ = flown(here, "reply")
    # Flown balls are not quite normal: what is off in angle is not off in metres alike at either side.
    assert balls.good.mean() == pytest.approx(numbers_of(here).shot("reply").chance_in, abs=0.05)


def test_a_lob_is_off_by_its_speed(drawn, rally):
    lob = rally[3].changed(stroke="lob")
    here = drawn(*rally[:3], lob, rally[4])
    _, wanted, hit = flown(here, "reply", 10)
    angle, speed, _ = _scatter(wanted, hit)
    assert angle <= np.radians(2.5) + 1e-12
    assert speed > 0.1


def test_a_restricted_part_that_fails_loses_the_point(drawn, rally):
    here = drawn(*rally[:4], FORCED, OPEN)
    found = play_rallies(here, 4000, 1, open_point=1.0)
    lost = 1 - numbers_of(here).shot("reply").chance_in
    assert found.second / (found.first + found.second) == pytest.approx(lost, abs=0.05)
    assert found.first == found.opened
    assert found.count == 4000


@pytest.mark.parametrize("then", ["no score", "replay", "count to zero"])
def test_or_brings_nothing(drawn, rally, then):
    forced = FORCED.changed(failed=Outcome(then=then))
    found = play_rallies(drawn(*rally[:4], forced, OPEN), 2000, 1, open_point=1.0)
    assert found.second == 0
    assert found.nothing > 200


def test_a_missed_zone_may_open_the_point(drawn, rally):
    zone = Area(id="zone", kind="area", shape=Rectangle(form="rectangle", corners=((-2.5, 9.0), (-1.5, 9.8))))
    must = Keep(do="keep", where=(In(area="zone", judged="bounce"),))

    def played(then):
        rule = Rule(id="rule", parts=("forced",), must=must, breach=Outcome(then=then))
        return play_rallies(drawn(*rally[:4], FORCED, OPEN, zone, rule), 2000, 1, open_point=1.0)

    assert played("opens").opened > 4 * played("lose the point").opened
    assert played("lose the point").second > 1500


def test_who_is_too_far_away_does_not_get_there(drawn, rally):
    near = play_rallies(drawn(*rally, FORCED, OPEN), 2000, 1)
    from designer.drill.people import Spot

    far_away = Spot(id="spot-b", job="B", place=place(8.0, 16.0))
    far = play_rallies(drawn(rally[0], far_away, *rally[2:], FORCED, OPEN), 2000, 1)
    assert far.first > near.first + 300


def test_two_serves_are_better_than_one(drawn):
    serve = Shot(id="serve", by="B", stroke="serve", contact=place(-0.5, 11.9), to=place(2.4, -5.3))
    back = Shot(id="back", by="A", after="serve", contact=place(3.5, -12.5), to=place(0, 9))

    def faults(count):
        start = Start(id="start", shot="serve", by=("B",), serves={"B": count}, bad=Outcome(then="lose the point"))
        return play_rallies(drawn(serve, back, start), 3000, 1, open_point=0.0).first / 3000

    one, two = faults(1), faults(2)
    assert two < one
    assert two == pytest.approx(one**2, abs=0.05)


def test_of_alternatives_each_is_played(drawn, rally):
    out = Shot(id="line", by="A", after="feed", wing="forehand", to=place(9.0, 9.4))
    forced = FORCED.changed(shots=("reply", "line"))
    usual = play_rallies(drawn(*rally[:4], forced, OPEN), 3000, 1, open_point=1.0)
    mixed = play_rallies(drawn(*rally[:4], out, forced, OPEN), 3000, 1, open_point=1.0)
    # The other way is out for certain: half of those that come to a hit are lost.
    assert mixed.first == pytest.approx(usual.first / 2, rel=0.1)


def test_a_cooperative_rally_has_no_winner_when_it_fails(drawn, rally):
    together = Part(id="together", kind="cooperative", shots=("reply", "third"))
    found = play_rallies(drawn(*rally, together), 1000, 1)
    assert found.opened == 0
    assert found.nothing > 100


def test_nothing_drawn_cannot_be_played(drawn):
    with pytest.raises(Impossible, match="No ball is drawn"):
        play_rallies(drawn(), 100, 1)


def test_a_ball_that_cannot_be_hit_is_said(drawn, rally):
    with pytest.raises(Impossible, match="own side"):
        play_rallies(drawn(*rally[:3], rally[3].changed(to=place(0, -3))), 100, 1)


def test_scatter_gives_back_the_spread(drawn, rally):
    here = drawn(*rally)
    _, wanted, hit = flown(here, "reply", 10)
    angle, speed, _ = _scatter(wanted, hit)

    def carried(by_angle, by_speed):
        shot = Hit((0.0, 0.0), hit.height, hit.speed + by_speed, hit.topspin)
        return fly(shot, (0.0, 1.0), hit.angle + np.degrees(by_angle), here.around).landing.y

    along = np.hypot(carried(angle, 0) - carried(0, 0), carried(0, speed) - carried(0, 0))
    distance = np.hypot(wanted.landing[0] - wanted.contact[0], wanted.landing[1] - wanted.contact[1])
    assert along == pytest.approx(wanted.level.spread.at(distance).along, rel=0.05)


def test_a_volley_is_met_where_it_is_drawn_and_not_after_the_bounce_behind_it(drawn, rally):
    # The arrow ends on the ground behind B, who stands at the net: the drawn ball says how long it takes to the racket.
    net = rally[1].changed(place=place(-1.0, 4.0))
    volley = rally[4].changed(stroke="volley", contact=place(-1.0, 4.0))
    here = drawn(rally[0], net, *rally[2:4], volley)
    balls, _, _ = flown(here, "reply", 400)
    steps = here.sequence
    time, _ = balls.kept(balls.good).met(steps.step("reply"), steps.step("third"))
    there_is = numbers_of(here).shot("reply").meetings[0].there_is
    assert np.median(time) == pytest.approx(there_is, abs=0.08)
