"""Texts in a form are read in words and kept with tokens; a box is as high as its lines."""

from random import Random

import pytest
from desktop import hand

from designer.bundle import sample
from designer.desktop.forms.boxes import box_for
from designer.desktop.forms.context import Context
from designer.desktop.forms.fields import Block, Line, Lines
from designer.drill.setting import main_setting, setting_at
from designer.storage.reading import open_drill


@pytest.fixture
def make(qtbot, styled):
    drill = open_drill(sample("wide-start.drill.json")).drill
    at = main_setting(drill)
    context = Context(drill, at, setting_at(drill, at), Random(7))
    made = []

    def make(kind, value):
        box = box_for(kind)
        qtbot.addWidget(box)
        box.given = []

        def follow(new, _=False):
            box.given.append(new)
            box.show_value(new, context)

        box.edited.connect(follow)
        box.show_value(value, context)
        box.resize(260, 200)
        box.show()
        made.append(box)
        return box

    yield make
    for box in made:
        box.hide()


def test_a_note_shows_people_and_sides_as_words_and_keeps_their_tokens(make):
    box = make(Block(), "{B} waits {left}.")
    assert box.editor.toPlainText() == "B waits left."
    box.editor.moveCursor(box.editor.textCursor().MoveOperation.End)
    hand.write(box.editor, " A runs right.")
    assert box.given[-1] == "{B} waits {left}. {A} runs {right}."
    assert [each.cursor.selectedText() for each in box.editor.extraSelections()] == ["B", "left", "A", "right"]


def test_lines_keep_their_tokens_each_in_its_own(make):
    box = make(Lines(), ("To {B}.", "Then {left}."))
    hand.write(box.editor, "Up. ")
    assert box.given[-1] == ("Up. To {B}.", "Then {left}.")


def test_what_no_card_reads_is_kept_as_it_is_typed(make):
    box = make(Line(), "")
    hand.write(box.line, "B left")
    assert box.given[-1] == "B left"
    following = make(Line(follows=True), "")
    hand.write(following.line, "B left")
    assert following.given[-1] == "{B} {left}"


def test_a_box_grows_with_its_lines_up_to_a_bound(make):
    box = make(Lines(), ())
    low = box.editor.height()
    box.editor.insertPlainText("\n".join("abcdef"))
    higher = box.editor.height()
    assert low < higher
    box.editor.insertPlainText("\n" * 40)
    assert box.editor.height() < 2 * higher
