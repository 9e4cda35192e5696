"""A shot goes with all that is said of it alone, and nothing else does."""

from designer.drill.base import place
from designer.drill.conditions import Event, In, Outcome
from designer.drill.movement import Run, Shot
from designer.drill.rules import Bounces, Part, Points, Rule, Start, Swap
from designer.drill.setting import EMPTY
from designer.play.pruning import without_shots

SHOTS = (
    Shot(id="feed", by="B", stroke="racket feed"),
    Shot(id="lob", by="A", after="feed"),
    Shot(id="pass", by="A", after="feed"),
    Shot(id="smash", by="B", after="lob"),
)
PAY = Outcome(then="points", value=1)


def left(*records, ids=("lob",)):
    return without_shots(EMPTY.having(*SHOTS, *records), ids)


def test_what_comes_after_goes_too():
    run = Run(id="run", by="B", during="smash", to=place(0, 3))
    again = Start(id="again", shot="smash")
    after = left(run, again)
    assert sorted(after.shots) == ["feed", "pass"]
    assert not after.runs
    assert not after.starts


def test_what_speaks_of_other_shots_too_stays_and_names_them_alone():
    part = Part(id="part", kind="forced", shots=("lob", "pass"))
    rule = Rule(id="rule", of=("lob", "pass"), must=Bounces(do="bounces", most=1))
    points = Points(id="points", on=(Event(what="won", of=("lob",)), Event(what="won")), gives=PAY)
    after = left(part, rule, points)
    assert (after.parts["part"].shots, after.rules["rule"].of) == (("pass",), ("pass",))
    assert after.points["points"].on == (Event(what="won"),)


def test_what_speaks_of_it_alone_goes():
    rule = Rule(id="rule", of=("lob",), must=Bounces(do="bounces", most=1))
    when = Rule(id="when", when=(Event(what="played", of=("lob",)),), must=Bounces(do="bounces", most=1))
    both = Points(id="both", on=(Event(what="won", and_=(Event(what="landed", of=("smash",)),)),), gives=PAY)
    swap = Swap(id="swap", on=(Event(what="played", of=("lob",)),))
    after = left(rule, when, both, swap)
    assert not any((after.rules, after.points, after.swaps))


def test_a_rule_that_waits_for_a_place_is_left_alone():
    rule = Rule(id="rule", when=(In(area="right half", judged="bounce"),), must=Bounces(do="bounces", most=1))
    assert left(rule).rules["rule"] == rule


def test_a_part_that_could_then_not_end_keeps_the_shot():
    part = Part(id="part", kind="forced", until=(Event(what="played", of=("lob",)),))
    assert left(part) is None
