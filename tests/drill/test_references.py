from hypothesis import given
from hypothesis import strategies as st
from strategies import IDS, setting_records

from designer.drill.base import Place
from designer.drill.conditions import Event, In, Outcome
from designer.drill.movement import Shot
from designer.drill.references import renamed
from designer.drill.rules import Keep, Part, Rule, Start
from designer.drill.setting import KINDS

NAMES = {"feed": "feed-2", "zone": "zone-2", "opening": "opening-2"}


def test_references_are_renamed_wherever_they_stand():
    rule = Rule(
        id="zone",
        parts=("opening", "other"),
        of=("feed",),
        when=(Event(what="landed", of=("feed",), where=(In(area="zone"),), and_=(Event(what="won", of=("feed",)),)),),
        must=Keep(do="keep", where=(In(area="zone"), In(area="right half"))),
        breach=Outcome(then="do", text="Back to {zone}, {A}."),
        note="{zone} {{zone} zone",
    )
    made = renamed(rule, NAMES)
    assert made.id == "zone"
    assert made.parts == ("opening-2", "other")
    assert made.of == ("feed-2",)
    assert made.when[0].of == ("feed-2",)
    assert made.when[0].where[0].area == "zone-2"
    assert made.when[0].and_[0].of == ("feed-2",)
    assert [place.area for place in made.must.where] == ["zone-2", "right half"]
    assert made.breach.text == "Back to {zone-2}, {A}."
    assert made.note == "{zone-2} {{zone} zone"


def test_order_start_and_place_are_references_too():
    assert renamed(Shot(id="x", by="A", after="feed", to=Place(on="zone")), NAMES) == Shot(
        id="x", by="A", after="feed-2", to=Place(on="zone-2")
    )
    assert renamed(Start(id="x", shot="feed"), NAMES).shot == "feed-2"
    assert renamed(Part(id="x", kind="open", shots=("feed",)), NAMES).shots == ("feed-2",)


@given(st.data())
def test_renaming_there_and_back_changes_nothing_else(data):
    record = data.draw(setting_records(data.draw(st.sampled_from(KINDS)), "r-1"))
    there = {id: f"new-{id}" for id in IDS}
    back = {new: old for old, new in there.items()}
    assert renamed(renamed(record, there), back) == record
    assert renamed(record, {"nobody": "x"}) is record
