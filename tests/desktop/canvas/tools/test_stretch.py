import pytest

from designer.desktop.canvas.placing import NAMES, STRETCHED


def only(hand):
    (item,) = hand.setting.items.values()
    return item


def test_a_line_goes_from_where_it_was_pressed_to_where_it_was_let_go(empty_hand):
    empty_hand.view.set_tool("line")
    empty_hand.drag((0.0, -5.0), (3.0, -4.0))
    assert only(empty_hand).corners == ((0.0, -5.0), (3.0, -4.0))
    assert only(empty_hand).marked is None, "what marks it has not been said"
    assert empty_hand.undo_text == "Add a line"
    assert empty_hand.view.tool == "select"


def test_two_clicks_do_the_same_as_a_drag_and_it_is_seen_between_them(empty_hand):
    empty_hand.view.set_tool("line")
    empty_hand.click((0.0, -5.0))
    assert empty_hand.document.stack.count() == 0
    empty_hand.hover((2.0, -5.0))
    assert only(empty_hand).corners == ((0.0, -5.0), (2.0, -5.0))
    empty_hand.click((3.0, -4.0))
    assert only(empty_hand).corners == ((0.0, -5.0), (3.0, -4.0))


def test_an_area_is_the_rectangle_between_two_corners_whichever_they_are(empty_hand):
    empty_hand.view.set_tool("area")
    empty_hand.drag((3.0, 9.0), (-1.0, 6.0))
    assert only(empty_hand).shape.corners == ((-1.0, 6.0), (3.0, 9.0))


def test_an_obstacle_has_four_corners(empty_hand):
    empty_hand.view.set_tool("obstacle")
    empty_hand.drag((6.0, 0.0), (7.0, 1.0))
    assert set(only(empty_hand).corners) == {(6.0, 0.0), (7.0, 0.0), (7.0, 1.0), (6.0, 1.0)}


def test_shift_holds_a_line_straight_and_an_area_square(empty_hand):
    empty_hand.view.set_tool("line")
    empty_hand.drag((0.0, -5.0), (3.0, -4.8), shift=True)
    assert only(empty_hand).corners == ((0.0, -5.0), (3.0, -5.0))
    empty_hand.document.undo()
    empty_hand.view.set_tool("area")
    empty_hand.drag((0.0, 0.0), (-2.0, 1.0), shift=True)
    assert only(empty_hand).shape.corners == ((-2.0, 0.0), (0.0, 2.0))


@pytest.mark.parametrize("kind", STRETCHED)
def test_every_kind_can_be_drawn_and_left_and_taken_back(empty_hand, kind):
    hand = empty_hand
    hand.view.set_tool(kind)
    hand.pull((0.0, 0.0), (2.0, 3.0))
    assert hand.setting.items
    hand.escape()
    assert not hand.setting.items
    assert not hand.document.stack.count()
    hand.release((2.0, 3.0))
    hand.drag((0.0, 0.0), (2.0, 3.0))
    assert hand.undo_text == f"Add {NAMES[kind]}"
    hand.document.undo()
    assert not hand.setting.items


def test_an_area_of_no_size_is_refused_in_words(empty_hand):
    empty_hand.view.set_tool("area")
    empty_hand.drag((0.0, 0.0), (3.0, 0.0))
    assert not empty_hand.setting.items
    assert empty_hand.said == ["Too small: draw an area from one place to another."]


def test_a_second_click_where_the_first_was_is_refused_in_words_and_the_area_goes_on(empty_hand):
    empty_hand.view.set_tool("area")
    empty_hand.click((0.0, 0.0))
    assert empty_hand.said == []
    empty_hand.click((0.0, 0.0))
    assert empty_hand.said == ["Too small: draw an area from one place to another."]
    empty_hand.click((2.0, 3.0))
    assert len(empty_hand.setting.items) == 1


def test_backspace_takes_the_first_end_back(empty_hand):
    empty_hand.view.set_tool("line")
    empty_hand.click((0.0, -5.0))
    assert empty_hand.toolbox.tool.take_back()
    empty_hand.click((1.0, 0.0))
    empty_hand.click((2.0, 0.0))
    assert only(empty_hand).corners == ((1.0, 0.0), (2.0, 0.0))


def test_how_large_it_gets_is_said_while_it_is_drawn(empty_hand):
    empty_hand.view.set_snapping(True)
    empty_hand.view.set_tool("area")
    empty_hand.pull((3.43, -9.14), (4.11, -6.41))
    # 0.6858 m of 8.2296 and 2.7432 of 11.8872 (ITF Rules of Tennis, rule 1: 27 ft and 39 ft) are 1.9 % of a half.
    assert (
        empty_hand.bench.guide.words.splitlines()[-1]
        == "1 racket wide, 3 strides deep, 1\N{NO-BREAK SPACE}% of the court, 2\N{NO-BREAK SPACE}% of its half, 8\N{NO-BREAK SPACE}% of its width"
    )
    empty_hand.escape()
    assert empty_hand.bench.guide.words == ""
