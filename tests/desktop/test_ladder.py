"""Progressions and variations added, copied, moved: nothing else may change."""

import pytest

from designer.desktop import ladder
from designer.drill import edits
from designer.drill.base import place
from designer.drill.items import Cone
from designer.drill.setting import At, addresses, setting_at


def cone(id, x):
    return Cone(kind="cone", id=id, place=place(x, 0))


@pytest.fixture
def drill(document, source):
    """Two progressions with a cone each of their own, and a harder one in which the first has moved."""
    first = document.drill.progressions[0].id
    drill = edits.put(document.drill, At(first), cone("one", 1))
    drill, second = ladder.added(drill, first, source, "Second")
    drill = edits.put(drill, second, cone("two", 2))
    drill, harder = ladder.varied(drill, second.progression, "harder", source, "Wider")
    return edits.put(drill, harder, cone("one", 5))


def test_a_new_progression_begins_as_the_one_before_it(document, source):
    first = At(document.drill.progressions[0].id)
    drill = edits.put(document.drill, first, cone("one", 1))
    drill, made = ladder.added(drill, first.progression, source)
    assert setting_at(drill, made) == setting_at(drill, first)
    assert drill.progressions[1].changes.items == ()


def test_a_copy_brings_its_variations_and_changes_nothing_else(drill, source):
    before = {at: setting_at(drill, at) for at in addresses(drill)}
    second = drill.progressions[1]
    copied, made = ladder.copied(drill, second.id, source)
    assert setting_at(copied, made) == before[At(second.id)]
    harder = ladder.of_degree(copied, made, "harder")
    assert [each.name for each in harder] == ["Wider"]
    assert setting_at(copied, At(made.progression, harder[0].id)).find("one").place.at == (5, 0)
    for at, setting in before.items():
        assert setting_at(copied, at) == setting
    ids = [name for at in addresses(copied) for name in (at.variation or at.progression,)]
    assert len(set(ids)) == len(ids)


@pytest.mark.parametrize(("by", "order"), [(-1, [1, 0]), (1, [0, 1]), (-9, [1, 0])])
def test_moving_keeps_every_setting(drill, by, order):
    before = {at: setting_at(drill, at) for at in addresses(drill)}
    ids = [progression.id for progression in drill.progressions]
    moved = ladder.moved(drill, ids[1], by)
    assert [progression.id for progression in moved.progressions] == [ids[number] for number in order]
    for at, setting in before.items():
        assert setting_at(moved, at) == setting


def test_settings_are_called_by_number_name_and_degree(drill):
    second = drill.progressions[1]
    assert ladder.called(drill, At(second.id)) == "2 Second"
    assert ladder.called(drill, At(second.id, second.harder[0].id)) == "2 Second, harder: Wider"
    assert ladder.degree_of(drill, At(second.id)) is None
    assert ladder.degree_of(drill, At(second.id, second.harder[0].id)) == "harder"


def test_neighbours_end_at_the_ends(drill):
    first, second = (At(progression.id) for progression in drill.progressions)
    assert ladder.neighbour(drill, first, 1) == second
    assert ladder.neighbour(drill, second, 1) == second
    assert ladder.neighbour(drill, first, -1) == first


def test_what_a_setting_has_of_its_own_is_told_and_let_go(drill):
    first, second = (At(progression.id) for progression in drill.progressions)
    harder = At(second.progression, drill.progressions[1].harder[0].id)
    assert ladder.owns(drill, first) == (), "nothing lies below the first"
    assert ladder.owns(drill, second) == (ladder.Own("two", "new"),)
    assert ladder.owns(drill, harder) == (ladder.Own("one", "changed"),)
    without = edits.delete(drill, harder, ["two"])
    assert set(ladder.owns(without, harder)) == {ladder.Own("one", "changed"), ladder.Own("two", "gone")}
    back = ladder.let_go(without, harder, ["two"])
    assert ladder.owns(back, harder) == (ladder.Own("one", "changed"),)
    assert setting_at(ladder.let_go(without, harder, ["one", "two"]), harder) == setting_at(drill, second)


def test_the_court_in_play_and_the_ball_are_let_go_too(drill):
    from dataclasses import replace

    second = At(drill.progressions[1].id)
    told = replace(setting_at(drill, second), in_play="right half", ball="a soft one")
    changed = edits.with_setting(drill, second, told)
    assert {own.id for own in ladder.owns(changed, second)} == {"two", ladder.IN_PLAY, ladder.BALL}
    half = ladder.let_go(changed, second, [ladder.BALL])
    assert (setting_at(half, second).ball, setting_at(half, second).in_play) == (None, "right half")
    assert ladder.let_go(changed, second, [ladder.BALL, ladder.IN_PLAY]) == drill
