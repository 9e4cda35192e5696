"""What a player may not do: every demand of a rule told from its breach. Rules as coaches use them; common practice, no source."""

import pytest
from wording.making import DOUBLES, FEED, HERE, REPLY, SINGLES, ZONE, drill_of, texts, told

from designer.drill.base import place
from designer.drill.items import Line
from designer.drill.movement import Run, Shot
from designer.drill.rules import Part, Points, Rule, Start
from designer.wording.bounds import bounds, no_bounds, other_rules
from designer.wording.card import card_words

LOST = {"then": "lose the point"}
PAYS = {"then": "points", "value": 1}
CHALK = Line(kind="line", id="chalk", marked="chalk", corners=((-4.0, -13.0), (4.0, -13.0)), name="the chalk line")
SERVICE = {"area": "the service line", "side": "in front of", "line": "in"}


def said(must, *records, who=(), **values):
    rule = Rule(id="r", who=who, must=must, **{"breach": LOST, **values})
    return texts(bounds(told(*SINGLES, FEED, REPLY, *records, rule, reader="player")))


@pytest.mark.parametrize(
    ("must", "broken"),
    [
        ({"do": "use stroke", "wing": "forehand"}, "Backhand by A"),
        ({"do": "use stroke", "strokes": ("slice", "lob")}, "Anything but a slice or lob by A"),
        ({"do": "aim", "direction": "cross-court"}, "A’s ball that does not go cross-court"),
        (
            {"do": "keep", "where": ({"area": "right half", "judged": "bounce"},)},
            "A’s ball outside B’s right half",
        ),
        ({"do": "keep", "where": ({"area": "right half", "judged": "net"},)}, "over the net outside B’s right half"),
        ({"do": "height", "at": "net", "least": 1.5}, "A’s ball that crosses the net lower than 1.5 m"),
        ({"do": "height", "at": "contact", "most": "net"}, "A’s ball hit higher than the net"),
        ({"do": "bounces", "most": 0}, "A lets the ball bounce"),
        ({"do": "bounces", "least": 1}, "Volley by A"),
        ({"do": "bounces", "least": 1, "most": 1}, "A volleys or lets it bounce twice"),
        ({"do": "bounces", "rising": True}, "A hits after the top of the bounce"),
    ],
    ids=lambda each: each if isinstance(each, str) else None,
)
def test_each_demand_is_told_from_its_breach_with_what_it_costs(must, broken):
    (text,) = said(must, who=("A",))
    assert broken in text
    assert text.endswith(": point to B.")


def test_one_foot_is_enough_where_both_are_asked_for():
    keep = {"do": "keep", "where": ({"area": "chalk", "side": "in front of", "judged": "both feet", "line": "out"},)}
    assert said({**keep, "time": "all the time"}, CHALK, who=("A",))[0].startswith(
        "A’s foot on or behind the chalk line"
    )
    one = {"do": "keep", "where": ({**SERVICE, "judged": "one foot"},), "time": "at the next hit"}
    after = {"when": ({"what": "played", "of": ("reply",)},)}
    assert said(one, who=("B",), **after) == ["B behind the service line when answering ball 2: point to A."]


def test_few_balls_before_the_point_opens_are_named_so_that_the_feed_is_none_of_them():
    answer = Shot(id="answer", by="B", after="reply")
    parts = (
        Part(id="held", kind="forced", until=({"what": "played", "count": 2},), failed={"then": "replay"}),
        Part(id="free", after="held", kind="open"),
    )
    half = {"do": "keep", "where": ({"area": "right half", "judged": "bounce"},)}
    assert said(half, *parts, answer, parts=("held",), breach={"then": "replay"}) == [
        "Ball 2 or 3 outside the right half, or a miss: replay."
    ]
    touch = {"do": "use stroke"}
    assert said(touch, *parts, answer, parts=("held",), who=("B",), never=True) == ["B plays ball 2 or 3: point to A."]
    # A alone does not hit both, so it stays with when.
    assert said(half, *parts, answer, parts=("held",), who=("A",)) == [
        "Before ball 4, A’s ball outside B’s right half: point to B."
    ]


def test_three_things_of_one_time_stand_each_below_it():
    parts = (
        Part(id="held", kind="forced", until=({"what": "played", "count": 4},), failed={"then": "no score"}),
        Part(id="free", after="held", kind="open"),
    )
    alike = {"parts": ("held",), "breach": {"then": "no score"}}
    wing = Rule(id="w", must={"do": "use stroke", "wing": "forehand"}, **alike)
    assert said({"do": "bounces", "most": 0}, *parts, wing, **alike) == [
        "In the first four hits, no score:",
        "Backhand.",
        "Bounce.",
        "Miss.",
    ]


def test_where_a_target_pays_a_miss_is_not_taken_for_a_ball_beside_it():
    together = Part(id="all", kind="cooperative", failed={"then": "no score"})
    paid = Points(id="p", on=({"what": "landed", "where": ({"area": "zone", "judged": "bounce"},)},), gives=PAYS)
    bounce = {"do": "bounces", "least": 1, "most": 1}
    kept = {"parts": ("all",), "breach": {"then": "no score"}}
    assert said(bounce, together, **kept) == ["Volley or a second bounce, or a miss: no score."]
    assert said(bounce, together, ZONE, paid, **kept) == [
        "Volley, a second bounce, or a ball in the net or out: no score."
    ]


def test_when_it_is_not_allowed_stands_with_it():
    held = (
        Part(id="held", kind="forced", shots=("reply",), until=({"what": "played", "count": 4},)),
        Part(id="free", after="held", kind="open"),
    )
    assert said({"do": "bounces", "least": 1}, *held, parts=("held",)) == [
        "In the first four hits, a volley: point lost."
    ]
    opens = {"what": "landed", "of": ("reply",), "where": ({"area": "left half", "judged": "bounce"},)}
    until = (held[0].changed(until=(opens,)), held[1])
    assert said({"do": "bounces", "least": 1}, *until, parts=("held",)) == ["Until open, a volley: point lost."]
    half = ({"area": "right half", "judged": "bounce"},)
    assert said({"do": "use stroke", "wing": "forehand"}, who=("A",), when=half) == [
        "Backhand by A after a bounce in A’s right half: point to B."
    ]


def test_a_cost_of_three_breaches_and_more_is_said_once_over_them():
    def held(id, breach=LOST, **must):
        return Rule(id=id, must=must, breach=breach)

    volley, late = held("v", do="bounces", least=1), held("l", do="bounces", most=1)
    rules = (
        held("f", do="use stroke", wing="forehand"),
        held("h", breach={"then": "replay"}, do="height", at="net", most="raised racket"),
    )
    kept = texts(bounds(told(*SINGLES, volley, rules[1], late, reader="player")))
    assert [text.partition(": ")[2] for text in kept] == ["point lost.", "replay.", "point lost."]
    made = bounds(told(*SINGLES, volley, rules[1], late, rules[0], reader="player"))
    assert texts(made)[0].endswith(": replay."), "what costs something else is not below the head"
    assert texts(made)[1:] == ["Point lost:", "Volley.", "Second bounce.", "Backhand."]
    assert set(made[1].about) == {"v", "l", "f"}


@pytest.mark.parametrize("must", [{"do": "use stroke"}, {"do": "bounces"}, {"do": "height", "at": "net"}])
def test_a_leave_to_do_anything_is_not_forbidden(must):
    made = told(*SINGLES, FEED, REPLY, Rule(id="r", who=("A",), must=must, breach=LOST), reader="player")
    assert texts(bounds(made)) == []
    assert any(found.key == "rule:r" and found.text for found in other_rules(made))


def test_a_breach_that_only_opens_the_point_forbids_nothing():
    keep = {"do": "keep", "where": ({"area": "zone", "judged": "bounce"},)}
    rule = Rule(id="r", who=("A",), of=("reply",), must=keep, breach={"then": "opens"})
    made = told(*SINGLES, ZONE, FEED, REPLY, rule, reader="player")
    assert texts(bounds(made)) == []
    assert any("the point is on" in text for text in texts(other_rules(made)))


def test_a_ball_fed_too_early_is_not_allowed():
    back = Run(id="back", by="A", during="reply", to=place(0.0, -12.0), purpose="recover")
    second = Shot(id="second", by="B", after="reply", stroke="racket feed", to=place(0.0, -9.0))
    once = {"what": "reached", "by": ("A",), "of": ("back",)}
    good = ({"area": "past the service line", "judged": "bounce"},)
    start = Start(id="again", shot="second", by=("B",), once=once, good=good, bad={"then": "replay"})
    made = told(*SINGLES, FEED, REPLY, back, second, start, reader="player")
    assert texts(bounds(made)) == ["B hits ball 3 before A is back: B feeds again."]
    assert "Ball 3 too early, short or out: B feeds again." in texts(other_rules(made))


def test_who_calls_and_what_is_noted_is_fine_print_behind_what_it_is_about():
    half = ({"area": "right half", "judged": "bounce"},)
    rule = Rule(
        id="r", when=half, must={"do": "use stroke", "wing": "forehand"}, breach=LOST, called_by=("doer",), note="Once."
    )
    made = told(*SINGLES, FEED, REPLY, rule, reader="player")
    assert texts(bounds(made)) == ["Backhand after a bounce in the right half: point lost."]
    assert texts(other_rules(made))[-1] == "Backhand: the hitter calls. Once."


def test_a_point_without_bounds_says_so_where_one_is_played():
    assert texts(no_bounds(told(*SINGLES, Part(id="free", kind="open"), reader="player"))) == [
        "Only what tennis itself forbids."
    ]
    assert no_bounds(told(*SINGLES, Part(id="held", kind="cooperative"), reader="player")) == ()
    # While it is open what breaks the rule, nothing is claimed.
    asked = card_words(drill_of(*SINGLES, Part(id="free", kind="open")), HERE, "player")
    assert any(found.missing for found in asked.section("rules").sentences)
    assert asked.section("bounds") is None


def test_nobody_of_four_is_left_out():
    rule = Rule(id="r", who=("A", "C"), must={"do": "bounces", "least": 1}, breach={"then": "replay"})
    assert texts(bounds(told(*DOUBLES, rule, jobs="ABCD", reader="player"))) == ["Volley by A or C: replay."]
