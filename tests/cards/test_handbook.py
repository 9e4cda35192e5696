"""A handbook as a whole, read back from its PDF by readers that are not ours."""

from __future__ import annotations

import functools
import gc
import io
import json
import weakref
from collections.abc import Iterator
from dataclasses import replace

import pikepdf
import pypdf
import pypdfium2
import pytest
from cards.book_of_samples import MISSING, alone, book, drill, entry, leaf_of, leaves, made

from designer.cards import handbook
from designer.cards.blocks import Columns, Row, stacked
from designer.cards.book.leaf import Leaf
from designer.cards.book.reading import LINES, PEOPLE, SHEET
from designer.cards.book.sheets import Made, Sheets
from designer.cards.book.survey import sheet_paper
from designer.cards.handbook import Book, make_handbook, section_names
from designer.drawing.legend import WORDS
from designer.drawing.themes import theme
from designer.drill.brand import Brand
from designer.drill.drill import Changes, Drill, Progression
from designer.drill.handbook import BookSection, Handbook, Remembered, Term
from designer.wording.vocabulary import Vocabulary


@functools.cache
def document() -> pypdf.PdfReader:
    return pypdf.PdfReader(io.BytesIO(made().pdf))


@functools.cache
def texts() -> dict[str, str]:
    """{label of a page: its text on one line}."""
    whole = document()
    pages = (" ".join(page.extract_text().split()) for page in whole.pages)
    return dict(zip(whole.page_labels, pages, strict=True))


def text_of(pdf: bytes) -> str:
    return " ".join(" ".join(page.extract_text() for page in pypdf.PdfReader(io.BytesIO(pdf)).pages).split())


def test_every_drill_stands_in_the_book_with_all_its_progressions_and_a_way_easier_and_harder() -> None:
    for leaf in leaves(book()):
        if leaf.entry.number == MISSING:
            continue
        own = " ".join(text for label, text in texts().items() if label[:-1] == leaf.entry.number)
        whole = drill(leaf.entry.file.removesuffix(".drill.json"))
        assert leaf.title in own
        assert all(progression.name in own for progression in whole.progressions if progression.name)
        assert "Easier" in own
        assert "Harder" in own


def test_a_drill_begins_on_a_right_hand_page_so_that_its_leaf_can_be_exchanged() -> None:
    labels = document().page_labels
    first = [number for number, label in enumerate(labels) if label.endswith("a")]
    assert len(first) == 3 + 2, "three drills and two sections"
    assert all(number % 2 == 0 for number in first)
    assert len(set(labels)) == len(labels), "no two pages are called the same"


def test_page_follows_page_and_none_is_left_to_lines_unless_the_owner_asks_for_leaves() -> None:
    drills = (entry("1.1", "wide-start", prints="first sheet"), entry("1.2", "a-chooses", prints="first sheet"))
    whole = Handbook(title="X", planners=0, sections=(BookSection(title="S", drills=drills),))
    found = _read(make_handbook(whole, leaves(whole)).pdf)
    labels = found.page_labels
    assert labels[labels.index("1.0a") :][:4] == ["1.0a", "1.1a", "1.2a", "G1"]
    assert not [page for page in found.pages if "Notes" in page.extract_text()]


def test_the_inner_margin_is_the_wider_one_on_both_sides_of_a_leaf() -> None:
    def left(label: str) -> float:
        page = pypdfium2.PdfDocument(made().pdf)[document().page_labels.index(label)].get_textpage()
        return min(page.get_rect(number)[0] for number in range(page.count_rects()))

    assert left("1.1a") - left("1.1b") > 20


def test_links_and_outline_lead_to_pages_of_the_book() -> None:
    whole = document()
    pages = {page.indirect_reference.idnum for page in whole.pages}
    wanted = [annotation.get_object()["/Dest"] for page in whole.pages for annotation in page.get("/Annots", ())]
    assert len(wanted) > 30, "contents, sections, cross references and several indexes"
    for target in wanted:
        assert target[0].idnum in pages
    titles = [one.title for one in _flat(whole.outline)]
    parts = {"Contents", "How to read a card", "Before a session", "Glossary", "Indexes", "Balance", "Session plans"}
    assert parts <= set(titles)
    assert any(title.startswith("2.1") for title in titles)
    assert all(whole.get_destination_page_number(one) is not None for one in _flat(whole.outline))


def _flat(outline: list) -> list:
    return [found for one in outline for found in (_flat(one) if isinstance(one, list) else [one])]


def test_a_line_of_the_contents_leads_to_the_page_it_names() -> None:
    whole = document()
    labels = {page.indirect_reference.idnum: label for page, label in zip(whole.pages, whole.page_labels, strict=True)}

    def led(label: str) -> list[str]:
        page = whole.pages[whole.page_labels.index(label)]
        return [labels[note.get_object()["/Dest"][0].idnum] for note in page["/Annots"]]

    found = led("iii")
    assert found[:3] == ["ii", "iv", "v"]
    assert found[3:8] == ["1.0a", "1.1a", "1.2a", "2.0a", "2.1a"]
    assert found[8:] == ["N1", "H1", "G1", "X1", "B1", "P1"]
    assert "1.2a" in led("2.1a"), "what its entry says to look at"


def test_the_pdf_is_whole_and_every_font_in_it_is_embedded() -> None:
    with pikepdf.open(io.BytesIO(made().pdf)) as pdf:
        assert pdf.check_pdf_syntax() == []
        fonts = [font for page in pdf.pages for font in page.resources.Font.values()]
        assert all("/FontFile2" in font.FontDescriptor for font in fonts)
        assert pdf.Root.Lang == "en"
        assert pdf.docinfo.Title == "Drills of Alder Quay"


def test_the_same_book_gives_the_same_bytes_and_leaves_drills_out_that_are_not_to_be_attached() -> None:
    whole = alone(attach=False)
    once, again = (make_handbook(whole, leaves(whole)).pdf for _ in range(2))
    assert once == again
    with pikepdf.open(io.BytesIO(once)) as pdf:
        assert not pdf.attachments


def test_the_pages_are_not_held_twice_while_they_are_bound(monkeypatch: pytest.MonkeyPatch) -> None:
    # Of 500 drills they are 20 MB: the canvas has to be gone when the drills are attached to what it has written.
    held: list[weakref.ref[object]] = []
    make, bind = handbook._canvas, handbook.completed

    def canvas(*arguments: object) -> object:
        made_ = make(*arguments)
        held.append(weakref.ref(made_))
        return made_

    def completed(*arguments: object, **named: object) -> bytes:
        gc.collect()
        assert [one() for one in held] == [None]
        return bind(*arguments, **named)

    monkeypatch.setattr(handbook, "_canvas", canvas)
    monkeypatch.setattr(handbook, "completed", completed)
    assert make_handbook(alone(), leaves(alone())).pages


def test_each_drill_is_attached_as_it_is_in_its_file() -> None:
    with pikepdf.open(io.BytesIO(made().pdf)) as pdf:
        held = {name: bytes(file.get_file().read_bytes()) for name, file in pdf.attachments.items()}
        assert len(pdf.Root.AF) == len(held)
    assert set(held.values()) == {leaf.source for leaf in leaves(book()) if leaf.source}
    assert "1.1 wide-start.drill.json" in held


def test_what_a_file_has_beside_the_drill_is_told_and_names_of_players_are_not_attached() -> None:
    # The published form of a record of today: resources/schema/today.schema.json names its "people".
    raw = json.loads(drill().model_dump_json()) | {
        "people": {"A": {"name": "Mia Child"}},
        "club-note": "from elsewhere",
    }
    own = Drill.model_validate_json(json.dumps(raw))
    found = make_handbook(alone(), [leaf_of(own, number="1.1", handbook=alone(), prints="first sheet")])
    with pikepdf.open(io.BytesIO(found.pdf)) as pdf:
        (held,) = (json.loads(bytes(file.get_file().read_bytes())) for file in pdf.attachments.values())
    assert held == {key: value for key, value in raw.items() if key != "people"}
    assert [notice for notice in found.notices if "1.1" in notice and "“people” are left out" in notice]
    assert [notice for notice in found.notices if "“club-note”" in notice and "see that it names no child" in notice]
    unattached = leaf_of(own, number="1.1", handbook=alone(attach=False), prints="first sheet")
    assert make_handbook(alone(attach=False), [unattached]).notices == ()


def test_how_a_card_is_read_says_what_each_sign_means() -> None:
    for _, words in (*PEOPLE, *WORDS.items(), *LINES, *SHEET):
        assert words in texts()["iv"]


def test_an_entry_of_an_index_begins_at_the_edge_and_goes_on_under_it() -> None:
    page = pypdfium2.PdfDocument(made().pdf)[document().page_labels.index("X1")].get_textpage()
    boxes = [page.get_rect(number) for number in range(page.count_rects())]
    begins = {page.get_text_bounded(*box).strip()[:12]: box[0] for box in boxes}
    edge = begins["Objective"]
    assert begins["buy time wit"] == pytest.approx(edge, abs=1.5)
    assert begins["play the poi"] > edge + 8


def test_the_state_of_a_drill_and_whether_it_has_changed_since_stand_on_its_sheet() -> None:
    assert "Approved by Ines Vale, 3 November 2026; the drill has changed since" in texts()["1.1a"]
    assert "Draft" in texts()["2.1a"]


def test_what_is_missing_broken_or_changed_is_told_in_the_book() -> None:
    assert made().left_out == {MISSING: "is not there"}
    assert f"{MISSING} is not there" in texts()["N1"]
    assert made().broken == {"level": ["1.1", "1.2"]}
    assert "Not yet: 1.1, 1.2." in texts()["H1"]
    assert any("level" in words and "1.2" in words for words in made().broken_in_words())
    assert "Gone 9.9 Gone With the Ball." in texts()["ii"]
    assert "New 1.2" in texts()["ii"]
    assert "9.9" not in made().remembered


def test_a_drill_that_fails_while_it_is_set_is_nowhere_in_the_book_but_in_the_list_of_what_is_left_out(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    drills = tuple(entry(number, number, prints="first sheet") for number in ("1.1", "1.2", "1.3"))
    whole = Handbook(title="X", house_rules=("level",), sections=(BookSection(title="S", drills=drills),))
    whole_card = Sheets.cards

    def flat() -> Drill:
        raise ValueError("the ball is flat")

    def cards(sheets: Sheets, leaf: Leaf) -> Iterator[Made]:
        for card in whole_card(sheets, leaf):
            yield replace(card, paper=None) if leaf.entry.number == "1.2" else card

    monkeypatch.setattr(Sheets, "cards", cards)
    first, second, good = (
        leaf_of(
            drill().changed(id=f"d-{name.lower()}", title=name, objective="", kit=(name,)),
            number=number,
            handbook=whole,
            prints="first sheet",
        )
        for number, name in (("1.1", "Unread"), ("1.2", "Undrawn"), ("1.3", "Whole"))
    )
    found = make_handbook(
        whole, [replace(first, read=flat), second, good], before={"1.2": Remembered(digest="x", title="Old")}
    )
    assert list(found.left_out) == ["1.1", "1.2"]
    assert found.left_out["1.1"] == "a.drill.json: cannot be set: the ball is flat."
    assert list(found.remembered) == ["1.3"]
    assert found.broken == {"level": ["1.3"]}
    pages = dict(zip((one := _read(found.pdf)).page_labels, (page.extract_text() for page in one.pages), strict=True))
    assert "Drills that could not be printed" in pages["iii"]
    assert "the ball is flat" in pages["N1"]
    for label, text in pages.items():
        assert label == "N1" or not any(words in text for words in ("Unread", "Undrawn", "1.1", "is flat")), label
    assert [label for label, text in pages.items() if "1.2" in text] == ["ii", "N1"], (
        "left out of this edition, not gone"
    )
    with pikepdf.open(io.BytesIO(found.pdf)) as pdf:
        assert pdf.check_pdf_syntax() == []
        assert list(pdf.attachments) == ["1.3 wide-start.drill.json"]


def test_a_sign_the_font_lacks_is_told_with_its_drill_and_a_script_from_right_to_left_is_declined() -> None:
    numbers = ("1.1", "1.2")
    whole = Handbook(title="X", sections=(BookSection(title="S", drills=tuple(entry(one, "a") for one in numbers)),))
    snow = leaf_of(drill().changed(cues=("Cold \u2603.",)), number="1.1", prints="first sheet")
    hebrew = leaf_of(drill().changed(cues=("\u05e9\u05dc\u05d5\u05dd",)), number="1.2", prints="first sheet")
    before = {
        "8.1": Remembered(digest="x", title="\u05e9\u05dc\u05d5\u05dd"),
        "8.2": Remembered(digest="x", title="Umbrella \u2602"),
    }
    found = make_handbook(whole.changed(owner="Club \u2603", edition=2), [snow, hebrew], before=before)
    assert any(notice.startswith("1.1 Wide Ball") and "U+2603" in notice for notice in found.notices)
    assert [notice for notice in found.notices if "in the owner of the handbook;" in notice]
    assert "in cue 1 is of a script that is written from right to left" in found.left_out["1.2"]
    assert [notice for notice in found.notices if "U+05E9) in the reason why 1.2 is left out;" in notice]
    assert [notice for notice in found.notices if "title of 8.1 in the record of the edition before is of a" in notice]
    assert [notice for notice in found.notices if "U+2602) in the title of 8.2 in the record of the" in notice]
    assert not [notice for notice in found.notices if "U+05DC" in notice]
    assert "Gone 8.1 (a title that is written from right to left, which cannot be set)." in text_of(found.pdf)
    assert "????" not in text_of(found.pdf)


def test_a_book_in_another_language_says_that_the_programs_words_are_english_and_is_no_lie_to_a_screen_reader() -> None:
    greek = make_handbook(alone(language="el", title="Ωμέγα"), leaves(alone()))
    assert "the words of the program, are in English" in text_of(greek.pdf)
    assert any("language el" in notice for notice in greek.notices)
    root = pypdf.PdfReader(io.BytesIO(greek.pdf)).trailer["/Root"]
    assert root["/Lang"] == "en"
    assert not any("language" in notice for notice in made().notices)


def test_progress_names_each_drill_and_whoever_stops_it_gets_no_book() -> None:
    whole = book()
    heard = []

    class Stopped(Exception):
        pass

    def hear(done: int, count: int, words: str) -> None:
        heard.append((done, count, words))
        if done == 1:
            raise Stopped

    with pytest.raises(Stopped):
        make_handbook(whole, leaves(whole), progress=hear)
    assert [done for done, _, _ in heard] == [0, 1]
    assert heard[1][2] == f"1.2 {leaves(whole)[1].title}"


def test_the_academys_words_stand_everywhere_at_once() -> None:
    own = drill("hoop-red").changed(title="Alley to alley", cues=("Into the alley, face open.",))
    one = entry("1.1", "a", tags=("situation:both-back", "level:club"))
    whole = Handbook(
        title="The alley book",
        owner="Alley Club",
        vocabulary={
            "deuce": "right",
            "feed": "drop-in",
            "alley": "tramline",
            "both back": "rally",
            "stop": "freeze",
            "service line": "short line",
            "net": "mesh",
            "coach": "trainer",
            "open": "free",
            "club": "bronze",
        },
        house_rules=("stop word",),
        glossary=(Term(word="Banana", means="A ball with much bend."),),
        sections=(BookSection(title="From alley to alley", drills=(one,)),),
    )
    leaf = leaf_of(own, number="1.1", handbook=whole, tags=one.tags, prints=one.prints)
    text = text_of(make_handbook(whole, [leaf]).pdf)
    for words in ("Tramline to tramline", "From tramline to tramline", "rally: 1.1", "“freeze”", "Banana"):
        assert words in text
    assert "Play is stopped by the call “freeze”" in text
    assert "Whoever sees a ball or a person on the court calls “freeze”" in text
    assert "short line" in text
    assert text.count("right") >= 2, "at both ends of the court"
    assert "MESH" in text
    assert "NET" not in text
    assert "bronze: 1.1" in text
    assert "the club minimum" in text, "a level's word is a plain word among others"
    assert text.count("The tramline book") > 5
    assert "Into the tramline, face open." in text
    assert "From the flag “free” on" in text
    assert "Alley Club" in text
    assert "deuce" not in text.replace("Called “deuce” elsewhere", "")
    left = (
        text.replace("Alley Club", "")
        .replace("Called “alley” elsewhere", "")
        .replace("Called “service line” elsewhere", "")
    )
    assert "alley" not in left.lower()
    assert "“stop”" not in left


def test_the_licence_stands_on_the_cover_and_at_the_foot_of_every_page_the_brands_where_the_book_has_none() -> None:
    brand = Brand(name="Alder Quay", licence="Use and change as you like.")
    whole = alone()
    pages = [page.extract_text() for page in _read(make_handbook(whole, leaves(whole), brand=brand).pdf).pages]
    assert all("Use and change as you like." in text for text in pages)
    own = whole.changed(licence="For our own courts.")
    pages = [page.extract_text() for page in _read(make_handbook(own, leaves(own), brand=brand).pdf).pages]
    assert all("For our own courts." in text for text in pages)
    assert not any("Use and change" in text for text in pages)


def test_the_text_of_a_sheet_is_read_as_it_is_to_be_played() -> None:
    # WCAG 2.1, success criterion 1.3.2: the order in which it is read can be found by a program.
    text = texts()["1.1a"]
    order = ("Wide Ball", "Lay out", "Start", "What happens", "Rules", "Points", "Approved by")
    places = [text.index(words) for words in order]
    assert places == sorted(places)
    contents = texts()["iii"]
    assert contents.index("From the back") < contents.index("1.1") < contents.index("1.2") < contents.index("Glossary")


def _read(pdf: bytes) -> pypdf.PdfReader:
    return pypdf.PdfReader(io.BytesIO(pdf))


def test_a_house_rule_names_the_drills_that_do_not_keep_it_and_says_how_many_more_there_are() -> None:
    whole = Book(b"", 1, {}, {"cues": ["1.1", "1.2", "1.3"]}, {}, ())
    assert whole.broken_in_words() == ("House rule “cues”: a drill has a cue to say; not yet 1.1, 1.2, 1.3.",)
    assert whole.broken_in_words(2) == ("House rule “cues”: a drill has a cue to say; not yet 1.1, 1.2 and 1 more.",)


@pytest.mark.parametrize("count", [2, 10])
def test_each_progression_has_its_court_if_need_be_on_a_side_more(count: int) -> None:
    known = drill("return-past").progressions[0].changes
    ways = tuple(
        Progression(id=f"p-{n}", name=f"Way {n}", changes=known if n == 0 else Changes()) for n in range(count)
    )
    own = Drill(id="d-own", title="Own", jobs=drill("return-past").jobs, progressions=ways)
    whole = Handbook(title="X", sections=())
    (made_,) = Sheets(sheet_paper(whole), theme("paper"), None, None, Vocabulary()).cards(leaf_of(own))
    rows = [block for placed in made_.sides[-1] for block in placed.blocks if isinstance(block, Columns)]
    names = [part.text for row in rows for column in row.columns for part in column if isinstance(part, Row)]
    assert names == [f"{n + 1} Way {n}" for n in range(count)]
    assert len({len(row.columns) for row in rows}) == 1, "none stands alone in its row"
    for placed in made_.sides[-1]:
        assert placed.top - stacked(placed.blocks, placed.width) > made_.paper.bottom


def test_a_section_has_the_number_of_most_of_its_drills_and_no_two_have_one() -> None:
    def section(*numbers: str) -> BookSection:
        return BookSection(title="S", drills=tuple(entry(number, "a") for number in numbers))

    assert section_names((section("1.1", "1.2"), section("1.3", "3.1", "3.2"), section())) == ["1", "3", "2"]
    assert section_names((section("4.1"), section("4.2"))) == ["4", "2"]


def test_what_follows_stop_is_what_the_house_says() -> None:
    own = alone(house={"stopped": {"then": "no score"}})
    text = " ".join(text_of(make_handbook(own, leaves(own)).pdf).split())
    assert "everybody stops. Then nobody scores." in text
    assert "everybody stops. Then the rally is replayed." not in text


def test_a_number_to_see_that_no_drill_has_is_told_and_ones_own_is_not_printed() -> None:
    made_of = make_handbook(alone(), [leaf_of(drill(), number="1.1", prints="first sheet", see=("9.9", "1.1"))])
    assert any("9.9, expected the number of a drill in this handbook" in notice for notice in made_of.notices)
    assert "See also" not in text_of(made_of.pdf)
