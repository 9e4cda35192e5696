"""Parts, openings, areas and swaps, in situations of the invented academy's drills."""

import itertools

import pytest

from designer.court.standards import ground
from designer.drill.base import Place, place
from designer.drill.conditions import Event, In, Outcome
from designer.drill.drill import Court
from designer.drill.items import Area, Cone, Line, Rectangle
from designer.drill.movement import Run, Shot
from designer.drill.people import Spot
from designer.drill.rules import Keep, Part, Points, Rule, Start, Swap, UseStroke
from designer.drill.setting import EMPTY
from designer.play.rally import area_roles, area_value, is_recovery, jobs_after, opening_shot, parts
from designer.play.sequence import sequence

TENNIS = ground(Court())
RALLY = (
    Shot(id="feed", by="A", stroke="racket feed"),
    Shot(id="reply", by="B", after="feed"),
    Shot(id="third", by="A", after="reply"),
    Shot(id="fourth", by="B", after="third"),
)


def opens(*records):
    setting = EMPTY.having(*records)
    return opening_shot(setting, sequence(setting, TENNIS, ()))


def area(id, **values):
    return Area(kind="area", id=id, shape=Rectangle(form="rectangle", corners=((0.0, 7.0), (4.0, 11.0))), **values)


def inside(area_id, judged="bounce", **values):
    return In(area=area_id, judged=judged, **values)


POINT = Outcome(then="points", value=1)


@pytest.mark.parametrize("order", list(itertools.permutations(range(3))))
def test_parts_follow_what_they_come_after(order):
    three = [
        Part(id="hold", kind="forced"),
        Part(id="may", after="hold", kind="forced"),
        Part(id="open", after="may", kind="open"),
    ]
    assert [part.id for part in parts(EMPTY.having(*(three[n] for n in order)))] == ["hold", "may", "open"]


def test_parts_that_say_nothing_run_by_kind():
    loose = [Part(id="a", kind="open"), Part(id="b", kind="forced"), Part(id="c", kind="cooperative")]
    assert [part.id for part in parts(EMPTY.having(*loose))] == ["c", "b", "a"]


def test_parts_in_a_circle_are_all_there():
    ring = [Part(id="a", kind="open", after="b"), Part(id="b", kind="forced", after="a")]
    assert {part.id for part in parts(EMPTY.having(*ring))} == {"a", "b"}


def test_the_flag_stands_at_the_shot_that_ends_the_restricted_part():
    restricted = Part(id="f", kind="forced", shots=("reply",), until=(Event(what="played", of=("third",)),))
    assert opens(*RALLY, restricted, Part(id="o", kind="open", after="f")) == "third"


def test_the_flag_stands_at_the_ball_during_which_somebody_gets_there():
    run = Run(id="back", by="A", during="third", to=place(0.0, -12.0))
    restricted = Part(id="f", kind="forced", until=(Event(what="reached", of=("back",)),))
    assert opens(*RALLY, run, restricted, Part(id="o", kind="open", after="f")) == "third"


def test_counted_hits_are_counted_from_the_ball_that_was_put_in():
    # The start is hit 0: after two hits the third shot has been played.
    restricted = Part(id="f", kind="forced", shots=("reply", "third"), until=(Event(what="played", count=2),))
    assert opens(*RALLY, restricted, Part(id="o", kind="open", after="f")) == "third"


def test_hits_beyond_what_is_drawn_leave_the_flag_at_the_last_restricted_shot():
    restricted = Part(id="f", kind="forced", shots=("reply", "third"), until=(Event(what="played", count=6),))
    assert opens(*RALLY, restricted, Part(id="o", kind="open", after="f")) == "third"


@pytest.mark.parametrize(
    ("to", "flag"),
    [((2.4, 9.0), "change"), ((-2.4, 9.0), None)],  # B's left half is x > 0 at the far end
)
def test_the_flag_stands_at_the_ball_that_lands_where_the_part_ends(to, flag):
    changed = In(area="left half", judged="bounce")
    until = (Event(what="played", by=("A",), where=(changed,)),)
    restricted = Part(id="f", kind="forced", shots=("reply", "third", "change"), until=until)
    change = Shot(id="change", by="A", after="reply", to=place(*to))
    assert opens(*RALLY, change, restricted, Part(id="o", kind="open", after="f")) == flag


@pytest.mark.parametrize(("y", "flag"), [(9.0, "third"), (7.0, None)])
def test_the_flag_stands_at_the_ball_past_a_line(y, flag):
    line = Line(kind="line", id="depth", corners=((-4.0, -8.2), (4.0, -8.2)), both_ends=True)
    until = (Event(what="landed", where=(In(area="depth", side="behind"),)),)
    deep = RALLY[2].changed(to=place(0.0, y))
    restricted = Part(id="f", kind="forced", until=until)
    assert opens(*RALLY[:2], deep, line, restricted, Part(id="o", kind="open", after="f")) == flag


def test_a_rally_that_never_opens_or_is_open_at_once_has_no_flag():
    assert opens(*RALLY, Part(id="c", kind="cooperative", shots=("reply",))) is None
    assert opens(*RALLY, Part(id="o", kind="open")) is None
    assert opens(*RALLY) is None


def test_an_area_is_what_rules_and_points_make_of_it():
    setting = EMPTY.having(
        *(area(id) for id in ("zone", "paid", "feed", "never", "side", "idle", "aimed")),
        Shot(id="hit", by="A", to=Place(on="aimed")),
        Start(id="start", shot="hit", good=(inside("feed"),)),
        Rule(id="r1", must=Keep(do="keep", where=(inside("zone"),))),
        Rule(id="r2", never=True, must=Keep(do="keep", where=(inside("never", "one foot"),))),
        Rule(id="r3", when=(inside("side"),), must=UseStroke(do="use stroke", wing="forehand")),
        Points(id="p", on=(Event(what="landed", where=(inside("paid"),)),), gives=POINT),
    )
    assert area_roles(setting) == {
        "zone": "target",
        "paid": "target",
        "feed": "feed",
        "never": "keep out",
        "side": "rule",
        "idle": "rule",
        "aimed": "target",
    }


def test_outside_and_never_cancel_out():
    # "Never outside it" keeps feet in, so it is a place to be, not one to keep out of.
    never_outside = Keep(do="keep", where=(inside("zone", "both feet", outside=True),))
    outside = Keep(do="keep", where=(inside("zone", "both feet", outside=True),))
    assert area_roles(EMPTY.having(area("zone"), Rule(id="r", never=True, must=never_outside))) == {"zone": "rule"}
    assert area_roles(EMPTY.having(area("zone"), Rule(id="r", must=outside))) == {"zone": "keep out"}


def test_a_fed_ball_s_target_is_a_feed_area_and_a_line_counts_when_it_is_named():
    line = Line(kind="line", id="chalk", corners=((-4.0, -12.8), (4.0, -12.8)))
    setting = EMPTY.having(
        area("there"),
        line,
        line.changed(id="tick"),
        Cone(kind="cone", id="cone", place=place(0.0, 5.0)),
        Shot(id="feed", by="B", stroke="hand feed", to=Place(on="there")),
        Shot(id="hit", by="A", after="feed", to=Place(on="cone")),
        Rule(id="r", must=Keep(do="keep", where=(inside("chalk", "both feet", side="in front of"),))),
    )
    assert area_roles(setting) == {"there": "feed", "chalk": "rule"}


def test_the_value_of_a_target_is_what_it_pays():
    paid = Points(id="p", on=(Event(what="landed", where=(inside("zone"),)),), gives=Outcome(then="points", value=2))
    setting = EMPTY.having(area("zone"), area("other"), paid)
    assert area_value(setting, "zone") == 2
    assert area_value(setting, "other") is None
    together = paid.on[0].changed(and_=(Event(what="won"),))
    assert area_value(setting.having(paid.changed(on=(together,))), "zone") is None
    another = paid.changed(id="q", gives=Outcome(then="points", value=3))
    assert area_value(setting.having(another), "zone") is None


def people(*letters):
    return [Spot(id=f"spot-{letter.lower()}", job=letter, place=place(0.0, -5.0)) for letter in letters]


def swap(**values):
    return Swap(id="s", on=(Event(what="finished"),), **values)


def test_people_move_between_jobs():
    setting = EMPTY.having(*people("A", "B", "C"))
    assert jobs_after(setting, swap(moves={"A": "B", "B": "C", "C": "A"})) == {"A": "B", "B": "C", "C": "A"}


def test_a_job_that_nobody_holds_is_passed_over():
    setting = EMPTY.having(*people("A", "B"))
    assert jobs_after(setting, swap(moves={"A": "B", "B": "C", "C": "A"})) == {"A": "B", "B": "A"}
    assert jobs_after(setting, swap(moves={"A": "C", "C": "D"})) == {"A": "A", "B": "B"}


def test_who_wins_is_not_known_beforehand():
    assert jobs_after(EMPTY.having(*people("A", "B")), swap(moves={"winner": "A", "loser": "B"})) == {
        "A": "A",
        "B": "B",
    }


def test_a_table_is_read_round_by_round():
    table = (("A", "B", "C", "D"), ("A", "D", "B", "C"), ("A", "C", "D", "B"))
    setting = EMPTY.having(*people("A", "B", "C", "D"))
    # The person who was B (near net) has job C in the second round, D in the third.
    assert jobs_after(setting, swap(table=table)) == {"A": "A", "B": "C", "C": "D", "D": "B"}
    assert jobs_after(setting, swap(table=table), 2) == {"A": "A", "B": "C", "C": "D", "D": "B"}
    assert jobs_after(setting, swap(table=table), 3) == {letter: letter for letter in "ABCD"}


@pytest.mark.parametrize(
    ("purpose", "during", "recovery"),
    [
        ("recover", "theirs", True),
        ("reach", "own", False),
        ("approach", "own", True),
        ("approach", "theirs", False),
        (None, None, False),
    ],
)
def test_a_run_after_ones_own_hit_is_no_reaching(purpose, during, recovery):
    setting = EMPTY.having(Shot(id="own", by="A"), Shot(id="theirs", by="B"))
    run = Run(id="run", by="A", during=during, to=place(0.0, -3.0), purpose=purpose)
    assert is_recovery(setting, run) is recovery
