from __future__ import annotations

import json
import shutil
from pathlib import Path

import pypdfium2
import pytest

from designer.bundle import sample
from designer.commands import main

DRILLS = ("serve-open", "wide-start")


@pytest.fixture
def book(tmp_path: Path) -> Path:
    """A handbook of two drills, the first sheet of each."""
    for name in DRILLS:
        shutil.copy(sample(f"{name}.drill.json"), tmp_path)
    for name in ("brand.json", "alder-quay.svg"):
        shutil.copy(sample(name), tmp_path)
    drills = [
        {"number": f"1.{place}", "file": f"{name}.drill.json", "prints": "first sheet"}
        for place, name in enumerate(DRILLS, 1)
    ]
    file = tmp_path / "aq.handbook.json"
    file.write_text(json.dumps({"title": "X", "sections": [{"title": "S", "drills": drills}]}), encoding="utf-8")
    return file


def change(book: Path, **values: object) -> None:
    book.write_text(json.dumps(json.loads(book.read_text("utf-8")) | values), encoding="utf-8")


def test_a_handbook_is_written_with_the_record_of_its_edition(book: Path, capsys: pytest.CaptureFixture[str]) -> None:
    pdf = book.with_name("book.pdf")
    assert main(["handbook", str(book), "-o", str(pdf)]) == 0
    assert pdf.read_bytes().startswith(b"%PDF")
    record = json.loads(book.with_name("aq.edition-1.json").read_text("utf-8"))
    assert record["drills"]["1.2"]["title"] == "Wide Ball, Recover, Play the Point"
    assert capsys.readouterr().err == ""
    file = book.with_name("wide-start.drill.json")
    file.write_text(file.read_text("utf-8").replace("Wide Ball", "Far Ball"), encoding="utf-8")
    assert main(["handbook", str(book), "-o", str(pdf), "--force"]) == 0
    assert "edition 1 was printed before with other drills" in capsys.readouterr().err


def test_one_bad_drill_is_told_and_the_rest_is_made(book: Path, capsys: pytest.CaptureFixture[str]) -> None:
    book.with_name("wide-start.drill.json").write_text("{", encoding="utf-8")
    assert main(["handbook", str(book), "-o", str(book.with_name("book.pdf"))]) == 1
    assert book.with_name("book.pdf").is_file()
    told = capsys.readouterr().err
    assert "1.2 is left out: wide-start.drill.json" in told
    assert "Traceback" not in told


def test_a_house_rule_that_a_drill_does_not_keep_makes_the_status_1(
    book: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    change(book, house_rules=["level"])
    assert main(["handbook", str(book), "-o", str(book.with_name("book.pdf"))]) == 1
    assert "a drill names a level; not yet 1.1, 1.2" in capsys.readouterr().err


def test_stopped_in_the_middle_it_leaves_no_file(
    book: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    from designer.commands import handbook

    def stop(*_: object) -> None:
        raise KeyboardInterrupt

    monkeypatch.setattr(handbook._Telling, "setting", stop)
    before = sorted(book.parent.iterdir())
    assert main(["handbook", str(book), "-o", str(book.with_name("book.pdf"))]) == 130
    assert sorted(book.parent.iterdir()) == before
    assert capsys.readouterr().err == "drill-designer: stopped; what was not finished is not written.\n"


def test_a_terminal_sees_a_bar_and_what_is_being_set(capsys: pytest.CaptureFixture[str], monkeypatch) -> None:
    from designer.commands.handbook import _Telling

    monkeypatch.setattr("sys.stderr.isatty", lambda: True, raising=False)
    telling = _Telling()
    telling.setting(1, 2, "1.2 Wide Ball\x1b[2J")
    telling.end()
    told = capsys.readouterr().err
    assert "##########.......... 1 of 2  1.2 Wide Ball" in told
    assert "\x1b[2J" not in told


def test_a_file_that_is_no_handbook_is_told(book: Path, capsys: pytest.CaptureFixture[str]) -> None:
    drill = book.with_name("wide-start.drill.json")
    assert main(["handbook", str(drill), "-o", str(book.with_name("book.pdf"))]) == 2
    assert not book.with_name("book.pdf").exists()
    assert "wide-start.drill.json" in capsys.readouterr().err


def test_where_there_is_no_terminal_a_plain_line_now_and_then_names_what_is_read_or_set(capsys, monkeypatch) -> None:
    from designer.commands import handbook

    clock = iter((0.0, 1.0, 12.0, 12.0, 24.0, 24.0))
    monkeypatch.setattr(handbook.time, "monotonic", lambda: next(clock))
    telling = handbook._Telling()
    telling.reading(0, 2, "one.drill.json")  # a second later: nothing
    telling.reading(1, 2, "two.drill.json")
    telling.setting(1, 2, "1.2 Wide Ball")
    telling.end()
    assert capsys.readouterr().err == (
        "1 of 2 drills are read; now reading two.drill.json\n1 of 2 drills are set; now 1.2 Wide Ball\n"
    )


@pytest.mark.parametrize("name", ["wide-start.drill.json", "brand.json", "logo.svg", "BOOK.edition-1.json"])
def test_no_file_of_the_handbook_is_taken_for_the_output(
    book: Path, capsys: pytest.CaptureFixture[str], name: str
) -> None:
    (book.parent / "brand.json").write_text('{"name": "Alder Quay", "logo": "logo.svg"}')
    (book.parent / "logo.svg").write_text("<svg/>")
    target = book.parent / name.replace("BOOK", book.name.removesuffix(".handbook.json"))
    before = target.read_bytes() if target.exists() else None
    assert main(["handbook", str(book), "-o", str(target), "--force"]) == 64
    assert "name another" in capsys.readouterr().err
    assert (target.read_bytes() if target.exists() else None) == before


def test_a_logo_that_cannot_be_used_takes_no_more_of_the_brand_with_it(
    book: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    brand = {"name": "Alder Quay", "licence": "All rights with the club.", "logo": "none.svg", "typeface": "none.ttf"}
    (book.parent / "brand.json").write_text(json.dumps(brand))
    change(book, licence="")
    main(["handbook", str(book), "-o", str(book.parent / "book.pdf")])
    said = capsys.readouterr().err
    assert "The logo is left out." in said
    assert "The typeface is left out." in said
    with pypdfium2.PdfDocument(book.parent / "book.pdf") as document:
        assert "All rights with the club." in document[0].get_textpage().get_text_range()
