"""Before printing: the pages that come out, for another reader, of every progression, on the printer that was chosen."""

import io

import pypdf
import pytest
from desktop import hand
from PySide6.QtPrintSupport import QPrinter
from shiboken6 import isValid

from designer.desktop.document import Document
from designer.desktop.pages import sheets
from designer.desktop.situations import SITUATIONS, with_situation
from designer.drill.drill import Progression, Variation
from designer.drill.edits import add_progression, add_variation
from designer.drill.setting import At, main_setting
from designer.storage.reading import open_drill


@pytest.fixture
def preview(make_window, document):
    drill = with_situation(document.drill, main_setting(document.drill), SITUATIONS[0], document.source)
    drill = add_progression(drill, Progression(id="p-points", name="Points"))
    window = make_window(Document(drill, source=document.source))
    window.actions_by_name["print"].trigger()
    made = window.deeds.card.preview
    hand.finish(made)
    yield made
    if isValid(made):
        made.close()


def choose(preview, which):
    preview.which.setCurrentIndex(preview.which.findData(which))
    preview.which.activated.emit(preview.which.currentIndex())
    hand.finish(preview)


def test_what_is_shown_is_what_is_kept_and_printed(preview, prompts, tmp_path):
    window = preview._window
    player = preview.pages()[0]
    assert player.width < player.height
    hand.click(preview.readers.segments()[1])
    hand.finish(preview)
    coach = preview.pages()
    assert coach[0].pdf != player.pdf
    prompts.answers = [tmp_path / "kept"]
    hand.click(preview.keep_button)
    hand.finish(preview)
    assert (tmp_path / "kept.pdf").read_bytes() == coach[0].pdf
    assert "kept.pdf" in preview.notice.words
    assert window.actions_by_name["ask all"].isChecked()  # a card that came out shows what is still open
    assert open_drill(tmp_path / "kept.pdf").drill == window.document.drill
    choose(preview, "progressions")
    assert len({page.pdf for page in preview.pages()}) == len(window.document.drill.progressions) == 2
    prompts.answers = [tmp_path / "both.pdf"]
    hand.click(preview.keep_button)
    hand.finish(preview)
    assert prompts.asked[-1][1].name.endswith("-progressions-coach.pdf")
    assert len(sheets((tmp_path / "both.pdf").read_bytes())) == len(preview.pages())
    assert open_drill(tmp_path / "both.pdf").drill == window.document.drill
    # No printer chosen: nothing happens; then one that prints into a file.
    prompts.answers = [None]
    hand.click(preview.print_button)
    assert preview.isVisible()
    printer = QPrinter()
    printer.setOutputFormat(QPrinter.OutputFormat.PdfFormat)
    printer.setOutputFileName(str(tmp_path / "printed.pdf"))
    printer.setResolution(72)
    prompts.answers = [printer]
    count = len(preview.pages())
    hand.click(preview.print_button)
    hand.finish(preview)
    assert len(sheets((tmp_path / "printed.pdf").read_bytes())) == count
    assert f"{count} pages sent to the printer" in window.bottom.figures.text()


def test_changing_one_s_mind_while_pages_are_made_makes_those_chosen_last(preview):
    for name in ("a4", "a6", "a4"):
        preview.papers.setCurrentIndex(preview.papers.findData(name))
        preview.papers.activated.emit(preview.papers.currentIndex())
    while preview.work.busy:
        hand.finish(preview)
    # ISO 216: A4 is 210 mm wide.
    assert preview.pages()[0].width == pytest.approx(210 / 25.4 * 72, abs=0.5)


def test_the_sheet_is_turned_and_an_address_becomes_a_code(preview):
    """Level Q and the quiet zone are those of `tests/cards/test_square_code.py`; here that what is typed comes out."""
    upright = preview.pages()[0]
    hand.click(preview.across)
    preview.address.setText("HTTPS://EXAMPLE.ORG/D7")
    preview.address.editingFinished.emit()
    while preview.work.busy:
        hand.finish(preview)
    lying = preview.pages()[0]
    assert (lying.width, lying.height) == pytest.approx((upright.height, upright.width), abs=0.5)
    assert "HTTPS://EXAMPLE.ORG/D7" in "".join(
        page.extract_text() for page in pypdf.PdfReader(io.BytesIO(lying.pdf)).pages
    )
    preview.papers.setCurrentIndex(preview.papers.findData("poster-a4"))
    preview.papers.activated.emit(preview.papers.currentIndex())
    hand.finish(preview)
    assert not preview.across.isEnabled()


def test_on_easier_that_card_or_all_can_be_printed_and_the_name_says_which(preview, prompts, qtbot):
    window = preview._window
    assert [preview.which.itemData(number) for number in range(preview.which.count())] == ["this", "progressions"]
    preview.close()
    drill = add_variation(window.document.drill, "p-points", "easier", Variation(id="v-near", name="nearer"))
    window.document.perform("Add an easier one", drill)
    window.view.go_to(At("p-points", "v-near"))
    window.actions_by_name["print"].trigger()
    again = window.deeds.card.preview
    hand.finish(again)
    names = []
    for which, pages in (("this", 1), ("progressions", 2), ("all", 3)):
        choose(again, which)
        assert len(again.pages()) == pages
        prompts.answers = [None]
        hand.click(again.keep_button)
        names.append(prompts.asked[-1][1].name.removeprefix("drill"))
    assert names == ["-2-easier-player.pdf", "-progressions-player.pdf", "-all-player.pdf"]
    again.close()
    qtbot.waitUntil(window.isActiveWindow)
