"""A usual answer is offered, stays marked as an offer, and is taken by one press."""

import pytest
from desktop import hand
from PySide6.QtCore import Qt

from designer.desktop.usual import UsualButton
from designer.drill import edits
from designer.drill.conditions import Outcome
from designer.drill.drill import House
from designer.drill.setting import At

AT = At("p-fed")


@pytest.fixture
def unsaid(wide_kept):
    """The sample with its bad feed, the edge of its zone, the level total and the house answers left open."""
    window = wide_kept
    drill, here = window.document.drill, window.view.setting
    zone = here.rules["zone"]
    place = zone.must.where[0].changed(line=None, judged=None)
    for record in (
        here.starts["start"].changed(bad=None),
        zone.changed(must=zone.must.changed(where=(place,))),
        here.finish.changed(level=None),
    ):
        drill = edits.put(drill, AT, record)
    window.document.perform("Leave it open", drill.changed(house=House()))
    window.actions_by_name["ask all"].setChecked(True)
    hand.settle()
    yield window
    window.actions_by_name["ask all"].setChecked(False)


def offered(window):
    return {row.sentence.text: row.usual for row in window.column.sentences() if row.usual and row.usual.isVisible()}


def test_questions_offer_their_usual_answer_until_it_is_confirmed(unsaid):
    found = offered(unsaid)
    said = {question: button.usual for question, button in found.items()}
    assert (
        said.items()
        >= {
            "Bad feed?": "replay",
            "The reply zone: judged by the bounce, the contact or the feet?": "the bounce",
            "Who calls?": "players call their own lines",
            "In doubt?": "replay",
            "Totals level?": "one more start each",
        }.items()
    )
    assert all("press to keep" in button.accessibleName() for button in found.values())
    assert unsaid.view.setting.starts["start"].bad is None
    before = unsaid.document.stack.count()
    hand.click(found["Bad feed?"])
    assert unsaid.view.setting.starts["start"].bad == Outcome(then="replay")
    assert unsaid.document.stack.count() == before + 1
    assert unsaid.document.stack.undoText() == "Confirm “Bad feed: replay”"
    assert "Bad feed?" not in offered(unsaid)


def test_the_keyboard_comes_from_a_question_to_its_usual_answer(unsaid):
    row = hand.sentence(unsaid, "Totals level")
    row.setFocus()
    hand.settle()
    unsaid.column.focusNextChild()
    assert unsaid.focusWidget() is row.usual
    hand.key(row.usual, Qt.Key.Key_Return)
    assert unsaid.column.form is None
    assert unsaid.focusWidget() in unsaid.column.sentences(), "the keyboard keeps its place in the card"
    assert unsaid.view.setting.finish.level == "one more each"


def test_a_form_says_that_what_it_offers_is_to_be_kept(unsaid):
    unsaid.column.open("drill:house")
    hand.settle()
    buttons = {
        name: next(b for b in hand.field(unsaid, name).findChildren(UsualButton)) for name in ("called_by", "stopped")
    }
    assert [button.usual for button in buttons.values()] == ["own lines", "replay"]
    notes = [
        label.text()
        for label in hand.field(unsaid, "in_doubt").findChildren(type(hand.field(unsaid, "in_doubt")._usual))
    ]
    assert "usual: press to keep" in notes
    buttons["called_by"].setFocus()
    hand.click(buttons["called_by"])
    assert hand.field(unsaid, "called_by").isAncestorOf(unsaid.focusWidget()), "Esc closes the form from here"
    hand.choose(unsaid, "in_doubt", "replay")
    assert unsaid.document.drill.house == House(called_by=("receiver",), in_doubt="replay")
    assert hand.field(unsaid, "in_doubt")._usual.isHidden()
    assert buttons["called_by"].isHidden()


def test_what_is_not_usual_for_a_record_is_not_offered(unsaid):
    start = unsaid.view.setting.starts["start"]
    unsaid.document.perform("Serve", edits.put(unsaid.document.drill, AT, start.changed(courts="in turn")))
    unsaid.column.open("start")
    hand.settle()
    assert all(button.isHidden() for button in hand.field(unsaid, "bad").findChildren(UsualButton))
