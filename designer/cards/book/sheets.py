"""The sheets of one drill of a handbook: its card for a stand-in, its other progressions, its state and its like."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING, Final

from designer.cards.blocks import Block, Columns, Drawn, Row, Rules, stacked
from designer.cards.book.binding import LICENCE_ELSEWHERE
from designer.cards.book.front import STATES, day
from designer.cards.book.leaf import Leaf
from designer.cards.book.rows import drill_key
from designer.cards.card import Maker, lacking, refuse_declined
from designer.cards.cautions import with_dangers
from designer.cards.layout import Placed, Side
from designer.cards.logo import Logo
from designer.cards.page import Page
from designer.cards.papers import COURT_RATIO, MM, Paper, Type
from designer.cards.text import Typesetter
from designer.drawing.themes import Theme
from designer.drawing.words import text_width
from designer.drill.brand import Brand
from designer.drill.drill import Drill
from designer.drill.setting import At, main_setting
from designer.wording.card import card_words, setting_name
from designer.wording.spoken import spoken
from designer.wording.vocabulary import Vocabulary

if TYPE_CHECKING:
    from reportlab.pdfgen.canvas import Canvas

    from designer.drawing.picture import Picture

FOOT: Final = Type(8, 10)
FOOT_ROOM: Final = 19 * MM
"""Room at the foot of a drill's sheets: below the card's own foot its state, and the drills that are like it."""

_SMALL: Final = Type(8.4, 10.6, bold=True)
_NARROWEST: Final = 56.0
"""Width in points under which a court without words says nothing."""
_WIDEST: Final = 130.0
_SPACE: Final = 10.0
_LARGE: Final = 100.0
"""Width in points from which a court's marks are as large as on a card."""
_UNIT: Final = 0.9
"""Points of their mark unit: the letters of people are then over 8 pt."""
_WELL: Final = 110.0
"""Width in points from which a court of a side of its own shows all that is drawn on it."""
_LEAST_NOTES: Final = 3
"""Lines to write on that are worth a heading."""


@dataclass(frozen=True, slots=True)
class Made:
    """A card of one setting that is laid out: ``draw`` its sides one by one.

    ``words`` is all that it says; ``name`` what the setting is called, "" for the main one.
    """

    maker: Maker
    sides: tuple[Side, ...]
    paper: Paper
    words: str
    name: str = ""

    def notices(self) -> tuple[str, ...]:
        """Return sentences about what could not be printed as it was written; complete once all sides are drawn."""
        return lacking(self.maker.drill, self.maker.typesetter) if self.maker.typesetter.lacking() else ()

    def draw(self, canvas: Canvas, number: int) -> None:
        """Draw side ``number`` on the canvas's page."""
        self.maker.draw_side(canvas, self.sides, number, self.paper)


@dataclass(frozen=True, slots=True)
class Sheets:
    """Makes the cards of a book's drills, all in one way."""

    paper: Paper
    theme: Theme
    brand: Brand | None
    logo: Logo | None
    vocabulary: Vocabulary

    def cards(self, leaf: Leaf) -> Iterator[Made]:
        """Yield the cards that are printed of a drill: its main progression, with ``prints`` the others after it."""
        assert leaf.read is not None
        drill = leaf.read()
        main = main_setting(drill)
        first = self._card(drill, main)
        if leaf.entry.prints == "first sheet":
            yield replace(first, sides=first.sides[:1])
            return
        yield self._with_courts(first, drill)
        if leaf.entry.prints == "every progression":
            others = (At(one.id) for one in drill.progressions if one.id != main.progression)
            yield from (replace(self._card(drill, at), name=setting_name(drill, at)) for at in others)

    def _card(self, drill: Drill, at: At) -> Made:
        with spoken(self.vocabulary.said):
            return self._set(drill, at)

    def _set(self, drill: Drill, at: At) -> Made:
        words = self.vocabulary.card(with_dangers(card_words(drill, at, "stand-in"), drill, at))
        # A typesetter keeps what it has broken into lines: one for each card, so that a long book keeps none of it.
        maker = Maker(drill, at, words, "stand-in", None, self.theme, Typesetter(), self.brand, self.logo, grey=False)
        sides, paper = maker.sides(replace(self.paper, mirrored=False))
        refuse_declined(drill, maker.typesetter)
        sides = sides[:-1] if len(sides) > 1 and _is_spare(sides[-1]) else sides
        sentences = (sentence.text for section in words.sections for sentence in section.sentences)
        return Made(maker, sides, paper, " ".join((words.title, words.objective, *sentences)))

    def _with_courts(self, made: Made, drill: Drill) -> Made:
        """Return ``made`` with a small court of each progression: under its last side, else on a side more."""
        if len(drill.progressions) < 2:
            return made
        if len(made.sides) > 1 and made.sides[-1][-1].blocks:
            for kept in _KEPT_LINES:
                if under := self._under_last(made, drill, kept):
                    return under
        return replace(made, sides=(*made.sides, self._side_of_courts(made, drill)))

    def _under_last(self, made: Made, drill: Drill, kept: int) -> Made | None:
        """Return ``made`` with the courts under ``kept`` ruled lines of its last side, None where they would say nothing."""
        *before, last = made.sides
        paper, count = made.paper, len(drill.progressions)
        last, end = _without_spare_lines(last, kept)
        floor = paper.bottom + paper.footer.leading + 8
        room = end - floor - 2 * _SPACE - _SMALL.leading
        wide = min(_WIDEST, (paper.inner - (count - 1) * _SPACE) / count, room / COURT_RATIO)
        if wide < _NARROWEST:
            return None
        row = self._row(drill, [At(one.id) for one in drill.progressions], wide, made.maker.typesetter)
        whole = count * wide + (count - 1) * _SPACE
        top = floor + row.height(whole)
        lines = kept + max(0, min(6, int((end - top - _SPACE) / paper.note_lines)))
        return replace(made, sides=(*before, (*_with_lines(last, lines), Placed(paper.left, top, whole, (row,)))))

    def _side_of_courts(self, made: Made, drill: Drill) -> Side:
        """Return a side with the courts as large as there is room for all, in even rows, and lines to write on under them."""
        paper, typesetter = made.paper, made.maker.typesetter
        room = made.maker.room(paper)
        ways = [At(one.id) for one in drill.progressions]
        heading = self._heading("Progressions", paper, typesetter)
        tall = room.next_top - room.bottom - heading.height(paper.inner)
        across, wide = _arranged(len(ways), paper.inner, tall)
        rows = (ways[start : start + across] for start in range(0, len(ways), across))
        whole = tuple(replace(self._row(drill, row, wide, typesetter, across), before=_SPACE) for row in rows)
        placed = Placed(paper.left, room.next_top, across * (wide + _SPACE) - _SPACE, (heading, *whole))
        end = placed.top - stacked(placed.blocks, placed.width) - 2 * _SPACE
        notes = self._heading("Notes", paper, typesetter)
        count = int((end - room.bottom - notes.height(paper.inner)) / paper.note_lines)
        if count < _LEAST_NOTES:
            return (placed,)
        return (placed, Placed(paper.left, end, paper.inner, (notes, Rules(count, paper.note_lines, before=1.2))))

    def _heading(self, words: str, paper: Paper, typesetter: Typesetter) -> Row:
        return Row(self.vocabulary.said(words), paper.heading, typesetter, colour="brand", keep_with_next=True)

    def _row(self, drill: Drill, ways: Sequence[At], wide: float, typesetter: Typesetter, across: int = 0) -> Columns:
        """Return the courts of ``ways`` side by side, with room for ``across`` where there are fewer."""
        courts = [self._small(drill, at, wide, typesetter) for at in ways]
        empty: list[tuple[Block, ...]] = [()] * (across - len(courts))
        return Columns((*courts, *empty), _SPACE, before=4.0)

    def _small(self, drill: Drill, at: At, wide: float, typesetter: Typesetter) -> tuple[Block, ...]:
        from designer.drawing.pdf import draw as draw_picture

        name = Row(self.vocabulary.written(setting_name(drill, at)), _SMALL, typesetter)
        shown = self._shown(drill, at, wide)
        left, low, right, high = shown.extent
        scale = wide / (right - left)
        tall = (high - low) * scale

        def draw(page: Page, x: float, top: float, _: float) -> None:
            draw_picture(page.canvas, shown, self.theme, x, top - tall, scale)

        return (Drawn(tall, draw), replace(name, before=4))

    def _shown(self, drill: Drill, at: At, wide: float) -> Picture:
        """Return the court without words, its marks as large as on a card where it is wide enough for them."""
        from designer.court.standards import ground
        from designer.drawing.picture import picture, thumbnail

        if wide < _LARGE:
            return thumbnail(drill, at, theme=self.theme, width=wide)
        return picture(drill, at, unit=_UNIT * 2 * ground(drill.court).side_fence / wide, theme=self.theme, words=False)


def _arranged(count: int, width: float, tall: float) -> tuple[int, float]:
    """Return how many of ``count`` courts stand side by side, and how wide each is in the ``width`` and height there is.

    They stand in as few rows as show them well, else as large as they can be; no row is much shorter than another.
    """
    best = (1, 0.0)
    for rows in range(1, count + 1):
        across = -(-count // rows)
        high = tall / rows - _SPACE - 2 * _SMALL.leading - 4
        wide = min((width - (across - 1) * _SPACE) / across, high / COURT_RATIO)
        if wide > 1.1 * best[1]:
            best = (across, wide)
        if wide >= _WELL:
            break
    return best


def _is_spare(side: Side) -> bool:
    """Whether a side has nothing but lines to write on: in a book they are no leaf of their own."""
    return all(isinstance(block, Rules) or block.keep_with_next for placed in side for block in placed.blocks)


_KEPT_LINES: Final = (2, 1, 0)
"""Lines to write on that give no room to small courts: as wished, fewer, and none with no heading over them either."""


def _without_spare_lines(side: Side, kept: int) -> tuple[Side, float]:
    """Return ``side`` without the ruled lines at its end, and the height at which it ends with ``kept`` of them."""
    placed = side[-1]
    blocks = placed.blocks[:-1] if isinstance(placed.blocks[-1], Rules) else placed.blocks
    if not kept and blocks and blocks[-1].keep_with_next:
        blocks = blocks[:-1]
    side = (*side[:-1], replace(placed, blocks=blocks))
    ends = (one.top - stacked(one.blocks, one.width) for one in side if one.blocks)
    lines = placed.blocks[-1].pitch * kept if isinstance(placed.blocks[-1], Rules) else 0.0
    return side, min(ends, default=placed.top) - lines


def _with_lines(side: Side, count: int) -> Side:
    """Return ``side`` ended by ``count`` ruled lines, where it ends with a heading for them."""
    placed = side[-1]
    if not placed.blocks or not placed.blocks[-1].keep_with_next:
        return side
    lines = Rules(count, 8 * MM, before=1.2)
    return (*side[:-1], replace(placed, blocks=(*placed.blocks, lines)))


def draw_licence(page: Page, licence: str, taken: float = 0.0) -> None:
    """Draw the licence line below a card's own foot, at the right, or where it stands; ``taken`` points are from the left."""
    if not licence.strip():
        return
    for words in (page.typesetter.clean(" ".join(licence.split())), LICENCE_ELSEWHERE):
        if taken + 14 + text_width(words, FOOT.size) <= page.paper.inner:
            page.write_right(words, page.paper.left + page.paper.inner, page.paper.bottom - 13, FOOT, "soft")
            return


def draw_foot(page: Page, leaf: Leaf, like: Sequence[str], titles: Mapping[str, str], licence: str = "") -> None:
    """Draw, below a card's own foot, the drill's state, the licence, and which drills to look at as well, each a link."""
    paper = page.paper
    base = paper.bottom - 13
    room = paper.inner - (14 + text_width(LICENCE_ELSEWHERE, FOOT.size) if licence else 0.0)
    end = page.write(page.typesetter.on_one_line(state_words(leaf), FOOT, room), paper.left, base, FOOT, "soft")
    draw_licence(page, licence, end - paper.left)
    if not like:
        return
    base -= FOOT.leading + 1
    x = page.write("See also  ", paper.left, base, FOOT, "soft")
    right = paper.left + paper.inner
    for number in like:
        words = f"{number} {titles[number]}"
        wide = text_width(page.typesetter.clean(words), FOOT.size)
        if x + wide > right:
            words = number
            wide = text_width(words, FOOT.size)
        if x + wide > right:
            return
        page.write(words, x, base, FOOT)
        box = (x, base - 2, x + wide, base + FOOT.size)
        page.canvas.linkRect("", drill_key(number), box, relative=1, thickness=0)
        x += wide + 12


def state_words(leaf: Leaf) -> str:
    """Return the state of a drill in words: "Approved by Ines Vale, 3 November 2026"."""
    entry = leaf.entry
    by = f" by {entry.by}" if entry.by else ""
    when = f", {day(entry.on)}" if entry.on else ""
    stale = "; the drill has changed since" if leaf.is_stale else ""
    return f"{STATES[entry.state]}{by}{when}{stale}"
