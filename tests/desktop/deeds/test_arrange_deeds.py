"""The Edit menu's entries for several things, in the real window with the real clipboard."""

from desktop import hand

from designer.drill.base import place
from designer.drill.edits import put
from designer.drill.items import Cone
from designer.drill.places import anchor


def strewn(window):
    cones = [Cone(kind="cone", id=f"cone-{x}", place=place(float(x), -2.0 - x)) for x in (0, 1, 4)]
    window.perform("Strew", put(window.document.drill, window.view.at, *cones))
    window.view.select(cone.id for cone in cones)
    return [cone.id for cone in cones]


def do(window, name):
    window.actions_by_name[name].trigger()
    hand.settle()


def test_each_is_one_step_with_a_name_of_its_own(window, prompts):
    strewn(window)
    prompts.answers = ["4 along"]
    for name, says in (
        ("align across", "Line up 3 items"),
        ("spread", "Spread 3 items evenly"),
        ("copy to end", "Copy 3 items to the other end"),
        ("row", "Make a row of 4"),
    ):
        steps = window.document.stack.count()
        do(window, name)
        assert window.document.stack.undoText() == says
        assert window.document.stack.count() == steps + 1


def test_copied_in_one_window_is_pasted_in_another(make_window, window, source):
    from designer.desktop.blank import blank
    from designer.desktop.document import Document

    ids = strewn(window)
    where = sorted(anchor(window.view.setting, id) for id in ids)
    do(window, "copy")
    other = make_window(Document(blank(source), source=source))
    do(other, "paste")
    assert sorted(anchor(other.view.setting, id) for id in other.view.selection) == where
    assert other.document.stack.undoText() == "Paste 3 items"


def test_an_answer_that_makes_no_row_is_explained(window, prompts):
    strewn(window)
    said = []
    window.canvas.said.connect(said.append)
    for answer in ("many", "5 up", "900", "-3", ""):
        prompts.answers = [answer]
        do(window, "row")
    assert window.document.stack.count() == 1
    assert len(said) == 5


def test_what_needs_several_is_grey_for_one(window):
    ids = strewn(window)
    window.view.select(ids[:1])
    actions = window.actions_by_name
    assert [actions[name].isEnabled() for name in ("copy", "align across", "spread")] == [True, False, False]
    window.view.select(ids[:2])
    assert [actions[name].isEnabled() for name in ("copy", "align across", "spread")] == [True, True, False]
    window.view.select(ids[:1])
    do(window, "select kind")
    assert window.view.selection == set(ids)
