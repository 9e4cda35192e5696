"""How a card's blocks are laid out on its sides: nothing is shrunk below its size, what does not fit flows on."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from itertools import combinations
from typing import TYPE_CHECKING, Final

from designer.cards.blocks import LONG, Balanced, Block, Columns, Group, Rules, stacked, taken
from designer.cards.papers import MM, Paper

if TYPE_CHECKING:
    from designer.drawing.picture import Picture


@dataclass(frozen=True, slots=True)
class Placed:
    """Blocks one under another from (x, top), ``width`` points wide."""

    x: float
    top: float
    width: float
    blocks: tuple[Block, ...]


Side = tuple[Placed, ...]


def as_read(side: Side, number: int) -> Side:
    """Return what stands on side ``number`` (0 is the first) in the order in which it is read aloud: the diagram last.

    A PDF's text comes in the order in which it is drawn, and a letter of the diagram in the midst of a rule is noise.
    """
    return (*side[1:], *side[:1]) if number == 0 else side


@dataclass(frozen=True, slots=True)
class Contents:
    """The blocks of a card by where they belong.

    ``strip`` stands under both columns of a large sheet's first side; ``after`` is the same for a side of its own,
    which it asks for only where ``adds_side``. ``beside_diagram`` and ``under_diagram`` stand with the diagram on a
    small card's front. ``frames`` are the further pictures of a crowded court. ``spare`` is printed where the last side
    has room for it. ``picture`` is what ``diagram`` shows, ``across`` how wide it is on a small card's front.
    """

    diagram: Block
    below_diagram: tuple[Block, ...]
    beside: tuple[Block, ...]
    strip: tuple[Block, ...] = ()
    after: tuple[Block, ...] = ()
    adds_side: bool = True
    beside_diagram: tuple[Block, ...] = ()
    under_diagram: tuple[Block, ...] = ()
    frames: tuple[Block, ...] = ()
    spare: tuple[Block, ...] = ()
    picture: Picture | None = None
    across: float = 0.0

    @property
    def under_both(self) -> tuple[Block, ...]:
        """What stands under both columns where all of the card goes on one side."""
        return self.strip or self.after

    @property
    def narrowed(self) -> Contents:
        """The same with all that comes later in two columns: they hold more than what goes across the sheet."""
        first = next((block for block in self.after if isinstance(block, Balanced)), None)
        return self if first is None else replace(self, after=(replace_blocks(first, _one_below_another(self.after)),))

    @property
    def words_first(self) -> Contents:
        """The same with nothing but the legend under the diagram: how it is played takes the room, the rest comes later."""
        legend, *rest = self.below_diagram
        return replace(self, below_diagram=(legend,), beside=(*self.beside, *rest))


@dataclass(frozen=True, slots=True)
class Room:
    """The free height of a card's sides: the first under its full heading, the others under a short one."""

    paper: Paper
    first_top: float
    next_top: float
    bottom: float

    def height(self, side: int) -> float:
        """Return the height between heading and footer of the first side (0) or a later one."""
        return (self.first_top if side == 0 else self.next_top) - self.bottom


def laid_out(contents: Contents, room: Room) -> tuple[Side, ...]:
    """Return the sides of the card.

    The diagram and what belongs under it stand at the left of the first side, the rest beside it; the strip goes
    under both where it fits, else to the next side. What does not fit flows on in two columns. Ruled
    lines at the end fill the space that is left on the last side.
    """
    if room.paper.layout != "beside":
        return _one_under_another(contents, room)
    left_full = (contents.diagram, *contents.below_diagram)
    if contents.under_both:
        height = stacked(contents.under_both, room.paper.inner)
        body = room.height(0) - height - _ABOVE_STRIP
        if not contents.frames and body >= contents.diagram.height(room.paper.diagram):
            side, rest = _columns(left_full, contents.beside, room, body)
            if not rest:
                return (_with_strip(side, contents.under_both, height, contents.spare, room),)
    if not contents.frames and stacked(contents.beside, room.paper.text) < room.height(0):
        whole = (*contents.beside, *_one_below_another(contents.after))
        side, rest = _columns(left_full, whole, room, room.height(0))
        if not rest:
            return (_with_notes(side, contents.spare, room, 0),)
    side, rest = _columns(left_full, contents.beside, room, room.height(0))
    after = contents.after if rest or contents.adds_side or contents.frames else ()
    return (side, *_later_sides(rest, after, room, contents.frames, contents.spare))


def replace_blocks(balanced: Balanced, blocks: tuple[Block, ...]) -> Balanced:
    """Return ``balanced`` with other blocks, to be balanced anew."""
    return replace(balanced, blocks=blocks, _columns={})


def _one_below_another(blocks: Sequence[Block]) -> tuple[Block, ...]:
    """Return ``blocks`` without those that balance others in two columns: for a column that is narrow itself."""
    return tuple(inner for block in blocks for inner in (block.blocks if isinstance(block, Balanced) else (block,)))


def _one_under_another(contents: Contents, room: Room) -> tuple[Side, ...]:
    """Return the diagram's side and the words after it: on the same side in large print, else on the back."""
    paper = room.paper
    if paper.layout == "one column":
        ordered = contents.words_first
        whole = (ordered.diagram, *ordered.frames, *ordered.below_diagram, *ordered.beside, *ordered.after)
        first, rest = taken(whole, paper.inner, room.height(0), dividing=True)
        return (
            (Placed(paper.left, room.first_top, paper.inner, first),),
            *_later_sides(rest, (), room, spare=contents.spare),
        )
    top, wide, across = room.first_top, paper.inner, contents.across
    if contents.beside_diagram:
        diagram = Placed(paper.left, top, across, (contents.diagram,))
        x = paper.left + across + paper.gutter
        front: Side = (diagram, Placed(x, top, paper.left + wide - x, contents.beside_diagram))
    else:
        front = (Placed(paper.left + (wide - across) / 2, top, across, (contents.diagram,)),)
        if contents.under_diagram:
            used = contents.diagram.height(across) + contents.under_diagram[0].before
            front = (*front, Placed(paper.left, top - used, wide, contents.under_diagram))
    words = (*contents.below_diagram, *contents.beside)
    return (front, *_later_sides(words, contents.after, room, contents.frames, contents.spare))


_ABOVE_STRIP: Final = 10.0
"""Space in points between the columns and the strip under them, at least."""


def _columns(
    left_full: tuple[Block, ...],
    beside: tuple[Block, ...],
    room: Room,
    height: float,
) -> tuple[Side, tuple[Block, ...]]:
    """Return the two columns of the first side and what does not fit; the left one takes on what the right cannot."""
    paper = room.paper
    left, left_rest = taken(left_full, paper.diagram, height)
    right, right_rest = taken(beside, paper.text, height, dividing=True)
    side = [
        Placed(paper.left, room.first_top, paper.diagram, left),
        Placed(paper.left + paper.diagram + paper.gutter, room.first_top, paper.text, right),
    ]
    if right_rest and not left_rest:
        free = height - stacked(left, paper.diagram)
        right, below, right_rest = _under_diagram(beside, right, right_rest, paper, height, free)
        if below:
            side[1] = replace(side[1], blocks=right)
            top = room.first_top - (height - free) - below[0].before
            side.append(Placed(paper.left, top, paper.diagram, below))
    return tuple(side), (*right_rest, *left_rest)


Blocks = tuple[Block, ...]


def _under_diagram(
    beside: Blocks, right: Blocks, rest: Blocks, paper: Paper, height: float, free: float
) -> tuple[Blocks, Blocks, Blocks]:
    """Return what stands beside the diagram, what under its legend, and what is left for another side.

    ``right`` and ``rest`` are ``beside`` as it fills its column; ``free`` is the room under the legend. There the rest goes
    on, or such blocks stand there as may go ahead of others, so that as many as can be are on this side, none divided.
    """
    below, later = _started(rest, paper.diagram, free)
    best = right, below, later
    movable = [block for block in beside if _may_go_ahead(block)]
    for count in range(1, len(movable) + 1):
        for chosen in combinations(reversed(movable), count):  # of as good ones that which moves what is read last
            moved = tuple(block for block in movable if block in chosen)
            if _started(moved, paper.diagram, free)[1]:
                continue
            kept = tuple(block for block in beside if block not in moved)
            stays, left_over = taken(kept, paper.text, height, dividing=True)
            best = max(best, (stays, moved, left_over), key=lambda each: _read_here(beside, *each))
    return best


def _started(blocks: Blocks, width: float, room: float) -> tuple[Blocks, Blocks]:
    """Return what of ``blocks`` fits into the room under others, and what is left."""
    return taken(blocks, width, room - blocks[0].before) if blocks else ((), ())


def _read_here(beside: Blocks, right: Blocks, below: Blocks, rest: Blocks) -> tuple[int, tuple[bool, ...], int, int]:
    """Return how well a side tells what may go ahead: how many of it, the first before the last, all else, undivided."""
    whole = [block in right or block in below for block in beside]
    # What is in none of the three is divided; its end is on this side unless the rest begins with it.
    ended = all(block in beside for block in rest)
    told = [here or (ended and block not in rest) for here, block in zip(whole, beside, strict=True)]
    ahead = tuple(here for here, block in zip(told, beside, strict=True) if _may_go_ahead(block))
    return sum(ahead), ahead, sum(told), sum(whole)


def _may_go_ahead(block: Block) -> bool:
    return isinstance(block, Group) and block.ahead


def _with_strip(side: Side, strip: tuple[Block, ...], height: float, spare: tuple[Block, ...], room: Room) -> Side:
    """Return the first side with the strip under its columns, a little of the spare height above it."""
    used = max(room.first_top - placed.top + stacked(placed.blocks, placed.width) for placed in side)
    free = room.height(0) - used - height - _ABOVE_STRIP
    top = room.first_top - used - _ABOVE_STRIP - min(10.0, max(0.0, free / 3))
    whole = (*side, Placed(room.paper.left, top, room.paper.inner, strip))
    return _with_notes(whole, () if isinstance(strip[-1], Rules) else spare, room, 0)


def _later_sides(
    rest: Sequence[Block],
    strip: Sequence[Block],
    room: Room,
    frames: Sequence[Block] = (),
    spare: tuple[Block, ...] = (),
) -> tuple[Side, ...]:
    """Return the sides after the first: the frames, the rest in two columns, then the strip, as many as they need."""
    paper = room.paper
    rest = loosened(rest, room)
    strip = loosened(strip, room)
    blocks: list[Block] = list(frames)
    if strip and isinstance(strip[0], Balanced):
        rest, strip = (*rest, *strip[0].blocks), strip[1:]
    if rest:
        blocks += [Balanced(tuple(rest), paper.gutter, before=8.0 if frames else 0.0)] if paper.columns > 1 else rest
    blocks += strip
    sides: list[Side] = []
    while blocks:
        number = len(sides) + 1
        fitting, left_over = taken(blocks, paper.inner, room.height(number))
        if not fitting:
            # Taller than a whole side and not to be divided: it gets a side of its own rather than none.
            fitting, left_over = (blocks[0],), tuple(blocks[1:])
        sides.append((Placed(paper.left, room.next_top, paper.inner, tuple(fitting)),))
        blocks = list(left_over)
    if sides:
        sides[-1] = _with_notes(sides[-1], spare, room, len(sides))
    return tuple(sides)


def loosened(blocks: Sequence[Block], room: Room) -> tuple[Block, ...]:
    """Return ``blocks`` with the groups taken apart where sides are so small that whole ones would leave holes."""
    if room.paper.layout == "beside" and room.height(1) >= LONG:
        return tuple(blocks)
    found: list[Block] = []
    for block in blocks:
        if isinstance(block, Group) and not block.whole:
            first, *more = block.blocks
            found += [Group((first,), before=block.before, keep_with_next=first.keep_with_next), *more]
        elif isinstance(block, Balanced):
            found.append(replace_blocks(block, loosened(block.blocks, room)))
        else:
            found.append(block)
    return tuple(found)


def _with_notes(side: Side, spare: tuple[Block, ...], room: Room, number: int) -> Side:
    """Return ``side`` with ``spare`` where it fits, and its last ruled lines as many as the space below them allows."""
    last = side[-1]
    floor = room.bottom + 4
    used = last.top - stacked(last.blocks, last.width)
    if spare and last.blocks and used - spare[0].before - stacked(spare, last.width) >= floor:
        last = replace(last, blocks=(*last.blocks, *spare))
        used = last.top - stacked(last.blocks, last.width)
    if not last.blocks or not isinstance(last.blocks[-1], Rules):
        return (*side[:-1], last)
    rules = last.blocks[-1]
    extra = int((used - floor) / rules.pitch)
    most = 8 if number else 3
    grown = replace(rules, count=max(rules.count, min(most, rules.count + extra)))
    return (*side[:-1], replace(last, blocks=(*last.blocks[:-1], grown)))


def narrower(paper: Paper) -> Paper:
    """Return ``paper`` with the diagram at 90 per cent, never under 53 mm, so that words have more room."""
    return replace(paper, diagram=max(53 * MM, paper.diagram * 0.9))


LEAST_GROWTH: Final = 1.04
"""A diagram is made anew only where it becomes this much larger."""


def wider(paper: Paper, contents: Contents, room: Room, *, sides: int) -> tuple[Paper, ...]:
    """Return ``paper`` with larger diagrams, the largest first that height and the words' column leave.

    ``sides`` is how many sides there are: only where there is one, the strip is on it.
    """
    beneath = stacked((contents.diagram, *contents.below_diagram), paper.diagram) - contents.diagram.height(
        paper.diagram
    )
    free = (
        room.height(0)
        - beneath
        - (stacked(contents.under_both, paper.inner) + _ABOVE_STRIP if contents.under_both and sides == 1 else 0.0)
    )
    ratio = contents.diagram.height(paper.diagram) / paper.diagram
    half = contents.picture is not None and contents.picture.cut
    text = (LEAST_TEXT_BESIDE_HALF if half else LEAST_TEXT) * paper.body.size
    most = min(free / ratio, paper.inner - paper.gutter - text)
    if most < paper.diagram * LEAST_GROWTH:
        return ()
    return tuple(replace(paper, diagram=paper.diagram + (most - paper.diagram) * share) for share in (1.0, 0.65, 0.3))


LEAST_TEXT: Final = 18.0
"""Least width of the words beside a diagram, in sizes of their letters: about 33 letters to a line."""


LEAST_TEXT_BESIDE_HALF: Final = 14.0
"""The same beside half a court, whose width is what its scale hangs on."""


def rows_of(blocks: Sequence[Block]) -> int:
    """Return how many paragraphs there are among ``blocks``."""
    count = 0
    for block in blocks:
        if isinstance(block, Group | Balanced):
            count += rows_of(block.blocks)
        elif isinstance(block, Columns):
            count += sum(map(rows_of, block.columns))
        else:
            count += 1
    return count
