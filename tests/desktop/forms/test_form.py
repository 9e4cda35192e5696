"""A form shows a record and gives back another: nothing is lost on the way, whatever the record."""

import os

import pytest
from PySide6.QtCore import QCoreApplication, QEvent, Qt
from PySide6.QtTest import QTest

from designer.bundle import sample
from designer.desktop.controls import Segment
from designer.desktop.forms.context import Context
from designer.desktop.forms.form import Form
from designer.desktop.forms.tables import table_of
from designer.drill.base import place
from designer.drill.conditions import Event, In, Outcome
from designer.drill.movement import Shot
from designer.drill.rules import Finish, Keep, Rule
from designer.drill.setting import addresses, main_setting, setting_at
from designer.storage.reading import open_drill


@pytest.fixture
def context(document):
    at = main_setting(document.drill)
    return Context(document.drill, at, setting_at(document.drill, at), document.source)


@pytest.fixture
def make_form(qtbot, styled):
    def make(record, context):
        form = Form(table_of(record))
        qtbot.addWidget(form)
        form.edits = []
        form.edited.connect(lambda new, typed: form.edits.append((new, typed)))
        form.show_record(record, context)
        return form

    return make


def rows(form):
    return {name for name in form._rows if form.row(name) is not None}


def segment(form, name, words):
    return next(each for each in form.row(name).box.findChildren(Segment) if each.text() == words)


def test_rows_come_and_go_with_what_the_record_is(make_form, context):
    form = make_form(Finish(id="f", kind="race", to=11), context)
    assert {"kind", "to", "margin"} <= rows(form)
    assert "starts" not in rows(form)
    form.show_record(Finish(id="f", kind="total", starts=20), context)
    assert {"starts", "minutes"} <= rows(form)
    assert "margin" not in rows(form)


def test_what_is_said_shows_even_behind_more(make_form, context):
    form = make_form(Finish(id="f", kind="race", cap=16), context)
    assert "cap" in rows(form)
    assert "floor" not in rows(form)
    form.open_all()
    assert "floor" in rows(form)


def test_a_choice_is_taken_and_taken_back(make_form, context):
    form = make_form(Shot(id="s", by="A"), context)
    QTest.mouseClick(segment(form, "wing", "backhand"), Qt.MouseButton.LeftButton)
    assert form.edits[-1] == (Shot(id="s", by="A", wing="backhand"), False)
    form.show_record(form.edits[-1][0], context)
    QTest.mouseClick(segment(form, "wing", "backhand"), Qt.MouseButton.LeftButton)
    assert form.edits[-1] == (Shot(id="s", by="A"), False)


def test_the_usual_answer_is_marked_and_not_given(make_form, context):
    rule = Rule(id="r", must=Keep(do="keep", where=(In(area="right half"),)))
    form = make_form(rule, context)
    inside = segment(form, "must.line", "in")
    assert inside.usual
    assert not inside.isChecked()
    assert form.record.must.where[0].line is None
    QTest.mouseClick(inside, Qt.MouseButton.LeftButton)
    assert form.edits[-1][0].must.where[0].line == "in"
    form.show_record(form.edits[-1][0], context)
    assert not segment(form, "must.line", "in").usual


def test_an_edit_deep_inside_gives_the_whole_record(make_form, context):
    points = Event(what="won")
    rule = Rule(id="r", who=("A",), must=Keep(do="keep", where=(In(area="right half"), In(area="the baseline"))))
    form = make_form(rule.changed(breach=Outcome(then="points", value=1)), context)
    QTest.mouseClick(
        next(each for each in form.row("must.others").box.findChildren(Segment) if each.text() == "out"),
        Qt.MouseButton.LeftButton,
    )
    edited = form.edits[-1][0]
    assert edited.must.where == (In(area="right half"), In(area="the baseline", line="out"))
    assert edited.who == ("A",)
    assert edited.breach == Outcome(then="points", value=1)
    assert points.what == "won"


def test_a_number_that_does_not_fit_says_what_does(make_form, context, qtbot):
    form = make_form(Finish(id="f", kind="race", to=11), context)
    box = form.row("to").box
    box.line.setText("eleven")
    box.line.editingFinished.emit()
    assert form.edits == []
    assert "whole number from 1 to 1000 or “own best”" in form.row("to")._complaint.text()
    box.line.setText("own best")
    box.line.editingFinished.emit()
    assert form.edits[-1][0].to == "own best"
    assert form.row("to")._complaint.text() == ""


def test_typing_a_note_is_given_letter_by_letter(make_form, context):
    form = make_form(Shot(id="s", by="A", to=place(1, 8)), context)
    form.open_all()
    editor = form.row("note").box.editor
    editor.setPlainText("H")
    editor.setPlainText("Hi")
    assert [(new.note, typed) for new, typed in form.edits] == [("H", True), ("Hi", True)]


THOROUGH = os.environ.get("HYPOTHESIS_PROFILE") == "thorough"


def shape(record):
    """What decides which rows a record has: its type and what is said in it, however deep by night."""
    if not THOROUGH:
        said = (name for name, value in record if value not in ((), None, "", False, {}))
        return (type(record).__name__, getattr(record, "what", getattr(record, "then", "")), *said)
    return shape_within(record)


def shape_within(record):
    if isinstance(record, tuple):
        return tuple(shape_within(each) for each in record)
    if not hasattr(record, "model_fields_set"):
        return type(record).__name__
    said = ((name, shape_within(value)) for name, value in record if value not in ((), None, "", False, {}))
    return (type(record).__name__, getattr(record, "what", getattr(record, "then", "")), *said)


def test_records_of_every_shape_in_the_samples_are_shown_and_left_alone(make_form, source):
    seen = set()
    for path in sorted(sample().glob("*.drill.json")):
        drill = open_drill(path).drill
        for at in addresses(drill):
            setting = setting_at(drill, at)
            context = Context(drill, at, setting, source)
            for _, record in setting.records():
                if shape(record) in seen:
                    continue
                seen.add(shape(record))
                form = make_form(record, context)
                assert form.edits == [], record
                assert rows(form) or not table_of(record), record
                form.deleteLater()
            QCoreApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete)
    assert len(seen) > 100
