"""Menus: every entry does something, no key is promised twice."""

from collections import Counter

from PySide6.QtGui import QKeySequence

from designer.desktop.actions import MENUS, Deed, Sub
from designer.desktop.canvas.keys import LETTERS


def deeds(entries):
    for entry in entries:
        if isinstance(entry, Sub):
            yield from deeds(entry.entries)
        elif isinstance(entry, Deed):
            yield entry


def test_every_entry_of_every_menu_is_joined_to_something(window):
    # A menu listens to each of its actions, so an entry that does something has a second listener.
    actions = window.actions_by_name
    idle = [
        name
        for name in actions.names()
        if actions[name].receivers("2triggered(bool)") < 2 and not actions[name].receivers("2toggled(bool)")
    ]
    assert idle == ["grey"]  # a tick that is read when the card is made


def test_no_key_is_bound_twice(window):
    keys = Counter(
        shortcut.toString(QKeySequence.SequenceFormat.PortableText)
        for name in window.actions_by_name.names()
        for shortcut in window.actions_by_name[name].shortcuts()
    )
    assert [key for key, count in keys.items() if count > 1] == []
    assert not {use.letter for use in LETTERS} & set(keys), "letters belong to the court, and to typing"


def test_every_name_is_used_once():
    names = [deed.name for _, entries in MENUS for deed in deeds(entries)]
    assert len(set(names)) == len(names)


def test_every_tool_can_be_taken_from_the_menu(window):
    for use in LETTERS:
        window.actions_by_name[f"tool {use.tool}"].trigger()
        assert window.view.tool == use.tool


def test_the_step_to_be_undone_is_named(window):
    assert window.actions_by_name["undo"].text() == "Undo"
    assert not window.actions_by_name["undo"].isEnabled()
    window.start_row.players.emit(2)
    assert window.actions_by_name["undo"].text() == "Undo add players"
    window.actions_by_name["undo"].trigger()
    assert window.actions_by_name["redo"].text() == "Redo add players"
    assert [each.toString() for each in window.actions_by_name["redo"].shortcuts()] == ["Ctrl+Y", "Ctrl+Shift+Z"]


def test_every_menu_is_opened_by_alt_and_its_letter(window):
    titles = [action.text() for action in window.menuBar().actions()]
    letters = [title[title.index("&") + 1].lower() for title in titles]
    assert len(letters) == len(MENUS) == len(set(letters))
