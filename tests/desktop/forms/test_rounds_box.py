"""Rounds are set by pressing two people, or by typing a letter on one; nobody is in two places at once."""

from random import Random

import pytest
from desktop import hand
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest

from designer.bundle import sample
from designer.desktop.forms.context import Context
from designer.desktop.forms.rounds_box import RoundsBox, exchanged, next_round
from designer.drill.setting import At, setting_at
from designer.storage.reading import open_drill


@pytest.fixture
def box(qtbot, styled):
    made = RoundsBox()
    qtbot.addWidget(made)
    drill = open_drill(sample("volley-four.drill.json")).drill
    at = At("p-four")
    context = Context(drill, at, setting_at(drill, at), Random(7))
    made.values, made.said = [], []

    def follow(value, _=False):
        made.values.append(value)
        made.show_value(value, context)

    made.edited.connect(follow)
    made.refused.connect(made.said.append)
    follow((("A", "B", "C", "D"), ("A", "D", "B", "C")))
    made.resize(320, 200)
    made.show()
    yield made
    made.hide()


def test_two_presses_exchange_two_people(box):
    hand.click(box.seats()[0][1])
    hand.click(box.seats()[0][3])
    assert box.values[-1] == (("A", "D", "C", "B"), ("A", "D", "B", "C"))


def test_a_letter_is_typed_where_the_person_goes_and_keeps_the_keyboard(box):
    box.seats()[1][0].setFocus()
    QTest.keyClick(box.focusWidget(), Qt.Key.Key_Right)
    QTest.keyClicks(box.focusWidget(), "c")
    assert box.values[-1][1] == ("A", "C", "B", "D")
    assert box.focusWidget() is box.seats()[1][1]
    QTest.keyClicks(box.focusWidget(), "x")
    assert "no X" in box.said[-1]
    assert box.values[-1][1] == ("A", "C", "B", "D")


def test_escape_lets_go_of_whoever_was_lifted(box):
    seat = box.seats()[0][0]
    hand.click(seat)
    assert seat.lifted
    QTest.keyClick(seat, Qt.Key.Key_Escape)
    hand.click(box.seats()[0][1])
    assert len(box.values) == 1


def test_added_rounds_give_each_pair_once_as_partners():
    rounds = [("A", "B", "C", "D")]
    for _ in range(2):
        rounds.append(next_round(tuple(rounds), ()))
    pairs = {frozenset(row[half : half + 2]) for row in rounds for half in (0, 2)}
    assert len(pairs) == 6, "four people make six pairs: counted, each with each"
    assert next_round((), ("A", "B")) == ("A", "B")


def test_whoever_comes_in_from_outside_takes_the_place():
    assert exchanged(("A", "B"), 1, "C") == ("A", "C")
