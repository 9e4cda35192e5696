"""Text broken into lines: nothing is lost, nothing is too wide."""

import pytest
from PySide6.QtGui import QFontMetricsF

from designer.desktop.fonts import font
from designer.desktop.lines import broken

TEXT = "A runs wide and plays a high forehand cross-court into the reply zone."


@pytest.mark.parametrize("width", [80, 160, 354, 1000])
def test_lines_fit_and_hold_every_word(qapp, width):
    face = font(14)
    lines = broken(TEXT, face, width)
    assert "".join(lines).replace(" ", "") == TEXT.replace(" ", "")
    assert all(QFontMetricsF(face).horizontalAdvance(line) <= width + 1 for line in lines)


def test_the_first_line_leaves_room(qapp):
    face = font(14)
    lines = broken(TEXT, face, 300, first=120)
    assert QFontMetricsF(face).horizontalAdvance(lines[0]) <= 181


def test_a_word_wider_than_the_line_is_broken(qapp):
    assert "".join(broken("x" * 300, font(14), 100)) == "x" * 300


def test_no_text_is_one_empty_line(qapp):
    assert broken("", font(14), 100) == ("",)
