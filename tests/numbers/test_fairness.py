"""Who a setting favours: exact odds and played games must tell the same, and the inputs must move them."""

import pytest

from designer.drill.conditions import Event, Outcome
from designer.drill.rules import Finish, Part, Points, Start, Swap
from designer.numbers.contest import Gain, contest
from designer.numbers.fairness import fairness, play_games
from designer.numbers.finishes import Pace
from designer.numbers.problems import Impossible
from designer.numbers.scoring import race, tie_break

FORCED = Part(id="forced", kind="forced", shots=("reply",), failed=Outcome(then="lose the point"))
OPEN = Part(id="open", after="forced", kind="open")
WON = Points(id="won", on=(Event(what="won"),), gives=Outcome(then="points", value=1))
RACE = Finish(id="end", kind="race", to=11)
PACE = Pace(20.0, 1.5, 4.0)


def test_games_that_are_played_agree_with_the_odds(drawn, rally):
    found = fairness(drawn(*rally[:4], FORCED, OPEN, WON, RACE), rallies=1500, games=10_000)
    assert found.games.first == pytest.approx(found.win, abs=0.015)
    assert found.games.rallies == pytest.approx(found.finish.expected, rel=0.03)
    assert found.least < found.win < found.most


def test_who_must_not_miss_is_at_a_disadvantage(drawn, rally):
    found = fairness(drawn(*rally[:4], FORCED, OPEN, WON, RACE), rallies=1500)
    assert found.favoured == "second"
    first, second = found.even_start
    assert (first > 0, second) == (True, 0)


def test_the_open_point_is_an_input(drawn, rally):
    here = drawn(*rally[:4], FORCED, OPEN, WON, RACE)
    low, high = (fairness(here, open_point=chance, rallies=1000).win for chance in (0.4, 0.7))
    assert low < high


def test_the_same_seed_gives_the_same_figures(drawn, rally):
    here = drawn(*rally[:4], FORCED, OPEN, WON, RACE)
    assert fairness(here, rallies=600, games=500) == fairness(here, rallies=600, games=500)


def test_more_rallies_leave_less_doubt(drawn, rally):
    here = drawn(*rally[:4], FORCED, OPEN, WON, RACE)
    few, many = (fairness(here, rallies=count, games=100) for count in (300, 3000))
    assert many.most - many.least < (few.most - few.least) / 2


def test_each_figure_is_told_and_it_can_be_stopped(drawn, rally):
    here = drawn(*rally[:4], FORCED, OPEN, WON, RACE)
    told = []
    whole = fairness(here, rallies=2500, games=100, progress=lambda figure, share: told.append((figure, share)))
    shares = [share for _, share in told]
    assert shares == sorted(shares)
    assert shares[-1] == 1.0
    assert told[0][0].rallies.count < 300
    assert whole == told[-1][0]
    stopped = fairness(here, rallies=2500, games=100, cancelled=lambda: True)
    assert stopped.rallies.count == told[0][0].rallies.count
    assert stopped.games is None


def test_starts_in_turn_are_fair(drawn, rally):
    start = Start(id="start", shot="feed", by=("A", "B"), next="in turn", bad=Outcome(then="replay"))
    found = fairness(drawn(*rally[:4], FORCED, OPEN, WON, RACE, start), rallies=600)
    assert found.win == pytest.approx(0.5, abs=1e-9)
    assert found.favoured is None


def test_a_swap_on_the_way_evens_out(drawn, rally):
    swap = Swap(id="jobs", on=(Event(what="starts", count=5),), moves={"A": "B", "B": "A"})
    assert fairness(drawn(*rally[:4], FORCED, OPEN, WON, RACE, swap), rallies=300, games=100).evens_out


@pytest.mark.parametrize(
    "finish", [None, Finish(id="end", kind="goal", to=7, starts=10), Finish(id="end", kind="race", to=5, running=True)]
)
def test_where_nobody_plays_against_anybody(drawn, rally, finish):
    records = () if finish is None else (finish,)
    with pytest.raises(Impossible, match="Nobody plays against anybody"):
        fairness(drawn(*rally[:4], FORCED, OPEN, *records))


def test_a_coach_is_no_opponent(drawn, rally):
    with pytest.raises(Impossible, match="Nobody plays against anybody"):
        fairness(drawn(*rally[:4], FORCED, OPEN, RACE, coach=("B",)))


GAINS = (Gain(0.55, 1), Gain(0.45, 0, 1))


def played(**finish):
    return play_games(Finish(id="end", **finish), GAINS, PACE, 20_000, 3)


# Played games against exact odds (test_scoring); 20 000 games leave 0.35 % of doubt.
def test_played_races_tie_breaks_and_totals():
    assert played(kind="race", to=11).first == pytest.approx(race(11, 0.55).win, abs=0.012)
    by_two = race(11, 0.55, margin=2, cap=16)
    capped = played(kind="race", to=11, margin=2, cap=16)
    assert (capped.first, capped.rallies) == pytest.approx((by_two.win, by_two.points), abs=0.1)
    assert played(kind="tie-break", to=7, margin=2).first == pytest.approx(tie_break(7, 0.55, 0.45).win, abs=0.012)
    from scipy.stats import binom

    total = played(kind="total", starts=20)
    assert (total.first, total.level) == pytest.approx((binom.sf(10, 20, 0.55), binom.pmf(10, 20, 0.55)), abs=0.012)
    assert total.rallies == 20


def test_a_start_score_of_the_drill_counts(drawn, rally):
    given = Start(id="start", shot="feed", by=("B",), bad=Outcome(then="replay"), score={"A": 4})
    plain = fairness(drawn(*rally[:4], FORCED, OPEN, WON, RACE, given.changed(score={})), rallies=800, games=0)
    ahead = fairness(drawn(*rally[:4], FORCED, OPEN, WON, RACE, given), rallies=800, games=5000)
    assert ahead.win > plain.win + 0.1
    assert ahead.games.first == pytest.approx(ahead.win, abs=0.03)


def test_two_ended_games_are_played_as_they_are_worked_out():
    gains = (Gain(0.55, 1), Gain(0.45, -1))
    two_ended = Finish(id="end", kind="race", to=5, floor=-5)
    games = play_games(two_ended, gains, PACE, 20_000, 3)
    exact = contest(gains, 5, floor=-5)
    assert (games.first, games.rallies) == pytest.approx((exact.win, exact.points), rel=0.03)


def test_the_clock_ends_a_game():
    assert played(kind="race", to=11, minutes=2).rallies == 6
