"""When a point opens, as whoever has the diagram and whoever has not reads it."""

from wording.making import DOUBLES, FEED, REPLY, SINGLES, texts, told

from designer.drill.base import place
from designer.drill.movement import Shot
from designer.drill.rules import Part, Start
from designer.wording.openings import opens_when
from designer.wording.sentence import unmarked
from designer.wording.steps import steps

THIRD = Shot(id="third", by="B", after="reply")
FED = Start(id="start", shot="feed", by=("B",))


def held(**until):
    return Part(id="held", kind="forced", shots=("reply",), until=({"what": "played", **until},))


def words(*records, seen=False):
    made = told(*SINGLES, *records)
    return unmarked(opens_when(made, made.parts[0], seen=seen))


def test_hits_that_are_drawn_go_by_their_numbers_and_the_feed_is_none():
    assert words(FEED, REPLY, THIRD, held(count=2), FED, seen=True) == "from ball 4"
    assert words(FEED, REPLY, THIRD, held(count=1), FED, seen=True) == "from ball 3"
    assert words(FEED, REPLY, THIRD, held(count=4), FED, seen=True) == "after four hits (the feed does not count)"


def test_without_the_diagram_hits_are_counted():
    assert words(FEED, REPLY, THIRD, held(count=2), FED) == "after two hits (the feed does not count)"
    serve = FEED.changed(stroke="serve")
    assert words(serve, REPLY, held(count=4), FED) == "after four hits (the serve does not count)"


def test_a_ball_that_may_be_fed_again_opens_at_its_hit():
    again = Start(id="again", shot="third", by=("B",), once={"what": "landed", "of": ("reply",)})
    third = THIRD.changed(stroke="racket feed")
    assert words(FEED, REPLY, third, held(of=("third",)), FED, again, seen=True) == "once ball 3 is hit"
    assert words(FEED, REPLY, THIRD, held(of=("third",)), FED, seen=True) == ""


def test_after_each_choice_the_ball_that_opens_is_named_once():
    wide = Shot(id="wide", by="A", stroke="serve", to=place(-3.2, 5.4))
    centre = Shot(id="centre", by="A", stroke="serve", to=place(-0.6, 5.4))
    balls = (
        Shot(id="back-wide", by="B", after="wide", to=place(0.4, -9.2)),
        Shot(id="back-centre", by="B", after="centre", to=place(-0.7, -9.7)),
    )
    past = {"area": "past the service line", "judged": "bounce"}
    half = {"area": "right half", "judged": "bounce"}
    until = (
        {"what": "landed", "of": ("back-wide",), "where": (half,)},
        {"what": "landed", "of": ("back-centre",), "where": (past,)},
    )
    part = Part(id="held", kind="forced", shots=("back-wide", "back-centre"), until=until)
    assert words(wide, centre, *balls, part) == (
        "once the return lands in A's right half after a wide serve, or past A's service line after a serve to the T"
    )


def test_a_rally_that_is_open_from_its_start_says_from_which_ball():
    opened = Part(id="open", kind="open")
    assert texts(steps(told(*SINGLES, FEED, REPLY, opened)))[-1] == "From ball 2 both play the point out."
    serve = FEED.changed(stroke="serve")
    assert texts(steps(told(*DOUBLES, serve, REPLY, opened, jobs="ABCD")))[-1] == (
        "From the serve all play the point out."
    )


def test_the_first_change_of_direction_opens_the_point():
    opens = {"what": "landed", "by": ("A",), "aim": "new line"}
    part = Part(id="held", kind="forced", until=(opens,))
    assert words(FEED, REPLY, THIRD, part, FED) == "once a ball of A’s goes on a new line".replace("’", "'")
    row = Part(id="held", kind="forced", until=({"what": "played", "aim": "cross-court", "count": 4, "running": True},))
    assert words(FEED, REPLY, THIRD, row, FED) == "after four balls cross-court in a row"
