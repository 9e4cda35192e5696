"""The row in which one says how often a group hits a ball's target."""

from desktop import hand

from designer.desktop.side_view.basis import Basis
from designer.desktop.side_view.group_row import GroupRow


def test_it_tells_what_was_counted_and_what_the_air_is(qtbot, styled):
    row = GroupRow(Basis("club"))
    qtbot.addWidget(row)
    told = []
    row.counted.connect(lambda *count: told.append(count))
    row.drag_chosen.connect(told.append)
    row.show()
    row.hits.setValue(3)
    hand.click(row.keep)
    row.drag.setValue(0.6)
    row.drag.setValue(0.55)
    assert told == [(3, 10), 0.6, None]


def test_the_way_back_is_offered_where_a_count_is_kept(qtbot, styled):
    row = GroupRow(Basis("club", (1.2, "4 of 10")))
    qtbot.addWidget(row)
    row.show()
    assert row.forget.isVisible()
    row.show_basis(Basis("club"))
    assert not row.forget.isVisible()
