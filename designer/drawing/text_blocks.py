"""Words as blocks: the ways in which a short text is broken into lines, and the box each takes."""

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import lru_cache

from designer.drawing.pen import Pen
from designer.drawing.primitives import Align, Bounds, Point
from designer.drawing.words import shown, text_width, wrap


@dataclass(frozen=True, slots=True)
class Block:
    """Lines of text as a block: its whole width, and how far it reaches below and above its middle, in metres."""

    lines: tuple[str, ...]
    width: float
    below: float
    above: float

    def box(self, at: Point, align: Align) -> Bounds:
        """Return the block's box with its middle, left end or right end at ``at``."""
        left = at[0] - (0.0 if align == "left" else self.width if align == "right" else self.width / 2)
        return (left, at[1] - self.below, left + self.width, at[1] + self.above)

    @property
    def height(self) -> float:
        """Whole height in metres."""
        return self.below + self.above


@lru_cache(maxsize=1024)
def blocks(text: str, size: float, unit: float, bold: bool) -> tuple[Block, ...]:  # noqa: FBT001 - a cache key
    """Return ``text`` as a block on one line and on more, each way once."""
    text = shown(text.replace("\n", " "))
    whole = text_width(text, size, bold)
    longest = max((text_width(word, size, bold) for word in text.split(" ")), default=whole)
    found: dict[tuple[str, ...], None] = {}
    for count in (1, 2, 3, 4):
        for extra in (1.0, 1.15, 1.35):
            lines = wrap(text, size, max(longest, whole / count) * extra + 1e-6, bold)
            if len(lines) == count:
                found.setdefault(lines)
                break
    found.setdefault(wrap(text, size, longest + 1e-6, bold))
    if "-" in text:
        found.setdefault(_broken_at_hyphens(text, size, bold=bold))
    pen = Pen(unit)
    boxes = ((lines, pen.text_box(lines, (0.0, 0.0), size, bold=bold)) for lines in found)
    return tuple(Block(lines, box[2] - box[0], -box[1], box[3]) for lines, box in boxes)


def _broken_at_hyphens(text: str, size: float, *, bold: bool) -> tuple[str, ...]:
    """Return the narrowest lines of ``text`` that break at spaces and behind hyphens."""
    pieces = [
        (piece, "" if number else " ")
        for word in text.split()
        for number, piece in enumerate(re.findall(r"[^-]*-+|[^-]+", word))
    ]
    longest = max((text_width(piece, size, bold) for piece, _ in pieces), default=0.0)
    lines: list[str] = []
    for piece, gap in pieces:
        longer = f"{lines[-1]}{gap}{piece}" if lines else piece
        if lines and text_width(longer, size, bold) <= longest + 1e-6:
            lines[-1] = longer
        else:
            lines.append(piece)
    return tuple(lines) or (text,)
