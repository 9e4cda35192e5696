"""Room for those who wait, and balls enough. More cases: ``tests/faults``."""

import pytest
from review.situations import RALLY, keys, spot, told

from designer.drill.conditions import Event
from designer.drill.movement import Shot
from designer.drill.rules import Swap
from designer.review.room import room_cautions


def found(*records, **values):
    return keys(room_cautions(told(*RALLY, *records, **values)))


@pytest.mark.parametrize(
    ("x", "y", "task", "expected"),
    [
        (6.6, 0.3, "waits", ["waits-at-post"]),  # the post is 3 ft outside the doubles line, 6.40 m from the middle
        (-6.6, -0.3, "waits", ["waits-at-post"]),
        (8.9, 0.0, "waits", []),
        (6.6, 0.3, "plays", []),
    ],
)
def test_nobody_waits_at_the_net_post(x, y, task, expected):
    assert found(spot("C", x, y, task=task), jobs="ABC") == expected


def ends(count):
    return Swap(id="swap", on=(Event(what="starts", count=count),), moves={"A": "B", "B": "A"})


def test_balls_that_run_out_before_anybody_stops():
    assert found(ends(10), balls=10) == []
    assert found(ends(11), balls=10) == ["no-collect"]
    second = Shot(id="second", by="B", after="reply", stroke="racket feed")
    assert found(ends(6), second, balls=10) == ["no-collect"]  # two balls a start
    assert found(ends(11)) == []  # how many there are is not said


def test_somebody_who_collects_or_a_word_on_it_is_enough():
    assert found(ends(11), spot("C", 7.0, 12.0, task="collects"), balls=10, jobs="ABC") == []
    assert found(ends(11), balls=10, safety=("Collect after every ten.",)) == []
