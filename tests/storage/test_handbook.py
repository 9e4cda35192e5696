from __future__ import annotations

import errno
import json
import os
import shutil
from pathlib import Path

import pytest

from designer.bundle import sample
from designer.drill.handbook import Entry, Remembered
from designer.storage.handbook import (
    edition_before,
    edition_path,
    edition_recorded,
    find_drill,
    open_handbook,
    save_handbook,
    write_printed,
)
from designer.storage.parsing import Unreadable
from designer.storage.writing import Unwritable


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


def test_a_number_that_is_none_and_an_empty_file_are_told_in_the_words_of_a_handbook(handbook: Path) -> None:
    raw = json.loads(handbook.read_text(encoding="utf-8"))
    raw["sections"][0]["drills"][0]["number"] = "3"
    handbook.write_text(json.dumps(raw), encoding="utf-8")
    with pytest.raises(Unreadable, match=r"expected a section and a place in it"):
        open_handbook(handbook)
    handbook.write_text("", encoding="utf-8")
    with pytest.raises(Unreadable, match="is empty; expected a handbook"):
        open_handbook(handbook)


def test_a_missing_drill_has_a_reason(handbook: Path) -> None:
    found = find_drill(handbook, Entry(number="1.2", file="none.drill.json"))
    assert found.reason == "none.drill.json: is not there."


def test_a_number_that_stands_twice_is_refused(handbook: Path) -> None:
    raw = {"title": "X", "sections": [{"title": "S", "drills": [_entry("1.1", "a"), _entry("1.1", "b")]}]}
    handbook.write_text(json.dumps(raw), encoding="utf-8")
    with pytest.raises(Unreadable, match=r"the number 1\.1 stands twice"):
        open_handbook(handbook)


def test_the_newest_edition_before_is_known_with_its_drills(handbook: Path) -> None:
    book = open_handbook(handbook)
    own = Remembered(digest="d", title="Wide", id="d-7h2kq")
    write_printed(handbook, book, {"1.1": own}, handbook.with_name("a.pdf"), b"pdf")
    assert edition_path(handbook, 1).name == "x.edition-1.json"
    write_printed(handbook, book.changed(edition=3), {"1.1": own, "1.2": own}, handbook.with_name("a.pdf"), b"pdf")
    assert edition_before(handbook, 3) == {"1.1": own}
    assert edition_before(handbook, 9) == {"1.1": own, "1.2": own}
    assert edition_before(handbook, 1) == {}
    assert edition_recorded(handbook, 2) == {}


def test_a_record_that_holds_digests_alone_is_still_read(handbook: Path) -> None:
    old = {"title": "X", "edition": 1, "dated": "", "drills": {"1.1": "digest"}}
    edition_path(handbook, 1).write_text(json.dumps(old | {"dated": None}), encoding="utf-8")
    assert edition_before(handbook, 2) == {"1.1": Remembered(digest="digest")}


@pytest.mark.parametrize(("text", "says"), [("{}", "has no drills"), ('{"drills": {"one": {}}}', "drills")])
def test_a_damaged_record_of_an_edition_is_said(handbook: Path, text: str, says: str) -> None:
    edition_path(handbook, 1).write_text(text, encoding="utf-8")
    with pytest.raises(Unreadable, match=says):
        edition_before(handbook, 2)


def test_a_saved_handbook_reads_back_as_it_was_and_leaves_defaults_out(handbook: Path) -> None:
    book = open_handbook(handbook)
    whole = book.changed(vocabulary={"alley": "tramline"}, house_rules=("cues",), owner="Alder Quay")
    data = save_handbook(handbook, whole)
    assert open_handbook(handbook) == whole
    assert b"planners" not in data
    assert handbook.read_bytes() == data


def test_a_drill_is_read_again_from_the_bytes_that_were_found(handbook: Path) -> None:
    found = find_drill(handbook, Entry(number="1.1", file="wide.drill.json"))
    again = found.reader()
    (handbook.parent / "wide.drill.json").unlink()
    assert found.opened is not None
    assert again() == found.opened.drill


@pytest.mark.parametrize("refused", ["x.edition-1.json", "a.pdf"])
def test_the_pdf_and_the_record_of_its_edition_are_written_both_or_neither(
    handbook: Path, monkeypatch: pytest.MonkeyPatch, refused: str
) -> None:
    # Refused at the very last step: a PDF that is open in a reader cannot be replaced on some systems.
    book, own = open_handbook(handbook), Remembered(digest="a" * 64)
    output, record = handbook.with_name("a.pdf"), edition_path(handbook, 1)
    replacing = os.replace

    def replace(source: Path, target: Path) -> None:
        if target.name == refused and b"new" in Path(source).read_bytes():
            raise PermissionError(errno.EACCES, "in use")
        replacing(source, target)

    monkeypatch.setattr(os, "replace", replace)
    for before in (None, b"old"):
        if before is not None:
            output.write_bytes(before)
            record.write_bytes(before)
        files = sorted(one.name for one in handbook.parent.iterdir())
        with pytest.raises(Unwritable, match=refused) as told:
            write_printed(handbook, book, {"1.1": own.changed(title="new")}, output, b"new")
        assert ("The handbook is not printed" in str(told.value)) == (refused != "a.pdf")
        assert [one.read_bytes() if one.exists() else None for one in (output, record)] == [before, before]
        assert sorted(one.name for one in handbook.parent.iterdir()) == files, "nothing half made lies about"
