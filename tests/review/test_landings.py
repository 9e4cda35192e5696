"""A ball that is asked for or paid where it can never land, and a start that its ball does not fit. More: ``tests/faults``."""

import pytest
from review.situations import FEED, RALLY, REPLY, START, drill, keys, only, told

from designer.drill.conditions import Event, In, Outcome
from designer.drill.items import Area, Rectangle
from designer.drill.rules import Keep, Points, Rule
from designer.drill.setting import setting_at
from designer.review.landings import landing_checks

LOSE = Outcome(then="lose the point")
NEAR = Area(kind="area", id="zone", name="home", shape=Rectangle(form="rectangle", corners=((0.5, -11.0), (3.5, -7.0))))


def found(*records, **values):
    return list(landing_checks(told(*RALLY, *records, **values)))


def keep(*who, area="zone", **values):
    where = In(area=area, judged="bounce", line="in", **values)
    return Rule(id="keep", who=who, breach=LOSE, must=Keep(do="keep", where=(where,)))


@pytest.mark.parametrize(
    ("area", "rule", "expected"),
    [
        (NEAR, keep("A"), ["own-end"]),  # A stands at the near end
        (NEAR, keep("B"), []),
        (NEAR, keep("A", "B"), []),  # B can
        (NEAR, keep(), []),
        (NEAR.changed(both_ends=True), keep("A"), []),
        (NEAR, keep("A", outside=True), []),
        (NEAR, keep("A").changed(never=True), []),
        (NEAR, keep("B").changed(of=("feed",)), []),  # a feed may be dropped at the own end
    ],
)
def test_a_ball_does_not_land_at_the_end_it_is_hit_from(area, rule, expected):
    assert keys(found(area, rule)) == expected


@pytest.mark.parametrize(
    ("corners", "play", "expected"),
    [
        (((-3.0, 7.0), (-1.0, 11.0)), "right half", []),  # seen from the far end it is on the right
        (((1.0, 7.0), (3.0, 11.0)), "right half", ["out-of-play"]),
        (((-1.0, 7.0), (3.0, 11.0)), "right half", []),  # a part of it is in
        (((1.0, 7.0), (3.0, 11.0)), "service boxes", ["out-of-play"]),
        (((1.0, 2.0), (3.0, 6.0)), "service boxes", []),
        (((1.0, 2.0), (3.0, 6.0)), None, []),
    ],
)
def test_a_target_has_a_part_in_what_is_in_play(corners, play, expected):
    zone = Area(kind="area", id="zone", shape=Rectangle(form="rectangle", corners=corners))
    assert keys(found(zone, keep("A"), in_play=play)) == expected


def test_points_that_never_come():
    def paid(*on):
        return Points(id="p", on=on, gives=Outcome(then="points", value=1))

    home = Event(what="landed", by=("A",), where=(In(area="zone", judged="bounce"),))
    won = Event(what="won", by=("A",), of=("feed",))
    assert keys(found(NEAR, paid(home))) == ["points-never"]
    assert keys(found(paid(won))) == ["points-never"]
    assert found(NEAR, paid(home, Event(what="won"))) == []  # one of them can come
    assert found(paid(won.changed(of=("reply",)))) == []


def test_who_puts_the_ball_in_is_who_is_drawn():
    other = START.changed(by=("A",))
    check = only(found(other), "start-by")
    mended = setting_at(check.mend(drill(*RALLY, other)), check.at)
    assert mended.starts["start"].by == ("B",)
    assert found(START.changed(by=("A", "B"))) == []


def test_a_rally_begins_with_a_ball_of_its_own():
    assert keys(found(START.changed(shot="reply"))) == ["start-later"]
    assert found(REPLY.changed(stroke="racket feed"), START.changed(shot="reply")) == []
    assert found(FEED.changed(stroke=None)) == []  # the first ball, whatever it is
