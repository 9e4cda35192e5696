import json

from designer.storage.schema import schema


def test_it_prints_the_schema_and_nothing_else(call):
    said = call("schema")
    assert (said.status, said.err) == (0, "")
    assert json.loads(said.out) == schema()
