"""One sentence as a control: its words and bullet painted and told, its states told apart by more than hue."""

from dataclasses import replace

import pytest
from PySide6.QtGui import QColor

from designer.desktop.column.sentence import BAR, SentenceRow
from designer.desktop.look import LIGHT
from designer.desktop.style import style
from designer.wording.sentence import Lead, sentence


@pytest.fixture
def row(qtbot, styled):
    made = SentenceRow("steps reply")
    qtbot.addWidget(made)
    made.show_sentence(sentence("step:reply", "A plays high and cross-court.", "reply", lead=Lead("hit", "2")))
    made.resize(380, made.heightForWidth(380))
    made.show()
    yield made
    made.hide()


def colours(row, column):
    image = row.grab().toImage()
    return [QColor(image.pixel(column, y)).name().upper() for y in range(image.height())]


def test_it_is_told_with_its_digit(row):
    assert row.accessibleName() == "2 A plays high and cross-court."
    row.show_sentence(sentence("question:doubt", "In doubt?", missing=True))
    assert row.accessibleDescription() == "a question that is still open"


def test_a_narrow_column_makes_it_taller(row):
    assert row.heightForWidth(160) > row.heightForWidth(380)


def test_picked_has_a_ground_and_a_bar_changed_only_a_bar(row):
    assert style().look == LIGHT
    row.show_state(picked=True, open=False, changed=False)
    assert set(colours(row, BAR - 1)) == {LIGHT.highlighter_edge}
    assert LIGHT.highlighter in colours(row, row.width() - 3)
    row.show_state(picked=False, open=False, changed=True)
    assert set(colours(row, BAR - 2)) == {LIGHT.highlighter_edge}
    assert LIGHT.highlighter not in colours(row, row.width() - 3)
    row.show_state(picked=False, open=False, changed=False)
    assert LIGHT.highlighter_edge not in colours(row, BAR - 2)


def test_a_question_has_a_line_to_be_answered_on(row):
    question = sentence("question:finish", "Where does it end?", missing=True)
    row.show_sentence(question)
    blank = set(colours(row, row.width() - 60))
    row.show_sentence(sentence("rule:a", "Where does it end?"))
    assert len(blank) > len(set(colours(row, row.width() - 60)))


@pytest.mark.parametrize(
    "lead",
    [
        Lead("hit", "2"),
        Lead("feed", "1"),
        Lead("choice", "or"),
        Lead("run"),
        Lead("recover"),
        Lead("open", "open"),
        Lead("value", "+1"),
        Lead("bullet"),
        Lead("number", "3"),
        Lead("person", "A"),
        Lead("caution"),
    ],
    ids=lambda lead: lead.kind,
)
def test_every_bullet_is_painted(row, lead):
    words = sentence("x", "words")
    row.show_sentence(words)
    bare = row.grab().toImage()
    row.show_sentence(replace(words, lead=lead))
    assert row.grab().toImage() != bare


def test_an_ampersand_is_no_shortcut(row):
    row.show_sentence(sentence("x", "Serve & volley."))
    assert row.shortcut().isEmpty()
    assert row.accessibleName() == "Serve & volley."
