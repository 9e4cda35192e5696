import pytest

NB = "\N{NO-BREAK SPACE}"


@pytest.fixture
def cutting(hand):
    hand.view.set_tool("split area")
    return hand


def test_a_line_dragged_across_shows_both_shares_and_splits_as_one_step(cutting):
    cutting.pull((-3.0, 5.0), (-3.0, 12.0))
    tags = [words.splitlines()[0] for _, words in cutting.bench.guide.tags]
    assert tags == [f"25{NB}%", f"75{NB}%"]
    assert cutting.document.stack.count() == 0
    cutting.release((-3.0, 12.0))
    assert cutting.undo_text == "Split area"
    assert len(cutting.view.selection) == 2
    corners = sorted(cutting.setting.items[id].shape.corners for id in cutting.view.selection)
    assert corners == [((-4.0, 6.0), (-3.0, 11.0)), ((-3.0, 6.0), (0.0, 11.0))]
    cutting.document.undo()
    assert [item.kind for item in cutting.setting.items.values()].count("area") == 1


def test_two_clicks_do_the_same(cutting):
    cutting.click((-3.0, 5.0))
    cutting.hover((-3.0, 12.0))
    assert cutting.bench.guide.tags
    cutting.click((-3.0, 12.0))
    assert len(cutting.view.selection) == 2


def test_a_line_beside_it_says_that_it_missed_and_changes_nothing(cutting):
    cutting.drag((2.0, 5.0), (2.0, 12.0))
    assert cutting.said == ["That line splits no area in two: draw it across one."]
    cutting.drag((-3.0, -8.0), (-3.0, -12.0))
    assert len(cutting.said) == 2, "run on it would go through, but it was not drawn across"
    assert cutting.document.stack.count() == 0


def test_with_no_area_it_says_what_to_do(empty_hand):
    empty_hand.view.set_tool("split area")
    empty_hand.drag((2.0, 5.0), (2.0, 12.0))
    assert empty_hand.said == ["There is no area to split: draw one first."]


def test_esc_leaves_no_trace(cutting):
    cutting.pull((-3.0, 5.0), (-3.0, 12.0))
    cutting.escape()
    assert not cutting.bench.guide.tags
    cutting.release((-3.0, 12.0))
    assert cutting.document.stack.count() == 0
