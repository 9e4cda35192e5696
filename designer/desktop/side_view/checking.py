"""The checks that need numbers, made off the window's thread once the others are shown."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from PySide6.QtCore import QObject

from designer.desktop.bottom_line import BottomLine
from designer.desktop.document import Document
from designer.desktop.side_view.basis import Basis, chosen
from designer.desktop.side_view.worker import Job, Worker
from designer.desktop.view import View

if TYPE_CHECKING:
    from designer.drill.drill import Accepted, Drill
    from designer.drill.setting import At
    from designer.review.check import Check


Found = tuple[tuple["Check", ...], tuple[tuple["Check", "Accepted"], ...]]
"""What was found, and the cautions that were accepted, each with its acceptance."""


def quick_checks(drill: Drill, at: At) -> Found:
    """Return what the review finds in a setting without numbers."""
    from designer.review.checks import reviewed

    return reviewed(drill, at)


def all_checks(drill: Drill, at: At, basis: Basis) -> Found:
    """Return what the review finds in a setting, numbers included."""
    from designer.review.checks import reviewed

    return reviewed(drill, at, players=basis.players(), drag=basis.drag)


class NumberChecks(QObject):
    """Follows the reviews of a bottom line: shows the same checks again with those that the numbers add."""

    def __init__(self, document: Document, view: View, bottom: BottomLine) -> None:
        super().__init__(bottom)
        self._document, self._view, self._bottom = document, view, bottom
        self.worker = Worker(self)
        self.worker.finished.connect(self._take)
        self.worker.so_far.connect(lambda _, found: bottom.show_checks(*found))
        bottom.reviewed.connect(self.ask)
        document.changed.connect(lambda *_: self.worker.forget())
        view.at_changed.connect(lambda _: self.worker.forget())

    def ask(self, *_: object) -> None:
        """Have the checks made for the setting in view and the players chosen."""
        drill, at, basis = self._document.drill, self._view.at, chosen()
        crowded = self._bottom.crowded

        def work(job: Job) -> Found | None:
            if crowded:  # nobody has made the quick ones yet
                job.tell(quick_checks(drill, at))
            return None if job.cancelled else all_checks(drill, at, basis)

        self.worker.ask((at, basis), work)

    def _take(self, _about: Any, found: Found | None, _problem: str) -> None:
        if found is not None:
            self._bottom.show_checks(*found)
