"""Where things are on the screen, for a test that moves a real pointer. Written only where it is asked for."""

from __future__ import annotations

import json
import os
from pathlib import Path
from typing import TYPE_CHECKING, Final

from PySide6.QtCore import QObject, QTimer

if TYPE_CHECKING:
    from designer.desktop.window import MainWindow

ASKED: Final = "DRILL_DESIGNER_POSITIONS"


def report_positions(window: MainWindow) -> None:
    """Keep the file named by the environment's ``DRILL_DESIGNER_POSITIONS`` up to date; nothing without it."""
    name = os.environ.get(ASKED)
    if name:
        Reporter(window, Path(name))


class Reporter(QObject):
    """Writes the file a moment after anything in it has changed."""

    def __init__(self, window: MainWindow, file: Path) -> None:
        super().__init__(window)
        self._window, self._file = window, file
        self._written = ""
        self._soon = QTimer(self)
        self._soon.setInterval(100)
        self._soon.timeout.connect(self.write)
        self._soon.start()

    def write(self) -> None:
        """Write where things are, unless that stands there already."""
        window = self._window
        if not window.isVisible():
            return
        text = json.dumps(positions(window))
        if text != self._written:
            self._written = text
            draft = self._file.with_name(f"{self._file.name}.part")
            draft.write_text(text, encoding="utf-8")
            draft.replace(self._file)


def positions(window: MainWindow) -> dict[str, object]:
    """Return the centres of the strip's buttons, of the court, its scale, and how much there is, in global pixels."""
    strip = {}
    for button in window.strip.shown():
        spot = button.mapToGlobal(button.rect().center())
        strip[button.use.tool] = [spot.x(), spot.y()]
    canvas = window.canvas
    centre = canvas.viewport().mapToGlobal(canvas.to_pixel((0.0, 0.0)).toPoint())
    return {
        "strip": strip,
        "court": {"centre": [centre.x(), centre.y()], "pixels_per_metre": canvas.pixels_per_metre},
        "document": {"items": len(window.view.setting.items)},
    }
