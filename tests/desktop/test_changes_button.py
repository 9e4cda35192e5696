"""The count of changes: one press marks them, the chevron lists them, by mouse and by keys."""

from PySide6.QtCore import QPoint, Qt
from PySide6.QtTest import QTest

from designer.desktop.changes_button import ChangesButton

LEFT = Qt.MouseButton.LeftButton


def test_a_press_marks_and_the_chevron_lists(qtbot, styled):
    button = ChangesButton()
    qtbot.addWidget(button)
    button.show_count(4)
    button.resize(button.sizeHint())
    assert button.accessibleName() == "4 changes here; mark them"
    listed = []
    button.listed.connect(lambda: listed.append(True))
    QTest.mouseClick(button, LEFT, pos=QPoint(10, 19))
    assert button.isChecked()
    assert not listed
    QTest.mouseClick(button, LEFT, pos=QPoint(button.width() - 6, 19))
    assert listed == [True]
    assert button.isChecked(), "listing them does not unmark them"
    QTest.keyClick(button, Qt.Key.Key_Down, Qt.KeyboardModifier.AltModifier)
    assert listed == [True, True]


def test_it_counts_one_and_goes_with_the_last(qtbot, styled):
    button = ChangesButton()
    qtbot.addWidget(button)
    button.show_count(1)
    assert button.text() == "1 change"
    button.show_count(0)
    assert button.isHidden()
