import random

import pytest
from hypothesis import given
from hypothesis import strategies as st

from designer.drill.base import Place
from designer.drill.ids import new_id
from designer.drill.people import Spot


@given(st.text(max_size=60), st.randoms(use_true_random=False))
def test_a_new_id_is_one_whatever_the_kind_is_called(kind, source):
    made = new_id(kind, source)
    assert Spot(id=made, job="A", place=Place()).id == made


def test_a_new_id_says_its_kind():
    assert new_id("ball machine", random.Random(1)).startswith("ball-machine-")


def test_an_id_that_is_taken_is_not_given_again():
    first = new_id("cone", random.Random(7))
    assert new_id("cone", random.Random(7)) == first
    assert new_id("cone", random.Random(7), {first}) != first


@pytest.mark.parametrize("character", "0o1l")
def test_no_character_can_be_taken_for_another(character):
    source = random.Random(3)
    assert not any(character in new_id("x", source)[2:] for _ in range(300))
