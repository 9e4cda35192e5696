from pathlib import Path

import pytest

from designer.drill.drill import FORMAT
from designer.storage.migrations import STEPS, migrated
from designer.storage.reading import open_drill, read_drill

FORMATS = Path(__file__).parent / "formats"
"""A real file of each format, kept for ever. Beside each step stands the data before it and after it."""


def rename(raw):
    return {("aim" if key == "goal" else key): value for key, value in raw.items()}


def split(raw):
    return {**raw, "aim": raw["aim"].split()}


TABLE = {3: rename, 4: split}


def test_the_steps_are_taken_in_turn_from_where_the_file_is():
    before = {"format": 3, "goal": "get back"}
    assert migrated(before, 3, steps=TABLE, newest=5) == {"format": 5, "aim": ["get", "back"]}
    assert migrated({"format": 4, "aim": "get back"}, 4, steps=TABLE, newest=5) == {"format": 5, "aim": ["get", "back"]}
    assert before == {"format": 3, "goal": "get back"}


@pytest.mark.parametrize("format", [5, 6])
def test_data_of_the_newest_and_of_a_newer_format_is_left_alone(format):
    raw = {"format": format, "goal": "get back"}
    assert migrated(raw, format, steps=TABLE, newest=5) is raw


def test_a_step_that_is_missing_is_a_fault_of_the_program():
    with pytest.raises(KeyError):
        migrated({}, 2, steps=TABLE, newest=5)


def test_there_is_a_step_from_every_older_format():
    assert set(STEPS) == set(range(1, FORMAT))


@pytest.mark.parametrize("format", range(1, FORMAT + 1))
def test_a_real_file_of_every_format_is_still_read(format):
    opened = open_drill(FORMATS / f"format-{format}.drill.json")
    assert opened.notices == ()
    assert not opened.read_only
    assert [rung.id for rung in opened.drill.progressions] == ["p-together", "p-fed", "p-points", "p-serve"]
    assert opened.drill.title == "Wide Ball, Recover, Play the Point"


def test_a_file_without_a_format_is_taken_for_the_first():
    assert read_drill(b'{"id": "d", "progressions": [{"id": "p"}]}', "x").drill.format == FORMAT
