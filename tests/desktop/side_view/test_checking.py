"""Checks from numbers come to the bottom line after the quick ones, for the players that are chosen."""

import threading

from desktop import hand

from designer.desktop import bottom_line, settings
from designer.review import checks as review
from designer.review.checks import checks


def test_the_bottom_line_tells_them_for_the_level_that_is_chosen(qtbot, wide):
    settings.set_level("starter")
    bottom = wide.bottom
    quick = {each.key for each in checks(wide.document.drill, wide.view.at)}
    bottom.review()
    qtbot.waitUntil(lambda: "beyond-level" in {each.key for each in bottom._checks}, timeout=30_000)
    assert "beyond-level" not in quick
    assert quick < {each.key for each in bottom._checks} | {"beyond-level"}
    assert any("starter level" in action.text() for action in bottom.menu().actions())


def test_on_a_crowded_court_the_window_waits_for_no_check(qtbot, wide, monkeypatch):
    monkeypatch.setattr(bottom_line, "CROWDED", 3)
    made, by = review.reviewed, []

    def reviewed(*about, **players):
        by.append(threading.current_thread())
        return made(*about, **players)

    monkeypatch.setattr(review, "reviewed", reviewed)
    bottom = wide.bottom
    bottom._review_at_rest()
    assert bottom.checks.words == bottom_line.LOOKING
    qtbot.waitUntil(lambda: len(by) >= 2 and not wide._number_checks.worker.busy, timeout=30_000)
    hand.settle()
    assert threading.main_thread() not in by
    quick = {each.key for each in checks(wide.document.drill, wide.view.at)}
    assert quick <= {each.key for each in bottom._checks}
