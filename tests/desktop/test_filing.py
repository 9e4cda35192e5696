"""What happens to a drill's files: saved, dated, taken back, kept through a crash."""

from dataclasses import replace
from datetime import date

import pytest
from desktop import hand
from PySide6.QtCore import QThreadPool

from designer.bundle import sample
from designer.desktop import settings
from designer.desktop.document import Document
from designer.desktop.filing import file_name, stamped
from designer.drill.ids import new_id
from designer.storage.reading import open_drill
from designer.storage.recovery import copies
from designer.storage.writing import save


@pytest.fixture
def opened(tmp_path):
    """A drill in a file of the test's own."""
    path = tmp_path / "wide.drill.json"
    path.write_bytes(sample("wide-start.drill.json").read_bytes())
    return open_drill(path)


@pytest.fixture
def window(make_window, opened):
    return make_window(Document(opened.drill, path=opened.path), opened)


def test_saving_writes_the_drill_and_remembers_the_file(window, opened):
    hand.write(window.column.title, "X ")
    assert not window.document.clean
    assert window.filing.save()
    assert window.document.clean
    assert open_drill(opened.path).drill == window.document.drill
    assert settings.recent_files()[0] == opened.path


def test_a_drill_without_a_file_asks_where_and_gets_the_ending(make_window, document, prompts, tmp_path):
    window = make_window(document)
    hand.write(window.column.title, "Deep & wide / 2")
    prompts.answers = [tmp_path / "mine"]
    assert window.filing.save()
    assert prompts.asked[0][1].name == "deep-wide-2.drill.json"
    assert window.document.path == tmp_path / "mine.drill.json"


def test_a_folder_that_cannot_be_written_is_told_and_nothing_is_lost(make_window, document, prompts, tmp_path):
    window = make_window(document)
    hand.write(window.column.title, "Deep")
    prompts.answers = [tmp_path / "nowhere" / "deep.drill.json"]
    assert not window.filing.save()
    assert prompts.asked[-1][0] == "say"
    assert "nowhere" in prompts.asked[-1][2]
    assert not window.document.clean
    assert window.document.path is None


@pytest.mark.parametrize(
    ("dated", "first", "edition"),
    [(None, True, 3), (None, False, 3), (date(2026, 1, 1), False, 4), (date(2026, 1, 1), True, 3)],
)
def test_a_later_day_makes_the_next_edition(document, dated, first, edition):
    today = date(2026, 5, 31)
    drill = stamped(document.drill.changed(edition=3, dated=dated), today, first=first)
    assert (drill.dated, drill.edition) == (today, edition)
    assert stamped(drill, today, first=False) is drill


def test_saving_dates_a_drill_without_a_step_and_what_is_undone_is_what_was_done(make_window, opened):
    older = opened.drill.changed(dated=date(2020, 1, 1))
    window = make_window(Document(older, path=opened.path))
    window.perform("Change the title", older.changed(title="Deep"))
    window.perform("Change the title", older.changed(title="Deeper"))
    window.actions_by_name["undo"].trigger()
    assert window.filing.save()
    saved = window.document.drill
    assert (saved.title, saved.edition) == ("Deep", older.edition + 1)
    window.actions_by_name["redo"].trigger()
    window.actions_by_name["undo"].trigger()
    assert window.document.clean
    assert window.document.drill == saved == open_drill(opened.path).drill
    window.actions_by_name["undo"].trigger()
    assert window.document.drill == older


def test_going_back_asks_and_can_be_undone(window, prompts):
    saved = window.document.drill
    hand.write(window.column.title, "X ")
    changed = window.document.drill
    prompts.answers = [False]
    window.actions_by_name["revert"].trigger()
    assert window.document.drill == changed
    prompts.answers = [True]
    window.actions_by_name["revert"].trigger()
    assert window.document.drill == saved
    assert window.document.clean
    window.actions_by_name["undo"].trigger()
    assert window.document.drill == changed


def test_a_card_carries_the_bytes_that_were_read_until_the_drill_is_changed(window, opened):
    assert window.filing.source() == opened.source
    hand.write(window.column.title, "X ")
    assert window.filing.source() != opened.source
    window.actions_by_name["undo"].trigger()
    assert window.filing.source() == opened.source


def test_a_recovery_copy_is_kept_while_there_is_anything_to_lose(window):
    hand.write(window.column.title, "X ")
    window.filing.keep()
    window.filing._keeper.release()  # as if the program had stopped here
    (copy,) = copies()
    assert copy.path == window.document.path
    assert copy.read().drill == window.document.drill
    window.filing.keep()
    assert window.filing.save()
    window.filing._keeper.release()
    assert [each for each in copies() if each.file != copy.file] == []


def test_another_program_s_change_is_told_and_can_be_taken(window, opened, qtbot, prompts):
    theirs = opened.drill.changed(id=new_id("d", window.document.source), title="Theirs")
    save(opened.path, theirs)
    qtbot.waitUntil(lambda: "changed by another program" in window.notice.words)
    links = {link.text(): link for link in window.notice._links}
    hand.click(links["Take that one"])
    assert window.document.drill == theirs
    assert window.document.clean
    assert window.notice.words == ""


def test_our_own_save_is_not_taken_for_another_s(window, qtbot):
    hand.write(window.column.title, "X ")
    window.filing.save()
    window.filing._watch.look()
    assert "another program" not in window.notice.words


def test_a_second_change_after_an_atomic_save_is_seen_too(window, opened, qtbot):
    # A save replaces the file, and a plain watcher forgets it: seen with Qt 6.11.
    told = []
    window.filing.changed_outside.connect(lambda: told.append(True))
    for title in ("Theirs", "Theirs again"):
        before = len(told)
        save(opened.path, opened.drill.changed(title=title))
        qtbot.waitUntil(lambda before=before: len(told) > before)


@pytest.mark.parametrize(
    ("words", "name"),
    [
        ("Wide Ball, Recover, Play the Point", "wide-ball-recover-play-the-point"),
        ("Über/../..", "über"),
        ("???", "drill"),
        ("", "drill"),
    ],
)
def test_a_title_becomes_the_name_of_a_file(words, name):
    assert file_name(words) == name


def test_a_read_only_drill_is_never_saved(make_window, opened, prompts):
    window = make_window(
        Document(opened.drill, path=opened.path, read_only=True),
        replace(opened, read_only=True),
    )
    before = opened.path.read_bytes()
    assert not window.filing.save()
    assert not window.filing.save_as()
    assert opened.path.read_bytes() == before
    assert [asked[0] for asked in prompts.asked] == ["say", "say"]


def test_a_copy_is_saved_under_another_name_and_the_drill_goes_on_under_its_own(window, opened, prompts, tmp_path):
    hand.write(window.column.title, "X ")
    copy = tmp_path / "other.drill.json"
    prompts.answers = [opened.path, tmp_path / "other"]
    assert window.filing.save_copy() is None  # its own file is no copy
    assert window.filing.save_copy() == copy
    assert open_drill(copy).drill == window.document.drill
    assert window.document.path == opened.path
    assert not window.document.clean
    assert prompts.asked[0][1].name == "wide-copy.drill.json"


def test_closing_while_something_is_made_asks_and_writes_nothing_that_was_stopped(
    window, prompts, tmp_path, monkeypatch
):
    import threading

    from designer.desktop import printing

    made, go_on = printing.made, threading.Event()

    def slowly(order):
        go_on.wait(20)
        return made(order)

    monkeypatch.setattr(printing, "made", slowly)
    prompts.answers = [tmp_path / "card.pdf", False, True]
    window.actions_by_name["make card"].trigger()
    assert not window.close()
    assert window.isVisible()
    assert window.close()
    go_on.set()
    QThreadPool.globalInstance().waitForDone()
    assert not (tmp_path / "card.pdf").exists()
    assert [asked[1] for asked in prompts.asked if asked[0] == "yes"] == [
        "Making the card goes on. Stop it and close?"
    ] * 2
