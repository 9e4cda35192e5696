import json

import pytest
from pydantic import TypeAdapter, ValidationError

from designer.drill.rules import KNOWN_MUSTS, Finish, Must, Points, Rule, Swap, UnknownMust

MUST = TypeAdapter(Must)
EXAMPLES = {
    "use stroke": {"strokes": ["slice"], "wing": "backhand"},
    "aim": {"direction": "new line"},
    "keep": {"where": [{"area": "right half"}]},
    "height": {"at": "net", "least": 1.5, "most": "raised racket"},
    "bounces": {"most": 1},
}


def read(raw):
    return MUST.validate_json(json.dumps(raw))


def test_there_is_an_example_of_each_demand():
    assert set(EXAMPLES) == set(KNOWN_MUSTS)


@pytest.mark.parametrize("do", KNOWN_MUSTS)
def test_each_demand_is_read_as_itself(do):
    assert not isinstance(read({"do": do, **EXAMPLES[do]}), UnknownMust)


@pytest.mark.parametrize(
    "raw", [{"do": "aim"}, {"do": "keep", "where": []}, {"do": "height"}, {"do": "bounces", "most": 4}]
)
def test_a_known_demand_that_is_broken_is_not_taken_for_an_unknown_one(raw):
    with pytest.raises(ValidationError):
        read(raw)


def test_an_unknown_demand_keeps_all_it_brings():
    raw = {"do": "sing", "song": ["la", "la"]}
    assert read(raw).model_dump(mode="json") == raw


def test_what_a_rule_leaves_open_stays_open():
    rule = Rule.model_validate_json('{"id": "r", "must": {"do": "bounces", "most": 1}}')
    assert (rule.breach, rule.in_doubt, rule.called_by, rule.to_hit) == (None, None, (), None)


@pytest.mark.parametrize(
    ("cls", "raw"),
    [
        (Points, {"id": "x", "on": [], "gives": {"then": "points"}}),
        (Points, {"id": "x", "on": [{"what": "won"}]}),
        (Swap, {"id": "x", "on": [{"what": "starts"}], "moves": {"A": "left"}}),
        (Finish, {"id": "x", "kind": "race", "to": 0}),
        (Finish, {"id": "x", "kind": "race", "to": "ten"}),
        (Finish, {"id": "x", "kind": "race", "margin": 0}),
    ],
)
def test_records_that_cannot_be_played_are_refused(cls, raw):
    with pytest.raises(ValidationError):
        cls.model_validate_json(json.dumps(raw))
