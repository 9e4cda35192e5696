"""The Versions menu: every version as one step, what it warns of said, and what has no single answer asked."""

import pytest

from designer.drill.edits import put
from designer.drill.setting import addresses, setting_at
from designer.play import versions


@pytest.fixture
def wide(wide_kept):
    return wide_kept


def entry(window, *words):
    menu = window.actions_by_name.menus["versions"]
    menu.aboutToShow.emit()
    for word in words[:-1]:
        menu = next(action.menu() for action in menu.actions() if word in action.text())
    return next(action for action in menu.actions() if words[-1] in action.text())


@pytest.mark.parametrize(
    ("words", "version"),
    [
        (("Mirrored",), versions.mirror),
        (("other wing",), versions.switch_wing),
        (("other end",), versions.swap_ends),
        (("change jobs", "A and B"), lambda drill: versions.swap_jobs(drill, "A", "B")),
    ],
)
def test_a_version_is_one_step_and_undone_from_where_it_is_told_of(wide, words, version):
    before = wide.document.drill
    entry(wide, *words).trigger()
    assert wide.document.drill == version(before).drill
    assert wide.document.stack.count() == 1
    assert wide.notice.words
    assert "turns it back" in entry(wide, "turns it back").text()
    next(link for link in wide.notice._links if link.text() == "Undo it").click()
    assert wide.document.drill == before
    assert wide.notice.words == ""


def test_a_left_hander_is_asked_for_strokes_or_paths_and_nothing_is_guessed(wide, prompts):
    before = wide.document.drill
    prompts.answers = [None]
    entry(wide, "One player", "A left-handed").trigger()
    assert wide.document.drill == before
    (_, question, more, answers) = prompts.asked[-1]
    assert question == "A plays left-handed. What stays?"
    assert "no single answer" in more
    assert answers == ("A’s strokes", "the ball’s paths")
    prompts.answers = [1]
    entry(wide, "One player", "A left-handed").trigger()
    assert wide.document.drill == versions.change_hand(before, "A", "paths").drill
    assert wide.document.stack.undoText() == "Make A left-handed, keep the ball’s paths"
    assert entry(wide, "One player", "A right-handed").isEnabled(), "and back again"


def test_what_has_turned_silly_is_said_with_the_names_of_the_window(wide):
    drill = wide.document.drill
    for at in addresses(drill):
        shot = setting_at(drill, at).shots.get("reply")
        drill = drill if shot is None else put(drill, at, shot.changed(wing="forehand", stroke="smash"))
    wide.document.perform("Make it a smash", drill)
    entry(wide, "other wing").trigger()
    assert "Ball 2, A: a smash off the backhand is hardly played." in wide.notice.words


def test_a_letter_that_only_stands_on_the_court_has_a_hand_too(window):
    window.start_row.players.emit(2)
    drill = window.document.drill
    window.document.perform("No jobs", drill.changed(jobs=()))
    window.prompts.answers = [0]
    entry(window, "One player", "A left-handed").trigger()
    assert window.document.drill.job("A").hand == "left"
