"""Pictures are labelled in an academy's words while it asks for that, and in ours before and after."""

from designer.wording.spoken import label, spoken


def test_labels_are_ours_but_while_others_are_spoken():
    with spoken(str.upper):
        assert label("deuce") == "DEUCE"
    assert label("deuce") == "deuce"
