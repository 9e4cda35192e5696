"""The court as a screen reader finds it: everything here is asked of Qt's own tree."""

import gc

import pytest
from desktop.canvas.conftest import a_drill
from desktop.canvas.mouse import shown
from PySide6.QtCore import QCoreApplication, QEvent, Qt
from PySide6.QtGui import QAccessible

from designer.drill.base import place
from designer.drill.edits import delete, put
from designer.drill.items import Cone

NAME, HELP = QAccessible.Text.Name, QAccessible.Text.Help


@pytest.fixture
def canvas(qtbot):
    made = shown(qtbot, a_drill())
    yield made
    made.hide()


def court_of(canvas):
    return QAccessible.queryAccessibleInterface(canvas)


def names(canvas):
    court = court_of(canvas)
    return [court.child(index).text(NAME) for index in range(court.childCount())]


def put_cone(canvas, id, x, y):
    drill = put(canvas.document.drill, canvas.view.at, Cone(kind="cone", id=id, place=place(x, y)))
    canvas.document.perform("Add a cone", drill)


def test_everything_on_the_court_stands_in_the_tree_with_where_it_is(canvas):
    court = court_of(canvas)
    assert court.role() == QAccessible.Role.List
    assert court.text(NAME) == "Court"
    assert "Player B, just behind the centre mark" in names(canvas)
    assert court.childCount() == len(canvas.view.setting.ids())


def test_the_second_cone_is_told_from_the_first_by_number_and_place(canvas):
    assert sum(name.startswith("Cone, ") for name in names(canvas)) == 1
    put_cone(
        canvas, "cone-2", -2.7432, -10.9728
    )  # 2 rackets of 27 in from the singles line at 13.5 ft, 1 yd inside 39 ft
    assert "Cone 2, 2 rackets in from the left singles line, 1 stride inside the baseline" in names(canvas)
    canvas.document.perform("Delete", delete(canvas.document.drill, canvas.view.at, ("cone",)))
    assert [name for name in names(canvas) if name.startswith("Cone")] == [
        "Cone, 2 rackets in from the left singles line, 1 stride inside the baseline"
    ]
    canvas.document.undo()
    assert sum(name.startswith("Cone") for name in names(canvas)) == 2
    canvas.view.set_units("metres")
    assert any(name.startswith("Cone 2, ") and " m " in name for name in names(canvas))


def test_a_screen_reader_finds_a_thing_by_place_and_the_place_of_a_thing(canvas):
    court = court_of(canvas)
    thing = court.child(0)
    middle = thing.rect().center()
    assert canvas.viewport().rect().contains(canvas.viewport().mapFromGlobal(middle))
    assert court.indexOfChild(court.childAt(middle.x(), middle.y())) == 0
    assert court.indexOfChild(thing) == 0
    assert thing.parent().text(NAME) == "Court"
    assert "Enter" in thing.text(HELP)


def test_a_thing_is_picked_opened_and_asked_for_its_menu_from_the_tree(canvas, qtbot):
    thing = court_of(canvas).child(0)
    assert not thing.state().selected
    deeds = thing.actionInterface()
    deeds.doAction(deeds.setFocusAction())
    assert canvas.view.selection == {thing.id}
    assert thing.state().selected
    with qtbot.waitSignal(canvas.opened) as opened:
        deeds.doAction(deeds.pressAction())
    assert opened.args == [thing.id]
    with qtbot.waitSignal(canvas.menu_wanted):
        deeds.doAction("ShowMenu")


def test_whoever_listens_is_told_where_the_keyboard_has_come(canvas, qtbot, monkeypatch):
    told = []
    monkeypatch.setattr("designer.desktop.canvas.court_canvas.go_to", lambda _, id: told.append(id) or True)
    canvas.activateWindow()
    canvas.setFocus(Qt.FocusReason.TabFocusReason)
    qtbot.waitUntil(canvas.hasFocus)
    canvas.view.select(("cone",))
    canvas.view.select(("cone", "line"))
    assert told == ["cone"], "several are told in words"


def test_courts_come_and_go_while_somebody_listens(canvas, qtbot):
    """What Python made and Qt deletes must never be touched again: a fault here ends the process."""
    for number in range(6):
        other = shown(qtbot, a_drill())
        held = court_of(other)
        words = names(other)
        put_cone(other, f"cone-{number}", 1.0, -3.0)
        assert len(names(other)) == len(words) + 1
        gc.collect()
        other.close()
        other.deleteLater()
        QCoreApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete)
        del held, other
        gc.collect()
    assert "Player B, just behind the centre mark" in names(canvas)
