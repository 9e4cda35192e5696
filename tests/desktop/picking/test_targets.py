"""What can be picked where: the thing itself first, then lines, then the smaller part of the court before the larger."""

import pytest

from designer.bundle import sample
from designer.court.standards import ground
from designer.desktop.forms.context import Context, areas, letters
from designer.desktop.picking.targets import targets, under
from designer.drill.setting import At, setting_at
from designer.storage.reading import open_drill


@pytest.fixture
def context(source):
    drill = open_drill(sample("wide-start.drill.json")).drill
    at = At("p-fed")
    return Context(drill, at, setting_at(drill, at), source)


@pytest.fixture
def found(context):
    return targets(context.setting, ground(context.drill.court), areas(context))


def values(found, point, ids=(), reach=0.2):
    return [target.value for target in under(found, point, ids, reach)]


def test_a_thing_comes_before_a_line_and_a_line_before_the_parts_of_the_court(found):
    # The right singles line of the far end is at x = -13 ft 6 in (ITF Rules of Tennis 2025, rule 1).
    here = values(found, (-4.1148, 8.0), ids=("reply-zone",))
    assert here[:2] == ["reply-zone", "the right singles line"]
    assert set(here[2:]) >= {"right back court", "back court", "right half", "singles court"}


def test_parts_of_the_court_are_those_of_the_player_at_that_end_the_smaller_first(found):
    near, far = values(found, (2.0, -3.0)), values(found, (2.0, 3.0))
    assert near.index("right service box") < near.index("right half") < near.index("singles court")
    assert "left service box" in far
    assert "right service box" not in far


def test_what_both_ends_share_is_there_once(found):
    assert sum(target.value == "the net" for target in found) == 1
    assert sum(target.value == "the baseline" for target in found) == 2


def test_a_letter_is_picked_by_the_person_who_stands_for_it(context):
    found = targets(context.setting, ground(context.drill.court), [*letters(context), ("winner", "the winner")])
    assert {target.value: target.id for target in found} == {
        spot.job: spot.id for spot in context.setting.spots.values()
    }
