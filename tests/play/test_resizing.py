"""Larger and smaller, nearer and farther, edge by edge. What a press makes of it: ``test_dials``."""

import pytest

from designer.court.standards import ground
from designer.drill.base import place
from designer.drill.drill import Court
from designer.drill.items import Area, Disc, Ellipse, Hoop, Line, Rectangle, UnknownShape
from designer.drill.setting import EMPTY
from designer.play.resizing import corner_discs_with, resized, shifted

TENNIS = ground(Court())
FOOT = 0.3048
RACKET, STRIDE = 27 / 12 * FOOT, 3 * FOOT
LINE, SERVICE, BASE = 13.5 * FOOT, 21 * FOOT, 39 * FOOT  # ITF Rules of Tennis, Rule 1


def area(x0, y0, x1, y1, form=Rectangle, **values):
    shape = form(form=form.__name__.lower(), corners=((x0, y0), (x1, y1)))
    return Area(kind="area", id=values.pop("id", "zone"), shape=shape, **values)


def edges(item):
    (x0, y0), (x1, y1) = item.shape.corners
    return pytest.approx((x0, y0, x1, y1), abs=1e-3)


def test_at_either_end_the_front_is_the_edge_nearer_the_net():
    far = resized(TENNIS, area(-2.0, 8.0, 1.0, BASE), larger=False)
    near = resized(TENNIS, area(-1.0, -BASE, 2.0, -8.0), larger=False)
    assert edges(far) == (-2.0 + RACKET / 2, 8.0 + STRIDE, 1.0 - RACKET / 2, BASE)
    assert edges(near) == (-1.0 + RACKET / 2, -BASE, 2.0 - RACKET / 2, -8.0 - STRIDE)


def test_an_edge_that_two_targets_share_stays():
    inner, outer = area(0.0, 0.0, 2.0, SERVICE), area(2.0, 0.0, LINE, SERVICE, id="outer")
    assert resized(TENNIS, inner, (inner, outer), larger=True) is None
    alone = resized(TENNIS, inner, larger=True)
    assert edges(alone) == (0.0, 0.0, 2.0 + RACKET, SERVICE)


def test_nothing_grows_out_of_the_court():
    near_the_line = resized(TENNIS, area(1.0, 8.0, LINE - 0.1, 9.0), larger=True)
    assert edges(near_the_line) == (1.0 - RACKET / 2, 8.0 - STRIDE, LINE, 9.0)
    in_the_alley = resized(TENNIS, area(LINE + 0.2, 8.0, 18 * FOOT, 9.0), larger=True)
    assert edges(in_the_alley) == (LINE + 0.2 - RACKET, 8.0 - STRIDE, 18 * FOOT, 9.0)


def test_an_ellipse_stays_round_its_middle_and_no_target_vanishes():
    wide = resized(TENNIS, area(-1.0, 8.0, 1.0, 10.0, Ellipse), larger=True)
    assert edges(wide) == (-1.0 - RACKET / 2, 8.0 - STRIDE / 2, 1.0 + RACKET / 2, 10.0 + STRIDE / 2)
    assert resized(TENNIS, area(-0.3, 8.0, 0.3, 8.6, Ellipse), larger=False) is None
    assert resized(TENNIS, Area(kind="area", id="zone", shape=UnknownShape(form="star")), larger=True) is None


def test_what_lies_between_painted_lines_keeps_its_place():
    assert shifted(TENNIS, EMPTY, area(0.0, SERVICE, LINE, BASE), STRIDE) is None
    line = Line(kind="line", id="line", corners=((-4.0, SERVICE), (4.0, SERVICE)), marked="painted")
    moved = shifted(TENNIS, EMPTY.having(line), line, STRIDE)
    assert moved.corners[0][1] == pytest.approx(SERVICE + STRIDE)
    assert moved.marked == "chalk"  # it is painted no longer


def test_a_hoop_moves_away_from_the_net_at_its_own_end():
    for y, expected in ((5.0, 5.0 + STRIDE), (-5.0, -5.0 - STRIDE)):
        hoop = Hoop(kind="hoop", id="hoop", place=place(1.0, y))
        assert shifted(TENNIS, EMPTY.having(hoop), hoop, STRIDE).place.at == (1.0, pytest.approx(expected))


def test_discs_follow_the_corner_they_stand_on():
    old, new = area(-1.0, 8.0, 1.0, 10.0), area(-2.0, 8.0, 1.0, 10.0)
    discs = [Disc(kind="disc", id=id, place=place(x, y)) for id, x, y in (("a", -1, 8), ("b", 1, 10), ("c", 0, 8))]
    moved = corner_discs_with(EMPTY.having(*discs), old, new)
    assert [(disc.id, disc.place.at) for disc in moved] == [("a", (-2.0, 8.0))]
