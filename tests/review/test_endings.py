"""What cannot be reached or ended, and what looks like it but can. More cases: ``tests/faults``."""

import pytest
from review.situations import END, RALLY, START, WON, keys, run, told

from designer.drill.conditions import Event, In, Outcome
from designer.drill.movement import Shot
from designer.drill.rules import Finish, Part, Points, Swap
from designer.review.endings import ending_checks

LOSE = Outcome(then="lose the point")
REST = tuple(record for record in RALLY if record not in (WON, END))


def found(*records, **values):
    return keys(ending_checks(told(*records, **values)))


def paid(value=1, what="won", id="won", **values):
    return Points(id=id, on=(Event(what=what),), gives=Outcome(then="points", value=value), **values)


@pytest.mark.parametrize(
    ("points", "finish", "expected"),
    [
        ((WON,), {"kind": "race", "to": 11}, []),
        ((), {"kind": "race", "to": 11}, []),  # that is an open question, not an error
        ((paid(0),), {"kind": "race", "to": 11}, ["finish-unreachable"]),
        ((paid(-1), paid(1, id="up")), {"kind": "race", "to": 11}, []),
        ((paid(-1),), {"kind": "race", "to": 11, "floor": -5}, []),  # it is lost at minus five
        ((paid(1),), {"kind": "goal", "to": 10, "starts": 10}, []),
        ((paid(1),), {"kind": "goal", "to": 11, "starts": 10}, ["finish-unreachable"]),
        ((paid(1), paid(2, id="two", beside="instead")), {"kind": "goal", "to": 20, "starts": 10}, []),
        ((paid(1), paid(2, id="two", beside="added")), {"kind": "goal", "to": 30, "starts": 10}, []),
        ((paid(1, what="landed"),), {"kind": "goal", "to": 90, "starts": 10}, []),  # paid at every hit
        ((WON,), {"kind": "race", "to": 11, "margin": 2, "cap": 15}, []),
        ((WON,), {"kind": "race", "to": 11, "margin": 2, "cap": 10}, ["finish-cap"]),
        ((WON,), {"kind": "total", "starts": 20}, []),
    ],
)
def test_a_finish_that_nobody_can_reach(points, finish, expected):
    assert found(*REST, *points, Finish(id="end", **finish)) == expected


def test_a_start_score_is_ahead_but_not_there():
    assert found(*REST, WON, END, START.changed(score={"A": 10})) == []
    assert found(*REST, WON, END, START.changed(score={"A": 11})) == ["finish-at-start"]


@pytest.mark.parametrize(
    ("until", "expected"),
    [
        ({"what": "played", "count": 4}, []),
        ({"what": "played", "of": ("reply",)}, []),
        ({"what": "played", "of": ("reply",), "by": ("A",)}, []),
        ({"what": "reached", "by": ("A",), "of": ("run",)}, []),
        ({"what": "called", "call": "short", "called_by": ("doer",)}, []),
        ({"what": "landed", "by": ("receiver",)}, []),
        ({"what": "played", "of": ("reply",), "by": ("B",)}, ["part-endless"]),
        ({"what": "game won"}, ["part-endless"]),
        ({"what": "minutes", "count": 3}, ["part-endless"]),
        ({"what": "played", "and": ({"what": "score", "count": 3},)}, ["part-endless"]),
    ],
)
def test_what_a_part_waits_for(until, expected):
    forced = Part(id="forced", kind="forced", failed=LOSE, until=(Event(**until),))
    parts = (forced, Part(id="open", kind="open", after="forced"))
    assert found(*RALLY, run("A", "feed", 1.0, -12.0), *parts) == expected


def test_one_way_out_is_enough():
    ways = (Event(what="finished"), Event(what="played", count=4))
    parts = (Part(id="forced", kind="forced", until=ways), Part(id="open", kind="open", after="forced"))
    assert found(*RALLY, *parts) == []


def test_in_and_out_at_once_never_comes():
    where = (In(area="right half", judged="bounce"), In(area="right half", judged="bounce", outside=True))
    parts = (
        Part(id="f", kind="forced", until=(Event(what="landed", where=where),)),
        Part(id="o", kind="open", after="f"),
    )
    assert found(*RALLY, *parts) == ["part-endless"]


def test_the_open_part_comes_last():
    order = (Part(id="open", kind="open"), Part(id="forced", kind="forced", shots=("reply",), after="open"))
    assert found(*RALLY, *order) == ["part-endless"]
    until = (Event(what="played", count=6),)
    assert found(*RALLY, order[0].changed(until=until), order[1]) == []


def test_a_later_ball_comes_when_something_has_happened():
    second = Shot(id="second", by="B", after="reply", stroke="racket feed")
    again = START.changed(id="again", shot="second", once=Event(what="reached", by=("A",), of=("run",)))
    assert found(*RALLY, run("A", "reply", 0.0, -12.0), second, again) == []
    never = again.changed(once=Event(what="finished"))
    assert found(*RALLY, second, never) == ["start-never"]


@pytest.mark.parametrize(
    ("on", "finish", "expected"),
    [
        ({"what": "starts", "count": 10}, {"kind": "total", "starts": 10}, []),
        ({"what": "starts", "count": 11}, {"kind": "total", "starts": 10}, ["swap-never"]),
        ({"what": "score", "count": 8}, {"kind": "race", "to": 11}, []),
        ({"what": "minutes", "count": 9}, {"kind": "race", "to": 11, "minutes": 6}, ["swap-never"]),
        ({"what": "minutes", "count": 9}, {"kind": "race", "to": 5, "minutes": 6, "rounds": 2}, []),
        ({"what": "finished", "count": 2}, {"kind": "race", "to": 11}, []),
    ],
)
def test_a_swap_that_comes_too_late(on, finish, expected):
    swap = Swap(id="swap", on=(Event(**on),), moves={"A": "B", "B": "A"})
    assert found(*REST, WON, Finish(id="end", **finish), swap) == expected


def test_more_minutes_than_are_set_down():
    timed = END.changed(minutes=6, rounds=2)
    assert found(*REST, WON, timed, minutes=12) == []
    assert found(*REST, WON, timed, minutes=10) == ["too-long"]
