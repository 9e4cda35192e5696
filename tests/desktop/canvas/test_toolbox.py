import pytest
from PySide6.QtCore import Qt

from designer.desktop.canvas.keys import LETTERS
from designer.desktop.canvas.placing import PLACED
from designer.desktop.view import TOOLS
from designer.drawing.page import Page
from designer.drill.places import anchor

Key = Qt.Key


def test_every_tool_has_one_letter_of_its_own_and_a_name():
    assert sorted(use.tool for use in LETTERS) == sorted(TOOLS)
    assert len({use.letter for use in LETTERS}) == len(LETTERS)
    assert "X" not in {use.letter for use in LETTERS}, "X gives a ball to somebody else"
    assert all(use.name for use in LETTERS)


@pytest.mark.parametrize("use", [use for use in LETTERS if use.tool in PLACED], ids=lambda use: use.tool)
def test_the_letter_of_a_thing_places_it_at_the_pointer(empty_hand, use):
    assert empty_hand.letter(use.letter, at=(2.0, -6.0))
    (id,) = empty_hand.view.selection
    assert anchor(empty_hand.setting, id) == (2.0, -6.0)
    assert empty_hand.view.tool == "select", "the next press moves it"
    assert empty_hand.document.stack.count() == 1


@pytest.mark.parametrize("use", [use for use in LETTERS if use.tool not in PLACED], ids=lambda use: use.tool)
def test_the_letter_of_a_tool_takes_it_in_hand(empty_hand, use):
    assert empty_hand.letter(use.letter)
    assert empty_hand.view.tool == use.tool
    assert empty_hand.document.stack.count() == 0


def test_letters_with_ctrl_are_not_ours(empty_hand):
    assert not empty_hand.key(Key.Key_C, "c", control=True)
    assert not empty_hand.setting.items


def test_esc_goes_back_one_thing_at_a_time(hand):
    hand.view.select(("cone",))
    hand.view.set_tool("ball")
    hand.click((0.0, -12.0))
    hand.hover((0.0, 8.0))
    assert hand.escape()
    assert (hand.view.tool, hand.document.previewing) == ("ball", False)
    assert hand.escape()
    assert hand.view.tool == "select"
    assert hand.escape()
    assert hand.view.selection == frozenset()
    assert not hand.escape(), "nothing is left for it: the window may have it"


@pytest.mark.parametrize("key", [Key.Key_Delete, Key.Key_Backspace])
def test_what_is_picked_is_deleted_as_one_step(hand, key):
    hand.view.select(("cone", "zone"))
    assert hand.key(key)
    assert not {"cone", "zone"} & hand.setting.ids()
    assert hand.undo_text == "Delete 2 items"
    hand.document.undo()
    assert {"cone", "zone"} <= hand.setting.ids()


def test_deleting_what_an_arrow_is_tied_to_leaves_the_arrow_where_it_was(hand):
    hand.drag_handle("reply", "landing", (-3.0, 9.0))
    hand.view.select(("zone",))
    hand.key(Key.Key_Delete)
    assert hand.setting.shots["reply"].to.on is None
    assert anchor(hand.setting, "reply") == (-3.0, 9.0)


def test_delete_with_nothing_picked_means_nothing(hand):
    assert not hand.key(Key.Key_Delete)
    assert hand.document.stack.count() == 0


def test_delete_while_something_is_held_does_nothing(hand):
    hand.pull((2.0, -9.0), (3.0, -9.0))
    assert not hand.key(Key.Key_Delete)
    hand.release((3.0, -9.0))
    assert anchor(hand.setting, "cone") == (3.0, -9.0)


def test_ctrl_d_duplicates_and_picks_the_copies(hand):
    hand.view.select(("cone",))
    assert hand.key(Key.Key_D, "d", control=True)
    (copy,) = hand.view.selection
    assert copy != "cone"
    assert anchor(hand.setting, copy) == (2.6858, -9.9144)
    assert hand.undo_text == "Duplicate cone"


@pytest.mark.parametrize(
    ("key", "by"),
    [
        (Key.Key_Right, (0.3429, 0.0)),
        (Key.Key_Left, (-0.3429, 0.0)),
        (Key.Key_Up, (0.0, 0.4572)),
        (Key.Key_Down, (0.0, -0.4572)),
    ],
)
def test_arrow_keys_move_what_is_picked_by_half_a_racket_or_half_a_stride(hand, key, by):
    hand.view.select(("cone",))
    hand.key(key)
    assert anchor(hand.setting, "cone") == pytest.approx((2.0 + by[0], -9.0 + by[1]))


def test_shift_nudges_by_five_centimetres(hand):
    hand.view.select(("cone",))
    hand.key(Key.Key_Right, shift=True)
    assert anchor(hand.setting, "cone") == (2.05, -9.0)


def test_a_nudge_is_half_of_the_unit_that_distances_are_said_in(hand):
    hand.view.select(("cone",))
    hand.view.set_units("metres")
    hand.key(Key.Key_Right)
    hand.view.set_units("feet")
    hand.key(Key.Key_Up)
    # A foot is 0.3048 m exactly (international yard and pound agreement of 1959).
    assert anchor(hand.setting, "cone") == pytest.approx((2.5, -9.0 + 0.3048 / 2))


def test_one_nudge_after_another_is_one_step(hand):
    hand.view.select(("cone",))
    for _ in range(3):
        hand.key(Key.Key_Right)
    assert hand.document.stack.count() == 1
    hand.document.undo()
    assert anchor(hand.setting, "cone") == (2.0, -9.0)


@pytest.mark.parametrize(
    ("page", "by"),
    [
        (Page(across=True), (0.0, 0.4572)),
        (Page(turned=True), (-0.3429, 0.0)),
        (Page(across=True, turned=True), (0.0, -0.4572)),
    ],
)
def test_right_is_right_on_the_screen_however_the_court_lies(hand, page, by):
    hand.toolbox.page = page
    hand.view.select(("cone",))
    hand.key(Key.Key_Right)
    assert anchor(hand.setting, "cone") == pytest.approx((2.0 + by[0], -9.0 + by[1]))


def test_a_cross_goes_where_the_arrow_keys_send_it_and_space_presses_there(empty_hand):
    hand = empty_hand
    hand.view.set_tool("line")
    hand.place = (0.0, 0.0)
    hand.key(Key.Key_Up)
    assert hand.toolbox.cross == pytest.approx((0.0, 0.4572))
    hand.key(Key.Key_Space)
    for _ in range(2):
        hand.key(Key.Key_Right)
    hand.key(Key.Key_Space)
    (line,) = hand.setting.items.values()
    assert [tuple(map(float, corner)) for corner in line.corners] == [(0.0, 0.4572), (0.6858, 0.4572)]


def test_a_whole_rally_can_be_drawn_without_a_mouse(empty_hand):
    hand = empty_hand
    hand.letter("P", at=(0.0, -11.8872))
    hand.letter("P", at=(0.0, 11.8872))
    hand.view.select(())
    hand.letter("B", at=(0.0, -11.8872))
    hand.toolbox.put_cross((0.0, -11.8872))
    hand.key(Key.Key_Space)
    for _ in range(44):
        hand.key(Key.Key_Up)
    hand.key(Key.Key_Space)
    (shot,) = hand.setting.shots.values()
    assert shot.by == "A"
    assert shot.to.at == pytest.approx((0.0, -11.8872 + 44 * 0.4572))


def test_an_area_is_drawn_by_its_corners_and_split_without_a_mouse(empty_hand):
    hand = empty_hand
    hand.letter("G", at=(0.0, 0.0))
    hand.toolbox.put_cross((0.0, 0.0))
    for key, times in ((Key.Key_Right, 6), (Key.Key_Up, 8), (Key.Key_Left, 6)):
        hand.key(Key.Key_Space)
        for _ in range(times):
            hand.key(key)
    hand.key(Key.Key_Space)
    hand.key(Key.Key_Return)
    (area,) = hand.setting.items.values()
    assert len(area.shape.corners) == 4
    hand.letter("S")
    hand.toolbox.put_cross((1.3716, -0.4572))
    hand.key(Key.Key_Space)
    for _ in range(10):
        hand.key(Key.Key_Up)
    hand.key(Key.Key_Space)
    # Six half rackets wide, parted two rackets in: two thirds and one.
    widths = [item.shape.corners[1][0] - item.shape.corners[0][0] for item in hand.setting.items.values()]
    assert sorted(widths) == pytest.approx([0.6858, 1.3716])


def test_enter_opens_what_is_picked(hand):
    opened = []
    hand.toolbox.opened.connect(opened.append)
    assert not hand.key(Key.Key_Return)
    hand.view.select(("reply",))
    assert hand.key(Key.Key_Return)
    assert opened == ["reply"]


def test_a_double_click_opens_what_is_under_it(hand):
    opened = []
    hand.toolbox.opened.connect(opened.append)
    hand.toolbox.double_click(hand.pointer((2.0, -9.0)))
    assert opened == ["cone"]


def test_each_tool_says_what_the_next_press_does(hand):
    said = []
    hand.toolbox.prompt_changed.connect(said.append)
    for tool in TOOLS:
        hand.view.set_tool(tool)
        assert hand.toolbox.tool.prompt or tool == "select"
    assert all(said[:-1])


def test_w_turns_a_ball_in_the_air_from_shot_to_feed_to_run_and_back(hand):
    hand.letter("B", (0.0, -12.0))
    hand.click((0.0, -12.0))
    hand.letter("W", (1.0, 9.0))
    assert [shot.stroke for shot in hand.setting.shots.values()][-1] == "racket feed"
    hand.letter("W", (1.0, -9.0))
    assert hand.view.tool == "run"
    hand.letter("W", (1.0, 9.0))
    assert hand.view.tool == "ball"
    hand.click((1.0, 9.0))
    last = list(hand.setting.shots.values())[-1]
    assert (last.by, last.stroke, last.to.at) == ("A", None, (1.0, 9.0))
    assert hand.document.stack.count() == 1


def test_w_turns_the_ball_that_was_drawn_last_or_is_picked(hand):
    hand.view.select(("feed",))
    hand.letter("W")
    assert hand.setting.shots["feed"].stroke is None
    assert hand.undo_text == "Make it a shot"
    hand.letter("W")
    assert hand.setting.shots["feed"].stroke == "racket feed"


def test_w_with_nothing_that_it_could_turn_means_nothing(hand):
    hand.view.select(("cone",))
    assert not hand.letter("W")
    assert hand.document.stack.count() == 0


def test_x_gives_a_run_to_somebody_else(hand):
    hand.view.set_tool("run")
    hand.click((0.0, -12.0))
    hand.letter("X", (2.0, 10.0))
    hand.click((2.0, 10.0))
    assert list(hand.setting.runs.values())[-1].by == "B"
