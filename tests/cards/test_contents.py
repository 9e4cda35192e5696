from __future__ import annotations

import functools
import io
import re
from pathlib import Path

import pikepdf
import pypdfium2
import pytest

from designer.bundle import sample
from designer.cards.card import make_card
from designer.cards.papers import PAPERS
from designer.drill.base import place
from designer.drill.conditions import Event
from designer.drill.drill import Drill, Progression
from designer.drill.edits import delete, put
from designer.drill.items import Basket
from designer.drill.people import Job, Spot
from designer.drill.rules import Swap
from designer.drill.setting import At, main_setting, setting_at
from designer.storage.reading import open_drill
from designer.storage.writing import drill_bytes
from designer.wording.card import card_words
from designer.wording.kit import kit
from designer.wording.layout import layout_of
from designer.wording.telling import telling


@functools.cache
def load(name: str) -> Drill:
    return Drill.model_validate_json(sample(f"{name}.drill.json").read_bytes())


def text_of(pdf: bytes) -> str:
    pages = (page.get_textpage().get_text_range() for page in pypdfium2.PdfDocument(pdf))
    return " ".join(" ".join(pages).split())


@pytest.mark.parametrize("name", ["wide-start", "chalk-line", "doubles-six"])
@pytest.mark.parametrize("paper", ["a5", "a4", "a6"])
def test_two_players_alone_can_lay_it_out_from_a_players_card(name: str, paper: str) -> None:
    drill = load(name)
    at = main_setting(drill)
    said = text_of(make_card(drill, at, paper=paper, player="A").pdf).replace(" ", "")
    for sentence in layout_of(telling(drill, at, "player", "A")):
        assert sentence.text.replace(" ", "").replace("\N{NO-BREAK SPACE}", "") in said
    for thing in kit(drill, at):
        assert thing.replace(" ", "").replace("\N{NO-BREAK SPACE}", "") in said


def test_where_the_balls_go_is_said_or_asked() -> None:
    drill = load("wide-start")
    at = main_setting(drill)
    assert "Basket:" in text_of(make_card(drill, at).pdf)
    basket = next(id for id, item in setting_at(drill, at).items.items() if isinstance(item, Basket))
    bare = delete(drill, at, (basket,))
    assert "Spare balls lie" in text_of(make_card(bare, at).pdf)


def test_a_coach_who_is_needed_lays_out_not_the_player() -> None:
    drill = load("hoop-red")
    said = text_of(make_card(drill, main_setting(drill)).pdf)
    assert "Lay out" not in said
    assert "Lay out" in text_of(make_card(drill, main_setting(drill), reader="coach").pdf)


def test_a_players_card_fits_one_sheet_of_a5() -> None:
    for path in sample().glob("*.drill.json"):
        drill = load(path.name.removesuffix(".drill.json"))
        assert make_card(drill, main_setting(drill)).pages <= 2, drill.title


def test_both_jobs_are_told_in_turn_and_the_reader_is_filled_in() -> None:
    drill = load("wide-start")
    for letter, other in (("A", "B"), ("B", "A")):
        said = text_of(make_card(drill, main_setting(drill), player=letter).pdf)
        assert f"You start as {letter}." in said
        assert re.search(rf"you are (C if present, then )?{other}, then (C if present, then )?{letter} again", said)


def test_a_mailed_card_is_opened_changed_and_printed_again_with_all_that_it_had(tmp_path: Path) -> None:
    source = sample("wide-start.drill.json").read_bytes()
    drill = load("wide-start")
    at = main_setting(drill)
    card = make_card(drill, at, reader="coach", source=source).pdf
    mailed, returned = tmp_path / "card.pdf", tmp_path / "again.pdf"
    mailed.write_bytes(card)
    opened = open_drill(mailed)
    assert opened.drill == drill
    changed = opened.drill.changed(title="Wide, then back", edition=opened.drill.edition + 1)
    again = make_card(changed, at, reader="coach", source=drill_bytes(changed)).pdf
    returned.write_bytes(again)
    twice = open_drill(returned).drill
    assert twice == changed
    assert twice.changed(title=drill.title, edition=drill.edition) == drill
    assert text_of(again).replace("Wide, then back", drill.title).replace("edition 2", "edition 1") == text_of(card)


@pytest.mark.parametrize("paper", PAPERS)
def test_a_card_is_sound_and_every_font_is_in_it(paper: str) -> None:
    """qpdf's own check, through pikepdf, and the font descriptors of ISO 32000."""
    drill = load("short-approach")
    pdf = make_card(drill, main_setting(drill), paper=paper, reader="coach", address="https://a.example/x").pdf
    with pikepdf.open(io.BytesIO(pdf)) as document:
        assert document.check_pdf_syntax() == []
        fonts = [font for page in document.pages for font in page.resources.Font.values()]
        assert fonts
        assert all("/FontFile2" in font.FontDescriptor for font in fonts)


def test_nobody_is_named_in_words_metadata_or_attachment_unless_the_drill_names_its_author() -> None:
    """Players are letters; nothing asks for their names, so nothing can give them away."""
    drill = load("wide-start").changed(author="")
    source = drill_bytes(drill)
    with pikepdf.open(io.BytesIO(make_card(drill, main_setting(drill), player="A", source=source).pdf)) as document:
        assert {str(key): str(value) for key, value in document.docinfo.items() if key == "/Author"} in (
            {},
            {"/Author": ""},
        )
    assert not any("name" in field for field in type(drill.jobs[0]).model_fields)


def test_put_is_seen_on_the_card() -> None:
    drill = load("wide-start")
    at = main_setting(drill)
    more = put(drill, at, Basket(kind="basket", id="second", place={"at": (-3.0, -15.0)}, balls=40))
    assert "40 balls" in text_of(make_card(more, at).pdf)


def test_more_rounds_than_are_drawn_are_said_to_be_more() -> None:
    letters = "ABCDEFGHIJ"
    drill = Drill(
        id="d-ten", jobs=tuple(Job(letter=letter) for letter in letters), progressions=(Progression(id="p-one"),)
    )
    for number, letter in enumerate(letters):
        spot = Spot(id=f"spot-{letter.lower()}", job=letter, place=place(number - 5.0, -12.0), task="plays")
        drill = put(drill, At("p-one"), spot)
    moves = dict(zip(letters, letters[1:] + letters[:1], strict=True))
    drill = put(drill, At("p-one"), Swap(id="round", on=(Event(what="starts", count=5),), moves=moves))
    card = make_card(drill, At("p-one"), reader="coach", paper="a4")
    assert "Round by round, the first 8" in text_of(card.pdf), "ten change places: everybody is back after ten"


@pytest.mark.parametrize("code", ["short-approach", "doubles-six", "volley-four", "wide-start", "forehand-on-eight"])
def test_what_a_player_asks_is_whole_on_the_first_side_before_what_the_signs_mean(code: str) -> None:
    """Who am I, when do we swap, what may I not do, how do we score; the rest goes overleaf first."""
    drill = Drill.model_validate_json(sample(f"{code}.drill.json").read_bytes())
    words = card_words(drill, main_setting(drill), "player")
    first, *later = (
        page.get_textpage().get_text_range()
        for page in pypdfium2.PdfDocument(make_card(drill, main_setting(drill)).pdf)
    )
    for key in ("you", "swap", "bounds", "points"):
        for sentence in words.section(key).sentences:
            assert "".join(sentence.text.split())[-20:] in "".join(first.split()), key
    assert "Take care" in later[0]


@pytest.mark.parametrize("paper", ["a6", "3x5"])
def test_a_small_card_tells_the_swap_before_the_fine_print(paper: str) -> None:
    drill = load("short-approach")
    text = text_of(make_card(drill, main_setting(drill), paper=paper, player="A").pdf)
    assert text.index("After every five starts, change ends") < text.index("Level score")


def test_what_goes_on_in_another_column_says_of_what() -> None:
    drill = Drill.model_validate_json(sample("forehand-on-eight.drill.json").read_bytes())
    pages = pypdfium2.PdfDocument(make_card(drill, main_setting(drill)).pdf)
    assert "Lay out, continued" in pages[1].get_textpage().get_text_range()
