"""A small card: the diagram on its front with what fits beside it, the words on its back."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING, Final, Literal

from designer.cards.blocks import Block, stacked
from designer.cards.layout import Contents
from designer.cards.pictures import Pictures
from designer.cards.pieces import Pieces
from designer.cards.subject import Subject

if TYPE_CHECKING:
    from designer.drawing.picture import Picture

LEGEND_WIDTH: Final = 80.0
"""Width in points of one column of the legend at a mark of 1 pt: the sample and the longest of its words."""


@dataclass(frozen=True, slots=True)
class Aside:
    """Blocks that stand at the ``top``, ``over`` or ``under`` the legend beside the diagram where there is room, else behind.

    ``behind`` is how they are set there, where that is another way.
    """

    where: Literal["top", "over", "under"]
    blocks: tuple[Block, ...]
    behind: tuple[Block, ...] = ()
    ahead: bool = False
    """Whether the legend gives way to it."""


@dataclass(frozen=True, slots=True)
class Behind:
    """The words of a small card's back, in the order in which they are read; ``spare`` fills what is left."""

    played: tuple[Block, ...]
    rules: tuple[Block, ...]
    care: tuple[Block, ...]
    after: tuple[Block, ...]
    spare: tuple[Block, ...]


def front_and_back(
    subject: Subject,
    pieces: Pieces,
    heights: tuple[float, float],
    asides: Sequence[Aside],
    behind: Behind,
) -> Contents:
    """Return a small card.

    ``heights`` are those of the room on its front and its back, in points; ``asides`` are in the order in which they get
    the room beside the diagram.
    """
    paper, (front, back) = pieces.paper, heights
    pictures, shown, across = _shaped(subject, pieces, front)
    legend = pieces.legend(shown, max(1, int(paper.inner / LEGEND_WIDTH)), paper.inner)
    if paper.across:  # how high the legend under a court is, the court itself says
        pictures, shown, across = _shaped(subject, pieces, front - legend.height(paper.inner) - legend.before)
    free = paper.inner - across - paper.gutter
    column = (pieces.legend(shown, 1, free),) if not paper.across and free >= LEGEND_WIDTH else ()
    moved = _moved(asides, column, free, front) if column else ()
    if column and any(aside.ahead and aside not in moved for aside in asides):
        alone = _moved(asides, (), free, front)
        if all(aside in alone for aside in asides if aside.ahead):
            moved, column = alone, ()
    left = [aside for aside in asides if aside not in moved]
    ahead, under = ([each for each in left if each.where == "under" and each.ahead is first] for first in (True, False))
    asked = (*_behind(left, "over"), *pieces.head(subject.words), *behind.played, *_behind(ahead, "under"))
    top, first = _behind(left, "top"), (*asked, *behind.rules)
    fits = stacked((*top, *first), paper.inner) <= back
    # How it is played is not parted for what it is good for.
    said = (*(top if fits else ()), *first, *(() if fits else top), *_behind(under, "under"), *behind.care)
    return Contents(
        pieces.diagram(shown, across, pictures.title),
        (),
        said if column or paper.across else (*said, legend),
        after=behind.after,
        beside_diagram=_front(moved, column) if moved or column else (),
        under_diagram=(legend,) if paper.across else (),
        frames=pictures.more(across),
        spare=behind.spare,
        across=across,
    )


def _front(asides: Sequence[Aside], legend: tuple[Block, ...]) -> tuple[Block, ...]:
    """Return the blocks of the column beside the diagram."""

    def standing(where: str) -> tuple[Block, ...]:
        return tuple(block for aside in asides if aside.where == where for block in aside.blocks)

    return (*standing("top"), *standing("over"), *legend, *standing("under"))


def _behind(asides: Sequence[Aside], where: str) -> tuple[Block, ...]:
    return tuple(block for aside in asides if aside.where == where for block in aside.behind or aside.blocks)


def _moved(asides: Sequence[Aside], column: tuple[Block, ...], width: float, height: float) -> tuple[Aside, ...]:
    """Return those of ``asides`` that there is room for in the legend's ``column``."""
    found: tuple[Aside, ...] = ()
    for aside in asides:
        tried = (*found, aside)
        if stacked(_front(tried, column), width) <= height:
            found = tried
    return found


def _shaped(subject: Subject, pieces: Pieces, tall: float) -> tuple[Pictures, Picture, float]:
    """Return the pictures for a small card's front, the first of them, and how wide it is where it is ``tall`` points high.

    It gives up a tenth of its width for a legend beside it.
    """
    paper = pieces.paper
    wide, high = Pictures(subject, pieces).size()
    width, beside = min(paper.inner, tall * wide / high), paper.inner - paper.gutter - LEGEND_WIDTH
    if not paper.across and width > beside >= 0.9 * width:
        width = beside
    pictures = Pictures(subject, Pieces(replace(paper, diagram=width), pieces.theme, pieces.typesetter))
    room = tall - pieces.caption_height(pictures.title)
    shown = pictures.first(room)
    left, low, right, top = shown.extent
    return pictures, shown, min(width, room * (right - left) / (top - low))
