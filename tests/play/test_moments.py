"""When swaps come, counted on paper."""

import itertools

from designer.drill.conditions import Event
from designer.drill.rules import Finish, Swap
from designer.drill.setting import EMPTY
from designer.play.moments import moments, period


def swap(id, what, count=None, **values):
    return Swap(id=id, on=(Event(what=what, count=count),), moves={"A": "B", "B": "A"}, **values)


def first(setting, count):
    return [[(each.id, turn) for each, turn in moment] for moment in itertools.islice(moments(setting), count)]


def test_after_five_and_after_ten_starts_come_together_at_ten():
    scene = EMPTY.having(swap("five", "starts", 5), swap("ten", "starts", 10))
    assert first(scene, 4) == [[("five", 1)], [("five", 2), ("ten", 1)], [("five", 3)], [("five", 4), ("ten", 2)]]


def test_a_score_comes_once_a_game_and_before_its_end():
    scene = EMPTY.having(swap("sides", "score", 3), swap("partners", "round"), Finish(id="end", kind="race", to=5))
    assert first(scene, 4) == [[("sides", 1)], [("partners", 1)], [("sides", 2)], [("partners", 2)]]


def test_the_end_of_a_game_of_so_many_starts_comes_with_the_last_of_them():
    scene = EMPTY.having(swap("jobs", "starts", 5), swap("over", "finished"), Finish(id="end", kind="total", starts=10))
    assert first(scene, 2) == [[("jobs", 1)], [("jobs", 2), ("over", 1)]]


def test_nothing_ever_comes_where_nothing_changes():
    assert list(moments(EMPTY)) == []
    assert period(EMPTY) == 1


def test_a_table_comes_round_with_its_rows():
    rows = (("A", "B"), ("B", "A"), ("A", "B"))
    assert period(EMPTY.having(Swap(id="t", on=(Event(what="round"),), table=rows))) == 3
