"""Swaps played out in words, against what anybody can count on paper; common practice, no source."""

import itertools

import pytest
from wording.making import DOUBLES, HERE, SINGLES, drill_of, spot, told

from designer.bundle import sample
from designer.drill.drill import Drill
from designer.drill.rules import Finish, Swap
from designer.drill.setting import main_setting
from designer.wording.card import card_words
from designer.wording.rotations import rotation_table, shared_out

AFTER_FIVE = ({"what": "starts", "count": 5},)
THIRD = spot("C", -8.0, 0.0, task="waits")
LETTERS = "ABCDEFGH"
RING = Swap(id="s", on=AFTER_FIVE, moves={"A": "B", "B": "C", "C": "A"})
TABLE = Swap(id="s", on=({"what": "round"},), table=(("A", "B", "C", "D"), ("A", "D", "C", "B"), ("A", "C", "D", "B")))


def table(*records, people=None, rounds=None, **values):
    return rotation_table(drill_of(*records, **values), HERE, people=people, rounds=rounds)


def cells(grid):
    return {row.head: row.cells for row in grid.rows}


@pytest.mark.parametrize("size", range(2, 9))
def test_a_ring_of_any_size_comes_round(size):
    group = LETTERS[:size]
    spots = [spot(one, number - 4.0, 12.0 if number % 2 else -12.0) for number, one in enumerate(group)]
    moves = dict(zip(group, [*group[1:], group[0]], strict=True))
    found = table(*spots, Swap(id="s", on=AFTER_FIVE, moves=moves), jobs=group)
    assert (found.people, found.rounds, found.weight) == (size, size, "even")
    # By hand: each column of a ring holds everybody once.
    for column in range(size):
        assert sorted(row.cells[column] for row in found.places.rows) == list(group)
    assert all(set(row.cells) == {"1"} for row in found.counts.rows)


def test_a_feeder_a_hitter_and_a_collector():
    collects = spot("C", 0.0, 16.0, task="collects")
    found = table(*SINGLES, collects, RING, jobs="ABC")
    assert found.places.corner == "Turn"
    assert found.places.heads == ("A", "B", "C collects")
    assert cells(found.places) == {"1": ("A", "B", "C"), "2": ("C", "A", "B"), "3": ("B", "C", "A")}
    assert cells(found.counts)["A"] == ("2", "1")  # plays twice, collects once
    assert found.verdict.text == "Even: after three turns everyone has played twice and collected once."


def test_who_waits_all_the_time_is_told():
    found = table(*SINGLES, THIRD, RING.changed(moves={"A": "B", "B": "A"}), jobs="ABC")
    assert found.weight == "uneven"
    assert found.verdict.text == "Not even: whoever begins as C waits all the time."
    assert found.verdict.about == ("s",)


def test_one_turn_too_many_is_not_even():
    found = table(*SINGLES, THIRD, RING, jobs="ABC", rounds=4)
    assert cells(found.counts) == {"A": ("3", "1"), "B": ("3", "1"), "C": ("2", "2")}
    assert found.verdict.text == "Not even: in four turns whoever begins as C waits twice, as A once."


def test_three_pairings_of_four():
    found = table(*DOUBLES, TABLE, jobs="ABCD")
    assert found.places.corner == "Round"
    assert found.partners.heads == ("A", "B", "C", "D")
    together = {frozenset((row.head, one)) for row in found.partners.rows for one in "ABCD" if one != row.head}
    assert together == set(map(frozenset, itertools.combinations("ABCD", 2)))
    assert all(cell in ("", "1") for row in found.partners.rows for cell in row.cells)
    assert found.verdict.text.endswith("had each partner once.")


def test_partners_that_stay_together():
    same = TABLE.changed(table=(("A", "B", "C", "D"), ("B", "A", "D", "C"), ("A", "B", "D", "C")))
    found = table(*DOUBLES, same, jobs="ABCD")
    assert found.verdict.text == "Not even: A and B are partners three times, A and C never."


def test_the_winner_stays():
    stays = Swap(id="s", on=({"what": "finished"},), moves={"loser": "C", "C": "loser"})
    found = table(*SINGLES, THIRD, stays, jobs="ABC")
    assert found.weight == "open"
    assert cells(found.places) == {"1": ("A", "B", "C"), "2, A wins": ("A", "C", "B"), "2, B wins": ("C", "B", "A")}
    assert cells(found.counts)["C"][1] == "1 to 4"  # waits first; at most every second round of eight


def test_what_cannot_be_told_is_said():
    up = Swap(id="s", on=({"what": "minutes", "count": 8},), moves={"winner": "court up", "loser": "court down"})
    assert table(*SINGLES, up).verdict.text == "Who goes where cannot be told: it goes on on another court."
    lost = table(*SINGLES, THIRD, RING.changed(moves={"A": "C"}), jobs="ABC")
    assert (lost.weight, lost.verdict.text) == ("lost", "Somebody is lost: two people would be C.")
    assert table(*DOUBLES, TABLE, jobs="ABCD", people=3).verdict.text == (
        "The table is for four players, not for three."
    )


def test_ends_and_sides_stand_beside_the_round():
    swap = RING.changed(moves={"A": "B", "B": "A"}, ends=True)
    sides = Swap(id="m", on=({"what": "starts", "count": 10},), mirrored=True)
    notes = [row.note for row in table(*SINGLES, swap, sides, rounds=4).places.rows]
    assert notes == ["", "ends changed", "ends changed, left for right", "ends changed"]


def test_where_nobody_moves_there_is_no_table():
    assert table(*SINGLES) is None
    assert table(*SINGLES, Swap(id="s", on=AFTER_FIVE, ends=True)) is None
    assert table(spot("A", 0.0, -12.0), RING, jobs="A") is None


def test_the_card_counts_for_the_coach_and_not_for_a_player():
    drill = Drill.model_validate_json(sample("doubles-six.drill.json").read_bytes())
    at = main_setting(drill)
    # The drill's own promise in its text: each partner twice, back three times, net three times.
    said = "After six rounds everyone has done each job three times and had each partner twice."
    assert said in [s.text for s in card_words(drill, at, "coach").section("swap").sentences]
    assert said not in [s.text for s in card_words(drill, at, "player").section("swap").sentences]


def test_two_who_change_need_no_telling():
    assert shared_out(told(*SINGLES, RING.changed(moves={"A": "B", "B": "A"}))) == ()
    assert shared_out(told(*SINGLES, THIRD, RING, jobs="ABC", players=(2, 3)))[0].text == (
        "With three players, after three turns everyone has played twice and waited once."
    )


def test_a_total_that_stops_in_the_middle_of_the_turns_says_how_many_starts_are_even():
    # By hand: three jobs, five starts each, make 15.
    end = Finish(id="end", kind="total", starts=20)
    said = shared_out(told(*SINGLES, THIRD, RING, end, jobs="ABC"))[0].text
    assert said == "After three turns everyone has played twice and waited once; 15 or 30 starts are even."
    # Where two play the 20, the three are told what they play in place of it.
    said = shared_out(told(*SINGLES, THIRD, RING, end, jobs="ABC", players=(2, 3)))[0].text
    assert said.startswith("With three players, ")
    assert said.endswith("; play 15 or 30 starts, not 20.")
    assert "even" not in shared_out(told(*SINGLES, THIRD, RING, end.changed(starts=30), jobs="ABC"))[0].text
