"""The View and Help menus: how things are shown, and remembered for the next window."""

import pytest

from designer.desktop import settings
from designer.desktop.look import DARK
from designer.desktop.style import style


def test_a_look_is_taken_by_window_and_court(window):
    window.actions_by_name["theme dark"].trigger()
    assert style().look == DARK
    assert window.view.theme == "dark"
    assert settings.theme() == "dark"
    window.actions_by_name["theme light"].trigger()
    assert window.view.theme == "light"


@pytest.mark.parametrize("units", ["metres", "feet", "rackets"])
def test_units_are_taken_and_remembered(make_window, document, units):
    window = make_window(document)
    window.actions_by_name[f"units {units}"].trigger()
    assert window.view.units == units
    assert settings.units() == units
    assert window.actions_by_name[f"units {units}"].isChecked()
    ruler = next(mark for mark in window.canvas.court_scene._marks if mark.kind == "rulers" and mark.part == "across")
    word = next(shape.text for shape in ruler.primitives if getattr(shape, "text", "").isalpha())
    assert word == units  # the rulers along the court count the same


@pytest.mark.parametrize("lie", ["upright", "across", "fitting"])
def test_the_court_lies_as_it_is_told(window, lie):
    window.actions_by_name[f"lie {lie}"].trigger()
    assert window.view.lie == lie


def test_zoom_and_fit(window):
    fitted = window.canvas.pixels_per_metre
    window.actions_by_name["zoom in"].trigger()
    assert window.canvas.pixels_per_metre > fitted
    window.actions_by_name["zoom out"].trigger()
    window.actions_by_name["zoom out"].trigger()
    assert window.canvas.pixels_per_metre < fitted
    window.actions_by_name["fit"].trigger()
    assert window.canvas.pixels_per_metre == pytest.approx(fitted)


def test_the_other_end_and_snapping(window):
    window.actions_by_name["turned"].trigger()
    assert window.view.turned
    assert window.actions_by_name["snapping"].isChecked()
    window.actions_by_name["snapping"].trigger()
    assert not window.view.snapping


def test_the_card_is_put_away_and_comes_back_when_a_form_is_wanted(window):
    window.actions_by_name["card"].trigger()
    assert window.column.isHidden()
    window.actions_by_name["sheet drill:facts"].trigger()
    assert window.column.isVisible()


def test_about_says_which_program_this_is(window, prompts):
    window.actions_by_name["about"].trigger()
    assert prompts.asked[-1][1].startswith("Drill Designer")


def test_half_the_court_what_is_picked_and_the_whole_again(window):
    actions, canvas = window.actions_by_name, window.canvas
    fitted = canvas.pixels_per_metre
    assert not actions["zoom picked"].isEnabled()
    window.start_row.players.emit(2)
    window.view.select(window.view.setting.spots)
    for name in ("half near", "half far"):
        actions[name].trigger()
        assert canvas.pixels_per_metre > fitted
    actions["fit"].trigger()
    window.view.select([next(iter(window.view.setting.spots))])
    actions["zoom picked"].trigger()
    assert canvas.pixels_per_metre > fitted


def test_the_players_are_shown_on_the_whole_screen_and_the_window_is_there_again_after(window, qtbot):
    window.start_row.players.emit(2)
    window.actions_by_name["show"].trigger()
    show = window.deeds.view.shown
    assert show.isFullScreen()
    assert show.at == window.view.at
    with qtbot.waitSignal(show.left):
        show.close()
    assert window.isVisible()
