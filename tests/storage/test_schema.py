import json

import pytest
from hypothesis import given
from jsonschema import Draft202012Validator
from strategies import drills

from designer.bundle import resource, sample
from designer.drill.items import KNOWN_KINDS
from designer.storage.schema import KINDS, schema
from designer.storage.writing import drill_bytes

VALIDATOR = Draft202012Validator(schema())
CONE = {"kind": "cone", "id": "home", "place": {"at": [0, 0]}}


def with_items(*items):
    return {"format": 1, "id": "d", "progressions": [{"id": "p", "changes": {"items": list(items)}}]}


def test_it_is_a_schema_of_draft_2020_12():
    Draft202012Validator.check_schema(schema())
    assert schema()["$schema"] == "https://json-schema.org/draft/2020-12/schema"


@pytest.mark.parametrize("kind", KINDS)
def test_the_published_schema_is_the_one_of_the_program(kind):
    # Made anew by: drill-designer schema KIND > resources/schema/KIND.schema.json
    Draft202012Validator.check_schema(schema(kind))
    assert json.loads(resource("schema", f"{kind}.schema.json").read_text(encoding="utf-8")) == schema(kind)


def test_the_sample_handbook_and_brand_fit_theirs_and_what_is_refused_does_not():
    handbook, brand, today = (Draft202012Validator(schema(kind)) for kind in ("handbook", "brand", "today"))
    book = json.loads(sample("alder-quay.handbook.json").read_text("utf-8"))
    own = json.loads(sample("brand.json").read_text("utf-8"))
    plays = {"drill": "d-wide-start", "people": {"A": {"name": "Mira", "hand": "left"}}}
    assert handbook.is_valid(book)
    assert brand.is_valid(own)
    assert today.is_valid(plays)
    assert not handbook.is_valid(book | {"paper": "a5"})
    assert not handbook.is_valid(book | {"sections": [{"title": "S", "drills": [{"number": "3", "file": "a"}]}]})
    assert not brand.is_valid(own | {"colour": "red"})
    assert not today.is_valid(plays | {"people": {"anna": {}}})


@given(drills())
def test_every_drill_that_the_program_writes_fits_it(drill):
    assert [fault.message for fault in VALIDATOR.iter_errors(json.loads(drill_bytes(drill)))] == []


@pytest.mark.parametrize(
    "change",
    [
        {"place": None},
        {"place": {"at": ["0", 0]}},
        {"place": {"at": [0]}},
        {"place": {"at": [0, 0, 0]}},
        {"place": {"at": [0, 101]}},
        {"place": {"on": "No Id"}},
        {"id": "No Id"},
        {"care": "roughly"},
        {"both_ends": 1},
    ],
)
def test_a_broken_cone_does_not_fit_and_is_not_taken_for_an_unknown_kind(change):
    assert VALIDATOR.is_valid(with_items(CONE))
    assert not VALIDATOR.is_valid(with_items({**CONE, **change}))


@pytest.mark.parametrize("kind", KNOWN_KINDS)
def test_a_known_kind_without_what_it_needs_does_not_fit(kind):
    assert not VALIDATOR.is_valid(with_items({"kind": kind, "id": "thing"}))


def test_what_is_unknown_fits():
    assert VALIDATOR.is_valid(with_items({"kind": "rebound wall", "id": "w", "tilt": 3}, {**CONE, "later": [1]}))


@pytest.mark.parametrize(
    "raw",
    [
        {},
        {"id": "d", "progressions": []},
        {"id": "d", "format": 0, "progressions": [{"id": "p"}]},
        {"id": "d", "progressions": [{"id": "p", "changes": {"rules": [{"id": "r", "must": {"do": "keep"}}]}}]},
        {"id": "d", "progressions": [{"id": "p", "changes": {"rules": [{"id": "r"}]}}]},
    ],
)
def test_what_the_program_refuses_does_not_fit(raw):
    assert not VALIDATOR.is_valid(raw)
