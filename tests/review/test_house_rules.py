"""What an academy asks of every drill: each rule fails on a drill that lacks it and holds on one that has it."""

import pytest
from review.situations import AT, END, FEED, HOUSE, REPLY, A, B, drill

from designer.drill.conditions import Event, Outcome
from designer.drill.drill import Changes, House, Progression, Variation
from designer.drill.handbook import HOUSE_RULES
from designer.drill.rules import Points
from designer.review.house_rules import WORDS, broken, strokes

BARE = drill(A, B, FEED, REPLY).changed(house=House())
WAYS = (Progression(id="p", easier=(Variation(id="e"),), harder=(Variation(id="h"),)),)


def test_every_rule_has_its_words():
    assert set(WORDS) == set(HOUSE_RULES)


@pytest.mark.parametrize(
    ("rule", "values"),
    [
        ("objective", {"objective": "Come back to the middle."}),
        ("replay rule", {"house": HOUSE}),
        ("stop word", {"house": HOUSE}),
        ("who calls", {"house": HOUSE}),
        ("doubt", {"house": HOUSE}),
        ("safety", {"safety": ("Clear the balls.",)}),
        ("cues", {"cues": ("High and cross.",)}),
        ("minutes", {"minutes": 10}),
        ("players", {"players": (2, 4)}),
        ("easier and harder", {"progressions": WAYS}),
        ("situation", {"tags": ("situation:both-back",)}),
        ("stroke", {"tags": ("stroke:volley",)}),
        ("level", {"tags": ("stage:red",)}),
        ("intensity", {"tags": ("work:accuracy",)}),
        ("author", {"author": "Alder Quay"}),
    ],
)
def test_a_drill_keeps_a_rule_only_once_it_says_what_is_asked(rule, values):
    assert broken(
        BARE.changed(**({"objective": "", "minutes": None, "players": None} | {"progressions": BARE.progressions})),
        (rule,),
        (),
    ) == (rule,)
    told = BARE.changed(**values)
    assert broken(told, (rule,), told.tags) == ()


@pytest.mark.parametrize(("call", "kept"), [(None, True), ("“Freeze!”", True), ("stop", True), ("time", False)])
def test_every_setting_is_stopped_by_the_word_of_the_house(call, kept):
    stop = Points(id="stop", on=(Event(what="called", call=call),), gives=Outcome(then="replay"))
    own = drill(A, B, FEED, REPLY, stop)
    assert broken(own, ("stop word",), (), "freeze") == (() if kept else ("stop word",))
    more = own.changed(progressions=(*own.progressions, Progression(id="q", changes=Changes(drop=("stop",)))))
    silent = more.changed(house=House())
    assert broken(silent, ("stop word",), (), "freeze") == ("stop word",), "one progression says nothing of it"


def test_questions_and_the_finish_are_asked_of_the_main_progression():
    assert broken(BARE, ("finish", "no open question", "swap"), ()) == ("finish", "no open question", "swap")
    assert broken(drill(A, B, FEED, REPLY, END), ("finish",), ()) == ()
    assert AT.progression == BARE.progressions[0].id


def test_strokes_are_those_that_are_drawn_without_feeds():
    serve = REPLY.changed(stroke="second serve", wing=None)
    volley = REPLY.changed(id="v", stroke="volley", wing="backhand", after=serve.id)
    whole = drill(A, B, FEED, serve, volley)
    assert strokes(whole) == strokes(whole, AT) == ("backhand", "serve", "volley")
    later = Progression(id="q", changes=Changes(shots=(REPLY.changed(id="lob", stroke="lob"),)))
    longer = whole.changed(progressions=(*whole.progressions, later))
    assert strokes(longer) == ("backhand", "lob", "serve", "volley")
    assert strokes(longer, AT) == ("backhand", "serve", "volley")
