"""A note is written where it stands on the court: by a double press, by Enter, and as soon as it is put down."""

import pytest
from desktop import hand
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest

from designer.desktop.canvas.placing import NEW_NOTE
from designer.drill import edits
from designer.drill.base import Place
from designer.drill.items import Note

AT = (2.0, -3.0)


@pytest.fixture
def window(blank_kept):
    yield blank_kept
    if blank_kept.deeds.edit.note is not None:
        blank_kept.deeds.edit.note.finish()


@pytest.fixture
def noted(window):
    note = Note(kind="note", id="note-1", place=Place(at=AT), text="Wait {left}")
    window.document.perform("Note", edits.put(window.document.drill, window.view.at, note))
    hand.settle()
    return window


def text(window):
    return window.view.setting.items["note-1"].text


def editor(window):
    return window.deeds.edit.note


def test_enter_writes_the_note_that_is_picked_and_enter_ends_it(noted):
    noted.view.select(["note-1"])
    hand.key(noted.canvas, Qt.Key.Key_Return)
    assert editor(noted).toPlainText() == "Wait left"
    done = noted.document.stack.index()
    QTest.keyClicks(editor(noted), " of B")
    assert noted.document.stack.index() == done + 1
    assert text(noted) == "Wait {left} of B", "there is no B in this drill"
    QTest.keyClick(editor(noted), Qt.Key.Key_Return)
    assert editor(noted) is None
    assert noted.column.form is None


def test_a_double_press_puts_the_caret_over_the_words_and_escape_takes_back(noted):
    before = noted.document.drill
    noted.canvas.opened.emit("note-1")
    assert editor(noted).geometry().contains(noted.canvas.rectangle_of(["note-1"]).center().toPoint())
    QTest.keyClicks(editor(noted), "!")
    QTest.keyClick(editor(noted), Qt.Key.Key_Escape)
    assert noted.document.drill == before
    assert editor(noted) is None


def test_a_note_that_is_put_down_is_written_at_once_and_goes_when_left_empty(window):
    window.view.set_tool("note")
    hand.press(window.canvas, AT)
    assert editor(window).textCursor().selectedText() == NEW_NOTE
    QTest.keyClick(editor(window), Qt.Key.Key_Backspace)
    QTest.keyClick(editor(window), Qt.Key.Key_Return)
    hand.settle()
    assert not window.view.setting.items
    assert editor(window) is None
