"""How hard a setting works its people; the arithmetic is worked by hand beside each check."""

import pytest

from designer.drill.base import place
from designer.drill.items import Basket
from designer.drill.movement import Run, Shot
from designer.drill.rules import Finish, Part
from designer.numbers.load import BETWEEN_FEEDS, LONGEST_RALLY, load, success_of_a_hit
from designer.numbers.shots import numbers_of


def loaded(here):
    return load(here, numbers_of(here))


def person(found, letter):
    return next(person for person in found.people if person.letter == letter)


def test_a_fed_ball_at_a_time(drawn, rally):
    here = drawn(*rally)
    found = loaded(here)
    shots = numbers_of(here)
    seconds = sum(shots.shot(id).meetings[0].there_is for id in ("feed", "reply")) + shots.shot("third").strike.time
    assert found.rally == pytest.approx(seconds)
    assert found.between == BETWEEN_FEEDS
    assert found.starts == pytest.approx(60 / (seconds + BETWEEN_FEEDS))
    assert found.balls == pytest.approx(found.starts)
    assert person(found, "A").hits == pytest.approx(found.starts)
    assert person(found, "B").feeds == pytest.approx(found.starts)
    assert found.work_to_rest == pytest.approx(BETWEEN_FEEDS / seconds)


def test_an_open_point_adds_hits_and_metres(drawn, rally):
    closed, opened = loaded(drawn(*rally)), loaded(drawn(*rally, Part(id="open", kind="open")))
    play = drawn(*rally).level.play
    assert opened.hits == closed.hits + play.hits
    assert opened.rally == pytest.approx(closed.rally + play.hits * play.between_hits)
    assert person(opened, "A").metres == pytest.approx(opened.starts * play.hits / 2 * play.metres)


def test_runs_are_counted_in_metres(drawn, rally):
    out = Run(id="out", by="A", during="feed", to=place(3.0, -12.8016))
    found = loaded(drawn(*rally, out))
    assert person(found, "A").metres == pytest.approx(3.0 * found.starts)


def test_alternatives_share_the_starts(drawn, rally):
    line = Shot(id="line", by="A", after="feed", to=place(3.0, 9.4))
    found = loaded(drawn(*rally, line))
    # Two ways: feed, reply, third; or feed, line.
    assert person(found, "B").hits == pytest.approx(found.starts / 2)
    assert person(found, "A").hits == pytest.approx(found.starts)


def test_serves_and_smashes(drawn):
    serve = Shot(id="serve", by="B", stroke="serve", contact=place(-0.5, 11.9), to=place(2.4, -5.0))
    lob = Shot(id="lob", by="A", after="serve", stroke="lob", contact=place(2.5, -12), to=place(0, 7))
    smash = Shot(id="smash", by="B", after="lob", stroke="smash", contact=place(0, 6), to=place(2, -9))
    found = loaded(drawn(serve, lob, smash))
    assert person(found, "B").serves == pytest.approx(found.starts)
    assert person(found, "B").overheads == pytest.approx(2 * found.starts)


@pytest.mark.parametrize(("held", "said", "there"), [(14, None, 14), (None, 9, 9), (None, None, None)])
def test_when_the_basket_is_empty(drawn, rally, held, said, there):
    from dataclasses import replace

    here = drawn(*rally, Basket(id="basket", kind="basket", place=place(0, 17), balls=held))
    here = replace(here, drill=here.drill.changed(balls=said))
    found = loaded(here)
    assert found.in_play == there
    assert found.empty_after == (None if there is None else pytest.approx(there / found.balls))


def test_a_cooperative_rally_goes_on_until_a_miss(drawn, rally):
    together = Part(id="together", kind="cooperative", shots=("reply", "third"))
    row = Finish(id="end", kind="race", to=10, running=True)
    here = drawn(*rally, together, row)
    success = success_of_a_hit(numbers_of(here))
    assert loaded(here).hits == pytest.approx(min(1 / (1 - success), LONGEST_RALLY))


def test_nothing_drawn_has_no_load(drawn):
    here = drawn()
    assert load(here, numbers_of(here)) is None
