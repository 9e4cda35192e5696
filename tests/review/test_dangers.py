"""Cautions from the drawing. Distances are coaches' practice with no source, unless one is named beside a test.

Each danger is drawn once where it must be told of and once just far enough away.
"""

import pytest
from review.situations import AT, FEED, RALLY, REPLY, A, B, drill, keys, only, run, spot, told

from designer.court.standards import ground
from designer.drill.base import place
from designer.drill.drill import Court
from designer.drill.items import Area, Basket, Cone, Disc, Hoop, Line, Obstacle, Rectangle
from designer.drill.movement import Shot
from designer.drill.people import Job
from designer.drill.rules import Rule, UseStroke
from designer.review.dangers import danger_cautions, run_off_cautions

NO_LOBS = Rule(id="no-lobs", never=True, must=UseStroke(do="use stroke", strokes=("lob",)))


def found(*records, **values):
    return list(danger_cautions(told(*records, **values)))


def cone(x, y, id="cone"):
    return Cone(kind="cone", id=id, place=place(x, y))


def line(marked, *corners, **values):
    return Line(kind="line", id="line", corners=corners, marked=marked, **values)


def test_an_empty_rally_has_no_cautions():
    assert found(*RALLY) == []


def test_every_caution_is_about_danger_and_names_its_setting():
    all_of_them = found(*RALLY, cone(1.0, -12.4), run("A", "feed", 2.0, -12.0), age=(6, 8))
    assert len(all_of_them) >= 2
    assert all(check.danger and check.weight == "caution" and check.at == AT for check in all_of_them)


@pytest.mark.parametrize(("y", "expected"), [(-9.0, ["object-on-run"]), (-9.45, ["object-on-run"]), (-9.5, [])])
def test_a_thing_on_a_run(y, expected):
    # A runs straight across the court at y = -9; half a runner's width is 0.45 m.
    records = (spot("A", -4.0, -9.0), B, FEED, REPLY, run("A", "feed", 4.0, -9.0))
    assert keys(found(*records, cone(0.0, y))) == expected


def test_a_run_round_a_thing_or_to_it_passes():
    start = (spot("A", -4.0, -9.0), B, FEED, REPLY, cone(0.0, -9.0))
    assert found(*start, run("A", "feed", 4.0, -9.0, via=((0.0, -10.0),))) == []
    to_it = run("A", "feed", 0.0, 0.0)
    assert found(*start, to_it.changed(to=to_it.to.changed(on="cone"))) == []


def test_the_copy_at_the_other_end_is_seen_too():
    records = (A, spot("B", -4.0, 9.0), FEED, REPLY, run("B", "reply", 4.0, 9.0))
    assert keys(found(*records, cone(1.0, -9.0).changed(both_ends=True))) == ["object-on-run"]
    assert keys(found(*records, cone(1.0, -9.0))) == []


def test_flat_things_on_a_run_are_told_of_more_gently():
    records = (spot("A", -4.0, -9.0), B, FEED, REPLY, run("A", "feed", 4.0, -9.0))
    hoop = Hoop(kind="hoop", id="hoop", place=place(1.0, -9.0))
    check = only(found(*records, hoop), "flat-on-run")
    assert check.about == ("run", "hoop")
    assert "dry court" in check.sentence.text
    assert keys(found(*records, line("discs", (1.0, -9.1), (1.0, -6.0)))) == ["flat-on-run"]
    zone = Area(
        kind="area",
        id="zone",
        marked="discs",
        shape=Rectangle(form="rectangle", corners=((1.0, -9.0), (3.0, -7.0))),
    )
    assert keys(found(*records, zone)) == ["flat-on-run"]


def test_a_spot_marker_is_there_to_be_stepped_on():
    disc = Disc(kind="disc", id="disc", place=place(-4.0, -9.0))
    assert found(spot("A", -4.0, -9.0), B, FEED, REPLY, disc, run("A", "feed", 4.0, -9.0)) == []


def test_a_strip_across_a_run_and_a_line_that_is_no_object():
    records = (spot("A", -4.0, -9.0), B, FEED, REPLY, run("A", "feed", 4.0, -9.0))
    across = ((0.0, -12.0), (0.0, -7.0))
    assert keys(found(*records, line("throw-down", *across))) == ["strip-on-run"]
    assert keys(found(*records, line("throw-down", (0.0, -12.0), (0.0, -9.6)))) == []
    for marked in ("chalk", "painted", "in thought", "tape"):
        assert found(*records, line(marked, *across)) == []


@pytest.mark.parametrize(
    ("x", "y", "expected"),
    [
        (0.0, -13.3, ["object-behind"]),
        (0.3, -13.7, ["object-behind"]),
        (0.0, -13.9, []),  # more than 1 m behind
        (0.0, -12.3, []),  # in front
        (0.8, -13.3, []),  # to the side
    ],
)
def test_a_thing_within_a_metre_behind_a_hitter(x, y, expected):
    assert keys(found(*RALLY, cone(x, y))) == expected


def test_behind_is_away_from_the_net_at_both_ends():
    assert keys(found(*RALLY, cone(0.0, 13.3))) == ["object-behind"]
    assert keys(found(*RALLY, cone(0.0, 12.3))) == []


def test_a_feeder_s_basket_may_stand_behind_the_feeder_and_nobody_else_s():
    basket = Basket(kind="basket", id="basket", place=place(0.0, 13.3))
    assert found(*RALLY, basket) == []
    assert keys(found(*RALLY, basket.changed(place=place(0.0, -13.3)))) == ["object-behind"]


FEEDER = (
    spot("A", 0.0, -12.0),
    spot("F", 1.0, 5.0),
    Shot(id="feed", by="F", stroke="racket feed", to=place(0.7, -9.0)),
)


@pytest.mark.parametrize(
    ("landing", "expected"),
    [((1.2, 9.0), ["feeder-in-line"]), ((-3.0, 9.0), []), ((0.9, 1.0), [])],
)
def test_a_feeder_near_the_net_in_the_line_of_a_hit(landing, expected):
    hit = Shot(id="hit", by="A", after="feed", wing="forehand", to=place(*landing))
    assert keys(found(*FEEDER, hit, jobs=("A", Job(letter="F", by="coach")))) == expected


def test_a_feeder_far_back_or_one_the_ball_is_meant_for_is_in_no_line():
    hit = Shot(id="hit", by="A", after="feed", wing="forehand", to=place(1.2, 9.0))
    far = spot("F", 1.0, 9.0)
    assert found(FEEDER[0], far, FEEDER[2], hit, jobs="AF") == []
    to_them = hit.changed(to=hit.to.changed(on="F", at=(0.0, 0.0)))
    assert found(*FEEDER, to_them, jobs="AF") == []


@pytest.mark.parametrize(
    ("x", "y", "task", "expected"),
    [
        (-2.0, 10.0, "waits", ["waiting-in-line"]),
        (-2.5, 11.5, "waits", ["waiting-in-line"]),  # a little astray and a little long
        (4.0, 10.0, "waits", []),
        (-2.0, 16.0, "waits", []),  # well behind the bounce
        (-2.0, 10.0, "collects", []),  # whoever collects stands behind the bounce
        (-1.2, 4.0, "collects", ["waiting-in-line"]),  # but not before it
    ],
)
def test_somebody_who_waits_where_a_hit_may_go(x, y, task, expected):
    records = (*RALLY, spot("C", x, y, task=task))
    assert keys(found(*records, jobs="ABC")) == expected


def test_a_run_that_ends_too_near_a_fence():
    # The stated run-back is 6.40 m: the fence stands 18.29 m from the net (ITF Technical Booklet 2015, table 5).
    assert keys(found(*RALLY, run("A", "feed", 0.0, -16.9))) == ["run-at-fence"]
    assert keys(found(*RALLY, run("A", "feed", 0.0, -16.7))) == []
    assert keys(found(*RALLY, run("A", "feed", 7.8, -12.0))) == ["run-at-fence"]
    assert keys(found(*RALLY, run("A", "feed", 7.5, -12.0))) == []


def test_an_assumed_fence_is_said_to_be_assumed():
    # Club minimum 5.49 m behind: the fence stands 17.37 m from the net.
    check = only(found(*RALLY, run("A", "feed", 0.0, -16.0), court=Court()), "run-at-fence")
    assert "the club minimum is assumed" in check.sentence.text
    assert found(*RALLY, run("A", "feed", 0.0, -15.8), court=Court()) == []


def test_things_beyond_a_wide_run_are_in_the_way_of_stopping():
    wide = run("A", "feed", 4.5, -11.0)
    bench = Obstacle(kind="obstacle", id="bench", corners=((6.5, -11.5), (6.5, -10.0), (7.0, -10.0), (7.0, -11.5)))
    assert keys(found(*RALLY, wide, bench)) == ["object-beyond-run"]
    other_side = bench.changed(corners=tuple((-x, y) for x, y in bench.corners))
    assert found(*RALLY, wide, other_side) == []
    assert found(*RALLY, run("A", "feed", 2.0, -11.0), bench) == []


def test_raised_things_with_the_young_or_in_the_wet():
    # Under-tens have courts and balls of their own: ITF Rules of Tennis, Appendix VI.
    aside = cone(7.0, -5.0)
    assert keys(found(*RALLY, aside, age=(8, 12))) == ["raised-young"]
    assert keys(found(*RALLY, aside, age=(10, 12))) == []
    wet = Court(run_back=6.4, side_run=3.66, wet=True)
    assert keys(found(*RALLY, aside, court=wet)) == ["raised-wet"]
    disc = Disc(kind="disc", id="disc", place=place(7.0, -5.0))
    assert keys(found(*RALLY, disc, court=wet)) == ["strip-wet"]
    assert keys(found(*RALLY, disc, court=wet.changed(surface="clay"))) == []
    assert keys(found(*RALLY, disc, age=(6, 8))) == []


def test_two_hitters_whose_rackets_reach_one_another():
    # Two racket lengths and an arm: 2.07 m.
    def pair(x):
        more = (spot("C", x, -12.0), Shot(id="other", by="C", stroke="racket feed"))
        return keys(found(spot("A", 0.0, -12.0), B, FEED, REPLY, *more, jobs="ABC"))

    assert pair(2.0) == ["too-close"]
    assert pair(2.1) == []


def test_a_run_brings_hitters_too_close():
    records = (spot("A", 0.0, -12.0), spot("C", 4.0, -12.0), B, FEED, REPLY)
    assert found(*records, jobs="ABC") == []
    close = only(found(*records, run("C", "feed", 1.0, -12.0), jobs="ABC"), "too-close")
    assert "A and C are 1.0 m apart" in close.sentence.text


def test_people_across_the_net_are_never_too_close():
    records = (spot("A", 0.0, -0.9), spot("B", 0.0, 0.9), FEED, REPLY)
    assert "too-close" not in keys(found(*records))


def test_run_off_below_the_club_minimum():
    # ITF Technical Booklet 2015, table 5, notes d and e: 5.48 and 3.05 m for recreational and club play.
    def said(**values):
        court = Court(**values)
        return keys(run_off_cautions(drill(*RALLY, court=court), ground(court)))

    assert said(run_back=5.48, side_run=3.05) == []
    assert said(run_back=5.0, side_run=3.05) == ["run-off"]
    assert said(run_back=5.0, side_run=2.5) == ["run-off", "run-off"]
    assert said() == ["run-off-assumed"]
