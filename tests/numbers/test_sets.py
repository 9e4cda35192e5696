"""Sets, matches and deuce against values worked in fractions outside the program."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from designer.numbers.problems import Impossible
from designer.numbers.sets import best_of_three, reaches_deuce, tie_break_set


# Worked outside the program, in fractions. The chance does not hang on who serves first: Newton & Keller 2005.
@pytest.mark.parametrize(
    ("serve", "other", "win", "points", "games"),
    [
        (0.5, 0.5, 0.5, 65.83375, 9.662109),
        (0.6, 0.6, 0.5, 65.59103, 9.972184),
        (0.65, 0.60, 0.663495, 64.21156, 9.976450),
    ],
)
def test_tie_break_sets(serve, other, win, points, games):
    found = tie_break_set(serve, other)
    assert found.win == pytest.approx(win, abs=6e-7)
    assert found.points == pytest.approx(points, abs=6e-6)
    assert found.games == pytest.approx(games, abs=6e-7)


@given(serve=st.floats(0.3, 0.9), other=st.floats(0.3, 0.9))
def test_who_serves_first_in_a_set_does_not_matter(serve, other):
    assert tie_break_set(serve, other).win == pytest.approx(1 - tie_break_set(other, serve).win, abs=1e-9)


def test_best_of_three():
    assert best_of_three(tie_break_set(0.65, 0.60).win) == pytest.approx(0.736502, abs=6e-7)
    assert best_of_three(Fraction(1, 3)) == Fraction(7, 27)


@pytest.mark.parametrize(
    ("point", "deuce"), [(0.5, 0.3125), (0.55, 0.303218), (0.6, 0.276480), (2 / 3, 0.219479), (0.7, 0.185220)]
)
def test_how_often_a_game_comes_to_deuce(point, deuce):
    assert reaches_deuce(point) == pytest.approx(deuce, abs=6e-7)


def test_certain_players_and_what_cannot_be():
    assert tie_break_set(Fraction(1), Fraction(0)).games == 6
    with pytest.raises(Impossible, match="never ends"):
        tie_break_set(1.0, 1.0)
    with pytest.raises(Impossible, match="from 0 to 1"):
        reaches_deuce(1.5)
