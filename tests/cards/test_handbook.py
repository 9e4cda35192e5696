"""A handbook as a whole, read back from its PDF by readers that are not ours."""

from __future__ import annotations

import functools
import io

import pikepdf
import pypdf
import pytest
from cards.book_of_samples import LOGO, book, drill, leaf_of, leaves, made, short

from designer.cards.book.leaf import Leaf
from designer.cards.handbook import make_handbook
from designer.drill.handbook import BookSection, Entry, Handbook, Remembered, Term


@functools.cache
def document(missing: str = "") -> pypdf.PdfReader:
    return pypdf.PdfReader(io.BytesIO(made(missing).pdf))


@functools.cache
def texts(missing: str = "") -> dict[str, str]:
    """{label of a page: its text}."""
    whole = document(missing)
    return {label: page.extract_text() for label, page in zip(whole.page_labels, whole.pages, strict=True)}


def test_every_drill_stands_in_the_book_with_all_its_progressions_and_a_way_easier_and_harder() -> None:
    for leaf in leaves(book()):
        own = " ".join(" ".join(text for label, text in texts().items() if label[:-1] == leaf.entry.number).split())
        whole = drill(leaf.entry.file.removesuffix(".drill.json"))
        assert leaf.title in own
        assert all(progression.name in own for progression in whole.progressions if progression.name)
        assert "Easier" in own
        assert "Harder" in own


def test_a_drill_begins_on_a_right_hand_page_so_that_its_leaf_can_be_exchanged() -> None:
    labels = document().page_labels
    first = [number for number, label in enumerate(labels) if label.endswith("a") and not label.startswith("B")]
    assert len(first) == len(leaves(book())) + len(book().sections)
    assert all(number % 2 == 0 for number in first)
    assert len(set(labels)) == len(labels), "no two pages are called the same"


def test_links_and_outline_lead_to_pages_of_the_book() -> None:
    whole = document()
    pages = {page.indirect_reference.idnum for page in whole.pages}
    wanted = [annotation.get_object()["/Dest"] for page in whole.pages for annotation in page.get("/Annots", ())]
    assert len(wanted) > 5 * len(leaves(book())), "contents, sections, cross references and several indexes"
    for target in wanted:
        assert target[0].idnum in pages
    titles = [entry.title for entry in _flat(whole.outline)]
    parts = {"Contents", "How to read a card", "Before a session", "Glossary", "Indexes", "Balance", "Session plans"}
    assert parts <= set(titles)
    assert any(title.startswith("3.2") for title in titles)
    assert all(whole.get_destination_page_number(entry) is not None for entry in _flat(whole.outline))


def _flat(outline: list) -> list:
    return [found for entry in outline for found in (_flat(entry) if isinstance(entry, list) else [entry])]


def test_a_line_of_the_contents_leads_to_the_page_of_the_drill_it_names() -> None:
    whole = document()
    contents = next(page for page, label in zip(whole.pages, whole.page_labels, strict=True) if label == "iii")
    labels = {page.indirect_reference.idnum: label for page, label in zip(whole.pages, whole.page_labels, strict=True)}
    led = [labels[note.get_object()["/Dest"][0].idnum] for note in contents["/Annots"]]
    drills = [f"{leaf.entry.number}a" for leaf in leaves(book())]
    assert [label for label in led if label in drills] == drills
    assert led[:3] == ["ii", "iv", "v"]
    assert led[-4:] == ["G1", "X1", "B1", "P1"]


def test_every_font_is_embedded_and_the_same_book_gives_the_same_bytes() -> None:
    whole = short()
    once, again = (make_handbook(whole, leaves(whole), logo=LOGO).pdf for _ in range(2))
    assert once == again
    with pikepdf.open(io.BytesIO(made().pdf)) as pdf:
        assert pdf.check_pdf_syntax() == []
        fonts = [font for page in pdf.pages for font in page.resources.Font.values()]
        assert all("/FontFile2" in font.FontDescriptor for font in fonts)


def test_each_drill_is_attached_as_it_is_in_its_file_unless_the_owner_keeps_them() -> None:
    with pikepdf.open(io.BytesIO(made().pdf)) as pdf:
        held = {name: bytes(file.get_file().read_bytes()) for name, file in pdf.attachments.items()}
        assert len(pdf.Root.AF) == len(held)
    assert {leaf.source for leaf in leaves(book())} == set(held.values())
    assert "1.1 wide-start.drill.json" in held
    kept = short(attach=False)
    with pikepdf.open(io.BytesIO(make_handbook(kept, leaves(kept)).pdf)) as pdf:
        assert not pdf.attachments


def test_the_state_of_a_drill_and_whether_it_has_changed_since_stand_on_its_sheet() -> None:
    own = drill()
    stale = leaf_of(own, number="1.1", state="approved", by="Ines Vale", seen="0" * 64)
    whole = Handbook(title="X", sections=(BookSection(title="S", drills=(stale.entry,)),))
    text = _text(make_handbook(whole, [stale]).pdf)
    assert "Approved by Ines Vale; the drill has changed since" in text


def test_one_drill_that_is_missing_does_not_lose_the_book() -> None:
    found = made(missing="1.2")
    assert found.left_out == {"1.2": "is not there"}
    assert "is not there" in texts("1.2")["N1"]
    assert "Second-serve Return Past the Line" in texts("1.2")["3.2a"]


def test_one_drill_that_cannot_be_set_is_listed_and_the_rest_is_made() -> None:
    whole = short()

    def broken() -> None:
        raise ValueError("the ball is flat")

    first, *rest = leaves(whole)
    bad = Leaf(first.entry, first.summary, digest=first.digest, source=first.source, read=broken)
    found = make_handbook(whole, [bad, *rest])
    assert found.left_out == {"1.1": "cannot be set: the ball is flat"}
    assert set(found.remembered) == {leaf.entry.number for leaf in rest}
    text = _text(found.pdf)
    assert "the ball is flat" in text
    assert rest[-1].title in text


def test_progress_names_each_drill_and_whoever_stops_it_gets_no_book() -> None:
    whole = short()
    heard = []

    class Stopped(Exception):
        pass

    def hear(done: int, count: int, words: str) -> None:
        heard.append((done, count, words))
        if done == 2:
            raise Stopped

    with pytest.raises(Stopped):
        make_handbook(whole, leaves(whole), progress=hear)
    assert [done for done, _, _ in heard] == [0, 1, 2]
    assert heard[1][2].endswith(leaves(whole)[1].title)


def test_the_academys_words_stand_everywhere_at_once() -> None:
    own = drill("hoop-red").changed(title="Alley to alley", cues=("Into the alley.",))
    entry = Entry(number="1.1", file="a.drill.json", tags=("situation:both-back",))
    whole = Handbook(
        title="X",
        vocabulary={"alley": "tramline", "both back": "rally", "stop": "freeze", "service line": "short line"},
        glossary=(Term(word="Banana", means="A ball with much bend."),),
        sections=(BookSection(title="From alley to alley", drills=(entry,)),),
    )
    text = _text(make_handbook(whole, [leaf_of(own, number="1.1", handbook=whole, tags=entry.tags)]).pdf)
    assert "Tramline to tramline" in text
    assert "Into the tramline." in text
    assert "From tramline to tramline" in text
    assert "rally: 1.1" in text
    assert "“freeze”" in text
    assert "short line" in text
    assert "Banana" in text
    left = text.replace("Called “alley” elsewhere", "").replace("Called “service line” elsewhere", "")
    assert "alley" not in left.lower()
    assert "“stop”" not in left


def test_house_rules_that_are_not_kept_are_told_with_the_drills() -> None:
    whole = short(house_rules=("replay rule", "level"))
    found = make_handbook(whole, leaves(whole))
    numbers = [leaf.entry.number for leaf in leaves(whole)]
    assert found.broken == {"level": numbers} or set(found.broken) == {"level"}
    assert "House rules" in _text(found.pdf)
    assert all("level" in words for words in found.broken_in_words())


def test_what_changed_since_the_edition_before_stands_on_the_back_of_the_cover() -> None:
    whole = short()
    before = {"9.9": Remembered(digest="x", title="Gone With the Ball", id="d-gone")}
    text = _text(make_handbook(whole, leaves(whole), before=before).pdf)
    assert "Gone: 9.9 Gone With the Ball" in text
    assert f"New: 1.1 {leaves(whole)[0].title}" in text


def _text(pdf: bytes) -> str:
    pages = pypdf.PdfReader(io.BytesIO(pdf)).pages
    return " ".join(" ".join(page.extract_text() for page in pages).split())
