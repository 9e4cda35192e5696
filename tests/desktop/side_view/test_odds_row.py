"""Who wins: figures come in while it is played out, the inputs move them, and it can be stopped."""

import pytest

from designer.bundle import sample
from designer.desktop.document import Document
from designer.desktop.side_view import odds_row
from designer.desktop.side_view.basis import Basis
from designer.desktop.side_view.odds_row import OddsRow
from designer.desktop.side_view.words import fairness_words
from designer.desktop.view import View
from designer.drill.setting import At
from designer.numbers.fairness import fairness
from designer.storage.reading import open_drill


@pytest.fixture
def row(qtbot, styled, monkeypatch):
    monkeypatch.setattr(odds_row, "STARTS", 600)
    document = Document(open_drill(sample("wide-start.drill.json")).drill)
    view = View(document, document)
    view.go_to(At("p-fed"))
    made = OddsRow(document, view)
    made.kept = document
    qtbot.addWidget(made)
    made.show()
    return made


def test_figures_come_in_until_it_is_done(qtbot, row):
    seen = []
    row.worker.so_far.connect(lambda _, figure: seen.append(figure.share))
    row.ask()
    qtbot.waitUntil(lambda: not row.worker.busy and row.stop.isHidden(), timeout=20_000)
    here = Basis("club").situation(row.kept.drill, At("p-fed"))
    assert row.words.text() == fairness_words(fairness(here, rallies=600, progress=lambda *_: None))
    assert seen == sorted(seen)
    assert seen[0] < 1
    assert row.whose.text() == "An open point for A"


def test_the_open_point_moves_them(qtbot, row):
    row.open_point.setValue(90)
    row.ask()
    qtbot.waitUntil(lambda: not row.worker.busy and row.stop.isHidden(), timeout=20_000)
    high = row.words.text()
    row.open_point.setValue(10)
    qtbot.waitUntil(lambda: row.words.text() != high and row.stop.isHidden(), timeout=20_000)


def test_it_can_be_stopped_and_taken_up_again(row):
    row.ask()
    row.cancel()
    assert not row.stop.isVisible()
    assert row.again.isVisible()


def test_where_all_play_together_the_goal_is_told(qtbot, row):
    row._view.go_to(At("p-together"))
    row.ask()
    qtbot.waitUntil(lambda: "the goal is reached" in row.words.text(), timeout=20_000)
