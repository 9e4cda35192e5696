"""The progressions over the court: chosen, named in place, added by the plus."""

from desktop import hand
from PySide6.QtCore import QEvent, QPoint, Qt
from PySide6.QtGui import QHelpEvent
from PySide6.QtWidgets import QApplication, QToolTip

from designer.bundle import sample
from designer.desktop.document import Document
from designer.drill.setting import At
from designer.storage.reading import open_drill
from designer.wording.changes import changes_in_words


def opened(make_window):
    path = sample("wide-start.drill.json")
    drill = open_drill(path)
    return make_window(Document(drill.drill, path=path), drill)


def test_each_tab_says_its_number_its_name_and_what_it_changes(make_window):
    window = opened(make_window)
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
    QToolTip.hideText()


def test_a_press_shows_that_progression(make_window):
    window = opened(make_window)
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


def test_escape_leaves_the_name_as_it_was(make_window):
    window = opened(make_window)
    window.actions_by_name["progression rename"].trigger()
    hand.write(window.tabs._box, "Other")
    hand.key(window.tabs._box, Qt.Key.Key_Escape)
    assert window.tabs._box is None
    assert window.document.clean


def test_tabs_stay_inside_the_row_however_many_there_are(window):
    for _ in range(9):
        window.actions_by_name["progression copy"].trigger()
    hand.settle()
    last = window.tabs.tabs()[-1].geometry()
    assert len(window.tabs.tabs()) == 10
    assert last.right() < window.tabs.plus.x() <= window.tabs.width() - window.tabs.plus.width()
    assert all(tab.width() >= 40 for tab in window.tabs.tabs())
