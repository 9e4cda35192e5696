"""The menu of a cone: a ball that lands in its half is to land past it."""

from desktop import hand

from designer.drill.base import place
from designer.drill.edits import put
from designer.drill.items import Cone
from designer.drill.movement import Shot
from designer.review.checks import reviewed


def test_a_reply_is_tied_to_a_cone_where_the_cone_stands(blank_kept, qtbot):
    window = blank_kept
    window.start_row.players.emit(2)
    drill, at = window.document.drill, window.view.at
    for record in (
        Cone(kind="cone", id="deep", place=place(2.0, 8.0)),
        Shot(id="feed", by="A", stroke="racket feed", to=place(0.0, 6.0)),
        Shot(id="reply", by="B", after="feed", to=place(1.0, -9.0)),
        Shot(id="third", by="A", after="reply", to=place(1.5, 9.5)),
    ):
        drill = put(drill, at, record)
    window.document.perform("Draw it", drill)
    window.view.select(("deep",))
    (entry,) = [each for each in window.deeds.edit.menu().actions() if each.text().endswith("must land past it")]
    entry.trigger()
    qtbot.waitUntil(lambda: window.column.form is not None)
    assert hand.sentence(window, "Ball 3 short of the cone line.")
    (line,) = [item for item in window.view.setting.items.values() if item.kind == "line"]
    assert (line.marked, {y for _, y in line.corners}) == ("in thought", {8.0})
    assert not [check for check in reviewed(window.document.drill, at)[0] if check.weight == "error"]
    window.document.undo()
    assert not window.view.setting.rules
