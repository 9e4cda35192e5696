"""The Tab key goes through the card as it is seen: from a sentence into its form, out at its foot, on to the next."""

import pytest
from desktop import hand
from PySide6.QtCore import QPoint, Qt

from designer.desktop.column.sentence import SentenceRow
from designer.desktop.column.stops import stops
from designer.desktop.controls import Link, Segment


def walked(window, form):
    """What gets the keyboard, one Tab after another, until that is nothing of ``form``; then what comes after it."""
    found = [window.focusWidget()]
    while len(found) < 100 and (len(found) == 1 or form.isAncestorOf(found[-1])):
        found[-1].focusNextChild()
        found.append(window.focusWidget())
    return found


def places(found):
    """The stops in order, a row of words as one: arrow keys go from one to the next of those."""
    return list(dict.fromkeys(stop.parentWidget() if isinstance(stop, Segment) else stop for stop in found))


@pytest.mark.parametrize("about", ["zone", "reply", "jobs"])
def test_tab_goes_down_through_a_form_and_on_to_the_next_sentence(wide_kept, about):
    wide_kept.column.open(about)
    hand.settle()
    form = wide_kept.column.form
    inside = list(stops(form))
    row = next(row for row in wide_kept.column.sentences() if row.y() + row.height() == form.y())
    row.setFocus()
    walk = walked(wide_kept, form)
    assert places(walk[1:-1]) == places(inside)
    assert isinstance(walk[-1], SentenceRow)
    assert walk[-1].y() > form.y()
    done = next(link for link in form.findChildren(Link) if link.text() == "Done")
    heights = [stop.mapTo(form, QPoint()).y() for stop in inside]
    assert heights[inside.index(done) :] == sorted(heights[inside.index(done) :]), "the foot, then what is worked out"
    assert done.mapTo(form, QPoint()).y() >= max(heights[: inside.index(done)])


def test_rows_behind_more_are_reached_once_they_are_shown(wide_kept):
    wide_kept.column.open("reply")
    hand.settle()
    form = wide_kept.column.form
    before = len(list(stops(form)))
    form.form.open_all()
    hand.settle()
    spin = form.form.row("spin").box.first()
    form.form.focus()
    assert len(list(stops(form))) > before
    assert spin in walked(wide_kept, form)


def test_enter_works_whatever_has_the_keyboard(wide_kept):
    wide_kept.column.open("zone")
    hand.settle()
    more = next(link for link in wide_kept.column.form.findChildren(Link) if link.text() == "More")
    more.setFocus()
    hand.key(more, Qt.Key.Key_Return)
    assert more.text() == "Less"
    deed = hand.field(wide_kept, "must.deed").first()
    deed.setFocus()
    hand.key(deed, Qt.Key.Key_Return)
    assert deed.view().isVisible()
    deed.hidePopup()
    done = next(link for link in wide_kept.column.form.findChildren(Link) if link.text() == "Done")
    done.setFocus()
    hand.key(done, Qt.Key.Key_Enter)
    assert wide_kept.column.form is None
