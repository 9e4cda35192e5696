"""First records: enough to be shown, and nothing settled that decides a rally."""

import pytest

from designer.desktop.forms.context import Context
from designer.desktop.forms.fresh import NEW, new_rule
from designer.desktop.forms.kinds_of_rule import KINDS_OF_RULE
from designer.drill import edits
from designer.drill.base import place
from designer.drill.movement import Shot
from designer.drill.people import Job, Spot
from designer.drill.setting import main_setting, setting_at


@pytest.fixture
def context(document):
    drill = document.drill.changed(jobs=(Job(letter="A"), Job(letter="B")))
    at = main_setting(drill)
    drill = edits.put(
        drill,
        at,
        Spot(id="spot-a", job="A", place=place(0, -12)),
        Spot(id="spot-b", job="B", place=place(0, 12)),
        Shot(id="reply", by="A", after="feed"),
        Shot(id="feed", by="B", stroke="racket feed"),
    )
    return Context(drill, at, setting_at(drill, at), document.source)


@pytest.mark.parametrize("kind", NEW)
def test_a_first_record_can_be_put_into_the_drill(context, kind):
    made = NEW[kind](context)
    assert made.id not in context.setting.ids()
    drill = edits.put(context.drill, context.at, made)
    assert setting_at(drill, context.at).find(made.id) == made


def test_it_starts_with_the_ball_that_is_fed_and_leaves_a_bad_feed_open(context):
    start = NEW["start"](context)
    assert (start.shot, start.by) == ("feed", ("B",))
    assert start.bad is None
    assert start.good == ()


@pytest.mark.parametrize("do", [name for name, _ in KINDS_OF_RULE])
def test_a_first_rule_asks_for_its_kind_and_leaves_its_cost_open(context, do):
    rule = new_rule(context, do)
    assert rule.must.do == do
    assert rule.breach is None
    assert rule.called_by == ()
    assert rule.in_doubt is None


def test_jobs_go_round(context):
    assert NEW["swap"](context).moves == {"A": "B", "B": "A"}


def test_parts_go_from_cooperative_to_open(context):
    kinds = []
    for _ in range(3):
        part = NEW["part"](context)
        kinds.append((part.kind, part.after is not None))
        drill = edits.put(context.drill, context.at, part)
        context = Context(drill, context.at, setting_at(drill, context.at), context.source)
    assert kinds == [("cooperative", False), ("forced", True), ("open", True)]
