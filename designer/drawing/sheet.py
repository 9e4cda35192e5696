"""A picture that stands alone: with its legend under the court; several courts in a row, each under its name."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from typing import Final

from designer.drawing.legend import legend_of
from designer.drawing.pen import Pen
from designer.drawing.picture import Picture
from designer.drawing.primitives import Layer, Mark, mark
from designer.drawing.samples import legend_shapes, shifted
from designer.drawing.themes import Theme
from designer.drawing.words import shown, wrap

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


NAME: Final = 11.0
"""Size of the name over a court of a row, in u."""


def in_a_row(pictures: Sequence[tuple[str, Picture]]) -> Picture:
    """Return ``pictures``, at least one and all of one unit, from left to right, each under its name.

    They stand on one line at the foot. The legend is that of all of them.
    """
    unit, page = pictures[0][1].unit, pictures[0][1].page
    pen, gap = Pen(unit), 2 * GAP * unit
    marks: list[Mark] = []
    x = top = tall = 0.0
    for number, (name, picture) in enumerate(pictures):
        left, low, right, high = picture.extent
        by = (x - left, -low)
        marks += [
            mark(
                each.id,
                each.kind,
                Layer(each.layer),
                (shifted(shape, by) for shape in each.primitives),
                f"{number} {each.part}",
            )
            for each in picture.marks
        ]
        lines = wrap(shown(name), NAME, (right - left) / unit, bold=True)
        rise = high - low + (GAP + (len(lines) - 1) * NAME * 0.6) * unit
        words = pen.lines(lines, (x + (right - left) / 2, rise), NAME, "ink", bold=True, cased=False)
        made = mark(None, "name", Layer.WORDS, words, str(number))
        marks.append(made)
        top, tall = max(top, made.bounds[3]), max(tall, high - low)
        x += right - left + gap
    extent = (0.0, 0.0, x - gap, max(top + GAP / 2 * unit, tall))
    return Picture(tuple(marks), extent, legend_of(marks), unit, page)
