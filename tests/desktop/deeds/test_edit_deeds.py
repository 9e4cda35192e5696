"""The Edit and Insert menus: they do to what is picked what the keys of the court do."""

import pytest
from desktop import hand

from designer.bundle import sample
from designer.desktop.document import Document
from designer.drill.setting import At
from designer.storage.reading import open_drill


@pytest.fixture
def window(blank_kept):
    return blank_kept


@pytest.fixture
def wide(make_window):
    path = sample("wide-start.drill.json")
    opened = open_drill(path)
    window = make_window(Document(opened.drill, path=path), opened)
    window.view.go_to(At("p-fed"))
    hand.settle()
    return window


def test_what_is_picked_is_deleted_on_the_court_and_off_it(wide):
    wide.view.select(["tick"])
    wide.actions_by_name["delete"].trigger()
    assert "tick" not in wide.view.setting.items
    wide.view.select(["end"])
    wide.actions_by_name["delete"].trigger()
    assert wide.view.setting.finish is None


def test_duplicates_are_picked(wide):
    wide.view.select(["tick"])
    wide.actions_by_name["duplicate"].trigger()
    (copy,) = wide.view.selection
    assert copy != "tick"
    assert wide.view.setting.items[copy].marked == wide.view.setting.items["tick"].marked


def test_all_and_nothing(wide):
    wide.actions_by_name["select all"].trigger()
    assert {"tick", "reply", "spot-a", "back"} <= wide.view.selection
    wide.actions_by_name["select none"].trigger()
    assert not wide.view.selection


def test_entries_are_on_only_where_they_can_do_something(wide):
    actions = wide.actions_by_name
    for name in ("delete", "duplicate", "open form", "select none", "follow"):
        assert not actions[name].isEnabled(), name
    wide.view.select(["reply"])
    assert actions["open form"].isEnabled()
    wide.view.select(["reply", "feed"])
    assert actions["delete"].isEnabled()
    assert not actions["open form"].isEnabled()


def test_a_picked_record_follows_again(wide):
    wide.view.go_to(At("p-fed", "v-one-racket"))
    wide.view.select(["feed-zone"])
    assert wide.actions_by_name["follow"].isEnabled()
    wide.actions_by_name["follow"].trigger()
    assert "feed-zone" not in wide.view.changed_ids()


def test_a_cord_is_hung_over_the_net_and_opened(window):
    window.actions_by_name["height cord"].trigger()
    (cord,) = window.view.setting.items.values()
    assert cord.kind == "height cord"
    # Six feet of 0.3048 m: twice the height of the net's middle, ITF Rules of Tennis, rule 1.
    assert cord.height == pytest.approx(6 * 0.3048)
    assert window.column.form.subject.key == cord.id


def test_the_menu_of_what_is_picked_holds_what_can_be_done(wide):
    menu = wide.deeds.edit.menu()
    assert wide.actions_by_name["delete"] not in menu.actions()
    wide.view.select(["reply"])
    menu = wide.deeds.edit.menu()
    assert {wide.actions_by_name[name] for name in ("open form", "duplicate", "delete")} <= set(menu.actions())


def test_the_picked_record_opens(wide):
    wide.view.select(["reply"])
    wide.actions_by_name["open form"].trigger()
    assert wide.column.form.subject.key == "reply"
