"""Labels of pages and sheets."""

import pytest

from designer.cards.book.binding import HEAD, LICENCE_ELSEWHERE, foot_line, letter, roman
from designer.cards.text import Typesetter
from designer.drawing.words import text_width


@pytest.mark.parametrize(("number", "words"), [(1, "i"), (4, "iv"), (9, "ix"), (14, "xiv"), (49, "xlix"), (99, "xcix")])
def test_front_matter_is_numbered_in_roman_numerals(number: int, words: str) -> None:
    assert roman(number) == words


def test_sheets_go_on_after_z() -> None:
    assert [letter(place) for place in (0, 1, 25, 26, 51, 52)] == ["a", "b", "z", "aa", "az", "ba"]


@pytest.mark.parametrize("owner", ["Alder Quay", "Alder Quay " * 20])
def test_a_licence_stands_whole_at_the_foot_or_the_foot_says_where(owner: str) -> None:
    short, long = "Copy as you like.", "Copy as you like, but not for money, " * 4
    found = {licence: foot_line(owner, licence, Typesetter(), 300) for licence in (short, long, "")}
    assert all(text_width(words, HEAD.size) <= 300 for words in found.values())
    assert found[short].endswith(short if owner == "Alder Quay" else LICENCE_ELSEWHERE)
    assert found[long].endswith(LICENCE_ELSEWHERE)
    assert "Licence" not in found[""]
