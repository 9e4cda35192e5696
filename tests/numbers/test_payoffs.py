"""What one rally brings: from the drill's own points."""

import pytest

from designer.drill.conditions import Event, In, Outcome
from designer.drill.items import Area, Rectangle
from designer.drill.people import Spot
from designer.drill.rules import Part, Points, Start, Swap
from designer.numbers.payoffs import Rally, gains, jobs_change, quick_rally, shared, sides, start_scores, starts_in_turn
from designer.numbers.problems import Impossible
from designer.numbers.shots import numbers_of

HALF = Rally(0.5, 0.3, 0.2)


def paid(id, value, beside=None, to=None, **event):
    what = {"what": "won"} | event
    return Points(id=id, on=(Event(**what),), gives=Outcome(then="points", value=value, to=to), beside=beside)


def scores(here, rally=HALF, **options):
    return {(gain.first, gain.second): gain.chance for gain in gains(here, numbers_of(here), rally, **options)}


def test_sides_are_the_ends(drawn, rally):
    both = sides(drawn(*rally))
    assert (both.first, both.second) == (("A",), ("B",))
    assert both.of("B") == "second"


def test_partners_share_a_side_and_a_coach_has_none(drawn, rally):
    from designer.drill.base import place

    four = drawn(
        *rally, Spot(id="c", job="C", place=place(2, -3)), Spot(id="d", job="D", place=place(-2, 3)), jobs="ABCD"
    )
    assert sides(four).first == ("A", "C")
    assert sides(drawn(*rally, coach=("B",))).second == ()


def test_a_rally_won_is_worth_one(drawn, rally):
    assert scores(drawn(*rally, paid("won", 1))) == pytest.approx({(1, 0): 0.5, (0, 1): 0.3, (0, 0): 0.2})
    assert scores(drawn(*rally)) == pytest.approx({(1, 0): 0.5, (0, 1): 0.3, (0, 0): 0.2})


def test_only_one_side_scores(drawn, rally):
    assert scores(drawn(*rally, paid("won", 1, by=("A",)))) == pytest.approx({(1, 0): 0.5, (0, 0): 0.5})


def test_more_for_a_way_of_winning(drawn, rally):
    instead = paid("clean", 2, "instead", by=("A",), untouched=True)
    found = scores(drawn(*rally, paid("won", 1), instead), bonus=0.4)
    assert found == pytest.approx({(1, 0): 0.3, (2, 0): 0.2, (0, 1): 0.3, (0, 0): 0.2})
    added = paid("clean", 2, "added", by=("B",), untouched=True)
    assert (0, 3) in scores(drawn(*rally, paid("won", 1), added))


@pytest.mark.parametrize(
    ("who", "score"), [("server", (0, 2)), ("receiver", (2, 0)), ("far", (0, 2)), ("near", (2, 0))]
)
def test_roles_are_found_at_their_ends(drawn, rally, who, score):
    found = scores(drawn(*rally, paid("won", 1), paid("more", 2, "instead", by=(who,), untouched=True)))
    assert {score} == set(found) & {(0, 2), (2, 0)}


def test_points_for_a_place_are_paid_whoever_wins(drawn, rally):
    zone = Area(id="zone", kind="area", shape=Rectangle(form="rectangle", corners=((-4.0, 7.0), (0.0, 11.5))))
    hit = paid("hit", 1, "added", "doer", what="landed", by=("A",), where=(In(area="zone", judged="bounce"),))
    here = drawn(*rally, zone, paid("won", 1), hit)
    chance = numbers_of(here).shot("reply").targets[0].chance
    found = scores(here)
    assert found[2, 0] == pytest.approx(0.5 * chance)
    assert found[1, 1] == pytest.approx(0.3 * chance)
    assert sum(found.values()) == pytest.approx(1)


def test_a_quick_estimate_of_a_restricted_part(drawn, rally):
    forced = Part(id="forced", kind="forced", shots=("reply",), failed=Outcome(then="no score"))
    opened = Part(id="open", after="forced", kind="open")
    here = drawn(*rally, forced, opened)
    numbers = numbers_of(here)
    found = quick_rally(here, numbers, 0.6)
    passed = numbers.shot("reply").chance_in
    assert (found.first, found.second, found.nothing) == pytest.approx((0.6 * passed, 0.4 * passed, 1 - passed))
    assert quick_rally(drawn(*rally), numbers_of(drawn(*rally))) == Rally(0.5, 0.5, 0.0)


def test_starts_in_turn_even_out(drawn, rally):
    start = Start(id="start", shot="feed", by=("A", "B"), next="in turn")
    here = drawn(*rally, start)
    assert starts_in_turn(here, sides(here))
    same = drawn(*rally, start.changed(by=("B",)))
    assert not starts_in_turn(same, sides(same))
    assert shared(Rally(0.6, 0.2, 0.2)) == Rally(pytest.approx(0.4), pytest.approx(0.4), 0.2)


def test_people_who_change_jobs(drawn, rally):
    swap = Swap(id="jobs", on=(Event(what="starts", count=5),), moves={"A": "B", "B": "A"})
    here = drawn(*rally, swap)
    assert jobs_change(here, sides(here))
    late = drawn(*rally, swap.changed(on=(Event(what="finished"),)))
    assert not jobs_change(late, sides(late))


def test_a_miss_that_costs_a_point_is_counted(drawn, rally):
    here = drawn(*rally[:4], paid("won", 1), paid("fault", -1, "added", what="missed", of=("reply",)))
    missed = 1 - numbers_of(here).shot("reply").chance_in
    found = scores(here)
    assert found[0, 0] == pytest.approx(HALF.nothing * (1 - missed) + HALF.first * missed)
    assert found[-1, 1] == pytest.approx(HALF.second * missed)


@pytest.mark.parametrize("more", [{"count": 3, "running": True}, {}])
def test_points_for_a_row_of_rallies_are_refused_with_a_sentence(drawn, rally, more):
    streak = paid("row", 1, **more) if more else paid("row", 1).changed(grows_by=1)
    with pytest.raises(Impossible, match=r"several rallies in a row are not worked out"):
        scores(drawn(*rally, streak))


def test_start_scores_are_given_by_side(drawn, rally):
    start = Start(id="start", shot="feed", by=("B",), bad=Outcome(then="replay"), score={"B": 3, "server": 9})
    here = drawn(*rally, start)
    assert start_scores(here, sides(here)) == (0, 3)
