"""A picture that stands alone: with its legend under the court."""

from __future__ import annotations

from dataclasses import replace
from typing import Final

from designer.drawing.picture import Picture
from designer.drawing.primitives import Layer, mark
from designer.drawing.samples import legend_shapes, shifted
from designer.drawing.themes import Theme

COLUMN: Final = 70.0
"""Least width of a legend's column, in u."""

PITCH: Final = 13.0
GAP: Final = 10.0
"""Space between the court and its legend, and below it, in u."""


def with_legend(picture: Picture, theme: Theme) -> Picture:
    """Return ``picture`` with the legend of its marks below it, as many columns as its width has room for."""
    if not picture.legend:
        return picture
    left, low, right, high = picture.extent
    unit = picture.unit
    rim = GAP / 2 * unit
    columns = max(1, int((right - left - 2 * rim) / (COLUMN * unit)))
    wide = (right - left - 2 * rim) / columns
    shapes, tall = legend_shapes(picture.legend, theme, unit, columns=columns, column_width=wide, pitch=PITCH)
    corner = (left + rim, low - GAP * unit)
    legend = mark(None, "legend", Layer.WORDS, (shifted(shape, corner) for shape in shapes))
    extent = (left - rim, low - tall - 2 * GAP * unit, right + rim, high + rim)
    return replace(picture, marks=(*picture.marks, legend), extent=extent)
