"""People who go backwards. Common practice, no source; the rest is held by the table of faults."""

from review.situations import FEED, REPLY, A, B, keys, only, run, told

from designer.drill.base import place
from designer.drill.items import Basket
from designer.drill.movement import Shot
from designer.review.retreats import CLEAR, TURN, retreat_cautions

LOB = Shot(id="lob", by="B", after="reply", stroke="lob", to=place(-1.0, -10.5))
SMASH = Shot(id="smash", by="A", after="lob", stroke="smash", to=place(2.0, 8.0))
IN, UNDER = run("A", "reply", 0.0, -4.0, id="in"), run("A", "lob", -1.0, -9.0, id="under")
HIGH = (A, B, FEED, REPLY, LOB, SMASH, IN, UNDER)


def found(*records, **values):
    return tuple(retreat_cautions(told(*records, **values)))


def test_whoever_goes_back_under_a_lob_is_told_to_turn_once():
    back = only(found(*HIGH), "back-pedal")
    assert back.danger
    assert "A goes back 5.0 m" in back.sentence.text.replace("\N{NO-BREAK SPACE}", " ")


def test_an_author_who_speaks_of_turning_is_not_told_again():
    assert found(*HIGH, cues=("Turn side-on, then run.",)) == ()
    assert found(*HIGH, safety=(TURN,)) == ()


def test_a_step_back_a_recovery_and_a_run_to_the_side_are_ordinary():
    step = UNDER.changed(to=place(-0.5, -5.0))
    assert found(A, B, FEED, REPLY, LOB, SMASH.changed(contact=place(-0.5, -5.0)), IN, step) == ()
    recover = run("A", "reply", 0.0, -12.8, purpose="recover")
    assert found(A.changed(place=place(0.0, -6.0)), B, FEED, REPLY, recover) == ()
    aside = UNDER.changed(to=place(8.0, -6.0))
    assert found(A, B, FEED, REPLY, LOB, IN, aside) == ()


def test_fed_balls_that_lie_about_are_spoken_of_until_somebody_clears_them():
    basket = Basket(kind="basket", id="basket", place=place(1.0, 13.0))
    records = (A, B, FEED, REPLY, basket, run("A", "feed", 2.0, -12.0, purpose="reach"))
    assert keys(found(*records)) == ["loose-balls"]
    assert found(*records, safety=(CLEAR,)) == ()
    assert found(*records, safety=("No ball behind the baseline.",)) == ()
    assert keys(found(*records, cues=("Watch the ball.",))) == ["loose-balls"]
    assert found(*records[:-1]) == ()
