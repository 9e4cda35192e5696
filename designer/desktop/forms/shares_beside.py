"""How much of the court an area takes, or a line leaves on each side: said in its form while it is drawn or pulled."""

from __future__ import annotations

from typing import Any, Final

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QLabel

from designer.court.standards import Ground, ground
from designer.desktop.controls import stacked
from designer.desktop.fonts import NOTE, font
from designer.desktop.forms.beside import Beside
from designer.desktop.forms.context import Context
from designer.desktop.forms.form import SIDE
from designer.desktop.style import look
from designer.drill.items import Area, Line
from designer.play.shares import line_shares, shares
from designer.wording.shares import per_cent, square
from designer.wording.units import Units

_OF: Final = ("of the singles court", "of its half", "of the width")


class SharesBeside(Beside):
    """Sentences, none where the thing is no part of the court."""

    def __init__(self) -> None:
        super().__init__()
        self._words = QLabel()
        self._words.setTextFormat(Qt.TextFormat.PlainText)
        self._words.setWordWrap(True)
        self._words.setFont(font(NOTE))
        layout = stacked(self)
        layout.setContentsMargins(SIDE, 2, 0, 4)
        layout.addWidget(self._words)

    @property
    def words(self) -> str:
        """Return what is said now."""
        return self._words.text()

    def show_record(self, record: Any, context: Context) -> None:
        self._words.setText(share_words(ground(context.drill.court), record, context.units))
        self._words.setStyleSheet(f"color: {look().soft};")
        self.setVisible(bool(self.words))


def share_words(court: Ground, item: Area | Line, units: Units = "rackets") -> str:
    """Return how much of the singles court, of its half and of the width an area takes, or a line along the court parts.

    "" for what takes or parts nothing of it.
    """
    if isinstance(item, Area):
        found = shares(court, item)
        if found is None or found.court.share == 0:
            return "" if found is None else f"{square(found.area, units)}, none of it in the singles court."
        parts = (
            f"{per_cent(share)} {of}" for share, of in zip((found.court, found.half, found.width), _OF, strict=True)
        )
        return f"{square(found.area, units)}: {', '.join(parts)}."
    parted = line_shares(court, item)
    if parted is None or min(side.half.share for side in parted) <= 0:
        return ""
    left, right = (f"{per_cent(side.half)} ({square(side.half.amount, units)})" for side in parted)
    return (
        f"Run on, it leaves {left} of the half on the left of it and {right} on the right, as its player faces the net."
    )
