import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from designer.drawing.page import Page

pages = st.builds(Page, across=st.booleans(), turned=st.booleans())
places = st.tuples(st.floats(-20, 20), st.floats(-20, 20))


@given(pages, places)
def test_the_way_back_is_the_way_there(page, point):
    assert page.to_court(page.to_page(point)) == point


@given(pages, places, places)
def test_nothing_is_stretched_or_mirrored(page, one, other):
    a, b = page.to_page(one), page.to_page(other)
    assert math.dist(a, b) == pytest.approx(math.dist(one, other))
    assert a[0] * b[1] - a[1] * b[0] == pytest.approx(one[0] * other[1] - one[1] * other[0], abs=1e-9)


def test_the_near_end_is_at_the_foot_or_at_the_left():
    near = (0.0, -12.0)
    assert Page().to_page(near) == (0.0, -12.0)
    assert Page(across=True).to_page(near) == (-12.0, 0.0)
    assert Page(turned=True).to_page(near) == (0.0, 12.0)
    assert Page(across=True, turned=True).to_page(near) == (12.0, 0.0)


@given(pages, st.integers(0, 359))
def test_a_facing_turns_with_the_page(page, degrees):
    angle = math.radians(degrees)
    ahead = page.to_page((math.sin(angle), math.cos(angle)))
    assert page.direction(degrees) == pytest.approx(ahead)
