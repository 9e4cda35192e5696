"""Easier, as set, harder: chosen, added where there is none, listed where there are several."""

from desktop import hand
from PySide6.QtCore import QPoint, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication

from designer.drill.setting import At


def test_where_there_is_none_a_press_offers_one_and_shows_it(window):
    harder = window.degrees.button("harder")
    assert harder.empty
    hand.click(harder)
    menu = QApplication.activePopupWidget()
    next(action for action in menu.actions() if "to change by hand" in action.text()).trigger()
    menu.close()
    progression = window.document.drill.progressions[0]
    assert len(progression.harder) == 1
    assert window.view.at == At(progression.id, progression.harder[0].id)
    assert window.degrees.button("harder").isChecked()
    hand.click(window.degrees.button(None))
    assert window.view.at == At(progression.id)
    QTest.mouseClick(harder, Qt.MouseButton.LeftButton, pos=QPoint(6, 19))
    assert window.view.at.variation == progression.harder[0].id
    assert len(window.document.drill.progressions[0].harder) == 1


def test_several_are_listed_with_what_each_changes(wide_kept):
    window = wide_kept
    easier = window.document.drill.progressions[1].easier
    assert len(easier) > 1
    menu = window.degrees.menu("easier")
    entries = [action for action in menu.actions() if action.isCheckable()]
    assert len(entries) == len(easier)
    assert all(action.text().strip() for action in entries)
    entries[1].trigger()
    assert window.view.at == At("p-fed", easier[1].id)
    assert window.degrees.button("easier").isChecked()


def test_each_says_what_it_changes(wide_kept):
    window = wide_kept
    assert window.degrees.button("harder").changes
    assert window.degrees.button("harder").changes in window.degrees.button("harder").accessibleName()
    assert window.degrees.button("others").isHidden() == (not window.document.drill.progressions[1].others)


def test_a_variation_is_removed_and_its_progression_shown(window):
    window.actions_by_name["variation easier"].trigger()
    window.actions_by_name["variation remove"].trigger()
    assert window.document.drill.progressions[0].easier == ()
    assert window.view.at.variation is None
    assert not window.actions_by_name["variation remove"].isEnabled()
