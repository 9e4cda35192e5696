"""A swap is played out under its form: rounds, counts, and what is not even."""

import pytest
from desktop import hand

from designer.desktop.controls import Segment
from designer.drill import edits
from designer.drill.setting import At


@pytest.fixture
def beside(wide_kept):
    wide_kept.column.open("jobs")
    hand.settle()
    return wide_kept.column.form.beside


def test_rounds_and_counts_stand_under_the_form(beside):
    places = beside.places.grid
    # Worked out by hand: A becomes B, B becomes C, C becomes A, so whoever begins as A has B's job in the second turn.
    assert [row.cells for row in places.rows] == [("A", "B", "C"), ("C", "A", "B"), ("B", "C", "A")]
    assert {row.head: row.cells for row in beside.counts.grid.rows} == dict.fromkeys("ABC", ("1", "1", "1"))
    assert beside.verdict.words.startswith("Even")
    assert beside.courts.isVisible()
    assert "C. 2; C; A; B" in beside.places.accessibleName(), "a screen reader is told the table"


def test_another_number_of_players_is_tried_by_one_press(beside):
    two = next(each for each in beside.findChildren(Segment) if each.text() == "2")
    hand.click(two)
    assert [row.cells for row in beside.places.grid.rows] == [("A", "B"), ("B", "A")]


def test_what_is_not_even_is_said_with_a_sign(wide_kept, beside):
    swap = wide_kept.view.setting.swaps["jobs"]
    at = At("p-fed")
    wide_kept.document.perform(
        "Leave C out", edits.put(wide_kept.document.drill, at, swap.changed(moves={"A": "B", "B": "A"}))
    )
    hand.settle()
    assert beside.verdict.weight == "uneven"
    assert "C waits all the time" in beside.verdict.words
    wide_kept.document.perform(
        "Lose somebody", edits.put(wide_kept.document.drill, at, swap.changed(moves={"A": "B", "C": "B"}))
    )
    hand.settle()
    assert beside.verdict.weight == "lost"
    assert "omebody is lost" in beside.verdict.words


def test_small_courts_never_stand_out_of_the_column(beside):
    made = beside.courts._picture
    from designer.desktop.forms.rotation_beside import PIXELS

    assert (made.extent[2] - made.extent[0]) * PIXELS <= beside.courts.width()
