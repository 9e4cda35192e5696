from __future__ import annotations

import shutil
from pathlib import Path

import pytest

from designer.bundle import sample
from designer.commands import main


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    for path in sample().iterdir():
        shutil.copy(path, tmp_path)
    return tmp_path


def test_a_handbook_is_written_with_the_record_of_its_edition(folder: Path) -> None:
    book = folder / "alder-quay.handbook.json"
    assert main(["handbook", str(book), "-o", str(folder / "book.pdf")]) == 0
    assert (folder / "book.pdf").read_bytes().startswith(b"%PDF")
    assert (folder / "alder-quay.edition-1.json").is_file()


def test_one_bad_drill_is_told_and_the_rest_is_made(folder: Path, capsys: pytest.CaptureFixture[str]) -> None:
    (folder / "hoop-red.drill.json").write_text("{", encoding="utf-8")
    book = folder / "alder-quay.handbook.json"
    assert main(["handbook", str(book), "-o", str(folder / "book.pdf")]) == 1
    assert (folder / "book.pdf").is_file()
    told = capsys.readouterr().err
    assert "1.6 is left out: hoop-red.drill.json" in told
    assert "Traceback" not in told


def test_a_file_that_is_no_handbook_is_told(folder: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["handbook", str(folder / "wide-start.drill.json"), "-o", str(folder / "book.pdf")]) == 2
    assert not (folder / "book.pdf").exists()
    assert "wide-start.drill.json" in capsys.readouterr().err
