"""What a player writes on: boxes to tick for each start, boxes for scores, today's goal and the best so far."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Final

from designer.cards.blocks import Block, Row
from designer.cards.page import Page
from designer.cards.papers import Type
from designer.cards.pieces import Pieces
from designer.cards.rounds import RoundTable
from designer.cards.text import Typesetter, widest
from designer.drawing.words import CAP_HEIGHT, text_width
from designer.drill.drill import Drill
from designer.drill.rules import Finish
from designer.drill.setting import At, progression_at, setting_at, variations
from designer.wording.finishes import finish
from designer.wording.telling import telling
from designer.wording.turns import OwnRounds, own_rounds, rounds_told
from designer.wording.units import Units

SCORE: Final = "Score"
ROUNDS_AND_SCORE: Final = "Rounds and score"
"""The heading over the boxes, and where a table of the rounds stands with them: the swap sends there, the foot names it."""
GAMES: Final = 5
"""How many games there is room to write down."""
MOST_TICKS: Final = 40
"""More starts than this are not ticked one by one."""


@dataclass(frozen=True)
class Boxes(Block):
    """Rows of empty boxes, each row behind its words: ``rows`` are (words, how many). Five stand together."""

    rows: tuple[tuple[str, int], ...]
    side: float
    type_: Type
    typesetter: Typesetter
    wide: float = 1.0
    before: float = 0.0

    @property
    def words(self) -> float:
        """Width in points that the words of all rows take."""
        return widest((self.typesetter.clean(text) for text, _ in self.rows), self.type_) + 8

    def size(self, width: float) -> float:
        """Return the side of one box: as wished, but so that ten stand on a line, and never too small to write in."""
        ten = (width - self.words - 2 * _APART) / 10 - _GAP
        return self.side if self.wide > 1 else max(_SMALLEST, min(self.side, ten))

    def places(self, count: int, width: float) -> Iterator[tuple[float, int]]:
        """Yield (how far from the left, which line) of each of ``count`` boxes."""
        across, line, side = self.words, 0, self.size(width) * self.wide
        fives = -(-count // 5)
        room = max(1, int((width - self.words + _GAP + _APART + 0.01) / (5 * (side + _GAP) + _APART)))
        even = -(-fives // -(-fives // room)) if fives else 1
        for number in range(count):
            five = min(5, count - number) if number % 5 == 0 else 1
            full = number % (5 * even) == 0
            if number and (full or across + five * (side + _GAP) - _GAP > width + 0.01):
                across, line = self.words, line + 1
            yield across, line
            across += side + _GAP + (_APART if number % 5 == 4 else 0.0)

    def lines(self, count: int, width: float) -> int:
        """Return how many lines ``count`` boxes take."""
        return max((line for _, line in self.places(count, width)), default=0) + 1

    def height(self, width: float) -> float:
        """Return the height of all rows."""
        return sum(self.lines(count, width) for _, count in self.rows) * (self.size(width) + _GAP)

    def split(self, width: float, room: float) -> tuple[Block, Block] | None:  # noqa: ARG002
        """Rows of one score are never parted."""
        return None

    def draw(self, page: Page, x: float, top: float, width: float) -> None:
        """Draw words and boxes."""
        side = self.size(width)
        pitch = side + _GAP
        for text, count in self.rows:
            base = top - side / 2 - CAP_HEIGHT * self.type_.size / 2
            page.write(text, x, base, self.type_)
            for across, line in self.places(count, width):
                low = top - line * pitch - side
                page.frame(x + across, low, side * self.wide, side, weight=0.6, colour="soft")
            top -= self.lines(count, width) * pitch


@dataclass(frozen=True)
class Blanks(Block):
    """Words with an empty box behind each, as many to a line as there is room for."""

    words: tuple[str, ...]
    type_: Type
    typesetter: Typesetter
    before: float = 0.0

    def rows(self, width: float) -> tuple[tuple[str, ...], ...]:
        """Return the words by lines: as many on each as leave boxes wide enough to write in."""
        for count in range(len(self.words), 0, -1):
            rows = tuple(self.words[start : start + count] for start in range(0, len(self.words), count))
            if count == 1 or all(self._box(row, width) >= _LEAST_BLANK for row in rows):
                return rows
        return ()

    def _box(self, row: Sequence[str], width: float) -> float:
        """Return how wide each box of a line is: what its words leave, the same for each."""
        taken = sum(text_width(self.typesetter.clean(text), self.type_.size) + 5 for text in row)
        return (width - taken - 10 * (len(row) - 1)) / len(row)

    def height(self, width: float) -> float:
        """Return the height of its lines."""
        return len(self.rows(width)) * _BLANK

    def draw(self, page: Page, x: float, top: float, width: float) -> None:
        """Draw words and boxes; the boxes of a line share what the words leave."""
        for number, row in enumerate(self.rows(width), 1):
            left, low, box = x, top - number * _BLANK + 3, self._box(row, width)
            for text in row:
                end = page.write(text, left, low + 5, self.type_) + 5
                page.frame(end, low, box, _BLANK - 4, weight=0.6, colour="soft")
                left = end + box + 10


_GAP: Final = 3.0
_APART: Final = 4.0
"""Further space in points after each fifth box, so that they are counted at a glance."""
_SMALLEST: Final = 9.0
_BLANK: Final = 21.0
"""Height in points of a line with boxes to write in: 7 mm, so that a dry marker fits."""
_LEAST_BLANK: Final = 34.0


def score_blocks(drill: Drill, at: At, pieces: Pieces, *, player: str | None, units: Units) -> tuple[Block, ...]:
    """Return the goal for each level, what is scored, today's goal and the best so far, for a player's card."""
    type_, typesetter = pieces.paper.body, pieces.typesetter
    end = setting_at(drill, at).finish
    own = _own_rounds(drill, at, player)
    blocks: list[Block] = [pieces.heading(SCORE if own is None else ROUNDS_AND_SCORE, before=8.0)]
    for name, text in goals(drill, at, player=player, units=units):
        lead = pieces.strong(name)
        blocks.append(Row(text, type_, typesetter, lead=lead, hang=lead.width + 5, before=1.2))
    side = 12.5 * pieces.paper.scale
    rows, told_first = _rows(drill, at, end, player)
    if own is not None:
        blocks.append(Row(_OF_ROUNDS, type_, typesetter, before=1.2))
        blocks.append(RoundTable(own, type_, typesetter, before=2.0))
    if own is None or not told_first:
        if told_first:
            blocks.append(Row(told_first, type_, typesetter, before=1.2))
        blocks.append(Boxes(rows, side, type_, typesetter, wide=2.0 if told_first else 1.0, before=4.0))
    if not told_first and end is not None and end.kind == "goal" and 1 < end.rounds <= _MOST_ROUNDS:
        blocks.append(Boxes((("Total of each round", end.rounds),), side, type_, typesetter, wide=2.0))
    blocks.append(Blanks(("Goal today", "Best so far", "on"), type_, typesetter, before=2.0))
    return tuple(blocks)


Rows = tuple[tuple[str, int], ...]
"""Lines of boxes: whose, and how many."""


def _rows(drill: Drill, at: At, end: Finish | None, player: str | None) -> tuple[Rows, str]:
    """Return the lines of boxes, and what is written into one: "" for a tick at each start, where these are counted."""
    together = end is not None and end.scores == "all together"
    if end is not None and end.starts is not None and end.starts <= MOST_TICKS:
        if end.kind == "goal" or together:
            return (("Done", end.starts),), ""
        return tuple((name, end.starts) for name in _scorers(drill, at, player)), ""
    if end is not None and 1 < end.rounds <= _MOST_ROUNDS and end.totals == "person":
        return (("You", end.rounds),), "A box a round: write your own points."
    if together:
        return (("Together", GAMES),), "A box each time: write the total."
    return (("You", GAMES), ("Other", GAMES)), "A box a game: write the score."


def _own_rounds(drill: Drill, at: At, player: str | None) -> OwnRounds | None:
    """Return the rounds of whoever starts as ``player`` where a table says who plays with whom, None for nothing to tell."""
    told = telling(drill, at, "player", player)
    start = player or next(iter(told.playing), None)
    if start is None:
        return None
    tables = (swap for swap in told.setting.swaps.values() if swap.table)
    found = (own_rounds(told, swap, start) for swap in tables if rounds_told(told, swap, start))
    return next(found, None)


_OF_ROUNDS: Final = "Write your own points. Partners by the letter they began with."


def _scorers(drill: Drill, at: At, player: str | None) -> tuple[str, ...]:
    """Return whose starts are ticked: the reader and the opponent, by their letters where a third takes turns with both."""
    jobs = [job.letter for job in drill.jobs if job.by == "player"]
    rings = (set(swap.moves) for swap in setting_at(drill, at).swaps.values())
    if len(jobs) != 3 or not any(set(jobs) <= moved for moved in rings):
        return ("You", "Other")
    return ("You", *(letter for letter in jobs if letter != (player or jobs[0])))


_MOST_ROUNDS: Final = 12


def goals(drill: Drill, at: At, *, player: str | None, units: Units) -> tuple[tuple[str, str], ...]:
    """Return ("Easier", "First to 7.") … where the easier and harder forms have another goal, () where they do not."""
    found: dict[str, str] = {}
    ways: list[tuple[str, str | None]] = [("As set", None)]
    ways += [(_LEVELS[degree], way.id) for degree, way in variations(progression_at(drill, at)) if degree in _LEVELS]
    for name, way in ways:  # as set comes first: a form that keeps its goal is no goal of its own
        said = finish(telling(drill, At(at.progression, way), "player", player, units))
        if said is not None:
            found.setdefault(said.text, name)
    if len(found) < 2:
        return ()
    return tuple(sorted(((name, text) for text, name in found.items()), key=lambda pair: _ORDER.index(pair[0])))


_LEVELS: Final = {"easier": "Easier", "harder": "Harder"}
_ORDER: Final = ("Easier", "As set", "Harder")
