"""The bundled family in the window's sizes, as large as the system's letters ask. Hinting is off, so that letters stand alike."""

from __future__ import annotations

import sys
from functools import cache
from typing import Final

from PySide6.QtGui import QFont, QFontDatabase, QFontInfo, QGuiApplication

TITLE: Final = 20
BODY: Final = 14
CONTROL: Final = 13
NOTE: Final = 12
"""Sizes in device-independent pixels, for a system that keeps its own letters at their usual size."""

USUAL: Final = {"win32": (12, 12), "darwin": (13, 13)}
USUAL_ELSEWHERE: Final = (12, 15)
"""Pixels, from and to, of a system's own letters before anybody has changed them. Windows comes with 9 points at 96 dots an inch,
macOS with 13 at 72, the desktops of Linux with 9 to 11 at 96."""

LEAST: Final = NOTE
"""Pixels: no letter on a screen is smaller."""
MOST: Final = 2.0
ROOM: Final = 512
"""So many pixels of the screen's height each time the usual size needs, for the window to leave a court to draw on."""


@cache
def share() -> float:
    """Return how much larger than usual letters are to be, from the system's own font: at most 2, as the screen has room.

    Where the system's letters are smaller than usual it is under 1, but not so far that a control's would be too small.
    """
    pixels = QFontInfo(QFontDatabase.systemFont(QFontDatabase.SystemFont.GeneralFont)).pixelSize()
    low, high = USUAL.get(sys.platform, USUAL_ELSEWHERE)
    if pixels <= high:
        return max(min(pixels / low, 1.0), LEAST / CONTROL)
    screens = QGuiApplication.screens()
    most = min(MOST, screens[0].size().height() / ROOM) if screens else MOST
    return max(min(pixels / high, most), 1.0)


def scaled(pixels: float) -> int:
    """Return a measure of the window that grows with its letters: the height of a control, the width of a column."""
    return round(pixels * share())


@cache
def family() -> str:
    """Return the name of the bundled family, loaded once."""
    from designer.drawing.qt import load_fonts

    return load_fonts()


def font(size: int = CONTROL, *, bold: bool = False) -> QFont:
    """Return the bundled font at ``size``, one of the sizes above, as large as the system asks for."""
    made = QFont(family())
    made.setPixelSize(max(scaled(size), LEAST))
    made.setBold(bold)
    made.setHintingPreference(QFont.HintingPreference.PreferNoHinting)
    return made
