import pytest
from hypothesis import given
from hypothesis import strategies as st
from strategies import changes_over, drills, settings

from designer.drill.base import Place, place
from designer.drill.drill import Changes, Drill, Progression, Variation
from designer.drill.items import Cone, Disc
from designer.drill.movement import Run
from designer.drill.rules import Finish
from designer.drill.setting import (
    EMPTY,
    KINDS,
    At,
    Setting,
    addresses,
    all_ids,
    all_settings,
    below,
    changes_at,
    difference,
    find_setting,
    main_setting,
    resolve,
    setting_at,
    variations,
)


@st.composite
def pairs(draw):
    """A setting and one that lies on it."""
    parent = draw(settings())
    return parent, draw(settings(parent))


@given(pairs())
def test_laying_the_difference_over_the_setting_below_gives_the_setting(pair):
    parent, setting = pair
    assert resolve(parent, difference(parent, setting)) == setting


@given(settings())
def test_a_setting_like_the_one_below_has_nothing_of_its_own(setting):
    assert difference(setting, setting) == Changes()
    assert resolve(setting, Changes()) == setting


@given(pairs())
def test_a_setting_stores_no_record_that_it_shares_with_the_one_below(pair):
    parent, setting = pair
    own = difference(parent, setting)
    for kind in KINDS:
        for record in getattr(own, kind):
            assert getattr(parent, kind).get(record.id) != record or record.id in own.drop


@given(settings().flatmap(lambda parent: st.tuples(st.just(parent), changes_over(parent))))
def test_changes_that_say_more_than_they_need_give_the_same_setting(drawn):
    parent, (changes, setting) = drawn
    assert resolve(parent, changes) == setting


@given(pairs())
def test_every_id_stands_once_in_a_setting(pair):
    _, setting = pair
    names = [record.id for _, record in setting.records()]
    assert len(names) == len(set(names)) == len(setting.ids())
    assert list(setting.names()) == [(kind, record.id) for kind, record in setting.records()]


def cone(id, x=0.0):
    return Cone(kind="cone", id=id, place=place(x, 0.0))


def test_a_dropped_record_comes_back_where_a_later_setting_has_it_again():
    one = resolve(EMPTY, Changes(items=(cone("home"),)))
    two = resolve(one, Changes(drop=("home",)))
    assert two == EMPTY
    assert resolve(two, Changes(items=(cone("home", 1.0),))).items["home"].place.at == (1.0, 0.0)


def test_an_id_may_stand_for_another_kind_in_a_later_setting():
    one = EMPTY.having(cone("thing"))
    two = EMPTY.having(Run(id="thing", by="A", to=Place()))
    assert resolve(one, difference(one, two)) == two


@pytest.mark.parametrize("word", ["ball", "in-play"])
def test_a_record_called_like_a_word_for_dropping_takes_nothing_with_it(word):
    parent = Setting(in_play="right half", ball="red").having(cone(word), cone("home"))
    setting = parent.without(word)
    assert resolve(parent, difference(parent, setting)) == setting
    bare = Setting(items=parent.items)
    assert resolve(parent, difference(parent, bare)) == bare


def test_the_finish_is_replaced_and_dropped_like_a_record():
    race = EMPTY.having(Finish(id="end", kind="race", to=7))
    game = EMPTY.having(Finish(id="other", kind="game"))
    assert resolve(race, difference(race, game)) == game
    assert resolve(race, difference(race, EMPTY)) == EMPTY
    assert race.find("end") == race.finish
    assert race.without("end") == EMPTY


def test_a_record_takes_the_place_of_the_one_of_its_id_whatever_kind_that_was():
    setting = EMPTY.having(cone("thing"), cone("home")).having(Run(id="thing", by="A", to=Place()))
    assert (list(setting.items), list(setting.runs)) == (["home"], ["thing"])
    setting = setting.having(Finish(id="thing", kind="race")).having(Disc(kind="disc", id="thing", place=Place()))
    assert setting.finish is None
    assert setting.runs == {}
    assert isinstance(setting.items["thing"], Disc)


DRILL = Drill(
    id="d-ladder",
    main="p-two",
    progressions=(
        Progression(
            id="p-one",
            changes=Changes(items=(cone("home"),)),
            easier=(Variation(id="v-near", changes=Changes(items=(cone("home", 1.0),))),),
            harder=(Variation(id="v-far"), Variation(id="easier1")),
        ),
        Progression(
            id="p-two",
            changes=Changes(items=(cone("away", 2.0),)),
            others=(Variation(id="v-four", changes=Changes(drop=("home",))),),
        ),
    ),
)


def test_a_progression_lies_on_the_one_before_and_not_on_its_variations():
    assert setting_at(DRILL, At("p-two")) == EMPTY.having(cone("home"), cone("away", 2.0))
    assert setting_at(DRILL, At("p-one", "v-near")) == EMPTY.having(cone("home", 1.0))
    assert setting_at(DRILL, At("p-two", "v-four")) == EMPTY.having(cone("away", 2.0))


@given(drills())
def test_every_address_is_a_setting_on_the_one_below_it(drill):
    found = list(addresses(drill))
    assert [(at, setting_at(drill, at)) for at in found] == list(all_settings(drill))
    assert len(found) == sum(1 + len(list(variations(rung))) for rung in drill.progressions)
    for at in found:
        assert setting_at(drill, at) == resolve(below(drill, at), changes_at(drill, at))
        assert setting_at(drill, at).ids() <= all_ids(drill)


@pytest.mark.parametrize("at", [At("p-none"), At("p-one", "v-none"), At("p-two", "v-near")])
def test_what_the_drill_has_not_is_not_found(at):
    with pytest.raises(KeyError):
        setting_at(DRILL, at)


@pytest.mark.parametrize(
    ("name", "at"),
    [
        ("p-one", At("p-one")),
        ("1", At("p-one")),
        ("2/", At("p-two")),
        ("2/as-set", At("p-two")),
        ("1/easier", At("p-one", "v-near")),
        ("p-one/v-near", At("p-one", "v-near")),
        ("1/harder", At("p-one", "v-far")),
        ("1/harder2", At("p-one", "easier1")),
        ("1/easier1", At("p-one", "easier1")),  # an id comes before a number
        ("2/other", At("p-two", "v-four")),
        ("2/other1", At("p-two", "v-four")),
    ],
)
def test_settings_are_named_by_id_and_by_number(name, at):
    assert find_setting(DRILL, name) == at


@pytest.mark.parametrize(
    ("name", "there_is"),
    [
        ("3", "1 (p-one), 2 (p-two)"),
        ("0", "2 (p-two)"),
        ("", "1 (p-one)"),
        ("1/hard", "harder2"),
        ("2/easier", "v-four"),
    ],
)
def test_a_name_that_is_not_there_is_answered_by_those_that_are(name, there_is):
    with pytest.raises(KeyError) as refused:
        find_setting(DRILL, name)
    assert there_is in refused.value.args[0]


def test_a_card_is_made_of_the_main_progression_else_the_first():
    assert main_setting(DRILL) == At("p-two")
    assert main_setting(DRILL.changed(main=None)) == At("p-one")
    assert main_setting(DRILL.changed(main="p-gone")) == At("p-one")
