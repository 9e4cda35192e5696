"""A name is taken with Enter and left as it was with Esc."""

from PySide6.QtCore import Qt
from PySide6.QtTest import QTest

from designer.desktop.name_box import NameBox


def test_escape_says_that_nothing_was_typed(qtbot, styled):
    box = NameBox("Together")
    qtbot.addWidget(box)
    QTest.keyClicks(box, "!")
    assert box.isModified()
    QTest.keyClick(box, Qt.Key.Key_Escape)
    assert not box.isModified()
