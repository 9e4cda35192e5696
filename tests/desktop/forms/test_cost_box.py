"""What follows is said in one row; what does not matter for it is not asked."""

from random import Random

import pytest
from desktop import hand

from designer.desktop.blank import blank
from designer.desktop.forms.boxes import box_for
from designer.desktop.forms.context import Context
from designer.desktop.forms.fields import Cost
from designer.desktop.forms.tables_conditions import outcome
from designer.drill.conditions import Outcome
from designer.drill.setting import main_setting, setting_at


@pytest.fixture
def box(qtbot, styled):
    drill = blank(Random(7))
    at = main_setting(drill)
    context = Context(drill, at, setting_at(drill, at), Random(7))
    made = box_for(Cost(outcome("replay"), usual="replay"))
    qtbot.addWidget(made)
    made.name("A bad one")
    made.given = None

    def follow(value, _=False):
        made.given = value
        made.show_value(value, context)

    made.edited.connect(follow)
    follow(None)
    made.show()
    yield made
    made.hide()


def choose(box, words):
    place = box.list.findText(words)
    box.list.setCurrentIndex(place)
    box.list.activated.emit(place)


def test_the_usual_answer_is_offered_until_one_is_given(box):
    assert box.first() is box._usual
    hand.click(box._usual)
    assert box.given == Outcome(then="replay")
    assert box._usual.isHidden()
    choose(box, "not said")
    assert box.given is None


def test_points_are_counted_and_given_to_somebody(box):
    assert box.number.isHidden()
    choose(box, "points")
    assert box.given == Outcome(then="points", value=1)
    box.number.line.setText("-2")
    box.number.line.editingFinished.emit()
    box.receiver.setCurrentIndex(box.receiver.findData("other"))
    box.receiver.activated.emit(0)
    assert box.given == Outcome(then="points", value=-2, to="other")
    choose(box, "nothing is scored")
    assert box.given == Outcome(then="no score")
    assert box.number.isHidden()


def test_something_to_do_is_said_in_words(box):
    choose(box, "something to do")
    hand.write(box.text.line, "picks up left balls")
    assert box.given == Outcome(then="do", text="picks up {left} balls")
