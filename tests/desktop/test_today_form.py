"""Names of today: on the card, and nowhere else."""

import io

import pikepdf
import pypdf
import pytest
from desktop import hand

from designer.bundle import sample
from designer.desktop.document import Document
from designer.desktop.printing import Manner, made, ordered
from designer.desktop.today_form import TodayForm
from designer.drill.setting import At
from designer.storage.reading import open_drill
from designer.storage.today import kept_today, today_folder


@pytest.fixture
def window(make_window):
    opened = open_drill(sample("wide-start.drill.json"))
    return make_window(Document(opened.drill, path=opened.path))


def words(pdf):
    return " ".join(" ".join(page.extract_text() for page in pypdf.PdfReader(io.BytesIO(pdf)).pages).split())


def test_names_given_in_the_form_are_printed_and_kept_for_the_day_only(window, prompts):
    window.actions_by_name["today"].trigger()
    form = window.findChild(TodayForm)
    first = window.document.drill.progressions[0].id
    form.settings.setCurrentIndex(0)
    hand.write(form.rows["A"].name, "Mira Quill")
    hand.click(form.rows["A"].hand.segments()[1])
    assert form.rows["A"].offer.isVisibleTo(form)
    assert "left-hander" in form.rows["A"].offer.text()
    assert not form.rows["B"].offer.isVisibleTo(form)
    form.keep()
    assert window.view.at == At(first)
    drill = window.document.drill
    assert kept_today(drill.id).names() == {"A": "Mira Quill"}
    assert b"Mira" not in window.filing.source()
    pdf, _ = made(ordered(window.filing, window.view, "coach"))
    assert "Today A is Mira Quill (left-handed)." in words(pdf)
    with pikepdf.open(io.BytesIO(pdf)) as document:
        (attached,) = document.attachments.values()
        assert attached.get_file().read_bytes() == window.filing.source()
    assert "Mira" not in words(made(ordered(window.filing, window.view, "coach", manner=Manner(named=False)))[0])
    again = window.deeds.card.name_players()
    assert again.rows["A"].name.text() == "Mira Quill"
    again.forget()
    again.close()
    assert list(today_folder().iterdir()) == []


def test_the_left_handed_version_is_made_from_the_form(window, prompts):
    form = window.deeds.card.name_players()
    hand.click(form.rows["A"].hand.segments()[1])
    prompts.answers = [0]
    hand.click(form.rows["A"].offer)
    assert window.document.drill.job("A").hand == "left"
    assert kept_today(window.document.drill.id).other_hands(window.document.drill) == ()
