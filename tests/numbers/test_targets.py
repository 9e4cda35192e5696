"""What a ball is asked to hit, as shapes; areas checked with shapely, live."""

import math

import pytest
from shapely.geometry import Point, Polygon

from designer.drill.base import place
from designer.drill.conditions import Event, In, Outcome
from designer.drill.items import Area, Ellipse, Hoop, Line, Rectangle
from designer.drill.rules import Finish, Keep, Part, Points, Rule, Start
from designer.numbers.accuracy import Landing, chance_in
from designer.numbers.levels import Spread
from designer.numbers.targets import HOOP, targets

SINGLES, BASELINE, SERVICE = 4.1148, 11.8872, 6.4008
ZONE = Area(id="zone", kind="area", shape=Rectangle(form="rectangle", corners=((-4.0, 7.0), (-1.0, 11.0))))
FORCED = Part(id="forced", kind="forced", shots=("reply",), failed=Outcome(then="lose the point"))
OPEN = Part(id="open", after="forced", kind="open")


def keep(*where, **more):
    return Rule(id="rule", parts=("forced",), must=Keep(do="keep", where=where), **more)


def asked(drawn, rally, *records, shot="reply"):
    here = drawn(*rally, *records)
    return targets(here, here.sequence.step(shot))


def test_a_zone_that_a_rule_demands(drawn, rally):
    (found,) = asked(drawn, rally, ZONE, FORCED, OPEN, keep(In(area="zone", judged="bounce")))
    assert (found.by, found.areas, found.purpose) == ("rule", ("zone",), "restricted")
    assert found.area == pytest.approx(12.0)


def test_a_rule_for_others_asks_nothing(drawn, rally):
    rule = keep(In(area="zone", judged="bounce"), who=("B",))
    assert asked(drawn, rally, ZONE, FORCED, OPEN, rule) == ()
    assert asked(drawn, rally, ZONE, FORCED, OPEN, rule.changed(who=("A",))) != ()


def test_where_two_regions_overlap(drawn, rally):
    # The right half and past the service line, at the far end: 13.5 ft by 18 ft of the rules of tennis.
    where = (In(area="right half", judged="bounce"), In(area="past the service line", judged="bounce"))
    (found,) = asked(drawn, rally, FORCED, OPEN, keep(*where))
    assert found.area == pytest.approx(SINGLES * (BASELINE - SERVICE))
    assert Polygon(found.polygons[0]).bounds == pytest.approx((-SINGLES, SERVICE, 0.0, BASELINE))


@pytest.mark.parametrize(("side", "depth"), [("behind", BASELINE - 8.0), ("in front of", 8.0)])
def test_one_side_of_a_line(drawn, rally, side, depth):
    line = Line(id="line", kind="line", corners=((-SINGLES, 8.0), (SINGLES, 8.0)))
    (found,) = asked(drawn, rally, line, FORCED, OPEN, keep(In(area="line", side=side, judged="bounce")))
    assert found.area == pytest.approx(2 * SINGLES * depth)


def test_a_line_at_both_ends_is_meant_at_the_other_end(drawn, rally):
    line = Line(id="line", kind="line", corners=((-SINGLES, -8.0), (SINGLES, -8.0)), both_ends=True)
    (found,) = asked(drawn, rally, line, FORCED, OPEN, keep(In(area="line", side="behind", judged="bounce")))
    assert found.holds((0.0, 9.0))
    assert not found.holds((0.0, 7.0))


def test_outside_an_area_is_the_court_without_it(drawn, rally):
    (found,) = asked(drawn, rally, ZONE, FORCED, OPEN, keep(In(area="zone", judged="bounce", outside=True)))
    # Half the singles court, 195.65380 m² by the rules of tennis in feet, without 12 m².
    assert found.area == pytest.approx(195.65380 / 2 - 12.0, abs=1e-4)
    assert found.holds((2.0, 9.0))
    assert not found.holds((-2.0, 9.0))
    landing = Landing((-2.0, 9.0), (-2.0, -12.0), Spread(1.0, 2.0, 21))
    inside = asked(drawn, rally, ZONE, FORCED, OPEN, keep(In(area="zone", judged="bounce")))[0].chance(landing)
    court = chance_in([(-SINGLES, 0), (SINGLES, 0), (SINGLES, BASELINE), (-SINGLES, BASELINE)], landing)
    assert found.chance(landing) == pytest.approx(court - inside, abs=1e-9)


def test_ellipses_and_hoops(drawn, rally):
    shape = Ellipse(form="ellipse", corners=((-3.0, 8.0), (-1.0, 11.0)))
    ellipse = Area(id="ring", kind="area", shape=shape)
    (found,) = asked(drawn, rally, ellipse, FORCED, OPEN, keep(In(area="ring", judged="bounce")))
    assert found.area == pytest.approx(math.pi * 1.0 * 1.5)
    assert Polygon(found.outline).area == pytest.approx(found.area, rel=1e-3)
    hoop = Hoop(id="hoop", kind="hoop", place=place(-2.0, 9.4))
    (found,) = asked(drawn, rally, hoop, FORCED, OPEN, keep(In(area="hoop", judged="bounce")))
    assert found.area == pytest.approx(math.pi * HOOP**2)


def test_feet_and_contacts_are_no_targets(drawn, rally):
    for judged in ("both feet", "contact", "net"):
        assert asked(drawn, rally, ZONE, FORCED, OPEN, keep(In(area="zone", judged=judged))) == ()
    assert asked(drawn, rally, ZONE, FORCED, OPEN, keep(In(area="zone", judged="bounce"), never=True)) == ()


def test_the_place_of_a_good_feed(drawn, rally):
    start = Start(id="start", shot="feed", good=(In(area="past the service line", judged="bounce"),))
    (found,) = asked(drawn, rally, start, shot="feed")
    assert (found.by, found.purpose) == ("start", "feed")


def test_points_count_where_the_ball_is_aimed_at_them(drawn, rally):
    def paid(corners):
        area = ZONE.changed(shape=Rectangle(form="rectangle", corners=corners))
        event = Event(what="landed", where=(In(area="zone", judged="bounce"),))
        points = Points(id="bonus", on=(event,), gives=Outcome(then="points", value=1), beside="added")
        return asked(drawn, rally, area, FORCED, OPEN, points)

    assert [target.purpose for target in paid(((-4.0, 7.0), (-1.0, 11.0)))] == ["bonus"]
    assert paid(((1.0, 7.0), (4.0, 11.0))) == ()


def test_what_it_is_for_follows_the_finish_and_the_parts(drawn, rally):
    together = Part(id="forced", kind="cooperative", shots=("reply",))
    rule = keep(In(area="zone", judged="bounce"))
    row = Finish(id="end", kind="race", to=10, running=True)
    assert [t.purpose for t in asked(drawn, rally, ZONE, together, rule)] == ["together"]
    assert [t.purpose for t in asked(drawn, rally, ZONE, together, rule, row)] == ["in a row"]
    # A demand that costs the rally is one on every ball; of one that costs nothing nobody knows what it is for.
    costly = rule.changed(breach=Outcome(then="lose the point"))
    assert [t.purpose for t in asked(drawn, rally, ZONE, FORCED, costly)] == ["restricted"]
    assert [t.purpose for t in asked(drawn, rally, ZONE, FORCED, rule)] == ["restricted"]
    free = FORCED.changed(failed=None)
    assert [t.purpose for t in asked(drawn, rally, ZONE, free, rule)] == [None]
    told = ZONE.changed(purpose="bonus")
    assert [t.purpose for t in asked(drawn, rally, told, FORCED, rule)] == ["bonus"]
    assert [t.purpose for t in asked(drawn, rally, told, FORCED, rule.changed(purpose="normal aim"))] == ["normal aim"]


def test_what_is_all_that_is_paid_may_be_anything_and_what_is_paid_beside_a_win_is_a_bonus(drawn, rally):
    event = Event(what="landed", where=(In(area="zone", judged="bounce"),))
    hit = Points(id="hit", on=(event,), gives=Outcome(then="points", value=1))
    won = Points(id="won", on=(Event(what="won"),), gives=Outcome(then="points", value=1))
    assert [t.purpose for t in asked(drawn, rally, ZONE, hit)] == [None]
    assert [t.purpose for t in asked(drawn, rally, ZONE, hit, won)] == ["bonus"]
    three = Points(id="three", on=(event.changed(count=3, running=True),), gives=hit.gives)
    assert [t.purpose for t in asked(drawn, rally, ZONE, three, won)] == ["in a row"]


def test_a_reference_to_nothing_is_no_target(drawn, rally):
    assert asked(drawn, rally, FORCED, OPEN, keep(In(area="gone", judged="bounce"))) == ()


def test_edges_count_as_inside(drawn, rally):
    (found,) = asked(drawn, rally, ZONE, FORCED, OPEN, keep(In(area="zone", judged="bounce")))
    for x, y in ((-4.0, 9.0), (-1.0, 7.0), (-2.0, 11.0), (-2.5, 9.0)):
        assert found.holds((x, y))
        assert Polygon(found.polygons[0]).buffer(1e-9).covers(Point(x, y))
    assert not found.holds((-0.98, 9.0))


def test_the_chance_is_that_of_its_shape(drawn, rally):
    (found,) = asked(drawn, rally, ZONE, FORCED, OPEN, keep(In(area="zone", judged="bounce")))
    from scipy.stats import norm

    landing = Landing((-2.5, 9.0), (-2.5, -12.0), Spread(1.0, 2.0, 21))
    # scipy: 3 by 4 m round the aim, 1.0 and 2.0 m.
    expected = (2 * norm.cdf(1.5) - 1) * (2 * norm.cdf(1.0) - 1)
    assert found.chance(landing) == pytest.approx(expected, abs=1e-9)
