"""Cues, what to watch for and cautions are written where they stand, by keys, each go of typing one step."""

import pytest
from desktop import hand
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest

from designer.desktop.column.writer import place_of


@pytest.fixture
def wide(wide_kept):
    yield wide_kept
    if wide_kept.column.written is not None:
        wide_kept.column.written.end()


def key(window, code):
    QTest.keyClick(window.focusWidget(), code)
    hand.settle()


def keys(window, text):
    QTest.keyClicks(window.focusWidget(), text)
    hand.settle()


def cue(window, number):
    return window.column.row(f"cues cue:{number}")


def steps(window):
    return window.document.stack.index()


def test_a_new_drill_gets_its_cues_by_keys_alone(window):
    window.column.ask_all = True
    window.column.refresh()
    question = hand.sentence(window, "What do you say to the players")
    question.setFocus()
    key(window, Qt.Key.Key_Return)
    keys(window, "High first.")
    key(window, Qt.Key.Key_Return)
    keys(window, "Then run.")
    assert window.document.drill.cues == ("High first.", "Then run.")
    assert steps(window) == 2
    key(window, Qt.Key.Key_Tab)
    assert window.column.written is None
    assert [cue(window, n).sentence.text for n in (1, 2)] == ["High first.", "Then run."]


def test_a_pressed_cue_has_the_caret_where_it_stands(wide):
    place = cue(wide, 1).y()
    hand.click(cue(wide, 1))
    assert cue(wide, 1) is None
    assert wide.focusWidget().y() == place
    assert wide.focusWidget().toPlainText() == "High and cross, then run."
    keys(wide, " Now.")
    assert wide.document.drill.cues[0] == "High and cross, then run. Now."


def test_enter_between_two_begins_one_there_and_backspace_takes_it_away(wide):
    before = wide.document.drill.cues
    hand.click(cue(wide, 1))
    key(wide, Qt.Key.Key_Return)
    keys(wide, "x")
    assert wide.document.drill.cues == (before[0], "x", *before[1:])
    key(wide, Qt.Key.Key_Backspace)
    assert wide.document.drill.cues == before
    key(wide, Qt.Key.Key_Backspace)
    assert wide.focusWidget().toPlainText() == before[0]


def test_escape_takes_back_what_was_typed_and_keeps_the_place(wide):
    before, done = wide.document.drill, steps(wide)
    hand.click(cue(wide, 2))
    keys(wide, " And again.")
    assert steps(wide) == done + 1
    key(wide, Qt.Key.Key_Escape)
    assert wide.document.drill == before
    assert wide.focusWidget() is cue(wide, 2)


def test_undo_is_followed_while_one_writes(wide):
    hand.click(cue(wide, 1))
    keys(wide, "!")
    wide.actions_by_name["undo"].trigger()
    hand.settle()
    assert wide.focusWidget().toPlainText() == "High and cross, then run."


def test_a_caution_shows_no_braces_and_keeps_its_tokens(wide):
    hand.click(wide.column.row("care care:1"))
    assert wide.focusWidget().toPlainText().startswith("Nothing between A's right singles line")
    keys(wide, " B looks left.")
    assert wide.document.drill.safety[0].startswith("Nothing between {A}'s {right} singles line")
    assert wide.document.drill.safety[0].endswith("{B} looks {left}.")


def test_only_texts_of_the_coach_s_own_are_written_in_place():
    assert place_of("care care:2") == ("care", 1)
    assert place_of("care care:stop") is place_of("care care:accepted:1") is place_of("rules rule:1") is None
