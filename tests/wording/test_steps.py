"""What happens, ball by ball. Situations as coaches draw them; common practice, no source."""

from wording.making import DOUBLES, FEED, REPLY, SINGLES, ZONE, texts, told

from designer.drill.base import Place, place
from designer.drill.movement import Run, Shot
from designer.drill.rules import Part, Start
from designer.wording.steps import steps


def said(*records, **values):
    return texts(steps(told(*records, **values)))


WIDE = Shot(id="feed", by="B", stroke="racket feed", to=place(3.6, -8.0))
INTO_ZONE = Shot(id="reply", by="A", after="feed", wing="forehand", over_net=2.0, to=Place(on="zone"))
OUT = Run(id="out", by="A", during="feed", to=place(4.0, -12.0), purpose="reach")


def test_a_wide_feed_and_a_high_forehand_into_a_zone():
    found = steps(told(*SINGLES, ZONE, WIDE, INTO_ZONE, OUT))
    assert texts(found) == ["B feeds wide.", "A runs wide and plays a high forehand cross-court into the reply zone."]
    assert [(step.lead.kind, step.lead.text) for step in found] == [("feed", "1"), ("hit", "2")]
    assert found[1].about[0] == "reply"


def test_a_player_reads_no_step_for_a_ball_that_may_go_anywhere():
    third = Shot(id="third", by="B", after="reply")
    short = Shot(id="short", by="A", after="third", stroke="drop shot", to=place(0.6, 2.4))
    rally = (FEED, REPLY, third, short, Part(id="open", kind="open"), Start(id="s", shot="feed", by=("B",)))
    found = steps(told(*SINGLES, *rally, reader="player"))
    assert texts(found) == [
        "From ball 2 both play it out.",
        "For example, A plays a drop shot.",
    ]
    assert {"reply", "third"} < set(found[0].about)
    assert "A plays anywhere." in said(*SINGLES, *rally)


def test_a_note_stands_after_its_sentence():
    found = said(*SINGLES, FEED.changed(note="{A} is ready first."))
    assert found == ["B feeds through the middle. A is ready first."]


def test_a_choice_is_one_sentence():
    low = Shot(id="low", by="B", after="reply", label="pass", to=place(3.0, -9.0))
    high = Shot(id="high", by="B", after="reply", stroke="lob", to=place(-1.0, -11.0))
    other = Shot(id="other", by="B", after="reply", label="pass", to=place(-3.0, -9.0))
    found = steps(told(*SINGLES, FEED, REPLY, low, high, other))
    assert found[-1].text in ("B passes to either side or lobs.", "B lobs or passes to either side.")
    assert (found[-1].lead.kind, found[-1].lead.text) == ("choice", "3")
    assert {"low", "high", "other"} <= set(found[-1].about)


def test_a_ball_after_a_choice_says_which():
    lob = Shot(id="lob", by="A", after="feed", stroke="lob", to=place(0.0, 11.0))
    drop = Shot(id="drop", by="A", after="feed", stroke="drop shot", to=place(0.5, 2.0))
    smash = Shot(id="smash", by="B", after="lob", stroke="smash", to=place(2.0, -8.0))
    run = Shot(id="run", by="B", after="drop", to=place(-2.0, -8.0))
    found = said(*SINGLES, FEED, lob, drop, smash, run)
    assert any(text.startswith("After a lob, B smashes") for text in found)
    assert any(text.startswith("After a drop shot, B plays") for text in found)


def test_a_second_ball_waits_for_the_foot():
    back = Run(id="back", by="A", during="reply", to=place(0.0, -12.0), purpose="recover")
    second = Shot(id="second", by="B", after="reply", stroke="racket feed", to=place(0.0, -9.0))
    start = Start(
        id="again",
        shot="second",
        by=("B",),
        once={"what": "reached", "by": ("A",), "of": ("back",)},
        good=({"area": "past the service line", "judged": "bounce"},),
    )
    found = said(*SINGLES, FEED, REPLY, back, second, start)
    assert "A recovers." in found
    assert "B lets ball 2 go. Once A is back, B hits a new ball past A’s service line." in found


def test_the_flag_stands_after_the_hit_that_opens_the_point():
    forced = Part(id="held", kind="forced", shots=("reply",), until=({"what": "played", "count": 4},))
    free = Part(id="free", after="held", kind="open")
    found = steps(told(*SINGLES, FEED, REPLY, forced, free))
    assert found[-1].text == "After four hits both play the point out."
    assert found[-1].lead.kind == "open"


def test_four_who_play_are_all():
    forced = Part(id="held", kind="forced", until=({"what": "played", "count": 2},))
    found = said(*DOUBLES, Part(id="free", after="held", kind="open"), forced, jobs="ABCD")
    assert found == ["After two hits all play the point out."]


def test_who_works_together_carries_on():
    together = Part(id="together", kind="cooperative", shots=("reply",))
    assert said(*SINGLES, FEED, REPLY, together)[-1] == "Carry on in turn."


def test_a_player_reads_like_balls_once():
    balls = [FEED.changed(to=place(2.0, -9.0))]
    for number in range(1, 5):
        by, x, y = ("A", -2.0, 9.0) if number % 2 else ("B", 2.0, -9.0)
        balls.append(Shot(id=f"hit-{number}", by=by, after=balls[-1].id, to=place(x, y)))
    right = (SINGLES[0].changed(place=place(2.0, -12.8)), SINGLES[1].changed(place=place(-2.0, 12.8)))
    found = steps(told(*right, *balls, reader="player"))
    assert texts(found) == ["B feeds cross-court.", "A and B play cross-court in turn."]
    assert found[1].lead.text == "2–5"
    assert len(said(*right, *balls)) == 5


def test_a_ball_that_may_be_chosen_from_some_hit_on():
    change = Shot(id="change", by="A", after="feed", to=place(2.0, 9.0))
    hold = Part(id="hold", kind="forced", shots=("reply",), until=({"what": "played", "by": ("A",), "count": 2},))
    left = {"area": "left half", "judged": "bounce", "line": "out"}
    may = Part(
        id="may",
        after="hold",
        kind="forced",
        shots=("change",),
        until=({"what": "landed", "by": ("A",), "where": (left,)},),
    )
    found = said(*SINGLES, FEED, change, hold, may, Part(id="free", after="may", kind="open"))
    assert "From A’s third hit on, A may play into B’s left half." in found
    assert "Once a ball of A’s lands in B’s left half, both play the point out." in found
