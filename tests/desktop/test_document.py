import random
import tempfile
from dataclasses import replace
from pathlib import Path

import pytest
from hypothesis import settings
from hypothesis import strategies as st
from hypothesis.stateful import RuleBasedStateMachine, invariant, precondition, rule
from PySide6.QtWidgets import QApplication

from designer.desktop.canvas import deeds
from designer.desktop.canvas.court_canvas import CourtCanvas
from designer.desktop.canvas.drop import drop_item
from designer.desktop.canvas.placing import PLACED, STRETCHED
from designer.desktop.canvas.pointer import Pointer
from designer.desktop.document import Document, ReadOnly
from designer.desktop.view import View
from designer.drill.base import place
from designer.drill.drill import Drill, Progression, Variation
from designer.drill.edits import add_progression, add_variation, follow_again, put, remove_progression
from designer.drill.items import Cone
from designer.drill.setting import At, addresses
from designer.storage.reading import open_drill
from designer.storage.writing import save

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


PLACES = st.tuples(st.floats(-8, 8), st.floats(-17, 17))
NUMBERS = st.integers(0, 10_000)


class Session(RuleBasedStateMachine):
    """A coach who does anything at all: after every step the file reads back the same, and the screen shows the drill."""

    def __init__(self):
        super().__init__()
        self.application = QApplication.instance() or QApplication([])
        self.document = Document(empty(), source=random.Random(5))
        self.view = View(self.document)
        self.canvas = CourtCanvas(self.document, self.view)
        self.canvas.resize(600, 800)
        self.canvas.fit()
        self.values = [self.document.drill]
        self.now = 0
        self.grown = 0
        self.folder = tempfile.TemporaryDirectory()

    def teardown(self):
        self.canvas.deleteLater()
        self.folder.cleanup()

    def note_step(self):
        """Whatever the last rule did became one step at most: the model follows what is on top of the stack."""
        if self.document.drill != self.values[self.now]:
            self.values = [*self.values[: self.now + 1], self.document.drill]
            self.now += 1

    def picked(self, number):
        """Some of what is on the court."""
        there = sorted(deeds.on_court(self.view.setting))
        return tuple(id for index, id in enumerate(there) if number >> (index % 10) & 1)

    @rule(kind=st.sampled_from((*PLACED, *STRETCHED)), at=PLACES)
    def drop(self, kind, at):
        drop_item(self.document, self.view, kind, at)
        self.note_step()

    @rule(tool=st.sampled_from(("ball", "feed", "run", "line", "area")), start=PLACES, end=PLACES, left=st.booleans())
    def draw(self, tool, start, end, left):
        self.view.set_tool(tool)
        self.gesture(start, end, (), left=left)
        self.view.set_tool("select")
        self.note_step()

    @rule(number=NUMBERS, way=PLACES, left=st.booleans(), copying=st.booleans())
    def carry(self, number, way, left, copying):
        ids = self.picked(number)
        self.view.select(ids)
        if ids:
            self.gesture((0.0, 0.0), (way[0] / 4, way[1] / 4), ids[:1], left=left, alt=copying)
            self.note_step()

    def gesture(self, start, end, under, *, left, **held):
        toolbox = self.canvas.toolbox
        before = self.document.drill
        pointer = Pointer(start, under, **held)
        toolbox.press(pointer)
        for share in (0.3, 0.7, 1.0):
            at = (start[0] + (end[0] - start[0]) * share, start[1] + (end[1] - start[1]) * share)
            pointer = replace(pointer, at=at, under=())
            toolbox.move(pointer)
        if left:
            toolbox.tool.cancel()
        toolbox.release(pointer)
        if left:
            assert self.document.drill is before
        toolbox.tool.finish()

    @rule(number=NUMBERS)
    def delete(self, number):
        self.view.select(self.picked(number))
        deeds.delete_picked(self.canvas.bench)
        self.note_step()

    @rule(number=NUMBERS)
    def duplicate(self, number):
        self.view.select(self.picked(number))
        deeds.duplicate_picked(self.canvas.bench)
        self.note_step()

    @precondition(lambda self: len(self.document.drill.progressions) < 3)
    @rule()
    def grow(self):
        self.grown += 1
        number = self.grown
        drill = add_progression(self.document.drill, Progression(id=f"p-{number}"))
        drill = add_variation(drill, f"p-{number}", "harder", Variation(id=f"v-{number}", name="Harder"))
        self.document.perform("Add a progression", drill)
        self.note_step()

    @precondition(lambda self: len(self.document.drill.progressions) > 1)
    @rule(number=NUMBERS)
    def shrink(self, number):
        progressions = self.document.drill.progressions
        gone = progressions[number % len(progressions)].id
        self.document.perform("Remove a progression", remove_progression(self.document.drill, gone))
        self.note_step()

    @rule(number=NUMBERS)
    def look_elsewhere(self, number):
        there = list(addresses(self.document.drill))
        self.view.go_to(there[number % len(there)])

    @rule(number=NUMBERS)
    def let_go(self, number):
        self.document.perform("Follow again", follow_again(self.document.drill, self.view.at, self.picked(number)))
        self.note_step()

    @precondition(lambda self: self.now > 0)
    @rule()
    def undo(self):
        self.document.undo()
        self.now -= 1

    @precondition(lambda self: self.now < len(self.values) - 1)
    @rule()
    def redo(self):
        self.document.redo()
        self.now += 1

    @invariant()
    def holds_the_value_it_should(self):
        assert self.document.drill == self.values[self.now]
        assert not self.document.previewing
        assert self.document.stack.canUndo() == (self.now > 0)
        assert self.document.stack.canRedo() == (self.now < len(self.values) - 1)

    @invariant()
    def reads_back_as_it_was_written(self):
        path = Path(self.folder.name) / "a.drill.json"
        save(path, self.document.drill)
        assert open_drill(path).drill == self.document.drill

    @invariant()
    def shows_what_a_new_canvas_would(self):
        assert self.view.selection <= self.view.setting.ids()
        shown = self.canvas.court_scene.marks()
        self.canvas.picture_whole()
        assert self.canvas.court_scene.marks() == shown


TestSession = Session.TestCase
TestSession.settings = settings(max_examples=12, stateful_step_count=16, deadline=None)
