"""Tokens that are words by themselves."""

from designer.wording.token_words import drawn_text


def test_a_note_on_the_drawing_has_people_and_sides_as_words_and_keeps_its_lines():
    assert drawn_text("{B} to the {left},\nthen {{wait") == "B to the left,\nthen {wait"
