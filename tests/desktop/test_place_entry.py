"""A place typed in any unit: seen at once, settled by Enter, left without trace by Esc."""

import pytest
from desktop import hand
from PySide6.QtCore import QRectF, Qt
from PySide6.QtWidgets import QWidget

from designer.desktop.place_entry import PlaceEntry
from designer.drill.base import Place
from designer.drill.edits import put
from designer.drill.items import Cone
from designer.drill.setting import setting_at

# ITF Rules of Tennis, rule 1: the singles lines are 27 ft apart, the baselines 78 ft.
SINGLES, BASE = 13.5 * 0.3048, 39 * 0.3048


@pytest.fixture
def window(wide_kept):
    document, view = wide_kept.document, wide_kept.view
    cone = Cone(kind="cone", id="cone", place=Place(at=(1.0, -3.0)))
    document.perform("Add a cone", put(document.drill, view.at, cone))
    view.select({"cone"})
    return wide_kept


def entry(window):
    window.actions_by_name["type place"].trigger()
    hand.settle()
    return window.deeds.edit.entry


def put_in(box, text):
    box.selectAll()
    hand.write(box, text)


def line(made, axis, words):
    box = made.lines[axis]
    place = box.findText(words)
    assert place >= 0
    box.setCurrentIndex(place)
    box.activated.emit(place)


def stood(window):
    return window.view.setting.items["cone"].place.at


def settled(window):
    return setting_at(window.document.drill, window.view.at).items["cone"].place.at


def test_what_is_typed_shows_at_once_and_enter_makes_it_one_step(window):
    made = entry(window)
    assert made.counts["across"].hasFocus()
    line(made, "across", "in from the right singles line")
    line(made, "along", "inside the baseline")
    put_in(made.counts["across"], "5 ft 2")
    put_in(made.counts["along"], "1.5 m")
    wanted = pytest.approx((SINGLES - 62 * 0.0254, -(BASE - 1.5)), abs=1e-4)
    assert stood(window) == wanted
    assert settled(window) == (1.0, -3.0)
    steps = window.document.stack.count()
    hand.key(made.counts["along"], Qt.Key.Key_Return)
    assert stood(window) == wanted
    assert window.document.stack.count() == steps + 1
    assert window.document.stack.undoText() == "Move cone to a typed place"
    assert window.canvas.hasFocus()


def test_esc_leaves_no_trace(window):
    made = entry(window)
    put_in(made.counts["across"], "2 rackets")
    assert stood(window) != (1.0, -3.0)
    hand.key(made.counts["across"], Qt.Key.Key_Escape)
    assert stood(window) == (1.0, -3.0)
    assert window.document.stack.count() == 1


def test_another_line_or_end_shows_the_same_place_counted_anew(window):
    made = entry(window)
    line(made, "along", "behind the service line")
    assert made.counts["along"].text().startswith("−")  # it stands on the other side of that line
    assert stood(window) == (1.0, -3.0)
    hand.click(made.ends.segments()[1])
    assert stood(window) == (-1.0, 3.0)
    made.close()


def test_what_is_no_length_is_said_and_settles_nothing(window):
    made = entry(window)
    put_in(made.counts["across"], "near the fence")
    assert "“near”" in made.said.text()
    hand.key(made.counts["across"], Qt.Key.Key_Return)
    assert made.isVisible()
    put_in(made.counts["across"], "99 m")
    assert "farther" in made.said.text()
    hand.key(made.counts["across"], Qt.Key.Key_Return)
    assert window.document.stack.count() == 1  # the cone itself: nobody stands 99 m off the court
    assert settled(window) == (1.0, -3.0)
    made.close()


def test_undo_and_another_pick_take_the_box_away(window):
    made = entry(window)
    put_in(made.counts["across"], "3 rackets")
    window.deeds.edit.undo()
    assert stood(window) == (1.0, -3.0)
    made = entry(window)
    window.view.select({"cone", *window.view.setting.spots})
    hand.settle()
    assert not window.actions_by_name["type place"].isEnabled()
    assert stood(window) == (1.0, -3.0)


def test_on_a_narrow_court_the_box_is_no_wider_than_that(window, qtbot):
    court = QWidget()
    qtbot.addWidget(court)
    court.resize(280, 400)
    court.show()
    made = PlaceEntry(window.canvas.bench, "cone", court)
    made.stand_beside(QRectF(100, 100, 20, 20))
    assert court.rect().contains(made.geometry())
    for box in (*made.lines.values(), *made.counts.values()):
        assert made.rect().contains(box.geometry())
