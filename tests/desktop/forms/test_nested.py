"""Records inside records: added, taken away, exchanged for another kind."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest

from designer.desktop.controls import DropDown, Link, Segment
from designer.desktop.forms.context import Context
from designer.desktop.forms.form import Form
from designer.desktop.forms.tables import table_of
from designer.drill.conditions import Event, In, Outcome
from designer.drill.items import Area, Ellipse, Polygon
from designer.drill.people import Job
from designer.drill.rules import Bounces, Points, Rule, Start, Swap
from designer.drill.setting import main_setting, setting_at

LEFT = Qt.MouseButton.LeftButton


@pytest.fixture
def context(document):
    drill = document.drill.changed(jobs=(Job(letter="A"), Job(letter="B")))
    at = main_setting(drill)
    return Context(drill, at, setting_at(drill, at), document.source)


@pytest.fixture
def live(qtbot, styled, context):
    """A form that shows at once what it gives."""

    def make(record):
        form = Form(table_of(record))
        qtbot.addWidget(form)
        form.edited.connect(lambda new, _: form.show_record(new, context))
        form.show_record(record, context)
        return form

    return make


def links(form, name, words):
    return next(link for link in form.row(name).box.findChildren(Link) if link.text() == words)


def pick(box, value):
    place = box.findData(value)
    assert place >= 0, [box.itemData(n) for n in range(box.count())]
    box.setCurrentIndex(place)
    box.activated.emit(place)


def test_an_answer_is_added_and_left_open_again(live):
    form = live(Start(id="s"))
    form.open_all()
    QTest.mouseClick(links(form, "once", "Say when, for a later ball"), LEFT)
    assert form.record.once == Event(what="reached")
    QTest.mouseClick(form.row("once").box._inner.cross, LEFT)
    assert form.record.once is None


def test_one_of_several_is_added_edited_and_taken_away(live):
    form = live(Points(id="p", on=(Event(what="won"),), gives=Outcome(then="points", value=1)))
    box = form.row("on").box
    assert box._inners[0].cross.isHidden()
    QTest.mouseClick(links(form, "on", "Add another way"), LEFT)
    assert len(form.record.on) == 2
    pick(box._inners[1].form.row("what").box.findChild(DropDown), "landed")
    assert form.record.on == (Event(what="won"), Event(what="landed"))
    QTest.mouseClick(box._inners[0].cross, LEFT)
    assert form.record.on == (Event(what="landed"),)
    assert form.record.gives == Outcome(then="points", value=1)


def test_a_rule_holds_always_after_an_event_or_for_a_ball_in_a_place(live):
    form = live(Rule(id="r", must=Bounces(do="bounces", least=1)))
    form.open_all()
    box = form.row("when").box
    words = {each.text(): each for each in box.findChildren(Segment)}
    QTest.mouseClick(words["after an event"], LEFT)
    assert form.record.when == (Event(what="landed"),)
    QTest.mouseClick(words["for a ball in"], LEFT)
    assert form.record.when == (In(area="singles court"),)
    QTest.mouseClick(words["always"], LEFT)
    assert form.record.when == ()


def test_moves_are_written_pair_by_pair(live):
    form = live(Swap(id="s", on=(Event(what="starts", count=5),)))
    box = form.row("moves").box
    pick(box._new, "A")
    assert form.record.moves == {"A": "B"}
    pick(box.row_of("A").choice, "loser")
    assert form.record.moves == {"A": "loser"}
    pick(box._new, "B")
    assert form.record.moves == {"A": "loser", "B": "A"}


def test_a_pair_keeps_its_row_and_the_keyboard_while_others_change(live):
    form = live(Swap(id="s", on=(Event(what="starts", count=5),), moves={"A": "B", "B": "A"}))
    box = form.row("moves").box
    row = box.row_of("B")
    pick(box.row_of("A").choice, "winner")
    assert box.row_of("B") is row
    row.cross.click()
    assert form.record.moves == {"A": "winner"}


def test_another_form_of_a_shape_stays_where_it_was(live):
    shape = Polygon(form="polygon", corners=((1.0, 6.5), (3.0, 6.5), (2.0, 9.0)))
    form = live(Area(kind="area", id="a", shape=shape))
    form.open_all()
    box = form.row("shape").box
    pick(box._list, "ellipse")
    assert form.record.shape == Ellipse(form="ellipse", corners=((1.0, 6.5), (3.0, 9.0)))
    pick(box._list, "polygon")
    assert form.record.shape.corners == ((1.0, 6.5), (3.0, 6.5), (3.0, 9.0), (1.0, 9.0))
