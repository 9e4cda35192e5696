"""The pages of a handbook in order: labels, running heads, margins that change sides, leaves that can be exchanged."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from typing import TYPE_CHECKING, Final

from designer.cards.blocks import Block, Rules, draw_stack, taken
from designer.cards.book.rows import Setter
from designer.cards.page import NOTE_LINE, Page
from designer.cards.papers import MM, Paper, Type
from designer.cards.text import NO_BREAK, Typesetter
from designer.drawing.words import text_width

if TYPE_CHECKING:
    from reportlab.pdfgen.canvas import Canvas

HEAD: Final = Type(8, 10)
_FOOT_BASE: Final = 7 * MM
"""Base line of a page's foot: below the words, inside of what printers leave white."""
LABEL: Final = Type(10, 12, bold=True)
_ROMAN: Final = ((100, "c"), (90, "xc"), (50, "l"), (40, "xl"), (10, "x"), (9, "ix"), (5, "v"), (4, "iv"), (1, "i"))


def roman(number: int) -> str:
    """Return ``number`` in small Roman numerals."""
    found = ""
    for value, sign in _ROMAN:
        found += sign * (number // value)
        number %= value
    return found


def letter(place: int) -> str:
    """Return the letter of a sheet: a for 0, z for 25, then aa."""
    return (letter(place // 26 - 1) if place > 25 else "") + chr(ord("a") + place % 26)


LICENCE_ELSEWHERE: Final = "Licence: page ii"
"""What stands where the licence has no room: cut short it might allow what it does not."""


def foot_line(owner: str, licence: str, typesetter: Typesetter, width: float) -> str:
    """Return the one line at the foot of a page: the owner's, and the licence or where it stands in full."""
    owner, licence = (" ".join(words.split()) for words in (owner, licence))
    whole = typesetter.clean(_SPACED.join(filter(None, (owner, licence))))
    if text_width(whole, HEAD.size) <= width:
        return whole
    elsewhere = f"{_SPACED}{LICENCE_ELSEWHERE}" if licence else ""
    room = width - text_width(elsewhere, HEAD.size)
    return f"{typesetter.on_one_line(owner, HEAD, room)}{elsewhere}".removeprefix(_SPACED)


_SPACED: Final = f"{NO_BREAK} · {NO_BREAK}"


def page_room(paper: Paper) -> float:
    """Return the height in points that one of the book's own pages has for blocks."""
    return paper.height - paper.top - paper.bottom - 10


def paged(blocks: Sequence[Block], paper: Paper) -> Iterator[tuple[Block, ...]]:
    """Yield ``blocks`` page by page; there is always one page. A block too tall for a page gets one of its own."""
    rest = tuple(blocks)
    room = page_room(paper)
    while True:
        fitting, left = taken(rest, paper.inner, room)
        if rest and not fitting:
            fitting, left = rest[:1], rest[1:]
        yield fitting
        rest = left
        if not rest:
            return


@dataclass(slots=True)
class Binding:
    """The canvas with its pages, opened and closed one after another. ``count`` pages are closed."""

    canvas: Canvas
    paper: Paper
    setter: Setter
    title: str
    colours: dict[str, str]
    foot: str = ""
    count: int = 0
    labels: list[str] = field(default_factory=list)

    def page(self) -> Page:
        """Return the open page."""
        return Page(self.canvas, self.paper, self.colours, self.setter.typesetter)

    def open(self, label: str, running: str) -> Page:
        """Open a page with its label, and its running head unless ``running`` is ""."""
        self.labels.append(label)
        is_left_page = self.count % 2 == 1
        if is_left_page:
            self.canvas.translate(self.paper.right - self.paper.left, 0)
        page = self.page()
        if running:
            base = self.paper.height - 9 * MM
            left, right = self.paper.left, self.paper.left + self.paper.inner
            words = self._running(running, self.paper.inner - text_width(label, LABEL.size, bold=True) - 14)
            if is_left_page:
                page.write(label, left, base, LABEL)
                page.write_right(words, right, base, HEAD, "soft")
            else:
                page.write(words, left, base, HEAD, "soft")
                page.write_right(label, right, base, LABEL)
        return page

    def _running(self, running: str, room: float) -> str:
        """Return the running head: the book and the part, the part alone where both are too long for ``room``."""
        both = self.setter.said(_SPACED.join(dict.fromkeys((self.title, running))))
        if text_width(self.setter.typesetter.clean(both), HEAD.size) <= room:
            return both
        return self.setter.typesetter.on_one_line(self.setter.said(running), HEAD, room)

    def close(self) -> None:
        """Close the open page."""
        self.canvas.addPageLabel(self.count, prefix=self.labels[-1])
        self.canvas.showPage()
        self.count += 1

    def mark(self, title: str, key: str, level: int) -> None:
        """Make the open page a place that links lead to, and an entry of the outline."""
        self.canvas.bookmarkPage(key)
        self.canvas.addOutlineEntry(self.setter.typesetter.clean(title), key, level=level, closed=int(level == 0))

    def flow(
        self, title: str, key: str, pages: Sequence[tuple[Block, ...]], labels: Sequence[str], level: int = 0
    ) -> None:
        """Print ``pages`` of blocks, the first of which is the place ``key``."""
        for place, (blocks, label) in enumerate(zip(pages, labels, strict=True)):
            page = self.open(label, title)
            if place == 0:
                self.mark(title, key, level)
            draw_stack(page, blocks, self.paper.left, self.paper.height - self.paper.top, self.paper.inner)
            self._write_foot(page)
            self.close()

    def _write_foot(self, page: Page) -> None:
        """Write the owner's line and the licence at the foot of one of the book's own pages."""
        if self.foot:
            paper = self.paper
            page.write(self.foot, paper.left, _FOOT_BASE, HEAD, "soft")

    def to_right_page(self, label: str, running: str) -> None:
        """Print a page of lines to write on where the next one would be a left-hand page."""
        if self.count % 2 == 0:
            return
        page = self.open(label, running)
        top = self.paper.height - self.paper.top
        pitch = self.paper.note_lines
        rules = Rules(int((top - 24 - self.paper.bottom) / pitch), pitch)
        draw_stack(page, (self.setter.heading("Notes"), rules), self.paper.left, top, self.paper.inner)
        self._write_foot(page)
        self.close()


def page_colours(heading: str, bar: str) -> dict[str, str]:
    """Return the colours of a handbook's own pages."""
    return {"ink": "#17202A", "soft": "#55616C", "brand": heading, "bar": bar, "note": NOTE_LINE}
