"""One box for all that is remembered: shown as it is, changed at once, in every window."""

import pytest
from desktop import hand
from PySide6.QtWidgets import QWidget

from designer.court.standards import court_names
from designer.desktop import settings
from designer.desktop.preferences import Preferences
from designer.desktop.style import style
from designer.numbers.levels import LEVELS


@pytest.fixture
def box(qtbot, styled):
    parent = QWidget()
    qtbot.addWidget(parent)
    made = Preferences(parent)
    made.show()
    yield made
    made.close()


def press(box, name, words):
    segment = next(each for each in box.boxes[name].segments() if each.text() == words)
    hand.click(segment)


def choose(box, name, value):
    drop_down = box.boxes[name]
    place = drop_down.findData(value)
    assert place >= 0, f"{name} has no {value}"
    drop_down.setCurrentIndex(place)
    drop_down.activated.emit(place)


def test_every_change_is_remembered_and_told(box):
    told = []
    box.changed.connect(told.append)
    press(box, "units", "Feet and inches")
    press(box, "theme", "Dark")
    choose(box, "paper", "a4")
    press(box, "hand", "Left")
    choose(box, "court", "red")
    choose(box, "level", "starter")
    choose(box, "language", "de")
    hand.write(box.boxes["author"], "Head coach")
    box.boxes["author"].editingFinished.emit()
    assert (settings.units(), settings.theme(), settings.paper(), settings.hand()) == ("feet", "dark", "a4", "left")
    assert (settings.court(), settings.level(), settings.language()) == ("red", "starter", "de")
    assert settings.author() == "Head coach"
    assert set(told) == {"units", "theme", "paper", "hand", "court", "level", "language", "author"}
    assert style().look.name == "dark"


def test_it_shows_what_is_remembered_and_offers_all_there_is(qtbot, styled):
    settings.set_units("metres")
    settings.set_court("green")
    parent = QWidget()
    qtbot.addWidget(parent)
    box = Preferences(parent)
    assert [each.text() for each in box.boxes["units"].segments() if each.isChecked()] == ["Metres"]
    courts, levels = box.boxes["court"], box.boxes["level"]
    assert courts.currentData() == "green"
    assert {courts.itemData(number) for number in range(courts.count())} == set(court_names())
    assert tuple(levels.itemData(number) for number in range(levels.count())) == LEVELS
    box.close()


def test_what_is_chosen_holds_for_every_window_and_every_new_drill(make_window, document, source, qtbot, prompts):
    from designer.desktop.application import Windows
    from designer.desktop.blank import blank
    from designer.desktop.document import Document

    one, other = make_window(document), make_window(Document(blank(source), source=source))
    one.actions_by_name["preferences"].trigger()
    box = one.deeds.file.preferences
    press(box, "units", "Metres")
    press(box, "hand", "Left")
    choose(box, "court", "orange")
    box.close()
    assert (one.view.units, other.view.units) == ("metres", "metres")
    assert other.actions_by_name["units metres"].isChecked()
    windows = Windows(prompts)
    new = windows.new()
    assert new.document.drill.court.standard == "orange"
    new.start_row.players.emit(2)
    assert {job.hand for job in new.document.drill.jobs} == {"left"}
    new.document.stack.setClean()
    new.close()
