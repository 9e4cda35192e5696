import pytest
from hypothesis import given
from strategies import drills

from designer.drill.base import Place, place
from designer.drill.drill import Changes, Drill, Progression, Variation
from designer.drill.items import Cone
from designer.drill.movement import Run
from designer.drill.rules import Finish
from designer.drill.setting import addresses, changes_at, setting_at
from designer.storage.reading import read_drill
from designer.storage.repair import repaired
from designer.storage.writing import drill_bytes


def cone(id, x=0.0):
    return Cone(kind="cone", id=id, place=place(x, 0.0))


def drill(*rungs):
    return Drill(id="d", progressions=rungs)


@given(drills())
def test_a_drill_that_is_in_order_is_left_alone(made):
    assert repaired(made) == (made, ())


def test_the_first_record_keeps_its_id_and_the_second_gets_a_new_one():
    mended, notices = repaired(
        drill(Progression(id="p", changes=Changes(items=(cone("home"), cone("home", 1.0), cone("home-2")))))
    )
    assert [(item.id, item.place.at[0]) for item in mended.progressions[0].changes.items] == [
        ("home", 0.0),
        ("home-3", 1.0),
        ("home-2", 0.0),
    ]
    assert notices == ("progression 1, items: the id 'home' stands for two records; the later one is now 'home-3'.",)


def test_an_id_of_two_kinds_in_one_setting_is_mended_too():
    changes = Changes(items=(cone("x"),), runs=(Run(id="x", by="A", to=Place()),), finish=Finish(id="x", kind="race"))
    mended, notices = repaired(drill(Progression(id="p", changes=changes)))
    own = mended.progressions[0].changes
    assert (own.items[0].id, own.runs[0].id, own.finish.id) == ("x", "x-2", "x-3")
    assert len(notices) == 2


def test_the_same_twins_get_the_same_names_in_every_setting():
    twins = Changes(items=(cone("x"), cone("x", 1.0)))
    moved = Changes(items=(cone("x", 5.0), cone("x", 6.0)))
    easier = Variation(id="v", changes=moved)
    mended, _ = repaired(
        drill(Progression(id="p", changes=twins, easier=(easier,)), Progression(id="q", changes=moved))
    )
    for at in addresses(mended):
        assert set(setting_at(mended, at).items) == {"x", "x-2"}


def test_settings_get_ids_of_their_own():
    rungs = (
        Progression(id="p", easier=(Variation(id="v"),), harder=(Variation(id="v", name="Far"),)),
        Progression(id="p", easier=(Variation(id="v"),)),
    )
    mended, notices = repaired(drill(*rungs))
    found = list(addresses(mended))
    assert len(set(found)) == len(found) == 5
    assert (found[0].progression, found[3].progression) == ("p", "p-2")
    assert mended.progressions[1].easier[0].id == "v"
    assert notices == (
        "progression 1, variation “Far”: its id 'v' stands for another one too; it is now 'v-2'.",
        "progression 2: its id 'p' stands for another one too; it is now 'p-2'.",
    )


def test_the_longest_id_still_finds_another():
    long = "a" * 40
    mended, _ = repaired(drill(Progression(id="p", changes=Changes(items=(cone(long), cone(long), cone(long))))))
    ids = [item.id for item in mended.progressions[0].changes.items]
    assert len(set(ids)) == 3
    assert {len(id) for id in ids} == {40}


@pytest.mark.parametrize("times", [1, 2])
def test_a_mended_drill_needs_no_mending_when_it_is_read_again(times):
    data = drill_bytes(
        drill(Progression(id="p", changes=Changes(items=(cone("x"),) * 3), easier=(Variation(id="v"),) * 2))
    )
    for _ in range(times):
        opened = read_drill(data, "x")
        data = drill_bytes(opened.drill)
    assert (opened.notices == ()) == (times == 2)
    ids = [item.id for item in changes_at(opened.drill, next(addresses(opened.drill))).items]
    assert ids == ["x", "x-2", "x-3"]
