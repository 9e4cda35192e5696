"""Odds from the command line. "Exact": worked out with fractions outside the program, see tests/numbers/test_scoring.py."""

import json

import pytest

from designer.commands import main


@pytest.fixture
def odds(capsys):
    def ask(*words):
        status = main(["odds", *map(str, words)])
        out, err = capsys.readouterr()
        return status, out, err

    return ask


# Exact.
@pytest.mark.parametrize(
    ("words", "win", "points"),
    [
        (("--to", 11, "--point", 0.55), 0.679003, 18.08031),
        (("--to", 11, "--by", 2, "--point", 0.6), 0.836435, 17.80523),
        (("--game", "--point", 0.6), 29889 / 40625, 52684 / 8125),
        (("--game", "--no-ad", "--point", 0.6), 0.710208, 5.697280),
        (("--tiebreak", 7, "--point", 0.65, "--other-serve", 0.60), 0.581617, 11.857966),
        (("--tiebreak", 7, "--point", 0.5, "--other-serve", 0.5), 0.5, 11.744141),
        (("--tiebreak", 7, "--point", 0.6), 0.787456, 11.20863),
    ],
)
def test_json(odds, words, win, points):
    status, out, _ = odds(*words, "--json")
    found = json.loads(out)
    assert (status, found["format"]) == (0, 1)
    assert found["win"] == pytest.approx(win, abs=6e-7)
    assert found["expected_points"] == pytest.approx(points, abs=6e-6)


def test_plain_words(odds):
    assert odds("--game", "--point", 2 / 3)[1] == (
        "wins 85.6% of the time\n6.1 points to expect\ncomes to deuce 21.9% of the time\n"
    )


def test_a_set_says_its_games_and_the_match(odds):
    # Worked outside the program, see tests/numbers/test_sets.py.
    found = json.loads(odds("--set", "--point", 0.65, "--other-serve", 0.60, "--json")[1])
    assert found["win"] == pytest.approx(0.663495, abs=6e-7)
    assert found["expected_points"] == pytest.approx(64.21156, abs=6e-6)
    assert found["expected_games"] == pytest.approx(9.976450, abs=6e-7)
    assert found["best_of_three"] == pytest.approx(0.736502, abs=6e-7)


@pytest.mark.parametrize(
    ("words", "says"),
    [
        (("--to", 11, "--point", 1.5), "The chance of a point of 1.5 cannot be; expected a number from 0 to 1."),
        (("--to", 11, "--point", "nan"), "must be a number from 0 to 1"),
        (("--to", 0, "--point", 0.5), "A goal of 0 cannot be computed; expected 1 to 1000."),
        (("--to", 11, "--by", 0, "--point", 0.5), "A margin of 0"),
        (("--game", "--by", 2, "--point", 0.5), "--by goes with --to alone."),
        (("--to", 7, "--no-ad", "--point", 0.5), "--no-ad goes with --game alone."),
        (("--to", 7, "--other-serve", 0.5, "--point", 0.5), "--other-serve goes with --tiebreak or --set alone."),
        (("--tiebreak", 7, "--point", 1, "--other-serve", 1), "never ends"),
        (("--to", 7, "--game", "--point", 0.5), "not allowed with"),
        (("--point", 0.5), "required"),
        (("--to", 7), "required"),
    ],
)
def test_what_cannot_be_is_one_sentence_and_wrong_usage(odds, words, says):
    status, out, err = odds(*words)
    assert (status, out) == (64, "")
    assert says in err
    assert len(err.strip().splitlines()) == 1
