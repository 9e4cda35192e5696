from __future__ import annotations

import functools
import io
import os
import re
import subprocess
import sys
from collections.abc import Iterator
from datetime import date

import pikepdf
import pypdf
import pypdfium2
import pytest

from designer.bundle import sample
from designer.cards.card import contrast_with_white, make_card
from designer.cards.papers import PAPERS
from designer.court.standards import ground
from designer.drill.base import place
from designer.drill.brand import Brand
from designer.drill.drill import Changes, Drill, Progression
from designer.drill.edits import put
from designer.drill.items import Cone
from designer.drill.setting import At, addresses, main_setting, setting_at
from designer.play.sequence import sequence
from designer.review.checks import checks

SAMPLES = sorted(path.name.removesuffix(".drill.json") for path in sample().glob("*.drill.json"))
THOROUGH = os.environ.get("HYPOTHESIS_PROFILE") == "thorough"
READERS = ("player", "coach", "stand-in")


@functools.cache
def load(name: str) -> Drill:
    return Drill.model_validate_json(sample(f"{name}.drill.json").read_bytes())


def academy() -> dict[str, object]:
    return {
        "brand": Brand.model_validate_json(sample("brand.json").read_bytes()),
        "logo": sample("alder-quay.svg").read_text(encoding="utf-8"),
    }


def reader_of(pdf: bytes) -> pypdf.PdfReader:
    return pypdf.PdfReader(io.BytesIO(pdf))


def printed_by(pdf: bytes) -> str:
    """Return the words of all pages, as a PDF viewer gives them."""
    with pypdfium2.PdfDocument(pdf) as document:
        return "".join(page.get_textpage().get_text_range() for page in document)


def squeezed(text: str) -> str:
    return re.sub(r"\s+", "", text)


def test_papers_are_iso_216() -> None:
    for name, (width, height) in {"a4": (210, 297), "a5": (148, 210), "a6": (105, 148)}.items():
        page = reader_of(make_card(load("wide-start"), At("p-fed"), paper=name).pdf).pages[0]
        assert float(page.mediabox.width) == pytest.approx(width * 72 / 25.4, abs=0.01)
        assert float(page.mediabox.height) == pytest.approx(height * 72 / 25.4, abs=0.01)


def test_the_same_input_gives_the_same_bytes_in_another_process() -> None:
    program = (
        "import sys; from designer.bundle import sample; from designer.cards.card import make_card;"
        "from designer.drill.drill import Drill; from designer.drill.setting import main_setting;"
        "source = sample('wide-start.drill.json').read_bytes(); drill = Drill.model_validate_json(source);"
        "sys.stdout.buffer.write(make_card(drill, main_setting(drill), reader='coach', source=source).pdf)"
    )
    there = subprocess.run([sys.executable, "-c", program], capture_output=True, check=True).stdout
    drill, source = load("wide-start"), sample("wide-start.drill.json").read_bytes()
    assert make_card(drill, main_setting(drill), reader="coach", source=source).pdf == there
    assert there.startswith(b"%PDF")


def test_a_card_names_itself_and_opens_at_its_headings() -> None:
    drill = load("wide-start")
    document = reader_of(make_card(drill, main_setting(drill), reader="coach", **academy()).pdf)
    assert document.metadata.title == drill.title
    assert document.metadata.subject == drill.objective
    assert document.metadata.author == "Alder Quay Tennis Academy"
    assert document.trailer["/Root"]["/Lang"] == "en"
    assert document.metadata.creation_date.date() == drill.dated
    outline = [entry.title for entry in flat(document.outline)]
    assert outline[0] == drill.title
    assert {"Lay out", "What happens", "Rules", "Points", "Progressions"} <= set(outline)


def flat(outline: list) -> Iterator:
    for entry in outline:
        if isinstance(entry, list):
            yield from flat(entry)
        else:
            yield entry


def test_every_font_is_embedded() -> None:
    drill = load("short-approach")
    with pikepdf.open(io.BytesIO(make_card(drill, main_setting(drill), reader="coach", **academy()).pdf)) as document:
        fonts = [font for page in document.pages for font in page.resources.Font.values()]
        assert fonts
        assert all("/FontFile2" in font.FontDescriptor for font in fonts)
        assert {str(font.BaseFont).split("+")[1] for font in fonts} == {"NotoSans-Regular", "NotoSans-Bold"}


def test_a_card_carries_its_drill_as_its_source() -> None:
    source = sample("wide-start.drill.json").read_bytes()
    drill = load("wide-start")
    with pikepdf.open(io.BytesIO(make_card(drill, main_setting(drill), source=source).pdf)) as document:
        (name,) = document.attachments
        attached = document.attachments[name]
        assert name == "wide-start.drill.json"
        assert attached.get_file().read_bytes() == source
        assert attached.obj.AFRelationship == pikepdf.Name.Source
    assert b"EmbeddedFile" not in make_card(drill, main_setting(drill)).pdf


HOSTILE = [
    "<b>bold", "a </para> b", "<img src='file:///etc/passwd'>", "AT&T &amp; &#60;", "NUL \0 in the middle",
    "tab\there\nand a line", "é ü ß Ł Ж Σ", "(brackets) \\ backslash", "{left} {A} {nothing} {{",
]  # fmt: skip


@pytest.mark.parametrize("text", HOSTILE)
def test_any_text_prints_as_it_is_written(text: str) -> None:
    drill = Drill(
        id="d-text",
        title=text,
        objective=text,
        cues=(text,),
        safety=(text,),
        progressions=(Progression(id="p-one", name=text, changes=Changes()),),
    )
    for reader in READERS:
        printed = squeezed(printed_by(make_card(drill, At("p-one"), reader=reader).pdf))
        assert squeezed(text.replace("\0", "").replace("\t", " ")) in printed or "{" in text


def test_five_thousand_characters_flow_on_and_lose_nothing() -> None:
    note = " ".join(f"word{number:04}" for number in range(550))
    drill = load("wide-start").changed(safety=(note,))
    for paper in ("a5", "a4", "3x5"):
        for reader in READERS[:2]:
            card = make_card(drill, main_setting(drill), paper=paper, reader=reader)
            printed = printed_by(card.pdf)
            assert re.findall(r"word\d{4}", printed.lower()) == note.split()
            assert card.pages > 1


def test_a_sign_the_font_lacks_is_reported() -> None:
    drill = load("wide-start").changed(objective="Run ⇄ stop")
    card = make_card(drill, main_setting(drill))
    assert card.notices == (
        "The card's font has no sign for ⇄ (U+21C4) in the objective; a question mark stands in its place.",
    )


def test_an_empty_drill_has_a_card_with_lines_to_write_on() -> None:
    drill = Drill(id="d-empty", progressions=(Progression(id="p-one"),))
    for paper in PAPERS:
        for reader in READERS:
            assert make_card(drill, At("p-one"), paper=paper, reader=reader).pages >= 1


def test_every_setting_of_every_sample_has_a_card() -> None:
    for number, name in enumerate(SAMPLES):
        drill = load(name)
        every = list(addresses(drill))[1:]  # the first ones are tried by the others
        for at in every if THOROUGH else [every[number % len(every)]]:
            assert make_card(drill, at, grey=True).pages in (1, 2)


def test_a_grey_card_uses_no_colour() -> None:
    drill = load("wide-start")
    pdf = make_card(drill, main_setting(drill), reader="coach", grey=True, **academy()).pdf
    with pikepdf.open(io.BytesIO(pdf)) as document:
        for page in document.pages:
            for operands, operator in pikepdf.parse_content_stream(page):
                if str(operator) in ("rg", "RG"):
                    assert len({float(value) for value in operands}) == 1


def test_what_cannot_be_made_is_said() -> None:
    drill = load("wide-start")
    with pytest.raises(KeyError, match="no paper 'a9'; there are a5, a4, a6"):
        make_card(drill, main_setting(drill), paper="a9")
    with pytest.raises(KeyError, match="no job 'Q'; it has A, B, C"):
        make_card(drill, main_setting(drill), player="Q")


def test_a_pale_brand_colour_is_not_used_for_words() -> None:
    """Contrast by WCAG 2.1; black on white is 21, and #777777 on white is 4.48 (its well-known near miss)."""
    assert contrast_with_white("#000000") == pytest.approx(21)
    assert contrast_with_white("#777777") == pytest.approx(4.48, abs=0.01)
    drill = load("wide-start").changed(dated=date(2026, 11, 25))
    pale = make_card(drill, main_setting(drill), brand=Brand(name="Pale", colour="#EEEEEE"))
    assert b"%PDF" in pale.pdf


def test_a_danger_seen_in_the_drawing_stands_under_take_care() -> None:
    """A cone in the way of a run: the usual caution of the trade, common practice, no source."""
    drill = load("wide-start")
    at = main_setting(drill)
    setting = setting_at(drill, at)
    path = sequence(setting, ground(drill.court), drill.jobs).run_paths["out"]
    x, y = path[len(path) // 2]
    drill = put(drill, at, Cone(kind="cone", id="trap", place=place((path[0][0] + x) / 2, (path[0][1] + y) / 2)))
    said = [check.sentence.text for check in checks(drill, at) if check.danger]
    assert said
    for reader in READERS:
        printed = squeezed(printed_by(make_card(drill, at, reader=reader).pdf))
        assert all(squeezed(text) in printed for text in said)


def test_a_coach_sees_a_group_of_three_or_more_round_by_round() -> None:
    def printed(name: str, reader: str, paper: str) -> str:
        drill = load(name)
        return printed_by(make_card(drill, main_setting(drill), reader=reader, paper=paper).pdf)

    assert "Round by round" in printed("doubles-six", "coach", "a5")
    assert "then 1 again" not in printed("doubles-six", "coach", "a5")  # play ends with its six rounds
    assert "Round by round, then 1 again" in " ".join(printed("hoop-red", "coach", "a4").split())
    assert "Round by round" not in printed("doubles-six", "player", "a5")
    assert "Round by round" not in printed("doubles-six", "coach", "a6")  # no room; the words say the same
    assert "Round by round" not in printed("a-chooses", "coach", "a5")  # two change places
