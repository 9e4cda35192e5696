"""Against section 2 of the look: u is 1.42 px up to 23 px a metre, then grows by the root of the zoom, at most 2.6 px."""

import math

import pytest

from designer.desktop.canvas.lens import Fit, fitted, lies_across, unit_metres, unit_pixels


@pytest.mark.parametrize(("scale", "pixels"), [(5, 1.42), (23, 1.42), (46, 1.42 * math.sqrt(2)), (92, 2.6), (400, 2.6)])
def test_the_mark_unit_at_each_scale(scale, pixels):
    assert unit_pixels(scale) == pytest.approx(pixels)
    assert unit_metres(scale) == pytest.approx(pixels / scale)


def test_a_fitted_picture_is_seen_whole_although_its_margins_grow_as_it_shrinks():
    asked = []

    def extent_at(unit):
        asked.append(unit)
        return (-8.5 - 30 * unit, -17.4 - 20 * unit, 8.5, 17.4)

    fit = fitted(400, 600, extent_at, (17.0, 34.8))
    left, low, right, high = extent_at(unit_metres(fit.scale))
    assert (right - left) * fit.scale <= 400
    assert (high - low) * fit.scale <= 600
    assert max((right - left) * fit.scale / 400, (high - low) * fit.scale / 600) > 0.9, "no smaller than it needs to be"
    assert len(asked) <= 3, "each asking makes a picture, and the last one is ours"


def test_a_window_of_no_size_is_no_error():
    assert fitted(0, 0, lambda _unit: (-1.0, -1.0, 1.0, 1.0), (2.0, 2.0)).scale > 0


def test_across_only_where_it_gains_a_third():
    upright = Fit(10.0, (0, 0, 1, 1))
    assert lies_across(upright, Fit(13.0, (0, 0, 1, 1)))
    assert not lies_across(upright, Fit(12.9, (0, 0, 1, 1)))


def test_larger_letters_are_larger_on_the_court_and_the_picture_still_fits():
    def extent_at(unit):
        return (-9.0 - 20 * unit, -18.0 - 20 * unit, 9.0 + 20 * unit, 18.0 + 20 * unit)

    usual, large = (fitted(400, 600, extent_at, (18.0, 36.0), letters) for letters in (1.0, 1.5))
    assert large.scale < usual.scale
    assert unit_pixels(large.scale, 1.5) > unit_pixels(usual.scale)
    left, low, right, high = large.extent
    assert (right - left) * large.scale <= 400
    assert (high - low) * large.scale <= 600
