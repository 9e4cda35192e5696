import pytest

from designer.desktop.canvas import arrange
from designer.drill.base import Place, place
from designer.drill.edits import put
from designer.drill.items import Cone
from designer.drill.places import anchor
from designer.drill.setting import setting_at

CONES = ("one", "two", "three", "four")


@pytest.fixture
def four(hand):
    """Four cones strewn about."""
    places = ((0.0, -2.0), (1.0, -3.0), (5.0, -2.5), (6.0, -4.0))
    cones = [Cone(kind="cone", id=id, place=place(*at)) for id, at in zip(CONES, places, strict=True)]
    hand.document.perform("Strew", put(hand.document.drill, hand.view.at, *cones))
    return hand


def stand(hand, drill):
    setting = setting_at(drill, hand.view.at)
    return [anchor(setting, id) for id in CONES]


def test_a_line_across_is_midway_between_the_outermost(four):
    drill = arrange.aligned(four.document.drill, four.view.at, CONES, "across")
    assert stand(four, drill) == [(0.0, -3.0), (1.0, -3.0), (5.0, -3.0), (6.0, -3.0)]


def test_a_line_along_keeps_how_deep_each_stands(four):
    drill = arrange.aligned(four.document.drill, four.view.at, CONES, "along")
    assert stand(four, drill) == [(3.0, -2.0), (3.0, -3.0), (3.0, -2.5), (3.0, -4.0)]


def test_spread_leaves_the_outermost_and_makes_all_spaces_equal(four):
    drill = arrange.spread(four.document.drill, four.view.at, CONES, "across")
    assert [x for x, _ in stand(four, drill)] == pytest.approx([0.0, 2.0, 4.0, 6.0])
    assert [y for _, y in stand(four, drill)] == [-2.0, -3.0, -2.5, -4.0]


def test_one_thing_that_is_tied_to_another_in_the_line_ends_in_it_too(four):
    tied = Cone(kind="cone", id="four", place=Place(on="one", at=(1.0, -1.0)))
    drill = put(four.document.drill, four.view.at, tied)
    lined = stand(four, arrange.aligned(drill, four.view.at, CONES, "across"))
    assert len({y for _, y in lined}) == 1


def test_the_other_half_is_a_mirror_and_the_other_end_is_half_a_turn(four):
    for side, where in (("half", (-5.0, -2.5)), ("end", (-5.0, 2.5))):
        drill, (copy,) = arrange.copied_over(four.document.drill, four.view.at, ("three",), side, four.document.source)
        assert anchor(setting_at(drill, four.view.at), copy) == where
        assert anchor(setting_at(drill, four.view.at), "three") == (5.0, -2.5)


def test_an_area_copied_over_twice_lies_where_it_lay(hand):
    before = hand.setting.items["zone"].shape
    drill, (once,) = arrange.copied_over(hand.document.drill, hand.view.at, ("zone",), "end", hand.document.source)
    assert setting_at(drill, hand.view.at).items[once].shape.corners == ((0.0, -11.0), (4.0, -6.0))
    drill, (twice,) = arrange.copied_over(drill, hand.view.at, (once,), "end", hand.document.source)
    assert setting_at(drill, hand.view.at).items[twice].shape == before


def test_the_copy_of_a_person_is_another_person(hand):
    drill, (copy,) = arrange.copied_over(hand.document.drill, hand.view.at, ("spot-b",), "end", hand.document.source)
    spot = setting_at(drill, hand.view.at).spots[copy]
    assert (spot.job, spot.place.at) == ("C", (0.0, -12.0))


def test_a_row_of_five_stands_a_racket_apart(four):
    drill, made = arrange.in_a_row(four.document.drill, four.view.at, ("one",), 5, "across", four.document.source)
    places = [anchor(setting_at(drill, four.view.at), id) for id in made]
    # An adult racket is 27 in long (common practice, no source).
    assert [x for x, _ in places] == pytest.approx([0.6858, 1.3716, 2.0574, 2.7432], abs=2e-4)


@pytest.mark.parametrize("count", [0, 1, 51, 9999])
def test_a_row_that_is_none_is_refused_in_words(four, count):
    with pytest.raises(ValueError, match="A row has 2 to 50 things"):
        arrange.in_a_row(four.document.drill, four.view.at, ("one",), count, "across", four.document.source)


def test_the_same_kind_is_all_cones_and_nothing_else(four):
    assert arrange.of_the_same_kind(four.setting, ("one",)) == {*CONES, "cone"}
    assert arrange.of_the_same_kind(four.setting, ("wide", "feed")) == {"wide", "back", "feed", "reply"}


def test_people_in_a_row_are_other_players(hand):
    drill, made = arrange.in_a_row(hand.document.drill, hand.view.at, ("spot-a",), 3, "across", hand.document.source)
    setting = setting_at(drill, hand.view.at)
    assert [setting.spots[id].job for id in made] == ["C", "D"]
    assert [anchor(setting, id)[0] for id in made] == pytest.approx([0.6858, 1.3716])


def test_balls_alone_make_no_row_and_it_is_said(hand):
    with pytest.raises(ValueError, match="Balls and runs make no row: pick people or things"):
        arrange.in_a_row(hand.document.drill, hand.view.at, ("reply",), 3, "across", hand.document.source)


def test_in_the_mirror_a_ball_bends_the_other_way_and_at_the_other_end_the_same(hand):
    bent = hand.setting.shots["reply"].changed(bend=0.5)
    hand.document.perform("Bend", put(hand.document.drill, hand.view.at, bent))
    for side, bend in (("half", -0.5), ("end", 0.5)):
        drill, (copy,) = arrange.copied_over(hand.document.drill, hand.view.at, ("reply",), side, hand.document.source)
        assert setting_at(drill, hand.view.at).shots[copy].bend == bend
