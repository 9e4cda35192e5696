"""Indexes and balance, counted over a few drills by hand."""

from cards.book_of_samples import drill, leaf_of

from designer.cards.book.counts import balance, indexes
from designer.wording.vocabulary import Vocabulary

ONE = leaf_of(drill().changed(players=(2, 4), minutes=8, objective="Come back."), number="3.12")
TWO = leaf_of(drill("hoop-red").changed(minutes=10), number="1.1", tags=("level:club",))


def test_the_indexes_find_a_drill_by_all_that_it_is() -> None:
    found = dict(indexes([ONE, TWO]))
    assert list(found) == [
        "Title",
        "Objective",
        "Situation",
        "Phase",
        "Stroke",
        "Level",
        "Players",
        "Kit",
        "Minutes",
        "Coach needed",
    ]
    assert found["Objective"]["Come back."] == ["3.12"]
    assert found["Situation"]["both back"] == ["3.12", "1.1"]
    assert list(found["Level"].items()) == [("red", ["1.1"]), ("club", ["1.1"])], "from the first to the last"
    assert found["Players"]["2 players"] == ["3.12"]
    assert found["Coach needed"] == {"no": ["3.12"], "yes": ["1.1"]}
    assert list(found["Minutes"]) == ["8 min", "10 min"], "by number, not by letter"
    own = dict(indexes([ONE, TWO], Vocabulary({"both back": "zone rally", "red": "wee"})))
    assert list(own["Situation"]) == ["zone rally"]
    assert list(own["Level"]) == ["wee", "club"]


def test_the_balance_shows_what_is_expected_and_has_no_drill_and_who_says_nothing() -> None:
    found = {group: (counts, silent) for group, counts, silent in balance([ONE])}
    situations, _ = found["situation"]
    assert situations["both back"] == ["3.12"]
    assert situations["serving"] == []
    assert found["level"] == ({}, ("3.12",))
    parts, _ = found["part of the rally"]
    assert parts == {"cooperative": [], "forced": ["3.12"], "open": ["3.12"]}
    assert found["intensity"][0]["recovery"] == ["3.12"]
