"""Labels of pages and sheets."""

import pytest

from designer.cards.book.binding import letter, roman


@pytest.mark.parametrize(("number", "words"), [(1, "i"), (4, "iv"), (9, "ix"), (14, "xiv"), (49, "xlix"), (99, "xcix")])
def test_front_matter_is_numbered_in_roman_numerals(number: int, words: str) -> None:
    assert roman(number) == words


def test_sheets_go_on_after_z() -> None:
    assert [letter(place) for place in (0, 1, 25, 26, 51, 52)] == ["a", "b", "z", "aa", "az", "ba"]
