"""All numbers of a setting, over the samples and over invented rallies."""

import os

import pytest

from designer.bundle import sample
from designer.drill.conditions import In, Outcome
from designer.drill.items import Area, Rectangle
from designer.drill.rules import Keep, Part, Rule
from designer.drill.setting import addresses
from designer.numbers.accuracy import PURPOSES, chance_in, resized
from designer.numbers.levels import LEVELS, level
from designer.numbers.problems import Impossible
from designer.numbers.shots import fitted, landing_of, numbers_of, recoveries, shot_numbers, size_wished
from designer.storage.reading import open_drill

SAMPLES = sorted(sample().glob("*.drill.json"))
ZONE = (
    Area(id="zone", kind="area", shape=Rectangle(form="rectangle", corners=((-4.0, 7.0), (0.0, 11.5)))),
    Part(id="forced", kind="forced", shots=("reply",), failed=Outcome(then="lose the point")),
    Rule(id="rule", parts=("forced",), must=Keep(do="keep", where=(In(area="zone", judged="bounce"),))),
)


@pytest.mark.parametrize("path", SAMPLES, ids=lambda path: path.name.split(".")[0])
def test_every_sample_has_numbers_at_every_level(path):
    drill = open_drill(path).drill
    every = 1 if os.environ.get("HYPOTHESIS_PROFILE") == "thorough" else 4  # by day the levels take turns
    for number, at in enumerate(addresses(drill), SAMPLES.index(path)):
        for name in list(LEVELS)[number % every :: every]:
            for shot in shot_numbers(drill, at, name).shots:
                if shot.strike is not None:
                    assert 0.2 < shot.strike.time < 4
                    assert shot.chance_in is None or 0 <= shot.chance_in <= 1
                    assert all(0 <= target.chance <= 1 for target in shot.targets)
                assert shot.problem == "" or shot.problem.endswith((".", ")."))


@pytest.mark.parametrize("path", SAMPLES, ids=lambda path: path.name.split(".")[0])
def test_tournament_juniors_can_play_every_sample(path):
    drill = open_drill(path).drill
    for at in addresses(drill):
        assert [shot.problem for shot in shot_numbers(drill, at, "tournament").shots if shot.problem] == []


def test_the_numbers_of_a_rally(drawn, rally):
    found = numbers_of(drawn(*rally))
    assert [(shot.shot, shot.digit, shot.by) for shot in found.shots] == [
        ("feed", 1, "B"),
        ("reply", 2, "A"),
        ("third", 3, "B"),
    ]
    reply = found.shot("reply")
    assert reply.inside == pytest.approx(4.1148 - 2.0)  # nearer to the sideline than to the baseline
    assert 0.6 < reply.chance_in < 1
    assert [meeting.shot for meeting in reply.meetings] == ["third"]
    assert found.shot("gone") is None


def test_better_players_are_in_more_often(drawn, rally):
    chances = [numbers_of(drawn(*rally, players=name)).shot("reply").chance_in for name in LEVELS[1:]]
    assert chances == sorted(chances)


def test_a_target_is_hit_less_often_than_the_court(drawn, rally):
    reply = numbers_of(drawn(*rally, *ZONE)).shot("reply")
    (zone,) = reply.targets
    assert 0 < zone.chance < reply.chance_in


def test_what_cannot_be_hit_is_a_sentence_and_spoils_nothing_else(drawn, rally):
    from designer.drill.base import place

    own_side = rally[3].changed(to=place(0.0, -3.0))
    found = numbers_of(drawn(*rally[:3], own_side, rally[4]))
    assert "lands on the hitter's own side" in found.shot("reply").problem
    assert found.shot("reply").strike is None
    assert found.shot("feed").problem == ""


def test_a_small_change_keeps_the_flights_of_the_rest(drawn, rally):
    from designer.drill.base import place

    before = numbers_of(drawn(*rally))
    after = numbers_of(drawn(*rally[:4], rally[4].changed(to=place(1.0, -8.0))))
    assert after.shot("feed").strike is before.shot("feed").strike
    assert after.shot("third").strike is not before.shot("third").strike


def test_where_to_recover_to(drawn, rally):
    found = recoveries(drawn(*rally))
    # Only a hit whose reply is drawn: A's reply, met by B.
    assert set(found) == {"reply"}
    assert found["reply"].at_baseline[1] == -11.8872


def test_nobody_recovers_to_the_baseline_from_the_net(drawn, rally):
    from designer.drill.base import place
    from designer.drill.movement import Run

    forward = Run(id="on", by="A", during="reply", to=place(-0.5, -3.0), purpose="approach")
    assert recoveries(drawn(*rally, forward)) == {}


def numbers_in(here):
    return [
        (
            shot.strike.speed,
            shot.strike.angle,
            shot.strike.time,
            shot.strike.clearance,
            shot.chance_in,
            *(meeting.there_is for meeting in shot.meetings),
            *(meeting.needed for meeting in shot.meetings),
        )
        for shot in numbers_of(here).shots
    ]


def test_the_mirrored_drill_of_left_handers_has_the_same_numbers(drawn, rally):
    def mirrored(record):
        changes = {}
        for name in ("place", "contact", "to"):
            at = getattr(record, name, None)
            if at is not None:
                changes[name] = at.changed(at=(0.0 - at.at[0], at.at[1]))
        return record.changed(**changes)

    turned = drawn(*map(mirrored, rally), left="AB")
    for usual, other in zip(numbers_in(drawn(*rally)), numbers_in(turned), strict=True):
        assert other == pytest.approx(usual, abs=1e-6)


def test_a_group_that_hits_4_of_10_is_fitted(drawn, rally):
    here = drawn(*rally, *ZONE)
    own = fitted(here, "reply", 4, 10)
    assert own.fitted == "4 of 10"
    again = drawn(*rally, *ZONE, players=own)
    (zone,) = numbers_of(again).shot("reply").targets
    assert zone.chance == pytest.approx(0.4, abs=1e-6)
    assert own.spread.along / own.spread.across == pytest.approx(2)


def test_fitting_says_what_it_lacks(drawn, rally):
    with pytest.raises(Impossible, match="No drawn ball has a target"):
        fitted(drawn(*rally), None, 4, 10)
    with pytest.raises(Impossible, match="There is no shot 'gone'; there are feed, reply, third"):
        fitted(drawn(*rally), "gone", 4, 10)
    with pytest.raises(Impossible, match="12 of 10 cannot be"):
        fitted(drawn(*rally, *ZONE), "reply", 12, 10)
    assert fitted(drawn(*rally), "reply", 9, 10).spread.across < level("tournament").spread.across * 2


def test_an_unknown_level_is_a_sentence():
    drill = open_drill(SAMPLES[0]).drill
    with pytest.raises(ValueError, match="'expert'; there are starter"):
        shot_numbers(drill, next(addresses(drill)), "expert")


def test_the_size_that_is_hit_as_often_as_wished(drawn, rally):
    here = drawn(*rally, *ZONE, players="starter")
    (zone,) = numbers_of(here).shot("reply").targets
    times = size_wished(here, "reply", zone)
    assert times > 1
    step = here.sequence.step("reply")
    larger = resized(zone.target.outline, times)
    assert chance_in(larger, landing_of(here, step)) == pytest.approx(PURPOSES[zone.purpose][0], abs=1e-4)
    (often,) = numbers_of(drawn(*rally, *ZONE, players="tour")).shot("reply").targets
    assert size_wished(here, "reply", often) == 1.0
