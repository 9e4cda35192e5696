"""Places in a form: said in words, typed in words, and let go of what they go with."""

import pytest

from designer.bundle import sample
from designer.desktop.controls import Link
from designer.desktop.forms.boxes import box_for
from designer.desktop.forms.context import Context
from designer.desktop.forms.fields import Points, Where
from designer.drill.base import Place
from designer.drill.places import locate
from designer.drill.setting import At, setting_at
from designer.storage.reading import open_drill


@pytest.fixture
def context(source):
    drill = open_drill(sample("wide-start.drill.json")).drill
    at = At("p-fed")
    return Context(drill, at, setting_at(drill, at), source)


@pytest.fixture
def live(qtbot, styled, context):
    """A control that shows at once what it gives."""

    def make(kind, value):
        box = box_for(kind)
        qtbot.addWidget(box)
        box.given = []
        box.complaints = []
        box.edited.connect(lambda new, _: (box.given.append(new), box.show_value(new, context)))
        box.refused.connect(box.complaints.append)
        box.show_value(value, context)
        return box

    return make


def type_into(line, text):
    line.editor.setPlainText(text)
    line.editor.left.emit()


def test_a_place_is_said_and_typed_in_words(live):
    box = live(Where(), Place(at=(0.0, -12.8016)))
    assert box.line.editor.toPlainText() == "near end: 1 stride behind the centre mark"
    type_into(box.line, "near end: 2 strides behind the centre mark")
    assert box.given == [Place(at=(0.0, -13.716))]
    type_into(box.line, "behind the shed")
    assert box.given == [Place(at=(0.0, -13.716))]
    assert "is no place" in box.complaints[-1]


def test_a_place_that_goes_with_a_thing_stays_tied_until_it_is_let_go(live, context):
    tied = Place(on="feed-zone")
    before = locate(context.setting, tied)
    box = live(Where(), tied)
    type_into(box.line, f"{before[0]}, {before[1] + 1}")
    assert box.given[-1].on == "feed-zone"
    assert locate(context.setting, box.given[-1]) == pytest.approx((before[0], before[1] + 1))
    let_go = next(link for link in box.findChildren(Link) if "goes with feed area" in link.text())
    let_go.click()
    assert box.given[-1] == Place(at=locate(context.setting, box.given[-2]))


def test_a_place_can_be_left_open_where_it_may_be(live):
    box = live(Where(optional=True), Place(at=(1.0, 2.0)))
    next(link for link in box.findChildren(Link) if link.text() == "leave it open").click()
    assert box.given == [None]
    assert live(Where(), Place())._open.isHidden()


def test_corners_are_typed_one_by_one_and_kept_to_their_number(live):
    box = live(Points(3), ((0.0, 7.0), (2.0, 7.0), (2.0, 9.0)))
    first, *_ = box.lines()
    assert all(cross.isHidden() for _, _, cross in box._rows)
    type_into(first, "far end: the T")
    assert box.given[-1] == ((0.0, 6.4008), (2.0, 7.0), (2.0, 9.0))
    box._add.click()
    assert len(box.given[-1]) == 4
    box._rows[1][2].click()
    assert box.given[-1] == ((0.0, 6.4008), (2.0, 9.0), (2.0, 9.0))
