"""How full the card is, beside Print, while it is written."""

from __future__ import annotations

from designer.cards.fullness import Fullness
from designer.desktop.fill_meter import in_words


def test_nothing_is_said_before_the_first_change(window):
    window.bottom.review()
    assert window.column.bar.fill is None


def test_the_meter_fills_with_what_is_written_and_follows_reader_and_paper(window, qtbot):
    document, bar, first = window.document, window.column.bar, window.document.drill
    window.deeds.card  # noqa: B018 - made by being asked for

    def says(*words: str) -> bool:
        return bar.fill is not None and all(word in bar.fill.text() for word in words)

    document.perform("Title", document.drill.changed(title="Wide, then back"))
    window.bottom.review()
    qtbot.waitUntil(lambda: says("1 side", "% full"))
    document.perform("More", document.drill.changed(safety=("Mind the fence and what stands at its foot.",) * 99))
    window.bottom.review()
    qtbot.waitUntil(lambda: says("sides") and int(bar.fill.text().split()[0]) > 2)
    document.perform("Less", first)
    window.bottom.review()
    qtbot.waitUntil(lambda: says("1 side"))
    players = bar.fill.text()
    bar.choose("coach")
    qtbot.waitUntil(lambda: bar.fill.text() != players)
    menu = window.actions_by_name.menus["paper"]
    menu.aboutToShow.emit()
    next(action for action in menu.actions() if action.text() == "3 × 5 in").trigger()
    qtbot.waitUntil(lambda: int(bar.fill.text().split()[0]) >= 2)
    next(action for action in menu.actions() if action.text() == "Poster for the fence, A4").trigger()
    qtbot.waitUntil(lambda: bar.fill.text() == "")


def test_one_side_is_said_as_one():
    assert in_words(Fullness(1, 0.834)) == "1 side,\n83 % full"
    assert in_words(Fullness(3, 0.05)) == "3 sides,\nlast 5 % full"
