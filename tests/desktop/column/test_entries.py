"""The page keeps still: what is new in a section comes after what stood there."""

from designer.desktop.column.entries import Entry, Seen


def names(section, *keys):
    return [Entry(f"{section} {key}", section, "") for key in keys]


def test_new_sentences_come_after_those_that_stood_there_and_before_the_finish():
    seen = Seen()
    assert seen.steadied("points", names("points", "points:a", "finish:end")) == names(
        "points", "points:a", "finish:end"
    )
    kept = names("points", "points:a", "points:new", "finish:end")
    assert seen.steadied("points", names("points", "points:new", "points:a", "finish:end")) == kept
    assert seen.steadied("points", names("points", "points:a", "finish:end", "points:new")) == kept


def test_the_steps_keep_the_order_of_play():
    seen = Seen()
    seen.steadied("steps", names("steps", "hit:1"))
    assert seen.steadied("steps", names("steps", "hit:0", "hit:1")) == names("steps", "hit:0", "hit:1")
