"""Rules that cannot both be kept; what may look like it and can be kept is left alone. More cases: ``tests/faults``."""

import pytest
from review.situations import RALLY, drill, keys, only, told

from designer.drill.conditions import Event, In, Outcome
from designer.drill.items import Area, Rectangle
from designer.drill.rules import Aim, Bounces, Height, Keep, Part, Rule, UseStroke
from designer.review.conflicts import conflict_checks

LOSE = Outcome(then="lose the point")
FOREHAND = UseStroke(do="use stroke", wing="forehand")
BACKHAND = UseStroke(do="use stroke", wing="backhand")
VOLLEY = UseStroke(do="use stroke", strokes=("volley",))


def area(id, x0, x1, **values):
    return Area(kind="area", id=id, shape=Rectangle(form="rectangle", corners=((x0, 7.0), (x1, 11.0))), **values)


AREAS = (
    area("left", 0.0, 4.0),
    area("right", -4.0, 0.0),
    area("wide", -3.0, 3.0),
    area("both", 0.0, 4.0, both_ends=True),
)


def keep(area, **values):
    return Keep(do="keep", where=(In(area=area, **({"judged": "bounce", "line": "in"} | values)),))


def rule(id, must, **values):
    return Rule(id=id, must=must, breach=LOSE, **values)


def found(*rules):
    parts = (
        Part(id="forced", kind="forced", shots=("reply",), failed=LOSE),
        Part(id="open", kind="open", after="forced"),
    )
    return list(conflict_checks(told(*RALLY, *AREAS, *parts, *rules)))


@pytest.mark.parametrize(
    ("one", "other"),
    [
        (FOREHAND, BACKHAND),
        (VOLLEY, UseStroke(do="use stroke", strokes=("drive", "slice"))),
        (VOLLEY, Bounces(do="bounces", least=1)),
        (Bounces(do="bounces", most=0), Bounces(do="bounces", least=1)),
        (Height(do="height", at="net", least=2.0), Height(do="height", at="net", most=1.5)),
        (Aim(do="aim", direction="new line"), Aim(do="aim", direction="same line back")),
        (keep("left"), keep("right")),
        (keep("left"), keep("left", outside=True)),
        (keep("right back court"), keep("service boxes")),
    ],
)
def test_two_demands_that_nothing_meets(one, other):
    for pair in ((one, other), (other, one)):
        check = only(found(rule("one", pair[0]), rule("two", pair[1])), "contradiction")
        assert check.about == ("one", "two")
        assert check.weight == "error"


@pytest.mark.parametrize(
    ("one", "other"),
    [
        (FOREHAND, VOLLEY),  # a forehand volley
        (
            UseStroke(do="use stroke", strokes=("volley", "smash")),
            Bounces(do="bounces", least=1),
        ),  # a smash after a bounce
        (Bounces(do="bounces", most=2), Bounces(do="bounces", least=1)),
        (Height(do="height", at="net", least=2.0), Height(do="height", at="arrival", most=1.5)),
        (Height(do="height", at="contact", least=1.0), Height(do="height", at="contact", most="shoulder")),
        (Aim(do="aim", direction="new line"), Aim(do="aim", direction="cross-court")),
        (keep("left"), keep("wide")),
        (keep("left"), keep("right", judged="one foot")),  # the ball there, the foot here
        (keep("left"), keep("both")),  # it stands at both ends
        (keep("left"), keep("right half")),  # drawn at one end; the half is wherever the ball goes
        (keep("the service line", side="behind"), keep("the service line", side="in front of", judged="both feet")),
    ],
)
def test_two_demands_that_something_meets(one, other):
    assert found(rule("one", one), rule("two", other)) == []


def test_rules_for_other_people_hits_parts_and_moments_do_not_clash():
    assert found(rule("one", FOREHAND, who=("A",)), rule("two", BACKHAND, who=("B",))) == []
    assert found(rule("one", FOREHAND, to_hit=2), rule("two", BACKHAND, from_hit=3)) == []
    assert found(rule("one", FOREHAND, parts=("forced",)), rule("two", BACKHAND, parts=("open",))) == []
    assert found(rule("one", FOREHAND, of=("reply",)), rule("two", BACKHAND, of=("feed",))) == []
    here, there = (In(area="left", judged="bounce", line="in"),), (In(area="right", judged="bounce", line="in"),)
    assert found(rule("one", FOREHAND, when=here), rule("two", BACKHAND, when=there)) == []
    # What always holds clashes with what holds then.
    assert keys(found(rule("one", FOREHAND), rule("two", BACKHAND, when=here))) == ["contradiction"]


@pytest.mark.parametrize(
    ("forbids", "demands", "expected"),
    [
        (FOREHAND, FOREHAND, ["contradiction"]),
        (VOLLEY, Bounces(do="bounces", most=0), ["contradiction"]),
        (UseStroke(do="use stroke", strokes=("volley", "smash")), VOLLEY, ["contradiction"]),
        (VOLLEY, UseStroke(do="use stroke", strokes=("volley", "smash")), []),  # a smash is left
        (BACKHAND, FOREHAND, []),
        (VOLLEY, FOREHAND, []),
    ],
)
def test_what_is_forbidden_and_demanded(forbids, demands, expected):
    assert keys(found(rule("no", forbids, never=True), rule("yes", demands))) == expected


def test_two_things_may_be_forbidden():
    assert found(rule("one", FOREHAND, never=True), rule("two", VOLLEY, never=True)) == []


def test_a_rule_is_said_twice_whatever_its_note():
    again = rule("two", FOREHAND, note="Again.")
    assert keys(found(rule("one", FOREHAND), again)) == ["said-twice"]
    assert found(rule("one", FOREHAND), again.changed(when=(Event(what="won"),))) == []


def test_a_height_that_is_turned_round_stays_the_same_two_heights():
    check = only(found(rule("one", Height(do="height", at="net", least=2.0, most=1.0))), "reversed")

    whole = check.mend(drill(*RALLY, rule("one", Height(do="height", at="net", least=2.0, most=1.0))))
    must = whole.progressions[0].changes.rules[0].must
    assert (must.least, must.most) == (1.0, 2.0)
