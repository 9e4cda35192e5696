import pytest

from designer.desktop.canvas.placing import NAMES, PLACED
from designer.drill.drill import Drill, Progression
from designer.drill.people import Job
from designer.drill.places import anchor


def test_a_click_places_the_thing_picks_it_and_hands_back_the_arrow(empty_hand):
    hand = empty_hand
    hand.view.set_tool("cone")
    hand.click((1.0, -5.0))
    (cone,) = hand.setting.items.values()
    assert cone.kind == "cone"
    assert cone.place.at == (1.0, -5.0)
    assert hand.view.selection == {cone.id}
    assert hand.view.tool == "select"
    assert hand.undo_text == "Add a cone"


def test_it_can_be_dragged_to_its_place_and_stands_where_it_is_let_go(empty_hand):
    hand = empty_hand
    hand.view.set_tool("disc")
    hand.pull((1.0, -5.0), (2.0, -6.0))
    assert [item.place.at for item in hand.setting.items.values()] == [(2.0, -6.0)], "seen while it is held"
    assert not hand.document.drill.progressions[0].changes.items
    hand.release((3.0, -7.0))
    assert [item.place.at for item in hand.setting.items.values()] == [(3.0, -7.0)]
    assert hand.document.stack.count() == 1


def test_esc_while_it_is_held_leaves_nothing_and_the_tool_in_hand(empty_hand):
    hand = empty_hand
    hand.view.set_tool("cone")
    hand.pull((1.0, -5.0), (2.0, -6.0))
    hand.escape()
    assert not hand.setting.items
    assert hand.document.stack.count() == 0
    assert hand.view.tool == "cone"
    hand.release((2.0, -6.0))
    assert not hand.setting.items
    hand.escape()
    assert hand.view.tool == "select"


def test_shift_keeps_the_tool_for_a_row_of_them(empty_hand):
    hand = empty_hand
    hand.view.set_tool("cone")
    for x in (0.0, 1.0, 2.0):
        hand.click((x, 0.0), shift=True)
    assert len(hand.setting.items) == 3
    assert hand.document.stack.count() == 3


@pytest.mark.parametrize("kind", PLACED)
def test_every_kind_can_be_placed_and_taken_back(empty_hand, kind):
    hand = empty_hand
    hand.view.set_tool(kind)
    hand.click((1.0, -5.0))
    (id,) = hand.view.selection
    assert anchor(hand.setting, id) == (1.0, -5.0)
    assert hand.undo_text == f"Add {NAMES[kind]}"
    before = hand.document.drill
    hand.document.undo()
    assert not hand.setting.ids()
    hand.document.redo()
    assert hand.document.drill == before


def test_players_take_the_next_free_job_and_a_coach_is_a_coach(empty_hand):
    hand = empty_hand
    for kind, at in (("player", (0.0, -12.0)), ("coach", (6.0, 0.0)), ("player", (0.0, 12.0))):
        hand.view.set_tool(kind)
        hand.click(at)
    assert [(job.letter, job.by) for job in hand.document.drill.jobs] == [
        ("A", "player"),
        ("B", "coach"),
        ("C", "player"),
    ]
    assert {spot.job for spot in hand.setting.spots.values()} == {"A", "B", "C"}


def test_a_player_takes_a_job_that_nobody_has_here(empty_hand):
    hand = empty_hand
    hand.document.perform("Jobs", hand.document.drill.changed(jobs=(Job(letter="A"), Job(letter="B"))))
    hand.view.set_tool("player")
    hand.click((0.0, -12.0))
    assert len(hand.document.drill.jobs) == 2
    assert hand.setting.spot_of("A") is not None


def test_after_z_there_are_no_more_players_and_it_is_said(empty_hand):
    hand = empty_hand
    letters = "ABCDEFGHIJKLMNOPQRSTUVWXYZ"
    drill = Drill(
        id="d", jobs=tuple(Job(letter=letter, by="coach") for letter in letters), progressions=(Progression(id="p"),)
    )
    hand.document.perform("Many", drill)
    hand.view.set_tool("player")
    hand.click((0.0, -12.0))
    assert not hand.setting.spots
    assert hand.said == ["No more players: there are no letters left: a drill has at most 26 jobs."]


def test_it_is_said_where_it_would_stand_before_it_does(empty_hand):
    hand = empty_hand
    hand.view.set_snapping(True)
    hand.view.set_tool("cone")
    hand.hover((2.74, -10.95))
    assert hand.bench.guide.words.splitlines() == [
        "2 rackets in from the right singles line, 1 stride inside the baseline",
        "Half rackets; whole strides",
    ]
    hand.click((2.74, -10.95))
    assert [item.place.at for item in hand.setting.items.values()] == [(2.7432, -10.9728)]
