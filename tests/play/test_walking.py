"""The order of laying things out, against every order there is (brute force) and the least spanning tree (scipy)."""

import itertools
import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.sparse.csgraph import minimum_spanning_tree

from designer.drill.base import place
from designer.drill.items import Basket, Cone, Line
from designer.drill.setting import EMPTY
from designer.play.walking import laying_order, short_walk

coordinate = st.integers(-40, 40).map(lambda n: n * 0.4572)
points = st.tuples(coordinate, coordinate)


def length(start, stops, order):
    way = [start, *(stops[number] for number in order), start]
    return sum(math.dist(a, b) for a, b in itertools.pairwise(way))


@given(points, st.lists(points, max_size=6))
def test_a_few_stops_are_hardly_ever_walked_longer_than_need_be(start, stops):
    found = short_walk(start, stops)
    assert sorted(found) == list(range(len(stops)))
    best = min(length(start, stops, order) for order in itertools.permutations(range(len(stops))))
    assert length(start, stops, found) <= 1.1 * best + 1e-6


@given(points, st.lists(points, min_size=2, max_size=20))
def test_many_stops_take_less_than_twice_the_shortest_net_that_joins_them(start, stops):
    places = np.array(sorted({start, *stops}))
    apart = np.linalg.norm(places[:, None] - places[None, :], axis=2)
    tree = minimum_spanning_tree(apart).sum()  # no walk that joins all can be shorter than that
    assert tree - 1e-6 <= length(start, stops, short_walk(start, stops)) <= 2 * tree + 1e-6


@given(points, st.lists(points, max_size=8))
def test_a_mirrored_court_is_walked_in_the_same_order(start, stops):
    assert short_walk((-start[0], start[1]), [(-x, y) for x, y in stops]) == short_walk(start, stops)


def test_the_walk_begins_at_the_basket_and_goes_round_the_net_once():
    def cone(id, x, y, **values):
        return Cone(kind="cone", id=id, place=place(x, y), **values)

    things = (
        cone("far-left", 3.0, 9.0),
        cone("near-left", -3.0, -9.0),
        cone("far-right", -3.0, 9.0),
        cone("near-right", 3.0, -9.0),
        Basket(kind="basket", id="basket", place=place(0.0, -16.0)),
    )
    order = laying_order(EMPTY.having(*things))
    assert order[0] == "basket"
    walk = ("far-left", "far-right", "near-left", "near-right")
    assert {order[1], order[4]} == {"near-left", "near-right"}
    assert sorted(order[1:]) == sorted(walk)


def test_a_copy_at_the_other_end_is_a_stop_and_named_once():
    line = Line(kind="line", id="line", corners=((-4.0, 8.0), (4.0, 8.0)), both_ends=True)
    basket = Basket(kind="basket", id="basket", place=place(0.0, -16.0))
    lone = Cone(kind="cone", id="lone", place=place(0.0, 9.0))
    # The near copy of the line lies on the way to the far cone.
    assert laying_order(EMPTY.having(lone, line, basket)) == ("basket", "line", "lone")


@pytest.mark.parametrize("stops", [[], [(1.0, 2.0)]])
def test_nothing_and_one_thing(stops):
    assert short_walk((0.0, 0.0), stops) == tuple(range(len(stops)))
