"""Cross references: what an entry names comes first, then what is most alike, then what is nearest."""

from cards.book_of_samples import drill, leaf_of

from designer.cards.book.alike import MOST, alike
from designer.cards.book.leaf import Leaf, without
from designer.drill.handbook import Entry

BARE = drill().changed(tags=(), progressions=(drill().progressions[0].changed(changes={}),))


def leaf(number: str, *tags: str, see: tuple[str, ...] = ()) -> Leaf:
    return leaf_of(BARE.changed(tags=tags), number=number, see=see)


def test_drills_that_share_more_come_first_and_one_situation_alone_is_not_enough() -> None:
    found = alike(
        [
            leaf("1.1", "situation:serving", "stroke:volley", "phase:attack"),
            leaf("1.2", "situation:serving", "phase:attack"),
            leaf("1.3", "situation:serving"),
            leaf("1.4", "situation:serving", "stroke:volley", "phase:attack"),
        ]
    )
    assert found["1.1"] == ("1.4", "1.2")
    assert found["1.3"] == ()


def test_what_an_entry_names_comes_first_and_what_is_not_printed_is_left_out() -> None:
    gone = without(Entry(number="9.9", file="gone"), "is not there")
    like = [leaf(f"2.{place}", "situation:serving", "phase:attack") for place in range(1, 7)]
    found = alike([leaf("1.1", "situation:serving", "phase:attack", see=("2.6", "9.9")), *like, gone])
    assert found["1.1"] == ("2.6", "2.1", "2.2")
    assert all(len(numbers) == MOST for number, numbers in found.items() if number != "9.9")
    assert "9.9" not in found
