import random

import pytest
from desktop.canvas.mouse import LEFT, MIDDLE, NONE, RIGHT, at, click, drag, moves, press, release
from PySide6.QtCore import QPoint, QPointF, Qt
from PySide6.QtGui import (
    QContextMenuEvent,
    QDragEnterEvent,
    QDragMoveEvent,
    QDropEvent,
)
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QMainWindow, QPushButton, QVBoxLayout, QWidget

from designer.bundle import sample
from designer.desktop.canvas.court_canvas import CourtCanvas
from designer.desktop.canvas.drop import item_mime
from designer.desktop.document import Document
from designer.desktop.view import View
from designer.drill.drill import Drill


@pytest.mark.parametrize("button", [MIDDLE, RIGHT])
def test_the_other_buttons_pan(canvas, button):
    canvas.zoom(2.0, QPointF(350, 450))
    before = canvas.to_pixel((0.0, 0.0))
    drag(canvas, QPointF(300, 300), QPointF(340, 370), button)
    after = canvas.to_pixel((0.0, 0.0))
    assert (after.x() - before.x(), after.y() - before.y()) == pytest.approx((40, 70), abs=1.01)
    assert canvas.document.stack.count() == 0


def test_space_held_pans_with_the_first_button(qtbot, canvas):
    canvas.zoom(2.0, QPointF(350, 450))
    before = canvas.to_pixel((0.0, 0.0))
    qtbot.keyPress(canvas, Qt.Key.Key_Space)
    drag(canvas, QPointF(300, 300), QPointF(340, 370))
    qtbot.keyRelease(canvas, Qt.Key.Key_Space)
    assert canvas.to_pixel((0.0, 0.0)).x() == pytest.approx(before.x() + 40, abs=1.01)
    assert canvas.view.selection == frozenset()


def test_a_thing_is_dragged_where_the_hand_goes(canvas):
    canvas.view.set_snapping(False)
    start = canvas.to_pixel(at(canvas, "spot-b"))
    drag(canvas, start, start + QPointF(40, -20))
    scale = canvas.pixels_per_metre
    assert at(canvas, "spot-b") == pytest.approx((40 / scale, 12.8016 + 20 / scale), abs=0.02)
    assert canvas.document.stack.undoText() == "Move player B"


@pytest.mark.parametrize("held", [Qt.KeyboardModifier.ControlModifier, Qt.KeyboardModifier.AltModifier])
def test_a_drag_with_ctrl_or_alt_held_leaves_the_thing_and_moves_a_copy(canvas, held):
    canvas.view.set_snapping(False)
    before = at(canvas, "balls")
    start = canvas.to_pixel(before)
    drag(canvas, start, start + QPointF(-30, 60), keys=held)
    (copy,) = canvas.view.selection
    scale = canvas.pixels_per_metre
    assert at(canvas, "balls") == before
    assert at(canvas, copy) == pytest.approx((before[0] - 30 / scale, before[1] - 60 / scale), abs=0.02)
    assert canvas.document.stack.undoText() == "Duplicate basket"
    canvas.document.undo()
    assert canvas.view.setting.find(copy) is None


def test_handles_are_pulled(canvas):
    canvas.view.set_snapping(False)
    canvas.view.select(("reply",))
    end = canvas.to_pixel(at(canvas, "reply"))
    drag(canvas, end, end + QPointF(10, 25))
    assert canvas.document.stack.undoText() == "Move the landing of ball"
    scale = canvas.pixels_per_metre
    assert canvas.to_pixel(at(canvas, "reply")).y() == pytest.approx(end.y() + 25, abs=0.05 * scale)


def test_a_band_is_drawn_on_bare_ground(canvas):
    drag(canvas, canvas.to_pixel((-2.0, -16.5)), canvas.to_pixel((2.5, -11.0)))
    assert "spot-a" in canvas.view.selection
    assert "spot-b" not in canvas.view.selection


def test_what_is_under_the_pointer_is_hovered_and_shared(canvas):
    moves(canvas, canvas.to_pixel(at(canvas, "spot-b")) - QPointF(0, 8), Qt.MouseButton.NoButton)
    assert canvas.view.hovered == "spot-b"
    moves(canvas, canvas.to_pixel((-6.5, -15.5)), Qt.MouseButton.NoButton)
    assert canvas.view.hovered is None


def test_the_reading_is_told_while_something_is_held_and_ends_with_it(canvas):
    told = []
    canvas.reading_changed.connect(told.append)
    start = canvas.to_pixel(at(canvas, "spot-b"))
    drag(canvas, start, canvas.to_pixel((-2.7432, 12.8016)))
    assert any(
        words.startswith("2 rackets in from the right singles line, 1 stride behind the baseline") for words in told
    )
    assert told[-1] == ""


def test_a_drop_puts_the_thing_there_snapped_and_picked(blank):
    mime = item_mime("cone")
    pixel = blank.to_pixel((2.70, -10.99))
    action = Qt.DropAction.CopyAction
    enter = QDragEnterEvent(pixel.toPoint(), action, mime, LEFT, NONE)
    QApplication.sendEvent(blank.viewport(), enter)
    move = QDragMoveEvent(pixel.toPoint(), action, mime, LEFT, NONE)
    QApplication.sendEvent(blank.viewport(), move)
    assert enter.isAccepted()
    assert move.isAccepted()
    assert "1 stride inside the baseline" in blank.bench.guide.words
    drop = QDropEvent(pixel, action, mime, LEFT, NONE)
    QApplication.sendEvent(blank.viewport(), drop)
    assert drop.isAccepted()
    (cone,) = blank.view.setting.items.values()
    assert cone.place.at == (2.7432, -10.9728)
    assert blank.view.selection == {cone.id}
    assert blank.bench.guide.words == ""


def test_a_drag_of_something_else_is_left_to_the_window(blank):
    from PySide6.QtCore import QMimeData, QUrl

    mime = QMimeData()
    mime.setUrls([QUrl.fromLocalFile("a.drill.json")])
    enter = QDragEnterEvent(QPoint(100, 100), Qt.DropAction.CopyAction, mime, LEFT, NONE)
    QApplication.sendEvent(blank.viewport(), enter)
    assert not enter.isAccepted()


def test_keys_on_the_court_place_at_the_pointer(qtbot, blank):
    canvas = blank
    moves(canvas, canvas.to_pixel((2.75, -10.99)), Qt.MouseButton.NoButton)
    qtbot.keyClick(canvas, Qt.Key.Key_C)
    (cone,) = canvas.view.setting.items.values()
    assert cone.place.at == (2.7432, -10.9728)
    qtbot.keyClick(canvas, Qt.Key.Key_Delete)
    assert not canvas.view.setting.items


def test_tab_walks_the_things_and_then_leaves_the_court(qtbot):
    drill = Drill.model_validate_json(sample("wide-start.drill.json").read_bytes())
    document = Document(drill, source=random.Random(3))
    window = QMainWindow()
    holder = QWidget()
    layout = QVBoxLayout(holder)
    canvas, button = CourtCanvas(document, View(document)), QPushButton("after")
    layout.addWidget(canvas)
    layout.addWidget(button)
    window.setCentralWidget(holder)
    qtbot.addWidget(window)
    window.show()
    window.activateWindow()
    qtbot.waitUntil(window.isActiveWindow)
    canvas.setFocus(Qt.FocusReason.TabFocusReason)
    from designer.desktop.canvas.deeds import step_order

    order = step_order(canvas.view.setting)
    walked = []
    for _ in order:
        qtbot.keyClick(canvas, Qt.Key.Key_Tab)
        walked += canvas.view.selection
    assert tuple(walked) == order
    qtbot.keyClick(canvas, Qt.Key.Key_Tab)
    assert button.hasFocus()
    window.hide()


def test_the_keyboard_is_seen_on_the_court_with_nothing_picked(canvas, qtbot):
    def edge():
        return canvas.viewport().grab().toImage().pixelColor(2, 300)

    canvas.activateWindow()
    canvas.setFocus(Qt.FocusReason.MouseFocusReason)
    qtbot.waitUntil(canvas.hasFocus)
    bare = edge()
    canvas.clearFocus()
    canvas.setFocus(Qt.FocusReason.TabFocusReason)
    assert edge() != bare
    canvas.view.select(("spot-a",))  # now the ring is round that
    assert edge() == bare


def test_what_is_picked_is_told_to_whoever_listens(canvas):
    assert canvas.accessibleName() == "Court"
    canvas.view.select(("spot-b",))
    assert canvas.accessibleDescription() == "Player B, 1 stride behind the centre mark"
    canvas.view.select(("spot-b", "reply"))
    assert canvas.accessibleDescription() == "2 things picked"
    canvas.view.select(())
    assert canvas.accessibleDescription() == ""


def test_halo_and_handles_are_seen_and_go_with_the_selection(canvas):
    pixel = (canvas.to_pixel((0.0, 12.8016)) + QPointF(-11, -8)).toPoint()
    rest = canvas.viewport().grab().toImage().pixelColor(pixel)
    canvas.view.select(("spot-b",))
    assert canvas.viewport().grab().toImage().pixelColor(pixel) != rest
    canvas.view.select(())
    assert canvas.viewport().grab().toImage().pixelColor(pixel) == rest


def test_a_right_click_asks_for_a_menu_of_what_is_under_it(canvas):
    asked = []
    canvas.menu_wanted.connect(asked.append)
    click(canvas, canvas.to_pixel(at(canvas, "spot-b")) - QPointF(0, 8), button=RIGHT)
    assert len(asked) == 1
    assert canvas.view.selection == {"spot-b"}


def test_a_right_click_ends_a_chain_of_balls(canvas):
    canvas.view.set_tool("ball")
    click(canvas, canvas.to_pixel(at(canvas, "spot-b")) - QPointF(0, 8))
    moves(canvas, canvas.to_pixel((1.0, -7.0)), Qt.MouseButton.NoButton)
    assert canvas.document.previewing
    click(canvas, canvas.to_pixel((1.0, -7.0)), button=RIGHT)
    assert not canvas.document.previewing
    assert canvas.view.tool == "ball"


def test_undo_in_the_middle_of_a_drag_leaves_the_drag_for_good_and_nothing_else(canvas):
    canvas.document.perform("Name", canvas.document.drill.changed(title="Other"))
    before = canvas.document.drill
    start = canvas.to_pixel(at(canvas, "spot-b"))
    press(canvas, start)
    moves(canvas, start + QPointF(40, 0))
    canvas.document.undo()
    assert not canvas.document.previewing
    moves(canvas, start + QPointF(60, 0))
    release(canvas, start + QPointF(60, 0))
    assert canvas.document.drill is before
    canvas.document.undo()
    assert canvas.document.drill.title != "Other"


def test_the_menu_key_opens_the_menu_at_what_is_picked(canvas):
    asked = []
    canvas.menu_wanted.connect(asked.append)
    canvas.view.select(("spot-b",))
    event = QContextMenuEvent(QContextMenuEvent.Reason.Keyboard, QPoint(1, 1), QPoint(1, 1))
    QApplication.sendEvent(canvas.viewport(), event)
    (place,) = asked
    assert canvas.rectangle_of(("spot-b",)).contains(QPointF(canvas.viewport().mapFromGlobal(place)))
    QTest.keyClick(canvas, Qt.Key.Key_F10, Qt.KeyboardModifier.ShiftModifier)
    assert asked == [place, place]


def test_a_question_mark_asks_for_the_sheet_of_keys(canvas, qtbot):
    with qtbot.waitSignal(canvas.keys_wanted, timeout=1000):
        qtbot.keyClicks(canvas, "?")
