import pytest

from designer.drill.places import anchor


def at(hand, id):
    return anchor(hand.setting, id)


def test_a_click_picks_and_a_click_on_bare_ground_lets_go(hand):
    hand.click((2.0, -9.0))
    assert hand.view.selection == {"cone"}
    hand.click((-6.0, -3.0))
    assert hand.view.selection == frozenset()
    assert hand.document.stack.count() == 0


@pytest.mark.parametrize("held", ["shift", "control"])
def test_a_click_with_shift_or_ctrl_adds_and_takes_away(hand, held):
    hand.click((2.0, -9.0))
    hand.click((0.0, -12.0), **{held: True})
    assert hand.view.selection == {"cone", "spot-a"}
    hand.click((2.0, -9.0), **{held: True})
    assert hand.view.selection == {"spot-a"}


def test_a_drag_moves_what_was_pressed_as_one_step(hand):
    hand.drag((2.0, -9.0), (3.5, -7.0))
    assert at(hand, "cone") == (3.5, -7.0)
    assert hand.undo_text == "Move cone"
    hand.document.undo()
    assert at(hand, "cone") == (2.0, -9.0)
    assert not hand.document.stack.canUndo()


def test_what_is_picked_moves_together_and_is_counted(hand):
    hand.view.select(("cone", "spot-a", "line"))
    hand.drag((2.0, -9.0), (3.0, -8.0))
    assert at(hand, "cone") == (3.0, -8.0)
    assert at(hand, "spot-a") == (1.0, -11.0)
    assert hand.setting.items["line"].corners == ((4.0, 3.0), (4.0, 6.0))
    assert hand.undo_text == "Move 3 items"
    assert hand.view.selection == {"cone", "spot-a", "line"}


def test_a_click_on_one_of_several_picked_picks_it_alone_but_a_drag_keeps_them(hand):
    hand.view.select(("cone", "spot-a"))
    hand.click((2.0, -9.0))
    assert hand.view.selection == {"cone"}


def test_the_drag_is_seen_before_it_is_settled_and_esc_leaves_no_trace(hand):
    hand.drag((2.0, -9.0), (3.0, -9.0))
    hand.document.undo()
    before = hand.document.drill
    hand.pull((2.0, -9.0), (4.0, -6.0))
    assert at(hand, "cone") == (4.0, -6.0)
    assert hand.document.drill is before
    assert hand.escape()
    assert at(hand, "cone") == (2.0, -9.0)
    assert hand.document.drill is before
    assert hand.document.stack.canRedo(), "what was undone can still be done again"
    hand.release((4.0, -6.0))
    assert hand.document.drill is before, "the release after Esc does nothing"


def test_a_drag_back_to_the_start_is_no_step(hand):
    hand.pull((2.0, -9.0), (4.0, -6.0), (2.0, -9.0))
    hand.release((2.0, -9.0))
    assert hand.document.stack.count() == 0


def test_a_tremble_of_the_hand_moves_nothing(hand):
    hand.drag((2.0, -9.0), (2.05, -9.05))
    assert at(hand, "cone") == (2.0, -9.0)
    assert hand.view.selection == {"cone"}


def test_the_whole_movement_counts_not_the_steps_of_it(hand):
    hand.pull((2.0, -9.0), *((2.0 + 0.01 * step, -9.0) for step in range(1, 301)))
    hand.release((5.0, -9.0))
    assert at(hand, "cone") == (5.0, -9.0)


def test_a_band_picks_what_lies_whole_inside_it(hand):
    hand.drag((-6.0, -14.0), (2.5, -8.0))
    assert hand.view.selection == {"cone", "spot-a"}
    assert hand.document.stack.count() == 0


def test_a_band_with_shift_adds(hand):
    hand.view.select(("line",))
    hand.drag((-6.0, -14.0), (2.5, -8.0), shift=True)
    assert hand.view.selection == {"line", "cone", "spot-a"}


def test_a_band_that_is_left_gives_back_what_was_picked(hand):
    hand.view.select(("line",))
    hand.pull((-6.0, -14.0), (2.5, -8.0))
    hand.escape()
    assert hand.view.selection == {"line"}


def test_a_drag_inside_an_area_draws_a_band_until_the_area_is_picked(hand):
    hand.drag((-2.0, 8.0), (-1.0, 9.0))
    assert hand.document.stack.count() == 0
    hand.view.select(("zone",))
    hand.drag((-2.0, 8.0), (-1.0, 9.0))
    assert hand.setting.items["zone"].shape.corners == ((-3.0, 7.0), (1.0, 12.0))


@pytest.mark.parametrize("held", ["alt", "control"])
def test_a_drag_with_alt_or_ctrl_moves_a_copy(hand, held):
    hand.drag((2.0, -9.0), (4.0, -9.0), **{held: True})
    (copy,) = hand.view.selection
    assert at(hand, "cone") == (2.0, -9.0)
    assert at(hand, copy) == (4.0, -9.0)
    assert hand.undo_text == "Duplicate cone"
    hand.document.undo()
    assert copy not in hand.setting.items


def test_a_copy_keeps_its_id_from_step_to_step(hand):
    hand.pull((2.0, -9.0), (3.0, -9.0), alt=True)
    first = hand.view.selection
    hand.toolbox.move(hand.pointer((4.0, -9.0), alt=True))
    assert hand.view.selection == first


def test_the_copy_of_a_player_is_another_player(hand):
    hand.drag((0.0, -12.0), (2.0, -12.0), alt=True)
    (copy,) = hand.view.selection
    assert hand.setting.spots[copy].job == "C"
    assert [job.letter for job in hand.document.drill.jobs] == ["A", "B", "C"]


def test_alt_and_a_click_goes_through_what_lies_under_one_another(hand):
    hand.drag((2.0, -9.0), (-2.0, 8.0))
    hand.click((-2.0, 8.0))
    assert hand.view.selection == {"cone"}
    hand.click((-2.0, 8.0), alt=True)
    assert hand.view.selection == {"zone"}
    hand.click((-2.0, 8.0), alt=True)
    assert hand.view.selection == {"cone"}


def test_a_corner_of_an_area_is_pulled_and_the_opposite_one_stays(hand):
    hand.view.select(("zone",))
    hand.drag_handle("zone", "corner", (1.0, 12.0), index=2)
    assert hand.setting.items["zone"].shape.corners == ((-4.0, 6.0), (1.0, 12.0))
    assert hand.undo_text == "Reshape area"


def test_an_end_of_a_line_is_pulled(hand):
    hand.view.select(("line",))
    hand.drag_handle("line", "corner", (4.0, 6.0), index=1)
    assert hand.setting.items["line"].corners == ((3.0, 2.0), (4.0, 6.0))


def test_a_landing_let_go_over_a_zone_is_tied_to_it_and_moves_with_it(hand):
    hand.view.select(("reply",))
    hand.drag_handle("reply", "landing", (-3.0, 9.0))
    to = hand.setting.shots["reply"].to
    assert to.on == "zone"
    assert at(hand, "reply") == (-3.0, 9.0)
    hand.view.select(("zone",))
    hand.drag((-1.0, 7.0), (0.0, 7.0))
    assert at(hand, "reply") == (-2.0, 9.0)


def test_a_landing_let_go_on_bare_ground_is_free(hand):
    hand.drag_handle("reply", "landing", (-3.0, 9.0))
    hand.drag_handle("reply", "landing", (3.0, 9.0))
    assert hand.setting.shots["reply"].to.on is None


def test_the_start_of_an_arrow_let_go_on_a_person_becomes_that_persons(hand):
    hand.drag_handle("reply", "contact", (0.0, 12.0))
    reply = hand.setting.shots["reply"]
    assert reply.by == "B"
    assert reply.contact is None


def test_a_run_is_bent_by_the_handle_in_its_middle(hand):
    hand.drag_handle("wide", "new way-point", (1.5, -13.0))
    assert hand.setting.runs["wide"].via == ((1.5, -13.0),)
    hand.drag_handle("wide", "way-point", (1.5, -13.5))
    assert hand.setting.runs["wide"].via == ((1.5, -13.5),)
    assert hand.undo_text == "Bend run of A"


def test_a_player_is_turned_by_the_handle_in_front(hand):
    hand.drag_handle("spot-a", "facing", (5.0, -12.0))
    assert hand.setting.spots["spot-a"].facing == 90
    assert at(hand, "spot-a") == (0.0, -12.0)
    assert hand.undo_text == "Turn player A"


def test_arrows_follow_the_person_and_the_thing_they_are_tied_to(hand):
    hand.drag_handle("wide", "end", (2.0, -9.0))
    assert hand.setting.runs["wide"].to.on == "cone"
    hand.drag((2.0, -9.0), (3.0, -8.0))
    assert at(hand, "wide") == (3.0, -8.0)


def test_what_would_leave_the_drawing_stays_where_it_last_was(hand):
    hand.drag((2.0, -9.0), (48.0, -9.0))
    hand.view.select(("cone", "spot-a"))
    hand.pull((48.0, -9.0), (49.0, -9.0), (50.0, -9.0))
    hand.release((5000.0, -9.0))
    assert abs(at(hand, "cone")[0]) <= 100
    assert hand.document.stack.count() <= 2


def test_a_drag_snaps_and_says_where_it_is(hand):
    hand.view.set_snapping(True)
    hand.pull((2.0, -9.0), (4.05, -11.85))
    assert at(hand, "cone") == (4.1148, -11.8872)
    assert "singles corner" in hand.bench.guide.words
    assert hand.bench.guide.snapped
    hand.toolbox.move(hand.pointer((4.05, -11.85), alt=True))
    assert at(hand, "cone") == (4.05, -11.85), "Alt holds snapping off"
    hand.release((4.05, -11.85), alt=True)
    assert hand.bench.guide.words == ""


def test_a_read_only_drill_says_so_and_does_not_move(hand):
    hand.document.read_only = True
    hand.drag((2.0, -9.0), (4.0, -9.0))
    assert at(hand, "cone") == (2.0, -9.0)
    assert hand.view.selection == {"cone"}
