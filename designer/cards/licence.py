"""The licence line of a brand on a card: on its last side above the foot, below it, or in it in the owner's place."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Final

from designer.cards.blocks import Rules, stacked
from designer.cards.layout import Placed, Side
from designer.cards.page import Page
from designer.cards.papers import UNPRINTED, Paper
from designer.cards.text import Typesetter
from designer.drawing.words import text_width

_LEAST_LINES: Final = 3
"""Lines to write on give one of them away where there are as many."""
_ABOVE: Final = 4.0


@dataclass(frozen=True, slots=True)
class Licensed:
    """The sides of a card with its licence in ``lines`` on the last, the first of them on the base line ``base``.

    ``in_foot`` is the licence where the foot has it in place of the owner's name. ``missing`` points more at the foot of
    every side would have made room, 0 where it is placed.
    """

    sides: tuple[Side, ...]
    lines: tuple[str, ...] = ()
    base: float = 0.0
    in_foot: str = ""
    missing: float = 0.0
    notice: str = ""

    def draw(self, page: Page) -> None:
        """Draw the licence on ``page``, the last side."""
        type_ = page.paper.footer
        for place, line in enumerate(self.lines):
            page.write(line, page.paper.left, self.base - place * type_.leading, type_, "soft")


def licensed(sides: Sequence[Side], paper: Paper, licence: str, typesetter: Typesetter, *, foot: float) -> Licensed:
    """Return ``sides`` with the ``licence`` on the last.

    ``foot`` is the width in points that the last side's foot has for it, its owner's name left out. Where there is no
    room as the sides are, ``missing`` says how much is. Where it is too long for a card, the card says that there is one
    and the notice says so.
    """
    words = " ".join(licence.split())
    if not words:
        return Licensed(tuple(sides))
    type_ = paper.footer
    lines = typesetter.lines(words, type_, paper.inner)
    if len(lines) > _USUAL:
        return replace(licensed(sides, paper, _ASK, typesetter, foot=foot), notice=_TOO_LONG)
    floor = paper.bottom + type_.leading * (1 + len(lines)) + _ABOVE
    first = floor - type_.size
    if (found := _with_room(sides, floor)) is not None:
        return Licensed(found, lines, first)
    below = paper.bottom + 1 - type_.leading
    if len(lines) == 1 and below >= UNPRINTED:
        return Licensed(tuple(sides), lines, below)
    if len(lines) == 1 and text_width(typesetter.clean(words), type_.size) <= foot:
        return Licensed(tuple(sides), in_foot=words)
    return Licensed(tuple(sides), missing=floor - paper.bottom - type_.leading - 6)


_USUAL: Final = 6
"""Lines of a licence that room is made for, if need be on a side more."""
_ASK: Final = "Under the owner’s licence: ask for it before you copy this card."
_TOO_LONG: Final = f"The brand’s licence is too long for this card, which says “{_ASK}” in its place."


def _with_room(sides: Sequence[Side], floor: float) -> tuple[Side, ...] | None:
    """Return ``sides``, the last ending above ``floor``, None where it does not even with a line to write on less."""
    *before, last = sides
    for side in (last, tuple(_with_a_line_less(placed, floor) for placed in last)):
        if all(_end(placed) >= floor for placed in side if placed.blocks):
            return (*before, side)
    return None


def _end(placed: Placed) -> float:
    return placed.top - stacked(placed.blocks, placed.width)


def _with_a_line_less(placed: Placed, floor: float) -> Placed:
    final = placed.blocks[-1] if placed.blocks else None
    if _end(placed) >= floor or not isinstance(final, Rules) or final.count < _LEAST_LINES:
        return placed
    return replace(placed, blocks=(*placed.blocks[:-1], replace(final, count=final.count - 1)))
