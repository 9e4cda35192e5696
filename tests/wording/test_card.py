"""The card as a whole: what stands on it for whom, in what order, and what is still asked."""

import pytest
from wording.making import FEED, REPLY, SINGLES, ZONE, area, drill_of, texts, told

from designer.drill.drill import House
from designer.drill.items import Line
from designer.drill.people import Job
from designer.drill.rules import Finish, Points, Rule, Start, Swap
from designer.drill.setting import At
from designer.wording.card import card_words
from designer.wording.care import NO_OTHER
from designer.wording.hands import left_handed
from designer.wording.labels import value_for_label, words_for_label
from designer.wording.questions import STOP
from designer.wording.reading_time import seconds_aloud, word_count

HERE = At("p")
FULL = (
    *SINGLES,
    ZONE,
    FEED,
    REPLY,
    Start(id="s", shot="feed", by=("B",), bad={"then": "replay"}),
    Rule(id="r", breach={"then": "lose the point"}, must={"do": "bounces", "least": 1}),
    Points(id="rally", on=({"what": "won"},), gives={"then": "points", "value": 1}),
    Finish(id="end", kind="race", to=11),
    Swap(id="w", on=({"what": "starts", "count": 5},), moves={"A": "B", "B": "A"}, ends=True),
)


def keys(card):
    return [section.key for section in card.sections]


SETTLED = House(called_by=("receiver",), in_doubt="replay", stopped={"then": "replay"}, feed_played="accepted")


def asked(*records, reader="coach", **values):
    values = {"house": SETTLED} | values
    card = card_words(drill_of(*records, **values), HERE, reader)
    return [sentence.text for section in card.sections for sentence in section.sentences if sentence.missing]


def test_the_sections_stand_in_the_order_of_the_card():
    made = drill_of(*FULL, cues=("High.",), watch_for=("Feet?",), safety=("Flat discs only.",))
    assert keys(card_words(made, HERE, "player")) == [
        "you",
        "start",
        "steps",
        "bounds",
        "points",
        "swap",
        "rules",
        "cues",
        "care",
    ]
    assert keys(card_words(made, HERE, "coach")) == [
        "layout",
        "start",
        "steps",
        "rules",
        "points",
        "swap",
        "progressions",
        "cues",
        "watch",
        "left-handed",
        "care",
    ]


def test_a_player_is_told_who_to_be():
    made = drill_of(*FULL)
    you = card_words(made, HERE, "player").section("you").sentences
    assert texts(you) == ["You start as A.", "1 stride behind the centre mark."]
    assert (you[0].lead.kind, you[0].lead.text) == ("person", "A")
    assert texts(card_words(made, HERE, "player", player="B").section("you").sentences)[0] == "You start as B."


def test_nothing_is_asked_where_everything_is_answered():
    assert asked(*FULL) == []


@pytest.mark.parametrize(
    ("left_out", "question"),
    [
        ("s", "How does it start, and what if the feed is bad?"),
        ("rally", "How does a point end?"),
        ("end", "Where does it end?"),
    ],
)
def test_what_is_missing_is_asked(left_out, question):
    assert asked(*(record for record in FULL if record.id != left_out)) == [question]


def test_what_an_answer_left_open_is_asked_where_it_will_stand():
    open_start = Start(id="s", shot="feed", by=("B",))
    no_cost = Rule(id="r", must={"do": "bounces", "least": 1})
    no_edge = Rule(
        id="e", breach={"then": "replay"}, must={"do": "keep", "where": ({"area": "zone", "judged": "bounce"},)}
    )
    rest = [record for record in FULL if record.id not in ("s", "r")]
    assert asked(*rest, open_start, no_cost, no_edge, house=House()) == [
        "Bad feed?",
        "A volley: what does it cost?",
        "On the edge of the reply zone?",
        "Who calls?",
        "In doubt?",
        "Ball or person on court: anyone calls “stop”. Then?",
    ]
    serve = FEED.changed(stroke="serve")
    assert "A fault?" in asked(*SINGLES, serve, open_start)


def test_a_blank_drill_asks_and_warns():
    card = card_words(drill_of(), HERE, "coach")
    assert card.title == ""
    assert texts(card.section("care").sentences)[0] == STOP
    assert texts(card.section("care").sentences)[-1] == NO_OTHER


def test_the_stop_word_is_the_drills_then_the_houses_then_asked():
    own = Points(id="stop", on=({"what": "called", "call": "freeze", "called_by": ("F",)},), gives={"then": "replay"})
    assert "Ball or person on court: F calls “freeze”, replay." in texts(
        card_words(drill_of(*FULL, own, jobs="ABF"), HERE, "player").section("care").sentences
    )
    house = House(in_doubt="replay", stopped={"then": "no score"})
    assert texts(card_words(drill_of(*FULL, house=house), HERE, "player").section("care").sentences) == [
        "Ball or person on court: anyone calls “stop”, no score."
    ]


def test_an_accepted_caution_prints_its_reason():
    made = drill_of(*FULL, accepted=({"check": "run-off", "reason": "The fence is padded."},))
    assert any(
        "The fence is padded." in text for text in texts(card_words(made, HERE, "coach").section("care").sentences)
    )


def test_room_that_is_not_stated_is_said_to_be_assumed():
    # Club minimum 18 ft and 10 ft: ITF Technical Booklet 2015, table 5.
    found = texts(card_words(drill_of(*FULL), HERE, "coach", units="feet").section("care").sentences)
    assert any("18 ft behind the baselines and 10 ft beside the court" in text for text in found)


def test_left_handers():
    wing = REPLY.changed(wing="forehand")
    assert left_handed(told(*SINGLES, FEED, REPLY, reader="player")).text == "Left-handed: same places."
    assert left_handed(told(*SINGLES, FEED, wing, reader="player")).text == "Left-handed: same places, the other wing."
    mixed = drill_of(*SINGLES, FEED, wing).changed(jobs=(Job(letter="A"), Job(letter="B", hand="left")))
    assert card_words(mixed, HERE, "player").left_handed.text == "Drawn for A right-handed, B left-handed."
    line = Line(kind="line", id="own", hand_of="A", corners=((-1.0, -10.0), (-1.0, -7.0)))
    with_things = drill_of(*SINGLES, FEED, wing, line).changed(jobs=mixed.jobs)
    assert card_words(with_things, HERE, "player").left_handed.text.endswith(
        "B left-handed. Other hand: mirror that end."
    )
    assert left_handed(told(*SINGLES)) is None


def test_words_on_the_diagram():
    side = area("side", "", (0.0, -11.0), (4.0, -7.0))
    must = {"do": "use stroke", "wing": "forehand"}
    rule = Rule(id="r", when=({"area": "side", "judged": "bounce"},), must=must)
    paid = Points(
        id="p",
        on=({"what": "landed", "where": ({"area": "zone", "judged": "bounce"},)},),
        gives={"then": "points", "value": 2},
    )
    setting = told(*SINGLES, ZONE, side, rule, paid).setting
    assert words_for_label(setting, "zone") == "reply zone"
    assert words_for_label(setting, "side") == "forehand"
    assert value_for_label(setting, "zone") == "+2"
    assert value_for_label(setting, "side") == ""
    assert words_for_label(setting, "nowhere") == ""


def test_how_long_a_card_takes_to_read_aloud():
    # 42 words in 15 s is 168 a minute (working budget of the trade), so 84 words are half a minute.
    assert seconds_aloud(84) == 30
    assert seconds_aloud(0) == 0
    assert word_count("B feeds wide – 2 rackets.") == 5


def test_a_player_is_told_on_which_hand_the_two_parts_of_the_own_court_are():
    # Seen from one end the two forehand sides lie on opposite sides of the court for two right-handers: each is on the
    # right of its player, who faces the net.
    big = (
        area("big-a", "eight-racket side", (-1.3716, -11.8872), (4.1148, -6.4008), marked="in thought"),
        area("big-b", "eight-racket side", (-4.1148, 6.4008), (1.3716, 11.8872), marked="in thought"),
        area("small-a", "four-racket side", (-4.1148, -11.8872), (-1.3716, -6.4008)),
        area("small-b", "four-racket side", (1.3716, 6.4008), (4.1148, 11.8872)),
    )
    said = "Your eight-racket side is on your right and your four-racket side on your left."
    for player in "AB":
        you = card_words(drill_of(*FULL, *big), HERE, "player", player=player).section("you").sentences
        assert you[1].text.endswith(said)
    # What lies on the side of somebody's hand is elsewhere for the other hand.
    of_hand = tuple(one.changed(hand_of="A" if one.id.endswith("a") else "B") for one in big)
    you = card_words(drill_of(*FULL, *of_hand), HERE, "player", player="B").section("you").sentences
    assert you[1].text.endswith(f"{said.removesuffix('.')}; left-handed: the other way round.")
    # One that is marked can be seen.
    assert said not in str(card_words(drill_of(*FULL, ZONE), HERE, "player").section("you"))
