"""Whatever a coach does and takes back, the drill that is saved is the drill that is opened again."""

import random
import tempfile
from pathlib import Path

from hypothesis import settings as hypothesis_settings
from hypothesis import strategies as st
from hypothesis.stateful import RuleBasedStateMachine, initialize, invariant, precondition, rule
from pydantic import ValidationError
from strategies import IDS, drills, points, setting_records, texts
from strategies import settings as drawn_settings

from designer.drill.base import place
from designer.drill.drill import Progression, Variation
from designer.drill.edits import (
    add_progression,
    add_variation,
    change_progression,
    delete,
    duplicate,
    follow_again,
    move,
    put,
    remove_progression,
    remove_variation,
    reorder_progressions,
    with_setting,
)
from designer.drill.ids import new_id
from designer.drill.setting import KINDS, addresses, all_ids, setting_at
from designer.storage.reading import open_drill, read_drill
from designer.storage.writing import drill_bytes, save


class History(RuleBasedStateMachine):
    """A drill that is edited at random, with every state it has been in."""

    @initialize(drill=drills(most_progressions=2), seed=st.integers(0, 2**32))
    def open(self, drill, seed):
        self.states = [drill]
        self.now = 0
        self.source = random.Random(seed)
        self.folder = tempfile.TemporaryDirectory()
        self.file = Path(self.folder.name) / "saved.drill.json"

    def teardown(self):
        if hasattr(self, "folder"):
            self.folder.cleanup()

    @property
    def drill(self):
        return self.states[self.now]

    def perform(self, edited):
        self.states[self.now + 1 :] = [edited]
        self.now += 1

    def somewhere(self, data):
        return data.draw(st.sampled_from(list(addresses(self.drill))))

    def some_of(self, data, at):
        ids = sorted(setting_at(self.drill, at).ids())
        return data.draw(st.lists(st.sampled_from(ids), max_size=3, unique=True)) if ids else []

    @rule(data=st.data())
    def put_one(self, data):
        record = data.draw(setting_records(data.draw(st.sampled_from(KINDS)), data.draw(st.sampled_from(IDS))))
        self.perform(put(self.drill, self.somewhere(data), record))

    @rule(data=st.data())
    def set_all(self, data):
        at = self.somewhere(data)
        self.perform(with_setting(self.drill, at, data.draw(drawn_settings(setting_at(self.drill, at)))))

    @rule(data=st.data())
    def delete_some(self, data):
        at = self.somewhere(data)
        self.perform(delete(self.drill, at, self.some_of(data, at)))

    @rule(data=st.data(), by=points())
    def move_some(self, data, by):
        at = self.somewhere(data)
        try:
            self.perform(move(self.drill, at, self.some_of(data, at), place(*by).at))
        except ValidationError:
            return  # off the drawing: nothing has happened

    @rule(data=st.data())
    def duplicate_some(self, data):
        at = self.somewhere(data)
        try:
            edited, _ = duplicate(self.drill, at, self.some_of(data, at), (0.6858, 0.0), self.source)
        except ValidationError:
            return
        self.perform(edited)

    @rule(data=st.data())
    def let_some_follow_again(self, data):
        at = self.somewhere(data)
        self.perform(follow_again(self.drill, at, self.some_of(data, at)))

    @rule(name=texts(200))
    def add_a_progression(self, name):
        made = new_id("p", self.source, all_ids(self.drill))
        self.perform(add_progression(self.drill, Progression(id=made, name=name)))

    @precondition(lambda self: len(self.drill.progressions) > 1)
    @rule(data=st.data())
    def remove_a_progression(self, data):
        gone = data.draw(st.sampled_from([rung.id for rung in self.drill.progressions]))
        self.perform(remove_progression(self.drill, gone))

    @rule(data=st.data())
    def reorder(self, data):
        self.perform(
            reorder_progressions(self.drill, data.draw(st.permutations([rung.id for rung in self.drill.progressions])))
        )

    @rule(data=st.data(), name=texts(200), degree=st.sampled_from(("easier", "harder", "others")))
    def add_a_variation(self, data, name, degree):
        rung = data.draw(st.sampled_from(self.drill.progressions))
        variation = Variation(id=new_id("v", self.source, all_ids(self.drill)), name=name)
        self.perform(add_variation(self.drill, rung.id, degree, variation))

    @rule(data=st.data())
    def remove_what_may_be_a_variation(self, data):
        at = self.somewhere(data)
        if at.variation is not None:
            self.perform(remove_variation(self.drill, at))

    @rule(data=st.data(), title=texts(200), note=texts(200))
    def write_something(self, data, title, note):
        rung = data.draw(st.sampled_from(self.drill.progressions))
        self.perform(change_progression(self.drill.changed(title=title), rung.id, note=note))

    @precondition(lambda self: self.now > 0)
    @rule()
    def undo(self):
        self.now -= 1

    @precondition(lambda self: self.now < len(self.states) - 1)
    @rule()
    def redo(self):
        self.now += 1

    @invariant()
    def what_is_saved_is_what_is_opened(self):
        if not hasattr(self, "states"):
            return
        written = save(self.file, self.drill)
        opened = open_drill(self.file)
        assert opened.drill == self.drill
        assert opened.notices == ()
        assert opened.source == written == drill_bytes(opened.drill)

    @invariant()
    def every_state_can_still_be_gone_back_to(self):
        # An edit that changed a value in place would show in a state of long ago.
        if hasattr(self, "states"):
            first = self.states[0]
            assert read_drill(drill_bytes(first), "first").drill == first


TestHistory = History.TestCase
TestHistory.settings = hypothesis_settings(max_examples=20, stateful_step_count=15)
