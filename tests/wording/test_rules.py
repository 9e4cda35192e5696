"""Rules in words: who, when, what, what it costs, who calls. Typical of the trade; common practice, no source."""

import pytest
from wording.making import DOUBLES, FEED, REPLY, SINGLES, ZONE, area, texts, told

from designer.drill.base import Place
from designer.drill.drill import House
from designer.drill.items import Line
from designer.drill.rules import Part, Points, Rule, Start, UseStroke
from designer.wording.rules import rules

LOSE = {"then": "lose the point"}
REPLAY = {"then": "replay"}
HELD = Part(id="held", kind="forced", shots=("reply",), until=({"what": "played", "of": ("reply",)},))
FREE = Part(id="free", after="held", kind="open")
INTO = REPLY.changed(to=Place(on="zone"))
IN_ZONE = {"area": "zone", "judged": "bounce", "line": "in"}


def keep(*where, **values):
    return {"do": "keep", "where": where, **values}


def rule(must, **values):
    return Rule(id="r", **({"breach": LOSE} | values), must=must)


def sentence_of(made, *records, **values):
    found = [one for one in rules(told(*SINGLES, *records, made, **values)) if one.key == "rule:r"]
    assert len(found) == 1
    assert found[0].about[0] == "r"
    return found[0].text


def test_a_target_that_the_step_has_said_is_only_missed_here():
    made = rule(keep(IN_ZONE), who=("A",), parts=("held",), breach={"then": "opens"})
    said = sentence_of(made, FEED, INTO, ZONE, HELD, FREE)
    assert said == "Ball 2 in court but outside the reply zone: the point is on."


def test_a_target_and_a_miss_that_cost_the_same_are_one_sentence():
    held = HELD.changed(failed=LOSE)
    said = sentence_of(rule(keep(IN_ZONE), of=("reply",)), FEED, INTO, ZONE, held, FREE)
    assert said == "Ball 2 outside the reply zone, in the net or out: point to B."


def test_a_direction_until_the_point_opens():
    made = rule(keep({"area": "right half", "judged": "bounce", "line": "in"}), who=("B",), parts=("held",))
    held = HELD.changed(until=({"what": "played", "count": 4},))
    assert sentence_of(made, FEED, REPLY, held, FREE) == (
        "Until open, every ball of B’s lands in A’s right half. If not: point to A."
    )


def test_feet_behind_nothing():
    chalk = Line(kind="line", id="chalk", corners=((-4.0, -12.8), (4.0, -12.8)), marked="chalk")
    made = rule(
        keep({"area": "chalk", "side": "in front of", "judged": "both feet", "line": "out"}, time="all the time"),
        who=("A",),
        called_by=("doer", "other"),
    )
    assert sentence_of(made, chalk) == (
        "A keeps both feet in front of the chalk line; on the line counts as behind it. If not: point to B. "
        "A calls A’s feet; B may ask."
    )


def test_a_foot_in_a_strip_that_nobody_may_enter():
    strip = area("strip", "keep-off strip", (-5.0, -1.8), (5.0, 0.0), both_ends=True)
    made = rule(keep({"area": "strip", "judged": "one foot", "line": "in"}), never=True)
    assert sentence_of(made, strip) == "A foot on or in the keep-off strip: point lost."


@pytest.mark.parametrize(
    ("must", "values", "said"),
    [
        ({"do": "use stroke", "strokes": ("lob",)}, {"who": ("B",), "never": True}, "A lob by B: point to A."),
        ({"do": "use stroke", "wing": "forehand"}, {}, "Forehands only. If not: point lost."),
        ({"do": "bounces", "least": 1}, {}, "A volley: point lost."),
        ({"do": "bounces", "most": 0}, {}, "Every ball is volleyed. If not: point lost."),
        (
            {"do": "bounces", "least": 1, "most": 2},
            {},
            "Every ball is hit after one or two bounces. If not: point lost.",
        ),
        ({"do": "bounces", "rising": True}, {"who": ("A",)}, "A hits every ball on the rise. If not: point to B."),
        (
            {"do": "aim", "direction": "same line back"},
            {},
            "Every ball goes back on the line it came on. If not: point lost.",
        ),
        ({"do": "aim", "direction": "at a body"}, {"never": True}, "A hard hit at a body: point lost."),
        (
            {"do": "height", "at": "highest", "most": "raised racket"},
            {},
            "A ball higher than a raised racket: point lost.",
        ),
        (
            {"do": "height", "at": "net", "least": 1.5},
            {},
            "Every ball crosses the net no lower than 1.5 m. If not: point lost.",
        ),
    ],
)
def test_each_demand_has_its_words(must, values, said):
    assert sentence_of(rule(must, **values)) == said


def test_where_the_answer_to_one_bounce_lands():
    side = area("side", "eight-racket side", (-1.3716, -11.8872), (4.1148, -6.4008))
    where = {"area": "side", "judged": "bounce", "line": "out"}
    made = rule(keep({"area": "right half", "judged": "bounce"}), who=("A",), when=(where,))
    after = "After a bounce in the eight-racket side, "
    assert sentence_of(made, side) == f"{after}A’s next ball lands in B’s right half. If not: point to B."
    assert sentence_of(made.changed(who=()), side).startswith(f"{after}the next ball lands in the right half.")


def test_a_stroke_for_a_ball_that_bounced_somewhere():
    side = area("side", "eight-racket side", (-1.3716, -11.8872), (4.1148, -6.4008))
    where = {"area": "side", "judged": "bounce", "line": "out"}
    made = rule({"do": "use stroke", "wing": "forehand"}, who=("A",), when=(where,))
    assert sentence_of(made, side) == "After a bounce in the eight-racket side, A plays a forehand. If not: point to B."


def test_what_two_opponents_must_alike_is_said_once():
    near = area("near-side", "strong side", (0.0, -11.8872), (4.1148, -6.4008))
    far = area("far-side", "strong side", (-4.1148, 6.4008), (0.0, 11.8872))
    must = {"do": "use stroke", "wing": "forehand"}
    pair = [
        Rule(
            id=id,
            who=(who,),
            when=({"area": side, "judged": "bounce", "line": "in"},),
            breach=LOSE,
            must=must,
            note=note,
        )
        for id, who, side, note in (
            ("r", "A", "near-side", "A two-handed one counts."),
            ("s", "B", "far-side", "A two-handed one counts."),
        )
    ]
    found = [one for one in rules(told(*SINGLES, near, far, *pair)) if one.key.startswith("rule:")]
    assert texts(found) == [
        "After a bounce in your own strong side, forehand only. If not: point lost. A two-handed one counts."
    ]
    assert {"r", "s"} <= set(found[0].about)


def test_only_the_balls_of_a_part_that_counts_them():
    held = HELD.changed(until=({"what": "played", "by": ("A",), "count": 2},))
    made = rule(keep({"area": "right half", "judged": "bounce", "line": "in"}), who=("A",), parts=("held",))
    assert (
        sentence_of(made, FEED, REPLY, held, FREE) == "A’s first two balls land in B’s right half. If not: point to B."
    )


def test_the_next_hit_after_a_pass_and_not_after_a_lob():
    low = REPLY.changed(id="low", by="B", after="reply", label="pass")
    high = REPLY.changed(id="high", by="B", after="reply", stroke="lob")
    line = {"area": "the service line", "side": "in front of", "judged": "one foot", "line": "in"}
    made = rule(keep(line, time="at the next hit"), who=("A",), when=({"what": "played", "of": ("low",)},))
    assert sentence_of(made, FEED, REPLY, low, high) == (
        "After a pass (not a lob), A’s next hit: a foot on or inside the service line. If not: point to B."
    )


def test_in_doubles_the_point_goes_to_the_other_pair():
    made = rule({"do": "use stroke"}, who=("B", "D"), never=True, when=({"what": "played", "of": ("feed",)},), of=())
    found = [one.text for one in rules(told(*DOUBLES, REPLY.changed(id="feed", after=None), made, jobs="ABCD"))]
    assert "B or D touches ball 1: point to the other pair." in found


def test_a_touch_of_the_feed_and_of_later_balls_are_two_things():
    feed = Rule(
        id="feed",
        who=("D",),
        never=True,
        must=UseStroke(do="use stroke"),
        breach={"then": "replay"},
        when=({"what": "played", "of": ("feed",)},),
    )
    later = Rule(id="later", who=("D",), never=True, must=UseStroke(do="use stroke"), breach={"then": "lose the point"})
    balls = (FEED, REPLY, Start(id="start", shot="feed", by=("B",)))
    found = texts(rules(told(*DOUBLES, *balls, feed, later, jobs="ABCD")))
    assert "D touches a ball after the feed: point to the other pair." in found
    assert "D touches the ball: point to the other pair." in texts(rules(told(*DOUBLES, *balls, later, jobs="ABCD")))


def test_an_edge_between_two_areas_belongs_to_one_of_them_in_doubt_too():
    wide = area("wide", "wide part", (-4.1148, 0.0), (-2.0574, 6.4008))
    centre = area("centre", "centre part", (-2.0574, 0.0), (0.0, 6.4008))
    on = [
        {"what": "landed", "where": ({"area": id, "judged": "bounce", "line": answer},), "in_doubt": answer}
        for id, answer in (("wide", "out"), ("centre", "in"))
    ]
    paid = Points(id="p", on=tuple(on), gives={"then": "points", "value": 1})
    found = texts(rules(told(*SINGLES, wide, centre, FEED, REPLY, paid)))
    (edge,) = found
    assert edge.endswith(
        "a ball between the wide part and the centre part, or a doubtful one, counts as the centre part."
    )


def test_a_demand_that_is_not_known_is_said_as_such():
    assert sentence_of(rule({"do": "juggle"}, breach=None)) == "A rule this program does not know: “juggle”."


def test_a_rule_without_a_cost_says_only_what_is_not_allowed():
    assert sentence_of(rule({"do": "bounces", "least": 1}, breach=None)) == "Not allowed: a volley."


def test_a_caller_and_a_doubt_that_the_house_has_answered_are_not_repeated():
    answered = House(called_by=("doer",), in_doubt="replay")
    made = rule({"do": "bounces", "least": 1}, called_by=("doer",), in_doubt="replay")
    assert sentence_of(made, house=answered) == "A volley: point lost."
    assert sentence_of(made) == "A volley: point lost. The hitter calls."
    assert sentence_of(made.changed(in_doubt="out")).endswith("In doubt: out.")


def test_one_answer_for_every_edge_is_said_once():
    second = area("second", "short zone", (-4.0, -6.0), (4.0, -3.0))
    made = rule(keep(IN_ZONE), who=("A",))
    other = Rule(id="s", who=("B",), breach=LOSE, must=keep({"area": "second", "judged": "bounce", "line": "in"}))
    found = rules(told(*SINGLES, ZONE, second, made, other))
    assert found[0].text == "The first bounce decides; a ball on any edge is in."
    player = rules(told(*SINGLES, ZONE, made, reader="player"))
    assert player[0].text == "Edges are in."
    # Where one of two areas has the edge, it is the other's loss.
    loses = Rule(id="t", who=("B",), breach=LOSE, must=keep({"area": "second", "judged": "bounce", "line": "out"}))
    assert rules(told(*SINGLES, ZONE, second, made, loses))[0].text == (
        "The first bounce decides; a ball on an edge counts for the reply zone."
    )


def test_a_miss_that_costs_what_the_rule_costs_is_said_with_it():
    part = Part(id="held", kind="forced", until=({"what": "played", "count": 4},), failed=REPLAY)
    opened = Part(id="open", after="held", kind="open")
    once = Rule(id="r", parts=("held",), breach=REPLAY, must={"do": "bounces", "least": 1, "most": 1})
    found = rules(told(*SINGLES, once, part, opened))
    assert texts(found) == ["Until open, every ball is hit after one bounce. If not, or a miss: replay."]
    assert "held" in found[0].about
    dear = once.changed(breach=LOSE)
    assert texts(rules(told(*SINGLES, dear, part, opened))) == [
        "Until open, every ball is hit after one bounce. If not: point lost.",
        "A miss before it opens: replay.",
    ]


def test_what_pays_nothing_is_a_rule():
    line = Line(kind="line", id="depth", name="depth line", corners=((-4.0, 8.0), (4.0, 8.0)), marked="discs")
    jump = Points(id="jump", on=({"what": "struck", "where": ({"area": "depth"},)},), gives={"then": "replay"})
    assert texts(rules(told(*SINGLES, line, jump))) == ["A ball strikes the depth line: replay."]


def test_while_two_of_four_play_the_others_are_told_from_the_two():
    part = Part(id="held", kind="forced", shots=("feed", "reply"), until=({"what": "played", "count": 4},))
    opened = Part(id="open", after="held", kind="open")
    hands = rule({"do": "use stroke"}, who=("others",), never=True, parts=("held",), breach=REPLAY)
    assert texts(rules(told(*DOUBLES, FEED, REPLY, part, opened, hands, jobs="ABCD"))) == [
        "Until open, anyone but the two hitting touches the ball: replay."
    ]


def test_a_ball_out_of_the_air_is_neither_of_two_places_in_the_words_for_them():
    line = Line(kind="line", id="depth", name="depth line", corners=((-4.0, 8.0), (4.0, 8.0)), marked="discs")
    past = {"area": "depth", "side": "behind", "judged": "bounce", "line": "in", "volleyed": "out"}
    short = {"area": "depth", "side": "in front of", "judged": "bounce", "line": "out", "volleyed": "out"}
    paid = Points(id="p", on=({"what": "landed", "where": (past,)},), gives={"then": "points", "value": 1})
    lost = Points(id="q", on=({"what": "landed", "where": (short,)},), gives={"then": "points", "value": -1})
    assert rules(told(*SINGLES, line, paid, lost))[0].text.endswith(
        "A volley is neither past the line nor short of it."
    )


def test_a_miss_is_anybody_s_and_goes_with_no_rule_for_one_of_two():
    part = Part(id="held", kind="cooperative", failed=REPLAY)
    own = [
        Rule(id=f"r-{who.lower()}", who=(who,), breach=REPLAY, must=keep({"area": side, "judged": "bounce"}))
        for who, side in (("A", "left half"), ("B", "service boxes"))
    ]
    assert texts(rules(told(*SINGLES, part, *own)))[-1] == "A miss: replay."
