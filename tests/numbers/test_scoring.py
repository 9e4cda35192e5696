"""The odds of scores against exact fractions, closed forms and published values.

"Exact": worked out with Python fractions outside the program from the closed forms of Newton & Keller, Stud. Appl. Math.
114 (2005) 241. L. N. Trefethen, note of 13 July 2023: a point in three lost gives 208/243 of the games.
"""

import math
import random
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from designer.numbers.problems import Impossible
from designer.numbers.scoring import (
    Odds,
    deuce,
    game,
    in_a_row,
    in_a_row_within,
    plus_minus,
    race,
    tie_break,
)

F = Fraction
fractions = st.fractions(F(1, 20), F(19, 20), max_denominator=40)


@pytest.mark.parametrize(
    ("point", "from_deuce", "won", "points"),
    [
        (F(1, 2), F(1, 2), F(1, 2), F(27, 4)),
        (F(11, 20), F(121, 202), F(50350399, 80800000), None),
        (F(3, 5), F(9, 13), F(29889, 40625), F(52684, 8125)),
        (F(2, 3), F(4, 5), F(208, 243), F(164, 27)),
        (F(7, 10), F(49, 58), F(81634, 90625), None),
    ],
)
def test_games_in_fractions(point, from_deuce, won, points):
    assert deuce(point).win == from_deuce
    assert game(point).win == won
    assert points is None or game(point).points == points


def test_five_of_seven_points():
    # Exact; a newspaper's 92.7 % is wrong.
    assert game(F(5, 7)).win == F(446875, 487403)


@pytest.mark.parametrize(
    ("point", "points", "no_ad", "no_ad_points"),
    [
        (0.50, 6.75, 0.500000, 5.812500),
        (0.55, 6.680915, 0.608288, 5.783268),
        (0.60, 6.484185, 0.710208, 5.697280),
        (2 / 3, 6.074074, 0.826703, 5.503429),
        (0.70, 5.831490, 0.873964, 5.378020),
    ],
)
def test_length_of_a_game_and_no_ad(point, points, no_ad, no_ad_points):
    # Exact, printed to six places.
    assert game(point).points == pytest.approx(points, abs=6e-7)
    found = game(point, advantage=False)
    assert (found.win, found.points) == pytest.approx((no_ad, no_ad_points), abs=6e-7)


# Exact, to six places and five: races to n, plain and by two.
@pytest.mark.parametrize(
    ("to", "point", "plain", "by_two", "points", "points_by_two"),
    [
        (3, 0.5, 0.5, 0.5, 4.125, 5.25),
        (5, 0.5, 0.5, 0.5, 7.53906, 8.35938),
        (7, 0.5, 0.5, 0.5, 11.06738, 11.74414),
        (10, 0.5, 0.5, 0.5, 16.47606, 17.03247),
        (11, 0.5, 0.5, 0.5, 18.29986, 18.82845),
        (3, 0.55, 0.593127, 0.611140, 4.11004, 5.19809),
        (5, 0.55, 0.621421, 0.634294, 7.49175, 8.26933),
        (7, 0.55, 0.643742, 0.654151, 10.97387, 11.60261),
        (10, 0.55, 0.671036, 0.679340, 16.29179, 16.79337),
        (11, 0.55, 0.679003, 0.686813, 18.08031, 18.55205),
        (3, 0.60, 0.682560, 0.714462, 4.06560, 5.04923),
        (5, 0.60, 0.733432, 0.754870, 7.35384, 8.01484),
        (7, 0.60, 0.771156, 0.787456, 10.70606, 11.20863),
        (10, 0.60, 0.813908, 0.825764, 15.77698, 16.14256),
        (11, 0.60, 0.825622, 0.836435, 17.47182, 17.80523),
    ],
)
def test_races(to, point, plain, by_two, points, points_by_two):
    one, two = race(to, point), race(to, point, margin=2)
    assert (one.win, two.win) == pytest.approx((plain, by_two), abs=6e-7)
    assert (one.points, two.points) == pytest.approx((points, points_by_two), abs=6e-6)


@given(to=st.integers(1, 12), point=fractions)
def test_a_plain_race_is_the_negative_binomial(to, point):
    other = 1 - point
    found = race(to, point)
    assert found.win == sum(math.comb(to - 1 + k, k) * point**to * other**k for k in range(to))
    assert found.points == sum(
        (to + k) * math.comb(to - 1 + k, k) * (point**to * other**k + other**to * point**k) for k in range(to)
    )


@given(to=st.integers(1, 9), point=fractions, margin=st.integers(1, 4))
def test_the_other_player_has_the_other_odds(to, point, margin):
    found, mirrored = race(to, point, margin=margin), race(to, 1 - point, margin=margin)
    assert found.win == mirrored.lose
    assert found.points == mirrored.points
    assert found.win + found.lose == 1


@given(to=st.integers(2, 9), point=st.fractions(F(51, 100), F(9, 10), max_denominator=100))
def test_by_two_favours_the_better_player(to, point):
    assert race(to, point, margin=2).win > race(to, point).win


@given(point=fractions, margin=st.integers(1, 5), lead=st.integers(-4, 4))
def test_deuce_is_the_gamblers_ruin(point, margin, lead):
    lead = max(-margin + 1, min(margin - 1, lead))
    found = deuce(point, margin, lead)
    if point == F(1, 2):
        assert found.win == F(lead + margin, 2 * margin)
        assert found.points == (lead + margin) * (margin - lead)
    else:
        r = (1 - point) / point
        win = (1 - r ** (lead + margin)) / (1 - r ** (2 * margin))
        assert found.win == win
        assert found.points == (2 * margin * win - (lead + margin)) / (2 * point - 1)


def simulated(play, count=20_000):
    chance = random.Random(7)
    results = [play(chance) for _ in range(count)]
    return sum(won for won, _ in results) / count, sum(length for _, length in results) / count


def test_a_cap_against_a_simulation():
    # To 11 by 2, at 15 all the next point wins: a cap of 16.
    def play(chance):
        a = b = 0
        while not ((max(a, b) >= 11 and abs(a - b) >= 2) or max(a, b) >= 16):
            if chance.random() < 0.55:
                a += 1
            else:
                b += 1
        return a > b, a + b

    found = race(11, 0.55, margin=2, cap=16)
    win, points = simulated(play)
    assert found.win == pytest.approx(win, abs=0.015)
    assert found.points == pytest.approx(points, abs=0.15)
    assert race(11, 0.55).win < found.win < race(11, 0.55, margin=2).win


# Exact (chains outside the program): tie-breaks to 7.
@pytest.mark.parametrize(
    ("serve", "other", "win", "points"),
    [(0.5, 0.5, 0.5, 11.744141), (0.6, 0.6, 0.5, 11.839371), (0.65, 0.60, 0.581617, 11.857966)],
)
def test_tie_breaks(serve, other, win, points):
    found = tie_break(7, serve, other)
    assert (found.win, found.points) == pytest.approx((win, points), abs=6e-7)


@given(serve=fractions, other=fractions)
def test_who_serves_first_in_a_tie_break_does_not_matter(serve, other):
    # Newton & Keller 2005 prove it.
    assert tie_break(7, serve, other).win == tie_break(7, other, serve).lose


@given(point=fractions)
def test_a_tie_break_of_equal_serves_is_a_race_by_two(point):
    assert tie_break(5, point, 1 - point) == race(5, point, margin=2)


# Exact: n in a row.
@pytest.mark.parametrize(
    ("point", "count", "tries"),
    [
        (F(1, 2), 3, 14),
        (F(1, 2), 5, 62),
        (F(1, 2), 10, 2046),
        (0.6, 3, 9.074074),
        (0.6, 5, 29.650206),
        (0.6, 10, 410.954293),
        (0.8, 3, 4.765625),
        (0.8, 5, 10.258789),
        (0.8, 10, 41.566129),
    ],
)
def test_in_a_row(point, count, tries):
    assert in_a_row(count, point) == pytest.approx(tries, abs=1e-6)


@given(count=st.integers(1, 6), success=fractions)
def test_in_a_row_is_the_closed_form(count, success):
    assert in_a_row(count, success) == (1 - success**count) / ((1 - success) * success**count)


def test_in_a_row_in_so_many_tries():
    # By hand: HH in three tosses: HHH, HHT, THH of eight.
    assert in_a_row_within(2, F(1, 2), 3) == F(3, 8)


def test_a_start_score_helps_who_has_it():
    wins = [race(11, F(9, 20), start=(n, 0)).win for n in range(4)]
    assert wins == sorted(wins)
    assert wins[0] < F(1, 2) < wins[3]


def test_long_races_and_tie_breaks_do_not_run_out_of_floats():
    # Against scipy's negative binomial; by two, the far end of the sum is the usual deuce.
    from scipy.stats import nbinom

    for to, point in ((200, 0.5), (500, 0.52), (1000, 0.45)):
        assert race(to, point).win == pytest.approx(nbinom.cdf(to - 1, to, point), rel=1e-9)
        level = nbinom.pmf(to - 1, to, point) / point  # one short at either side: the same ways, without the last point
        by_two = nbinom.cdf(to - 2, to, point) + level * deuce(point).win
        assert race(to, point, margin=2).win == pytest.approx(by_two, rel=1e-9)
    assert tie_break(100, 0.55, 0.45).win == pytest.approx(race(100, 0.55, margin=2).win, rel=1e-9)


@given(to=st.integers(1, 6), point=fractions, margin=st.integers(1, 4), more=st.integers(0, 4))
def test_a_capped_race_of_equal_serves_is_a_capped_tie_break(to, point, margin, more):
    capped = race(to, point, margin=margin, cap=to + more)
    assert capped == tie_break(to, point, 1 - point, margin=margin, cap=to + more)
    assert capped.win + capped.lose == 1


def test_plus_and_minus():
    # By hand, floor 0, to 1: misses at 0 cost nothing: 1/p tries. To 2 with p 1/2: 6 tries (E0 = 2 + E1, E1 = 1 + E0/2).
    assert plus_minus(1, F(1, 4)) == 4
    assert plus_minus(2, F(1, 2)) == 6
    # Without a floor: Wald, n/(2p - 1).
    assert plus_minus(5, F(3, 5), floor=None) == 25


@pytest.mark.parametrize(
    ("call", "says"),
    [
        (lambda: race(11, 1.5), r"The chance of a point of 1\.5 cannot be"),
        (lambda: race(11, math.nan), "must be a number from 0 to 1"),
        (lambda: race(0, 0.5), "A goal of 0"),
        (lambda: race(5000, 0.5), "expected 1 to 1000"),
        (lambda: race(11, 0.5, margin=0), "A margin of 0"),
        (lambda: race(11, 0.5, cap=9), "below the goal"),
        (lambda: race(5, 0.5, start=(5, 0)), "no lower than the goal"),
        (lambda: tie_break(7, 1, 1), "never ends"),
        (lambda: tie_break(7000, 0.5, 0.5), "cannot be computed"),
        (lambda: race(5, 0.5, cap=5000), "A cap of 5000"),
        (lambda: in_a_row(3, 0), "never ends"),
        (lambda: in_a_row(1000, 0.01), "never comes"),
        (lambda: plus_minus(3, 0.4, floor=None), "never ends"),
    ],
)
def test_what_cannot_be_is_said_in_a_sentence(call, says):
    with pytest.raises(Impossible, match=says) as refused:
        call()
    assert str(refused.value).endswith(".")


def test_the_certain_player_wins_in_the_fewest_points():
    assert race(11, 1) == Odds(1, 0, 0, 11)
    assert race(11, 0, margin=2) == Odds(0, 1, 0, 11)
