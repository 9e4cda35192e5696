"""What a setting changes over the one below it."""

import pytest
from wording.making import FEED, REPLY, SINGLES, ZONE, area, drill_of, texts, with_variation

from designer.drill.base import place
from designer.drill.drill import Changes, Progression
from designer.drill.items import Disc, Line
from designer.drill.movement import Shot
from designer.drill.rules import Finish, Part, Points, Rule, Start
from designer.drill.setting import At
from designer.wording.card import card_words
from designer.wording.changes import SHORT, changes_in_words, short_changes

V = At("p", "v")
HOLD = Part(id="hold", kind="forced", until=({"what": "played", "count": 4},))
OPEN = Part(id="open", kind="open", after="hold")
WON = Points(id="rally", on=({"what": "won"},), gives={"then": "points", "value": 1})
END = Finish(id="end", kind="race", to=15)
DEPTH = Line(
    kind="line", id="depth", name="depth line", corners=((-4.1148, -8.2296), (4.1148, -8.2296)), marked="discs"
)
START = Start(id="s", shot="feed", by=("B",), bad={"then": "replay"})
BASE = (*SINGLES, ZONE, DEPTH, FEED, REPLY, HOLD, OPEN, WON, END, START)


def changed(*below, **changes):
    return texts(changes_in_words(with_variation(drill_of(*BASE, *below), **changes), V))


@pytest.mark.parametrize(
    ("changes", "words"),
    [
        ({"finish": END.changed(to=11)}, "First to 11, not 15."),
        (
            {"parts": (HOLD.changed(until=({"what": "played", "count": 6},)),)},
            "The point opens after six hits (the feed does not count).",
        ),
        (
            {"items": (DEPTH.changed(corners=((-4.1148, -9.144), (4.1148, -9.144))),)},
            "Depth line half-way between the service line and the baseline.",
        ),
        ({"spots": (SINGLES[0].changed(place=place(0.0, -11.8872)),)}, "A starts 1 stride nearer the net."),
        ({"shots": (REPLY.changed(pace="half"),)}, "A plays at half pace."),
        ({"ball": "foam"}, "Foam ball."),
        ({"points": (WON.changed(gives={"then": "points", "value": 2}),)}, "Rally won: +2 in place of +1."),
        (
            {"drop": ("hold",), "parts": (OPEN.changed(after=None),)},
            "The point is open from the first hit after the feed.",
        ),
    ],
)
def test_each_change_has_its_words(changes, words):
    assert changed(**changes) == [words]


def test_an_area_by_the_edge_that_moved():
    narrow = area("zone", "reply zone", (-2.0574, 6.4008), (0.0, 11.8872), care="exact", marked="painted")
    deep = area("zone", "reply zone", (-4.1148, 8.2296), (0.0, 11.8872), care="exact", marked="painted")
    assert changed(items=(narrow,)) == ["Reply zone 3 rackets wide."]
    assert changed(items=(deep,)) == ["Reply zone front edge 2 strides behind the service line."]


def test_a_tick_is_counted_from_the_mark_it_was_laid_out_from():
    tick = Line(kind="line", id="t", name="tick", corners=((0.6858, -11.8872), (0.6858, -12.3444)), marked="chalk")
    out = tick.changed(corners=((2.0574, -11.8872), (2.0574, -12.3444)))
    assert changed(tick, items=(out,)) == ["Tick 3 rackets right of the centre mark."]


def test_what_counts_is_not_said_again_as_a_rule_of_the_first_progression():
    half = {"area": "right half", "judged": "bounce", "line": "in"}
    count = Points(id="count", on=({"what": "landed", "by": ("A",), "where": (half,)},), gives={"then": "points"})
    again = {"then": "count to zero"}
    keep = Rule(id="keep", who=("A",), breach=again, must={"do": "keep", "where": (half,)})
    made = drill_of(*SINGLES, FEED, REPLY, END, START, count, keep)
    assert " ".join(texts(changes_in_words(made, At("p")))).count("right half") == 1
    # Of another player, or of another place, it is more than what counts.
    other = drill_of(*SINGLES, FEED, REPLY, END, START, count, keep.changed(who=("B",)))
    assert " ".join(texts(changes_in_words(other, At("p")))).count("right half") == 2


def test_a_new_rule_is_said_whole_and_a_dropped_one_is_named():
    volley = Rule(id="r", breach={"then": "lose the point"}, must={"do": "bounces", "least": 1})
    assert changed(rules=(volley,)) == ["A volley: point lost."]
    assert changed(volley, drop=("r",)) == ["Allowed again: a volley."]


def test_a_serve_in_place_of_the_feed():
    serve = FEED.changed(stroke="second serve", to=place(2.0, -5.0))
    found = changed(
        shots=(serve,), starts=(START.changed(courts="deuce", serves={"B": 1}, bad={"then": "lose the point"}),)
    )
    assert found[0] == "B hits one second serve to the deuce court; a fault: point to A."


def test_like_things_that_move_alike_are_said_once():
    discs = [Disc(kind="disc", id=f"d-{n}", place=place(x, 9.0)) for n, x in enumerate((-3.0, 0.0, 3.0))]
    moved = tuple(disc.changed(place=place(disc.place.at[0], 9.9144)) for disc in discs)
    assert changed(*discs, items=moved) == ["Discs 1 stride further from the net."]


def test_a_tab_says_what_says_most_in_few_characters():
    made = with_variation(
        drill_of(*BASE), finish=END.changed(to=11), parts=(HOLD.changed(until=({"what": "played", "count": 6},)),)
    )
    assert short_changes(made, V) == "opens after six hits, first to 11, not 15"
    assert len(short_changes(made, V)) <= SHORT


def test_progressions_are_told_by_what_they_change_and_this_one_by_its_name():
    made = drill_of(*BASE)
    (first,) = made.progressions
    second = Progression(id="q", name="Sooner", changes=Changes(finish=END.changed(to=7)))
    made = made.changed(progressions=(first, second))
    found = card_words(made, At("q"), "coach").section("progressions").sentences
    assert texts(found) == ["Points. First to 15. Counted: rally won.", "Sooner. This card."]
    assert [sentence.parts[0].id for sentence in found] == ["p", "q"]
    other = card_words(made, At("p"), "coach").section("progressions").sentences
    assert texts(other) == ["Points. This card.", "Sooner. First to 7, not 15."]


def test_easier_and_harder_stand_on_the_coach_card_only():
    made = with_variation(drill_of(*BASE), finish=END.changed(to=11))
    assert texts(card_words(made, At("p"), "coach").section("easier").sentences) == ["First to 11, not 15."]
    assert card_words(made, At("p"), "player").section("easier") is None


def test_a_drawn_ball_that_is_left_out_is_no_ban():
    lob = Shot(id="lob", by="B", after="reply", stroke="lob", to=place(0.0, -10.0))
    assert changed(lob, drop=("lob",)) == []


def test_a_rule_that_no_progression_has_stated_is_not_said_to_be_none_any_more():
    above = Progression(id="p2", name="Points", changes=Changes(drop=("rule-0", "rule-1", "rule-2", "rule-3")))
    third = Progression(id="p3", name="Match")
    keep = {"do": "keep", "where": ({"area": "right half", "judged": "bounce"},), "time": "at the hit"}
    spoken = [Rule(id=f"rule-{n}", who=("A",), from_hit=n + 2, must=keep) for n in range(4)]
    drill = drill_of(*SINGLES, FEED, REPLY, WON, END, START, *spoken)
    drill = drill.changed(progressions=(*drill.progressions, above, third))
    first, second, _ = card_words(drill, At("p3"), "coach").section("progressions").sentences
    # The first has room for some of its four rules only; what it leaves out is not taken back by the second.
    said = [found for found in ("After ball 2", "third hit", "fourth hit", "fifth hit") if found in first.text]
    gone = second.text.lower().count("no longer a rule")
    assert 0 < gone <= len(said) < 4


def test_what_both_opponents_must_do_stands_once_in_the_first_progression():
    asked = [
        Rule(id=f"r-{who.lower()}", who=(who,), breach={"then": "replay"}, must={"do": "bounces", "most": 1})
        for who in "AB"
    ]
    drill = drill_of(*SINGLES, FEED, REPLY, WON, END, START, *asked)
    drill = drill.changed(progressions=(*drill.progressions, Progression(id="p2", name="Match")))
    first, _ = card_words(drill, At("p2"), "coach").section("progressions").sentences
    assert first.text.count("second bounce") == 1
