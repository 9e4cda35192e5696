"""Contests against races in fractions, binomials, the gambler's ruin, and games that are simply played."""

import math
import random
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from designer.numbers.contest import Contest, Gain, contest, fixed_starts, goal_within
from designer.numbers.problems import Impossible
from designer.numbers.scoring import Odds, deuce, race

F = Fraction
fractions = st.fractions(F(1, 20), F(19, 20), max_denominator=40)


def test_bonus_points_shorten_a_race():
    gains = [Gain(F(1, 4), 2), Gain(F(1, 4), 1), Gain(F(1, 2), 0, 1)]
    found = contest(gains, 11)
    plain = race(11, F(1, 2))
    assert found.win > plain.win
    assert found.points < plain.points
    assert found.win + found.lose == 1


@given(to=st.integers(1, 7), point=fractions, margin=st.integers(1, 3))
def test_a_contest_of_single_points_is_a_race(to, point, margin):
    gains = [Gain(point, 1), Gain(1 - point, 0, 1)]
    assert contest(gains, to, margin=margin) == race(to, point, margin=margin)


def test_rallies_without_a_score_only_take_time():
    gains = [Gain(F(1, 4), 1), Gain(F(1, 4), 0, 1), Gain(F(1, 2))]
    found, plain = contest(gains, 5), race(5, F(1, 2))
    assert found.win == plain.win
    assert found.points == 2 * plain.points


def test_who_leads_when_time_is_called():
    gains = [Gain(F(3, 5), 1), Gain(F(2, 5), 0, 1)]
    # Two rallies of a race to 7: ahead 9/25, behind 4/25, level 12/25.
    assert contest(gains, 7, rallies=2) == Odds(F(9, 25), F(4, 25), F(12, 25), 2)


def test_higher_total_of_ten_is_the_binomial():
    gains = [Gain(F(3, 5), 1), Gain(F(2, 5), 0, 1)]
    found = fixed_starts(gains, 10)
    counts = [math.comb(10, k) * F(3, 5) ** k * F(2, 5) ** (10 - k) for k in range(11)]
    assert found.win == sum(counts[6:])
    assert found.level == counts[5]


def test_a_goal_in_so_many_balls_is_the_binomial_tail():
    from scipy.stats import binom

    assert goal_within([Gain(0.4, 1), Gain(0.6)], 12, 20) == pytest.approx(binom.sf(11, 20, 0.4), abs=1e-12)


@given(to=st.integers(1, 6), point=fractions, margin=st.integers(1, 4), more=st.integers(0, 4), lead=st.integers(0, 5))
def test_caps_and_start_scores_are_those_of_a_race(to, point, margin, more, lead):
    gains, start = [Gain(point, 1), Gain(1 - point, 0, 1)], (min(lead, to - 1), 0)
    found = contest(gains, to, margin=margin, cap=to + more, start=start)
    assert found == race(to, point, margin=margin, cap=to + more, start=start)


def test_a_two_ended_race_is_the_gamblers_ruin():
    # +5 wins, -5 loses: the ladder of ten rungs from its middle (closed form, see scoring.deuce).
    found = contest([Gain(0.55, 1), Gain(0.45, -1)], 5, floor=-5)
    ruin = deuce(F(11, 20), 5)
    assert (found.win, found.points) == pytest.approx((float(ruin.win), float(ruin.points)), abs=1e-9)


def played(gains, to, margin, floor, count=4000):
    chance = random.Random(5)
    values, weights = [(gain.first, gain.second) for gain in gains], [gain.chance for gain in gains]
    won = length = 0
    for _ in range(count):
        a = b = 0
        while not ((max(a, b) >= to and abs(a - b) >= margin) or (floor is not None and min(a, b) <= floor)):
            first, second = chance.choices(values, weights)[0]
            a, b, length = a + first, b + second, length + 1
        won += b <= floor if floor is not None and min(a, b) <= floor else a > b
    return won / count, length / count


@pytest.mark.parametrize(("margin", "floor"), [(1, None), (2, None), (2, -3)])
def test_points_taken_off_against_games_played(margin, floor):
    gains = [Gain(0.4, 1), Gain(0.1, 2), Gain(0.35, 0, 1), Gain(0.15, -1)]
    found = contest(gains, 7, margin=margin, floor=floor)
    win, length = played(gains, 7, margin, floor)
    assert found.win == pytest.approx(win, abs=0.03)
    assert found.points == pytest.approx(length, rel=0.04)


def test_all_start_scores_come_from_one_table():
    asked = Contest((Gain(F(3, 10), 2), Gain(F(3, 10), 1), Gain(F(2, 5), 0, 1)), 11)
    assert asked.odds((0, 4)) == contest(asked.gains, 11, start=(0, 4))
    assert asked.odds((0, 4)).win < asked.odds((0, 0)).win < asked.odds((4, 0)).win


@pytest.mark.parametrize(
    ("call", "says"),
    [
        (lambda: contest([Gain(0.4, 1)], 5), "add up to 0"),
        (lambda: contest([Gain(1)], 5), "never ends"),
        (lambda: contest([Gain(0.4, 1), Gain(0.6, -1)], 5), "never ends"),
        (lambda: contest([Gain(0.5, 2), Gain(0.5, 0, 1)], 1000), "too many scores"),
        (lambda: contest([Gain(0.6, 2), Gain(0.4, -1)], 500), "takes too long"),
        (lambda: contest([Gain(0.5, 2), Gain(0.5, 0, 1)], 5, floor=0), "A score of 0 loses"),
        (lambda: contest([Gain(0.5, 1), Gain(0.5, 0, 1)], 5, start=(5, 0)), "no lower than the goal"),
        (lambda: fixed_starts([Gain(0.5, 1), Gain(0.5, 0, 1)], 10**6), "A number of starts"),
    ],
)
def test_what_cannot_be_is_said_and_not_begun(call, says):
    with pytest.raises(Impossible, match=says) as refused:
        call()
    assert str(refused.value).endswith(".")
