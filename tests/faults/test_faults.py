"""Faulty drills, each with the check that it must raise: what it is called, how heavy it weighs, and what it is about.

``faults.json`` is a table of patches to one whole drill, ``rally.drill.json``: records that are put in or dropped, and
fields of the drill that are set. ``mend``: the check brings the edit that makes it go away.
"""

import copy
import json
from pathlib import Path

import pytest

from designer.drill.drill import Drill
from designer.review.checks import checks
from designer.storage.reading import read_drill
from designer.storage.writing import drill_bytes

HERE = Path(__file__).parent
TABLE = json.loads((HERE / "faults.json").read_text())
WHOLE = json.loads((HERE / "rally.drill.json").read_text())


def faulty(fault) -> Drill:
    """The whole drill with the patch of one fault, opened as a file is opened."""
    raw = copy.deepcopy(WHOLE) | fault.get("set", {})
    changes = raw["progressions"][0]["changes"]
    gone = set(fault.get("drop", ()))
    for kind, value in fault.get("put", {}).items():
        if isinstance(value, list):
            new = {record["id"] for record in value}
            changes[kind] = [old for old in changes.get(kind, ()) if old["id"] not in new] + value
        else:
            changes[kind] = value
    for kind, value in list(changes.items()):
        if isinstance(value, list):
            changes[kind] = [record for record in value if record["id"] not in gone]
        elif isinstance(value, dict) and value["id"] in gone:
            del changes[kind]
    for degree in ("easier", "harder"):
        raw["progressions"][0].setdefault(degree, []).extend(fault.get(degree, ()))
    opened = read_drill(json.dumps(raw).encode(), "faulty.drill.json")
    assert opened.notices == ()
    return opened.drill


def found(drill, fault):
    """The checks that the fault must raise."""
    expected = fault["raises"]
    return [
        check
        for check in checks(drill)
        if (check.key, check.weight) == (expected["key"], expected["weight"])
        and set(expected.get("about", ())) <= set(check.about)
    ]


def test_the_whole_drill_has_no_checks():
    assert [(check.key, check.sentence.text) for check in checks(faulty({}))] == []


def test_the_table_is_large_and_each_fault_has_a_name_of_its_own():
    assert len(TABLE) >= 40
    assert len({fault["fault"] for fault in TABLE}) == len(TABLE)


@pytest.mark.parametrize("fault", TABLE, ids=lambda fault: fault["fault"])
def test_the_fault_is_found(fault):
    drill = faulty(fault)
    (check, *_) = found(drill, fault) or pytest.fail(f"only {[(c.key, c.weight, c.about) for c in checks(drill)]}")
    assert check.sentence.text.endswith((".", "?", "!"))
    assert (check.mend is not None) == fault.get("mend", False)


@pytest.mark.parametrize("fault", [fault for fault in TABLE if fault.get("mend")], ids=lambda fault: fault["fault"])
def test_the_mend_makes_it_go_away_and_breaks_nothing(fault):
    drill = faulty(fault)
    check = found(drill, fault)[0]
    mended = check.mend(drill)
    left = {(other.key, other.about, other.sentence.text) for other in checks(mended)}
    assert (check.key, check.about, check.sentence.text) not in left
    errors = {other.key for other in checks(mended) if other.weight == "error"}
    assert errors <= {other.key for other in checks(drill) if other.weight == "error"}
    assert read_drill(drill_bytes(mended), "mended.drill.json").drill == mended
