"""The legend on screen: beside an upright court, below one that lies across. It has a place of its own, so nothing jumps."""

from __future__ import annotations

from dataclasses import replace
from functools import lru_cache
from typing import Final

from designer.drawing.legend import WORDS
from designer.drawing.picture import Picture
from designer.drawing.primitives import Layer, mark
from designer.drawing.samples import WIDTH, legend_shapes, shifted
from designer.drawing.themes import Theme
from designer.drawing.words import text_width

PITCH: Final = 17.0
"""From row to row, in u."""

GAP: Final = 14.0
"""Between the court and the legend, in u."""

ROWS_BELOW: Final = 2
"""Rows kept free below a court that lies across, whatever is drawn on it."""


@lru_cache(maxsize=1)
def column_width() -> float:
    """Return the width of a column in u: a sample and the longest words of any class."""
    return WIDTH + 4.5 + max(text_width(words, 9.0) for words in WORDS.values()) + 8


def with_legend(picture: Picture, theme: Theme) -> Picture:
    """Return ``picture`` with its legend as one more mark, its extent grown by the room that a legend is given."""
    unit = picture.unit
    left, low, right, high = picture.extent
    width = column_width() * unit
    if picture.page.across:
        columns = max(1, int((right - left) / width))
        corner = (left + GAP * unit, low - GAP * unit)
        extent = (left, corner[1] - ROWS_BELOW * PITCH * unit, right, high)
    else:
        columns = 1
        corner = (right + GAP * unit, high - GAP * unit)
        extent = (left, low, corner[0] + width, high)
    shapes, height = legend_shapes(picture.legend, theme, unit, columns=columns, column_width=width, pitch=PITCH)
    extent = (extent[0], min(extent[1], corner[1] - height), extent[2], extent[3])
    made = mark(None, "legend", Layer.WORDS, (shifted(shape, corner) for shape in shapes))
    return replace(picture, marks=(*picture.marks, made), extent=extent)
