import pytest
from PySide6.QtCore import Qt

from designer.drill.base import place
from designer.drill.drill import Drill, Progression
from designer.drill.edits import put
from designer.drill.items import BallMachine
from designer.drill.places import anchor

A, B = (0.0, -12.0), (0.0, 12.0)


@pytest.fixture
def pair(empty_hand):
    """Two players on an empty court, the ball in hand."""
    for at in (A, B):
        empty_hand.view.set_tool("player")
        empty_hand.click(at)
    empty_hand.view.select(())
    empty_hand.view.set_tool("ball")
    return empty_hand


def chain(hand):
    """The shots in order of play."""
    order, after = [], None
    while (shot := next((s for s in hand.setting.shots.values() if s.after == after), None)) is not None:
        order.append(shot)
        after = shot.id
    return order


def test_a_drag_from_the_hitter_is_a_ball_to_where_it_is_let_go(pair):
    steps = pair.document.stack.count()
    pair.drag(A, (-2.0, 8.0))
    (shot,) = pair.setting.shots.values()
    assert (shot.by, shot.after, shot.contact, shot.to.at) == ("A", None, None, (-2.0, 8.0))
    assert pair.undo_text == "Add a ball"
    assert pair.document.stack.count() == steps + 1
    assert pair.view.selection == {shot.id}
    assert pair.view.tool == "ball"


def test_clicks_draw_a_chain_each_ball_after_the_one_before(pair):
    for at in (A, (2.0, 8.0), (2.5, 11.0), (-3.0, -9.0), (-3.2, -11.0), (3.0, 9.0)):
        pair.click(at)
    shots = chain(pair)
    assert [shot.by for shot in shots] == ["A", "B", "A"], "whoever is nearest to where the ball is met hits it"
    assert [shot.to.at for shot in shots] == [(2.0, 8.0), (-3.0, -9.0), (3.0, 9.0)]
    assert [shot.contact and shot.contact.at for shot in shots] == [None, (2.5, 11.0), (-3.2, -11.0)]
    assert pair.document.stack.count() == 2 + 3, "each ball is one step"


def test_a_ball_met_by_clicking_a_person_is_hit_where_that_person_stands(pair):
    for at in (A, (2.0, 8.0), B, (-3.0, -9.0)):
        pair.click(at)
    assert [(shot.by, shot.contact) for shot in chain(pair)] == [("A", None), ("B", None)]


def test_the_ball_is_seen_in_the_air_and_esc_leaves_only_that_one_out(pair):
    for at in (A, (2.0, 8.0), (2.5, 11.0)):
        pair.click(at)
    pair.hover((-3.0, -9.0))
    assert len(pair.setting.shots) == 2
    pair.escape()
    assert len(pair.setting.shots) == 1
    assert not pair.document.previewing
    assert pair.view.tool == "ball"


def test_enter_ends_a_chain_and_the_next_ball_starts_from_a_hitter(pair):
    for at in (A, (2.0, 8.0)):
        pair.click(at)
    pair.key(Qt.Key.Key_Return)
    assert "hitter" in pair.toolbox.tool.prompt
    pair.drag(B, (1.0, -8.0))
    assert [shot.by for shot in chain(pair)] == ["A", "B"], "it still follows the last ball"


def test_backspace_takes_back_the_last_ball_and_the_chain_goes_on(pair):
    for at in (A, (2.0, 8.0), B, (-3.0, -9.0)):
        pair.click(at)
    pair.key(Qt.Key.Key_Backspace)
    assert len(pair.setting.shots) == 1
    for at in (B, (3.0, -7.0)):
        pair.click(at)
    assert [shot.to.at for shot in chain(pair)] == [(2.0, 8.0), (3.0, -7.0)]
    for _ in range(2):
        pair.key(Qt.Key.Key_Backspace)
    assert not pair.setting.shots
    assert len(pair.setting.spots) == 2, "it takes back balls, not players"


def test_backspace_takes_the_right_ball_when_something_else_was_done_since(pair):
    pair.drag(A, (2.0, 8.0))
    pair.document.perform("Name", pair.document.drill.changed(title="Wide"))
    pair.key(Qt.Key.Key_Backspace)
    assert not pair.setting.shots
    assert pair.document.drill.title == "Wide"


def test_the_same_hitter_again_is_another_choice_beside_the_first(pair):
    pair.drag(A, (2.0, 8.0))
    pair.drag(A, (-2.0, 8.0))
    assert [shot.after for shot in pair.setting.shots.values()] == [None, None]
    assert {shot.by for shot in pair.setting.shots.values()} == {"A"}


def test_a_ball_follows_the_one_that_is_picked(pair):
    pair.drag(A, (2.0, 8.0))
    first = next(iter(pair.view.selection))
    pair.drag(B, (1.0, -8.0))
    pair.toolbox.end()
    pair.view.select((first,))
    pair.drag(B, (-1.0, -8.0))
    assert [shot.after for shot in pair.setting.shots.values()] == [None, first, first]


def test_x_gives_the_ball_in_the_air_to_somebody_else(pair):
    pair.click((0.5, -3.0))
    pair.hover((2.0, 8.0))
    assert [shot.by for shot in pair.setting.shots.values()] == ["A"]
    pair.letter("X")
    pair.click((2.0, 8.0))
    assert [shot.by for shot in pair.setting.shots.values()] == ["B"]


def test_the_feed_tool_feeds_once_and_then_the_ball_is_in_play(pair):
    pair.view.set_tool("feed")
    for at in (B, (1.0, -8.0), A, (2.0, 8.0)):
        pair.click(at)
    assert [(shot.by, shot.stroke) for shot in chain(pair)] == [("B", "racket feed"), ("A", None)]


def test_the_first_ball_of_whoever_is_said_to_feed_is_a_feed(pair):
    jobs = tuple(job.changed(role="feeds") if job.letter == "B" else job for job in pair.document.drill.jobs)
    pair.document.perform("Role", pair.document.drill.changed(jobs=jobs))
    pair.drag(B, (1.0, -8.0))
    pair.drag(A, (1.0, 8.0))
    assert [shot.stroke for shot in chain(pair)] == ["racket feed", None]


def test_a_ball_from_a_machine_is_the_machines(empty_hand):
    hand = empty_hand
    machine = BallMachine(kind="ball machine", id="machine", place=place(0.0, 10.0))
    hand.document.perform("Machine", put(hand.document.drill, hand.view.at, machine))
    hand.view.set_tool("ball")
    hand.drag((0.0, 10.0), (1.0, -8.0))
    (shot,) = hand.setting.shots.values()
    assert (shot.by, shot.stroke, shot.contact.on) == ("M", "machine feed", "machine")
    assert [(job.letter, job.by) for job in hand.document.drill.jobs] == [("M", "machine")]


def test_a_landing_over_a_zone_is_tied_to_it(hand):
    hand.view.set_tool("ball")
    hand.drag(A, (-3.0, 9.0))
    (id,) = hand.view.selection
    assert hand.setting.shots[id].to.on == "zone"
    assert anchor(hand.setting, id) == (-3.0, 9.0)


def test_without_anyone_on_court_there_is_no_ball_and_it_is_said_why(empty_hand):
    empty_hand.view.set_tool("ball")
    empty_hand.drag((0.0, -5.0), (0.0, 8.0))
    assert not empty_hand.setting.shots
    assert empty_hand.said == ["Put a player on the court first: a ball needs someone to hit it."]


def test_another_tool_ends_the_chain_and_keeps_what_is_drawn(pair):
    for at in (A, (2.0, 8.0), (2.5, 11.0)):
        pair.click(at)
    pair.hover((-3.0, -9.0))
    pair.view.set_tool("select")
    assert len(pair.setting.shots) == 1
    assert not pair.document.previewing


def test_going_to_another_progression_leaves_the_ball_in_the_air(pair):
    drill = pair.document.drill
    two = drill.changed(progressions=(*drill.progressions, Progression(id="q")))
    pair.document.perform("Add a progression", two)
    pair.click(A)
    pair.hover((2.0, 8.0))
    from designer.drill.setting import At

    pair.view.go_to(At("q"))
    assert not pair.document.previewing
    assert not pair.setting.shots
    assert isinstance(pair.document.drill, Drill)


def test_a_ball_to_where_it_is_hit_is_refused_in_words_and_goes_on(hand):
    before = dict(hand.setting.shots)
    hand.view.set_tool("ball")
    hand.click((0.0, -12.0))
    hand.click((0.0, -12.0))
    assert hand.said == ["A ball has to go somewhere: click where it lands, away from where it is hit."]
    assert dict(hand.setting.shots) == before
    hand.click((1.0, 9.0))
    assert len(hand.setting.shots) == len(before) + 1


def test_three_choices_are_one_fan_from_where_the_first_was_met(hand):
    hand.view.set_tool("ball")
    hand.view.select(("reply",))
    for landing in ((3.0, 9.0), (0.0, 3.0)):
        hand.click((0.0, -12.0))
        hand.click(landing)
        hand.toolbox.end()
    play = hand.bench.play(hand.setting)
    assert {step.contact for step in play.steps if step.hitter == "A"} == {(3.2, -11.0)}
    assert len(play.step("reply").fan) == 3
    assert [step.digit for step in play.steps] == [1, 2, 2, 2]
