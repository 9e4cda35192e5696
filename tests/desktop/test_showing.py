"""The court alone, one shot a press: what is new, what was, and what is said."""

import itertools

import pytest
from desktop import hand
from PySide6.QtCore import QEvent, QRect, Qt
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QApplication
from shiboken6 import isValid

from designer.bundle import sample
from designer.court.standards import ground
from designer.desktop.showing import PlayersShow, scenes
from designer.drill.drill import Drill
from designer.drill.setting import At, addresses, main_setting, setting_at
from designer.play.sequence import sequence

WIDE = Drill.model_validate_json(sample("wide-start.drill.json").read_bytes())
CHOOSES = Drill.model_validate_json(sample("a-chooses.drill.json").read_bytes())
FED = At("p-fed")


def test_every_ball_and_run_is_shown_once_and_none_before_its_turn():
    found = scenes(WIDE, FED, "rackets")
    setting = setting_at(WIDE, FED)
    assert found[0].new == found[0].before == frozenset()
    balls = [scene.new for scene in found[1:-1]]
    assert frozenset().union(*balls) == {*setting.shots, *setting.runs}
    assert sum(map(len, balls)) == len(setting.shots) + len(setting.runs)
    for earlier, later in itertools.pairwise(found[1:-1]):
        assert later.before == earlier.before | earlier.new
    assert found[-1].new == {*setting.shots, *setting.runs}
    assert found[-1].words[0].startswith("+1")


def test_each_ball_is_said_with_the_sentence_of_the_card():
    found = scenes(WIDE, FED, "rackets")
    assert found[0].words == (WIDE.objective,)
    assert found[1].words[0].startswith("B bounces and hits into the feed area.")
    assert all(scene.words for scene in found)


def test_balls_that_may_be_played_in_one_another_s_stead_are_shown_together():
    court = ground(CHOOSES.court)
    plays = {at: sequence(setting_at(CHOOSES, at), court, CHOOSES.jobs).steps for at in addresses(CHOOSES)}
    at, steps = next((at, steps) for at, steps in plays.items() if any(step.alternatives for step in steps))
    fan = {
        step.shot.id
        for step in steps
        if step.alternatives and step.digit == min(s.digit for s in steps if s.alternatives)
    }
    assert len(fan) > 1
    assert any(fan <= scene.new for scene in scenes(CHOOSES, at, "rackets")[:-1])


@pytest.fixture
def show(qtbot, styled):
    made = PlayersShow(WIDE, FED, units="rackets", turned=False)
    made.resize(600, 400)
    made.show()
    yield made
    if isValid(made):
        made.close()
    hand.bury()


def press(show, key):
    """Presses a key without waiting for the picture."""
    QApplication.sendEvent(show, QKeyEvent(QEvent.Type.KeyPress, key, Qt.KeyboardModifier.NoModifier))


def test_keys_go_on_and_back_and_from_progression_to_progression(show, qtbot):
    count = len(show.scenes)
    for key in (Qt.Key.Key_Space, Qt.Key.Key_Right, Qt.Key.Key_Left, Qt.Key.Key_PageDown):
        press(show, key)
    assert show.number == 2
    press(show, Qt.Key.Key_End)
    assert show.number == count - 1
    press(show, Qt.Key.Key_Space)
    assert (show.at, show.number) == (At(WIDE.progressions[2].id), 0)
    press(show, Qt.Key.Key_Left)
    assert (show.at, show.number) == (FED, count - 1)
    press(show, Qt.Key.Key_1)
    assert show.at == At(WIDE.progressions[0].id)
    press(show, Qt.Key.Key_Left)
    assert (show.at, show.number) == (At(WIDE.progressions[0].id), 0)
    with qtbot.waitSignal(show.left):
        hand.key(show, Qt.Key.Key_Escape)


def test_a_ball_of_before_is_pale_and_one_to_come_is_not_there(show):
    """Counts blue pixels: none before the first ball, most when all is shown."""

    def blue():
        hand.settle()
        seen = show.grab(QRect(150, 60, 300, 160)).toImage()
        colours = (seen.pixelColor(x, y) for x in range(300) for y in range(0, 160, 2))
        return sum(colour.blue() > colour.red() + 90 for colour in colours)

    counts = [blue()]
    for key in (Qt.Key.Key_Space, Qt.Key.Key_End):
        hand.key(show, key)
        counts.append(blue())
    assert counts[0] < counts[1] < counts[2]


def test_it_says_to_whoever_listens_what_is_shown(show):
    show.go_on()
    assert f"2 of {len(show.scenes)}" in show.accessibleName()
    assert "B bounces and hits into the feed area." in show.accessibleDescription()


def test_a_drill_with_nothing_drawn_is_a_court_and_its_objective(source):
    from designer.desktop.blank import blank

    drill = Drill.model_validate(blank(source).model_dump()).changed(objective="Get it back.")
    assert [scene.words for scene in scenes(drill, main_setting(drill), "rackets")] == [("Get it back.",)]
