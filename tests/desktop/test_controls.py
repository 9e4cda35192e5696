"""Controls of the window's own: by mouse and by keys, and told to whoever listens."""

import pytest
from PySide6.QtCore import QPoint, QPointF, Qt
from PySide6.QtGui import QWheelEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QWidget

from designer.desktop.controls import CheckBox, DropDown, FilledButton, IconButton, Link, Segments, fill, stacked

LEFT = Qt.MouseButton.LeftButton


@pytest.fixture
def choice(qtbot, styled):
    made = Segments((("in", "in"), ("out", "out")))
    qtbot.addWidget(made)
    made.taken = []
    made.chosen.connect(made.taken.append)
    return made


def test_one_of_several_is_taken_and_taken_back(choice):
    inside, outside = choice.segments()
    QTest.mouseClick(inside, LEFT)
    QTest.mouseClick(outside, LEFT)
    QTest.mouseClick(outside, LEFT)
    assert choice.taken == [("in",), ("out",), ()]


def test_an_arrow_goes_along_the_words_and_space_takes_the_one_it_came_to(choice):
    inside, outside = choice.segments()
    inside.setFocus()
    QTest.keyClick(choice.focusWidget(), Qt.Key.Key_Right)
    assert choice.focusWidget() is outside
    assert choice.taken == []
    QTest.keyClick(choice.focusWidget(), Qt.Key.Key_Space)
    QTest.keyClick(choice.focusWidget(), Qt.Key.Key_Right)
    QTest.keyClick(choice.focusWidget(), Qt.Key.Key_Return)
    assert choice.taken == [("out",), ("in",)]


def test_what_must_be_chosen_cannot_be_taken_back(qtbot, styled):
    made = Segments((("in", "in"), ("out", "out")), may_be_empty=False)
    qtbot.addWidget(made)
    made.show_values(("in",))
    QTest.mouseClick(made.segments()[0], LEFT)
    assert made.segments()[0].isChecked()


def test_some_of_many(qtbot, styled):
    made = Segments(((1, "1"), (2, "2"), (3, "3")), many=True)
    qtbot.addWidget(made)
    taken = []
    made.chosen.connect(taken.append)
    for number in (0, 2, 0):
        QTest.mouseClick(made.segments()[number], LEFT)
    assert taken == [(1,), (1, 3), (3,)]


def test_the_usual_answer_is_offered_only_while_none_is_given(choice):
    inside, outside = choice.segments()
    choice.show_values((), usual=("in",))
    assert (inside.usual, inside.isChecked()) == (True, False)
    assert inside.accessibleDescription() == "the usual answer, not taken yet"
    choice.show_values(("out",), usual=("in",))
    assert (inside.usual, outside.isChecked()) == (False, True)


def test_a_choice_is_made_by_the_space_bar(choice):
    QTest.keyClick(choice.segments()[1], Qt.Key.Key_Space)
    assert choice.taken == [("out",)]


def test_the_wheel_scrolls_past_a_drop_down(qtbot, styled):
    box = DropDown()
    qtbot.addWidget(box)
    fill(box, [("a", "first"), ("b", "second")], "a")
    turn = QWheelEvent(
        QPointF(5, 5),
        QPointF(5, 5),
        QPoint(0, -120),
        QPoint(0, -120),
        Qt.MouseButton.NoButton,
        Qt.KeyboardModifier.NoModifier,
        Qt.ScrollPhase.NoScrollPhase,
        False,
    )
    QApplication.sendEvent(box, turn)
    assert box.currentData() == "a"
    assert not turn.isAccepted()


def test_a_value_that_is_not_there_any_more_is_kept_and_said(qtbot, styled):
    box = DropDown()
    qtbot.addWidget(box)
    fill(box, [("a", "first")], "gone")
    assert box.currentData() == "gone"
    assert box.currentText() == "gone (not there)"
    fill(box, [("a", "first"), ("b", "second")], "b")
    assert [box.itemText(n) for n in range(box.count())] == ["first", "second"]


@pytest.mark.parametrize(
    "make",
    [
        lambda: CheckBox("must never"),
        lambda: IconButton("plus", "Add"),
        lambda: Link("More"),
        lambda: FilledButton("Print"),
    ],
)
def test_a_button_has_a_name_a_size_for_fingers_and_works_by_keys(qtbot, styled, make):
    button = make()
    qtbot.addWidget(button)
    button.adjustSize()
    assert button.accessibleName()
    # WCAG 2.2, success criterion 2.5.8: targets of at least 24 by 24.
    assert min(button.width(), button.height()) >= 24
    with qtbot.waitSignal(button.clicked):
        QTest.keyClick(button, Qt.Key.Key_Space)


def test_stacked_widgets_have_no_margins(qtbot):
    holder = QWidget()
    qtbot.addWidget(holder)
    layout = stacked(holder, 3)
    assert layout.contentsMargins().left() == 0
    assert layout.spacing() == 3
