"""How full a card is: how many sides it takes and how much of the last one, without setting its PDF."""

from __future__ import annotations

from dataclasses import dataclass

from designer.cards.blocks import Block, Rules, stacked
from designer.cards.card import Maker
from designer.cards.cautions import with_dangers
from designer.cards.contents import NOTES
from designer.cards.layout import Placed, Room, Side
from designer.cards.papers import POSTERS, chosen_paper
from designer.cards.pieces import Heading
from designer.cards.text import Typesetter
from designer.drawing.themes import theme
from designer.drill.drill import Drill
from designer.drill.setting import At
from designer.wording.card import Reader, card_words
from designer.wording.units import Units


@dataclass(frozen=True, slots=True)
class Fullness:
    """The number of sides of a card, and the share of the last one's height that is taken, lines to write on left out."""

    sides: int
    last: float


def fullness(
    drill: Drill,
    at: At,
    *,
    paper: str = "a5",
    reader: Reader = "player",
    player: str | None = None,
    units: Units = "rackets",
    large_print: bool = False,
) -> Fullness | None:
    """Return how full the card is, None for a poster, which says no more than its title and score.

    Raises ``KeyError`` as ``make_card`` does. It takes as long as laying the card out: some hundredths of a second.
    """
    if paper in POSTERS:
        return None
    sheet = chosen_paper(paper, large_print=large_print)
    words = with_dangers(card_words(drill, at, reader, player=player, units=units), drill, at)
    made = Maker(drill, at, words, reader, player, theme("paper"), Typesetter(), None, None, grey=False, units=units)
    sides, _ = made.sides(sheet)
    return Fullness(len(sides), _taken(sides[-1], made.room(sheet), len(sides) - 1))


def _taken(side: Side, room: Room, number: int) -> float:
    top = room.first_top if number == 0 else room.next_top
    lowest = min((placed.top - stacked(_said(placed), placed.width) for placed in side), default=top)
    return min(1.0, max(0.0, (top - lowest) / room.height(number)))


def _said(placed: Placed) -> tuple[Block, ...]:
    """Return the blocks without the lines to write on at their end, which fill what is left."""
    blocks = list(placed.blocks)
    while blocks and (isinstance(blocks[-1], Rules) or (isinstance(blocks[-1], Heading) and blocks[-1].text == NOTES)):
        blocks.pop()
    return tuple(blocks)
