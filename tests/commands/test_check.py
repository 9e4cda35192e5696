import json

import pytest

from designer.bundle import sample
from designer.drill.edits import put
from designer.drill.items import Barrier
from designer.drill.setting import main_setting
from designer.review.checks import accept, checks
from designer.storage.reading import open_drill
from designer.storage.writing import drill_bytes

SAMPLES = sorted(sample().glob("*.drill.json"))


@pytest.fixture
def faulty(tmp_path):
    """A drill whose rule names an area that is not there."""
    file = tmp_path / "faulty.drill.json"
    rule = {"id": "r", "who": ["A"], "must": {"do": "keep", "where": [{"area": "ghost"}]}}
    rung = {"id": "p", "harder": [{"id": "v", "changes": {"rules": [rule]}}]}
    file.write_text(json.dumps({"id": "d", "title": "Faulty", "jobs": [{"letter": "A"}], "progressions": [rung]}))
    return file


def test_the_samples_have_no_error_and_the_court_is_never_called_safe(call):
    said = call("check", *SAMPLES)
    assert said.status == 0
    assert "safe" not in said.out
    for path in SAMPLES:
        assert f"{path}: No other cautions from the drawing; inspect the court.\n" in said.out


def test_an_error_is_1_and_named_with_its_setting(call, faulty):
    said = call("check", faulty)
    assert said.status == 1
    found = [line for line in said.out.splitlines() if line.startswith(f"{faulty}: error at 1/v: ")]
    assert len(found) == 1
    assert "ghost" in found[0]


def test_every_finding_is_a_line(call, faulty):
    said = call("check", faulty)
    texts = [found.sentence.text for found in checks(open_drill(faulty).drill)]
    lines = said.out.splitlines()
    assert len(lines) == len(texts) + 1
    for line, text in zip(lines, texts, strict=False):
        assert line.endswith(text)


def test_what_cannot_be_read_is_2_and_the_others_are_still_checked(call, wide, broken, faulty):
    said = call("check", broken, faulty, wide)
    assert said.status == 2
    said.one_sentence(broken, "minutes")
    assert f"{faulty}: error" in said.out
    assert f"{wide}: No other cautions" in said.out
    assert f"{broken}: No other" not in said.out


def test_json_says_the_same_to_other_programs(call, wide, broken, faulty):
    said = call("check", "--json", wide, broken, faulty)
    assert said.status == 2
    report = json.loads(said.out)
    assert report["format"] == 1
    good, unreadable, bad = report["files"]
    assert [entry["file"] for entry in report["files"]] == [str(wide), str(broken), str(faulty)]
    assert good["unreadable"] is None
    assert "minutes: 0" in unreadable["unreadable"]
    assert unreadable["checks"] == []
    assert len(good["checks"]) == len(checks(open_drill(wide).drill))
    error = next(found for found in bad["checks"] if found["weight"] == "error")
    assert (error["progression"], error["variation"], error["where"]) == ("p", "v", "1/v")
    assert "ghost" in error["text"]
    assert {"key", "about", "can_be_mended"} <= error.keys()
    assert json.loads(call("check", "--json", faulty).out)["files"] == [bad]


def test_an_accepted_caution_is_listed_with_its_reason(call, tmp_path, wide):
    drill = open_drill(wide).drill
    barrier = Barrier(kind="barrier", id="barrier", corners=((-3.0, -15.0), (3.0, -15.0)), height=0.6)
    at = main_setting(drill)
    drill = put(drill, at, barrier)
    caution = next(found for found in checks(drill, at) if found.key == "barrier")
    file = tmp_path / "accepted.drill.json"
    file.write_bytes(drill_bytes(accept(drill, caution, "Foam, for adults.")))
    said = call("check", file)
    assert f"{file}: accepted at " in said.out
    assert "Reason: Foam, for adults." in said.out
    (kept,) = json.loads(call("check", file, "--json").out)["files"][0]["accepted"]
    assert (kept["key"], kept["reason"]) == ("barrier", "Foam, for adults.")
