"""What a setting has of its own is counted, marked and let go, one by one or all at once."""

import pytest
from desktop import hand

from designer.desktop.deeds.change_deeds import ChangeDeeds
from designer.desktop.ladder import owns
from designer.drill import edits
from designer.drill.setting import At, below, setting_at

HARDER = At("p-fed", "v-one-racket")
POINTS = At("p-points")


@pytest.fixture
def wide(wide_kept):
    yield wide_kept
    wide_kept.actions_by_name["mark changes"].setChecked(False)


def marked(window):
    return [row for row in window.column.sentences() if row.changed]


def test_the_toggle_marks_what_a_progression_changes_in_column_and_court(wide):
    wide.view.go_to(POINTS)
    hand.settle()
    assert not marked(wide)
    button = wide.degrees.changes
    assert button.text() == f"{len(owns(wide.document.drill, POINTS))} changes"
    hand.click(button)
    assert wide.actions_by_name["mark changes"].isChecked()
    assert {id for row in marked(wide) for id in row.sentence.about} & wide.view.changed_ids()
    ghosts = wide.findChild(ChangeDeeds).ghosts
    gone = {own.id for own in owns(wide.document.drill, POINTS) if own.how == "gone"}
    assert gone & {mark.id for mark in ghosts.marks()}, "what is taken away stands there pale"
    hand.click(button)
    assert not marked(wide)
    assert ghosts.marks() == ()


def test_the_keyboard_comes_from_easier_and_harder_to_the_changes(wide):
    harder = wide.degrees.button("harder")
    harder.setFocus()
    harder.focusNextChild()
    assert wide.focusWidget() is wide.degrees.changes


def test_where_nothing_is_changed_there_is_no_button(wide):
    assert not wide.degrees.changes.isHidden()
    wide.view.go_to(At(wide.document.drill.progressions[0].id))
    hand.settle()
    assert wide.degrees.changes.isHidden()
    assert wide.view.changed_ids() == frozenset()


def test_each_change_is_let_go_by_its_entry(wide):
    wide.view.go_to(HARDER)
    hand.settle()
    entries = wide.findChild(ChangeDeeds).menu().actions()
    action = next(action for action in entries if action.text() == "feed area:  follow again")
    action.trigger()
    assert setting_at(wide.document.drill, HARDER).items == below(wide.document.drill, HARDER).items
    assert wide.document.stack.undoText() == "Follow again: feed area"
    hand.settle()
    assert wide.degrees.changes.isHidden()


def test_all_that_is_gone_changed_or_new_is_let_go_at_once(wide):
    wide.view.go_to(POINTS)
    entries = wide.findChild(ChangeDeeds).menu().actions()
    assert any(action.text().endswith("bring it back") for action in entries)
    assert any(action.text().endswith("new here, take it away") for action in entries)
    next(action for action in entries if action.text().startswith("All of it")).trigger()
    assert setting_at(wide.document.drill, POINTS) == below(wide.document.drill, POINTS)
    assert wide.document.stack.count() == 1
    wide.document.undo()
    assert setting_at(wide.document.drill, POINTS) != below(wide.document.drill, POINTS)


def test_a_thing_that_was_moved_is_seen_where_it_was(wide):
    wide.view.go_to(HARDER)
    wide.actions_by_name["mark changes"].setChecked(True)
    ghosts = wide.findChild(ChangeDeeds).ghosts
    assert {mark.id for mark in ghosts.marks()} >= {"feed-zone"}
    wide.document.perform("Follow", edits.follow_again(wide.document.drill, HARDER, ["feed-zone"]))
    assert "feed-zone" not in {mark.id for mark in ghosts.marks()}
