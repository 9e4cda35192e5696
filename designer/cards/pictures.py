"""The diagrams of one card: the whole court or one half of it, in one picture or in frames where it is crowded."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from typing import TYPE_CHECKING, Final

from designer.cards.blocks import Block, Columns
from designer.cards.pieces import Pieces
from designer.cards.subject import Subject
from designer.drawing.legend import legend_of
from designer.drawing.reach import Frame, end_in_use, frames

if TYPE_CHECKING:
    from designer.drawing.picture import Picture


class Pictures:
    """Makes the pictures of a subject for the paper of ``pieces``."""

    def __init__(self, subject: Subject, pieces: Pieces) -> None:
        self._subject, self._pieces = subject, pieces
        told = subject.told
        self._court = told.ground
        self._end = end_in_use(told.setting, told.sequence)
        self._frames = frames(told.setting, told.sequence)
        you = subject.you
        spot = told.setting.spot_of(you) if you else None
        self._turned = spot is not None and spot.place.at[1] > 0

    @property
    def title(self) -> str:
        """What stands over the first picture: nothing where it is the only one."""
        return self._frames[0].title if self._frames else ""

    def size(self) -> tuple[float, float]:
        """Return how wide and how high a picture is at least, in metres."""
        from designer.drawing.picture import BEYOND_NET

        along = self._court.back_fence + (self._court.back_fence if self._end is None else BEYOND_NET)
        aside = 2 * self._court.side_fence
        return (along, aside) if self._pieces.paper.across else (aside, along)

    def first(self, tall: float | None = None) -> Picture:
        """Return the only picture, or the first frame with the legend of all, for the diagram's column; at most ``tall`` points high."""
        points = self._pieces.paper.diagram
        if not self._frames:
            return self._picture(None, points, tall)
        pictures = [self._picture(frame, points, tall) for frame in self._frames]
        return replace(pictures[0], legend=legend_of(mark for each in pictures for mark in each.marks))

    def more(self, width: float) -> tuple[Block, ...]:
        """Return the further frames, ``width`` points wide at least, as many side by side as the paper has room for."""
        paper = self._pieces.paper
        side_by_side = max(1, int((paper.inner + paper.gutter) / (width + paper.gutter)))
        wide = width if side_by_side == 1 else (paper.inner - paper.gutter * (side_by_side - 1)) / side_by_side
        blocks = list(self._blocks(wide))
        if side_by_side == 1:
            return tuple(blocks)
        rows = [blocks[start : start + side_by_side] for start in range(0, len(blocks), side_by_side)]
        return tuple(
            Columns((*((block,) for block in row), *((),) * (side_by_side - len(row))), paper.gutter, before=8.0)
            for row in rows
        )

    def _blocks(self, width: float) -> Iterator[Block]:
        for frame in self._frames[1:]:
            yield self._pieces.diagram(self._picture(frame, width), width, frame.title)

    def _picture(self, frame: Frame | None, points: float, tall: float | None = None) -> Picture:
        """Return the picture for a column ``points`` wide and at most ``tall`` points high.

        Words at its edge may make it larger; its scale is then smaller, and its marks and letters are made for that.
        """
        from designer.drawing.picture import picture

        paper, subject = self._pieces.paper, self._subject

        def drawn(metres: float) -> Picture:
            return picture(
                subject.drill,
                frame.setting if frame is not None else subject.told.setting,
                unit=paper.unit * metres / points,
                theme=self._pieces.theme,
                you=subject.you,
                turned=self._turned,
                across=paper.across,
                patient=True,
                shots=frame.shots if frame is not None else None,
                end=self._end,
            )

        metres = self.size()[0]
        shown = drawn(metres)
        for _ in range(_TRIES):
            left, low, right, high = shown.extent
            needed = max(right - left, (high - low) * points / tall if tall else 0.0)
            if needed <= metres * _NEAR_ENOUGH:
                break
            metres, shown = needed, drawn(needed)
        return shown


_TRIES: Final = 3
_NEAR_ENOUGH: Final = 1.02
"""A picture this much too large is printed a little smaller; its words stay above their floor."""
