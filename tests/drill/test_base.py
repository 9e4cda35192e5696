import math

import pytest
from hypothesis import given
from hypothesis import strategies as st
from pydantic import ValidationError
from strategies import extra_fields, metres

from designer.drill.base import FARTHEST, Place, Record, place, to_tenth_millimetre
from designer.drill.items import Cone
from designer.drill.movement import Shot
from designer.drill.people import Spot

INCH = 0.0254
"""Metres in an inch, exactly: international yard and pound agreement of 1959."""


@given(st.integers(-round(FARTHEST / INCH), round(FARTHEST / INCH)))
def test_every_whole_inch_is_kept_exactly(inches):
    # 254 tenths of a millimetre to the inch: the decimal nearest to the product is the one that is stored.
    assert place(inches * INCH, 0.0).at[0] == inches * 254 / 10_000


@given(metres())
def test_a_stored_distance_is_within_a_twentieth_of_a_millimetre_and_stays_when_stored_again(value):
    stored = place(0.0, value).at[1]
    assert abs(stored - value) <= 0.00005 + 1e-12
    assert place(0.0, stored).at[1] == stored


@pytest.mark.parametrize("value", [-0.0, 0.00004, -0.00004])
def test_nothing_is_ever_minus_nought(value):
    x, y = place(value, -abs(value)).at
    assert (math.copysign(1, x), math.copysign(1, y)) == (1, 1)
    assert math.copysign(1, to_tenth_millimetre(value)) == 1


@pytest.mark.parametrize("value", [math.nan, math.inf, -math.inf, 100.1, -100.1, "1", True, None])
def test_a_coordinate_is_a_finite_number_within_the_drawing(value):
    with pytest.raises(ValidationError):
        Place(at=(value, 0.0))


@pytest.mark.parametrize("value", ["cone", "a", "z9-", "a" * 40])
def test_these_are_ids(value):
    assert Spot(id=value, job="A", place=Place()).id == value


@pytest.mark.parametrize("value", ["", "Cone", "9a", "-a", "a b", "a_b", "ä", "a\n", "a" * 41, "right half"])
def test_these_are_no_ids(value):
    with pytest.raises(ValidationError):
        Spot(id=value, job="A", place=Place())


@pytest.mark.parametrize("value", ["", "a", "AB", "Ä", "A\n", "1"])
def test_a_job_is_one_capital_letter(value):
    with pytest.raises(ValidationError):
        Spot(id="spot", job=value, place=Place())


def test_a_record_cannot_be_changed_in_place():
    with pytest.raises(ValidationError):
        place(1.0, 2.0).at = (0.0, 0.0)


def test_a_changed_record_is_checked_again():
    shot = Shot(id="feed", by="A")
    assert shot.changed(bounces=2).bounces == 2
    with pytest.raises(ValidationError):
        shot.changed(bounces=4)


@given(extra_fields())
def test_unknown_fields_outlive_a_change_whatever_they_are_called(extras):
    cone = Cone(kind="cone", id="home", place=Place(), **extras)
    assert cone.changed(note="by the post").model_extra == extras
    assert cone.changed(note="by the post").note == "by the post"


def test_an_unknown_field_is_not_taken_for_one_that_another_record_declares():
    cone = Cone(kind="cone", id="home", place=Place(), corners=["anything"])
    assert cone.declared("corners") is None
    assert cone.declared("place") == Place()


@given(st.text())
def test_a_plain_record_keeps_any_text(text):
    class Remark(Record):
        text: str

    assert Remark(text=text).changed(text=text) == Remark(text=text)
