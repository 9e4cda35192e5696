"""The line under everything: checks with their weight, what is read aloud, the kit, the numbers of what is picked."""

import math

from desktop import hand

from designer.bundle import sample
from designer.desktop.bottom_line import CLEAN
from designer.desktop.document import Document
from designer.drill.setting import At
from designer.storage.reading import open_drill
from designer.wording.card import card_words


def opened(make_window, name="wide-start", at="p-fed"):
    path = sample(f"{name}.drill.json")
    drill = open_drill(path)
    window = make_window(Document(drill.drill, path=path), drill)
    window.view.go_to(At(at))
    hand.settle()
    return window


def test_it_says_how_long_steps_rules_and_points_take_to_read_aloud(make_window):
    window = opened(make_window)
    card = card_words(window.document.drill, window.view.at, "player", player="A")
    said = [
        s.text for key in ("steps", "bounds", "points", "rules") for s in card.section(key).sentences if not s.missing
    ]
    words = sum(any(letter.isalnum() for letter in word) for text in said for word in text.split())
    # 42 words in 15 s is 168 a minute: a coach educator's limit for one explanation.
    assert window.bottom.aloud.text() == f"Reads aloud in {math.ceil(words / 168 * 60)} s"


def test_it_counts_the_kit(make_window):
    window = opened(make_window)
    assert window.bottom.kit.text().startswith("14 balls, basket, chalk")


def test_it_measures_what_is_picked(make_window):
    window = opened(make_window)
    window.view.select(["feed-zone"])
    # Two rackets of 27 in by three strides of a yard.
    assert "2 rackets by 3 strides, 1.37 by 2.74 m" in window.bottom.figures.text()
    window.view.select(["reply"])
    assert "forehand" in window.bottom.figures.text()
    assert "cross-court" in window.bottom.figures.text()
    window.view.select(["reply", "feed"])
    assert window.bottom.figures.text() == "2 picked"
    window.view.select([])
    assert window.bottom.figures.text() == ""


def test_it_never_says_that_all_is_well(make_window):
    window = opened(make_window)
    window.bottom.review()
    said = window.bottom.checks.words
    assert said == CLEAN or window.bottom.checks.weight in ("error", "caution", "suggestion")
    assert "safe" not in said.lower()


def test_a_check_leads_to_what_it_is_about(window):
    hand.click(window.start_row.counts.segments()[1])
    window.bottom.review()
    menu = window.bottom.menu()
    assert [action.text() for action in menu.actions()]
    found = window.bottom._checks
    about = next((check for check in found if set(check.about) & window.view.setting.ids()), None)
    if about is None:
        window.bottom.shown.emit(None, tuple(window.view.setting.ids())[:1])
        assert window.view.selection
        return
    window.bottom.shown.emit(about.at, about.about)
    assert window.view.selection == set(about.about) & window.view.setting.ids()


def test_the_checks_wait_for_a_pause(window):
    window.bottom.review()
    before = window.bottom.checks.words
    hand.write(window.column.title, "Deep")
    assert window.bottom._pause.isActive()
    assert window.bottom.checks.words == before


def test_no_step_of_a_drag_waits_for_the_checks(window, monkeypatch):
    reviewed = []
    monkeypatch.setattr(window.bottom, "review", lambda: reviewed.append(1))
    window.document.preview(window.document.drill.changed(title="Held"))
    window.bottom._pause.timeout.emit()
    assert not reviewed
    assert window.bottom._pause.isActive(), "they come once it is let go"
    window.document.end_preview()
    window.bottom._pause.timeout.emit()
    assert reviewed


def test_what_the_next_press_does_stays_in_sight_while_the_place_is_read_at_the_pointer(window):
    bottom = window.bottom
    window.view.set_tool("ball")
    assert "hitter" in bottom.figures.text()
    window.canvas.reading_changed.emit("1 racket left of the T")
    assert "hitter" in bottom.figures.text()
    bottom.say("That has no form.")
    assert bottom.figures.text() == "That has no form."
    window.view.set_tool("select")
    assert bottom.figures.text() == ""
    window.canvas.reading_changed.emit("1 racket left of the T")
    assert bottom.figures.text() == "1 racket left of the T"
    window.canvas.reading_changed.emit("")


def test_a_long_line_never_makes_the_window_wider(window):
    least = window.minimumSizeHint().width()
    window.bottom.prompt("Press here. " * 60)
    assert window.minimumSizeHint().width() == least
    assert window.bottom.checks.maximumWidth() < 400
    window.bottom.prompt("")
    assert window.bottom.checks.maximumWidth() > 4000
