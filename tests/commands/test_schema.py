import json

import pytest

from designer.storage.schema import KINDS, schema


@pytest.mark.parametrize("kind", KINDS)
def test_it_prints_the_schema_and_nothing_else(call, kind):
    said = call("schema", kind)
    assert (said.status, said.err) == (0, "")
    assert json.loads(said.out) == schema(kind)
