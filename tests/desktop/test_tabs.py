"""The progressions over the court: chosen, named in place, added by the plus."""

from desktop import hand
from PySide6.QtCore import QEvent, QPoint, QPointF, Qt
from PySide6.QtGui import QFocusEvent, QHelpEvent, QKeyEvent, QMouseEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication

from designer.drill.edits import move
from designer.drill.setting import At, setting_at
from designer.wording.changes import changes_in_words


def test_each_tab_says_its_number_its_name_and_what_it_changes(wide_kept):
    window = wide_kept
    tabs = window.tabs.tabs()
    assert [(tab.number, tab.name) for tab in tabs] == [
        (number, progression.name) for number, progression in enumerate(window.document.drill.progressions, 1)
    ]
    assert all(tab.changes for tab in tabs[1:])
    assert tabs[1].accessibleName().startswith("Progression 2, Fed, then open: ")
    QApplication.sendEvent(tabs[1], QHelpEvent(QEvent.Type.ToolTip, QPoint(5, 5), QPoint(5, 5)))
    changes = changes_in_words(window.document.drill, At("p-fed"))
    assert len(changes) > 1
    assert all(change.text in tabs[1].toolTip() for change in changes)
    for label in QApplication.topLevelWidgets():
        if label.objectName() == "qtooltip_label":
            label.hide()


def test_a_press_shows_that_progression(wide_kept):
    window = wide_kept
    hand.click(window.tabs.tabs()[2])
    assert window.view.at == At("p-points")
    assert [tab.isChecked() for tab in window.tabs.tabs()] == [False, False, True, False]


def test_the_plus_adds_one_after_the_one_in_view_and_asks_for_its_name(window, qtbot):
    with qtbot.waitSignal(window.tabs.menu_wanted):
        hand.click(window.tabs.plus)
    menu = QApplication.activePopupWidget()
    menu.actions()[0].trigger()
    menu.close()
    hand.write(window.tabs._box, "Points")
    hand.key(window.tabs._box, Qt.Key.Key_Return)
    assert [progression.name for progression in window.document.drill.progressions] == ["", "Points"]
    assert window.view.at.progression == window.document.drill.progressions[1].id
    window.actions_by_name["undo"].trigger()
    window.actions_by_name["undo"].trigger()
    hand.settle()
    assert len(window.tabs.tabs()) == 1


def test_a_name_that_is_only_looked_at_leaves_the_variation_in_view_and_no_box_behind(wide_kept):
    window, easier = wide_kept, At("p-fed", "v-one-racket")
    window.view.go_to(easier)
    tab = window.tabs.tabs()[1]
    escape = QKeyEvent(QEvent.Type.KeyPress, Qt.Key.Key_Escape, Qt.KeyboardModifier.NoModifier)
    for leave in (escape, QFocusEvent(QEvent.Type.FocusOut, Qt.FocusReason.MouseFocusReason)):
        hand.click(tab)
        QTest.mouseDClick(tab, Qt.MouseButton.LeftButton)
        QApplication.sendEvent(window.tabs._box, leave)
        assert window.tabs._box is None
    assert window.view.at == easier
    assert window.document.clean


def test_escape_leaves_the_name_as_it_was(wide_kept):
    window = wide_kept
    window.actions_by_name["progression rename"].trigger()
    hand.write(window.tabs._box, "Other")
    hand.key(window.tabs._box, Qt.Key.Key_Escape)
    assert window.tabs._box is None
    assert window.document.clean


def test_a_person_or_a_side_in_a_name_follows_the_drill_and_the_tab_has_the_keyboard_again(wide_kept):
    wide_kept.tabs.rename()
    box = wide_kept.focusWidget()
    box.clear()
    hand.write(box, "B to the left")
    hand.key(box, Qt.Key.Key_Return)
    tab = next(tab for tab in wide_kept.tabs.tabs() if tab.isChecked())
    named = next(each for each in wide_kept.document.drill.progressions if each.id == tab.progression)
    assert named.name == "{B} to the {left}"
    assert tab.name == "B to the left"
    hand.key(tab, Qt.Key.Key_Left)
    assert wide_kept.view.at.progression == "p-together"
    assert wide_kept.focusWidget() is wide_kept.tabs.tabs()[0]


def test_tabs_stay_inside_the_row_however_many_there_are(window):
    for _ in range(9):
        window.actions_by_name["progression copy"].trigger()
    hand.settle()
    last = window.tabs.tabs()[-1].geometry()
    assert len(window.tabs.tabs()) == 10
    assert last.right() < window.tabs.plus.x() <= window.tabs.width() - window.tabs.plus.width()
    assert all(tab.width() >= 40 for tab in window.tabs.tabs())


def drag_tab(tab, by, *, let_go=True):
    """Takes a tab in its middle and moves it sideways by so many pixels."""
    start = QPointF(tab.rect().center())
    place = QPointF(tab.mapToGlobal(tab.rect().center()))
    left, none, plain = Qt.MouseButton.LeftButton, Qt.MouseButton.NoButton, Qt.KeyboardModifier.NoModifier
    send = QApplication.sendEvent
    send(tab, QMouseEvent(QEvent.Type.MouseButtonPress, start, place, left, left, plain))
    for share in (0.3, 0.7, 1.0):
        there = place + QPointF(by * share, 0)
        send(tab, QMouseEvent(QEvent.Type.MouseMove, start, there, none, left, plain))
    if let_go:
        send(tab, QMouseEvent(QEvent.Type.MouseButtonRelease, start, place + QPointF(by, 0), left, none, plain))
    hand.settle()


def test_a_tab_is_dragged_to_another_place_in_the_order_and_every_setting_stays_as_it_was(wide_kept):
    window = wide_kept
    before = window.document.drill
    ids = [progression.id for progression in before.progressions]
    tabs = window.tabs.tabs()
    drag_tab(tabs[0], 2.2 * (tabs[1].x() - tabs[0].x()))
    after = window.document.drill
    assert [progression.id for progression in after.progressions] == [ids[1], ids[2], ids[0], ids[3]]
    assert window.document.stack.undoText() == "Change the order of the progressions"
    assert all(setting_at(after, At(id)) == setting_at(before, At(id)) for id in ids)
    assert [tab.x() for tab in window.tabs.tabs()] == sorted(tab.x() for tab in window.tabs.tabs())
    window.actions_by_name["undo"].trigger()
    assert window.document.drill == before


def test_a_drag_that_is_left_or_goes_nowhere_changes_nothing(wide_kept):
    window = wide_kept
    first, second = window.tabs.tabs()[:2]
    places = [tab.x() for tab in window.tabs.tabs()]
    drag_tab(second, 300, let_go=False)
    hand.key(second, Qt.Key.Key_Escape)
    assert [tab.x() for tab in window.tabs.tabs()] == places
    drag_tab(first, 8)
    drag_tab(first, -400)
    assert window.document.clean


def test_each_tab_has_a_picture_of_its_setting_drawn_while_nothing_is_dragged(wide_kept, qtbot):
    window = wide_kept
    tabs = window.tabs.tabs()
    qtbot.waitUntil(lambda: all(tab.picture is not None for tab in tabs))
    old = [tab.picture.toImage() for tab in tabs]
    at = window.view.at
    spot = window.view.setting.spot_of("A")
    window.document.preview(move(window.document.drill, at, {spot.id}, (3.0, 3.0)))
    window.tabs._drawing.timeout.emit()
    assert [tab.picture.toImage() for tab in tabs] == old
    window.document.perform("Move A", window.document.shown)
    number = [progression.id for progression in window.document.drill.progressions].index(at.progression)
    qtbot.waitUntil(lambda: tabs[number].picture.toImage() != old[number])
    assert tabs[0].picture.toImage() == old[0]  # nothing before it has changed


def test_a_progression_that_is_taken_back_is_not_drawn_any_more(wide_kept):
    wide_kept.actions_by_name["progression copy"].trigger()
    hand.settle()
    count = len(wide_kept.tabs.tabs())
    wide_kept.document.undo()
    wide_kept.tabs._draw_one()  # its time may come before the tab is gone
    hand.settle()
    assert len(wide_kept.tabs.tabs()) == count - 1
