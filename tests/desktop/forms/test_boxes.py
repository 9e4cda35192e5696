"""What is typed into a form becomes a value, or a sentence that says what was expected."""

from datetime import date

import pytest

from designer.desktop.forms.box import Refused
from designer.desktop.forms.boxes import box_for
from designer.desktop.forms.fields import Day, Line, Lines, Measure, Number, Span, Translations

TEXTS = [
    (Number(0, 600), 12),
    (Number(0, 600), None),
    (Number(1, 1000, word="own best"), "own best"),
    (Measure(), 1.8288),
    (Measure(words=("knee", "net")), "knee"),
    (Day(), date(2026, 5, 31)),
    (Lines(), ("High and cross, then run.", "Push off, split, look.")),
    (Translations(), {"de": {"Net, then wide.": "Netz, dann weit."}}),
    (Line(), "B feeds"),
]


@pytest.mark.parametrize(("kind", "value"), TEXTS)
def test_what_a_box_shows_is_read_as_the_same_value(qtbot, styled, kind, value):
    box = box_for(kind)
    qtbot.addWidget(box)
    assert box.value_of(box.text_of(value)) == value


REFUSED = [
    (Number(1, 20), "0", "from 1 to 20"),
    (Number(1, 20, optional=False), "", "from 1 to 20"),
    (Measure(0, 5), "9", "Metres from 0 to 5"),
    (Measure(0, 5, words=("knee",)), "ankle", "or knee"),
    (Day(), "31 May", "2026-05-31"),
    (Translations(), "Net. = Netz.", "the language"),
]


@pytest.mark.parametrize(("kind", "text", "sentence"), REFUSED)
def test_what_is_no_value_is_refused_in_a_sentence(qtbot, styled, kind, text, sentence):
    box = box_for(kind)
    qtbot.addWidget(box)
    with pytest.raises(Refused, match=sentence):
        box.value_of(text)


def test_a_span_keeps_its_ends_in_order(qtbot, styled):
    box = box_for(Span())
    qtbot.addWidget(box)
    given_back = []
    box.edited.connect(lambda value, _: given_back.append(value))
    box.show_value((2, 3), None)
    box._least.line.setText("5")
    box._least.line.editingFinished.emit()
    box._most.line.setText("1")
    box._most.line.editingFinished.emit()
    assert given_back == [(5, 5), (1, 1)]


def test_metres_may_be_written_with_a_comma(qtbot, styled):
    box = box_for(Measure())
    qtbot.addWidget(box)
    assert box.value_of("1,83 m") == 1.83
