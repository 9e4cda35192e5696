"""What does not fit in the numbers of a drill. More cases: ``tests/faults``."""

import pytest
from review.situations import RALLY, changes, drill, keys, only

from designer.drill.base import place
from designer.drill.drill import Progression, Variation
from designer.drill.items import Basket
from designer.review.groups import group_cautions


def found(*records, **values):
    return list(group_cautions(drill(*RALLY, *records, **values)))


@pytest.mark.parametrize(
    ("players", "age", "expected"),
    [((2, 12), None, []), ((2, 13), None, ["crowd"]), ((2, 11), (8, 9), ["crowd"]), ((2, 11), (11, 15), [])],
)
def test_so_many_players_to_one_coach(players, age, expected):
    assert keys(found(players=players, age=age)) == expected


def test_a_basket_holds_no_more_than_the_drill_needs():
    basket = Basket(kind="basket", id="basket", place=place(2.0, 14.0), balls=40)
    assert found(basket, balls=40) == []
    assert found(basket) == []
    check = only(found(basket, basket.changed(id="two", place=place(-2.0, 14.0)), balls=50), "balls-over")
    assert check.about == ("basket", "two")


def test_a_variation_that_changes_something_stays():
    whole = drill(*RALLY)
    easier = (Variation(id="v-none"), Variation(id="v-some", changes=changes(RALLY[-1].changed(to=7))))
    whole = whole.changed(progressions=(whole.progressions[0].changed(easier=easier), Progression(id="q")))
    check = only(group_cautions(whole), "changes-nothing")
    assert [v.id for v in check.mend(whole).progressions[0].easier] == ["v-some"]
