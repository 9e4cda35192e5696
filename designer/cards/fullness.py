"""How full a card is: how many sides it takes and how much of the last one, without setting its PDF."""

from __future__ import annotations

from dataclasses import dataclass

from designer.cards.blocks import Block, Rules, stacked
from designer.cards.card import Maker, led_to, usable_logo
from designer.cards.cautions import with_dangers
from designer.cards.contents import NOTES
from designer.cards.layout import Placed, Room, Side
from designer.cards.papers import POSTERS, chosen_paper
from designer.cards.pieces import Heading
from designer.cards.text import Typesetter
from designer.cards.typeface import own_faces
from designer.drawing.themes import theme
from designer.drawing.words import set_in
from designer.drill.brand import Brand
from designer.drill.drill import Drill
from designer.drill.setting import At
from designer.wording.card import Reader, card_words
from designer.wording.units import Units


@dataclass(frozen=True, slots=True)
class Fullness:
    """The number of sides of a card, and the share of the last one that is taken, lines to write on left out."""

    sides: int
    last: float


def fullness(  # noqa: PLR0913  keywords, those choices of `make_card` that room hangs on
    drill: Drill,
    at: At,
    *,
    paper: str = "a5",
    reader: Reader = "player",
    player: str | None = None,
    units: Units = "rackets",
    large_print: bool = False,
    brand: Brand | None = None,
    logo: str | bytes | None = None,
    typeface: tuple[bytes, bytes | None] | None = None,
) -> Fullness | None:
    """Return how full the card is, None for a poster, which says no more than its title and score.

    Raises ``KeyError`` as ``make_card`` does. It takes as long as laying the card out: some hundredths of a second.
    """
    if paper in POSTERS:
        return None
    sheet = chosen_paper(paper, large_print=large_print)
    words = with_dangers(card_words(drill, at, reader, player=player, units=units), drill, at)
    mark, _ = usable_logo(logo)
    look, leads = theme("paper"), led_to(None, brand)
    with set_in(own_faces(typeface)[0]):
        made = Maker(drill, at, words, reader, player, look, Typesetter(), brand, mark, False, units, leads)
        sides = made.licensed_sides(sheet)[0].sides
        return Fullness(len(sides), _taken(sides[-1], made.room(sheet), len(sides) - 1))


def _taken(side: Side, room: Room, number: int) -> float:
    """Return how much of the area of a side's columns has something in it."""
    paper, height = room.paper, room.height(number)
    gutter = paper.gutter * height if number == 0 and paper.layout == "beside" else 0.0
    used = sum(stacked(_said(placed), placed.width) * placed.width for placed in side)
    return min(1.0, max(0.0, used / (paper.inner * height - gutter)))


def _said(placed: Placed) -> tuple[Block, ...]:
    """Return the blocks without the lines to write on at their end, which fill what is left."""
    blocks = list(placed.blocks)
    while blocks and (isinstance(blocks[-1], Rules) or (isinstance(blocks[-1], Heading) and blocks[-1].text == NOTES)):
        blocks.pop()
    return tuple(blocks)
