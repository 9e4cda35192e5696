"""A coach's first drill in the real window, from the blank court to the card in the hand, and back."""

import io

import pypdf
import pytest
from desktop import hand
from PySide6.QtCore import QMimeData, QPoint, QPointF, Qt, QUrl
from PySide6.QtGui import QDragEnterEvent, QDropEvent
from PySide6.QtWidgets import QApplication

from designer.bundle import sample
from designer.desktop.controls import Link
from designer.desktop.document import Document
from designer.desktop.usual import UsualButton
from designer.drill.drill import Drill
from designer.storage.reading import open_drill

BASE = 11.8872


def open_sample(make_window, name="wide-start", **values):
    path = sample(f"{name}.drill.json")
    opened = open_drill(path)
    return make_window(Document(opened.drill, path=path, **values), opened)


def draw_the_first_setting(window):
    """Two players, a cone, a line and a basket; the feed, two shots and a run."""
    hand.click(window.start_row.counts.segments()[1])
    assert hand.drop(window.canvas, "cone", (4.8006, -2.7432))
    assert hand.drop(window.canvas, "line", (0.0, 8.2296))
    window.canvas.setFocus()
    hand.click(window.strip.more)
    hand.click(window.strip.button("basket"))
    hand.press(window.canvas, (5.0, 14.0))
    window.view.set_tool("feed")
    hand.drag(window.canvas, (0.0, 12.8016), (2.7432, -8.2296))
    window.view.set_tool("select")
    window.view.set_tool("ball")
    hand.press(window.canvas, (2.7432, -10.0))
    hand.press(window.canvas, (-2.0574, 9.144))
    hand.press(window.canvas, (-2.0574, 11.0))
    hand.press(window.canvas, (-2.0574, -9.144))
    hand.key(window.canvas, Qt.Key.Key_Return)
    hand.key(window.canvas, Qt.Key.Key_Escape)
    window.view.set_tool("run")
    hand.drag(window.canvas, (0.0, -12.8016), (2.0574, -10.9728))
    hand.key(window.canvas, Qt.Key.Key_Escape)
    hand.key(window.canvas, Qt.Key.Key_Escape)


def test_a_blank_court_is_there_at_once(window):
    assert window.start_row.isVisible()
    assert not window.view.setting.ids()
    assert [row.sentence.missing for row in window.column.sentences()].count(True) == 3


def link(window, name):
    """The words in a field that add an answer, or the usual one that is offered."""
    found = (*hand.field(window, name).findChildren(Link), *hand.field(window, name).findChildren(UsualButton))
    return next(each for each in found if each.isVisible())


def say_how_it_is_played(window):
    """Title, objective, how it starts, a rule and its cost, points, and where it ends: each where it stands."""
    hand.write(window.column.title, "Wide, back, play")
    hand.write(window.column.objective, "I get back before the next ball.")
    window.actions_by_name["ask all"].trigger()
    hand.click(hand.sentence(window, "How does it start"))
    hand.choose(window, "next", "change every two")
    hand.click(link(window, "bad"))
    window.actions_by_name["rule use stroke"].trigger()
    hand.settle()
    hand.choose(window, "breach", "the point is lost")
    hand.click(hand.sentence(window, "How does a point end"))
    hand.click(hand.sentence(window, "Where does it end"))
    window.column.close_form()


def add_a_second_progression(window):
    """Another layout, and the point is open."""
    window.actions_by_name["progression add"].trigger()
    hand.write(window.tabs.findChild(type(window.tabs._box)), "Points")
    hand.key(window.tabs._box, Qt.Key.Key_Return)
    cone = next(item for item in window.view.setting.items.values() if item.kind == "cone")
    hand.drag(window.canvas, cone.place.at, (3.429, -5.4864))
    window.actions_by_name["add part"].trigger()
    hand.settle()
    hand.choose(window, "kind", "open")
    return cone


def test_the_first_drill_from_blank_court_to_card_and_back(make_window, document, prompts, tmp_path):
    window = make_window(document)
    blank = document.drill
    draw_the_first_setting(window)
    here = window.view.setting
    assert sorted(spot.job for spot in here.spots.values()) == ["A", "B"]
    assert sorted(item.kind for item in here.items.values()) == ["basket", "cone", "line"]
    assert [shot.by for shot in here.shots.values()] == ["B", "A", "B"]
    assert [run.by for run in here.runs.values()] == ["A"]
    assert not window.start_row.isVisible()

    say_how_it_is_played(window)
    said = window.view.setting
    assert [start.bad.then for start in said.starts.values()] == ["replay"]
    assert [rule.breach.then for rule in said.rules.values()] == ["lose the point"]
    assert [points.gives.value for points in said.points.values()] == [1]
    assert said.finish.to == 11

    cone = add_a_second_progression(window)
    finished, at = document.drill, window.view.at
    assert [p.name for p in finished.progressions] == ["", "Points"]
    assert window.view.setting.items[cone.id].place.at == (3.429, -5.4864)

    while document.stack.canUndo():
        window.actions_by_name["undo"].trigger()
    assert document.drill == blank
    while document.stack.canRedo():
        window.actions_by_name["redo"].trigger()
    assert document.drill == finished

    file, card = tmp_path / "first.drill.json", tmp_path / "first.pdf"
    prompts.answers = [file, card]
    window.actions_by_name["save"].trigger()
    assert document.clean
    window.view.go_to(at)
    hand.settle()
    hand.click(window.column.bar.print_button)
    preview = window.deeds.card.preview
    hand.finish(preview)
    hand.click(preview.keep_button)
    hand.finish(preview)
    preview.close()
    page = pypdf.PdfReader(io.BytesIO(card.read_bytes())).pages[0]
    # A5: ISO 216, 148 × 210 mm.
    assert float(page.mediabox.width) == pytest.approx(148 / 25.4 * 72, abs=0.5)
    assert float(page.mediabox.height) == pytest.approx(210 / 25.4 * 72, abs=0.5)
    text = " ".join(page.extract_text().split())
    assert "Wide, back, play" in text
    assert "I get back before the next ball." in text
    window.close()
    again = open_drill(file)
    assert again.drill == document.drill
    assert again.drill.changed(dated=None) == finished.changed(dated=None)


def test_a_sentence_picks_what_it_is_about_and_the_court_picks_the_sentence(make_window):
    window = open_sample(make_window)
    window.view.go_to(type(window.view.at)("p-fed"))
    hand.settle()
    row = next(row for row in window.column.sentences() if row.sentence.about[:1] == ("reply",))
    hand.click(row)
    assert window.view.selection == {"reply"}
    assert window.column.form.subject.key == "reply"
    hand.click(row)
    assert window.column.form is None
    window.view.select(["back"])
    hand.settle()
    picked = [each for each in window.column.sentences() if each.picked]
    assert picked
    assert all("back" in each.sentence.about for each in picked)


def test_each_change_in_a_form_shows_at_once_and_is_one_step(make_window):
    window = open_sample(make_window)
    window.view.go_to(type(window.view.at)("p-fed"))
    hand.settle()
    window.column.open("reply")
    steps = window.document.stack.count()
    hand.choose(window, "wing", "backhand")
    assert window.view.setting.shots["reply"].wing == "backhand"
    assert window.document.stack.count() == steps + 1
    assert "backhand" in next(r for r in window.column.sentences() if r.sentence.about[:1] == ("reply",)).sentence.text
    window.actions_by_name["undo"].trigger()
    hand.settle()
    assert window.view.setting.shots["reply"].wing == "forehand"
    assert hand.field(window, "wing").findChildren(type(window.start_row.counts.segments()[0]))[0].isChecked()


def test_typing_is_undone_in_one_go_by_the_key_of_undo(window, qtbot):
    hand.write(window.column.title, "Deep")
    assert window.document.drill.title == "Deep"
    assert window.document.stack.count() == 1
    with qtbot.waitActive(window):
        window.activateWindow()
    qtbot.keyClick(window.column.title, Qt.Key.Key_Z, Qt.KeyboardModifier.ControlModifier)
    hand.settle()
    assert window.document.drill.title == ""
    assert window.column.title.toPlainText() == ""


def test_closing_asks_before_work_is_lost(window, prompts, tmp_path):
    hand.write(window.column.title, "Deep")
    prompts.answers = ["cancel"]
    assert not window.close()
    assert window.isVisible()
    prompts.answers = ["save", None]
    assert not window.close()
    prompts.answers = ["save", tmp_path / "deep.drill.json"]
    assert window.close()
    assert open_drill(tmp_path / "deep.drill.json").drill.title == "Deep"


def test_a_drill_of_a_newer_program_is_shown_and_cannot_be_changed(make_window, prompts):
    path = sample("wide-start.drill.json")
    opened = open_drill(path)
    from dataclasses import replace

    newer = replace(opened, read_only=True, notices=("An item of a kind “drone” is left out.",))
    window = make_window(Document(opened.drill, path=path, read_only=True), newer)
    assert "newer program" in window.notice.words
    assert "drone" in window.notice.words
    assert not window.actions_by_name["save"].isEnabled()
    before = window.document.drill
    window.column.open("drill:facts")
    window.actions_by_name["progression add"].trigger()
    hand.settle()
    assert window.document.drill is before
    assert prompts.asked == []


def test_a_file_dropped_on_the_window_is_opened(window, qtbot, tmp_path):
    path = tmp_path / "one.drill.json"
    mime = QMimeData()
    mime.setUrls([QUrl.fromLocalFile(str(path)), QUrl("https://example.org/x.drill.json")])
    held = (Qt.DropAction.CopyAction, mime, Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier)
    with qtbot.waitSignal(window.wanted) as wanted:
        QApplication.sendEvent(window, QDragEnterEvent(QPoint(20, 20), *held))
        QApplication.sendEvent(window, QDropEvent(QPointF(20, 20), *held))
    assert wanted.args == [(path,)]


@pytest.mark.parametrize("name", ["photo.png", "folder", "notes.txt", "empty.drill.json"])
def test_a_file_that_is_no_drill_is_told_in_a_sentence_and_nothing_is_lost(
    make_window, document, prompts, tmp_path, name
):
    from designer.desktop.application import Windows

    path = tmp_path / name
    if name == "folder":
        path.mkdir()
    else:
        path.write_bytes(b"\x89PNG\r\n\x1a\n" if name.endswith("png") else b"" if "empty" in name else b"Bring cones.")
    window = make_window(document)
    hand.write(window.column.title, "Deep")
    windows = Windows(prompts)
    windows._windows.append(window)
    window.wanted.connect(windows.open)
    mime = QMimeData()
    mime.setUrls([QUrl.fromLocalFile(str(path))])
    held = (Qt.DropAction.CopyAction, mime, Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier)
    QApplication.sendEvent(window, QDragEnterEvent(QPoint(20, 20), *held))
    QApplication.sendEvent(window, QDropEvent(QPointF(20, 20), *held))
    hand.settle()
    ((kind, sentence, more),) = prompts.asked
    assert (kind, sentence) == ("say", "The drill was not opened.")
    assert name in more
    assert "expected" in more
    assert window.document.drill.title == "Deep"


def test_the_start_page_knows_only_blank_courts(make_window):
    window = open_sample(make_window)
    assert not window.start_row.isVisible()
    assert isinstance(window.document.drill, Drill)


def test_a_key_that_waited_for_the_window_is_not_lost(make_window, document, qtbot):
    # Deeds are joined when the window rests; what is asked for before that joins them and is done.
    window = make_window(document, shown=False)
    assert "deeds" not in window.__dict__
    with qtbot.waitSignal(window.wanted) as wanted:
        window.actions_by_name["new"].trigger()
    assert wanted.args == [()]
    other = make_window(Document(document.drill), shown=False)
    other.actions_by_name["snapping"].trigger()
    assert "deeds" in other.__dict__
    assert other.view.snapping == other.actions_by_name["snapping"].isChecked()
