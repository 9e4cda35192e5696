"""Letters as large as the system's, and everything that holds them with them."""

import pytest
from PySide6.QtGui import QFont, QFontDatabase, QFontMetrics, QGuiApplication
from PySide6.QtWidgets import QWidget

from designer.desktop import fonts
from designer.desktop.canvas.lens import unit_pixels
from designer.desktop.controls import HEIGHT, CheckBox, Link
from designer.desktop.preferences import Preferences
from designer.desktop.strip import ThingStrip
from designer.desktop.view import View


@pytest.fixture
def points(qapp, monkeypatch):
    """Sets the size of the system's own letters."""
    real = QFontDatabase.systemFont

    def take(size):
        def system(kind):
            face = QFont(real(kind))
            face.setPointSizeF(size)
            return face

        monkeypatch.setattr(QFontDatabase, "systemFont", staticmethod(system))
        fonts.share.cache_clear()

    yield take
    monkeypatch.undo()
    fonts.share.cache_clear()


@pytest.mark.parametrize("size", [9, 10, 11])
def test_usual_sizes_of_a_system_leave_the_window_as_it_is_drawn(points, size):
    points(size)
    assert fonts.scaled(100) == 100
    assert fonts.font(fonts.NOTE).pixelSize() == 12  # nothing smaller is shown on a screen


@pytest.mark.parametrize("size", [6, 8])
def test_smaller_letters_of_a_system_make_the_window_s_smaller_as_far_as_they_can_be_read(points, size):
    points(size)
    assert fonts.font(fonts.TITLE).pixelSize() < fonts.TITLE
    assert fonts.font(fonts.BODY).pixelSize() < fonts.BODY
    assert [fonts.font(small).pixelSize() for small in (fonts.CONTROL, fonts.NOTE)] == [12, 12]
    assert unit_pixels(20.0, fonts.share()) == unit_pixels(20.0)  # words on the court are as small as they may be


@pytest.mark.parametrize(("platform", "size", "more"), [("win32", 9, 1.0), ("win32", 12, 4 / 3), ("darwin", 9.75, 1.0)])
def test_what_is_usual_is_what_each_system_comes_with(points, monkeypatch, platform, size, more):
    """Windows: Segoe UI, 9 points; macOS: 13 pixels. Both from memory."""
    monkeypatch.setattr(fonts.sys, "platform", platform)
    points(size)
    assert fonts.share() == pytest.approx(more, abs=0.01)


def test_larger_letters_grow_with_the_system_s_as_far_as_the_screen_has_room(points):
    sizes = []
    for size in (12, 14, 16, 20, 200):
        points(size)
        sizes.append(fonts.font(fonts.BODY).pixelSize())
    assert sizes == sorted(sizes)
    assert sizes[0] > fonts.BODY
    most = QGuiApplication.primaryScreen().size().height() / fonts.ROOM
    assert sizes[-1] <= round(fonts.BODY * max(1.0, min(most, fonts.MOST)))


@pytest.mark.parametrize("size", [10, 15, 20])
def test_controls_are_as_high_as_their_letters(points, styled, qtbot, size):
    points(size)
    for control in (Link("A link"), CheckBox("A box")):
        qtbot.addWidget(control)
        assert control.sizeHint().height() >= QFontMetrics(control.font()).height()
        assert control.sizeHint().height() >= HEIGHT


@pytest.mark.parametrize(("size", "height"), [(10, 600), (10, 260), (20, 520)])
def test_every_thing_of_the_strip_is_in_sight_however_low_the_window_and_large_the_letters(
    points, styled, qtbot, document, size, height
):
    points(size)
    strip = ThingStrip(View(document))
    qtbot.addWidget(strip)
    strip.resize(strip.width(), height)
    strip.show()
    for button in (*strip.shown(), strip.more):
        lowest = button.mapTo(strip, button.rect().bottomRight())
        assert strip.rect().contains(lowest), button.text()


def test_nothing_of_the_preferences_is_cut_where_letters_are_large_and_the_screen_low(points, styled, qtbot):
    points(20)
    parent = QWidget()
    qtbot.addWidget(parent)
    box = Preferences(parent)
    box.show()
    for control in box.boxes.values():
        assert control.height() >= control.sizeHint().height(), control.accessibleName()
    box.close()
