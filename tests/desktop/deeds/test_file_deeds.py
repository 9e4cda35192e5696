"""The File menu: it asks for windows, and lists what was used last."""

from designer.bundle import sample
from designer.desktop import settings
from designer.desktop.blank import blank
from designer.desktop.document import Document


def test_new_asks_for_a_window(window, qtbot):
    with qtbot.waitSignal(window.wanted) as wanted:
        window.actions_by_name["new"].trigger()
    assert wanted.args == [()]


def test_open_asks_which_and_remembers_the_folder(window, qtbot, prompts, tmp_path):
    paths = (tmp_path / "one.drill.json", tmp_path / "two.drill.json")
    prompts.answers = [paths]
    with qtbot.waitSignal(window.wanted) as wanted:
        window.actions_by_name["open"].trigger()
    assert wanted.args == [paths]
    assert settings.last_folder() == tmp_path


def test_changing_one_s_mind_opens_nothing(window, qtbot, prompts):
    prompts.answers = [()]
    with qtbot.assertNotEmitted(window.wanted):
        window.actions_by_name["open"].trigger()


def test_recent_drills_are_listed_and_forgotten(window, qtbot):
    menu = window.actions_by_name.menus["recent"]
    menu.aboutToShow.emit()
    assert [action.isEnabled() for action in menu.actions()] == [False]
    settings.add_recent(sample("wide-start.drill.json"))
    menu.aboutToShow.emit()
    with qtbot.waitSignal(window.wanted) as wanted:
        menu.actions()[0].trigger()
    assert wanted.args == [(sample("wide-start.drill.json"),)]
    menu.actions()[-1].trigger()
    assert settings.recent_files() == ()


def test_a_sample_is_at_hand_as_a_drill_of_one_s_own(window, qtbot):
    with qtbot.waitSignal(window.copies_wanted) as wanted:
        window.actions_by_name["first drill"].trigger()
    assert wanted.args[0][0].name == "wide-start.drill.json"


def test_what_cannot_be_done_yet_is_off(window):
    assert not window.actions_by_name["revert"].isEnabled()
    assert window.actions_by_name["save"].isEnabled()


def test_the_window_menu_lists_every_drill_and_marks_what_is_not_saved(make_window, document, source):
    first = make_window(document)
    second = make_window(Document(blank(source).model_copy(update={"title": "Deep & wide"}), source=source))
    second.start_row.players.emit(2)
    menu = first.actions_by_name.menus["Window"]
    for _ in range(2):  # a second look lists no more
        menu.aboutToShow.emit()
    entries = menu.actions()[2:]
    assert sorted(entry.text() for entry in entries) == ["Deep && wide *", "Untitled drill"]
    assert [entry.text() for entry in entries if entry.isChecked()] == ["Untitled drill"]
    assert first.actions_by_name["next window"].isEnabled()
    first.actions_by_name["next window"].trigger()
