"""A setting's own finish. Scores: see test_scoring; here that each kind of finish asks for the right ones."""

from fractions import Fraction

import pytest
from scipy.stats import binom

from designer.drill.rules import Finish
from designer.numbers.contest import Gain
from designer.numbers.finishes import Pace, finish_odds
from designer.numbers.problems import Impossible
from designer.numbers.scoring import game, in_a_row, race, tie_break

F = Fraction
PLAIN = (Gain(F(3, 5), 1), Gain(F(2, 5), 0, 1))
PACE = Pace(start=20.0, hit=1.5, hits=4.0)


def odds(gains=PLAIN, success=0.8, **values):
    own = {name: values.pop(name) for name in ("start", "serve", "people") if name in values}
    return finish_odds(Finish(id="end", **values), gains, success, PACE, **own)


def test_races():
    for margin, cap in ((1, None), (2, None), (2, 13)):
        found = odds(kind="race", to=11, margin=margin, cap=cap)
        assert found.odds == race(11, F(3, 5), margin=margin, cap=cap)
        assert found.expected == pytest.approx(float(found.odds.points))
        assert found.minutes == pytest.approx(found.expected * 20 / 60)


def test_a_race_against_the_clock_stops_and_may_be_level():
    found = odds(kind="race", to=11, minutes=2)
    # Two minutes are six rallies: ahead, behind, level by the binomial.
    assert float(found.odds.win) == pytest.approx(binom.sf(3, 6, 0.6))
    assert float(found.odds.level) == pytest.approx(binom.pmf(3, 6, 0.6))


def test_rounds_take_as_many_times_as_long():
    assert odds(kind="race", to=5, rounds=3).minutes == pytest.approx(3 * odds(kind="race", to=5).minutes)


def test_a_start_score():
    assert odds(kind="race", to=11, start=(0, 3)).odds == race(11, F(3, 5), start=(0, 3))


def test_totals_and_what_level_means():
    shared = odds(kind="total", starts=10, level="shared")
    assert float(shared.odds.level) == pytest.approx(binom.pmf(5, 10, 0.6))
    more = odds(kind="total", starts=10, level="one more each")
    assert more.odds.level == 0
    assert more.odds.win == shared.odds.win + shared.odds.level * F(3, 5)
    assert more.expected > 10
    with pytest.raises(Impossible, match="does not say how many starts"):
        odds(kind="total")
    assert odds(kind="total", minutes=4).expected == 12


def test_games_and_tie_breaks():
    assert odds(kind="game", margin=2).odds == game(F(3, 5))
    assert odds(kind="game", margin=1).odds == game(F(3, 5), advantage=False)
    assert odds(kind="tie-break", to=7, margin=2).odds == tie_break(7, F(3, 5), F(2, 5))
    assert odds(kind="tie-break", to=7, margin=2, serve=(0.65, 0.6)).odds.win == pytest.approx(0.581617, abs=6e-7)


def test_rallies_that_bring_nothing_take_time():
    slow = (Gain(F(3, 10), 1), Gain(F(2, 10), 0, 1), Gain(F(1, 2)))
    found = odds(slow, kind="game", margin=2)
    assert found.odds.win == game(F(3, 5)).win
    assert found.expected == pytest.approx(2 * float(game(F(3, 5)).points))


def test_bonus_points_in_a_tie_break_are_counted():
    bonus = (Gain(F(3, 10), 2), Gain(F(3, 10), 1), Gain(F(2, 5), 0, 1))
    assert odds(bonus, kind="tie-break", to=7, margin=2).odds.win > tie_break(7, F(3, 5), F(2, 5)).win


def test_so_many_in_a_row():
    found = odds(kind="race", to=5, running=True, success=0.8)
    assert found.expected == pytest.approx(in_a_row(5, 0.8))
    # 1.5 s a hit, and after each miss 20 s less 4 hits of play to the next start.
    misses = found.expected * 0.2
    assert found.minutes == pytest.approx((found.expected * 1.5 + misses * 14) / 60)
    with pytest.raises(Impossible, match="in a row take more than"):
        odds(kind="race", to=50, running=True, success=0.5)


def test_a_goal_in_so_many_starts():
    together = (Gain(0.7, 1), Gain(0.3))
    found = odds(together, kind="goal", to=7, starts=10)
    assert found.reached == pytest.approx(binom.sf(6, 10, 0.7))
    assert found.unit == "starts"
    each = odds(together, kind="goal", to=18, starts=6, each=True, people=3)
    assert each.reached == pytest.approx(binom.sf(17, 18, 0.7))


def test_a_goal_against_the_clock():
    found = odds(kind="goal", to=20, minutes=4, scores="all together", success=0.5)
    # 4 hits in 20 s: 48 hits in 4 min.
    assert found.reached == pytest.approx(binom.sf(19, 48, 0.5))
    assert found.minutes == 4


def test_what_a_finish_does_not_say():
    with pytest.raises(Impossible, match="does not say how far it goes"):
        odds(kind="race")
    with pytest.raises(Impossible, match="does not say how far it goes"):
        odds(kind="goal", to="own best", minutes=4)
    with pytest.raises(Impossible, match="No rally brings a point"):
        odds((Gain(1.0),), kind="game")
    with pytest.raises(Impossible, match="never reached"):
        odds(kind="goal", to=5, success=0.0)
