"""A handbook as one PDF: front matter, every drill in its section, indexes and planner pages."""

from __future__ import annotations

import tempfile
from collections import Counter
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING, BinaryIO, Final

from designer.cards.blocks import Block
from designer.cards.book import back, counts, front
from designer.cards.book.alike import alike
from designer.cards.book.binding import Binding, foot_line, letter, page_colours, paged, roman
from designer.cards.book.changes import changes, gone
from designer.cards.book.cover import draw_cover
from designer.cards.book.glossary import PROGRAM_LANGUAGE, Glossary, in_one_language
from designer.cards.book.leaf import Leaf, cannot_be_set, without_failed
from designer.cards.book.opener import section_page
from designer.cards.book.packing import completed, pack_pages
from designer.cards.book.reading import reading
from designer.cards.book.rows import Setter, drill_key
from designer.cards.book.sheets import Made, Sheets, draw_foot, draw_licence
from designer.cards.book.signs import declined_titles, lacking, refuse_declined
from designer.cards.book.survey import page_paper, sheet_paper
from designer.cards.card import LEAST_CONTRAST, contrast_with_white, faint
from designer.cards.logo import Logo, UnreadableLogo, read_logo
from designer.cards.papers import PAPERS
from designer.cards.text import Typesetter, right_to_left
from designer.cards.typeface import own_faces
from designer.drawing.themes import theme
from designer.drawing.words import set_in
from designer.drill.brand import Brand
from designer.drill.handbook import BookSection, Handbook, HouseRule, Remembered
from designer.review.house_rules import WORDS
from designer.wording.vocabulary import Vocabulary

if TYPE_CHECKING:
    from reportlab.pdfgen.canvas import Canvas

Progress = Callable[[int, int, str], None]
"""Hears (how many pieces are done, how many there are, what is being set). What it raises ends the work."""

_INK: Final = "#17202A"
_FOREIGN: Final = (
    "The handbook's language {} is that of your own words; headings, sentences and the glossary are printed in English, the only "
    "language that the program writes, and the PDF says so."
)


@dataclass(frozen=True, slots=True)
class Book:
    """The PDF, the number of its pages, and {number: reason} for each drill that could not be printed.

    ``broken`` are the house rules that drills do not keep, with the numbers of those drills. ``remembered`` is what the
    record of this edition holds of the drills that are printed.
    """

    pdf: bytes
    pages: int
    left_out: dict[str, str]
    broken: dict[HouseRule, list[str]]
    remembered: dict[str, Remembered]
    notices: tuple[str, ...]

    def broken_in_words(self, most: int | None = None) -> tuple[str, ...]:
        """Return a sentence for each house rule that is not kept; it names at most ``most`` drills, all without it."""
        return tuple(
            f"House rule “{rule}”: a drill {WORDS[rule]}; not yet {', '.join(numbers[:most])}"
            f"{f' and {len(numbers) - most} more' if most is not None and len(numbers) > most else ''}."
            for rule, numbers in self.broken.items()
        )


def make_handbook(
    book: Handbook,
    leaves: Sequence[Leaf],
    *,
    before: Mapping[str, Remembered] | None = None,
    brand: Brand | None = None,
    logo: str | bytes | None = None,
    typeface: tuple[bytes, bytes | None] | None = None,
    progress: Progress = lambda _done, _whole, _words: None,
) -> Book:
    """Return the handbook with its drills ``leaves``, in the order of its entries.

    ``before`` is {number: drill} of the edition before; ``logo`` the text of an SVG file or the bytes of a PNG;
    ``typeface`` the bytes of a regular and a bold TrueType file. A drill
    that cannot be set is listed with the reason. The same arguments give the same bytes. Raises ``Unprintable`` where
    the handbook's own words cannot be set as they are read.
    """
    refuse_declined(book, brand)
    book = book.changed(title=Vocabulary(book.vocabulary).written(book.title))
    mark, notices = _logo(logo)
    faces, more = own_faces(typeface)
    with set_in(faces):
        while True:
            typesetter = Typesetter()
            with tempfile.TemporaryFile() as scratch:
                # The canvas is held by the printer alone: it goes as soon as the pages are bound.
                printer = _Printer(_canvas(scratch, book, typesetter), book, leaves, typesetter, brand, mark, progress)
                pdf = _bound(printer, before or {}, scratch)
            if not printer.failed:
                break
            # Contents, indexes and counts have named them: the book is set once more, without them.
            leaves = without_failed(leaves, printer.failed)
    remembered = {
        leaf.entry.number: Remembered(digest=leaf.digest, title=leaf.title, id=leaf.summary.id)
        for leaf in leaves
        if leaf.summary
    }
    broken = {rule: found for rule, found in back.broken_rules(leaves, book.house_rules).items() if found}
    foreign = () if in_one_language(book) else (_FOREIGN.format(book.language),)
    old = gone(leaves, before or {})
    quoted = {f"the reason why {number} is left out": reason for number, reason in printer.left_out.items()}
    quoted |= {
        f"the title of {number} in the record of the edition before": one.title
        for number, one in old.items()
        if not right_to_left((one.title,))
    }
    all_notices = (
        *foreign,
        *notices,
        *more,
        *faint(brand),
        *declined_titles(old),
        *printer.notices,
        *lacking(book, brand, typesetter, printer.notices, quoted),
    )
    return Book(pdf, printer.binding.count, printer.left_out, broken, remembered, all_notices)


def _bound(printer: _Printer, before: Mapping[str, Remembered], scratch: BinaryIO) -> bytes:
    """Print the whole book on the printer's canvas, which writes to ``scratch``; return its PDF, b"" where a drill failed."""
    book, leaves = printer.book, printer.leaves
    printer.front(before)
    for place, section in enumerate(book.sections):
        printer.section(section, place)
    if printer.failed:
        return b""
    printer.back()
    printer.progress(len(leaves), len(leaves), "binding the pages")
    printer.binding.canvas.save()
    del printer.binding.canvas  # a book of hundreds of drills is not held twice
    files = {}
    if book.attach:
        printed = (leaf for leaf in leaves if leaf.summary)
        files = {f"{leaf.entry.number} {_file_name(leaf)}.drill.json": leaf.source for leaf in printed}
    return completed(scratch, dated=book.dated, files=files)


def _file_name(leaf: Leaf) -> str:
    found = leaf.summary
    return (found.code or found.id) if found else leaf.entry.number


def _canvas(result: BinaryIO, book: Handbook, typesetter: Typesetter) -> Canvas:
    from reportlab.pdfgen.canvas import Canvas

    from designer.drawing.pdf import REGULAR, register_fonts

    register_fonts()
    paper = PAPERS[book.paper]
    canvas = Canvas(
        result,
        pagesize=(paper.width, paper.height),
        invariant=1,
        initialFontName=REGULAR,  # type: ignore[arg-type]  # the stub is wrong: it is a name
        lang=book.language if in_one_language(book) else PROGRAM_LANGUAGE,
    )
    pack_pages(canvas)
    canvas.setTitle(typesetter.clean(book.title))
    canvas.setAuthor(typesetter.clean(book.owner))
    canvas.setSubject(typesetter.clean(f"Edition {book.edition}"))
    canvas.setCreator("Drill Designer")
    return canvas


def _logo(logo: str | bytes | None) -> tuple[Logo | None, tuple[str, ...]]:
    if not logo:
        return None, ()
    try:
        found = read_logo(logo)
    except UnreadableLogo as error:
        return None, (f"The logo is left out: {error}.",)
    return found, found.notices


class _Printer:
    def __init__(
        self,
        canvas: Canvas,
        book: Handbook,
        leaves: Sequence[Leaf],
        typesetter: Typesetter,
        brand: Brand | None,
        logo: Logo | None,
        progress: Progress,
    ) -> None:
        self.book, self.leaves, self.brand, self.logo, self.progress = book, leaves, brand, logo, progress
        self.by_number = {leaf.entry.number: leaf for leaf in leaves}
        self.titles = {leaf.entry.number: leaf.title for leaf in leaves if leaf.summary}
        self.left_out = {leaf.entry.number: leaf.reason for leaf in leaves if leaf.summary is None}
        self.failed: dict[str, str] = {}
        self.like = alike(leaves)
        paper = page_paper(book)
        vocabulary = Vocabulary(book.vocabulary)
        colours = theme("paper")
        self.setter = Setter(paper, typesetter, vocabulary, frozenset(self.titles))
        bar = brand.colour if brand else _INK
        heading = bar if contrast_with_white(bar) >= LEAST_CONTRAST else _INK
        own = (brand.footer or brand.name) if brand else ""
        self.licence = book.licence or (brand.licence if brand else "")
        foot = foot_line(own or book.owner, self.licence, typesetter, paper.inner)
        self.binding = Binding(canvas, paper, self.setter, book.title, page_colours(heading, bar), foot)
        self.sheets = Sheets(sheet_paper(book), colours, brand, logo, vocabulary)
        self.glossary = Glossary(book.language, book.glossary, vocabulary)
        self.names = section_names(book.sections)
        self.done = 0
        self.notices: list[str] = [
            f"{leaf.entry.number} {leaf.title}: see also {number}, expected the number of a drill in this handbook; left out."
            for leaf in leaves
            for number in leaf.entry.see
            if number not in {other.entry.number for other in leaves}
        ]
        self.notices += [f"{leaf.entry.number} {leaf.title}: {words}" for leaf in leaves for words in leaf.carried]

    def front(self, before: Mapping[str, Remembered]) -> None:
        """Print cover, imprint, contents, how to read a card and the safety page."""
        binding, setter = self.binding, self.setter
        page = binding.open("i", "")
        binding.mark("Cover", "cover", 0)
        draw_cover(page, self.book, self.brand, self.logo, self.licence)
        binding.close()
        said = tuple(changes(self.leaves, before, self.book.edition))
        imprint = tuple(paged(tuple(front.imprint(self.book, self.leaves, said, setter, self.licence)), setter.paper))
        read = tuple(paged(tuple(reading(self.book, setter, theme("paper"))), setter.paper))
        safety = tuple(paged(tuple(front.safety(self.book, self.leaves, setter)), setter.paper))
        contents = self._contents(2, len(imprint), len(read))
        again = self._contents(2, len(imprint), len(read), len(contents))
        for title, key, pages in (
            ("About this edition", "imprint", imprint),
            ("Contents", "contents", again),
            ("How to read a card", "reading", read),
            ("Before a session", "safety", safety),
        ):
            binding.flow(title, key, pages, [roman(binding.count + 1 + place) for place in range(len(pages))])

    def _contents(self, first: int, imprint: int, reading: int, own: int = 1) -> tuple[tuple[Block, ...], ...]:
        """Return the pages of the contents, which are ``own`` pages long themselves."""
        parts = [
            ("About this edition", "imprint", roman(first)),
            ("How to read a card", "reading", roman(first + imprint + own)),
            ("Before a session", "safety", roman(first + imprint + own + reading)),
            *self._back_parts(),
        ]
        blocks = front.contents(self.book, self.by_number, parts, self.names, self.setter)
        return tuple(paged(tuple(blocks), self.setter.paper))

    def _back_parts(self) -> list[tuple[str, str, str]]:
        parts = [("Glossary", "glossary", "G1"), ("Indexes", "indexes", "X1"), ("Balance", "balance", "B1")]
        if back.has_house_rules(self.book):
            parts.insert(0, ("House rules", "house-rules", "H1"))
        if self.left_out:
            parts.insert(0, ("Drills that could not be printed", "left-out", "N1"))
        return [*parts, ("Session plans", "planner", "P1")] if self.book.planners else parts

    def section(self, section: BookSection, place: int) -> None:
        """Print the pages that open a section, and its drills."""
        binding, name = self.binding, self.names[place]
        running = self.setter.said(section.title)
        self._turn_over(roman(binding.count + 1), self.book.title)
        pages = tuple(paged(tuple(section_page(section, name, self.by_number, self.setter)), self.setter.paper))
        labels = [f"{name}.0{letter(sheet)}" for sheet in range(len(pages) + 1)]
        binding.flow(f"{name}  {running}", front.section_key(place), pages, labels[:-1])
        self._turn_over(labels[-1], running)
        for entry in section.drills:
            leaf = self.by_number[entry.number]
            self.progress(self.done, len(self.leaves), f"{entry.number} {leaf.title}")
            self.done += 1
            self._drill(leaf, running)

    def _drill(self, leaf: Leaf, running: str) -> None:
        """Print a drill, from a right-hand page on where each has leaves of its own, so that one can be exchanged."""
        number = leaf.entry.number
        if leaf.summary is None:
            return
        try:
            cards = tuple(self.sheets.cards(leaf))
            sheet = 0
            for card in cards:
                self.glossary.notice(card.words)
                sheet = self._card(card, leaf, running, sheet)
                self.notices += [f"{number} {leaf.title}: {words}" for words in card.notices()]
        except Exception as error:  # noqa: BLE001  one bad drill must not lose the book; it is listed with its reason
            self.failed[number] = cannot_be_set(leaf, error)
            return
        self._turn_over(f"{number}{letter(sheet)}", running)

    def _turn_over(self, label: str, running: str) -> None:
        """Go on to a new leaf, where sections and drills have leaves of their own."""
        if self.book.own_leaves:
            self.binding.to_right_page(label, running)

    def _card(self, card: Made, leaf: Leaf, running: str, sheet: int) -> int:
        """Print the sides of one card, the first of them as sheet ``sheet`` of its drill; return the next sheet."""
        binding, number = self.binding, leaf.entry.number
        for side in range(len(card.sides)):
            head = f"{running}  ·  {self.setter.said(card.name)}" if card.name else running
            page = binding.open(f"{number}{letter(sheet)}", head)
            card.draw(binding.canvas, side)
            page.paper = self.sheets.paper
            if sheet == 0:
                binding.mark(f"{number}  {self.setter.said(leaf.title)}", drill_key(number), 1)
                draw_foot(page, leaf, self.like[number], self.titles, self.licence)
            else:
                draw_licence(page, self.licence)
            binding.close()
            sheet += 1
        return sheet

    def back(self) -> None:
        """Print what could not be printed, house rules, glossary, indexes, balance and planner pages."""
        setter = self.setter
        self.glossary.name(counts.names(self.leaves))
        made: dict[str, Callable[[], tuple[Block, ...]]] = {
            "left-out": lambda: tuple(back.left_out_page(self.left_out, setter)),
            "house-rules": lambda: tuple(back.house_rules_page(self.book, self.leaves, setter)),
            "glossary": lambda: tuple(back.glossary_page(self.glossary, setter)),
            "indexes": lambda: tuple(counts.index_pages(self.leaves, setter)),
            "balance": lambda: tuple(counts.balance_page(self.leaves, setter)),
        }
        for title, key, label in self._back_parts():
            if key == "planner":
                pages = tuple(tuple(back.planner_page(setter)) for _ in range(self.book.planners))
            else:
                pages = tuple(paged(made[key](), setter.paper))
            labels = [f"{label[0]}{place + 1}" for place in range(len(pages))]
            self.binding.flow(title, key, pages, labels)


def section_names(sections: Sequence[BookSection]) -> list[str]:
    """Return the number of each section: that of most of its drills, else its place; no two have the same.

    A drill that has been moved in from another section keeps its number and so does not name this one.
    """
    names: list[str] = []
    for place, section in enumerate(sections, 1):
        heads = Counter(entry.number.partition(".")[0] for entry in section.drills)
        wished = (*(head for head, _ in heads.most_common()), str(place))
        free = (str(number) for number in range(1, len(sections) + len(names) + 2))
        names.append(next(name for name in (*wished, *free) if name not in names))
    return names
