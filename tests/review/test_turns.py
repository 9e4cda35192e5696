"""Swaps that lose somebody and turns that are not even, in groups of every size. More cases: ``tests/faults``."""

from review.situations import AT, RALLY, drill, keys, only, spot, told

from designer.drill.conditions import Event
from designer.drill.rules import Swap
from designer.drill.setting import setting_at
from designer.review.turns import turn_checks

C = spot("C", 7.0, -12.0, task="waits")
D = spot("D", -7.0, -12.0, task="waits")


def swap(id="swap", count=5, note="", **moves):
    return Swap(id=id, on=(Event(what="starts", count=count),), moves=moves, note=note)


def found(*records, **values):
    return list(turn_checks(told(*RALLY, *records, **values)))


def test_even_turns_are_not_told_of():
    assert found(swap(A="B", B="A")) == []
    assert found(C, swap(A="B", B="C", C="A"), jobs="ABC", players=(2, 3)) == []
    assert found(C, D, swap(A="C", B="D", C="B", D="A"), jobs="ABCD", players=(2, 4)) == []


def test_nothing_that_moves_and_nobody_to_move():
    assert found() == []
    assert found(C, jobs="ABC") == []


def test_uneven_turns_name_who_and_how_often():
    check = only(found(C, swap(A="C", C="A"), jobs="ABC"), "turns-uneven")
    assert check.sentence.text == "The turns are not even: in two turns whoever begins as A waits once, as B never."
    assert check.about[0] == "swap"
    assert check.mend is None


def test_whoever_never_comes_in_is_asked_for_and_not_told_of_as_well():
    assert found(C, swap(A="B", B="A"), jobs="ABC") == []


def test_a_smaller_group_is_tried_too():
    swaps = (swap(A="B", B="A"), swap("pairs", 10, A="C", B="D", C="A", D="B"))
    assert found(C, D, *swaps, jobs="ABCD", players=(4, 4)) == []
    check = only(found(C, D, *swaps, jobs="ABCD", players=(3, 4)), "turns-uneven")
    assert check.sentence.text.startswith("With three players the turns are not even: ")


def test_what_the_author_writes_of_a_player_over_settles_it():
    assert found(C, swap(A="B", B="A", note="The third player keeps the score."), jobs="ABC") == []


def test_whoever_wins_stays_and_that_is_the_game():
    stays = Swap(id="stays", on=(Event(what="won"),), moves={"loser": "C", "C": "loser"})
    assert found(C, stays, jobs="ABC", players=(3, 3)) == []
    assert keys(found(C, stays.changed(moves={"loser": "C"}), jobs="ABC", players=(3, 3))) == ["swap-loses"]


def test_a_ring_is_closed_by_its_mend():
    whole = drill(*RALLY, C, swap(A="B", B="C"), jobs="ABC", players=(3, 3))
    check = only(found(C, swap(A="B", B="C"), jobs="ABC", players=(3, 3)), "swap-loses")
    assert setting_at(check.mend(whole), AT).swaps["swap"].moves == {"A": "B", "B": "C", "C": "A"}
