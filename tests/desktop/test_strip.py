"""The strip of things: chosen and put down, dragged, folded away, reached by keys and by ear."""

import json

from desktop import hand

from designer.desktop import settings
from designer.desktop.canvas.drop import MIME
from designer.desktop.canvas.keys import LETTERS
from designer.desktop.strip import COMMON, DRAGGED, REST
from designer.desktop.view import TOOLS


def test_everything_that_can_be_placed_is_on_it():
    assert {*COMMON, *REST} == set(TOOLS) - {"select"}


def test_the_six_common_things_come_first_and_the_rest_on_request(window):
    assert [button.use.tool for button in window.strip.shown()] == list(COMMON)
    hand.click(window.strip.more)
    assert len(window.strip.shown()) == len(COMMON) + len(REST)
    hand.click(window.strip.more)
    assert len(window.strip.shown()) == len(COMMON)


def test_each_thing_tells_its_word_and_its_letter(window):
    for use in LETTERS:
        if use.tool == "select":
            continue
        button = window.strip.button(use.tool)
        assert button.accessibleName() == f"{use.name}, key {use.letter}"
        assert f"({use.letter})" in button.toolTip()
        # WCAG 2.2, success criterion 2.5.8: targets of at least 24 by 24.
        assert min(button.width(), button.height()) >= 24, use.tool


def test_a_press_takes_a_thing_in_hand_and_another_puts_it_back(window):
    button = window.strip.button("cone")
    hand.click(button)
    assert window.view.tool == "cone"
    assert button.isChecked()
    hand.click(button)
    assert window.view.tool == "select"
    assert not button.isChecked()


def test_a_drag_carries_the_thing_and_the_court_takes_it(window, prompts):
    for tool in sorted(DRAGGED):
        prompts.answers = [1]  # a barrier is asked about, and kept
        drag = window.strip.button(tool).make_drag()
        assert json.loads(bytes(drag.mimeData().data(MIME).data())) == {"format": 1, "kind": tool}
        assert not drag.pixmap().isNull(), tool
        assert hand.drop(window.canvas, tool, (2.0, -8.0)), tool
        assert len(window.view.setting.ids()) == 1, tool
        window.document.undo()
        assert not window.view.setting.ids(), tool


def test_it_folds_away_and_is_remembered(window):
    window.actions_by_name["strip"].trigger()
    assert not window.strip.isVisible()
    assert window.unfold.isVisible()
    assert not settings.strip_open()
    hand.click(window.unfold)
    assert window.strip.isVisible()
    assert window.actions_by_name["strip"].isChecked()
