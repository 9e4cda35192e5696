import pytest

from designer.drill.edits import delete
from designer.drill.places import anchor

A = (0.0, -12.0)


@pytest.fixture
def runner(hand):
    hand.view.set_tool("run")
    return hand


def drawn(hand):
    """The run that was just drawn."""
    (id,) = hand.view.selection
    return hand.setting.runs[id]


def test_a_drag_from_a_person_is_a_run_during_the_last_ball(runner):
    runner.drag(A, (-4.0, -11.0))
    run = drawn(runner)
    assert (run.by, run.during, run.to.at) == ("A", "reply", (-4.0, -11.0))
    assert runner.undo_text == "Add a run"
    assert runner.view.tool == "run"


def test_two_clicks_do_the_same_and_esc_between_them_leaves_nothing(runner):
    runner.click(A)
    runner.hover((-4.0, -11.0))
    assert len(runner.setting.runs) == 3
    runner.escape()
    assert len(runner.setting.runs) == 2
    runner.click(A)
    runner.click((-4.0, -11.0))
    assert drawn(runner).to.at == (-4.0, -11.0)


def test_it_is_made_during_the_ball_that_is_picked(runner):
    runner.view.select(("feed",))
    runner.drag(A, (3.0, -10.0))
    assert drawn(runner).during == "feed"


def test_shift_and_a_click_adds_places_on_the_way_and_backspace_takes_them_back(runner):
    runner.click(A)
    for at in ((1.0, -13.0), (2.0, -13.0), (9.0, -9.0)):
        runner.click(at, shift=True)
    assert runner.toolbox.tool.take_back()
    runner.click((3.0, -12.0))
    assert drawn(runner).via == ((1.0, -13.0), (2.0, -13.0))


def test_an_end_over_a_thing_is_tied_to_it(runner):
    runner.drag(A, (2.0, -9.0))
    assert drawn(runner).to.on == "cone"
    assert anchor(runner.setting, drawn(runner).id) == (2.0, -9.0)


@pytest.mark.parametrize(
    ("during", "end", "purpose"),
    [
        ("feed", (3.2, -8.5), "reach"),  # towards where B's feed comes down
        ("reply", (-0.2, -12.0), "recover"),  # A has just hit it
    ],
)
def test_what_a_run_is_for_is_guessed(runner, during, end, purpose):
    from designer.drill.edits import delete

    runner.document.perform("Without", delete(runner.document.drill, runner.view.at, ("wide", "back")))
    runner.view.select((during,))
    runner.drag(A, end)
    assert drawn(runner).purpose == purpose


def test_back_to_where_one_stood_is_to_recover(runner):
    from designer.drill.edits import delete

    runner.document.perform("Without", delete(runner.document.drill, runner.view.at, ("back",)))
    runner.drag(A, (0.3, -12.0))
    assert drawn(runner).purpose == "recover"


def test_a_run_to_where_one_meets_a_ball_is_made_while_that_ball_comes(runner):
    from designer.drill.edits import delete

    runner.document.perform("Without", delete(runner.document.drill, runner.view.at, ("wide", "back")))
    runner.view.select(("reply",))
    runner.drag(A, (3.0, -11.2))
    assert (drawn(runner).during, drawn(runner).purpose) == ("feed", "reach")
    runner.drag((3.0, -11.2), (0.2, -12.1), under=())
    assert (drawn(runner).during, drawn(runner).purpose) == ("reply", "recover")


def test_without_anyone_on_court_there_is_no_run_and_it_is_said_why(empty_hand):
    empty_hand.view.set_tool("run")
    empty_hand.drag((0.0, -5.0), (0.0, 8.0))
    assert not empty_hand.setting.runs
    assert empty_hand.said == ["Put a player on the court first: a run needs someone to make it."]


def test_a_run_from_where_a_ball_is_met_brings_its_hitter_there_first(hand):
    hand.document.perform("Stand", delete(hand.document.drill, hand.view.at, ("wide", "back")))
    hand.view.set_tool("run")
    hand.click((3.2, -11.0), under=("reply",))
    hand.click((0.0, -12.0))
    to_it, back = hand.setting.runs.values()
    assert (to_it.by, to_it.during, to_it.to.at, to_it.purpose) == ("A", "feed", (3.2, -11.0), "reach")
    assert (back.by, back.during, back.purpose) == ("A", "reply", "recover")
    assert hand.bench.play(hand.setting).run_paths[back.id] == ((3.2, -11.0), (0.0, -12.0))
    assert hand.document.stack.count() == 2, "both are one step"


def test_a_run_to_where_it_begins_is_refused_in_words_and_goes_on(hand):
    hand.view.set_tool("run")
    hand.click((0.0, 12.0))
    hand.click((0.02, 12.0))
    assert hand.said == ["A run has to go somewhere: click where it ends, away from where it begins."]
    assert hand.toolbox.tool.busy
    hand.click((2.0, 12.0))
    assert list(hand.setting.runs.values())[-1].to.at == (2.0, 12.0)
