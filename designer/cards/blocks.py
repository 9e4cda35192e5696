"""What a card's columns are filled with: blocks that know their height, can be split, and draw themselves."""

from __future__ import annotations

import re
from abc import ABC, abstractmethod
from collections.abc import Callable, Sequence
from dataclasses import dataclass, field, replace
from typing import TYPE_CHECKING, Final

from designer.cards.papers import UNPRINTED, Type
from designer.cards.text import Typesetter, accompanied
from designer.drawing.words import text_width

if TYPE_CHECKING:
    from designer.cards.page import Page

Draw = Callable[["Page", float, float], None]
"""Draws on a page at (x, y), y being the base line of the first line of text."""


@dataclass(frozen=True, slots=True)
class Lead:
    """The bullet of a row: how wide it is, and how it is drawn."""

    width: float
    draw: Draw


class Block(ABC):
    """Something that takes the whole width of a column. All lengths are points."""

    before: float = 0.0
    """Space above it, not used at the top of a column."""

    keep_with_next: bool = False

    @abstractmethod
    def height(self, width: float) -> float:
        """Return how tall it is in a column of this width."""

    @abstractmethod
    def draw(self, page: Page, x: float, top: float, width: float) -> None:
        """Draw it with its upper left corner at (x, top)."""

    def split(self, width: float, room: float) -> tuple[Block, Block] | None:  # noqa: ARG002
        """Return what fits into ``room`` and what is left, None where it cannot be divided there."""
        return None

    def again(self) -> Block | None:
        """Return what stands over the rest of a group that it begins, where that goes on elsewhere; None for nothing."""
        return None


@dataclass(frozen=True)
class Row(Block):
    """A paragraph, with a bullet in front where it has one; lines after the first hang under the first."""

    text: str
    type_: Type
    typesetter: Typesetter
    colour: str = "ink"
    lead: Lead | None = None
    hang: float = 0.0
    before: float = 0.0
    keep_with_next: bool = False
    rule: bool = False
    balanced: bool = False
    least: int = 2
    """How many of its lines stay together at least where it is divided."""
    _lines: dict[float, tuple[str, ...]] = field(default_factory=dict, repr=False, compare=False)

    @property
    def indent(self) -> float:
        """Where the first line begins; a wide bullet pushes it beyond the hang."""
        return self.hang if self.lead is None else max(self.hang, self.lead.width + 4)

    def lines(self, width: float) -> tuple[str, ...]:
        """Return its lines in a column of this width."""
        if width not in self._lines:
            self._lines[width] = self._broken(width)
        return self._lines[width]

    def _broken(self, width: float) -> tuple[str, ...]:
        if self.balanced:
            return self.typesetter.balanced(self.text, self.type_, width - self.hang)
        if self.indent <= self.hang:
            return self.typesetter.lines(self.text, self.type_, width - self.hang)
        first = self.typesetter.lines(self.text, self.type_, width - self.indent)[0]
        rest = re.sub(" {2,}", " ", self.typesetter.clean(self.text))[len(first) :].lstrip(" ")
        rest = rest.removeprefix("\n")
        if not rest:
            return (first,)
        lines = (first, *self.typesetter.lines(rest, self.type_, width - self.hang))
        return accompanied(lines, self.type_, width - self.hang) if len(lines) == 2 else lines

    def height(self, width: float) -> float:
        """Return the height of its lines; a question leaves room for a pencil."""
        count = len(self.lines(width))
        return count * self.type_.leading + (self._pencil if self.rule else 0)

    def split(self, width: float, room: float) -> tuple[Block, Block] | None:
        """Divide between lines, leaving the least on each side."""
        lines = self.lines(width)
        fit = min(int((room + 0.01) / self.type_.leading), len(lines) - self.least)
        if self.rule or fit < self.least:
            return None
        head = replace(self, text="\n".join(lines[:fit]), balanced=False, _lines={})
        tail_text = " ".join(lines[fit:]) if "\n" not in self.text else "\n".join(lines[fit:])
        tail = replace(self, text=tail_text, lead=None, balanced=False, keep_with_next=False, _lines={})
        return head, tail

    def draw(self, page: Page, x: float, top: float, width: float) -> None:
        """Draw the bullet and the lines; a question gets its ruled line to the column's end."""
        base = top - self._first_base()
        if self.lead is not None:
            self.lead.draw(page, x, base)
        lines = self.lines(width)
        for number, line in enumerate(lines):
            page.write(line, x + (self.indent if number == 0 else self.hang), base, self.type_, self.colour)
            base -= self.type_.leading
        if self.rule:
            base += self.type_.leading
            begin = (
                x
                + (self.indent if len(lines) == 1 else self.hang)
                + text_width(lines[-1], self.type_.size, self.type_.bold)
                + 5
            )
            page.rule(min(begin, x + width - 20), base - 2, x + width, weight=0.6, colour="soft")

    def _first_base(self) -> float:
        above = (self.type_.leading - self.type_.size) / 2 + 0.8 * self.type_.size
        return above + (self._pencil if self.rule else 0)

    @property
    def _pencil(self) -> float:
        """Height in points that a line to write on has more than a line of text."""
        return max(0.0, _PENCIL - self.type_.leading)


_PENCIL = 16.0
"""Height in points of a line to write on."""


@dataclass(frozen=True)
class Rules(Block):
    """Empty ruled lines to write on, ``count`` of them, ``pitch`` points apart."""

    count: int
    pitch: float
    before: float = 0.0

    def height(self, width: float) -> float:  # noqa: ARG002
        """Return the height of all its lines."""
        return self.count * self.pitch

    def split(self, width: float, room: float) -> tuple[Block, Block] | None:  # noqa: ARG002
        """Divide between two lines."""
        fit = int(room / self.pitch)
        if fit < 1 or fit >= self.count:
            return None
        return replace(self, count=fit), replace(self, count=self.count - fit)

    def draw(self, page: Page, x: float, top: float, width: float) -> None:
        """Draw the lines."""
        for number in range(1, self.count + 1):
            page.rule(x, top - number * self.pitch, x + width, weight=0.6, colour="note")


@dataclass(frozen=True)
class Drawn(Block):
    """Something of a fixed height that draws itself: a diagram, a legend."""

    tall: float
    painter: Callable[[Page, float, float, float], None]
    before: float = 0.0

    def height(self, width: float) -> float:  # noqa: ARG002
        """Return its fixed height."""
        return self.tall

    def draw(self, page: Page, x: float, top: float, width: float) -> None:
        """Let it draw itself."""
        self.painter(page, x, top, width)


LONG: Final = 190.0
"""Height in points from which a group may be divided between two columns: about fifteen lines."""


@dataclass(frozen=True)
class Group(Block):
    """Blocks that are read together: they go to the next column together, unless they are ``long`` or more high.

    ``whole`` ones stay together even on a small card. One that may go ``ahead`` stands before what it follows where there
    is room for it and not for that.
    """

    blocks: tuple[Block, ...]
    before: float = 0.0
    keep_with_next: bool = False
    long: float = LONG
    whole: bool = False
    ahead: bool = False

    def height(self, width: float) -> float:
        """Return the height of its blocks one under another."""
        return stacked(self.blocks, width)

    def split(self, width: float, room: float) -> tuple[Block, Block] | None:
        """Divide where the room ends, if it is so long that keeping it whole would leave a hole."""
        if self.height(width) < self.long:
            return None
        head, tail = taken(self.blocks, width, room)
        if not head or not tail:
            return None
        again = self.blocks[0].again()
        return replace(self, blocks=head), replace(self, blocks=tail if again is None else (again, *tail))

    def draw(self, page: Page, x: float, top: float, width: float) -> None:
        """Draw its blocks one under another."""
        draw_stack(page, self.blocks, x, top, width)


@dataclass(frozen=True)
class Bar(Block):
    """A block with a short ink bar in the margin beside its first line: "this is the one"."""

    block: Block
    before: float = 0.0

    def height(self, width: float) -> float:
        """Return the height of its block."""
        return self.block.height(width)

    def draw(self, page: Page, x: float, top: float, width: float) -> None:
        """Draw the block and the bar."""
        self.block.draw(page, x, top, width)
        # Printers leave the edge of a small sheet white.
        aside = max(1.3 * BAR, min(3 * BAR, page.paper.left - UNPRINTED))
        page.box(x - aside, top - page.paper.body.leading, BAR, page.paper.body.leading, "ink")


BAR: Final = 3.1
"""Width in points of the bar beside the progression in force: 1.1 mm."""


@dataclass(frozen=True)
class Columns(Block):
    """Columns of blocks side by side, each with its share of the width; never divided between pages by itself."""

    columns: tuple[tuple[Block, ...], ...]
    gutter: float
    before: float = 0.0
    shares: tuple[float, ...] = ()

    def widths(self, width: float) -> tuple[float, ...]:
        """Return the width of each column."""
        free = width - self.gutter * (len(self.columns) - 1)
        shares = self.shares or (1.0,) * len(self.columns)
        return tuple(free * share / sum(shares) for share in shares)

    def height(self, width: float) -> float:
        """Return the height of the tallest column."""
        pairs = zip(self.columns, self.widths(width), strict=True)
        return max((stacked(blocks, wide) for blocks, wide in pairs), default=0.0)

    def split(self, width: float, room: float) -> tuple[Block, Block] | None:
        """Divide each column where it reaches the end of the room."""
        heads, tails = [], []
        for blocks, wide in zip(self.columns, self.widths(width), strict=True):
            head, tail = taken(blocks, wide, room)
            heads.append(head)
            tails.append(tail)
        if not any(heads) or not any(tails):
            return None
        return replace(self, columns=tuple(heads)), replace(self, columns=tuple(tails), before=0.0)

    def draw(self, page: Page, x: float, top: float, width: float) -> None:
        """Draw the columns beside each other."""
        for blocks, wide in zip(self.columns, self.widths(width), strict=True):
            draw_stack(page, blocks, x, top, wide)
            x += wide + self.gutter


@dataclass(frozen=True)
class Balanced(Block):
    """Blocks in two columns of about the same height, read down the first and then down the second."""

    blocks: tuple[Block, ...]
    gutter: float
    before: float = 0.0
    _columns: dict[float, Columns] = field(default_factory=dict, repr=False, compare=False)

    def columns(self, width: float) -> Columns:
        """Return the two columns in which they are balanced at this width."""
        if width not in self._columns:
            self._columns[width] = self._divided(width)
        return self._columns[width]

    def _divided(self, width: float) -> Columns:
        half = (width - self.gutter) / 2
        whole = stacked(self.blocks, half)
        height = whole / 2
        while True:
            first, second = taken(self.blocks, half, height)
            if stacked(second, half) <= height or height >= whole:
                break
            height += 4.0
        # Rather the first column a little longer than the second: what is read first leaves no hole.
        least = max(stacked(first, half), stacked(second, half))
        later = taken(self.blocks, half, least + _LONGER)
        fuller = stacked(first, half) < stacked(second, half) and stacked(later[1], half) <= least + _LONGER
        if fuller:
            first, second = later
        return Columns(self._undivided(half, least + _WHOLE) or (first, second), self.gutter)

    def _undivided(self, half: float, most: float) -> tuple[tuple[Block, ...], tuple[Block, ...]] | None:
        """Return the two columns with no block divided and neither higher than ``most``, the most even of such; else None."""
        ways = [(self.blocks[:count], self.blocks[count:]) for count in range(1, len(self.blocks))]
        heights = {way: tuple(stacked(column, half) for column in way) for way in ways if not way[0][-1].keep_with_next}
        even = min(heights, key=lambda way: max(heights[way]), default=None)
        return even if even is not None and max(heights[even]) <= most else None

    def height(self, width: float) -> float:
        """Return the height of the taller column."""
        return self.columns(width).height(width)

    def split(self, width: float, room: float) -> tuple[Block, Block] | None:
        """Fill both columns to the end of the room and leave what is left, to be balanced again."""
        half = (width - self.gutter) / 2
        first, rest = taken(self.blocks, half, room, dividing=True)
        second, rest = taken(rest, half, room, dividing=True)
        if not first:
            return None
        # With short groups divided all of it may fit, although balanced it did not: then nothing is left.
        return Columns((first, second), self.gutter, self.before), replace(self, blocks=rest, _columns={})

    def draw(self, page: Page, x: float, top: float, width: float) -> None:
        """Draw the two columns."""
        self.columns(width).draw(page, x, top, width)


_LONGER: Final = 13.0
"""By how much a first column may be longer than two balanced ones would be, in points: about a line."""
_WHOLE: Final = 48.0
"""The same of either column, where no section is then divided: about four lines."""


def stacked(blocks: Sequence[Block], width: float) -> float:
    """Return the height of ``blocks`` one under another."""
    return sum(block.height(width) + (block.before if number else 0) for number, block in enumerate(blocks))


def draw_stack(page: Page, blocks: Sequence[Block], x: float, top: float, width: float) -> float:
    """Draw ``blocks`` one under another from ``top`` down and return where the last one ends."""
    for number, block in enumerate(blocks):
        top -= block.before if number else 0
        block.draw(page, x, top, width)
        top -= block.height(width)
    return top


HOLE: Final = 62.0
"""Height in points, about five lines, from which even a short group may be divided rather than leave that empty."""


def taken(
    blocks: Sequence[Block], width: float, room: float, *, dividing: bool = False
) -> tuple[tuple[Block, ...], tuple[Block, ...]]:
    """Return the blocks that fit into a column of this width and room, and those that are left.

    A block that is kept with the next one goes with it; one that can be divided is, and where ``dividing`` so is a short
    group that would leave a hole.
    """
    used = 0.0
    fitting: list[Block] = []
    rest = list(blocks)
    while rest:
        block = rest[0]
        need = block.height(width) + (block.before if fitting else 0)
        if used + need <= room + 0.01:
            fitting.append(rest.pop(0))
            used += need
            continue
        free = room - used - (block.before if fitting else 0)
        if dividing and isinstance(block, Group) and not block.whole and free > HOLE:
            block = replace(block, long=0.0)
        parts = block.split(width, free)
        if parts is not None:
            fitting.append(parts[0])
            rest[:1] = [] if isinstance(parts[1], Balanced) and not parts[1].blocks else [parts[1]]
        break
    if rest:
        while fitting and fitting[-1].keep_with_next:
            rest.insert(0, fitting.pop())
    return tuple(fitting), tuple(rest)
