import pytest
from PySide6.QtCore import QMimeData

from designer.desktop.canvas import clipboard
from designer.drill.drill import Drill, Progression
from designer.drill.places import anchor


def mime_of(data):
    mime = QMimeData()
    mime.setData(clipboard.MIME, data)
    return mime


@pytest.fixture
def copied(hand):
    hand.view.select(("spot-a", "spot-b", "feed", "reply", "back", "zone"))
    return clipboard.copied_mime(hand.bench)


def test_what_is_copied_stands_the_same_on_another_court(copied, empty_hand):
    assert clipboard.paste(empty_hand.bench, copied)
    setting = empty_hand.setting
    assert {spot.job: spot.place.at for spot in setting.spots.values()} == {"A": (0.0, -12.0), "B": (0.0, 12.0)}
    feed, reply = setting.shots.values()
    assert (feed.by, feed.stroke, reply.by, reply.after) == ("B", "racket feed", "A", feed.id)
    (run,) = setting.runs.values()
    assert (run.by, run.during) == ("A", reply.id)
    assert empty_hand.undo_text == "Paste 6 items"
    assert empty_hand.view.selection == setting.ids()
    empty_hand.document.undo()
    assert not empty_hand.setting.ids()


def test_pasted_beside_themselves_people_take_free_letters_and_keep_their_balls(hand, copied):
    clipboard.paste(hand.bench, copied)
    new = [hand.setting.find(id) for id in hand.view.selection]
    assert {record.job for record in new if hasattr(record, "job")} == {"C", "D"}
    assert {record.by for record in new if hasattr(record, "by")} == {"C", "D"}
    assert hand.document.stack.count() == 1


def test_what_was_tied_to_something_left_behind_stands_where_it_stood(hand, empty_hand):
    hand.drag_handle("reply", "landing", (-3.0, 9.0))
    assert hand.setting.shots["reply"].to.on == "zone"
    hand.view.select(("spot-a", "reply"))
    clipboard.paste(empty_hand.bench, clipboard.copied_mime(hand.bench))
    (shot,) = empty_hand.setting.shots.values()
    assert shot.to.on is None
    assert anchor(empty_hand.setting, shot.id) == (-3.0, 9.0)


def test_the_text_says_what_and_where_in_words(hand):
    hand.view.select(("cone",))
    assert clipboard.copied_mime(hand.bench).text().startswith("Cone: ")


def test_cutting_is_one_step(hand):
    hand.view.select(("cone",))
    assert clipboard.cut_picked(hand.bench) is not None
    assert "cone" not in hand.setting.ids()
    assert hand.undo_text == "Cut cone"


def test_nothing_picked_copies_nothing(hand):
    assert clipboard.copied_mime(hand.bench) is None


@pytest.mark.parametrize(
    "data",
    [
        b"",
        b"{",
        b"[1, 2]",
        b"\xff\xfe\x00",
        b"[" * 100_000,
        b'{"format": 1}',
        b"x" * (clipboard.MOST_BYTES + 1),
        b'{"format": 1, "id": "d", "progressions": [{"id": "p", "changes": {"items": [{"kind": "cone", "id": "c"}]}}]}',
    ],
)
def test_a_malformed_or_huge_clipboard_is_refused_in_words_and_nothing_is_lost(hand, data):
    before = hand.document.drill
    assert not clipboard.paste(hand.bench, mime_of(data))
    assert hand.document.drill is before
    assert hand.said
    assert "Traceback" not in hand.said[0]


def test_ordinary_text_is_refused_in_words(hand):
    mime = QMimeData()
    mime.setText("buy balls")
    assert not clipboard.paste(hand.bench, mime)
    assert hand.said == ["That cannot be pasted: it is no part of a drill."]


def test_more_things_than_a_court_shows_are_refused(hand, monkeypatch, copied):
    monkeypatch.setattr(clipboard, "MOST_THINGS", 3)
    assert not clipboard.paste(hand.bench, copied)
    assert "more than a court can show" in hand.said[0]


def test_no_letter_left_is_said(copied, hand):
    from designer.drill.people import Job

    jobs = tuple(Job(letter=letter) for letter in "ABCDEFGHIJKLMNOPQRSTUVWXYZ")
    drill = hand.document.drill.changed(jobs=jobs)
    spots = [
        record.changed(id=f"s-{letter}".lower(), job=letter)
        for letter in "CDEFGHIJKLMNOPQRSTUVWXYZ"
        for record in [hand.setting.spots["spot-a"]]
    ]
    from designer.drill.edits import put

    hand.document.perform("All", put(drill, hand.view.at, *spots))
    assert not clipboard.paste(hand.bench, copied)
    assert "letters" in hand.said[0]


def test_an_empty_part_says_that_there_is_nothing(hand):
    from designer.storage.writing import drill_bytes

    assert not clipboard.paste(hand.bench, mime_of(drill_bytes(Drill(id="d", progressions=(Progression(id="p"),)))))
    assert "nothing on the clipboard" in hand.said[0]
