import pytest

from designer.drawing.text_blocks import blocks
from designer.drawing.words import text_width


def test_a_text_is_tried_on_one_line_and_on_more_each_way_once():
    found = [block.lines for block in blocks("reply zone behind", 9.0, 1.0, True)]
    assert found[0] == ("reply zone behind",)
    assert len(set(found)) == len(found)
    assert ("reply", "zone", "behind") in found
    assert all(" ".join(lines) == "reply zone behind" for lines in found)


def test_a_block_is_as_wide_as_its_widest_line():
    for block in blocks("reply zone behind", 9.0, 0.5, True):
        assert block.width == pytest.approx(max(text_width(line, 4.5, bold=True) for line in block.lines))


def test_a_long_word_with_a_hyphen_may_break_behind_it_and_a_dash_stays_a_word():
    found = {block.lines: block.width for block in blocks("eight-racket side", 9.0, 1.0, True)}
    assert found["eight-", "racket", "side"] == min(found.values())
    assert {" ".join(lines).replace("- ", "-") for lines in found} == {"eight-racket side"}
    assert ("court", "- a", "half") in {block.lines for block in blocks("court - a half", 9.0, 1.0, False)}
