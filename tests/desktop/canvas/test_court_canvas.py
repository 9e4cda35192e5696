import random

import pytest
from PySide6.QtCore import QEvent, QPoint, QPointF, Qt
from PySide6.QtGui import QColor, QDragEnterEvent, QDragMoveEvent, QDropEvent, QMouseEvent, QWheelEvent
from PySide6.QtWidgets import QApplication, QMainWindow, QPushButton, QVBoxLayout, QWidget

from designer.bundle import sample
from designer.desktop.canvas.court_canvas import CourtCanvas
from designer.desktop.canvas.drop import item_mime
from designer.desktop.canvas.lens import unit_metres
from designer.desktop.document import Document
from designer.desktop.look import DARK
from designer.desktop.view import View
from designer.drawing.picture import picture
from designer.drill.drill import Drill, Progression
from designer.drill.places import anchor

NONE = Qt.KeyboardModifier.NoModifier
LEFT, MIDDLE, RIGHT = Qt.MouseButton.LeftButton, Qt.MouseButton.MiddleButton, Qt.MouseButton.RightButton


def mouse(canvas, kind, pixel, button, held, keys=NONE):
    where = QPointF(canvas.viewport().mapToGlobal(pixel.toPoint()))
    QApplication.sendEvent(canvas.viewport(), QMouseEvent(kind, pixel, where, button, held, keys))


def press(canvas, pixel, button=LEFT, keys=NONE):
    mouse(canvas, QEvent.Type.MouseButtonPress, pixel, button, button, keys)


def moves(canvas, pixel, button=LEFT, keys=NONE):
    mouse(canvas, QEvent.Type.MouseMove, pixel, Qt.MouseButton.NoButton, button, keys)


def release(canvas, pixel, button=LEFT, keys=NONE):
    mouse(canvas, QEvent.Type.MouseButtonRelease, pixel, button, Qt.MouseButton.NoButton, keys)


def drag(canvas, start, end, button=LEFT, keys=NONE, steps=6):
    """A drag as a hand makes it, sent to the viewport."""
    press(canvas, start, button, keys)
    for step in range(1, steps + 1):
        moves(canvas, start + (end - start) * (step / steps), button, keys)
    release(canvas, end, button, keys)


def click(canvas, pixel, keys=NONE, button=LEFT):
    press(canvas, pixel, button, keys)
    release(canvas, pixel, button, keys)


def shown(qtbot, drill, size=(700, 900)):
    document = Document(drill, source=random.Random(3))
    canvas = CourtCanvas(document, View(document))
    qtbot.addWidget(canvas)
    canvas.resize(*size)
    canvas.show()
    qtbot.waitExposed(canvas)
    return canvas


@pytest.fixture
def canvas(qtbot):
    drill = Drill.model_validate_json(sample("wide-start.drill.json").read_bytes())
    made = shown(qtbot, drill)
    yield made
    made.hide()


@pytest.fixture
def blank(qtbot):
    made = shown(qtbot, Drill(id="d", progressions=(Progression(id="p"),)))
    yield made
    made.hide()


def same_as_pictured(canvas, drill):
    """Whether the canvas shows exactly the picture of ``drill``, with nothing left of a gesture."""
    unit = unit_metres(canvas.pixels_per_metre)
    whole = picture(drill, canvas.view.at, unit=unit, theme=canvas.theme, rulers=True)
    marks = {key: mark for key, mark in canvas.court_scene.marks().items() if key[1] != "legend"}
    in_place = all(canvas.court_scene.item_of(key).pos() == QPointF() for key in marks)
    return in_place and marks == {mark.key: mark for mark in whole.marks}


def at(canvas, id):
    return anchor(canvas.view.setting, id)


def test_a_point_of_the_court_and_its_pixel_belong_together_however_the_court_lies(canvas):
    for lie in ("upright", "across"):
        for turned in (False, True):
            canvas.view.set_lie(lie)
            canvas.view.set_turned(turned)
            for point in ((0.0, 0.0), (4.1148, -11.8872), (-3.0, 7.5)):
                assert canvas.to_court(canvas.to_pixel(point)) == pytest.approx(point, abs=1e-6)


def test_upright_shows_the_near_end_at_the_foot_and_across_at_the_left(canvas):
    canvas.view.set_lie("upright")
    assert canvas.to_pixel((0, -10)).y() > canvas.to_pixel((0, 10)).y()
    assert canvas.to_pixel((4, 0)).x() > canvas.to_pixel((-4, 0)).x()
    canvas.view.set_lie("across")
    assert canvas.to_pixel((0, -10)).x() < canvas.to_pixel((0, 10)).x()
    assert canvas.to_pixel((4, 0)).y() > canvas.to_pixel((-4, 0)).y()


def test_it_is_to_scale(canvas):
    a, b = canvas.to_pixel((-4.1148, -11.8872)), canvas.to_pixel((4.1148, 11.8872))
    assert abs(b.x() - a.x()) == pytest.approx(2 * 4.1148 * canvas.pixels_per_metre, abs=0.01)
    assert abs(b.y() - a.y()) == pytest.approx(2 * 11.8872 * canvas.pixels_per_metre, abs=0.01)


def test_the_whole_court_is_seen_at_first_and_after_a_resize(canvas):
    for size in ((700, 900), (1000, 420), (420, 700)):
        canvas.resize(*size)
        QApplication.processEvents()
        for corner in ((-8.5, -17.3), (8.5, 17.3)):
            assert canvas.viewport().rect().contains(canvas.to_pixel(corner).toPoint())


def test_a_wide_window_lays_the_court_across_by_itself_and_a_coach_can_say_otherwise(canvas):
    canvas.resize(1200, 560)
    assert canvas.to_pixel((0, -10)).x() < canvas.to_pixel((0, 10)).x()
    canvas.view.set_lie("upright")
    assert canvas.to_pixel((0, -10)).y() > canvas.to_pixel((0, 10)).y()


def test_the_wheel_zooms_to_the_pointer(canvas):
    pixel = QPointF(420, 610)
    held, scale = canvas.to_court(pixel), canvas.pixels_per_metre
    where = QPointF(canvas.viewport().mapToGlobal(pixel.toPoint()))
    wheel = QWheelEvent(
        pixel, where, QPoint(), QPoint(0, 240), Qt.MouseButton.NoButton, NONE, Qt.ScrollPhase.NoScrollPhase, False
    )
    QApplication.sendEvent(canvas.viewport(), wheel)
    assert canvas.pixels_per_metre > 1.3 * scale
    assert canvas.to_court(pixel) == pytest.approx(held, abs=2 / canvas.pixels_per_metre)


def test_marks_are_made_anew_for_the_new_scale(canvas):
    unit = unit_metres(canvas.pixels_per_metre)
    width = canvas.rectangle_of("basket").width() if "basket" in canvas.view.setting.items else None
    canvas.zoom(4.0, QPointF(350, 450))
    assert unit_metres(canvas.pixels_per_metre) < unit / 2
    if width is not None:
        assert canvas.rectangle_of("basket").width() < 2.2 * width, "kit does not grow as the court does"


def test_zoom_stops_where_it_makes_no_sense(canvas):
    for _ in range(60):
        canvas.zoom_in()
    most = canvas.pixels_per_metre
    for _ in range(120):
        canvas.zoom_out()
    assert 0 < canvas.pixels_per_metre < most <= 500
    canvas.fit()
    assert canvas.viewport().rect().contains(canvas.to_pixel((0, 0)).toPoint())


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


def test_the_marks_follow_while_it_is_held_and_are_whole_after_it(canvas):
    before = canvas.rectangle_of("spot-b")
    start = canvas.to_pixel(at(canvas, "spot-b"))
    press(canvas, start)
    moves(canvas, start + QPointF(40, 0))
    assert canvas.rectangle_of("spot-b").center().x() == pytest.approx(before.center().x() + 40, abs=12)
    release(canvas, start + QPointF(40, 0))
    assert same_as_pictured(canvas, canvas.document.drill)


def test_a_hand_that_rests_sees_the_words_at_their_best_places(qtbot, canvas):
    start = canvas.to_pixel(at(canvas, "reply-zone"))
    canvas.view.select(("reply-zone",))
    press(canvas, start)
    moves(canvas, start + QPointF(60, 90))
    assert not canvas.court_scene.is_whole
    qtbot.waitUntil(lambda: canvas.court_scene.is_whole)
    assert canvas.document.previewing
    assert same_as_pictured(canvas, canvas.document.shown)
    release(canvas, start + QPointF(60, 90))


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
    assert "2 rackets in from the right singles line, 1 stride behind the baseline" in told
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


def test_what_is_picked_is_told_to_whoever_listens(canvas):
    assert canvas.accessibleName() == "Court"
    canvas.view.select(("spot-b",))
    assert canvas.accessibleDescription() == "Player B, 1 stride behind the centre mark"
    canvas.view.select(("spot-b", "reply"))
    assert canvas.accessibleDescription() == "2 things picked"
    canvas.view.select(())
    assert canvas.accessibleDescription() == ""


def test_another_theme_changes_the_ground_at_once(canvas):
    canvas.view.set_theme("dark")
    image = canvas.viewport().grab().toImage()
    assert image.pixelColor(1, 1) == QColor(DARK.canvas)


def test_halo_and_handles_are_seen_and_go_with_the_selection(canvas):
    pixel = (canvas.to_pixel((0.0, 12.8016)) + QPointF(-11, -8)).toPoint()
    rest = canvas.viewport().grab().toImage().pixelColor(pixel)
    canvas.view.select(("spot-b",))
    assert canvas.viewport().grab().toImage().pixelColor(pixel) != rest
    canvas.view.select(())
    assert canvas.viewport().grab().toImage().pixelColor(pixel) == rest


def test_undo_and_another_setting_are_shown(canvas):
    canvas.view.select(("spot-b",))
    canvas.setFocus()
    before = canvas.court_scene.marks()
    from designer.desktop.canvas.deeds import delete_picked

    delete_picked(canvas.bench)
    assert "spot-b" not in {key[0] for key in canvas.court_scene.marks()}
    canvas.document.undo()
    assert canvas.court_scene.marks() == before


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


def test_undo_in_the_middle_of_a_drag_only_leaves_the_drag(canvas):
    before = canvas.document.drill
    start = canvas.to_pixel(at(canvas, "spot-b"))
    press(canvas, start)
    moves(canvas, start + QPointF(40, 0))
    canvas.document.undo()
    release(canvas, start)
    assert canvas.document.drill is before
