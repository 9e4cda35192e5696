"""Ways to start from a blank court: a situation, the drills last used, finished drills to make one's own."""

import pytest
from desktop import hand

from designer.bundle import sample
from designer.desktop import settings
from designer.desktop.situations import SITUATIONS
from designer.desktop.start_shelf import SMALL, StartShelf, sample_drills, seen_of


@pytest.fixture
def make_shelf(qtbot, styled):
    def make(court="tennis"):
        shelf = StartShelf(court)
        qtbot.addWidget(shelf)
        shelf.resize(436, 340)
        shelf.show()
        qtbot.waitUntil(lambda: all(offer._picture is not None for offer in shelf.offers))
        return shelf

    return make


def offer(shelf, words):
    return next(each for each in shelf.offers if each.text() == words)


def test_every_situation_and_some_samples_are_shown_with_their_courts(make_shelf, qtbot):
    shelf = make_shelf()
    words = [each.text() for each in shelf.offers]
    assert words[: len(SITUATIONS)] == [situation.name for situation in SITUATIONS]
    assert "Wide Ball, Recover, Play the Point" in words  # its title, not its file's name
    with qtbot.waitSignal(shelf.situated) as situated:
        hand.click(offer(shelf, "Serve"))
    assert situated.args[0].key == "serve"
    with qtbot.waitSignal(shelf.copied) as copied:
        hand.click(offer(shelf, "Wide Ball, Recover, Play the Point"))
    assert copied.args == [sample("wide-start.drill.json")]


def test_recent_drills_come_before_the_samples_and_all_samples_can_be_listed(make_shelf, qtbot, tmp_path):
    mine, broken = tmp_path / "mine.drill.json", tmp_path / "broken.drill.json"
    mine.write_bytes(sample("hoop-red.drill.json").read_bytes())
    broken.write_text("{")
    settings.add_recent(mine)
    settings.add_recent(broken)
    assert seen_of(broken, SMALL, 1.0).title == "broken"  # its name alone: opening it says what is wrong
    broken.unlink()
    shelf = make_shelf()
    first = shelf.offers[len(SITUATIONS)]
    with qtbot.waitSignal(shelf.opened) as opened:
        hand.click(first)
    assert opened.args == [mine]
    before = len(shelf.offers)
    shelf._show_all()
    assert len(shelf.offers) > before
    assert len([each for each in shelf.offers if each.toolTip()]) == len(sample_drills()) + 1


def test_in_the_window_it_goes_when_the_drawing_begins_and_comes_back(window, qtbot):
    qtbot.waitUntil(lambda: window.shelf is not None and window.shelf.isVisible())
    court = window.canvas.viewport().rect()
    window.shelf.situated.emit(SITUATIONS[1])
    assert window.shelf.isHidden()
    assert window.document.stack.undoText() == "Start from a serve"
    assert sorted(spot.job for spot in window.view.setting.spots.values()) == ["A", "B"]
    assert len(window.view.setting.shots) == 2
    hand.settle()
    assert window.canvas.viewport().rect().width() == court.width()
    window.actions_by_name["undo"].trigger()
    hand.settle()
    assert window.shelf.isVisible()


def test_a_court_stays_in_sight_while_it_is_pressed(make_shelf):
    shelf = make_shelf()
    serve = offer(shelf, "Serve")
    pictures = []
    for down in (False, True):
        serve.setDown(down)
        seen = serve.grab().toImage()
        inside = [(x, y) for x in range(10, serve.width() - 10, 3) for y in range(8, 34, 2)]
        pictures.append(len({seen.pixel(x, y) for x, y in inside}))
    assert min(pictures) > 3
