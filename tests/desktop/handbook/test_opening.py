"""Handbooks are opened by their files, from the main window's menu, and once each."""

from pathlib import Path

import pytest
from desktop import hand
from desktop.handbook.conftest import Answers

from designer.__main__ import opened
from designer.bundle import sample
from designer.desktop.handbook.files import blank_book, book_beside
from designer.storage.recovery import BOOK_ENDING, copies


@pytest.fixture
def books(qtbot, styled):
    from PySide6.QtCore import QObject

    from designer.desktop.handbook.opening import Books

    parent = QObject()
    asked = []
    made = Books(Answers(), asked.append, parent)
    made.asked = asked
    yield made
    for window in made.all():
        window.document.stack.setClean()
        window.close()
    hand.bury()


def test_a_handbook_comes_to_the_front_when_it_is_opened_again(books, file):
    window = books.open(file)
    assert books.open(file) is window
    window.outline.choose(("drill", "1.2"))
    window.open_chosen()
    assert books.asked == [(file.parent / "wide-start.drill.json",)]
    window.close()
    assert books.all() == ()


def test_a_file_that_is_no_handbook_is_told(books, file):
    file.write_text("{", encoding="utf-8")
    assert books.open(file) is None
    assert books._prompts.asked[0][:2] == ("say", "The handbook was not opened.")


def test_a_new_handbook_asks_where_it_is_kept_before_it_takes_drills(books, tmp_path):
    window = books.open(None)
    assert window.document.book == blank_book()
    window.prompts.answers = [tmp_path / "mine.json", ()]
    window.deeds.add_drills()
    assert window.document.path == tmp_path / "mine.handbook.json"


def test_the_handbook_of_a_drill_is_the_only_one_beside_it(file):
    drill = file.parent / "wide-start.drill.json"
    assert book_beside(drill) == file
    file.with_name("other.handbook.json").write_text("{}", encoding="utf-8")
    assert book_beside(drill) is None
    assert book_beside(None) is None


def test_the_program_opens_a_handbook_by_its_name():
    assert opened(["open", "x.handbook.json"]) == ["x.handbook.json"]
    assert opened(["x.handbook.json"]) == ["x.handbook.json"]
    assert Path(sample("alder-quay.handbook.json")).is_file()


def test_what_was_not_saved_of_a_handbook_is_offered_again_and_gone_once_it_is_saved(books, file):
    window = books.open(file)
    window.document.perform("Rename", window.document.book.changed(title="Not saved"))
    books.keep_all()
    assert copies(ending=BOOK_ENDING) == ()  # held by the window
    window.files._keeper.release()  # as when the program stops
    books._prompts.answers = [True]
    books.recover()
    again = books.all()[-1]
    assert again is not window
    assert again.document.book.title == "Not saved"
    assert again.document.path == file
    assert not again.document.clean
    assert "not saved" in again.notice.words
    again.save()
    again.files._keeper.release()
    assert copies(ending=BOOK_ENDING) == ()


def test_closing_a_changed_handbook_asks_and_keeps_no_copy_once_it_is_given_up(books, file):
    window = books.open(file)
    window.document.perform("Rename", window.document.book.changed(title="Given up"))
    window.files.keep()
    window.prompts.answers = ["cancel", "discard"]
    assert not window.close()
    assert window.close()
    assert copies(ending=BOOK_ENDING) == ()
