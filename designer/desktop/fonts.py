"""The bundled family in the window's sizes. Hinting is off, so that letters stand alike on every machine."""

from __future__ import annotations

from functools import cache

from PySide6.QtGui import QFont

TITLE = 20
BODY = 14
CONTROL = 13
NOTE = 12


@cache
def family() -> str:
    """Return the name of the bundled family, loaded once."""
    from designer.drawing.qt import load_fonts

    return load_fonts()


def font(size: int = CONTROL, *, bold: bool = False) -> QFont:
    """Return the bundled font at ``size`` device-independent pixels."""
    made = QFont(family())
    made.setPixelSize(size)
    made.setBold(bold)
    made.setHintingPreference(QFont.HintingPreference.PreferNoHinting)
    return made
