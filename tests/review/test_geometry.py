"""Distances against shapely."""

import math

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st
from shapely.geometry import LineString, Point, Polygon

from designer.review.geometry import ahead_and_aside, closed, inside, path_to_path, point_to_path

coordinates = st.integers(-2000, 2000).map(lambda centimetres: centimetres / 100)
points = st.tuples(coordinates, coordinates)
paths = st.lists(points, min_size=2, max_size=5).map(tuple)


@given(points, paths)
def test_a_point_s_distance_from_a_path(point, path):
    assert point_to_path(point, path) == pytest.approx(LineString(path).distance(Point(point)), abs=1e-9)


@given(paths, paths)
def test_the_distance_of_two_paths(first, second):
    assert path_to_path(first, second) == pytest.approx(LineString(first).distance(LineString(second)), abs=1e-9)


@given(points, paths)
def test_a_point_is_a_path_of_one_corner(point, path):
    assert path_to_path((point,), path) == pytest.approx(point_to_path(point, path))


@given(points, st.lists(points, min_size=3, max_size=6).map(tuple))
def test_inside_an_outline(point, corners):
    outline = Polygon(corners)
    assume(outline.is_valid and outline.area > 0.01 and outline.exterior.distance(Point(point)) > 1e-6)
    assert inside(point, corners) == outline.contains(Point(point))


@given(points, points, points)
def test_ahead_and_aside_are_the_legs_of_a_right_angle(point, start, towards):
    ahead, aside = ahead_and_aside(point, start, towards)
    assert math.hypot(ahead, aside) == pytest.approx(math.dist(point, start), abs=1e-6)
    if start != towards:
        assert aside == pytest.approx(Point(point).distance(_long_line(start, towards)), abs=1e-5)


def _long_line(start, towards):
    length = math.dist(start, towards)
    dx, dy = (towards[0] - start[0]) / length * 1e3, (towards[1] - start[1]) / length * 1e3
    return LineString([(start[0] - dx, start[1] - dy), (start[0] + dx, start[1] + dy)])


def test_nothing_is_far_from_everything():
    assert path_to_path((), ((0.0, 0.0),)) == math.inf
    assert closed(((0.0, 0.0), (1.0, 0.0))) == ((0.0, 0.0), (1.0, 0.0))
