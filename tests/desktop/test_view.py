import random

import pytest

from designer.desktop.document import Document
from designer.desktop.view import View
from designer.drill.base import place
from designer.drill.drill import Changes, Drill, Progression, Variation
from designer.drill.edits import delete, put, remove_progression, remove_variation
from designer.drill.items import Cone
from designer.drill.setting import At

pytestmark = pytest.mark.usefixtures("qapp")
FIRST, SECOND, HARDER = At("one"), At("two"), At("two", "wider")


def cone(id, x=1.0):
    return Cone(kind="cone", id=id, place=place(x, 0.0))


@pytest.fixture
def document():
    drill = Drill(
        id="d-test",
        progressions=(
            Progression(id="one", changes=Changes(items=(cone("a"), cone("b", 2.0)))),
            Progression(
                id="two", harder=(Variation(id="wider", name="Wider", changes=Changes(items=(cone("b", 3.0),))),)
            ),
        ),
    )
    return Document(drill, source=random.Random(1))


@pytest.fixture
def view(document):
    return View(document)


def heard(signal):
    calls = []
    signal.connect(lambda *values: calls.append(values))
    return calls


def test_it_looks_at_the_main_progression_first(document):
    assert View(document).at == FIRST
    document.perform("Make main", document.drill.changed(main="two"))
    assert View(document).at == SECOND


def test_the_setting_is_the_one_that_a_gesture_shows(document, view):
    document.preview(put(document.drill, FIRST, cone("a", 9.0)))
    assert view.setting.items["a"].place.at == (9.0, 0.0)
    document.end_preview()
    assert view.setting.items["a"].place.at == (1.0, 0.0)


def test_only_what_is_there_can_be_picked(view):
    picks = heard(view.selection_changed)
    view.select(("a", "nothing"))
    view.select(("a",))
    assert view.selection == {"a"}
    assert picks == [(frozenset({"a"}),)]


def test_what_is_deleted_is_no_longer_picked_or_hovered(document, view):
    view.select(("a", "b"))
    view.set_hovered("a")
    document.perform("Delete cone", delete(document.drill, FIRST, ("a",)))
    assert view.selection == {"b"}
    assert view.hovered is None


def test_what_the_next_setting_has_stays_picked(document, view):
    view.select(("a", "b"))
    document.perform("Delete cone", delete(document.drill, SECOND, ("a",)))
    view.go_to(SECOND)
    assert view.selection == {"b"}


def test_a_variation_that_goes_leaves_its_progression_in_view_and_a_progression_the_main_one(document, view):
    view.go_to(HARDER)
    document.perform("Remove", remove_variation(document.drill, HARDER))
    assert view.at == SECOND
    document.perform("Remove", remove_progression(document.drill, "two"))
    assert view.at == FIRST


def test_undo_shows_where_it_changed_something(document, view):
    view.go_to(HARDER)
    document.perform("Move cone", put(document.drill, HARDER, cone("b", 4.0)))
    view.go_to(FIRST)
    document.undo()
    assert view.at == HARDER


def test_undo_of_what_is_in_view_stays_there(document, view):
    document.perform("Move cone", put(document.drill, FIRST, cone("a", 4.0)))
    view.go_to(SECOND)
    document.undo()
    assert view.at == SECOND, "the second progression lies on the first and changed as well"


def test_a_variation_marks_what_it_has_of_its_own_and_a_progression_nothing(view):
    view.go_to(HARDER)
    assert view.changed_ids() == {"b"}
    view.go_to(SECOND)
    assert view.changed_ids() == frozenset()


def test_names_that_mean_nothing_are_refused(view):
    with pytest.raises(ValueError, match="there is no tool 'spanner'"):
        view.set_tool("spanner")
    with pytest.raises(KeyError):
        view.go_to(At("nowhere"))
    assert view.at == FIRST


def test_each_choice_is_told_once(view):
    told = [
        heard(signal) for signal in (view.tool_changed, view.snapping_changed, view.units_changed, view.theme_changed)
    ]
    for _ in range(2):
        view.set_tool("cone")
        view.set_snapping(False)
        view.set_units("metres")
        view.set_theme("dark")
    assert told == [[("cone",)], [(False,)], [("metres",)], [("dark",)]]
