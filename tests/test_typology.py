"""Every pattern of a conditioned game of the trade is stated with the records alone and said in plain words.

The 38 rows are folded from coaches' practice (common practice, no source): E how it ends, V what things are worth,
C conditions, G gates before a point is live, H handicaps, R rotation, P what follows a miss. ``typology.json`` gives for
each a drill, where in it the pattern stands, and the sentence that the program writes. The sentences were read by eye.
"""

import json
from collections import Counter
from functools import cache
from pathlib import Path

import pytest

from designer.bundle import sample
from designer.drill.edits import with_setting
from designer.drill.setting import At, setting_at
from designer.review.checks import checks
from designer.storage.reading import read_drill
from designer.storage.writing import drill_bytes
from designer.wording.card import card_words

HERE = Path(__file__).parent
ROWS = json.loads((HERE / "typology.json").read_text())
GROUPS = {"E": 7, "V": 8, "C": 7, "G": 4, "H": 4, "R": 6, "P": 2}


@cache
def file_of(name):
    folder, _, code = name.rpartition("/")
    path = sample(f"{code}.drill.json") if folder == "samples" else HERE / "typology" / f"{code}.drill.json"
    return path.read_bytes()


@cache
def drill_of(name):
    return read_drill(file_of(name), name).drill


def test_the_list_has_every_row_once():
    ids = [row["row"] for row in ROWS]
    assert ids == [f"{group}{number}" for group, count in GROUPS.items() for number in range(1, count + 1)]
    assert Counter(id[0] for id in ids) == GROUPS
    assert len(ROWS) == 38


@pytest.mark.parametrize("name", sorted({row["drill"] for row in ROWS}))
def test_each_drill_opens_in_order_and_is_written_back_as_it_is(name):
    opened = read_drill(file_of(name), name)
    assert opened.notices == ()
    assert drill_bytes(opened.drill) == file_of(name)
    assert [check.sentence.text for check in checks(opened.drill) if check.weight == "error"] == []


@pytest.mark.parametrize("row", ROWS, ids=lambda row: row["row"])
def test_the_pattern_is_a_record_without_free_text_and_is_said(row):
    drill = drill_of(row["drill"])
    at = At(row["progression"])
    record = setting_at(drill, at).find(row["record"])
    assert record is not None
    section = card_words(drill, at, "stand-in").section(row["section"])
    said = [s for s in section.sentences if row["record"] in s.about and s.text == row["sentence"]]
    assert said, [s.text for s in section.sentences if row["record"] in s.about]
    lead = said[0].lead
    assert (lead.text if lead is not None and lead.kind == "value" else None) == row.get("value")
    # Without its note the record still says the pattern: the sentence is the note's only in what comes after.
    assert not row["sentence"].startswith(record.note or "\0")


@pytest.mark.parametrize("row", ROWS, ids=lambda row: row["row"])
def test_the_sentence_comes_from_the_record(row):
    """Taken out, the sentence is gone: it is not said by something else that happens to stand there."""
    drill = drill_of(row["drill"])
    at = At(row["progression"])
    without = with_setting(drill, at, setting_at(drill, at).without(row["record"]))
    sections = card_words(without, at, "stand-in").sections
    assert row["sentence"] not in [s.text for section in sections for s in section.sentences]
