"""Balls that cannot be played as they are drawn, and ones that can. More cases: ``tests/faults``."""

import pytest
from review.situations import FEED, RALLY, REPLY, START, A, B, keys, spot, told

from designer.drill.base import place
from designer.drill.drill import Court
from designer.drill.movement import Shot
from designer.review.flights import flight_checks

REST = tuple(record for record in RALLY if record not in (A, B, FEED, REPLY))


def found(*records, **values):
    return keys(flight_checks(told(*records, *REST, **values)))


def test_a_rally_there_and_back():
    third = Shot(id="third", by="B", after="reply", to=place(1.0, -9.0))
    assert found(A, B, FEED, REPLY, third) == []


@pytest.mark.parametrize("stroke", ["drop feed", "hand feed"])
def test_a_ball_may_be_dropped_or_thrown_on_one_s_own_side(stroke):
    assert found(A, B, FEED.changed(stroke=stroke, to=place(0.0, 11.0)), REPLY) == []
    assert found(A, B, FEED.changed(to=place(0.0, 11.0)), REPLY) == ["own-side"]


def test_a_ball_fed_by_a_partner_may_be_hit_next():
    own = Shot(id="own", by="A", stroke="racket feed", to=place(1.0, 9.0))
    again = Shot(id="again", by="A", after="own", stroke="racket feed", to=place(1.0, 9.0))
    assert found(A, B, own, again, START.changed(shot="own")) == []  # two balls from a basket


@pytest.mark.parametrize(
    ("from_x", "to", "expected"),
    [
        # At the far end x < 0 is the server's right: the deuce court, to be served into the receiver's right box.
        (-1.0, (2.0, -5.0), []),
        (-1.0, (-2.0, -5.0), ["serve-box"]),
        (1.0, (-2.0, -5.0), []),
        (1.0, (-2.0, -7.5), ["serve-box"]),
        (1.0, (-5.0, -5.0), ["serve-box"]),
        (-1.0, (0.0, -6.4), []),  # on the line, down the middle
    ],
)
def test_serves_go_into_the_box_across(from_x, to, expected):
    """ITF Rules of Tennis, rules 17 and 18: diagonally, from the right half and the left half in turn."""
    serve = FEED.changed(stroke="serve", to=place(*to))
    assert found(A, spot("B", from_x, 12.0), serve, REPLY) == expected


def test_a_court_without_boxes_has_no_wrong_box():
    serve = FEED.changed(stroke="underarm serve", to=place(1.0, -3.0))
    places = (spot("A", 0.0, -6.5), spot("B", 0.5, 6.0))
    assert found(*places, serve, REPLY.changed(to=place(0.0, 4.0)), court=Court(standard="red")) == []


def test_a_ball_on_the_outer_line_is_in():
    doubles = Shot(id="third", by="B", after="reply", to=place(5.48, -11.88))
    assert found(A, B, FEED, REPLY, doubles) == []
    assert found(A, B, FEED, REPLY, doubles.changed(to=place(6.0, -11.0))) == ["drawn-out"]


def test_a_swing_without_a_ball_has_no_flight():
    swing = Shot(id="swing", by="A", stroke="shadow swing", to=place(0.0, -30.0))
    assert found(A, B, swing) == []
