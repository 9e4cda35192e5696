"""Chances to hit a target against scipy.stats, numerical integration, closed forms and a simulation."""

import math
from functools import partial

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.stats import beta, multivariate_normal, norm
from shapely.geometry import Point as ShapelyPoint
from shapely.geometry import Polygon

from designer.numbers.accuracy import (
    PURPOSES,
    Landing,
    chance_in,
    chance_in_ellipse,
    fitted_factor,
    rate_in_words,
    resized,
    size_for,
    tries_for,
    tries_to_be_sure,
)
from designer.numbers.levels import Spread
from designer.numbers.problems import Impossible

BASELINE, SINGLES, SERVICE = 11.8872, 4.1148, 6.4008


def ahead(across, along, aim=(0.0, 0.0)):
    """Landings of a ball that comes straight up the court."""
    return Landing(aim, (aim[0], aim[1] - 20), Spread(across, along, 20))


def box(left, low, right, high):
    return [(left, low), (right, low), (right, high), (left, high)]


def square(side, middle=(0.0, 0.0)):
    return box(middle[0] - side / 2, middle[1] - side / 2, middle[0] + side / 2, middle[1] + side / 2)


# Worked with scipy.stats.norm outside the program.
@pytest.mark.parametrize(
    ("across", "along", "one", "two", "three", "deep", "court"),
    [
        (0.5, 1.0, 0.26142, 0.65163, 0.86405, 0.97569, 0.97593),
        (1.0, 2.0, 0.07559, 0.26142, 0.47369, 0.74720, 0.78514),
        (1.5, 3.0, 0.03456, 0.12926, 0.26142, 0.52577, 0.62850),
    ],
)
def test_squares_and_the_court(across, along, one, two, three, deep, court):
    landing = ahead(across, along)
    assert [chance_in(square(side), landing) for side in (1, 2, 3)] == pytest.approx((one, two, three), abs=6e-6)
    # 2.0 m inside the baseline, 1.5 m inside one sideline, the other side open.
    corner = ahead(across, along, (SINGLES - 1.5, BASELINE - 2.0))
    assert chance_in(box(-100, SERVICE, SINGLES, BASELINE), corner) == pytest.approx(deep, abs=6e-6)
    assert chance_in(box(-SINGLES, 0, SINGLES, BASELINE), corner) == pytest.approx(court, abs=6e-6)


@given(
    across=st.floats(0.3, 4),
    along=st.floats(0.3, 6),
    aim=st.tuples(st.floats(-6, 6), st.floats(-6, 6)),
    size=st.tuples(st.floats(0.05, 9), st.floats(0.05, 9)),
)
def test_rectangles_are_products_of_normals(across, along, aim, size):
    found = chance_in(box(0, 0, *size), ahead(across, along, aim))
    wide = norm.cdf((size[0] - aim[0]) / across) - norm.cdf(-aim[0] / across)
    deep = norm.cdf((size[1] - aim[1]) / along) - norm.cdf(-aim[1] / along)
    assert found == pytest.approx(wide * deep, abs=1e-10)


# Closed form: 1 - exp(-r²/2σ²); uneven spreads integrated with scipy outside the program.
@pytest.mark.parametrize(
    ("radius", "across", "along", "aim", "chance"),
    [
        (1.0, 1.0, 1.0, (0, 0), 0.3934693),
        (1.0, 1.5, 1.5, (0, 0), 0.1992626),
        (1.0, 2.0, 2.0, (0, 0), 0.1175031),
        (1.0, 1.0, 2.0, (0, 0), 0.2152887),
        (1.0, 1.0, 2.0, (0.5, 1.0), 0.1737337),
        (1.5, 1.0, 2.0, (0, 0), 0.4089738),
    ],
)
def test_circles(radius, across, along, aim, chance):
    assert chance_in_ellipse(((-radius, -radius), (radius, radius)), ahead(across, along, aim)) == pytest.approx(
        chance, abs=6e-8
    )


def test_closed_forms_of_the_miss():
    # Mean 1.2533141 σ and median 1.1774100 σ of the distance, isotropic: by the circle's own chance.
    assert chance_in_ellipse(((-1.17741, -1.17741), (1.17741, 1.17741)), ahead(1, 1)) == pytest.approx(0.5, abs=1e-6)
    radii = np.linspace(0, 9, 2001)
    inside = [chance_in_ellipse(((-r, -r), (r, r)), ahead(1, 1)) for r in radii]
    assert np.trapezoid(1 - np.array(inside), radii) == pytest.approx(1.2533141, abs=1e-5)


@settings(max_examples=15)
@given(
    corners=st.lists(st.tuples(st.floats(-3, 3), st.floats(-3, 3)), min_size=3, max_size=7, unique=True),
    aim=st.tuples(st.floats(-3, 3), st.floats(-3, 3)),
    contact=st.tuples(st.floats(-8, 8), st.floats(-20, -10)),
    across=st.floats(0.4, 2),
    along=st.floats(0.4, 3),
)
def test_any_polygon_against_a_simulation(corners, aim, contact, across, along):
    # Corners sorted round their middle do not cross; the landings are drawn by numpy, counted by shapely.
    middle = np.mean(corners, axis=0)
    polygon = sorted(corners, key=lambda c: math.atan2(c[1] - middle[1], c[0] - middle[0]))
    shape = Polygon(polygon)
    if not shape.is_valid or shape.area < 0.1:
        return
    heading = np.array(aim) - np.array(contact)
    forward = heading / np.linalg.norm(heading)
    right = np.array((forward[1], -forward[0]))
    drawn = np.random.default_rng(3).standard_normal((4000, 2))
    places = np.array(aim) + across * drawn[:, :1] * right + along * drawn[:, 1:] * forward
    hit = np.mean([shape.contains(ShapelyPoint(place)) for place in places])
    found = chance_in(polygon, Landing(aim, contact, Spread(across, along, 20)))
    assert found == pytest.approx(hit, abs=0.035)
    assert chance_in(polygon[::-1], Landing(aim, contact, Spread(across, along, 20))) == pytest.approx(found)


def test_a_slanting_half_plane():
    # Everything beyond a slanting line, an exact normal: multivariate_normal of scipy over a triangle's complement.
    landing = ahead(1.0, 2.0)
    big = 60.0
    triangle = [(-big, -big), (big, -big), (big, big)]
    # x > y: (x - y) is normal with variance 1 + 4.
    assert chance_in(triangle, landing) == pytest.approx(0.5, abs=1e-9)
    moved = [(x + 1, y) for x, y in triangle]
    assert chance_in(moved, landing) == pytest.approx(norm.sf(1 / math.sqrt(5)), abs=1e-9)
    corner = chance_in(box(-big, -big, 0.4, 0.7), landing)
    assert corner == pytest.approx(multivariate_normal(cov=[[1, 0], [0, 4]]).cdf([0.4, 0.7]), abs=1e-7)


def test_an_ellipse_is_the_limit_of_polygons():
    landing = Landing((0.3, 0.2), (5.0, -18.0), Spread(0.9, 1.7, 20))
    turns = [2 * math.pi * n / 2000 for n in range(2000)]
    polygon = [(1.2 * math.cos(t), 0.6 * math.sin(t)) for t in turns]
    assert chance_in_ellipse(((-1.2, -0.6), (1.2, 0.6)), landing) == pytest.approx(
        chance_in(polygon, landing), abs=1e-5
    )


@given(rate=st.floats(0.02, 0.98), across=st.floats(0.3, 3))
def test_a_fitted_spread_gives_back_the_rate(rate, across):
    landing, target = ahead(across, 2 * across), square(2)
    factor = fitted_factor(partial(chance_in, target), landing, rate)
    assert chance_in(target, landing.times(factor)) == pytest.approx(rate, abs=1e-6)


def test_what_no_spread_can_explain_is_refused():
    with pytest.raises(Impossible, match="No spread hits this target 90%"):
        fitted_factor(partial(chance_in, square(2)), ahead(1, 2, (4.0, 0.0)), 0.9)
    for rate in (0, 1, math.nan):
        with pytest.raises(Impossible, match="cannot be fitted"):
            fitted_factor(partial(chance_in, square(2)), ahead(1, 2), rate)


@given(rate=st.floats(0.05, 0.95))
def test_a_resized_target_is_hit_at_the_wished_rate(rate):
    factor = size_for(square(2), ahead(1, 2), rate)
    assert chance_in(resized(square(2), factor), ahead(1, 2)) == pytest.approx(rate, abs=1e-5)


@pytest.mark.parametrize(("hits", "tries"), [(4, 10), (1, 10), (9, 10), (14, 20)])
def test_the_range_of_a_rate_is_clopper_and_pearsons(hits, tries):
    rate, least, most = rate_in_words(hits, tries)
    assert rate == hits / tries
    assert least == pytest.approx(beta.ppf(0.05, hits, tries - hits + 1), abs=1e-7)
    assert most == pytest.approx(beta.ppf(0.95, hits + 1, tries - hits), abs=1e-7)


def test_none_and_all_can_still_be_fitted():
    assert rate_in_words(0, 10)[:2] == (0.05, 0.0)
    assert rate_in_words(10, 10)[0] == 0.95
    with pytest.raises(Impossible, match="11 of 10 cannot be"):
        rate_in_words(11, 10)


def test_tries():
    from scipy.stats import nbinom

    assert tries_for(12, 0.4) == pytest.approx(30)
    assert tries_to_be_sure(12, 0.4) == nbinom.ppf(0.9, 12, 0.4) + 12
    assert tries_to_be_sure(1, 0.5, 0.5) == 1
    with pytest.raises(Impossible, match="never hit"):
        tries_for(3, 0)


def test_an_area_needs_three_corners():
    with pytest.raises(Impossible, match="2 corners"):
        chance_in([(0, 0), (1, 1)], ahead(1, 1))


def test_a_run_needs_a_higher_rate_than_a_bonus():
    assert PURPOSES["bonus"] == (0.2, 0.4)
    assert PURPOSES["in a row"][0] > PURPOSES["bonus"][1]
