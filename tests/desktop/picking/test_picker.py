"""A form asks, and the court answers: by a press, by keys, and without a trace where nothing is taken."""

import pytest
from desktop import hand
from PySide6.QtCore import QEvent, Qt

from designer.drill.base import Place
from designer.drill.places import locate


@pytest.fixture
def window(blank_kept):
    return blank_kept


@pytest.fixture
def wide(wide_kept):
    return wide_kept


def area_of_the_rule(window):
    """The field for the place that the rule asks for."""
    window.column.open("zone")
    hand.settle()
    return window.column.form.form.row("must.area")


def hover(window, point):
    hand.mouse(window.canvas, QEvent.Type.MouseMove, point, hand.NONE, hand.NONE)
    hand.settle()


def picked(window):
    return window.view.setting.rules["zone"].must.where[0].area


def test_a_lit_field_takes_the_part_of_the_court_that_is_pressed(wide):
    row = area_of_the_rule(wide)
    before = wide.document.stack.index()
    hand.click(row.box.button)
    assert row.lit
    assert "press it on the court" in wide.bottom.figures.text()
    hand.press(wide.canvas, (2.0, 3.0))
    assert picked(wide) == "left service box"
    assert not row.lit
    assert wide.document.stack.index() == before + 1
    assert wide.view.selection == {"zone"}, "a press that picks for a form picks nothing else"
    wide.document.undo()
    assert picked(wide) == "reply-zone"


def test_tab_walks_to_what_lies_under_and_enter_takes_it(wide):
    row = area_of_the_rule(wide)
    hand.click(row.box.button)
    hover(wide, (2.0, 3.0))
    names = []
    for _ in range(3):
        names.append(wide.column.picker.current.words)
        hand.key(wide.canvas, Qt.Key.Key_Tab)
        assert wide.canvas.accessibleDescription() == wide.column.picker.current.words, "a screen reader follows"
    assert names[0] == "left service box"
    assert len(set(names)) == 3
    meant = wide.column.picker.current.value
    hand.key(wide.canvas, Qt.Key.Key_Return)
    assert picked(wide) == meant
    assert wide.focusWidget() is row.box.button, "the keyboard goes back to the form"


def test_escape_and_another_form_let_go(wide):
    row = area_of_the_rule(wide)
    hand.click(row.box.button)
    hand.key(wide.canvas, Qt.Key.Key_Escape)
    assert not row.lit
    hand.click(row.box.button)
    wide.column.open("tick")
    hand.press(wide.canvas, (2.0, 3.0))
    assert picked(wide) == "reply-zone"
    assert wide.column.picker.wish is None


def test_many_are_picked_one_after_another_and_put_back_by_a_second_press(wide):
    wide.column.open("zone")
    hand.settle()
    box = wide.column.form.form.row("who").box
    hand.click(box.button)
    b = locate(wide.view.setting, wide.view.setting.spot_of("B").place)
    hand.press(wide.canvas, (b[0], b[1] + 0.4))
    assert wide.view.setting.rules["zone"].who == ("A", "B")
    assert "press each on the court" in wide.bottom.figures.text(), "it still waits, and says so"
    hand.press(wide.canvas, (b[0], b[1] + 0.4))
    assert wide.view.setting.rules["zone"].who == ("A",)
    hand.key(wide.canvas, Qt.Key.Key_Escape)
    assert wide.column.picker.wish is None


def test_a_place_is_shown_while_it_is_tried_and_settled_by_the_press(wide):
    wide.column.open("reply")
    hand.settle()
    before, steps = wide.document.drill, wide.document.stack.index()
    line = wide.column.form.form.row("to").box.line
    hand.click(line.button)
    hover(wide, (-2.0574, 9.144))
    assert wide.document.previewing
    assert wide.view.setting.shots["reply"].to.on == "reply-zone", "an end let go on an area goes with it"
    hand.key(wide.canvas, Qt.Key.Key_Escape)
    assert wide.document.drill == before
    assert not wide.document.previewing
    hand.click(line.button)
    hover(wide, (2.0574, 9.144))
    hand.press(wide.canvas, (2.0574, 9.144))
    assert wide.view.setting.shots["reply"].to == Place(at=(2.0574, 9.144))
    assert wide.document.stack.index() == steps + 1


def test_a_corner_is_carried_by_the_arrow_keys(wide):
    wide.column.open("tick")
    wide.column.form.form.open_all()
    hand.settle()
    first, second = wide.view.setting.items["tick"].corners
    line = wide.column.form.form.row("corners").box.lines()[1]
    hand.click(line.button)
    hand.key(wide.canvas, Qt.Key.Key_Down if not wide.canvas._page.across else Qt.Key.Key_Left)
    hand.key(wide.canvas, Qt.Key.Key_Return)
    # Half a stride along the court, away from the net at the near end.
    assert wide.view.setting.items["tick"].corners == (first, pytest.approx((second[0], second[1] - 0.4572)))
    assert wide.document.stack.undoText() == "Change tick"


def test_nothing_is_tied_to_itself(wide):
    wide.column.open("spot-b")
    hand.settle()
    spot = wide.view.setting.spots["spot-b"]
    hand.click(wide.column.form.form.row("place").box.line.button)
    at = locate(wide.view.setting, spot.place)
    hover(wide, at)
    hand.press(wide.canvas, at)
    assert wide.view.setting.spots["spot-b"].place.on is None


def test_who_becomes_whom_is_picked_by_pressing_people(wide):
    wide.column.open("jobs")
    hand.settle()
    before = wide.view.setting.swaps["jobs"].moves
    hand.click(wide.column.form.form.row("moves").box.row_of("A").pick)
    c = locate(wide.view.setting, wide.view.setting.spot_of("C").place)
    hand.press(wide.canvas, c)
    assert wide.view.setting.swaps["jobs"].moves == {**before, "A": "C"}


def test_escape_in_the_form_lets_go_first_and_closes_it_then(wide):
    row = area_of_the_rule(wide)
    hand.click(row.box.button)
    hand.key(wide.column.form, Qt.Key.Key_Escape)
    assert wide.column.form is not None
    assert not row.lit
    hand.key(wide.column.form, Qt.Key.Key_Escape)
    assert wide.column.form is None


def test_a_new_rule_about_a_place_asks_for_it_on_the_court_at_once(wide):
    before = set(wide.view.setting.rules)
    wide.actions_by_name["rule keep"].trigger()
    hand.settle()
    (made,) = set(wide.view.setting.rules) - before
    hand.press(wide.canvas, (2.0, 3.0))
    assert wide.view.setting.rules[made].must.where[0].area == "left service box"
    wide.actions_by_name["rule keep"].trigger()
    hand.settle()
    hand.key(wide.canvas, Qt.Key.Key_Escape)
    assert wide.column.form.isAncestorOf(wide.focusWidget()), "who would rather choose from the list has the form"
