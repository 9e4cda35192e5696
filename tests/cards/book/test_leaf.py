"""What is kept of a drill, and how it is read as it is printed."""

import pytest
from cards.book_of_samples import drill, leaf_of

from designer.cards.book.leaf import as_printed
from designer.drill.conditions import Outcome
from designer.drill.drill import House
from designer.drill.handbook import Handbook


def test_the_house_answers_only_where_the_drill_does_not() -> None:
    book = Handbook(title="X", sections=(), house=House(in_doubt="out", stopped=Outcome(then="no score")))
    own = drill().changed(house=House(in_doubt="replay"))
    printed = as_printed(book, own).house
    assert (printed.in_doubt, printed.stopped) == ("replay", Outcome(then="no score"))
    assert as_printed(Handbook(title="X", sections=()), own) is own


def test_a_summary_reads_tokens_as_words_and_counts_what_the_handbook_adds() -> None:
    own = drill("forehand-on-eight").changed(players=(2, 4))
    found = leaf_of(own, tags=("level:club", "stage:green")).summary
    assert found is not None
    assert found.objective == "I move early, so that from most of my court I can play my forehand."
    assert found.players == (2, 3, 4)
    assert found.tagged("level") == ("club", "green")
    assert found.tagged("stroke") == (), "its main progression is drawn without a stroke that is named"
    assert not found.coach


@pytest.mark.parametrize(
    ("objective", "found"),
    [
        ("I serve wide.", "serve wide"),
        ("Against a second serve I step in.", "step in (against a second serve)"),
        ("At the back we build; at the net I step across.", "build (at the back); at the net I step across"),
        ("Come back. I run.", "Come back. I run."),
        ("Height first.", "Height first."),
    ],
)
def test_an_objective_is_looked_up_by_what_is_done(objective: str, found: str) -> None:
    summary = leaf_of(drill().changed(objective=objective)).summary
    assert summary is not None
    assert (summary.objective, summary.aim) == (objective, found)


def test_the_kit_of_an_index_has_each_thing_once_and_no_advice() -> None:
    added = (
        "Two balls in {B}'s pockets.",
        "or flat removable tape",
        "2 eye guards",
        "On clay scratch two lines instead.",
    )
    found = leaf_of(drill("forehand-on-eight").changed(kit=added)).summary
    assert found is not None
    assert found.kit == ("flat discs", "eye guards")


def test_a_drill_is_stale_once_it_differs_from_what_was_seen() -> None:
    own = drill()
    fresh = leaf_of(own)
    assert not fresh.is_stale
    assert not leaf_of(own, seen=fresh.digest).is_stale
    assert leaf_of(own.changed(minutes=99), seen=fresh.digest).is_stale
