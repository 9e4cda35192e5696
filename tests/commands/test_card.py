import io
import json
from pathlib import Path

import pikepdf
import pypdf
import pytest

from designer.bundle import sample

A5, A4 = (148.0, 210.0), (210.0, 297.0)
"""Millimetres: ISO 216:2007, table 1."""


def pages(data):
    return pypdf.PdfReader(io.BytesIO(data)).pages


def text(data):
    return " ".join(" ".join(page.extract_text() for page in pages(data)).split())


def attachments(data):
    with pikepdf.open(io.BytesIO(data)) as document:
        return {
            name: (bytes(spec.get_file().read_bytes()), str(spec.obj.AFRelationship))
            for name, spec in document.attachments.items()
        }


@pytest.fixture
def made(call, wide):
    """Makes a card to standard output and returns the PDF."""

    def make(*words):
        said = call("card", wide, "-o", "-", *words)
        assert (said.status, said.err) == (0, "")
        return said.data

    return make


@pytest.mark.parametrize(("words", "size"), [((), A5), (("--paper", "a5"), A5), (("--paper", "a4"), A4)])
def test_the_paper_is_the_one_that_was_asked_for(made, words, size):
    for page in pages(made(*words)):
        sides = [float(side) / 72 * 25.4 for side in (page.mediabox.width, page.mediabox.height)]
        assert sides == pytest.approx(size, abs=0.5)


def test_the_same_call_gives_the_same_bytes(made):
    assert made("--for", "coach") == made("--for", "coach")


def test_readers_settings_letters_and_units_make_a_difference(made):
    calls = (
        (),
        ("--for", "coach"),
        ("--for", "stand-in"),
        ("--player", "B"),
        ("--at", "1"),
        ("--for", "coach", "--units", "feet"),
        ("--grey",),
    )
    assert len({made(*words) for words in calls}) == len(calls)


def test_the_card_has_the_title_and_the_brand(made):
    said = text(made("--for", "coach"))
    assert "Wide Ball, Recover, Play the Point" in said
    assert "Alder Quay" in said


@pytest.mark.parametrize(
    ("words", "carries"),
    [
        (("--for", "player"), False),
        (("--for", "player", "--with-source"), True),
        (("--for", "player", "--no-source"), False),
        (("--for", "coach"), True),
        (("--for", "coach", "--with-source"), True),
        (("--for", "coach", "--no-source"), False),
        (("--for", "stand-in"), True),
        (("--for", "stand-in", "--no-source"), False),
    ],
)
def test_who_gets_the_drill_with_the_card(made, wide, words, carries):
    expected = {"wide-start.drill.json": (wide.read_bytes(), "/Source")} if carries else {}
    assert attachments(made(*words)) == expected


def test_the_drill_is_carried_in_the_bytes_that_were_read(call, wide):
    wide.write_bytes(b"\n \t" + wide.read_bytes())
    data = call("card", wide, "-o", "-", "--for", "coach").data
    assert next(iter(attachments(data).values()))[0] == wide.read_bytes()


def test_a_card_is_made_from_a_card(call, wide, tmp_path):
    call("card", wide, "-o", tmp_path / "coach.pdf", "--for", "coach")
    again = call("card", tmp_path / "coach.pdf", "-o", "-", "--for", "coach")
    assert (again.status, again.err) == (0, "")
    assert again.data == (tmp_path / "coach.pdf").read_bytes()


@pytest.mark.parametrize(
    ("words", "says"),
    [
        (("--player", "Z"), "there is no player 'Z'; the drill has A, B"),
        (("--player", "A", "--for", "coach"), "--player goes with --for player only"),
        (("--at", "9"), "there is no progression '9'"),
    ],
)
def test_what_the_drill_has_not_is_wrong_usage(call, wide, tmp_path, words, says):
    said = call("card", wide, "-o", tmp_path / "card.pdf", *words)
    assert said.status == 64
    said.one_sentence(says)
    assert not (tmp_path / "card.pdf").exists()


def test_several_drills_go_into_a_folder_that_is_made_for_them(call, wide, tmp_path):
    other = sample("chalk-line.drill.json")
    said = call("card", wide, other, "-o", tmp_path / "new" / "cards")
    assert (said.status, said.err) == (0, "")
    made = {file.name: text(file.read_bytes()) for file in (tmp_path / "new" / "cards").iterdir()}
    assert made.keys() == {"wide-start.pdf", "chalk-line.pdf"}
    assert "Wide Ball" in made["wide-start.pdf"]
    assert call("card", wide, "-o", tmp_path).status == 0
    assert (tmp_path / "wide-start.pdf").exists()


def test_one_drill_that_cannot_be_read_does_not_keep_back_the_others(call, wide, broken, tmp_path):
    said = call("card", broken, wide, "-o", tmp_path / "cards")
    assert said.status == 2
    said.one_sentence(broken)
    assert [file.name for file in (tmp_path / "cards").iterdir()] == ["wide-start.pdf"]


def test_several_drills_need_a_folder(call, wide, broken, tmp_path):
    for output in ("-", broken):
        said = call("card", wide, wide, "-o", output, "--force")
        assert said.status == 64
        said.one_sentence("is no folder")
    assert broken.read_bytes().startswith(b"{")


def test_two_cards_of_one_name_are_refused_before_any_is_made(call, wide, tmp_path):
    (tmp_path / "other").mkdir()
    twin = tmp_path / "other" / wide.name
    twin.write_bytes(wide.read_bytes())
    said = call("card", wide, twin, "-o", tmp_path / "cards/")
    assert said.status == 64
    said.one_sentence("wide-start.pdf", "two of the drills")
    assert not (tmp_path / "cards").exists()


def test_cards_that_are_there_are_kept_all_of_them(call, wide, tmp_path):
    (tmp_path / "cards").mkdir()
    (tmp_path / "cards" / "wide-start.pdf").write_bytes(b"mine")
    said = call("card", sample("chalk-line.drill.json"), wide, "-o", tmp_path / "cards")
    assert said.status == 64
    said.one_sentence("wide-start.pdf", "--force")
    assert [file.name for file in (tmp_path / "cards").iterdir()] == ["wide-start.pdf"]
    assert (tmp_path / "cards" / "wide-start.pdf").read_bytes() == b"mine"


def test_a_broken_brand_is_told_and_the_card_is_made_without_it(call, wide, tmp_path):
    (tmp_path / "brand.json").write_text("{}")
    said = call("card", wide, "-o", tmp_path / "card.pdf")
    assert said.status == 0
    said.one_sentence("brand.json", "name: is missing", "made without it")
    assert "Alder Quay" not in text((tmp_path / "card.pdf").read_bytes())


def test_a_letter_that_the_font_lacks_is_told(call, wide, tmp_path):
    wide.write_text(wide.read_text().replace("Wide Ball, Recover", "宽 Ball, Recover"))
    said = call("card", wide, "-o", tmp_path / "card.pdf")
    assert said.status == 0
    said.one_sentence(wide, "宽")


def test_a_card_loads_no_qt(wide, tmp_path, modules_after):
    status, loaded = modules_after("card", wide, "-o", tmp_path / "card.pdf")
    assert status == 0
    assert not loaded & {"PySide6", "shiboken6", "scipy"}


def pages_of(path):
    return [page.extract_text() for page in pypdf.PdfReader(path).pages]


def test_each_player_gets_a_card_in_one_file(call, wide, tmp_path):
    assert call("card", wide, "-o", tmp_path / "all.pdf", "--each-player").status == 0
    starts = [text for text in pages_of(tmp_path / "all.pdf") if "You start" in text or "You are" in text]
    assert len(starts) == 3
    assert [letter in text for letter, text in zip("ABC", starts, strict=True)] == [True] * 3


def test_small_cards_come_several_on_a_sheet_with_the_coachs_drill(call, wide, tmp_path):
    out = tmp_path / "sheet.pdf"
    assert call("card", wide, "-o", out, "--for", "coach", "--paper", "a6", "--on", "a4", "--copies", "2").status == 0
    reader = pypdf.PdfReader(out)
    # ISO 216: A4 is 210 × 297 mm.
    assert float(reader.pages[0].mediabox.width) == pytest.approx(210 / 25.4 * 72, abs=0.1)
    (carried,) = reader.attachments.values()
    assert carried[0] == Path(wide).read_bytes()


def test_a_poster_and_a_code_are_printed(call, wide, tmp_path):
    assert call("card", wide, "-o", tmp_path / "p.pdf", "--paper", "poster-a3").status == 0
    assert "Rally won" in pages_of(tmp_path / "p.pdf")[0]
    address = "https://alderquay.example/d/1"
    assert call("card", wide, "-o", tmp_path / "c.pdf", "--address", address).status == 0
    assert address in "".join(pages_of(tmp_path / "c.pdf")).replace("\n", "")


@pytest.mark.parametrize(
    ("asked", "words"),
    [
        (("--each-player", "--for", "coach"), "--each-player goes with --for player only"),
        (("--copies", "2"), "--copies goes with --on only"),
        (("--paper", "a4", "--on", "a4"), "print them one by one"),
        (("--paper", "poster-a4", "--on", "a4"), "goes with a card, not with a poster"),
        (("--paper", "poster-a4", "--each-player"), "--each-player goes with a card"),
    ],
)
def test_what_contradicts_itself_is_wrong_usage(call, wide, tmp_path, asked, words):
    said = call("card", wide, "-o", tmp_path / "a.pdf", *asked)
    assert said.status == 64
    said.one_sentence(words)
    assert not (tmp_path / "a.pdf").exists()


def test_an_address_that_is_none_is_told_of_and_nothing_is_written(call, wide, tmp_path):
    said = call("card", wide, "-o", tmp_path / "a.pdf", "--address", "no address")
    assert said.status == 2
    said.one_sentence("wide-start", "is no address for a code")
    assert not (tmp_path / "a.pdf").exists()


def test_names_of_today_stand_on_the_card_and_nowhere_else(call, wide, tmp_path):
    # The issue's own rule: no names of minors in cards by default, in metadata or in attachments.
    drill = json.loads(wide.read_bytes())
    today = tmp_path / "mine.today.json"
    people = {"A": {"name": "Mira Quill", "hand": "left"}, "B": {"name": "Tom Reed"}}
    today.write_text(json.dumps({"drill": drill["id"], "people": people}), encoding="utf-8")
    output = tmp_path / "named.pdf"
    words = ("card", str(wide), "--today", str(today), "-o", str(output), "--for", "coach")
    said = call(*words)
    assert said.status == 0
    assert "A plays left-handed today" in said.err
    assert "variant left-handed --letter A" in said.err
    data = output.read_bytes()
    assert "Today A is Mira Quill (left-handed), B is Tom Reed." in text(data)
    assert attachments(data) == {f"{drill['code']}.drill.json": (wide.read_bytes(), "/Source")}
    with pikepdf.open(io.BytesIO(data)) as document:
        beside = [str(value) for value in document.docinfo.values()] + [one.title for one in _outline(document)]
    assert not any(name in one for name in ("Mira", "Quill", "Tom Reed") for one in beside)


def _outline(document):
    with document.open_outline() as outline:
        return [one for top in outline.root for one in (top, *top.children)]


@pytest.mark.parametrize("change", [{"drill": "d-another"}, {"people": {"Z": {"name": "Mira"}}}])
def test_names_for_another_drill_or_letter_are_refused(call, wide, tmp_path, change):
    today = tmp_path / "mine.today.json"
    today.write_text(json.dumps({"drill": json.loads(wide.read_bytes())["id"], "people": {}} | change), "utf-8")
    said = call("card", wide, "--today", today, "-o", tmp_path / "x.pdf")
    assert said.status == 2
    assert "mine.today.json" in said.err
    assert not (tmp_path / "x.pdf").exists()
