import pytest

from designer.bundle import sample
from designer.drill.conditions import Event, Outcome
from designer.drill.rules import Finish, Points
from designer.drill.setting import At, addresses
from designer.numbers.levels import level
from designer.numbers.report import report
from designer.numbers.situation import situation
from designer.storage.reading import open_drill


def read(name, at=None, players="tournament"):
    drill = open_drill(sample(f"{name}.drill.json")).drill
    return report(situation(drill, next(iter(addresses(drill))) if at is None else At(at), level(players)), rallies=600)


def test_a_points_drill_has_odds_and_a_length():
    found = read("chalk-line", "p-points")
    assert found.fairness is not None
    assert found.finish == found.fairness.finish
    assert 3 < found.finish.minutes < 15
    assert found.load.balls > 0


def test_a_goal_of_so_many_starts_has_a_chance():
    found = read("return-past", "p-together")
    assert found.fairness is None
    assert 0 < found.finish.reached < 1
    assert found.finish_problem == ""


def test_better_players_reach_a_goal_more_often():
    reached = [read("return-past", "p-together", name).finish.reached for name in ("club", "tournament", "tour")]
    assert reached == sorted(reached)


def test_a_row_takes_so_many_hits():
    found = read("a-chooses", "p-together")
    assert found.finish.unit == "hits"
    assert found.finish.expected > 12


def test_without_a_drawn_ball_there_is_nothing_to_report(drawn):
    found = report(drawn())
    assert (found.finish, found.fairness, found.load) == (None, None, None)


@pytest.mark.parametrize("path", sorted(sample().glob("*.drill.json")), ids=lambda path: path.name.split(".")[0])
def test_every_progression_of_every_sample_reports(path):
    drill = open_drill(path).drill
    for progression in drill.progressions:
        found = report(situation(drill, At(progression.id), level("tournament")), rallies=60)
        assert found.finish is not None or found.finish_problem.endswith(".")


# What took minutes once, or for ever: each ends, in a figure or in a sentence.
@pytest.mark.parametrize(
    "finish",
    [
        {"kind": "race", "to": 200, "margin": 2},
        {"kind": "race", "to": 300, "margin": 20, "cap": 400},
        {"kind": "race", "to": 200, "minutes": 600},
        {"kind": "total", "minutes": 600},
        {"kind": "tie-break", "to": 200, "margin": 2},
        {"kind": "goal", "to": 1000, "starts": 900},
    ],
    ids=lambda finish: "-".join(map(str, finish.values())),
)
@pytest.mark.parametrize("bonus", [False, True], ids=["plain", "bonus"])
def test_long_finishes_come_to_an_end(drawn, rally, finish, bonus):
    won = Points(id="won", on=(Event(what="won"),), gives=Outcome(then="points", value=1))
    more = Points(
        id="more", on=(Event(what="won", untouched=True),), gives=Outcome(then="points", value=2), beside="instead"
    )
    end = Finish(id="end", **finish)
    found = report(drawn(*rally[:4], won, *((more,) if bonus else ()), end), rallies=60)
    assert found.finish_problem.endswith(".") if found.finish is None else found.finish.expected > 0
