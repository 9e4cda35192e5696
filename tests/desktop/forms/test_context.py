"""What a form offers to choose from: what is drawn first, then what the court and the game bring."""

import pytest

from designer.bundle import sample
from designer.court.regions import line_words, region_words
from designer.court.standards import ground
from designer.desktop.forms import context as here
from designer.desktop.forms.context import Context
from designer.drill.conditions import Event, In
from designer.drill.setting import At, setting_at
from designer.storage.reading import open_drill


@pytest.fixture
def context(source):
    drill = open_drill(sample("wide-start.drill.json")).drill
    at = At("p-fed")
    return Context(drill, at, setting_at(drill, at), source)


def test_areas_drawn_come_before_those_of_the_court(context):
    values = [value for value, _ in here.areas(context)]
    assert values[:2] == ["tick", "feed-zone"] or set(values[:3]) >= {"feed-zone", "reply-zone"}
    court = ground(context.drill.court)
    rest = [value for value in values if " " in value]
    assert "the baseline" in rest
    assert set(rest) <= {*region_words(court), *line_words(court)}
    for value in values:
        assert In(area=value).area == value


def test_everyone_a_rule_can_bind_is_a_person_of_the_model(context):
    people = [value for value, _ in here.people(context)]
    assert people[:3] == ["A", "B", "C"]
    assert Event(what="won", by=tuple(people)).by == tuple(people)


def test_a_place_can_be_tied_to_what_stands_on_the_court(context):
    anchors = [value for value, _ in here.anchors(context)]
    assert {"A", "B", "tick", "reply-zone", "reply"} <= set(anchors)


def test_new_ids_are_new(context):
    assert context.new_id("cone") not in context.setting.ids()


def test_words_are_said_for_each(context):
    for options in (here.areas, here.people, here.anchors, here.shots, here.parts, here.progressions, here.records):
        found = options(context)
        assert found
        assert all(words for _, words in found)
        assert len({value for value, _ in found}) == len(found)
