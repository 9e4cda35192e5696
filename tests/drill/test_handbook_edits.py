"""Edits of a handbook: numbers stay with their drills, whatever is put in, taken out or moved."""

from hypothesis import given
from hypothesis import strategies as st

from designer.drill.handbook import BookSection, Entry, Handbook
from designer.drill.handbook_edits import (
    renumbered,
    with_drills,
    with_drills_moved,
    with_entry_changed,
    with_section,
    with_section_changed,
    with_section_moved,
    without_drills,
    without_section,
)


def entry(number):
    return Entry(number=number, file=f"{number}.drill.json")


def section(title, *numbers):
    return BookSection(title=title, drills=tuple(map(entry, numbers)))


BOOK = Handbook(title="X", sections=(section("One", "1.1", "1.2", "1.5"), section("Two", "2.1"), section("Three")))


def numbers(book):
    return [[one.number for one in part.drills] for part in book.sections]


def test_a_drill_put_in_between_takes_a_number_beyond_the_others_which_stay():
    more = with_drills(BOOK, 0, 1, ["new.drill.json", "1.2.drill.json", "new.drill.json"])
    assert numbers(more)[0] == ["1.1", "1.6", "1.2", "1.5"]
    assert numbers(with_drills(BOOK, 2, 0, ["a", "b"]))[2] == ["3.1", "3.2"]


def test_a_drill_moved_in_its_section_keeps_its_number_and_in_another_takes_a_free_one():
    assert numbers(with_drills_moved(BOOK, ["1.5"], 0, 0))[0] == ["1.5", "1.1", "1.2"]
    assert numbers(with_drills_moved(BOOK, ["1.1"], 0, 3))[0] == ["1.2", "1.5", "1.1"]
    assert numbers(with_drills_moved(BOOK, ["1.1"], 0, 2))[0] == ["1.2", "1.1", "1.5"]
    across = with_drills_moved(BOOK, ["1.1", "1.5"], 1, 0)
    assert numbers(across) == [["1.2"], ["2.2", "2.3", "2.1"], []]
    assert [one.file for one in across.sections[1].drills][:2] == ["1.1.drill.json", "1.5.drill.json"]


@given(
    st.lists(st.sampled_from(["1.1", "1.2", "1.5", "2.1"]), unique=True),
    st.integers(0, 2),
    st.integers(0, 4),
)
def test_no_move_loses_a_drill_or_uses_a_number_twice(chosen, to, place):
    moved = with_drills_moved(BOOK, chosen, to, place)
    assert sorted(one.file for one in moved.entries()) == sorted(one.file for one in BOOK.entries())
    assert len({one.number for one in moved.entries()}) == 4


def test_sections_are_added_moved_named_and_taken_out():
    more = with_section(BOOK, 1, "Between")
    assert [part.title for part in more.sections] == ["One", "Between", "Two", "Three"]
    assert [part.title for part in with_section_moved(BOOK, 0, 3).sections] == ["Two", "Three", "One"]
    assert [part.title for part in with_section_moved(BOOK, 2, 0).sections] == ["Three", "One", "Two"]
    assert with_section_changed(BOOK, 2, introduction="Net").sections[2].introduction == "Net"
    assert numbers(without_section(BOOK, 0)) == [["2.1"], []]
    assert numbers(without_drills(BOOK, ["1.2", "2.1"])) == [["1.1", "1.5"], [], []]


def test_numbers_are_given_anew_only_when_asked_and_what_they_lead_to_follows():
    pointing = with_entry_changed(BOOK, "2.1", see=("1.5", "9.9"))
    again = renumbered(pointing)
    assert numbers(again) == [["1.1", "1.2", "1.3"], ["2.1"], []]
    assert again.sections[1].drills[0].see == ("1.3", "9.9")
