"""The card column: every sentence a control, questions where their answers stand, forms that follow the drill."""

from dataclasses import replace

import pytest
from desktop import hand
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QLabel

from designer.bundle import sample
from designer.desktop.column.asks import MENUS, answer_to, asked, behind, first_asked
from designer.desktop.controls import Link
from designer.desktop.document import Document
from designer.desktop.forms.fresh import worth
from designer.desktop.forms.subjects import subject_of
from designer.drill import edits
from designer.drill.base import place
from designer.drill.conditions import In
from designer.drill.movement import Shot
from designer.drill.people import Spot
from designer.drill.rules import Aim, Keep, Rule
from designer.drill.setting import At, setting_at
from designer.storage.reading import open_drill
from designer.wording.card import card_words
from designer.wording.sentence import sentence


@pytest.fixture
def wide(wide_kept):
    return wide_kept


def row_about(window, id):
    return next(row for row in window.column.sentences() if row.sentence.about[:1] == (id,))


def test_it_says_what_the_card_says(wide):
    card = card_words(wide.document.drill, wide.view.at, "player", player="A")
    shown = [row.sentence.text for row in wide.column.sentences()]
    said = [each.text for section in card.sections for each in section.sentences if not each.missing]
    assert [text for text in shown if text in said] == said
    assert wide.column.title.toPlainText() == card.title
    assert card.objective in wide.column.objective.toPlainText()


@pytest.mark.parametrize("reader", ["coach", "stand-in", "player"])
def test_another_reader_gets_another_card(wide, reader):
    wide.actions_by_name[f"reader {reader}"].trigger()
    hand.settle()
    player = wide.view.you if reader == "player" else None
    card = card_words(wide.document.drill, wide.view.at, reader, player=player)
    said = [each.text for section in card.sections for each in section.sentences if not each.missing]
    shown = [row.sentence.text for row in wide.column.sentences() if not row.sentence.missing]
    assert [text for text in shown if text in said] == said


def test_a_sentence_is_pressed_by_keys_too(wide):
    row = row_about(wide, "reply")
    row.setFocus()
    hand.key(row, Qt.Key.Key_Return)
    assert wide.column.form.subject.key == "reply"
    hand.key(wide.column.form, Qt.Key.Key_Escape)
    assert wide.column.form is None
    QTest.keyClick(row_about(wide, "reply"), Qt.Key.Key_Space)
    assert wide.column.form.subject.key == "reply"


def test_the_form_stands_under_its_sentence(wide):
    row = row_about(wide, "reply")
    hand.click(row)
    hand.settle()
    assert wide.column.form.y() == row.y() + row.height()
    assert wide.column.form.x() == row.x()


def test_a_sentence_is_kept_while_its_words_change(wide):
    row = row_about(wide, "reply")
    hand.click(row)
    hand.choose(wide, "wing", "backhand")
    assert row_about(wide, "reply") is row
    assert "backhand" in row.sentence.text
    assert "backhand" in row.accessibleName()


@pytest.mark.parametrize("place", ["title", "objective", "cues", "feed-zone name"])
def test_a_pause_in_typing_changes_nothing_under_the_caret(wide, place):
    about, _, field = place.partition(" ")
    if field:
        wide.column.open(about)
        wide.column.form.form.open_all()
        editor = hand.field(wide, field).first()
    elif about in ("title", "objective"):
        editor = getattr(wide.column, about)
    else:
        wide.column.write(about)
        editor = wide.column.written.row
    editor.setFocus()
    editor.selectAll()
    read = editor.text if field else editor.toPlainText
    for letters in ("it's ", " b, "):
        QTest.keyClicks(editor, letters)
        wide.column.refresh()
        hand.settle()
    assert wide.focusWidget() is editor
    assert read() == "it's  b, "


def test_a_form_without_a_sentence_over_it_says_what_it_is_about(wide):
    wide.column.open("B")
    heads = [label.text() for label in wide.column.form.findChildren(QLabel) if label.parent() is wide.column.form]
    assert heads == ["Player B"]
    hand.click(row_about(wide, "reply"))
    assert not [label for label in wide.column.form.findChildren(QLabel) if label.parent() is wide.column.form]


def test_an_open_form_follows_what_is_picked_on_the_court(wide):
    wide.column.open("reply")
    wide.canvas.setFocus()
    wide.view.select(["feed-zone"])
    assert wide.column.form.subject.key == "feed-zone"
    assert wide.focusWidget() is wide.canvas
    wide.view.select(["reply", "reply-zone"])
    assert wide.column.form is None


def test_a_target_is_worth_points_from_its_own_form(wide):
    wide.column.open("feed-zone")
    hand.click(words_of(wide.column.form, "Worth … points"))
    made = wide.view.setting.points[wide.column.form.subject.key]
    assert [(on.what, place.area) for on in made.on for place in on.where] == [("landed", "feed-zone")]
    assert worth(wide.view.setting, wide.view.setting.items["feed-zone"]) == made, "the next press opens the same"


def test_a_heading_that_was_seen_stays_when_nothing_stands_under_it(wide):
    wide.document.perform("Leave none", edits.delete(wide.document.drill, wide.view.at, wide.view.setting.points))
    wide.column.refresh()
    assert "heading points" in wide.column._headings


def test_a_rule_gets_an_end_from_its_own_form(blank_kept):
    window, at = blank_kept, blank_kept.view.at
    feed, rule = (
        Shot(id="feed", by="B"),
        Rule(id="wide", must=Aim(do="aim", direction="new line", from_middle="either")),
    )
    window.document.perform(
        "Draw", edits.put(window.document.drill, at, Spot(id="b", job="B", place=place(0, 8)), feed, rule)
    )
    window.column.refresh()
    window.column.open("wide")
    hand.choose(window, "must.direction", "cross-court")
    hand.click(words_of(window.column.form, "Only until …"))
    part = window.view.setting.parts[window.column.form.subject.key]
    assert [(event.what, event.by, event.count) for event in part.until] == [("played", ("B",), 1)]
    assert window.view.setting.rules["wide"].parts == (part.id,)
    said = next(row.sentence.text for row in window.column.sentences() if row.sentence.about[:1] == ("wide",))
    assert said == "Until open, a ball that does not go cross-court."


def test_a_form_closes_when_its_record_goes(wide):
    wide.column.open("reply")
    wide.view.select(["reply"])
    wide.actions_by_name["delete"].trigger()
    hand.settle()
    assert wide.column.form is None
    assert "reply" not in wide.view.setting.shots
    wide.actions_by_name["undo"].trigger()
    assert "reply" in wide.view.setting.shots


def words_of(form, words):
    return next(link for link in form.findChildren(Link) if link.text() == words)


def test_a_record_of_a_variation_s_own_can_follow_again(wide):
    wide.view.go_to(At("p-fed", "v-one-racket"))
    hand.settle()
    wide.column.open("reply")
    assert words_of(wide.column.form, "Follow again").isHidden()
    hand.choose(wide, "wing", "backhand")
    assert row_about(wide, "reply").changed or row_about(wide, "reply").picked
    hand.click(words_of(wide.column.form, "Follow again"))
    assert wide.view.setting.shots["reply"] == setting_at(wide.document.drill, At("p-fed")).shots["reply"]
    assert wide.document.stack.undoText() == "Follow again"


def test_what_else_a_sentence_is_about_is_one_press_away(wide):
    hand.click(row_about(wide, "reply"))
    hand.click(words_of(wide.column.form, "reply zone"))
    assert wide.column.form.subject.key == "reply-zone"
    assert wide.view.selection == {"reply-zone"}


def test_pointing_at_a_sentence_lights_up_its_mark(wide):
    row = row_about(wide, "reply")
    row.pointed.emit("reply")
    assert wide.view.hovered == "reply"
    row.pointed.emit(None)
    assert wide.view.hovered is None


def test_a_fact_opens_the_field_it_came_from(wide):
    hand.click(next(b for b in wide.column.facts.findChildren(type(_fact(wide))) if b.fact.icon == "clock"))
    assert wide.column.form.subject.key == "drill:facts"
    assert wide.focusWidget() is hand.field(wide, "minutes").line


def test_a_long_list_of_kit_does_not_make_the_card_wider_than_the_column(wide):
    kit = ("a basket, a second basket and four flat discs of the same colour for the far end",)
    wide.document.perform("Kit", wide.document.drill.changed(kit=kit))
    wide.actions_by_name["reader coach"].trigger()
    hand.settle()
    facts = wide.column.facts
    assert facts.width() <= wide.column.width()
    assert all(each.geometry().right() <= facts.width() for each in facts.findChildren(type(_fact(wide))))


def _fact(window):
    from designer.desktop.column.facts import FactButton

    return window.column.facts.findChild(FactButton)


def test_enter_in_the_title_goes_on_to_the_objective(window):
    hand.write(window.column.title, "Deep")
    hand.key(window.column.title, Qt.Key.Key_Return)
    assert window.column.objective.hasFocus()
    assert window.document.drill.title == "Deep"


def test_the_objective_stands_in_quotation_marks_while_it_is_not_written(window):
    hand.write(window.column.objective, "I get back.")
    assert window.column.objective.toPlainText() == "I get back."
    window.column.title.setFocus()
    hand.settle()
    assert window.column.objective.toPlainText() == "“I get back.”"
    assert window.document.drill.objective == "I get back."


# what is asked


def test_a_new_card_asks_three_things_and_all_once_its_first_card_is_made(window, make_window, prompts, tmp_path):
    def questions():
        hand.settle()
        return [row for row in window.column.sentences() if row.sentence.missing]

    assert len(questions()) == 3
    hand.write(window.column.title, "Deep")
    prompts.answers = [tmp_path / "deep.drill.json", tmp_path / "deep.pdf"]
    window.actions_by_name["save"].trigger()
    assert len(questions()) == 3
    assert len(make_window(Document(window.document.drill)).column.sentences()) == len(window.column.sentences())
    window.actions_by_name["make card"].trigger()
    hand.finish(window)
    assert len(questions()) > 3
    again = make_window(Document(window.document.drill))
    assert again.column.ask_all, "the drill is known again when it is opened another day"


def test_a_question_about_a_record_opens_it_at_the_answer(window):
    window.actions_by_name["ask all"].trigger()
    window.actions_by_name["rule aim"].trigger()
    window.column.close_form()
    hand.click(next(row for row in window.column.sentences() if row.sentence.key.startswith("question:cost")))
    assert window.column.form.subject.key in window.view.setting.rules
    assert hand.field(window, "breach").focusProxy().hasFocus()


def test_a_form_stays_with_its_rule_when_the_question_over_it_is_answered(window):
    window.actions_by_name["rule aim"].trigger()
    window.column.close_form()
    hand.click(next(row for row in window.column.sentences() if row.sentence.key.startswith("question:cost")))
    hand.choose(window, "breach", "replay")
    rule = next(iter(window.view.setting.rules))
    row = row_about(window, rule)
    assert row.sentence.text.endswith(": replay.")
    assert window.column.form.y() == row.y() + row.height()
    hand.key(window.column.form, Qt.Key.Key_Escape)
    assert window.focusWidget() is row


@pytest.mark.parametrize(
    ("section", "key", "about", "first"),
    [
        ("watch", "watch:1", ("spot-a",), ("drill:words", "watch_for")),
        ("cues", "cue:1", (), ("drill:words", "cues")),
        ("care", "care:1", (), ("drill:words", "safety")),
        ("care", "care:stop", (), ("drill:house", "stopped")),
        ("care", "care:stop", ("jump",), ("jump", "")),
        ("care", "care:accepted:1", ("post",), ("drill:papers", "accepted")),
        ("care", "care:room", (), ("drill:court", "run_back")),
        ("steps", "shot:feed", ("feed", "B"), ("feed", "")),
        ("left-handed", "left-handed", (), ("versions", "")),
    ],
)
def test_a_press_opens_what_a_sentence_was_made_from(section, key, about, first):
    assert behind(section, key, about)[0] == first


def test_what_is_said_of_left_handers_opens_the_versions(wide):
    wide.actions_by_name["reader coach"].trigger()
    hand.settle()
    hand.click(next(row for row in wide.column.sentences() if row.key.startswith("left-handed")))
    menu = QApplication.activePopupWidget()
    assert any("other hand" in action.text() for action in menu.actions())
    menu.close()


def test_every_sentence_of_every_sample_opens_something_and_every_question_has_an_answer():
    for path in sorted(sample().glob("*.drill.json")):
        drill = open_drill(path).drill
        for progression in drill.progressions:
            at = At(progression.id)
            setting = setting_at(drill, at)
            for reader in ("player", "coach"):
                card = card_words(drill, at, reader)
                for section in card.sections:
                    for said in (each for each in section.sentences if not each.missing):
                        opened = behind(section.key, said.key, said.about)
                        assert any(about in MENUS or subject_of(drill, at, about) for about, _ in opened), said
                for group in asked(drill, setting, reader, card.sections).values():
                    for question in group:
                        answer = answer_to(question, setting)
                        assert answer.makes or answer.about, (path.name, question)
                        subject = subject_of(drill, at, answer.about) if answer.about else None
                        rows = () if subject is None else subject.table(subject.read(drill, at))
                        assert not answer.field or answer.field in {row.name for row in rows}, (path.name, question)


@pytest.mark.parametrize(
    ("kind", "area", "field"),
    [
        ("edge", "left half", "must.line"),
        ("judged", "left half", "must.deed"),
        ("edge", "the baseline", "must.others"),
        ("edge", "right half", "when"),
    ],
)
def test_a_question_about_a_place_goes_to_the_row_of_that_place(wide, kind, area, field):
    where = (In(area="left half"), In(area="the baseline"))
    rule = Rule(id="r", must=Keep(do="keep", where=where), when=(In(area="right half"),))
    setting = replace(wide.view.setting, rules={"r": rule})
    assert answer_to(sentence(f"question:{kind}:{area}", "?", area, "r", missing=True), setting).field == field


def test_the_most_wanted_questions_come_first():
    questions = {
        "cues": (sentence("ask:cues", "?", missing=True),),
        "points": (sentence("question:finish", "?", missing=True),),
        "start": (sentence("question:start", "?", missing=True), sentence("question:bad:s", "?", "s", missing=True)),
        "rules": (sentence("question:rules", "?", missing=True),),
    }
    kept = [question.key for group in first_asked(questions).values() for question in group]
    assert kept == ["question:start", "question:bad:s", "question:rules"]
