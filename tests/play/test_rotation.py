"""Swaps played out, against what anybody can count on paper."""

import itertools
from collections import Counter

import pytest
from hypothesis import given
from hypothesis import strategies as st

from designer.bundle import sample
from designer.drill.base import place
from designer.drill.conditions import Event
from designer.drill.drill import Drill
from designer.drill.movement import Shot
from designer.drill.people import Job, Spot
from designer.drill.rules import Finish, Swap
from designer.drill.setting import EMPTY, At, main_setting, setting_at
from designer.play.rotation import LosesPerson, NotWorkedOut, fairness, full_turn, group_of, rounds

LETTERS = "ABCDEFGH"


def spot(letter, y=-12.0, **values):
    return Spot(id=f"spot-{letter.lower()}", job=letter, place=place(LETTERS.index(letter) - 3.5, y), **values)


def on(what="starts", count=5):
    return (Event(what=what, count=count),)


def ring(letters):
    return dict(zip(letters, [*letters[1:], letters[0]], strict=True))


def setting(letters, *records, waits=""):
    spots = [
        spot(one, -12.0 if number % 2 == 0 else 12.0, task="waits" if one in waits else "plays")
        for number, one in enumerate(letters)
    ]
    return EMPTY.having(*spots, *records)


def jobs(letters, **roles):
    return tuple(Job(letter=one, role=roles.get(one, "")) for one in letters)


def sample_of(code):
    drill = Drill.model_validate_json(sample(f"{code}.drill.json").read_bytes())
    return drill, setting_at(drill, main_setting(drill))


@pytest.mark.parametrize("size", range(2, 9))
def test_in_a_ring_everybody_holds_every_job_once_and_is_back(size):
    letters = LETTERS[:size]
    scene = setting(letters, Swap(id="ring", on=on(), moves=ring(letters)))
    held = jobs(letters, **{one: f"job {one}" for one in letters})
    assert full_turn(scene, held) == size
    found = fairness(scene, held, size)
    assert found.fair
    assert all(found.jobs[who][job] == (1, 1) for who, job in itertools.product(letters, letters))
    after = rounds(scene, held, size + 1)
    assert after[-1].people == after[0].people
    assert after[1].people["B"] == "A"  # whoever was A is B now


def test_feeder_hitter_and_collector_change_in_threes():
    """A school plan rotates exactly these three: after three rounds each has done each once (common practice)."""
    scene = setting("ABC", Swap(id="turn", on=on(count=6), moves=ring("ABC")))
    found = fairness(scene, jobs("ABC", A="feeds", B="hits", C="collects"), 3)
    assert all(span == (1, 1) for doing in found.doing.values() for span in doing.values())
    # Four rounds are one too many: whoever began as the feeder feeds twice.
    four = fairness(scene, jobs("ABC", A="feeds", B="hits", C="collects"), 4)
    assert not four.fair
    assert four.doing["A"]["feeds"] == (2, 2)


def test_three_pairings_of_four_give_everybody_each_partner_once():
    table = (("A", "B", "C", "D"), ("A", "D", "C", "B"), ("A", "C", "D", "B"))
    spots = [spot("A"), spot("B"), spot("C", 12.0), spot("D", 12.0)]
    scene = EMPTY.having(*spots, Swap(id="partners", on=on("round", None), table=table))
    found = fairness(scene, jobs("ABCD"), 3)
    pairs = Counter(frozenset(pair) for row in table for pair in (row[:2], row[2:]))
    assert pairs == Counter(map(frozenset, itertools.combinations("ABCD", 2)))  # by hand: six pairs, once each
    assert found.partners == dict.fromkeys(itertools.combinations("ABCD", 2), (1, 1))
    assert found.fair


def test_a_table_that_leaves_the_same_two_together_is_uneven():
    table = (("A", "B", "C", "D"), ("B", "A", "D", "C"), ("A", "B", "D", "C"))
    spots = [spot("A"), spot("B"), spot("C", 12.0), spot("D", 12.0)]
    scene = EMPTY.having(*spots, Swap(id="partners", on=on("round", None), table=table))
    (uneven,) = fairness(scene, jobs("ABCD"), 3).uneven
    assert (uneven.what, uneven.most, uneven.most_often, uneven.least_often) == ("partners", "A and B", 3, 0)


def test_the_academy_s_doubles_keep_their_promise():
    """The drill says: each partner twice, back three times, net three times."""
    drill, scene = sample_of("doubles-six")
    found = fairness(scene, drill.jobs, 6, people=4)
    assert set(found.partners.values()) == {(2, 2)}
    assert all(doing == {"back": (3, 3), "net": (3, 3)} for doing in found.doing.values())
    # A fifth waits all six rounds by the table: the drill's own note says who goes in for whom.
    five = fairness(scene, drill.jobs, 6)
    assert (five.uneven[0].what, five.uneven[0].most, five.uneven[0].most_often) == ("waits", "E", 6)


@pytest.mark.parametrize(
    "code", ["wide-start", "hoop-red", "return-past", "short-approach", "a-chooses", "volley-four"]
)
def test_the_academy_s_rotations_are_fair_with_all_places_filled(code):
    drill, scene = sample_of(code)
    found = fairness(scene, drill.jobs, full_turn(scene, drill.jobs))
    assert found.fair, found.uneven


def test_a_job_that_nobody_holds_today_is_passed_over():
    drill, scene = sample_of("wide-start")  # A, B and a third who waits
    two = rounds(scene, drill.jobs, 3, people=2)
    assert [each.people for each in two] == [{"A": "A", "B": "B"}, {"A": "B", "B": "A"}, {"A": "A", "B": "B"}]
    three = rounds(scene, drill.jobs, 3)
    assert [each.people["A"] for each in three] == ["A", "C", "B"]
    assert [each.waiting for each in three] == [("C",), ("B",), ("A",)]


def test_ends_and_sides_change_with_the_rounds():
    drill, scene = sample_of("wide-start")  # jobs and ends every five starts, sides after ten
    told = rounds(scene, drill.jobs, 5, people=2)
    assert [each.ends_changed for each in told] == [False, True, False, True, False]
    assert [each.mirrored for each in told] == [False, False, True, True, False]


def test_swaps_after_five_and_after_ten_starts_come_in_time():
    drill, scene = sample_of("short-approach")
    told = [each.people for each in rounds(scene, drill.jobs, 4)]
    assert told[1] == {"A": "B", "B": "A", "C": "C", "D": "D"}
    assert told[2] == {"A": "C", "B": "D", "C": "A", "D": "B"}  # jobs first, then the second pair


def test_a_swap_at_a_score_comes_before_the_one_at_the_end_of_the_round():
    drill, scene = sample_of("volley-four")
    told = [each.people for each in rounds(scene, drill.jobs, 4)]
    assert told[1] == {"A": "B", "B": "A", "C": "D", "D": "C"}
    assert told[2] == {"A": "A", "B": "D", "C": "C", "D": "B"}  # the second row of its table


def stays(*moves, **values):
    return setting("ABC", Swap(id="stays", on=(Event(what="won"),), moves=dict(moves), **values), waits="C")


def test_the_winner_stays_and_who_waits_comes_in_for_the_loser():
    scene = stays(("loser", "C"), ("C", "loser"))  # A near, B far, C waits
    told = rounds(scene, jobs("ABC"), 4, ["near", "near", "far"])
    assert [(each.people["A"], each.people["B"]) for each in told] == [("A", "B"), ("A", "C"), ("A", "B"), ("C", "B")]
    assert [each.waiting for each in told] == [("C",), ("B",), ("C",), ("A",)]


def test_what_depends_on_who_wins_is_told_from_the_least_to_the_most():
    found = fairness(stays(("loser", "C"), ("C", "loser")), jobs("ABC"), 5)
    assert found.open
    assert found.fair  # whoever wins, stays: that is the game
    assert found.jobs["A"]["A"] == (1, 5)  # loses at once and is kept out, or wins all
    assert found.doing["C"]["waits"] == (1, 3)
    with pytest.raises(NotWorkedOut, match="who wins"):
        rounds(stays(("loser", "C"), ("C", "loser")), jobs("ABC"), 3, ["near"])


@given(st.lists(st.sampled_from(("near", "far")), min_size=5, max_size=5))
def test_every_way_it_can_go_lies_between_the_least_and_the_most(winners):
    scene = stays(("loser", "C"), ("C", "loser"))
    found = fairness(scene, jobs("ABC"), 6)
    played = Counter(
        (person, job) for each in rounds(scene, jobs("ABC"), 6, winners) for job, person in each.people.items()
    )
    for who, job in itertools.product("ABC", "ABC"):
        least, most = found.jobs[who][job]
        assert least <= played[who, job] <= most


@pytest.mark.parametrize(
    ("moves", "twice", "left"),
    [
        ({"A": "B"}, ("B",), ("A",)),
        ({"A": "C", "B": "C"}, ("C",), ("A", "B")),
        ({"A": "B", "B": "C"}, ("C",), ("A",)),
    ],
)
def test_a_swap_that_loses_somebody_says_whom(moves, twice, left):
    scene = setting("ABC", Swap(id="swap", on=on(), moves=moves))
    with pytest.raises(LosesPerson) as lost:
        fairness(scene, jobs("ABC"), 2)
    assert (lost.value.swap, lost.value.twice) == ("swap", twice)
    assert set(left) >= set(lost.value.left) > set()


@pytest.mark.parametrize("row", [("A", "A", "C"), ("A", "B", "D")])
def test_a_table_that_loses_somebody_says_so(row):
    scene = setting("ABC", Swap(id="table", on=on("round", 1), table=(("A", "B", "C"), row)))
    with pytest.raises(LosesPerson):
        fairness(scene, jobs("ABC"), 2)


def test_a_loser_who_goes_nowhere_new_is_lost():
    with pytest.raises(LosesPerson):
        fairness(stays(("loser", "C")), jobs("ABC"), 2)


def test_pairs_that_win_and_other_courts_are_not_worked_out():
    four = EMPTY.having(
        *(spot(one, y) for one, y in (("A", -12), ("B", -3), ("C", 12), ("D", 3))),
        Swap(id="stays", on=(Event(what="won"),), moves={"winner": "A"}),
    )
    with pytest.raises(NotWorkedOut, match="which pair"):
        fairness(four, jobs("ABCD"), 3)
    up = setting("AB", Swap(id="up", on=on("minutes", 8), moves={"winner": "court up", "loser": "court down"}))
    with pytest.raises(NotWorkedOut, match="another court"):
        fairness(up, jobs("AB"), 3)


def test_a_coach_is_nobody_s_turn_and_those_who_play_come_first():
    scene = EMPTY.having(spot("A", task="waits"), spot("B"), spot("C"), spot("D", 12.0))
    people = (*jobs("ABC"), Job(letter="D", by="coach"))
    assert group_of(scene, people) == ("B", "C", "A")
    assert group_of(scene, people, 2) == ("B", "C")


def test_nothing_that_moves_is_one_round_for_ever():
    scene = setting("AB", Finish(id="end", kind="race", to=11))
    assert full_turn(scene, jobs("AB")) is None
    assert [each.people for each in rounds(scene, jobs("AB"), 4)] == [{"A": "A", "B": "B"}]
    assert fairness(scene, jobs("AB"), 4).fair


def test_who_never_gets_a_turn_is_found():
    scene = setting("ABC", Swap(id="jobs", on=on(), moves={"A": "B", "B": "A"}), waits="C")
    found = fairness(scene, jobs("ABC"), full_turn(scene, jobs("ABC")))
    assert (found.uneven[0].most, found.uneven[0].least_often) == ("C", 0)
    assert found.doing["C"] == {"plays": (0, 0), "waits": (2, 2)}


moves_of = st.permutations(LETTERS[:6]).map(lambda goal: dict(zip(LETTERS[:6], goal, strict=True)))


@given(moves_of, st.integers(2, 6))
def test_a_permutation_never_loses_anybody_whatever_the_size_of_the_group(moves, size):
    scene = setting(LETTERS[:6], Swap(id="swap", on=on(), moves=moves))
    for each in rounds(scene, jobs(LETTERS[:6]), 7, people=size):
        assert sorted(each.people.values()) == sorted(group_of(scene, jobs(LETTERS[:6]), size))
        assert sorted(each.people) == sorted(each.people.values())


def test_a_setting_is_found_by_its_address():
    drill = Drill.model_validate_json(sample("return-past.drill.json").read_bytes())
    scene = setting_at(drill, At("p-match"))
    assert full_turn(scene, drill.jobs) == 4


def test_a_swap_that_one_player_s_win_brings_may_never_come():
    """Challengers take the end by two wins in a row: nobody can tell when, so nothing is called unfair."""
    holds = Swap(id="in", on=(Event(what="won", by=("B",), count=2, running=True),), moves=ring("AB"), ends=True)
    scene = setting("AB", holds)
    found = fairness(scene, jobs("AB"), 4)
    assert found.open
    assert found.fair
    assert found.jobs["A"]["A"] == (1, 4)  # held all the time, or lost at once; the one who comes may lose it again
    assert full_turn(scene, jobs("AB")) is None
    with pytest.raises(NotWorkedOut, match="who wins"):
        rounds(scene, jobs("AB"), 2)


def test_two_at_one_end_in_two_lanes_are_no_partners():
    balls = [
        Shot(id=id, by=by, after=after, to=place(0, 5))
        for id, by, after in (("b1", "B", None), ("a1", "A", "b1"), ("d1", "D", None), ("c1", "C", "d1"))
    ]
    swap = Swap(id="along", on=on("starts"), moves=ring("ABDC"))
    assert fairness(setting("ABCD", swap), jobs("ABCD"), 4).partners
    assert not fairness(setting("ABCD", swap, *balls), jobs("ABCD"), 4).partners
