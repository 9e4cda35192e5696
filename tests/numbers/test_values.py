import json
from typing import get_args

import pytest

from designer.bundle import resource
from designer.numbers.problems import NoSuch
from designer.numbers.values import Basis, names, read, value


def values_in(data):
    if isinstance(data, dict):
        if "value" in data:
            yield data
        else:
            for inner in data.values():
                yield from values_in(inner)


@pytest.mark.parametrize("folder", ["balls", "surfaces", "levels"])
def test_every_number_stands_beside_what_it_rests_on(folder):
    for path in resource(folder).glob("*.json"):
        for found in values_in(json.loads(path.read_text("utf-8"))):
            assert found["basis"] in get_args(Basis), path
            assert len(found["source"]) > 10, path
            if "range" in found:
                assert found["range"][0] <= found["value"] <= found["range"][1], path


def test_a_value_says_whether_a_source_was_read():
    assert value({"value": 1.0, "basis": "second hand", "source": "a text that quotes it"}).sourced
    assert not value({"value": 1.0, "basis": "common practice", "source": "no source"}).sourced


def test_a_name_that_is_not_there_lists_those_that_are():
    with pytest.raises(NoSuch, match=r"^There is no surface called 'mud'; there are .*clay.*hard.*\.$"):
        read("surfaces", "mud", names("surfaces"))
