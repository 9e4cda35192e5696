"""The Drill menu: every sheet opens, every first record is put and opened, progressions move and go."""

import pytest
from desktop import hand

from designer.desktop.forms.kinds_of_rule import KINDS_OF_RULE
from designer.desktop.forms.subjects import SHEETS


@pytest.fixture
def window(blank_kept):
    return blank_kept


@pytest.fixture
def wide(wide_kept):
    return wide_kept


@pytest.mark.parametrize("key", SHEETS)
def test_a_sheet_opens_by_its_entry(window, key):
    window.actions_by_name[f"sheet {key}"].trigger()
    assert window.column.form.subject.key == key


@pytest.mark.parametrize(
    ("kind", "field"), [("start", "starts"), ("part", "parts"), ("points", "points"), ("swap", "swaps")]
)
def test_a_first_record_is_put_and_opened_as_one_step(window, kind, field):
    window.actions_by_name[f"add {kind}"].trigger()
    (made,) = getattr(window.view.setting, field)
    assert window.column.form.subject.key == made
    assert window.view.selection == {made}
    assert window.document.stack.count() == 1


@pytest.mark.parametrize("do", [name for name, _ in KINDS_OF_RULE])
def test_a_rule_of_each_kind_is_put_and_opened(window, do):
    window.actions_by_name[f"rule {do}"].trigger()
    (rule,) = window.view.setting.rules.values()
    assert rule.must.do == do
    assert window.column.form.subject.key == rule.id


def test_a_first_ball_is_a_feed_drawn_on_the_court(make_window, document):
    window = make_window(document)
    window.column.wanted.emit("shot")
    assert window.view.tool == "feed"
    assert window.canvas.hasFocus()


def test_players_are_opened_by_their_letter(wide):
    menu = wide.actions_by_name.menus["jobs"]
    menu.aboutToShow.emit()
    next(action for action in menu.actions() if action.text().startswith("B")).trigger()
    assert wide.column.form.subject.key == "job:B"
    hand.choose(wide, "hand", "left-handed")
    assert wide.document.drill.job("B").hand == "left"


def test_progressions_move_and_go(wide):
    ids = [progression.id for progression in wide.document.drill.progressions]
    wide.actions_by_name["progression later"].trigger()
    assert [p.id for p in wide.document.drill.progressions] == [ids[0], ids[2], ids[1], ids[3]]
    assert wide.view.at.progression == ids[1]
    wide.actions_by_name["progression remove"].trigger()
    assert ids[1] not in [p.id for p in wide.document.drill.progressions]
    wide.actions_by_name["undo"].trigger()
    wide.actions_by_name["undo"].trigger()
    assert [p.id for p in wide.document.drill.progressions] == ids


def test_entries_that_would_do_nothing_are_off(window):
    for name in ("remove", "earlier", "later", "previous", "next"):
        assert not window.actions_by_name[f"progression {name}"].isEnabled()
    assert not window.actions_by_name["variation form"].isEnabled()


def test_a_variation_is_named(window):
    window.actions_by_name["variation harder"].trigger()
    window.actions_by_name["variation form"].trigger()
    hand.write(hand.field(window, "name").line, "Wider")
    assert window.document.drill.progressions[0].harder[0].name == "Wider"
    window.actions_by_name["go as set"].trigger()
    assert window.view.at.variation is None
    window.actions_by_name["go harder"].trigger()
    assert window.view.at.variation == window.document.drill.progressions[0].harder[0].id


def test_a_ball_that_is_not_reached_gets_its_answer(wide):
    before = set(wide.view.setting.points)
    wide.column.wanted.emit("unreached feed")
    (made,) = set(wide.view.setting.points) - before
    points = wide.view.setting.points[made]
    assert (points.on[0].what, points.on[0].of, points.on[0].untouched) == ("missed", ("feed",), True)
    assert points.gives.then == "replay"
