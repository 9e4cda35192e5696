import pytest
from PySide6.QtCore import Qt

from designer.drill.drill import Variation
from designer.drill.edits import add_variation
from designer.drill.setting import At

CORNERS = ((-2.0, 3.0), (2.0, 3.0), (3.0, 6.0), (0.0, 8.0))


@pytest.fixture
def begun(empty_hand):
    empty_hand.view.set_tool("polygon")
    for corner in CORNERS:
        empty_hand.hover(corner)
        empty_hand.click(corner)
    return empty_hand


def only(hand):
    (item,) = hand.setting.items.values()
    return item


@pytest.mark.parametrize("end", ["enter", "double click", "first corner"])
def test_corners_are_clicked_and_the_outline_closed(begun, end):
    assert only(begun).shape.corners == CORNERS, "it is seen while it is drawn"
    if end == "enter":
        begun.key(Qt.Key.Key_Return)
    elif end == "double click":
        begun.toolbox.double_click(begun.pointer(CORNERS[-1]))
    else:
        begun.click(CORNERS[0])
    assert only(begun).shape.corners == CORNERS
    assert begun.undo_text == "Add an area"
    assert begun.view.tool == "select"
    begun.document.undo()
    assert not begun.setting.items


def test_backspace_takes_corner_after_corner_back(begun):
    for left in (3, 2, 1, 0):
        assert begun.key(Qt.Key.Key_Backspace)
        assert len(only(begun).shape.corners) == left if left > 2 else not begun.setting.items
    assert not begun.toolbox.tool.busy
    assert begun.document.stack.count() == 0


def test_esc_leaves_no_trace(begun):
    begun.escape()
    assert not begun.setting.items
    assert begun.document.stack.count() == 0


def test_two_corners_or_three_in_a_line_make_no_area_and_say_so(empty_hand):
    empty_hand.view.set_tool("polygon")
    for corner in ((0.0, 0.0), (1.0, 0.0), (2.0, 0.0)):
        empty_hand.click(corner)
    empty_hand.key(Qt.Key.Key_Return)
    assert empty_hand.said == ["An area needs three corners or more, not all on one line."]
    empty_hand.click((1.0, 2.0))
    empty_hand.key(Qt.Key.Key_Return)
    assert len(only(empty_hand).shape.corners) == 4, "what was drawn is not lost"


def test_an_outline_that_crosses_itself_is_not_closed(empty_hand):
    empty_hand.view.set_tool("polygon")
    for corner in ((0.0, 0.0), (4.0, 4.0), (4.0, 0.0), (0.0, 5.0)):
        empty_hand.click(corner)
    empty_hand.key(Qt.Key.Key_Return)
    assert "cross itself" in empty_hand.said[0]
    assert empty_hand.document.stack.count() == 0


def test_another_setting_in_view_ends_it_without_a_trace(begun):
    begun.escape()
    harder = add_variation(begun.document.drill, "p", "harder", Variation(id="v"))
    begun.document.perform("Harder", harder)
    begun.view.set_tool("polygon")
    for corner in CORNERS:
        begun.click(corner)
    begun.view.go_to(At("p", "v"))
    assert not begun.setting.items
    assert begun.document.stack.count() == 1
