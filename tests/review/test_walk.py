import pytest
from review.situations import FEED, RALLY, drill

from designer.drill.base import Place
from designer.drill.conditions import Event, In
from designer.drill.rules import Keep, Part, Points, Rule
from designer.review.walk import owner, replaced, value_at, values_in

RULE = Rule(
    id="rule",
    when=(Event(what="played", and_=(Event(what="won", by=("A",)),)),),
    must=Keep(do="keep", where=(In(area="zone"), In(area="back court"))),
)


def test_every_value_is_found_at_its_path():
    found = dict(values_in(RULE))
    assert found["must", "where", 1, "area"] == "back court"
    assert found["when", 0, "and_", 0, "by"] == ("A",)
    assert all(value_at(RULE, path) == value for path, value in values_in(RULE))


def test_a_value_is_replaced_and_nothing_else():
    path = ("must", "where", 0, "area")
    assert replaced(RULE, path, "other").must.where == (In(area="other"), In(area="back court"))
    for other, value in values_in(replaced(RULE, path, "other")):
        if other not in [path[:length] for length in range(len(path) + 1)]:
            assert value == value_at(RULE, other)


def test_nothing_takes_an_entry_out_of_a_list_and_a_field_to_none():
    assert replaced(Part(id="p", kind="open", shots=("a", "b")), ("shots", 0), None).shots == ("b",)
    assert replaced(FEED.changed(after="x"), ("after",), None).after is None
    assert replaced(FEED.changed(to=Place(on="x")), ("to", "on"), "y").to.on == "y"


def test_a_value_that_does_not_fit_is_refused():
    points = Points(id="p", on=(Event(what="won"),), gives={"then": "replay"})
    with pytest.raises(ValueError, match="on"):
        replaced(points, ("on", 0), None)


def test_the_owner_is_the_innermost_record_with_an_id():
    whole = drill(*RALLY, RULE)
    path = next(path for path, value in values_in(whole) if value == "back court")
    assert owner(whole, path) == "rule"
    assert owner(whole, ("title",)) is None
    assert owner(RULE, ("must",)) is None
