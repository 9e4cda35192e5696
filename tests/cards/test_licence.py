"""A brand's licence stands once on a card, clear of everything else, or its absence is told."""

import io

import pypdfium2
import pytest

from designer.bundle import sample
from designer.cards.card import make_card
from designer.drill.brand import Brand
from designer.drill.drill import Drill
from designer.drill.setting import main_setting

LICENCE = "Use on our own courts; ask before printing."


def card(name, licence=LICENCE, **values):
    own = Drill.model_validate_json(sample(f"{name}.drill.json").read_bytes())
    return make_card(own, main_setting(own), brand=Brand(name="Alder Quay", licence=licence), **values)


@pytest.mark.parametrize(
    ("paper", "reader"), [("a5", "player"), ("a5", "coach"), ("a6", "player"), ("a4", "coach"), ("a4", "player")]
)
def test_the_licence_stands_on_the_last_side_alone_and_touches_nothing(paper, reader):
    made = card("wide-start", paper=paper, reader=reader)
    document = pypdfium2.PdfDocument(made.pdf)
    texts = [page.get_textpage() for page in document]
    assert [LICENCE in text.get_text_bounded() for text in texts] == [False] * (len(texts) - 1) + [True]
    last = texts[-1]
    boxes = [last.get_rect(number) for number in range(last.count_rects())]
    (own,) = (box for box in boxes if last.get_text_bounded(*box).startswith("Use on"))
    assert own[1] > 4.2 / 25.4 * 72 - 2.5, "a sixth of an inch stays white, but for the tails of letters"
    for box in boxes:
        if box != own:
            assert box[2] <= own[0] or box[0] >= own[2] or box[3] <= own[1] + 0.5 or box[1] >= own[3] - 0.5
    assert made.notices == ()


def test_a_licence_too_long_for_a_card_is_named_on_it_and_none_changes_nothing():
    made = card("wide-start", licence="All rights. " * 200, paper="a6")
    assert any("licence is too long" in notice for notice in made.notices)
    last = list(pypdfium2.PdfDocument(made.pdf))[-1].get_textpage().get_text_range()
    assert "Under the owner’s licence: ask for it" in last
    plain = pypdfium2.PdfDocument(io.BytesIO(card("wide-start", licence="").pdf))
    assert len(plain) == len(pypdfium2.PdfDocument(io.BytesIO(card("wide-start").pdf)))


@pytest.mark.parametrize(
    "licence", [LICENCE, f"{LICENCE} Whoever teaches from it says whose it is, and keeps this line. " * 2]
)
def test_a_licence_of_usual_length_has_room_on_every_full_card(licence):
    for name, paper in (("short-approach", "a5"), ("serve-open", "3x5")):
        made = card(name, licence, paper=paper)
        assert made.notices == ()
        last = list(pypdfium2.PdfDocument(made.pdf))[-1].get_textpage().get_text_range()
        assert " ".join(licence.split()) in " ".join(last.split())
