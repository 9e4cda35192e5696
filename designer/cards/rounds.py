"""Who plays where and with whom in each round of a player's own, with a box for the points of each."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final

from designer.cards.blocks import Block
from designer.cards.page import Page
from designer.cards.papers import Type
from designer.cards.text import Typesetter, widest
from designer.drawing.words import CAP_HEIGHT, text_width
from designer.wording.turns import OwnRounds


@dataclass(frozen=True)
class RoundTable(Block):
    """A column a round: its number, one's place where it changes, one's partner and a box to write points in."""

    own: OwnRounds
    type_: Type
    typesetter: Typesetter
    before: float = 0.0

    @property
    def rows(self) -> tuple[tuple[str, tuple[str, ...]], ...]:
        """The rows of words: what each is called, and its cell for each round."""
        numbers = tuple(str(number) for number in range(1, len(self.own.places) + 1))
        partners = (("With", self.own.partners),) if any(self.own.partners) else ()
        places = (("You are", self.own.places),) if self.own.moves else ()
        return (("Round", numbers), *places, *partners)

    @property
    def words(self) -> float:
        """Width in points that the names of the rows take."""
        return widest((*(name for name, _ in self.rows), _POINTS), self.type_) + 8

    def cell(self, width: float) -> float:
        """Return the width of a column: as much as the rounds of one line leave, within what is good to write in."""
        every = widest((text for _, cells in self.rows for text in cells), self.type_) + 4
        room = (width - self.words) / min(len(self.own.places), self.columns(width))
        return max(every, min(_WIDEST, room))

    def columns(self, width: float) -> int:
        """Return how many rounds stand beside each other at most."""
        least = max(_NARROWEST, widest((text for _, cells in self.rows for text in cells), self.type_) + 4)
        return max(1, int((width - self.words) / least))

    def stretches(self, width: float) -> Iterator[slice]:
        """Yield the rounds of each line of the table."""
        count = len(self.own.places)
        lines = -(-count // self.columns(width))
        even = -(-count // lines)
        for start in range(0, count, even):
            yield slice(start, min(count, start + even))

    @property
    def pitch(self) -> float:
        """The height of a row of words."""
        return 1.05 * self.type_.leading

    @property
    def box(self) -> float:
        """The height of a box to write in."""
        return max(15.0, 1.5 * self.type_.leading)

    def height(self, width: float) -> float:
        """Return the height of all lines of the table."""
        return len(tuple(self.stretches(width))) * (len(self.rows) * self.pitch + self.box + _UNDER)

    def draw(self, page: Page, x: float, top: float, width: float) -> None:
        """Draw the names of the rows, the letters of each round and the boxes."""
        cell, bold = self.cell(width), Type(self.type_.size, self.type_.leading, bold=True)
        rise = CAP_HEIGHT * self.type_.size / 2
        for rounds in self.stretches(width):
            for name, cells in self.rows:
                base = top - self.pitch / 2 - rise
                page.write(name, x, base, self.type_, "soft" if name == "Round" else "ink")
                for number, text in enumerate(cells[rounds]):
                    shown = self.typesetter.clean(text)
                    look = bold if name == "You are" else self.type_
                    middle = x + self.words + (number + 0.5) * cell
                    left = middle - text_width(shown, look.size, look.bold) / 2
                    page.write(shown, left, base, look, "soft" if name == "Round" else "ink")
                top -= self.pitch
            page.write(_POINTS, x, top - self.box / 2 - rise, self.type_)
            for number in range(rounds.stop - rounds.start):
                left = x + self.words + number * cell
                page.frame(left + 1, top - self.box, cell - 2, self.box, weight=0.6, colour="soft")
            top -= self.box + _UNDER


_POINTS: Final = "Points"
_WIDEST: Final = 34.0
_NARROWEST: Final = 17.0
"""Widths in points of a box for one number."""
_UNDER: Final = 4.0
