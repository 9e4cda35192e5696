from __future__ import annotations

import functools
import io

import pikepdf
import pypdf

from designer.bundle import sample
from designer.cards.handbook import Book, make_handbook
from designer.cards.handbook_pages import Leaf, changes, indexes
from designer.drill.drill import Drill
from designer.drill.handbook import Entry, Handbook


def book() -> Handbook:
    return Handbook.model_validate_json(sample("alder-quay.handbook.json").read_bytes())


def leaves(missing: str = "") -> list[Leaf]:
    return [
        Leaf(entry, None, "is not there")
        if entry.number == missing
        else Leaf(entry, Drill.model_validate_json(sample(entry.file).read_bytes()), digest=entry.file)
        for entry in book().entries()
    ]


@functools.cache
def made(missing: str = "") -> Book:
    return make_handbook(book(), leaves(missing), logo=sample("alder-quay.svg").read_text(encoding="utf-8"))


def test_every_drill_stands_in_the_book_with_all_its_progressions() -> None:
    document = pypdf.PdfReader(io.BytesIO(made().pdf))
    texts = [page.extract_text() for page in document.pages]
    for leaf in leaves():
        assert leaf.drill is not None
        own = " ".join(
            text
            for text, label in zip(texts, document.page_labels, strict=True)
            if label[:-1] == leaf.entry.number and label[-1].isalpha()
        )
        assert leaf.drill.title in own
        assert all(progression.name in own for progression in leaf.drill.progressions if progression.name)


def test_a_drill_begins_on_a_right_hand_page_so_that_its_sheets_can_be_replaced() -> None:
    document = pypdf.PdfReader(io.BytesIO(made().pdf))
    first = [number for number, label in enumerate(document.page_labels) if label.endswith("a")]
    assert len(first) == len(leaves())
    assert all(number % 2 == 0 for number in first)


def test_links_and_outline_lead_to_pages_of_the_book() -> None:
    document = pypdf.PdfReader(io.BytesIO(made().pdf))
    pages = {page.indirect_reference.idnum for page in document.pages}
    wanted = [annotation.get_object()["/Dest"] for page in document.pages for annotation in page.get("/Annots", ())]
    assert len(wanted) > 3 * len(leaves()), "contents, and several indexes"
    for target in wanted:
        assert target[0].idnum in pages
    titles = [entry.title for entry in _flat(document.outline)]
    assert {"Contents", "How to read a card", "Before a session", "Indexes", "Balance", "Planner"} <= set(titles)
    assert all(document.get_destination_page_number(entry) is not None for entry in _flat(document.outline))


def _flat(outline: list) -> list:
    return [found for entry in outline for found in (_flat(entry) if isinstance(entry, list) else [entry])]


def test_every_font_is_embedded_and_the_same_book_gives_the_same_bytes() -> None:
    pdf = made().pdf
    assert pdf == made.__wrapped__().pdf
    with pikepdf.open(io.BytesIO(pdf)) as document:
        assert document.check_pdf_syntax() == [] if hasattr(document, "check_pdf_syntax") else document.check() == []
        fonts = [font for page in document.pages for font in page.resources.Font.values()]
        assert all("/FontFile2" in font.FontDescriptor for font in fonts)


def test_one_missing_drill_does_not_lose_the_book() -> None:
    found = made(missing="1.2")
    assert found.left_out == {"1.2": "is not there"}
    texts = "\n".join(page.extract_text() for page in pypdf.PdfReader(io.BytesIO(found.pdf)).pages)
    assert "Drills that could not be printed" in texts
    assert "Second-serve Return Past the Line" in texts


def test_what_changed_since_the_edition_before_is_said() -> None:
    one, two, three = leaves()[:3]
    before = {one.entry.number: one.digest, two.entry.number: "another", "9.9": "gone"}
    said = list(changes([one, two, three], before, 2))
    assert said == [f"New: 1.3 {three.title}", f"Changed: 1.2 {two.title}", "Gone: 9.9"]


def test_the_indexes_find_a_drill_by_players_and_by_whether_a_coach_is_needed() -> None:
    drill = Drill.model_validate_json(sample("wide-start.drill.json").read_bytes()).changed(players=(2, 4))
    found = dict(indexes([Leaf(Entry(number="3.12", file="a.drill.json"), drill)]))
    assert set(found["Players"]) == {"2", "3", "4"}
    assert found["Coach needed"] == {"no": ["3.12"]}
    assert found["Situation"]["both back"] == ["3.12"]
