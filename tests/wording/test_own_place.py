"""Where a player stands. Serving to deuce and ad in turn: Rules of Tennis 17 (from memory), as in every game."""

from wording.making import spot, told

from designer.drill.movement import Shot
from designer.drill.rules import Start
from designer.wording.own_place import own_place

SERVER, RECEIVER = spot("A", 0.6858, -12.2301), spot("B", -3.0, 12.8016)
SERVE = Shot(id="serve", by="A", stroke="serve")


def stands(own, other, courts="in turn"):
    serve = Start(id="start", shot="serve", by=("A",), courts=courts)
    return own_place(told(own, other, SERVE, serve, reader="player"), own)


def test_both_move_over_where_it_is_served_to_both_courts_in_turn():
    assert (
        stands(SERVER, RECEIVER) == "1 racket right of the centre mark, ½ racket behind the baseline; ad side: mirrored"
    )
    assert stands(RECEIVER, SERVER).endswith("; ad side: mirrored")
    assert "mirrored" not in stands(SERVER, RECEIVER, "deuce")
    on_the_mark = spot("A", 0.0, -12.2301)
    assert stands(on_the_mark, RECEIVER) == "½ racket behind the centre mark"


def test_who_may_stand_anywhere_is_told_so():
    free = RECEIVER.changed(care="anywhere")
    assert stands(free, SERVER).startswith("anywhere, for example ")
