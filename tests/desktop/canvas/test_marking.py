import pytest
from PySide6.QtCore import Qt

from designer.desktop.canvas import marking


def press(hand, letter):
    return hand.key(getattr(Qt.Key, f"Key_{letter}"), letter, shift=True)


@pytest.mark.parametrize(("letter", "marked", "words"), marking.MARKS)
def test_one_press_marks_lines_and_areas_together(hand, letter, marked, words):
    hand.view.select(("line", "zone", "cone"))
    assert press(hand, letter)
    assert {hand.setting.items[id].marked for id in ("line", "zone")} == {marked}
    assert hand.undo_text == f"Mark 2 items: {words.lower()}"
    assert hand.document.stack.count() == 1
    # 3 m: discs three rackets (2.0574 m) apart are three; throw-down lines every 4 ft (1.2192 m) are three.
    assert hand.setting.items["line"].pieces == {"discs": 3, "throw-down": 3}.get(marked)


def test_with_nothing_to_mark_the_letter_means_what_it_always_does(hand):
    hand.view.select(("cone",))
    assert press(hand, "L")
    assert hand.view.tool == "line"


def test_a_line_runs_on_and_ends_again(hand):
    hand.view.select(("line",))
    assert press(hand, "R")
    assert hand.setting.items["line"].runs_on
    assert hand.undo_text == "Imagine line longer at both ends"
    assert press(hand, "R")
    assert not hand.setting.items["line"].runs_on
    assert not marking.run_on_picked(hand.bench) or hand.view.selection == {"line"}


def test_an_area_takes_another_form_as_one_step(hand):
    hand.view.select(("zone",))
    assert marking.form_picked(hand.bench, "ellipse")
    assert hand.setting.items["zone"].shape.form == "ellipse"
    assert hand.undo_text == "Make area round"
    hand.view.select(("cone",))
    assert not marking.form_picked(hand.bench, "ellipse")
