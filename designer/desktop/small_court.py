"""A setting as a small court without words: on a tab, and beside a drill to start from."""

from __future__ import annotations

from typing import Final

from PySide6.QtCore import QSize
from PySide6.QtGui import QColor, QPainter, QPixmap

from designer.court.standards import ground
from designer.desktop.style import look
from designer.drill.drill import Drill
from designer.drill.setting import At

MARKS: Final = 0.34
"""Pixels to a mark unit: large enough to tell people from paths, small enough to leave a court between them."""

BESIDE: Final = 1.6
BEHIND: Final = 3.2
"""Metres of run-off that are seen: players stand there."""


def small_court(drill: Drill, at: At, size: QSize, ratio: float, *, across: bool = True) -> QPixmap:
    """Return the setting at ``at`` in ``size`` device-independent pixels, in the look of the window."""
    from designer.drawing.picture import picture
    from designer.drawing.qt import paint
    from designer.drawing.themes import theme

    colours = theme(look().name, surface=drill.court.surface)
    here = ground(drill.court)
    wide, deep = 2 * (here.outer + BESIDE), 2 * (here.baseline + BEHIND)
    if across:
        wide, deep = deep, wide
    metre = min(size.width() / wide, size.height() / deep)
    drawn = picture(drill, at, unit=MARKS / metre, theme=colours, across=across, words=False)
    made = QPixmap(round(size.width() * ratio), round(size.height() * ratio))
    made.fill(QColor(look().canvas))
    painter = QPainter(made)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.translate(made.width() / 2, made.height() / 2)
    painter.scale(metre * ratio, metre * ratio)
    paint(painter, drawn.marks, colours)
    painter.end()
    made.setDevicePixelRatio(ratio)
    return made
