import json
from copy import deepcopy

import pytest
from hypothesis import given
from hypothesis import strategies as st
from pydantic import BaseModel, ValidationError
from strategies import drills, json_values

from designer.drill import brand, conditions, items, movement, people, rules
from designer.drill import drill as whole
from designer.drill.drill import Drill
from designer.storage.faults import MOST_FAULTS, REQUIRED, faults, shown
from designer.storage.reading import Unreadable, read_drill
from designer.storage.writing import drill_bytes

AN_ID = "an id: a small letter, then at most 39 small letters, digits or hyphens"
CONE = {"kind": "cone", "id": "home", "place": {"at": [0, 0]}}


def drill_with(**changes):
    return {"format": 1, "id": "d", "progressions": [{"id": "p", "changes": changes}]}


def found_in(raw):
    with pytest.raises(ValidationError) as refused:
        Drill.model_validate_json(json.dumps(raw))
    return faults(raw, refused.value)


@pytest.mark.parametrize(
    ("changes", "fault"),
    [
        (
            {"items": [CONE, {"kind": "line", "id": "tick", "corners": [[0, "far"], [1, 1]]}]},
            "progression 1, items, 'tick', corners 1, y: \"far\", expected a number",
        ),
        (
            {"items": [{"kind": "line", "id": "tick", "corners": 5}]},
            "progression 1, items, 'tick', corners: 5, expected a list",
        ),
        (
            {"items": [{"kind": "line", "id": "tick", "corners": [[0, 0]]}]},
            "progression 1, items, 'tick', corners: a list of 1, expected at least 2 entries",
        ),
        (
            {"items": [{"kind": "cone", "id": "home"}]},
            "progression 1, items, 'home', place: is missing, expected a place such as {\"at\": [0.0, -11.8872]}",
        ),
        (
            {"items": [{**CONE, "place": {"at": [1]}}]},
            "progression 1, items, 'home', place, at, y: is missing, expected a number",
        ),
        (
            {"items": [{**CONE, "place": {"at": [1, 2, 3]}}]},
            "progression 1, items, 'home', place, at: a list of 3, expected at most 2 entries",
        ),
        (
            {"items": [{**CONE, "place": {"at": [1, 101]}}]},
            "progression 1, items, 'home', place, at, y: 101, expected at most 100",
        ),
        (
            {"items": [{**CONE, "both_ends": "yes"}]},
            "progression 1, items, 'home', both_ends: \"yes\", expected true or false",
        ),
        (
            {"items": [{**CONE, "care": "roughly"}]},
            "progression 1, items, 'home', care: \"roughly\", expected 'exact', 'about' or 'anywhere'",
        ),
        (
            {"items": [{**CONE, "id": "Home"}]},
            (
                "progression 1, items, 'Home', id: \"Home\", expected an id: a small letter, then at most 39 small "
                "letters, digits or hyphens"
            ),
        ),
        ({"items": [7]}, "progression 1, items, entry 1: 7, expected an object in braces"),
        (
            {"spots": [{"id": "s", "job": "AB", "place": {}}]},
            "progression 1, spots, 's', job: \"AB\", expected one capital letter",
        ),
        (
            {
                "items": [
                    {"kind": "area", "id": "zone", "shape": {"form": "polygon", "corners": [[0, 0], [1, None], [1, 1]]}}
                ]
            },
            "progression 1, items, 'zone', shape, corners 2, y: null, expected a number",
        ),
        (
            {"rules": [{"id": "r", "must": {"do": "height", "at": "net", "least": "high"}}]},
            (
                "progression 1, rules, 'r', must, least: \"high\", expected a number or 'knee', 'waist', 'shoulder', "
                "'raised racket' or 'net'"
            ),
        ),
        (
            {"rules": [{"id": "r", "when": [{"area": 3}], "must": {"do": "bounces"}}]},
            "progression 1, rules, 'r', when, entry 1, area: 3, expected text",
        ),
        (
            {"finish": {"id": "end", "kind": "race", "to": 0}},
            "progression 1, finish, to: 0, expected at least 1 or 'own best'",
        ),
    ],
)
def test_a_fault_says_place_what_and_what_was_expected(changes, fault):
    assert found_in(drill_with(**changes)) == (fault,)


@pytest.mark.parametrize(
    ("values", "fault"),
    [
        ({"dated": "1st of May"}, 'dated: "1st of May", expected a date such as "2026-05-01"'),
        ({"dated": 5}, 'dated: 5, expected a date such as "2026-05-01"'),
        ({"minutes": True}, "minutes: true, expected a whole number"),
        ({"minutes": 2.5}, "minutes: 2.5, expected a whole number"),
        ({"players": [2]}, "players, entry 2: is missing, expected a number"),
        ({"court": []}, "court: an empty list, expected an object in braces"),
        ({"language": "English"}, 'language: "English", expected a language such as "en"'),
        ({"tags": ["Two Words"]}, 'tags, entry 1: "Two Words", expected a tag such as "level:club"'),
        ({"code": "x" * 41}, f'code: "{"x" * 37}…, expected at most 40 characters'),
        ({"translations": {"en": 3}}, "translations, en: 3, expected an object in braces"),
        ({"progressions": []}, "progressions: an empty list, expected at least 1 entry"),
        ({"title": None}, "title: null, expected text"),
    ],
)
def test_faults_of_the_drill_as_a_whole(values, fault):
    assert found_in({**drill_with(), **values}) == (fault,)


def test_a_missing_field_says_what_belongs_there():
    assert found_in({}) == (
        "id: is missing, expected an id such as 'cone-7h2kq'",
        "progressions: is missing, expected a list of at least one progression",
    )


def test_at_most_ten_are_told_and_the_rest_are_counted():
    told = found_in(drill_with(items=[{"kind": "cone", "id": f"c-{number}"} for number in range(25)]))
    assert len(told) == MOST_FAULTS + 1
    assert told[-1] == "and 15 more"


def test_there_are_words_for_every_field_that_may_be_missing():
    classes = {
        cls
        for module in (brand, conditions, items, movement, people, rules, whole)
        for cls in vars(module).values()
        if isinstance(cls, type) and issubclass(cls, BaseModel)
    }
    required = {
        field.alias or name for cls in classes for name, field in cls.model_fields.items() if field.is_required()
    }
    assert required <= REQUIRED.keys() | {"name"}  # only a brand's name, and it is a text
    assert len(classes) > 40


@pytest.mark.parametrize(
    ("value", "words"),
    [
        (None, "null"),
        (True, "true"),
        (1.5, "1.5"),
        ("a\x1bb", '"a\\u001bb"'),
        ("\u202eodd", '"�odd"'),
        ([], "an empty list"),
        ([1, 2], "a list of 2"),
        ({}, "an empty object"),
        ({"a": 1}, "an object"),
        ("y" * 50, '"' + "y" * 37 + "…"),
    ],
)
def test_a_value_is_shown_as_the_file_has_it_but_short(value, words):
    assert shown(value) == words


def locations(raw, place=()):
    yield place
    parts = raw.items() if isinstance(raw, dict) else enumerate(raw) if isinstance(raw, list) else ()
    for step, part in parts:
        yield from locations(part, (*place, step))


OF_THE_VALIDATOR = (
    "Input should",
    "Value error",
    "pydantic",
    "function-after",
    "constrained",
    "type=",
    "tuple[",
    "literal[",
)


@given(st.data())
def test_no_damage_to_a_drill_ever_shows_the_words_of_the_validator(data):
    raw = json.loads(drill_bytes(data.draw(drills(most_progressions=1))))
    place = data.draw(st.sampled_from(list(locations(raw))[1:]))
    damaged = deepcopy(raw)
    inner = damaged
    for step in place[:-1]:
        inner = inner[step]
    if data.draw(st.booleans()):
        del inner[place[-1]]
    else:
        inner[place[-1]] = data.draw(json_values())
    try:
        read_drill(json.dumps(damaged).encode(), "damaged.drill.json")
    except Unreadable as refused:
        said = str(refused)
        assert said.startswith("damaged.drill.json: ")
        assert not [words for words in OF_THE_VALIDATOR if words in said and words not in json.dumps(damaged)]
        assert "another value" not in said
