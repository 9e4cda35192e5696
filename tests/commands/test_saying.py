import io
import sys

import pytest
from hypothesis import given
from hypothesis import strategies as st

from designer.commands.saying import complain, harmless, say


@pytest.mark.parametrize(
    ("text", "shown"),
    [
        ("\x1b[2J\x1b]0;title\x07gone", "�[2J�]0;title�gone"),
        ("a\rb\x08c\0d\x9bm", "a�b�c�d�m"),
        ("\u202eright to left", "�right to left"),
        ("line\u2028break", "line�break"),
        ("tab\tand\nline", "tab\tand\nline"),
        ("👩\u200d🏫 é → 中", "👩\u200d🏫 é → 中"),
    ],
)
def test_a_drill_cannot_play_with_the_terminal(text, shown):
    assert harmless(text) == shown


@given(st.text())
def test_plain_text_stays_and_its_length_too(text):
    assert len(harmless(text)) == len(text)
    assert harmless(harmless(text)) == harmless(text)
    assert all(
        char.isprintable() or char in "\n\t\u200c\u200d" or char == "\ufffd" or not char.isascii()
        for char in harmless(text)
    )


def test_what_the_terminal_cannot_show_becomes_a_question_mark(monkeypatch):
    buffer = io.BytesIO()
    monkeypatch.setattr(sys, "stdout", io.TextIOWrapper(buffer, encoding="ascii"))
    say("Zoë plays → net")
    sys.stdout.flush()
    assert buffer.getvalue() == b"Zo? plays ? net\n"


def test_a_complaint_is_one_line_under_the_name_of_the_program(capsys):
    complain("a file\nwith a line break\x1b")
    assert capsys.readouterr().err == "drill-designer: a file with a line break�\n"
