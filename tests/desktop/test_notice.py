"""The bar of notices: one at a time, closed by the user unless it must stay."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest

from designer.desktop.notice import NoticeBar


@pytest.fixture
def bar(qtbot, styled):
    made = NoticeBar()
    qtbot.addWidget(made)
    return made


def test_a_notice_stands_until_it_is_closed(bar):
    assert bar.words == ""
    bar.say("card", "The card is made: wide.pdf.")
    assert bar.words == "The card is made: wide.pdf."
    QTest.mouseClick(bar._cross, Qt.MouseButton.LeftButton)
    assert bar.words == ""


def test_what_must_stay_has_no_cross(bar):
    bar.say("read-only", "Written by a newer program.", keep=True)
    assert bar._cross.isHidden()
    bar.say("card", "Made.")
    assert not bar._cross.isHidden()


def test_what_can_be_done_is_one_press_away(bar):
    done = []
    bar.say(
        "outside", "Changed.", ("Take that one", lambda: done.append("theirs")), ("Keep", lambda: done.append("ours"))
    )
    QTest.mouseClick(bar._links[0], Qt.MouseButton.LeftButton)
    assert done == ["theirs"]


def test_a_notice_is_taken_away_only_by_its_own_key(bar):
    bar.say("card", "Made.")
    bar.clear("outside")
    assert bar.words == "Made."
    bar.clear("card")
    assert bar.words == ""


def test_a_title_is_never_taken_for_markup(bar):
    bar.say("card", "<b>Deep</b> & wide")
    assert bar._words.textFormat() == Qt.TextFormat.PlainText
