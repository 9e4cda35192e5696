import json

import pytest
from pydantic import TypeAdapter, ValidationError

from designer.drill.items import KNOWN_FORMS, KNOWN_KINDS, Area, Item, Unknown, UnknownShape

ITEM = TypeAdapter(Item)
EXAMPLES = {
    "cone": {"place": {"at": [1, 2]}},
    "disc": {"place": {"on": "cone-1"}},
    "hoop": {"place": {"on": "A", "at": [0.5, 0]}},
    "basket": {"place": {}, "balls": 40},
    "ball machine": {"place": {}, "facing": 180},
    "note": {"place": {}, "text": "Mind the tap"},
    "obstacle": {"corners": [[0, 0], [1, 1]], "name": "bench"},
    "height cord": {"height": 2},
    "line": {"corners": [[0, 0], [1, 0]], "marked": "chalk"},
    "barrier": {"corners": [[0, 0], [1, 0]], "height": 0.5},
    "area": {"shape": {"form": "rectangle", "corners": [[0, 0], [1, 1]]}},
}


def read(raw):
    return ITEM.validate_json(json.dumps(raw))


def test_there_is_an_example_of_each_kind():
    assert set(EXAMPLES) == set(KNOWN_KINDS)


@pytest.mark.parametrize("kind", KNOWN_KINDS)
def test_each_kind_is_read_as_itself(kind):
    item = read({"kind": kind, "id": "thing", **EXAMPLES[kind]})
    assert item.kind == kind
    assert not isinstance(item, Unknown)


@pytest.mark.parametrize("kind", KNOWN_KINDS)
def test_a_known_kind_that_lacks_what_it_needs_is_not_taken_for_an_unknown_one(kind):
    with pytest.raises(ValidationError):
        read({"kind": kind, "id": "thing"})


def test_an_unknown_kind_keeps_all_it_brings():
    raw = {"kind": "rebound wall", "id": "thing", "place": "anywhere", "tilt": [1, {"by": None}]}
    item = read(raw)
    assert isinstance(item, Unknown)
    assert item.model_dump(mode="json") == raw


@pytest.mark.parametrize("form", KNOWN_FORMS)
def test_a_known_shape_without_corners_is_refused(form):
    with pytest.raises(ValidationError):
        read({"kind": "area", "id": "zone", "shape": {"form": form}})


def test_an_unknown_shape_keeps_all_it_brings():
    item = read({"kind": "area", "id": "zone", "shape": {"form": "ring", "radii": [1, 2]}})
    assert isinstance(item, Area)
    assert isinstance(item.shape, UnknownShape)
    assert item.shape.model_extra == {"radii": [1, 2]}


@pytest.mark.parametrize(
    ("kind", "values"),
    [
        ("line", {"corners": [[0, 0]]}),
        ("obstacle", {"corners": []}),
        ("area", {"shape": {"form": "polygon", "corners": [[0, 0], [1, 0]]}}),
        ("area", {"shape": {"form": "ellipse", "corners": [[0, 0], [1, 0], [1, 1]]}}),
        ("height cord", {"height": -0.1}),
        ("ball machine", {"place": {}, "facing": 360}),
        ("basket", {"place": {}, "balls": 2001}),
        ("cone", {"place": {}, "hand_of": "AB"}),
        ("cone", {"place": {}, "both_ends": 1}),
    ],
)
def test_too_few_corners_and_numbers_out_of_range_are_refused(kind, values):
    with pytest.raises(ValidationError):
        read({"kind": kind, "id": "thing", **values})
