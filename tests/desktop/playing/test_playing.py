"""Play it, in a window whose clock the test turns: keys, presses, and a court that is put back as it was."""

import pytest
from desktop import hand
from PySide6.QtCore import QPoint, QPointF, Qt
from PySide6.QtTest import QTest

from designer.bundle import sample
from designer.desktop.document import Document
from designer.drill.base import place
from designer.drill.edits import put
from designer.drill.setting import At
from designer.storage.reading import open_drill

KEY = Qt.Key


class Clock:
    now = 100.0

    def __call__(self):
        return self.now


def opened(make_window, name, at):
    path = sample(f"{name}.drill.json")
    window = make_window(Document(open_drill(path).drill, path=path))
    window.view.go_to(At(at))
    window.playing.clock = Clock()
    return window


@pytest.fixture
def wide(make_window):
    return opened(make_window, "wide-start", "p-fed")


@pytest.fixture
def approach(make_window):
    return opened(make_window, "short-approach", "p-points")


def begun(window, first=None):
    window.playing.play(first)
    hand.settle()
    return window.playing.playing


def passed(window, seconds):
    window.playing.clock.now += seconds
    window.playing.playing.tick()


def stands(window, spot):
    """Where the marks of somebody stand on the court, in scene metres."""
    (item, *_) = window.canvas.court_scene.marks_of((spot,))
    return item.sceneBoundingRect().center()


def test_the_drill_menu_plays_from_the_first_ball_and_the_key_ends_it(wide):
    wide.actions_by_name["play"].trigger()
    assert wide.playing.playing.clockwork.course.legs[0].step.shot.id == "feed"
    assert wide.playing.bar.isVisible()
    wide.actions_by_name["play"].trigger()
    assert wide.playing.playing is None
    assert not wide.playing.bar.isVisible()


def test_people_move_while_the_ball_is_in_the_air(wide):
    begun(wide)
    spot = wide.view.setting.spot_of("A").id
    before = stands(wide, spot)
    passed(wide, 1.0)
    moved = stands(wide, spot) - before
    truly = wide.playing.playing.clockwork.course
    drawn, now = truly.at(0.0).people["A"], truly.at(1.0).people["A"]
    by = wide.canvas.sight.to_scene(now) - wide.canvas.sight.to_scene(drawn)
    assert moved.manhattanLength() > 0.5
    assert (moved - by).manhattanLength() < 0.01


def test_the_higher_the_ball_the_larger_it_is(wide):
    playing = begun(wide)
    course = playing.clockwork.course
    sizes = {}
    for share in (0.5, 1.0):
        playing.clockwork.seconds = share * course.legs[0].strike.flight.landing.time
        playing._show()
        sizes[share] = playing.layer.radius
    assert sizes[0.5] > 1.3 * sizes[1.0] > 0


def test_esc_leaves_and_the_court_is_as_it_was(wide):
    spot = wide.view.setting.spot_of("A").id
    before = stands(wide, spot)
    begun(wide)
    passed(wide, 1.0)
    hand.key(wide.canvas, KEY.Key_Escape)
    assert wide.playing.playing is None
    hand.settle()
    after = stands(wide, spot)
    assert (after - before).manhattanLength() < 0.2
    marks = wide.canvas.court_scene.marks_of({*wide.view.setting.shots, *wide.view.setting.runs})
    assert {item.opacity() for item in marks} == {1.0}
    assert wide.document.clean


def test_space_pauses_and_arrows_go_shot_by_shot_and_slower_and_faster(wide):
    playing = begun(wide)
    hand.key(wide.canvas, KEY.Key_Space, " ")
    passed(wide, 5.0)
    assert playing.clockwork.seconds == 0.0
    assert playing._bar.pause.text() == "Go on"
    hand.key(wide.canvas, KEY.Key_Right)
    assert playing.clockwork.number == 1
    hand.key(wide.canvas, KEY.Key_Left)
    assert playing.clockwork.number == 0
    hand.key(wide.canvas, KEY.Key_Down)
    assert playing.clockwork.pace == 0.5
    assert "0.5" in playing._bar.words.text()
    hand.key(wide.canvas, KEY.Key_Up)
    assert playing.clockwork.pace == 1.0


def test_no_key_and_no_press_changes_the_drill_meanwhile(wide):
    begun(wide)
    before = wide.document.drill
    for key, text in ((KEY.Key_B, "b"), (KEY.Key_C, "c"), (KEY.Key_Delete, "")):
        hand.key(wide.canvas, key, text)
    hand.drag(wide.canvas, (0.0, -5.0), (2.0, -6.0))
    assert wide.document.drill is before
    assert wide.view.tool == "select"


def test_a_choice_is_a_button_a_digit_or_a_press_on_the_arrow(approach):
    playing = begun(approach)
    passed(approach, 60.0)
    buttons = playing._bar.choices()
    assert len(buttons) == 3
    assert len({button.text() for button in buttons}) == 3
    first = playing.clockwork.course.choices[0].shot.id
    hand.click(buttons[0])
    chosen = playing.clockwork.course.legs[-1].step.shot.id
    assert chosen == first
    hand.key(approach.canvas, KEY.Key_Left)
    passed(approach, 60.0)
    hand.key(approach.canvas, KEY.Key_2, "2")
    second = playing.clockwork.course.legs[-1].step.shot.id
    assert second != chosen
    hand.key(approach.canvas, KEY.Key_Left)
    passed(approach, 60.0)
    offered = {step.shot.id: step for step in playing.clockwork.course.choices}
    step = offered[next(id for id in offered if id not in (chosen, second))]
    # Near its tip, where no other arrow of the fan is.
    tip = tuple(0.9 * b + 0.1 * a for a, b in zip(step.contact, step.landing, strict=True))
    hand.press(approach.canvas, tip)
    assert playing.clockwork.course.legs[-1].step.shot.id == step.shot.id


def test_a_change_of_the_drill_ends_it(wide):
    begun(wide)
    reply = wide.view.setting.shots["reply"]
    wide.perform("Move it", put(wide.document.drill, wide.view.at, reply.changed(to=place(-2.0, 7.5))))
    assert wide.playing.playing is None


def test_another_setting_ends_it(wide):
    begun(wide)
    wide.view.go_to(At("p-together"))
    assert wide.playing.playing is None


def test_nothing_to_play_is_said(window):
    window.playing.play()
    assert window.playing.playing is None
    assert "draw one first" in window.bottom.figures.text()


def test_a_step_s_digit_plays_from_there_and_its_words_still_open_it(wide):
    row = hand.sentence(wide, "A runs wide")
    QTest.mouseClick(row, Qt.MouseButton.LeftButton, pos=QPointF(20, 12).toPoint())
    hand.settle()
    assert wide.playing.playing.clockwork.course.legs[0].step.shot.id == "reply"
    assert wide.column.form is None
    wide.playing.playing.leave()
    QTest.mouseClick(row, Qt.MouseButton.LeftButton, pos=QPointF(80, 12).toPoint())
    hand.settle()
    assert wide.playing.playing is None
    assert wide.column.form is not None


def test_the_strip_of_numbers_steps_back_and_returns(wide, qtbot):
    wide.numbers.appearing.setInterval(0)
    wide.view.select(["reply"])
    qtbot.waitUntil(wide.numbers.isVisible)
    hand.click(wide.numbers.play)
    assert wide.playing.playing.clockwork.course.legs[0].step.shot.id == "reply"
    assert wide.numbers.isHidden()


def test_the_buttons_of_the_strip_do_what_the_keys_do_and_only_once(wide):
    begun(wide).leave()
    hand.settle()
    playing = begun(wide)
    bar = wide.playing.bar
    hand.click(bar.slower)
    assert playing.clockwork.pace == 0.5
    hand.click(bar.faster)
    assert playing.clockwork.pace == 1.0
    hand.click(bar.pause)
    assert playing.clockwork.paused
    hand.click(bar.leave)
    assert wide.playing.playing is None


@pytest.mark.parametrize(("words", "first"), [("lobs or passes", "approach"), ("into the feed area", "feed")])
def test_the_digit_of_a_choice_plays_up_to_the_choice(approach, words, first):
    row = hand.sentence(approach, words)
    QTest.mouseClick(row, Qt.MouseButton.LeftButton, pos=QPointF(20, 12).toPoint())
    hand.settle()
    assert approach.playing.playing.clockwork.course.legs[0].step.shot.id == first


def test_a_digit_that_counts_several_balls_plays_from_the_first_of_them(make_window):
    window = opened(make_window, "a-chooses", "p-change")
    row = hand.sentence(window, "in turn", "cross-court")
    QTest.mouseClick(row, Qt.MouseButton.LeftButton, pos=QPointF(20, 12).toPoint())
    hand.settle()
    assert window.playing.playing.clockwork.course.legs[0].step.digit == 2


def test_a_digit_pressed_twice_on_the_court_plays_from_there(wide):
    items = wide.canvas.court_scene.marks_of(("reply",))
    digit = next(item for item in items if item.mark.kind == "step digit").sceneBoundingRect().center()
    pixel = wide.canvas.mapFromScene(digit)
    assert wide.playing.digit_at(pixel) == "reply"
    assert wide.playing.digit_at(pixel + QPoint(60, 60)) is None
    QTest.mouseDClick(wide.canvas.viewport(), Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier, pixel)
    hand.settle()
    assert wide.playing.playing.clockwork.course.legs[0].step.shot.id == "reply"
    wide.playing.playing.leave()
