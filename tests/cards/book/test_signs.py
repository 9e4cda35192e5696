"""What cannot be printed of a handbook's own words is declined or told with its place."""

import pytest
from cards.book_of_samples import drill

from designer.cards.book.signs import declined, lacking, refuse_declined
from designer.cards.text import Typesetter, Unprintable
from designer.drill.brand import Brand
from designer.drill.handbook import BookSection, Handbook


@pytest.mark.parametrize(
    ("values", "brand", "where"),
    [
        (
            {"sections": (BookSection(title="S", introduction="\u05e9"),)},
            None,
            "in the introduction of section 1 of the",
        ),
        ({"vocabulary": {"alley": "\u05e9"}}, None, "in the academy’s word for “alley” of the handbook"),
        ({}, Brand(name="\u05e9"), "in the name of the brand"),
    ],
)
def test_a_handbook_in_letters_from_right_to_left_is_declined_with_the_place(values, brand, where) -> None:
    with pytest.raises(Unprintable, match=where):
        refuse_declined(Handbook(title="X", sections=()).changed(**values), brand)


def test_a_drill_in_such_letters_is_no_sheet_and_in_others_it_is() -> None:
    assert "in the title is of a script" in declined(drill().changed(title="\u05e9"))
    assert declined(drill().changed(title="Ωμέγα, Академия")) == ""


def test_a_sign_is_told_with_its_place_and_not_again_where_a_drill_tells_of_it() -> None:
    typesetter = Typesetter()
    typesetter.clean("\u2603 \u2602 \u2601")
    book = Handbook(title="Snow \u2603", sections=())
    told = lacking(
        book, Brand(name="A", footer="\u2601"), typesetter, ["1.1: no sign for \u2602 (U+2602) in cue 1"], {}
    )
    assert [words.partition("; ")[0] for words in told] == [
        "The font has no sign for \u2603 (U+2603) in the title of the handbook",
        "The font has no sign for \u2601 (U+2601) in the footer of the brand",
    ]
