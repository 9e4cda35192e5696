"""Two rallies on one court, against what anybody sees who stands beside it."""

from designer.drill.base import place
from designer.drill.movement import Shot
from designer.drill.setting import EMPTY
from designer.play.lanes import lanes

ENDS = {"A": "near", "B": "far", "C": "near", "D": "far"}


def hit(id, by, after=None):
    return Shot(id=id, by=by, after=after, to=place(0, 5))


def test_two_pairs_that_play_a_ball_each_are_in_two_lanes():
    scene = EMPTY.having(hit("one", "B"), hit("two", "A", "one"), hit("three", "D"), hit("four", "C", "three"))
    assert lanes(scene, ENDS) == {"A": "A", "B": "A", "C": "C", "D": "C"}


def test_doubles_with_one_ball_has_no_lanes():
    scene = EMPTY.having(hit("one", "B"), hit("two", "A", "one"), hit("three", "D", "two"), hit("four", "C", "three"))
    assert lanes(scene, ENDS) == {}


def test_partners_who_have_not_hit_yet_are_in_no_other_lane():
    assert lanes(EMPTY.having(hit("one", "B"), hit("two", "A", "one")), ENDS) == {}


def test_two_balls_fed_to_one_player_are_one_lane():
    scene = EMPTY.having(hit("one", "B"), hit("two", "A", "one"), hit("three", "D"), hit("four", "A", "three"))
    assert lanes(scene, ENDS) == {}


def test_two_feeders_that_nobody_answers_are_no_lanes():
    assert lanes(EMPTY.having(hit("one", "B"), hit("two", "D")), ENDS) == {}
