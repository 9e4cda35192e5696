import math

import pytest
from hypothesis import given
from hypothesis import strategies as st
from shapely.geometry import LineString, Polygon, box

from designer.drawing import geometry
from designer.drawing.geometry import Route, hatch, inside_box, rounded

metres = st.floats(-10, 10).map(lambda value: round(value, 4))
places = st.tuples(metres, metres)


@given(st.lists(places, min_size=2, max_size=5), st.floats(0, 1), st.floats(0, 1))
def test_a_cut_piece_is_as_long_as_was_asked(points, one, other):
    route = Route(points)
    start, end = sorted((one * route.length, other * route.length))
    piece = LineString(route.cut(start, end))
    assert piece.length == pytest.approx(end - start, abs=1e-6)


@given(st.lists(places, min_size=3, max_size=5))
def test_a_curve_runs_through_every_point_it_was_given(points):
    line = LineString(Route(points).samples)
    from shapely.geometry import Point

    assert all(line.distance(Point(point)) < 0.35 for point in points)
    assert line.coords[0] == pytest.approx(points[0])
    assert line.coords[-1] == pytest.approx(points[-1])


def test_a_bend_leaves_the_straight_line_by_as_much_as_is_said_and_to_the_right():
    route = Route(((0.0, 0.0), (0.0, 10.0)), bend=0.8)
    assert max(x for x, _ in route.samples) == pytest.approx(0.8)
    assert min(x for x, _ in route.samples) == pytest.approx(0)


corners = (
    st.lists(places, min_size=3, max_size=8)
    .map(lambda points: Polygon(points).convex_hull)
    .filter(lambda shape: shape.geom_type == "Polygon" and shape.area > 1)
)


@given(corners, st.sampled_from([0, 45, 90, 135]))
def test_a_hatch_stays_inside_and_lies_at_its_angle(shape, degrees):
    # Oracle: shapely.
    strokes = hatch(list(shape.exterior.coords)[:-1], degrees, 0.4)
    for start, end in strokes:
        assert shape.buffer(1e-6).contains(LineString((start, end)))
        angle = math.degrees(math.atan2(end[1] - start[1], end[0] - start[0])) % 180
        assert min(abs(angle - degrees), 180 - abs(angle - degrees)) < 1e-3


def test_a_hatch_is_as_dense_as_its_pitch_says_and_leaves_holes_free():
    square = ((0.0, 0.0), (10.0, 0.0), (10.0, 10.0), (0.0, 10.0))
    hole = ((3.0, 3.0), (7.0, 3.0), (7.0, 7.0), (3.0, 7.0))
    whole = sum(math.dist(*stroke) for stroke in hatch(square, 45, 0.25))
    assert whole == pytest.approx(100 / 0.25, rel=0.02)
    cut = hatch(square, 45, 0.25, [hole])
    assert sum(math.dist(*stroke) for stroke in cut) == pytest.approx((100 - 16) / 0.25, rel=0.02)
    assert not any(LineString(stroke).intersects(Polygon(hole).buffer(-1e-6)) for stroke in cut)


@given(places, places, places, places)
def test_the_length_inside_a_box_is_shapelys(start, end, one, other):
    left, right = sorted((one[0], other[0]))
    low, high = sorted((one[1], other[1]))
    expected = LineString((start, end)).intersection(box(left, low, right, high)).length
    assert inside_box(start, end, (left, low, right, high)) == pytest.approx(expected, abs=1e-6)


@given(places, places, places)
def test_the_distance_to_a_piece_is_shapelys(point, start, end):
    from shapely.geometry import Point

    expected = LineString((start, end)).distance(Point(point)) if start != end else math.dist(point, start)
    assert geometry.point_to_piece(point, start, end) == pytest.approx(expected, abs=1e-6)


def test_rounded_corners_stay_in_the_box():
    points = rounded((0.0, 0.0, 4.0, 2.0), 0.5)
    assert min(x for x, _ in points) == 0
    assert max(x for x, _ in points) == 4
    assert (len(points) - 1) % 3 == 0
    assert points[0] == pytest.approx(points[-1]) or points[0][1] == points[-1][1]


@given(places, st.lists(places, min_size=3, max_size=3))
def test_inside_a_triangle_is_shapelys_word(point, triangle):
    from shapely.geometry import Point

    shape = Polygon(triangle)
    if shape.area > 0.01 and shape.exterior.distance(Point(point)) > 1e-6:
        assert geometry.contains(triangle, point) == shape.contains(Point(point))
