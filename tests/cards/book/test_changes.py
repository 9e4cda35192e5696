"""What has changed since the edition before: drills are told apart by their ids, so that one that moves is not new."""

from cards.book_of_samples import drill, leaf_of

from designer.cards.book.changes import changes
from designer.drill.handbook import Remembered

WIDE, SERVE = drill(), drill("serve-open")


def test_new_changed_moved_and_gone_drills_are_told_apart() -> None:
    moved, changed, new = (
        leaf_of(WIDE, number="2.2"),
        leaf_of(SERVE, number="1.1"),
        leaf_of(drill("a-chooses"), number="1.2"),
    )
    before = {
        "1.4": Remembered(digest=moved.digest, title=WIDE.title, id=WIDE.id),
        "1.1": Remembered(digest="another", title="Serve", id=SERVE.id),
        "3.1": Remembered(digest="x", title="Old", id="d-old"),
    }
    assert list(changes([moved, changed, new], before, 2)) == [
        f"Changed: 1.1 {SERVE.title}.",
        f"Moved: 2.2 {WIDE.title}, before 1.4.",
        "Gone: 3.1 Old.",
        f"New: 1.2 {new.title}.",
    ]


def test_a_record_of_digests_alone_is_compared_by_numbers() -> None:
    one, two = leaf_of(WIDE, number="1.1"), leaf_of(SERVE, number="1.2")
    before = {"1.1": Remembered(digest=one.digest), "1.2": Remembered(digest="x"), "1.3": Remembered(digest="y")}
    assert list(changes([one, two], before, 2)) == [f"Changed: 1.2 {SERVE.title}.", "Gone: 1.3."]


def test_the_first_edition_and_one_without_changes_say_so() -> None:
    one = leaf_of(WIDE, number="1.1")
    assert list(changes([one], {}, 1)) == ["This is the first edition that is recorded."]
    assert list(changes([one], {}, 4)) == ["The edition before is not recorded."]
    same = {"1.1": Remembered(digest=one.digest, title=WIDE.title, id=WIDE.id)}
    assert list(changes([one], same, 2)) == ["No drill has changed since the edition before."]


def test_a_drill_that_stands_twice_or_was_copied_with_its_id_has_not_moved() -> None:
    one, again = leaf_of(WIDE, number="1.1"), leaf_of(WIDE, number="2.9")
    copy = leaf_of(WIDE.changed(title="A copy"), number="1.3")
    before = {
        leaf.entry.number: Remembered(digest=leaf.digest, title=leaf.title, id=WIDE.id) for leaf in (one, again, copy)
    }
    assert list(changes([one, again, copy], before, 2)) == ["No drill has changed since the edition before."]
    assert list(changes([one, copy], before, 2)) == [f"Gone: 2.9 {WIDE.title}."]
    del before["2.9"]
    assert list(changes([one, again, copy], before, 2)) == [f"New: 2.9 {WIDE.title}."]
