"""Text written where it is read: as tall as its lines, dressed away from the keyboard, one line where it is a title."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QGuiApplication
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QPushButton, QVBoxLayout, QWidget

from designer.desktop.column.place_text import PlaceText
from designer.desktop.fonts import font

LONG = "Pulled wide, I buy time with height and depth, get back, then play the point."


@pytest.fixture
def place(qtbot, styled):
    """A text on a page with another control to go to."""
    page = QWidget()
    qtbot.addWidget(page)
    made = PlaceText("What is it called?", font(14), 20, balanced=True, dressed=lambda text: f"“{text}”")
    layout = QVBoxLayout(page)
    layout.addWidget(made)
    made.other = QPushButton("other")
    layout.addWidget(made.other)
    layout.addStretch(1)
    page.resize(420, 300)
    page.show()
    page.activateWindow()
    qtbot.waitActive(page)
    made.other.setFocus()
    made.told = []
    made.typed.connect(made.told.append)
    yield made
    page.hide()


def test_each_letter_is_told(place):
    place.setFocus()
    QTest.keyClicks(place, "Hi")
    assert place.told == ["H", "Hi"]
    assert place.value == "Hi"


def test_it_is_dressed_only_while_it_is_read(place):
    place.show_text("I get back.")
    assert place.toPlainText() == "“I get back.”"
    place.setFocus()
    assert place.toPlainText() == "I get back."
    place.other.setFocus()
    assert place.toPlainText() == "“I get back.”"
    assert place.told == []


def test_it_is_as_tall_as_its_lines(place):
    place.show_text("Short.")
    short = place.height()
    place.show_text(LONG)
    assert place.height() > short
    place.show_text("")
    assert place.height() == short


def test_lines_are_of_nearly_one_length(place):
    place.show_text(LONG)
    full = place.width() - 28
    assert place.viewportMargins().right() > 14 + full * 0.1
    place.setFocus()
    assert place.viewportMargins().right() == 14


def test_what_is_typed_is_not_replaced_under_the_hand(place):
    place.setFocus()
    QTest.keyClicks(place, "Deep")
    place.moveCursor(place.textCursor().MoveOperation.Start)
    place.show_text("Deep")
    assert place.textCursor().position() == 0


def test_pasted_lines_become_one(place):
    QGuiApplication.clipboard().setText("Deep\nand wide")
    place.setFocus()
    place.paste()
    assert place.value == "Deep and wide"


def test_enter_goes_on_and_escape_lets_go(place):
    place.setFocus()
    QTest.keyClick(place, Qt.Key.Key_Return)
    assert place.other.hasFocus()
    place.setFocus()
    QTest.keyClick(place, Qt.Key.Key_Escape)
    assert not place.hasFocus()


def test_the_question_is_told_and_seen_while_there_is_no_text(place):
    assert place.accessibleName() == "What is it called?"
    empty = place.grab().toImage()
    place.show_text(" ")
    assert place.grab().toImage() != empty


def test_markup_is_text(place):
    place.show_text("<b>Deep</b>")
    place.setFocus()
    assert place.toPlainText() == "<b>Deep</b>"
