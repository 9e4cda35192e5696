from __future__ import annotations

import json
import shutil
from pathlib import Path

import pytest

from designer.bundle import sample
from designer.drill.handbook import Entry
from designer.storage.handbook import edition_before, edition_path, find_drill, open_handbook, write_edition
from designer.storage.parsing import Unreadable


@pytest.fixture
def handbook(tmp_path: Path) -> Path:
    file = tmp_path / "inside" / "x.handbook.json"
    file.parent.mkdir()
    shutil.copy(sample("wide-start.drill.json"), file.parent / "wide.drill.json")
    shutil.copy(sample("wide-start.drill.json"), tmp_path / "outside.drill.json")
    raw = {"title": "X", "edition": 1, "sections": [{"title": "S", "drills": [_entry("1.1", "wide.drill.json")]}]}
    file.write_text(json.dumps(raw), encoding="utf-8")
    return file


def _entry(number: str, file: str) -> dict[str, str]:
    return {"number": number, "file": file}


def test_the_sample_handbook_names_every_sample() -> None:
    book = open_handbook(sample("alder-quay.handbook.json"))
    names = {path.name for path in sample().glob("*.drill.json")}
    assert {entry.file for entry in book.entries()} == names


@pytest.mark.parametrize("file", ["../outside.drill.json", "{root}/outside.drill.json", "link.drill.json"])
def test_a_drill_outside_the_handbooks_folder_is_not_opened(handbook: Path, file: str) -> None:
    (handbook.parent / "link.drill.json").symlink_to(handbook.parent.parent / "outside.drill.json")
    found = find_drill(handbook, Entry(number="1.1", file=file.format(root=handbook.parent.parent)))
    assert found.opened is None
    assert "leads out of the handbook's folder" in found.reason


def test_a_missing_drill_has_a_reason(handbook: Path) -> None:
    found = find_drill(handbook, Entry(number="1.2", file="none.drill.json"))
    assert found.reason == "none.drill.json: is not there."


def test_a_number_that_stands_twice_is_refused(handbook: Path) -> None:
    raw = {"title": "X", "sections": [{"title": "S", "drills": [_entry("1.1", "a"), _entry("1.1", "b")]}]}
    handbook.write_text(json.dumps(raw), encoding="utf-8")
    with pytest.raises(Unreadable, match=r"the number 1\.1 stands twice"):
        open_handbook(handbook)


def test_the_next_edition_knows_the_drills_of_the_one_before(handbook: Path) -> None:
    book = open_handbook(handbook)
    found = tuple(find_drill(handbook, entry) for entry in book.entries())
    write_edition(handbook, book, found)
    assert edition_path(handbook, 1).name == "x.edition-1.json"
    assert edition_before(handbook, 2) == {"1.1": found[0].digest}
    assert edition_before(handbook, 1) == {}


def test_a_damaged_record_of_an_edition_is_said(handbook: Path) -> None:
    edition_path(handbook, 1).write_text("{}", encoding="utf-8")
    with pytest.raises(Unreadable, match="has no digests"):
        edition_before(handbook, 2)
