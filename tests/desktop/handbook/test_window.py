"""The handbook's window, as somebody who puts a handbook together uses it."""

import json

import pypdf
import pytest
from PySide6.QtCore import Qt

from designer.cards.book.sheets import Sheets
from designer.storage.handbook import open_handbook
from designer.storage.writing import write_file


def files(window):
    return [[entry.file for entry in section.drills] for section in window.document.book.sections]


def test_it_shows_titles_sheets_and_the_pages_that_will_be_printed(qtbot, window):
    qtbot.waitUntil(lambda: window.foot.words.endswith("pages") and "counting" not in window.foot.words, timeout=20_000)
    rows = [window.outline.topLevelItem(0).child(place) for place in range(2)]
    assert [row.text(0) for row in rows] == [
        "1.1  Serve, Then First Ball to the Open Half",
        "1.2  Wide Ball, Recover, Play the Point",
    ]
    assert [row.text(2) for row in rows] == ["1", "1"]
    pages = int(window.foot.words.split()[-2])
    window.prompts.answers = [window.document.path.with_name("out.pdf")]
    window.print_book()
    assert window.foot.is_printing
    qtbot.waitUntil(lambda: window.notice.words.startswith("The handbook is printed"), timeout=20_000)
    assert len(pypdf.PdfReader(window.document.path.with_name("out.pdf")).pages) == pages
    assert window.document.path.with_name("aq.edition-1.json").is_file()
    assert not window.foot.is_printing
    box = next(child for child, _ in window.book_form._shown if child.accessibleName().startswith("A leaf of its own"))
    box.click()
    # A page for notes behind each of the two drills and the two sections.
    qtbot.waitUntil(lambda: window.foot.words.endswith(f" {pages + 4 + pages % 2} pages"), timeout=20_000)


def test_a_printing_that_is_stopped_leaves_no_file(qtbot, window):
    window.prompts.answers = [window.document.path.with_name("out.pdf")]
    window.print_book()
    window.stop_printing()
    qtbot.waitUntil(lambda: "stopped" in window.notice.words, timeout=20_000)
    assert sorted(path.suffix for path in window.document.path.parent.iterdir()) == [".json"] * 3
    assert window.actions_by_name["print"].isEnabled()


def test_a_drill_that_goes_missing_or_changes_or_cannot_be_set_is_seen(qtbot, window, monkeypatch):
    folder = window.document.path.parent
    qtbot.waitUntil(lambda: window.outline.topLevelItem(0).child(1).text(0).endswith("Point"), timeout=20_000)
    window.outline.choose(("drill", "1.1"))
    window.drill_form._take_state("approved")
    qtbot.waitUntil(lambda: window.document.book.entries()[0].seen != "", timeout=5000)
    drill = folder / "serve-open.drill.json"
    write_file(drill, drill.read_bytes().replace(b"Serve, Then", b"Serve, then"))
    (folder / "wide-start.drill.json").unlink()
    window.look_again()
    rows = window.outline.topLevelItem(0)
    qtbot.waitUntil(lambda: rows.child(0).text(3) == "changed since it was approved", timeout=20_000)
    qtbot.waitUntil(lambda: rows.child(1).text(3) == "missing", timeout=20_000)
    (folder / "wide-start.drill.json").write_text("{", encoding="utf-8")
    window.look_again()
    qtbot.waitUntil(lambda: rows.child(1).text(3).startswith("left out: line 1, column"), timeout=20_000)
    qtbot.waitUntil(lambda: "1 left out  ·  1 changed" in window.foot.words, timeout=20_000)

    def torn(*_):
        raise ValueError("the ball is flat")

    monkeypatch.setattr(Sheets, "cards", torn)
    write_file(drill, drill.read_bytes() + b"\n")
    window.look_again()
    qtbot.waitUntil(lambda: rows.child(0).text(3) == "left out: cannot be set: the ball is flat.", timeout=20_000)
    qtbot.waitUntil(lambda: "2 left out" in window.foot.words and "pages" in window.foot.words, timeout=20_000)


def test_drills_are_moved_by_drop_and_by_keys_and_every_step_can_be_taken_back(qtbot, window):
    first = files(window)
    window.outline.choose(("drill", "1.1"))
    window.outline.drop((), 1, 0)
    assert files(window) == [["wide-start.drill.json"], ["serve-open.drill.json"]]
    assert window.document.book.sections[1].drills[0].number == "2.1"
    window.deeds.undo()
    assert files(window) == first
    window.outline.choose(("drill", "1.2"))
    window.actions_by_name["earlier"].trigger()
    assert files(window)[0] == ["wide-start.drill.json", "serve-open.drill.json"]
    window.actions_by_name["earlier"].trigger()
    assert files(window)[0][0] == "wide-start.drill.json", "there is no section before the first"
    window.outline.choose(("drill", "1.1"))
    window.actions_by_name["later"].trigger()
    assert files(window) == [["wide-start.drill.json"], ["serve-open.drill.json"]]
    window.outline.choose(("section", "1"))
    window.outline.drop((), 0, 0)
    assert [section.title for section in window.document.book.sections] == ["Second", "First"]


def test_drills_are_added_from_the_folder_and_refused_from_elsewhere(qtbot, window, tmp_path):
    folder = window.document.path.parent
    (folder / "sub").mkdir()
    (folder / "sub" / "new.drill.json").write_bytes((folder / "wide-start.drill.json").read_bytes())
    window.prompts.answers = [(folder / "sub" / "new.drill.json",)]
    window.outline.choose(("drill", "1.1"))
    window.foot.drills.click()
    assert files(window)[0] == ["serve-open.drill.json", "sub/new.drill.json", "wide-start.drill.json"]
    assert window.document.book.sections[0].drills[1].number == "1.3"
    window.outline.drop((folder.parent / "outside.drill.json",), 0, 0)
    assert "lie in its own folder" in window.notice.words
    window.outline.choose(("drill", "1.3"))
    qtbot.keyClick(window.outline, Qt.Key.Key_Delete)
    assert len(files(window)[0]) == 2


def test_what_is_typed_is_one_step_each_and_saved(qtbot, window):
    form = window.book_form
    for name, text in (
        ("Title", "New name"),
        ("Edition", "3"),
        ("First aid is kept at", "The office"),
        ("Language", "el"),
        ("Stop word", "“Freeze!”"),
    ):
        box = next(
            child for child in form.findChildren(type(window.section_form.title)) if child.accessibleName() == name
        )
        box.setText(text)
        box.editingFinished.emit()
    words = next(child for child, _ in form._shown if child.accessibleName() == "Words")
    assert words.toPlainText() == "stop = Freeze"
    words.setPlainText("alley = tramline\nad = left")
    words.finish()
    window.book_form._take_rule("cues", True)
    book = window.document.book
    assert (book.title, book.edition, book.safety.first_aid, book.language) == ("New name", 3, "The office", "el")
    assert book.vocabulary == {"alley": "tramline", "ad": "left"}
    assert window.windowTitle() == "New name[*]"
    assert window.save()
    assert open_handbook(window.document.path) == book
    assert json.loads(window.document.path.read_text("utf-8"))["house_rules"] == ["cues"]
    for _ in range(7):
        window.deeds.undo()
    assert window.document.book.title == "Alder Quay"
    words.setPlainText("alley")
    words.finish()
    assert "word = words" in window.notice.words
    with pytest.raises(ValueError, match="is no language; write its code"):
        form._take_language("Greek")
    assert window.document.book.vocabulary == {}


def test_a_number_is_taken_only_where_it_is_one_and_free(qtbot, window):
    window.outline.choose(("drill", "1.1"))
    box = next(child for child, _ in window.drill_form._shown if child.accessibleName() == "Number")
    for wrong in ("1.2", "first", "0.1"):
        box.setText(wrong)
        box.editingFinished.emit()
        assert window.notice.words
        window.notice.clear()
    box.setText("7.12")
    box.editingFinished.emit()
    assert window.document.book.entries()[0].number == "7.12"
    assert window.outline.chosen() == ("drill", "7.12")


def test_closing_asks_for_what_is_not_saved(qtbot, window):
    window.document.perform("Change", window.document.book.changed(title="Other"))
    window.prompts.answers = ["cancel"]
    window.close()
    assert window.isVisible()
    window.prompts.answers = ["save"]
    path = window.document.path
    window.close()
    assert open_handbook(path).title == "Other"
