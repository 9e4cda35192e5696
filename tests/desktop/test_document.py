import random

import pytest

from designer.desktop.document import Document, ReadOnly
from designer.drill.base import place
from designer.drill.drill import Drill, Progression
from designer.drill.edits import put
from designer.drill.items import Cone
from designer.drill.setting import At

pytestmark = pytest.mark.usefixtures("qapp")
HERE = At("p")


def empty():
    return Drill(id="d-test", progressions=(Progression(id="p"),))


def with_cone(drill, x, id="cone"):
    return put(drill, HERE, Cone(kind="cone", id=id, place=place(x, 0.0)))


@pytest.fixture
def document():
    return Document(empty(), source=random.Random(1))


def heard(signal):
    calls = []
    signal.connect(lambda *values: calls.append(values))
    return calls


def test_a_step_can_be_taken_back_and_done_again_and_has_a_name(document):
    before, after = document.drill, with_cone(document.drill, 1.0)
    changes = heard(document.changed)
    document.perform("Add a cone", after)
    assert document.stack.undoText() == "Add a cone"
    document.undo()
    assert document.drill == before
    document.redo()
    assert document.drill == after
    assert changes == [(before, after), (after, before), (before, after)]


def test_a_preview_is_seen_but_is_no_step_and_leaves_no_trace(document):
    document.perform("Add a cone", with_cone(document.drill, 1.0))
    document.undo()
    settled, changes, shown = document.drill, heard(document.changed), heard(document.shown_changed)
    preview = with_cone(settled, 2.0)
    document.preview(preview)
    assert document.shown == preview
    assert document.drill == settled
    assert document.previewing
    document.end_preview()
    assert document.shown == settled
    assert not changes
    assert shown == [(settled, preview), (preview, settled)]
    assert document.stack.canRedo(), "a gesture that was left keeps redo"


def test_settling_what_was_previewed_tells_the_change_from_the_value_before_the_gesture(document):
    settled, changes = document.drill, heard(document.changed)
    document.preview(with_cone(settled, 1.0))
    final = with_cone(settled, 2.0)
    document.preview(final)
    document.perform("Move cone", final)
    assert changes == [(settled, final)]
    assert not document.previewing
    assert document.stack.count() == 1


def test_a_step_that_changes_nothing_is_none(document):
    document.preview(with_cone(document.drill, 1.0))
    document.perform("Move cone", document.drill.changed())
    assert document.stack.count() == 0
    assert document.shown == document.drill


def test_undo_during_a_gesture_only_leaves_the_gesture(document):
    document.perform("Add a cone", with_cone(document.drill, 1.0))
    kept = document.drill
    document.preview(with_cone(kept, 5.0))
    document.undo()
    assert document.shown == document.drill == kept


def test_nudges_of_one_thing_become_one_step_and_back_to_the_start_none(document):
    first = document.drill
    for x in (1.0, 2.0, 3.0):
        document.perform("Move cone", with_cone(first, x), merge=("nudge", "cone"))
    assert document.stack.count() == 1
    document.undo()
    assert document.drill == first
    document.perform("Move cone", with_cone(first, 1.0), merge=("nudge", "cone"))
    document.perform("Move cone", first, merge=("nudge", "cone"))
    assert not document.stack.canUndo()


def test_different_things_nudged_are_different_steps(document):
    document.perform("Move cone", with_cone(document.drill, 1.0), merge=("nudge", "cone"))
    document.perform("Move disc", with_cone(document.drill, 2.0), merge=("nudge", "disc"))
    assert document.stack.count() == 2


def test_it_is_clean_where_it_was_saved(document, tmp_path):
    assert document.clean
    cleaned = heard(document.clean_changed)
    document.perform("Add a cone", with_cone(document.drill, 1.0))
    assert not document.clean
    document.saved_as(tmp_path / "a.drill.json")
    assert document.clean
    assert document.path == tmp_path / "a.drill.json"
    document.undo()
    assert not document.clean
    document.redo()
    assert document.clean
    assert cleaned == [(False,), (True,), (False,), (True,)]


def test_a_nudge_after_saving_is_dirty_although_it_could_merge(document, tmp_path):
    document.perform("Move cone", with_cone(document.drill, 1.0), merge="nudge")
    document.saved_as(tmp_path / "a.drill.json")
    saved = document.drill
    document.perform("Move cone", with_cone(document.drill, 2.0), merge="nudge")
    assert not document.clean
    document.undo()
    assert document.drill == saved
    assert document.clean


def test_a_read_only_drill_can_be_looked_at_but_not_changed():
    document = Document(empty(), read_only=True)
    kept = document.drill
    document.preview(with_cone(kept, 1.0))
    assert document.shown is kept
    with pytest.raises(ReadOnly, match="read-only"):
        document.perform("Add a cone", with_cone(kept, 1.0))
    assert document.drill is kept


def test_undo_says_that_a_value_was_come_back_to_and_a_first_step_does_not(document):
    revisits = heard(document.revisited)
    before, after = document.drill, with_cone(document.drill, 1.0)
    document.perform("Add a cone", after)
    assert not revisits
    document.undo()
    document.redo()
    assert revisits == [(after, before), (before, after)]
