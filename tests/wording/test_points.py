"""Values and what earns them; where it ends. Patterns of scoring as in use; common practice, no source."""

import pytest
from wording.making import DOUBLES, FEED, REPLY, SINGLES, ZONE, texts, told

from designer.drill.items import Line
from designer.drill.movement import Shot
from designer.drill.rules import Finish, Part, Points, Swap
from designer.wording.finishes import finish, finish_later
from designer.wording.points import points, points_later

WON = Points(id="rally", on=({"what": "won"},), gives={"then": "points", "value": 1})
SERVE = Shot(id="serve", by="B", stroke="second serve")
RETURN = Shot(id="return", by="A", after="serve")


def pays(value, *events, id="p", to=None, **values):
    gives = {"then": "points", "value": value} | ({} if to is None else {"to": to})
    return Points(id=id, on=events, gives=gives, **values)


def said(*records, **values):
    return [(one.lead.text, one.text) for one in points(told(*SINGLES, *records, **values))]


def test_the_plain_rally_comes_first():
    better = pays(2, {"what": "won", "strokes": ("volley",)}, beside="instead")
    assert said(better, WON) == [("+1", "Rally won."), ("+2", "Instead: rally won with a volley.")]


@pytest.mark.parametrize(
    ("event", "words"),
    [
        ({"what": "won", "by": ("B",)}, "B wins the rally."),
        ({"what": "won", "by": ("B",), "untouched": True}, "B wins with an untouched ball."),
        ({"what": "won", "by": ("B",), "untouched": True, "of": ("return",)}, "B wins with an untouched return."),
        (
            {
                "what": "won",
                "by": ("A",),
                "within": 1,
                "and": ({"what": "played", "by": ("A",), "strokes": ("volley", "smash")},),
            },
            "A wins with the first volley or smash.",
        ),
        (
            {
                "what": "won",
                "when": ({"area": "the baseline", "side": "in front of", "judged": "both feet", "line": "out"},),
            },
            "Rally won with both feet inside the baseline at the winner’s last hit.",
        ),
        (
            {
                "what": "won",
                "by": ("B",),
                "untouched": True,
                "within": 1,
                "and": ({"what": "landed", "by": ("A",), "where": ({"area": "left half", "judged": "bounce"},)},),
            },
            "B wins with the very next hit, untouched, after A’s ball in B’s left half.",
        ),
        (
            {
                "what": "won",
                "by": ("A",),
                "within": 2,
                "and": ({"what": "landed", "by": ("A",), "where": ({"area": "left half", "judged": "bounce"},)},),
            },
            "A wins with a ball in B’s left half or with A’s next hit after it, unreturned.",
        ),
        (
            {"what": "landed", "of": ("return",), "where": ({"area": "depth", "side": "behind", "judged": "bounce"},)},
            "The return past the depth line.",
        ),
        ({"what": "played", "where": ({"area": "zone", "judged": "bounce"},)}, "Each ball in the reply zone."),
        ({"what": "played"}, "Each hit."),
        ({"what": "caught", "by": ("B",)}, "B catches the ball."),
    ],
)
def test_each_way_to_earn_a_value(event, words):
    depth = Line(kind="line", id="depth", name="depth line", corners=((-4.0, 8.0), (4.0, 8.0)), marked="discs")
    assert said(SERVE, RETURN, depth, ZONE, pays(1, event)) == [("+1", words)]


def test_ways_of_one_value_stand_together():
    volley = pays(2, {"what": "won", "by": ("A",), "strokes": ("volley",)}, beside="instead")
    pass_ = volley.changed(id="q", on=({"what": "won", "by": ("B",), "untouched": True},))
    assert said(WON, volley, pass_)[1:] == [("+2", "Instead: A wins with a volley or B wins with an untouched ball.")]


def test_a_ball_that_must_end_the_rally_is_unreturned():
    ball = {"what": "landed", "of": ("reply",), "where": ({"area": "left half", "judged": "bounce"},)}
    event = {"what": "won", "by": ("A",), "within": 1, "and": (ball,)}
    assert said(FEED, REPLY, pays(2, event, beside="instead")) == [
        ("+2", "Instead: A wins with ball 2 unreturned in B’s left half.")
    ]
    deep = event | {"and": (ball | {"where": ({"area": "past the service line", "judged": "bounce"},)},)}
    assert said(FEED, REPLY, pays(2, event, deep, beside="instead"))[0][1].endswith(
        "A wins with ball 2 unreturned in B’s left half, or past B’s service line."
    )


def test_what_must_come_before_is_said_first_and_each_win_after_a_ball_of_its_own_alone():
    def won(served, ball):
        place = {"area": served, "judged": "bounce"}
        serve = {"what": "landed", "of": ("feed",), "where": (place,)}
        return {
            "what": "won",
            "by": ("A",),
            "within": 1,
            "and": (serve, {"what": "landed", "of": ("reply",), "where": ({"area": ball, "judged": "bounce"},)}),
        }

    first, second = won("right half", "left half"), won("left half", "right half")
    record = pays(2, first, beside="instead", note="Once.").changed(on=(first, second))
    assert said(FEED, REPLY, record) == [
        ("+2", "Instead: after the feed in A’s right half, A wins with ball 2 unreturned in B’s left half."),
        ("+2", "Instead: after the feed in A’s left half, A wins with ball 2 unreturned in B’s right half. Once."),
    ]
    assert len({made.key for made in points(told(*SINGLES, FEED, REPLY, record))}) == 2


def test_a_call_names_the_caller():
    line = Line(kind="line", id="depth", name="depth line", corners=((-4.0, -8.0), (4.0, -8.0)), both_ends=True)
    short = {
        "what": "played",
        "call": "short",
        "called_by": ("doer",),
        "when": ({"area": "depth", "side": "in front of", "judged": "bounce"},),
    }
    record = pays(3, {"what": "won", "within": 2, "and": (short,)}, beside="instead", from_hit=2)
    assert said(FEED, REPLY, line, record)[0][1] == (
        "Instead, after the first hit: rally won by whoever calls “short” after a bounce short of the depth line, "
        "with that hit or the next."
    )


def test_a_fault_that_costs_points_is_a_minus():
    assert said(pays(-1, {"what": "missed", "by": ("A",)})) == [("−1", "A misses.")]


def test_both_of_a_pair_are_paid():
    record = pays(1, {"what": "won"}).changed(gives={"then": "points", "value": 1, "to": "side"})
    found = points(told(*DOUBLES, record, jobs="ABCD"))
    assert found[0].text == "Rally won, for each of the pair."


@pytest.mark.parametrize(
    ("values", "words"),
    [
        ({"kind": "race", "to": 11}, "First to 11."),
        ({"kind": "race", "to": 11, "margin": 2}, "First to 11 by 2."),
        ({"kind": "race", "to": 11, "margin": 2, "cap": 16}, "First to 11 by 2; at 15–15 the next point wins."),
        (
            {"kind": "race", "to": 7, "minutes": 6, "last_rally": "played out"},
            "First to 7, or whoever leads after 6 min. The last rally is played out.",
        ),
        ({"kind": "race", "to": 10, "running": True, "scores": "all together"}, "10 in a row together."),
        ({"kind": "race", "to": 5, "floor": -5}, "First to 5, −5 loses."),
        ({"kind": "race", "to": "own best"}, "Beat your own best."),
        (
            {"kind": "total", "starts": 20, "level": "one more each"},
            "20 starts; higher total wins. Level: one more start each until one leads.",
        ),
        ({"kind": "goal", "to": 20, "minutes": 4, "scores": "all together"}, "Goal: 20 together in 4 min."),
        (
            {"kind": "goal", "to": 18, "starts": 6, "each": True, "scores": "all together"},
            "Goal: 18 together from six starts each.",
        ),
        ({"kind": "tie-break", "to": 7, "margin": 2}, "A tie-break to 7 by 2."),
        ({"kind": "game"}, "A game by the rules of tennis."),
    ],
)
def test_where_it_ends(values, words):
    assert finish(told(*SINGLES, WON, Finish(id="end", **values))).text == words


def test_where_one_alone_scores_the_other_wins_if_it_fails():
    alone = pays(1, {"what": "won", "by": ("A",)})
    end = Finish(id="end", kind="goal", to=12, starts=12)
    assert (
        finish(told(*SINGLES, alone, end)).text == "A wins with 12 points or more from twelve starts; if not, B wins."
    )


def test_a_direction_is_said_wherever_something_happens_with_it():
    def said(event, **values):
        paid = Points(id="p", on=(event,), gives={"then": "points", "value": 2}, **values)
        return points(told(*SINGLES, FEED, REPLY, paid))[0].text

    assert said({"what": "landed", "by": ("A",), "aim": "down the line"}) == "Each ball by A down the line."
    assert said({"what": "won", "aim": "cross-court", "by": ("A",)}) == "A wins with a ball cross-court."
    turned = {"what": "landed", "by": ("B",), "aim": "new line"}
    assert said({"what": "won", "by": ("B",), "and": (turned,)}) == "B wins after a ball on a new line."


def test_a_quick_win_says_how_quick():
    quick = pays(2, {"what": "won", "within": 3}, beside="instead")
    assert said(FEED, REPLY, WON, quick) == [("+1", "Rally won."), ("+2", "Instead: rally won within three hits.")]


def test_what_takes_away_stands_last():
    minus = pays(-1, {"what": "missed", "by": ("A",)})
    assert [value for value, _ in said(FEED, REPLY, WON, minus, pays(3, {"what": "caught"}).changed(id="q"))] == [
        "+1",
        "+3",
        "−1",
    ]


def test_of_three_who_score_for_themselves_the_highest_wins():
    total = Finish(id="end", kind="total", starts=12, each=True, scores="person")
    assert finish(told(*SINGLES, total, jobs="ABC")).text == "Twelve starts each; highest total wins."
    assert finish(told(*SINGLES, total)).text == "Twelve starts each; higher total wins."


def test_a_ball_named_in_one_way_to_win_is_that_ball_in_the_next():
    left = {"what": "landed", "by": ("A",), "count": 1, "where": ({"area": "left half", "judged": "bounce"},)}
    own = {"what": "won", "by": ("A",), "within": 2, "and": (left,)}
    answer = {"what": "won", "by": ("B",), "within": 1, "untouched": True, "and": (left,)}
    records = (pays(2, own, id="p", beside="instead"), pays(2, answer, id="q", beside="instead"))
    assert said(*records) == [
        (
            "+2",
            (
                "Instead: A wins with the first ball in B’s left half or with A’s next hit after it, unreturned, "
                "or B wins with the very next hit, untouched, after that ball."
            ),
        )
    ]


def test_to_a_player_another_way_to_the_same_value_is_or():
    left = {"what": "landed", "by": ("A",), "count": 1, "where": ({"area": "left half", "judged": "bounce"},)}
    own = {"what": "won", "by": ("A",), "within": 2, "and": (left,)}
    answer = {"what": "won", "by": ("B",), "within": 1, "untouched": True, "and": (left,)}
    records = (WON, pays(2, own, id="p", beside="instead"), pays(2, answer, id="q", beside="instead"))
    assert said(*records, reader="player") == [
        ("+1", "Rally won."),
        ("+2", "Instead of 1: A wins with the first ball in B’s left half or A’s next hit, unreturned."),
        ("+2", "Or B wins with an untouched answer to that ball."),
    ]
    # Where that ball opens the point, a player knows it by the flag.
    until = ({**left, "count": None},)
    parts = (Part(id="held", kind="forced", until=until), Part(id="free", after="held", kind="open"))
    assert said(*parts, *records, reader="player")[1:] == [
        ("+2", "Instead of 1: A wins with the ball that opens or A’s next hit, unreturned."),
        ("+2", "Or B wins with an untouched answer to that ball."),
    ]
    # What is worth more is not said to be another way to the same.
    dear = (*records[:2], pays(3, answer, id="q", beside="instead"))
    assert said(*dear, reader="player")[2][1].startswith("Instead of 1: B wins")


def test_a_player_looks_up_what_becomes_of_a_level_score():
    end = Finish(id="end", kind="race", to=7, minutes=6, last_rally="played out", level="next point")
    player = told(*SINGLES, WON, end, reader="player")
    assert finish(player).text == "First to 7, or whoever leads after 6 min."
    assert texts(finish_later(player)) == ["The last rally is played out. Level score: the next point wins."]
    over = end.changed(level=None, last_rally=None, note="Five players: divide totals.")
    player = told(*SINGLES, WON, over, reader="player")
    assert finish(player).text == "First to 7, or whoever leads after 6 min."
    assert texts(finish_later(player)) == ["Five players: divide totals."]
    assert finish(told(*SINGLES, WON, over)).text.endswith(" Five players: divide totals.")


def test_whose_own_points_count_over_rounds_is_told_to_you():
    end = Finish(id="end", kind="race", to=5, rounds=6, totals="person", scores="side")
    coach, player = (told(*DOUBLES, WON, end, jobs="ABCD", reader=reader) for reader in ("coach", "player"))
    assert finish(coach).text == (
        "Six rounds, each from 0: first pair to 5. Everyone adds up own points; the highest total wins."
    )
    assert finish(player).text == "Six rounds, first pair to 5 in each; the highest own total wins."


def test_who_says_what_was_scored_is_no_word_of_the_score_to_a_player():
    half = ({"area": "right half", "judged": "bounce"},)
    called = pays(1, {"what": "landed", "where": half}, id="p", note="F says the number.")
    counts = pays(2, {"what": "won"}, id="q", note="Only A scores.")
    player = told(*SINGLES, called, counts, reader="player")
    assert "says" not in " ".join(texts(points(player)))
    assert texts(points_later(player)) == ["+1: F says the number."]
    assert "Only A scores." in " ".join(texts(points(player)))
    # Two ways to one value are told apart.
    twice = told(*SINGLES, called, counts.changed(gives=called.gives), reader="player")
    assert texts(points_later(twice)) == ["Each ball in the right half: F says the number."]
    cases = called.changed(note="Drop shots and net cords may be short too.")
    assert texts(points_later(told(*SINGLES, cases, reader="player"))) == [
        "+1: drop shots and net cords may be short too."
    ]
    assert "F says the number." in texts(points(told(*SINGLES, called)))[0]


def test_more_for_a_pair_is_said_to_be_for_each_of_them():
    rally = pays(1, {"what": "won"}, id="p", to="side")
    volley = pays(2, {"what": "won", "strokes": ("volley",), "untouched": True}, id="q", to="side", beside="instead")
    assert texts(points(told(*DOUBLES, rally, volley, jobs="ABCD"))) == [
        "Rally won, for each of the pair.",
        "Instead, for each: rally won with an untouched volley.",
    ]


def test_three_who_take_turns_go_on_in_their_order_where_totals_are_level():
    end = Finish(id="end", kind="total", starts=20, level="one more each")
    ring = Swap(id="w", on=({"what": "starts", "count": 5},), moves={"A": "B", "B": "C", "C": "A"}, ends=True)
    two = ring.changed(moves={"A": "B", "B": "A"})
    assert "one more start each, in the same order, until" in finish(told(*SINGLES, end, ring, jobs="ABC")).text
    assert "one more start each until" in finish(told(*SINGLES, end, two)).text


def test_who_calls_a_ball_and_then_wins_is_told_what_to_do():
    called = {"what": "called", "call": "short", "called_by": ("doer",)}
    paid = pays(3, {"what": "won", "within": 2, "and": (called,)}, beside="instead")
    assert said(WON, paid, reader="player")[1] == (
        "+3",
        "Instead of 1: call “short”, then win the rally with that hit or the next.",
    )
