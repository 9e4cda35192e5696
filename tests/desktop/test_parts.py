"""The keyboard from part to part of a real window."""

from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication


def part_of(window):
    now = QApplication.focusWidget()
    parts = (window.canvas, window.column, window.bottom, window.tabs, window.strip)
    return next((part for part in parts if part is now or part.isAncestorOf(now)), None)


def test_f6_goes_round_the_parts_and_finds_in_each_where_it_was(make_window, document, qtbot):
    window = make_window(document)
    window.activateWindow()
    window.canvas.setFocus()
    qtbot.waitUntil(window.canvas.hasFocus)
    went = []
    for _ in range(5):
        window.actions_by_name["next part"].trigger()
        went.append(part_of(window))
    assert went == [window.column, window.bottom, window.tabs, window.strip, window.canvas]
    window.actions_by_name["part before"].trigger()
    QTest.keyClick(QApplication.focusWidget(), Qt.Key.Key_Tab)
    left = QApplication.focusWidget()
    assert part_of(window) is window.strip
    window.actions_by_name["next part"].trigger()
    window.actions_by_name["part before"].trigger()
    assert QApplication.focusWidget() is left
    window.show_strip(shown=False)
    window.actions_by_name["part before"].trigger()
    window.canvas.setFocus(Qt.FocusReason.OtherFocusReason)
    window.actions_by_name["part before"].trigger()
    assert part_of(window) is window.tabs  # what is folded away is left out
    window.show_strip(shown=True)
