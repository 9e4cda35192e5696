"""The part of the menu on the court that belongs to a person: a ball, a feed or a run that begins there."""

from __future__ import annotations

from functools import partial
from typing import Final

from PySide6.QtWidgets import QMenu

from designer.desktop.canvas.keys import letter_of
from designer.desktop.canvas.toolbox import Toolbox
from designer.desktop.view import Tool

STROKES: Final[tuple[Tool, ...]] = ("feed", "ball", "run")


def add_stroke_entries(menu: QMenu, toolbox: Toolbox) -> None:
    """Add to ``menu`` what can be drawn from the person that is picked alone; nothing where nobody is."""
    bench = toolbox.bench
    picked = bench.view.selection
    spot = bench.setting.spots.get(next(iter(picked))) if len(picked) == 1 else None
    if spot is None or bench.document.read_only:
        return
    menu.addSeparator()
    for tool in STROKES:
        entry = menu.addAction(f"{tool.capitalize()} from here\t{letter_of(tool)}")
        entry.triggered.connect(partial(toolbox.draw_from, tool, spot.job))
