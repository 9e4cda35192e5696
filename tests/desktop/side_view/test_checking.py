"""Checks from numbers come to the bottom line after the quick ones, for the players that are chosen."""

from designer.desktop import settings
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
