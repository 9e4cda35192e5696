"""The rows that a handbook's own pages are set with: links, lines with dots to the edge, boxes to tick, bars."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise
from typing import TYPE_CHECKING, Final

from designer.cards.blocks import Block, Drawn, Row, Rules
from designer.cards.papers import Paper, Type
from designer.cards.text import Typesetter, widest
from designer.drawing.words import text_width
from designer.wording.vocabulary import Vocabulary

if TYPE_CHECKING:
    from designer.cards.page import Page

NUMBER: Final = re.compile(r"(?<![\d.])\d+\.\d+(?![\d.]|\w)")
TITLE: Final = Type(26, 32, bold=True)
HEADING: Final = Type(17, 22, bold=True)
SMALL: Final = Type(8.6, 11.4)


def drill_key(number: str) -> str:
    """Return the name of the place in the book where the drill of this number begins."""
    return f"drill-{number}"


@dataclass(frozen=True)
class Linked(Row):
    """A row that leads to a place in the book: as a whole to ``target``, else each of ``numbers`` to its drill."""

    target: str = ""
    numbers: frozenset[str] = frozenset()

    def draw(self, page: Page, x: float, top: float, width: float) -> None:
        """Draw the row and lay the links over it."""
        super().draw(page, x, top, width)
        if self.target:
            box = (x, top - self.height(width), x + width, top)
            page.canvas.linkRect("", self.target, box, relative=1, thickness=0)
            return
        for line, words in enumerate(self.lines(width)):
            low = top - (line + 1) * self.type_.leading
            for found in NUMBER.finditer(words):
                if found[0] in self.numbers:
                    left = (
                        x
                        + (self.hang if line else self.indent)
                        + text_width(words[: found.start()], self.type_.size, self.type_.bold)
                    )
                    wide = text_width(found[0], self.type_.size, self.type_.bold)
                    box = (left, low, left + wide, low + self.type_.leading)
                    page.canvas.linkRect("", drill_key(found[0]), box, relative=1, thickness=0)


@dataclass(frozen=True)
class Looked(Linked):
    """An entry of an index: it begins at the edge, and what does not fit on its line hangs under it."""

    @property
    def indent(self) -> float:
        """Where the first line begins."""
        return 0.0


@dataclass(frozen=True)
class Listed(Linked):
    """A line of the contents: a number at the left, words, dots, and at the right what the line leads to."""

    number: str = ""
    right: str = ""

    def lines(self, width: float) -> tuple[str, ...]:
        """Return its lines in the room between the number and what stands at the right."""
        room = width - text_width(self.right, self.type_.size) - 12 if self.right else width
        return super().lines(room)

    def split(self, width: float, room: float) -> tuple[Block, Block] | None:
        """Divide between lines; only the first part shows the number, only the last what stands at the right."""
        parts = super().split(width, room)
        if parts is None or not isinstance(parts[0], Listed) or not isinstance(parts[1], Listed):
            return parts
        return replace(parts[0], right=""), replace(parts[1], number="")

    def draw(self, page: Page, x: float, top: float, width: float) -> None:
        """Draw number, words, dots and what stands at the right, in the order in which they are read."""
        base = top - self._first_base()
        if self.number:
            page.write(self.number, x, base, replace(self.type_, bold=True))
        super().draw(page, x, top, width)
        lines = self.lines(width)
        base -= (len(lines) - 1) * self.type_.leading
        if self.right:
            begin = page.write_right(self.right, x + width, base, self.type_, "soft")
            dot = text_width(" .", self.type_.size)
            room = begin - 4 - (x + self.hang + text_width(lines[-1], self.type_.size, self.type_.bold) + 4)
            if room > 2 * dot:
                page.write_right(" ." * int(room / dot), begin - 4, base, self.type_, "soft")


@dataclass(frozen=True)
class Tick(Linked):
    """A row with a box to tick in front, or with one that is ticked."""

    ticked: bool = False

    def draw(self, page: Page, x: float, top: float, width: float) -> None:
        """Draw the box and the row."""
        super().draw(page, x, top, width)
        page.canvas.setStrokeColor(page.colours["ink"])
        page.canvas.setLineWidth(0.7)
        page.canvas.setDash([])
        size = self.type_.size
        low = top - self._first_base() - 0.12 * size
        page.canvas.rect(x, low, size, size, stroke=1, fill=0)
        if self.ticked:
            page.canvas.setLineWidth(1.3)
            corners = ((0.2, 0.5), (0.42, 0.25), (0.82, 0.8))
            points = [(x + across * size, low + up * size) for across, up in corners]
            page.canvas.lines([(*start, *end) for start, end in pairwise(points)])


@dataclass(frozen=True)
class Counted(Linked):
    """A row of the balance page: words, a bar as long as the count, the count, and the drills."""

    count: int = 0
    most: int = 1
    words: str = ""

    def split(self, width: float, room: float) -> tuple[Block, Block] | None:
        """Divide between lines; only the first part shows words, bar and count."""
        parts = super().split(width, room)
        if parts is None or not isinstance(parts[1], Counted):
            return parts
        return parts[0], replace(parts[1], words="")

    def draw(self, page: Page, x: float, top: float, width: float) -> None:
        """Draw words, bar, count and the numbers beside them, in the order in which they are read."""
        if self.words:
            base = top - self._first_base()
            page.write(self.words, x, base, self.type_)
            begin = x + NAME_WIDTH
            long = BAR_WIDTH * self.count / max(1, self.most)
            if self.count:
                page.box(begin, base, max(1.5, long), 0.62 * self.type_.size, "brand")
            page.write(str(self.count), begin + max(1.5, long) + 4, base, replace(self.type_, bold=True))
        super().draw(page, x, top, width)


_TABLE_HEAD: Final = 15.0
"""Height in points of the names over a table's columns."""
_BESIDE_NUMBER: Final = 30.0
"""Points from a drill's number to its title at least."""
TERM_WIDTH: Final = 112.0
NAME_WIDTH: Final = 104.0
BAR_WIDTH: Final = 96.0
"""Widths in points of the name and the longest bar of a row that counts."""


class Setter:
    """Makes the blocks of a handbook's own pages; every word goes through the academy's vocabulary.

    Most of them are typed by the owner or by authors, so plain words stay.
    """

    def __init__(self, paper: Paper, typesetter: Typesetter, vocabulary: Vocabulary, numbers: frozenset[str]) -> None:
        self.paper, self.typesetter, self.vocabulary, self.numbers = paper, typesetter, vocabulary, numbers
        self.said, self.named = vocabulary.written, vocabulary.named
        self.beside_number = max(_BESIDE_NUMBER, widest(numbers, replace(paper.body, bold=True)) + 6)

    def title(self, words: str) -> Block:
        """Return the title of a part of the book."""
        return Row(self.said(words), HEADING, self.typesetter, colour="brand", keep_with_next=True)

    def heading(self, words: str, before: float = 11.0) -> Block:
        """Return a heading in a part."""
        return Row(
            self.said(words), self.paper.heading, self.typesetter, colour="brand", before=before, keep_with_next=True
        )

    def text(self, words: str, before: float = 3.0, *, hang: float = 0.0, colour: str = "ink") -> Block:
        """Return a paragraph; a drill's number in it leads to the drill."""
        return self.said_already(self.said(words), before, hang=hang, colour=colour)

    def said_already(self, words: str, before: float = 3.0, *, hang: float = 0.0, colour: str = "ink") -> Block:
        """Return a paragraph that is in the academy's words already: said twice, one of them may be taken for ours."""
        return Linked(
            words,
            self.paper.body,
            self.typesetter,
            colour=colour,
            before=before,
            hang=hang,
            numbers=self.numbers,
        )

    def indexed(self, words: str) -> Block:
        """Return an entry of an index, which is said already; a drill's number in it leads to the drill."""
        return Looked(words, self.paper.body, self.typesetter, before=1.8, hang=12.0, numbers=self.numbers)

    def tick(self, words: str, *, ticked: bool = False) -> Block:
        """Return a line with a box to tick, or one that is ``ticked``; a drill's number in it leads to the drill."""
        return Tick(
            self.said(words),
            self.paper.body,
            self.typesetter,
            before=3.5,
            hang=16,
            numbers=self.numbers,
            ticked=ticked,
        )

    def link(
        self,
        words: str,
        target: str,
        *,
        number: str = "",
        right: str = "",
        before: float = 2.0,
        bold: bool = False,
        keep: bool = False,
    ) -> Block:
        """Return a line of the contents that leads to ``target``; with ``keep`` it stays with what follows it."""
        return Listed(
            self.said(words),
            self.paper.heading if bold else self.paper.body,
            self.typesetter,
            before=before,
            hang=self.beside_number if number else 0,
            target=target,
            number=number,
            right=self.said(right),
            keep_with_next=keep,
        )

    def blank(self, words: str, lines: int = 1, *, answer: str = "") -> Iterator[Block]:
        """Yield a heading with its answer, which is said already, or with lines to write on where there is none."""
        yield self.heading(words)
        yield self.said_already(answer, before=1.5) if answer.strip() else Rules(lines, self.paper.note_lines)

    def counted(self, counts: Mapping[str, list[str]], most: int) -> Iterator[Block]:
        """Yield a row for each name with the numbers of its drills, in the order given; a full bar is ``most`` of them."""
        for name, numbers in counts.items():
            words = self.typesetter.lines(self.named(name), SMALL, NAME_WIDTH - 6)[0]
            yield Counted(
                ", ".join(numbers) or "–",
                SMALL,
                self.typesetter,
                before=2.0,
                hang=NAME_WIDTH + BAR_WIDTH + 26,
                numbers=self.numbers,
                count=len(numbers),
                most=most,
                words=words,
            )

    def term(self, word: str, means: str, wide: float = TERM_WIDTH, before: float = 4.0) -> Block:
        """Return a word in bold, ``wide`` points for it, and what it means beside it; both are said already."""
        return Listed(
            means,
            self.paper.body,
            self.typesetter,
            before=before,
            hang=wide,
            number=self.typesetter.lines(word, self.paper.heading, wide - 8)[0],
            numbers=self.numbers,
        )

    def table(self, columns: Sequence[tuple[str, float]], rows: int, pitch: float) -> Block:
        """Return an empty table to write in: ``columns`` are (name, share of the width), rows ``pitch`` points high."""

        def draw(page: Page, x: float, top: float, width: float) -> None:
            left, low = x, top - _TABLE_HEAD
            for row in range(rows + 1):
                page.rule(x, low - row * pitch, x + width, weight=0.6, colour="note")
            for place, (name, share) in enumerate(columns):
                page.write(self.said(name), left + 2 * (place > 0), top - 10, self.paper.heading)
                if place:
                    page.canvas.line(left - 3, low, left - 3, low - rows * pitch)
                left += share * width

        return Drawn(_TABLE_HEAD + rows * pitch, draw, before=12)

    def entry(self, word: str, before: float) -> Block:
        """Return a word of the glossary over what it means; both are said as the academy says them already."""
        return Row(word, self.paper.heading, self.typesetter, before=before, keep_with_next=True)

    def meaning(self, words: str) -> Block:
        """Return what a word of the glossary means."""
        return Row(words, self.paper.body, self.typesetter, before=0.5)

    def space(self, tall: float) -> Block:
        """Return empty space."""
        return Drawn(tall, lambda *_: None)
