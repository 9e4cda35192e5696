"""How full the card is while it is written: computed off the window's thread once the hands rest."""

from __future__ import annotations

import logging
from functools import partial
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject

from designer.desktop.papers import parts
from designer.desktop.side_view.worker import Worker

if TYPE_CHECKING:
    from collections.abc import Callable
    from pathlib import Path

    from designer.cards.fullness import Fullness
    from designer.desktop.window import MainWindow

log = logging.getLogger(__name__)


class FillMeter(QObject):
    """Shows beside Print how many sides the card takes and how full the last is, from the first change on.

    Until then nothing is computed: an open drill is not yet being written. ``paper`` says what a card would be made on.
    """

    def __init__(self, window: MainWindow, paper: Callable[[], str]) -> None:
        super().__init__(window)
        self._window, self._paper = window, paper
        self._begun = self._wanted = False
        self._worker = Worker(self)
        self._worker.finished.connect(lambda _, found, __: self._show(found))
        window.document.changed.connect(lambda *_: self._changed())
        window.view.at_changed.connect(lambda _: self.refresh())
        window.column.bar.chosen.connect(lambda _: self.refresh())
        window.bottom.reviewed.connect(self._rested)

    def refresh(self) -> None:
        """Ask anew, where the meter is shown at all."""
        if self._begun:
            self._wanted = True
            self._rested()

    def _changed(self) -> None:
        self._begun = self._wanted = True

    def _rested(self) -> None:
        if self._wanted:
            self._wanted = False
            question = self._question()
            self._worker.ask("how full it is", lambda _: question())

    def _question(self) -> Callable[[], Fullness | None]:
        """Return the question as it stands now: the drill may be changed before it is answered."""
        window = self._window
        paper, is_large, _ = parts(self._paper())
        reader = window.column.bar.reader
        return partial(
            _asked,
            window.document.path,
            window.document.drill,
            window.view.at,
            paper=paper,
            reader=reader,
            player=window.view.you if reader == "player" else None,
            units=window.view.units,
            large_print=is_large,
        )

    def _show(self, found: Fullness | None) -> None:
        self._window.column.bar.show_fill("" if found is None else in_words(found))


def _asked(path: Path | None, *arguments: object, **options: object) -> Fullness | None:
    """Return how full the card is in the brand that lies beside the drill at ``path``: logo and letters take room as well.

    None where that cannot be found out: the log says why, and whoever makes the card is told.
    """
    from designer.cards.fullness import fullness
    from designer.desktop.printing import found_brand

    try:
        own, _ = found_brand(path)
        return fullness(*arguments, brand=own.brand, logo=own.logo, typeface=own.typeface, **options)  # type: ignore[arg-type]
    except Exception:
        log.exception("how full the card is could not be found out")
        return None


def in_words(found: Fullness) -> str:
    """Return "1 side, 80 % full" or "3 sides, last 10 % full" on two lines."""
    sides = "1 side" if found.sides == 1 else f"{found.sides} sides"
    return f"{sides},\n{'' if found.sides == 1 else 'last '}{round(found.last * 100)} % full"
