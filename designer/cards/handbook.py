"""A handbook as one PDF: front matter, every drill in its section, indexes and planner pages."""

from __future__ import annotations

import io
from collections.abc import Callable, Sequence
from dataclasses import dataclass, field, replace
from typing import TYPE_CHECKING, Final

from designer.cards import handbook_pages as pages
from designer.cards.attachment import finished
from designer.cards.blocks import Block, draw_stack, taken
from designer.cards.card import Maker
from designer.cards.cautions import with_dangers
from designer.cards.handbook_pages import Leaf
from designer.cards.logo import Logo, draw_logo, read_logo
from designer.cards.page import Page
from designer.cards.papers import A4, MM, Paper, Type
from designer.cards.text import Typesetter
from designer.drawing.themes import Theme, theme
from designer.drill.brand import Brand
from designer.drill.handbook import BookSection, Handbook
from designer.drill.setting import main_setting
from designer.wording.card import card_words

if TYPE_CHECKING:
    from reportlab.pdfgen.canvas import Canvas

PAPER: Final[Paper] = replace(A4, mirrored=True, top=15 * MM, bottom=10 * MM)
_HEAD: Final = Type(8, 10)


@dataclass(frozen=True, slots=True)
class Book:
    """The PDF, the number of its pages, and {number: reason} for each drill that could not be printed."""

    pdf: bytes
    pages: int
    left_out: dict[str, str]
    notices: tuple[str, ...]


def make_handbook(
    book: Handbook,
    leaves: Sequence[Leaf],
    *,
    before: dict[str, str] | None = None,
    brand: Brand | None = None,
    logo: str | None = None,
    progress: Callable[[int, str], None] = lambda _number, _title: None,
) -> Book:
    """Return the handbook with its drills ``leaves``, in the order of its entries.

    ``before`` is {number: digest} of the edition before; ``logo`` the text of an SVG file; ``progress`` hears of each
    drill before it is set. A drill that cannot be set is listed with the reason. The same arguments give the same
    bytes.
    """
    from reportlab.pdfgen.canvas import Canvas

    from designer.drawing.pdf import REGULAR, register_fonts

    register_fonts()
    result = io.BytesIO()
    canvas = Canvas(
        result,
        pagesize=(PAPER.width, PAPER.height),
        invariant=1,
        initialFontName=REGULAR,  # type: ignore[arg-type]  # the stub is wrong: it is a name
        lang=book.language,
        pageCompression=1,
    )
    typesetter = Typesetter()
    canvas.setTitle(typesetter.clean(book.title))
    canvas.setAuthor(typesetter.clean(book.owner))
    canvas.setCreator("Drill Designer")
    printer = _Printer(canvas, book, typesetter, theme("paper"), brand, read_logo(logo) if logo else None)
    printer.front(leaves, before or {})
    by_number = {leaf.entry.number: leaf for leaf in leaves}
    done = 0
    for section in book.sections:
        printer.section(section)
        for entry in section.drills:
            leaf = by_number[entry.number]
            done += 1
            progress(done, leaf.title)
            printer.drill(leaf, section)
    printer.back(leaves)
    canvas.save()
    whole = finished(result.getvalue(), dated=book.dated, source=None, file_name="")
    return Book(whole, printer.count, printer.left_out, typesetter.notices())


@dataclass(slots=True)
class _Printer:
    canvas: Canvas
    book: Handbook
    typesetter: Typesetter
    theme: Theme
    brand: Brand | None
    logo: Logo | None
    count: int = 0
    left_out: dict[str, str] = field(default_factory=dict)

    def front(self, leaves: Sequence[Leaf], before: dict[str, str]) -> None:
        """Print cover, changes, contents, how to read a card, glossary and safety page."""
        made = pages.Pages(self.book, PAPER, self.theme, self.typesetter)
        for title, key, blocks in made.front(leaves, before):
            self._flow(title, key, blocks, "")

    def back(self, leaves: Sequence[Leaf]) -> None:
        """Print what could not be printed, the indexes, the balance page and the planner."""
        made = pages.Pages(self.book, PAPER, self.theme, self.typesetter)
        for title, key, blocks in made.back(leaves, self.left_out):
            self._flow(title, key, blocks, "")

    def section(self, section: BookSection) -> None:
        """Print the page that opens a section."""
        made = pages.Pages(self.book, PAPER, self.theme, self.typesetter)
        self._flow(section.title, f"section-{section.title}", made.section(section), section.title)

    def drill(self, leaf: Leaf, section: BookSection) -> None:
        """Print a drill, from a right-hand page on so that its sheets can be replaced."""
        number = leaf.entry.number
        if leaf.drill is None:
            self.left_out[number] = leaf.reason
            return
        try:
            at = main_setting(leaf.drill)
            words = with_dangers(card_words(leaf.drill, at, "stand-in"), leaf.drill, at)
            paper = replace(PAPER, mirrored=False)
            maker = Maker(
                leaf.drill, at, words, "stand-in", None, self.theme, self.typesetter, self.brand, self.logo, grey=False
            )
            sides, paper = maker.sides(paper)
        except Exception as error:  # noqa: BLE001  one bad drill must not lose the book; it is listed with its reason
            self.left_out[number] = f"cannot be set: {error}"
            return
        if self.count % 2:
            self._blank(section.title)
        for side in range(len(sides)):
            sheet = f"{number}{chr(ord('a') + side)}" if side < 26 else f"{number}-{side + 1}"
            self._open(sheet, section.title)
            if side == 0:
                self._mark(f"{number} {words.title or 'Untitled drill'}", f"drill-{number}", 1)
            maker.draw_side(self.canvas, sides, side, paper)
            self._close()

    def _flow(self, title: str, key: str, blocks: Sequence[Block], running: str) -> None:
        rest = tuple(blocks)
        first = True
        while rest or first:
            self._open("", running or title)
            if first:
                self._mark(title, key, 0)
                self._cover_logo(key)
            top = PAPER.height - PAPER.top
            fitting, left = taken(rest, PAPER.inner, top - PAPER.bottom - 10)
            if rest and not fitting:
                fitting, left = rest[:1], rest[1:]
            draw_stack(self._page(), fitting, PAPER.left, top, PAPER.inner)
            rest, first = left, False
            self._close()

    def _cover_logo(self, key: str) -> None:
        if key == "cover" and self.logo is not None:
            draw_logo(self.canvas, self.logo, PAPER.left, PAPER.height - PAPER.top - 40 * MM, 34 * MM)

    def _blank(self, running: str) -> None:
        self._open("", running)
        page = self._page()
        page.write("Notes", PAPER.left, PAPER.height - PAPER.top - 12, PAPER.heading, "soft")
        for line in range(1, 30):
            y = PAPER.height - PAPER.top - 14 - line * PAPER.note_lines
            if y > PAPER.bottom:
                page.rule(PAPER.left, y, PAPER.left + PAPER.inner, weight=0.6, colour="note")
        self._close()

    def _page(self) -> Page:
        colours = {"ink": "#17202A", "soft": "#55616C", "brand": "#17202A", "bar": "#17202A", "note": "#C9C9C9"}
        return Page(self.canvas, PAPER, colours, self.typesetter)

    def _open(self, sheet: str, running: str) -> None:
        """Begin a page: its label, its running head and the number of its sheet at the outer edge."""
        label = sheet or str(self.count + 1)
        self.canvas.addPageLabel(self.count, prefix=label)
        if self.count % 2:
            self.canvas.translate(PAPER.right - PAPER.left, 0)
        page = self._page()
        base = PAPER.height - 9 * MM
        inner, outer = f"{self.book.title} · {running}", label
        if self.count % 2:
            page.write(outer, PAPER.left, base, _HEAD, "soft")
            page.write_right(inner, PAPER.left + PAPER.inner, base, _HEAD, "soft")
        else:
            page.write(inner, PAPER.left, base, _HEAD, "soft")
            page.write_right(outer, PAPER.left + PAPER.inner, base, _HEAD, "soft")

    def _mark(self, title: str, key: str, level: int) -> None:
        self.canvas.bookmarkPage(key)
        self.canvas.addOutlineEntry(self.typesetter.clean(title), key, level=level)

    def _close(self) -> None:
        self.canvas.showPage()
        self.count += 1
