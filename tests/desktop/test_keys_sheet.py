"""The sheet of keys: it says what each key does, fits the screen, and can be closed wherever it is scrolled to."""

from desktop import hand
from PySide6.QtWidgets import QLabel
from shiboken6 import isValid

from designer.desktop.canvas.keys import LETTERS, OTHER_KEYS


def test_it_names_every_key_and_its_button_is_in_sight(window):
    window.actions_by_name["keys"].trigger()
    sheet = window.deeds.view.keys
    said = [label.text() for label in sheet.findChildren(QLabel)]
    for key, words in (*((use.letter, use.name) for use in LETTERS), *OTHER_KEYS):
        assert said[said.index(key) + 1] == words
    hand.settle()
    assert sheet.height() <= sheet.screen().availableSize().height()
    assert sheet.rect().contains(sheet.close_button.geometry())
    assert not sheet.table.isAncestorOf(sheet.close_button)
    hand.click(sheet.close_button)
    assert not isValid(sheet)
