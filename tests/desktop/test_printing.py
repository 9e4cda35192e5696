"""Print and export from the window: the card of what is in view, for whoever reads it; the picture of the court."""

import io

import pypdf
import pytest
from desktop import hand
from PySide6.QtCore import QThreadPool
from PySide6.QtGui import QImage

from designer.bundle import sample
from designer.desktop.document import Document
from designer.drill.setting import At
from designer.storage.reading import open_drill


@pytest.fixture
def window(make_window):
    path = sample("wide-start.drill.json")
    opened = open_drill(path)
    return make_window(Document(opened.drill, path=path), opened)


def text_of(path):
    return " ".join(" ".join(page.extract_text() for page in pypdf.PdfReader(path).pages).split())


def test_print_asks_where_only_the_first_time(window, prompts, tmp_path):
    card = tmp_path / "card.pdf"
    prompts.answers = [card]
    window.actions_by_name["make card"].trigger()
    hand.finish(window)
    first = card.read_bytes()
    card.unlink()
    window.actions_by_name["make card"].trigger()
    hand.finish(window)
    assert card.read_bytes() == first
    assert "card.pdf" in window.notice.words


def test_the_offered_name_says_drill_progression_and_reader(window, prompts):
    window.view.go_to(At("p-fed", "v-one-racket"))
    window.column.bar.choose("coach")
    prompts.answers = [None]
    window.actions_by_name["make card"].trigger()
    hand.finish(window)
    assert prompts.asked[0][1].name == "wide-start-2-harder-coach.pdf"
    assert prompts.asked[0][1].parent == window.document.path.parent


def test_each_reader_gets_a_card_of_their_own_and_only_the_coach_the_drill(window, prompts, tmp_path):
    for reader in ("player", "coach", "stand-in"):
        window.column.bar.choose(reader)
        prompts.answers = [tmp_path / f"{reader}.pdf"]
        window.actions_by_name["make card"].trigger()
        hand.finish(window)
    assert "You start as A" in text_of(tmp_path / "player.pdf")
    assert "You start as A" not in text_of(tmp_path / "coach.pdf")
    assert pypdf.PdfReader(tmp_path / "player.pdf").attachments == {}
    assert open_drill(tmp_path / "coach.pdf").drill == window.document.drill
    (carried,) = pypdf.PdfReader(tmp_path / "coach.pdf").attachments.values()
    assert carried[0] == sample("wide-start.drill.json").read_bytes()


def test_the_card_speaks_to_the_player_who_was_chosen(window, prompts, tmp_path):
    menu = window.actions_by_name.menus["you"]
    menu.aboutToShow.emit()
    next(action for action in menu.actions() if action.text() == "B").trigger()
    assert window.view.you == "B"
    prompts.answers = [tmp_path / "b.pdf"]
    window.actions_by_name["make card"].trigger()
    hand.finish(window)
    assert "You start as B" in text_of(tmp_path / "b.pdf")


def test_paper_can_be_a4(window, prompts, tmp_path):
    window.actions_by_name["paper a4"].trigger()
    window.column.bar.choose("coach")
    prompts.answers = [tmp_path / "a4.pdf"]
    window.actions_by_name["make card"].trigger()
    hand.finish(window)
    box = pypdf.PdfReader(tmp_path / "a4.pdf").pages[0].mediabox
    # ISO 216: A4 is 210 × 297 mm.
    assert (float(box.width), float(box.height)) == pytest.approx((210 / 25.4 * 72, 297 / 25.4 * 72), abs=0.5)


def test_a_place_that_cannot_be_written_is_told(window, prompts, tmp_path):
    prompts.answers = [tmp_path / "nowhere" / "card.pdf"]
    window.actions_by_name["make card"].trigger()
    hand.finish(window)
    kind, sentence, more = prompts.asked[-1]
    assert (kind, sentence) == ("say", "The card was not made.")
    assert "nowhere" in more


def test_the_court_is_exported_as_a_drawing_or_in_pixels(window, prompts, tmp_path):
    prompts.answers = [tmp_path / "court.svg"]
    window.actions_by_name["export"].trigger()
    hand.finish(window)
    assert ">YOU</text>" in (tmp_path / "court.svg").read_text("utf-8")
    prompts.answers = [tmp_path / "court.png"]
    window.actions_by_name["export"].trigger()
    hand.finish(window)
    assert "court.png" in window.notice.words
    image = QImage(str(tmp_path / "court.png"))
    assert image.width() == 1600
    assert image.height() > image.width()


def test_a_picture_is_made_beside_the_window_and_leaves_nothing_where_it_is_stopped(window, prompts, tmp_path):
    written = tmp_path / "court.png"
    prompts.answers = [written]
    window.actions_by_name["export"].trigger()
    assert window.work.busy == "Exporting the picture"
    window.work.stop()
    QThreadPool.globalInstance().waitForDone()
    assert not written.exists()
    prompts.answers = [tmp_path / "nowhere" / "court.png"]
    window.actions_by_name["export"].trigger()
    hand.finish(window)
    assert prompts.asked[-1][1] == "The picture was not exported."


def test_the_card_is_copied_as_text(window, qapp):
    from designer.wording.describe import describe

    window.actions_by_name["copy text"].trigger()
    assert qapp.clipboard().text() == describe(window.document.drill, window.view.at, units="rackets")


def test_the_whole_card_is_bytes_of_a_pdf(window, prompts, tmp_path):
    prompts.answers = [tmp_path / "card"]
    window.actions_by_name["make card"].trigger()
    hand.finish(window)
    assert len(pypdf.PdfReader(io.BytesIO((tmp_path / "card.pdf").read_bytes())).pages) >= 1


def test_the_picture_is_on_the_clipboard_in_pixels_and_as_a_drawing(window, qapp):
    window.actions_by_name["copy picture"].trigger()
    hand.finish(window)
    mime = qapp.clipboard().mimeData()
    png = QImage.fromData(mime.data("image/png"))
    assert (png.width(), mime.imageData().width()) == (1600, 1600)
    assert b">YOU</text>" in mime.data("image/svg+xml").data()
    assert not png.isGrayscale()


def test_each_player_gets_a_card_in_one_file(window, prompts, tmp_path):
    menu = window.actions_by_name.menus["you"]
    menu.aboutToShow.emit()
    next(action for action in menu.actions() if action.text().startswith("Each of them")).trigger()
    prompts.answers = [tmp_path / "all.pdf"]
    window.actions_by_name["make card"].trigger()
    hand.finish(window)
    text = text_of(tmp_path / "all.pdf")
    assert "You start as A" in text
    assert "You start as B" in text


def test_small_cards_come_on_one_sheet_with_their_drill(window, prompts, tmp_path):
    menu = window.actions_by_name.menus["paper"]
    menu.aboutToShow.emit()
    next(action for action in menu.actions() if action.text().startswith("A6, four")).trigger()
    window.column.bar.choose("coach")
    prompts.answers = [tmp_path / "sheet.pdf"]
    window.actions_by_name["make card"].trigger()
    hand.finish(window)
    sheet = pypdf.PdfReader(tmp_path / "sheet.pdf")
    # ISO 216: A4 is 210 × 297 mm.
    box = sheet.pages[0].mediabox
    assert (float(box.width), float(box.height)) == pytest.approx((210 / 25.4 * 72, 297 / 25.4 * 72), abs=0.5)
    (carried,) = sheet.attachments.values()
    assert carried[0] == sample("wide-start.drill.json").read_bytes()


def test_what_cannot_be_set_as_it_is_read_is_declined(window, prompts, tmp_path):
    window.document.perform("Objective", window.document.drill.changed(objective="שלום"))
    prompts.answers = [tmp_path / "card.pdf"]
    window.actions_by_name["make card"].trigger()
    hand.finish(window)
    kind, sentence, more = prompts.asked[-1]
    assert (kind, sentence) == ("say", "The card was not made.")
    assert "right to left" in more
    assert "the objective" in more
    assert not (tmp_path / "card.pdf").exists()
