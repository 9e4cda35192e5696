"""How a rally starts. Typical feeds and serves; common practice, no source. Serving orders are those of the rules of tennis."""

from wording.making import DOUBLES, FEED, SINGLES, area, spot, texts, told

from designer.drill.base import Place, place
from designer.drill.drill import House
from designer.drill.movement import Shot
from designer.drill.rules import Finish, Points, Rule, Start
from designer.wording.own_place import own_place
from designer.wording.starts import starts
from designer.wording.steps import steps

PLAYED = House(in_doubt="replay", feed_played="accepted")
PAST = {"area": "past the service line", "judged": "bounce"}
RIGHT = {"area": "right half", "judged": "bounce"}


def start(**values):
    return Start(**({"id": "s", "shot": "feed", "by": ("B",)} | values))


def said(*records, **values):
    return texts(starts(told(*SINGLES, *records, **values)))


def test_a_feed_past_the_service_line():
    made = start(good=(PAST,), bad={"then": "replay"}, called_by=("A",))
    assert said(FEED, made) == [
        "B, from behind the baseline, bounces and hits past A’s service line. Bad feed: replay; A calls."
    ]


def test_a_player_reads_only_what_a_player_needs():
    made = start(good=(RIGHT, PAST), bad={"then": "replay"}, called_by=("A",))
    assert said(FEED, made, reader="player", house=PLAYED) == [
        "B bounces and hits into A’s right half, past the service line. Bad feed: leave it, replay; A calls."
    ]


def test_a_rule_of_the_feed_that_costs_a_new_feed_is_said_with_it():
    high = Rule(
        id="high", of=("feed",), breach={"then": "replay"}, must={"do": "height", "at": "arrival", "most": "shoulder"}
    )
    dear = high.changed(breach={"then": "lose the point"})
    made = start(good=(PAST,), bad={"then": "replay"})
    assert said(FEED, made, high)[0].startswith(
        "B, from behind the baseline, bounces and hits past A’s service line, to arrive no higher than A’s shoulder. Bad feed: replay."
    )
    assert said(FEED, made, dear)[1] == "The feed arrives no higher than the shoulder. If not: point to A."


def test_serves_by_number_and_court():
    serve = Shot(id="feed", by="B", stroke="serve")
    second = serve.changed(stroke="second serve")
    lost = {"then": "lose the point"}
    assert said(serve, start(courts="in turn", serves={"B": 2}, bad=lost)) == [
        "B serves, two tries, deuce and ad in turn. A double fault: point to A."
    ]
    assert said(second, start(courts="deuce", serves={"B": 1}, bad=lost)) == [
        "B hits one second serve to the deuce court. A fault: point to A."
    ]
    assert said(
        second, start(by=("B", "A"), next="every two", courts="in turn", serves={"A": 1, "B": 1}, bad=lost)
    ) == [
        (
            "B and A in turn hit second serves, one try, deuce and ad in turn. A fault: point lost. "
            "The server changes every two rallies."
        )
    ]


def test_the_other_court_and_a_start_that_faults_use_up_are_told_to_the_server_too():
    serve = Shot(id="feed", by="B", stroke="serve", contact=place(-0.6858, 12.0))
    lost = start(courts="in turn", serves={"B": 2}, bad={"then": "lose the point"})
    total = Finish(id="end", kind="total", starts=20)
    both = "B serves, two tries, deuce and ad in turn. A double fault: point to A. It counts as a start."
    assert said(serve, lost, total, reader="player") == [both]
    wide = area("wide", "wide part", (-4.0, -6.0), (-2.0, 0.0))
    landed = {"what": "landed", "of": ("feed",), "where": ({"area": "wide", "judged": "bounce"},)}
    paid = Points(id="p", on=(landed,), gives={"then": "points", "value": 1})
    # Only where the serve is judged by a place that goes with the court it is hit to, and to who waits: the two who
    # play are told so beside where they stand.
    waits = spot("C", 8.0, 0.0, task="waits")
    judged = (serve, lost, total, wide, paid, waits)
    assert said(*judged, jobs="ABC", reader="player", player="C") == [f"{both} Ad side: all mirrored."]
    assert said(*judged, jobs="ABC", reader="player", player="A") == [both]
    assert own_place(told(*SINGLES, *judged, jobs="ABC", reader="player", player="A"), SINGLES[0]).endswith(
        "; ad side: all mirrored"
    )
    again = lost.changed(bad={"then": "replay"})
    assert "counts as a start" not in said(serve, again, total)[0]
    assert "counts as a start" not in said(serve, lost)[0]


def test_whoever_holds_a_ball_feeds_next():
    assert said(FEED, start(by=("A", "B"), next="anyone"), reader="player") == [
        "B bounces and hits through the middle. The next ball is fed at once by whoever holds one."
    ]


def test_four_feed_in_turn_to_no_one_in_particular():
    feed = Shot(id="feed", by="A", stroke="racket feed", to=Place(on="D"))
    assert said(*DOUBLES[2:], feed, start(by=("A", "B", "C", "D")), jobs="ABCD", reader="player") == [
        "A, B, C and D in turn bounce and hit."
    ]


def test_a_hand_feed_goes_to_its_place_or_to_the_hitter():
    spot = area("spot", "bounce place", (0.4, -9.0), (0.9, -8.5))
    near = (SINGLES[0], SINGLES[1].changed(place=place(-1.0, -5.0)))
    throw = Shot(id="feed", by="B", stroke="hand feed", pace="soft", to=Place(on="spot"))
    hit = Shot(id="hit", by="A", after="feed")
    assert texts(starts(told(*near, spot, throw, hit, start())))[0].startswith("B throws softly into the bounce place")
    loose = throw.changed(to=place(0.5, -8.0))
    assert texts(starts(told(*near, loose, hit, start())))[0].startswith("B throws softly to A")


def test_a_later_ball_says_what_makes_it_bad_and_who_judges():
    second = Shot(id="second", by="B", after="feed", stroke="racket feed", to=place(0.0, -9.0))
    again = Start(
        id="again",
        shot="second",
        by=("B",),
        once={"what": "reached", "by": ("A",), "of": ("back",), "called_by": ("B",)},
        good=(PAST,),
        bad={"then": "replay"},
    )
    made = told(*SINGLES, FEED, second, start(), again)
    assert len(starts(made)) == 1
    (step,) = (step for step in steps(made) if "again" in step.about)
    assert step.text.endswith("past A’s service line. Too early, short or out: B feeds again. B judges A’s foot.")
    # Drawn nowhere, it has no step to stand with.
    assert said(FEED, start(), again)[1] == (
        "The later ball too early, not past A’s service line or out: B feeds again. B judges A’s foot."
    )


def test_a_score_to_start_with():
    assert said(FEED, start(score={"A": 3, "B": 0}))[0].endswith("The score starts with A at 3 and B at 0.")


def test_a_player_reads_the_feed_once_with_its_number():
    made = start(good=(RIGHT,), bad={"then": "replay"})
    (found,) = starts(told(*SINGLES, FEED.changed(note="Waist-high."), made, reader="player", house=PLAYED))
    assert found.text == "B bounces and hits into A’s right half. Waist-high. Bad feed: leave it, replay."
    assert (found.lead.kind, found.lead.text) == ("feed", "1")
    assert "feed" in found.about


def test_a_later_ball_that_is_played_all_the_same_is_what_a_played_feed_is():
    second = Shot(id="second", by="B", after="reply", stroke="racket feed")
    reply = Shot(id="reply", by="A", after="feed")
    once = {"what": "reached", "by": ("A",), "of": (), "called_by": ("B",)}
    later = Start(id="l", shot="second", by=("B",), once=once, good=(PAST,), bad={"then": "replay"})

    def third(house):
        return steps(told(*SINGLES, FEED, reply, second, later, house=house))[-1].text

    assert third(PLAYED).endswith(
        "Too early, short or out: A leaves it, B feeds again. If A hits it, play on. B judges A’s foot."
    )
    refused = House(in_doubt="replay", feed_played="not accepted")
    assert "If A hits it, it does not count." in third(refused)


def test_a_swing_without_a_ball_is_no_bad_feed():
    shadow = FEED.changed(stroke="shadow swing")
    assert "Bad feed" not in said(shadow, start(bad={"then": "replay"}))[0]
