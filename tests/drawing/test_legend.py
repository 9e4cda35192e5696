from designer.drawing.legend import WORDS
from designer.drawing.table import style_table


def test_every_kind_of_marked_line_has_its_line_in_the_legend():
    """Measured: on paper kinds of marked line come nearest to looking alike, so they always get their word."""
    laid = {kind for kind in style_table() if "line" in kind and kind != "painted line"}
    assert laid <= set(WORDS)


def test_a_class_that_carries_its_own_word_needs_none():
    assert not {"open flag", "coach", "waits", "obstacle", "share", "step digit"} & set(WORDS)


def test_no_two_classes_share_their_words():
    assert len(set(WORDS.values())) == len(WORDS)
