import pytest
from desktop.canvas.mouse import NONE, at, drag, moves, press, release, same_as_pictured, shown
from PySide6.QtCore import QLineF, QPoint, QPointF, Qt
from PySide6.QtGui import (
    QColor,
    QNativeGestureEvent,
    QPointingDevice,
    QWheelEvent,
)
from PySide6.QtWidgets import QApplication

from designer.desktop.canvas import deeds
from designer.desktop.canvas.court_view import MOST_WORDED
from designer.desktop.canvas.lens import unit_metres
from designer.desktop.look import DARK
from designer.drill.base import place
from designer.drill.drill import Changes, Drill, Progression
from designer.drill.items import Cone


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
    width = canvas.rectangle_of(("basket",)).width() if "basket" in canvas.view.setting.items else None
    canvas.zoom(4.0, QPointF(350, 450))
    assert unit_metres(canvas.pixels_per_metre) < unit / 2
    if width is not None:
        assert canvas.rectangle_of(("basket",)).width() < 2.2 * width, "kit does not grow as the court does"


def test_zoom_stops_where_it_makes_no_sense(canvas):
    whole = canvas.pixels_per_metre
    for _ in range(60):
        canvas.zoom_in()
    most = canvas.pixels_per_metre
    for _ in range(120):
        canvas.zoom_out()
    assert canvas.pixels_per_metre == pytest.approx(whole / 2)
    assert whole < most <= 500
    canvas.fit()
    assert canvas.viewport().rect().contains(canvas.to_pixel((0, 0)).toPoint())


def test_the_marks_follow_while_it_is_held_and_are_whole_after_it(canvas):
    before = canvas.rectangle_of(("spot-b",))
    start = canvas.to_pixel(at(canvas, "spot-b"))
    press(canvas, start)
    moves(canvas, start + QPointF(40, 0))
    assert canvas.rectangle_of(("spot-b",)).center().x() == pytest.approx(before.center().x() + 40, abs=12)
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


def test_another_theme_changes_the_ground_at_once(canvas):
    canvas.view.set_theme("dark")
    image = canvas.viewport().grab().toImage()
    assert image.pixelColor(1, 1) == QColor(DARK.canvas)


def test_undo_and_another_setting_are_shown(canvas):
    canvas.view.select(("spot-b",))
    canvas.setFocus()
    before = canvas.court_scene.marks()
    from designer.desktop.canvas.deeds import delete_picked

    delete_picked(canvas.bench)
    assert "spot-b" not in {key[0] for key in canvas.court_scene.marks()}
    canvas.document.undo()
    assert canvas.court_scene.marks() == before


def test_another_court_is_fitted_anew_but_not_where_somebody_has_zoomed(canvas):
    court, scale = canvas.document.drill.court, canvas.pixels_per_metre
    canvas.document.perform("Court", canvas.document.drill.changed(court=court.changed(standard="red")))
    assert canvas.pixels_per_metre > 1.1 * scale
    canvas.document.undo()
    assert canvas.pixels_per_metre == pytest.approx(scale)
    canvas.zoom_in()
    scale = canvas.pixels_per_metre
    canvas.document.redo()
    assert canvas.pixels_per_metre == scale


def test_two_fingers_zoom_to_where_they_are(canvas):
    pixel = QPointF(200, 300)
    held, scale = canvas.to_court(pixel), canvas.pixels_per_metre
    where = QPointF(canvas.viewport().mapToGlobal(pixel.toPoint()))
    fingers = QPointingDevice.primaryPointingDevice()
    pinch = QNativeGestureEvent(
        Qt.NativeGestureType.ZoomNativeGesture, fingers, 2, pixel, pixel, where, 0.5, QPointF(), 1
    )
    QApplication.sendEvent(canvas.viewport(), pinch)
    assert canvas.pixels_per_metre == pytest.approx(1.5 * scale)
    assert canvas.to_court(pixel) == pytest.approx(held, abs=2 / canvas.pixels_per_metre)


def cones(count):
    items = tuple(
        Cone(kind="cone", id=f"cone-{number}", place=place(number % 40 / 4 - 5, number // 40 / 4 - 6))
        for number in range(count)
    )
    return Drill(id="d", progressions=(Progression(id="p", changes=Changes(items=items)),))


def test_two_thousand_things_are_shown_moved_and_deleted_and_it_is_said_that_words_are_left_out(qtbot):
    crowded = shown(qtbot, cones(2000))
    ids = {id for id, _, _ in crowded.court_scene.marks() if id is not None}
    assert len(ids) == 2000
    said = []
    crowded.said.connect(said.append)
    crowded.view.select(("cone-820",))
    start = crowded.to_pixel(at(crowded, "cone-820"))
    drag(crowded, start, start + QPointF(60, 40), steps=3)
    assert at(crowded, "cone-820") != (0.0, -1.0)
    deeds.pick_all(crowded.bench)
    deeds.delete_picked(crowded.bench)
    assert not crowded.view.setting.items
    crowded.document.undo()
    assert len(crowded.view.setting.items) == 2000
    assert said == ["More than 300 things stand on this court: their names and digits are left out."]
    crowded.hide()


def test_a_nudge_on_a_crowded_court_draws_what_moves_and_the_rest_once_the_hand_rests(qtbot, monkeypatch):
    crowded = shown(qtbot, cones(MOST_WORDED + 1))
    whole = []
    monkeypatch.setattr(crowded, "picture_whole", lambda: whole.append(crowded.court_scene.is_whole))
    crowded.view.select(("cone-20",))
    for _ in range(3):
        assert deeds.nudge_picked(crowded.bench, (0.25, 0.0))
        assert not crowded.court_scene.is_whole
    assert whole == []
    (cone,) = crowded.court_scene.marks_of(("cone-20",))
    assert QLineF(QPointF(), cone.pos()).length() == pytest.approx(0.75)
    qtbot.waitUntil(lambda: whole == [False])
    crowded.hide()


def test_the_court_stays_as_it_lies_until_it_is_larger_the_other_way(canvas):
    canvas.resize(900, 500)
    assert canvas.sight.page.across
    canvas.resize(720, 640)  # alone it would stand upright here
    assert canvas.sight.page.across
    canvas.resize(500, 900)
    assert not canvas.sight.page.across
    canvas.resize(720, 640)
    assert not canvas.sight.page.across
