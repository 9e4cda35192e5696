"""The plus at the tabs and at easier and harder: the usual way and the usual dials, each one step with a clear name."""

import pytest
from PySide6.QtWidgets import QMenu

from designer.desktop.deeds.way_deeds import WayDeeds
from designer.drill.setting import At, setting_at
from designer.play.dials import dials
from designer.play.ways import usual_way


@pytest.fixture
def wide(wide_kept):
    return wide_kept


def entry(menu, words):
    return next(action for action in menu.actions() if words in action.text())


def test_the_plus_offers_the_usual_way_with_its_parts_and_points(wide):
    menu = wide.findChild(WayDeeds).menu()
    said = [action.text() for action in menu.actions()]
    assert all(any(rung.name in text and rung.about in text for text in said) for rung in usual_way())
    count = len(wide.document.drill.progressions)
    entry(menu, "Restricted, then open").trigger()
    assert len(wide.document.drill.progressions) == count + 1
    assert wide.document.stack.undoText() == "Add progression “Restricted, then open”"
    assert {part.kind for part in wide.view.setting.parts.values()} == {"forced", "open"}
    assert wide.view.setting.finish.to == 7
    wide.document.undo()
    assert len(wide.document.drill.progressions) == count


def test_the_whole_way_is_one_step(wide):
    entry(wide.findChild(WayDeeds).menu(), "All of them").trigger()
    assert [p.name for p in wide.document.drill.progressions[-7:]] == [rung.name for rung in usual_way()]
    assert wide.document.stack.count() == 1
    assert wide.view.at == At(wide.document.drill.progressions[-7].id)


@pytest.mark.parametrize("degree", ["easier", "harder"])
def test_a_dial_makes_a_variation_in_one_press(wide, degree):
    menu = wide.degrees.menu(degree)
    offered = [dial for dial in dials(wide.document.drill, At("p-fed")) if dial.words(degree)]
    assert offered
    dial = offered[0]
    before = len(getattr(wide.document.drill.progressions[1], degree))
    entry(menu, f"{dial.name}:").trigger()
    made = getattr(wide.document.drill.progressions[1], degree)
    assert len(made) == before + 1
    assert wide.view.at == At("p-fed", made[-1].id)
    assert made[-1].name == dial.words(degree)
    assert wide.view.setting != setting_at(wide.document.drill, At("p-fed"))
    one = {"easier": "an easier one", "harder": "a harder one"}[degree]
    assert wide.document.stack.undoText() == f"Add {one}: {made[-1].name[0].lower()}{made[-1].name[1:]}"


def test_the_menus_have_the_same_as_the_plus(wide):
    menus = wide.actions_by_name.menus
    menus["usual way"].aboutToShow.emit()
    assert menus["usual way"].actions()[0].text().startswith("Shadow")
    for degree in ("easier", "harder"):
        menus[f"dials {degree}"].aboutToShow.emit()
        said = [action.text() for action in menus[f"dials {degree}"].actions()]
        found = dials(wide.document.drill, At("p-fed"))
        assert [text.partition(":")[0] for text in said] == [dial.name for dial in found if dial.words(degree)]


def test_a_drill_without_a_dial_to_turn_says_so(window):
    menu = window.degrees.menu("harder")
    assert isinstance(menu, QMenu)
    assert not entry(menu, "No dial").isEnabled()
