import pytest
from pydantic import ValidationError

from designer.bundle import sample
from designer.drill.drill import Drill
from designer.drill.setting import At
from designer.drill.today import Person, Today

WIDE = Drill.model_validate_json(sample("wide-start.drill.json").read_bytes())


def test_whoever_plays_with_the_other_hand_than_is_drawn_is_told_apart():
    people = {"A": Person(name="Mira", hand="left"), "B": Person(hand="right"), "C": Person(name="Tom")}
    assert Today(drill=WIDE.id, people=people).other_hands(WIDE) == ("A",)


def test_a_setting_that_the_drill_no_longer_has_is_none():
    first = WIDE.progressions[0].id
    assert Today(drill=WIDE.id, progression=first).setting(WIDE) == At(first)
    assert Today(drill=WIDE.id, progression="p-gone").setting(WIDE) is None
    assert Today(drill=WIDE.id).setting(WIDE) is None


def test_names_are_short_and_without_space_round_them():
    assert Today(drill="d", people={"B": Person(name=" Tom "), "A": Person(name="")}).names() == {"B": "Tom"}
    with pytest.raises(ValidationError):
        Person(name="x" * 61)
