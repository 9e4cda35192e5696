import json

import pytest
from pydantic import ValidationError

from designer.drill.conditions import Event, In
from designer.drill.rules import Rule


def test_and_is_the_word_in_a_file():
    read = Event.model_validate_json('{"what": "landed", "and": [{"what": "won"}]}')
    assert read.and_ == (Event(what="won"),)
    assert read == Event(what="landed", and_=(Event(what="won"),))


def test_what_is_not_answered_stays_unanswered():
    asked = In(area="right half")
    assert (asked.judged, asked.line, asked.volleyed) == (None, None, None)


def test_events_within_events_are_checked_too():
    with pytest.raises(ValidationError):
        Event.model_validate_json('{"what": "landed", "and": [{"what": "vanished"}]}')


@pytest.mark.parametrize(
    ("when", "expected"),
    [
        ([{"what": "landed", "count": 3}], (Event(what="landed", count=3),)),
        ([{"area": "zone", "line": "in"}], (In(area="zone", line="in"),)),
        ([], ()),
    ],
)
def test_a_rule_waits_for_events_or_for_places(when, expected):
    raw = {"id": "r", "when": when, "must": {"do": "bounces", "most": 1}}
    assert Rule.model_validate_json(json.dumps(raw)).when == expected
