"""What is done about a check: its own mend, or a reason for accepting it; and a barrier is asked about as it is put down."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, QTimer

from designer.drill.drill import Drill
from designer.drill.items import Barrier
from designer.drill.setting import At, addresses, setting_at

if TYPE_CHECKING:
    from designer.desktop.window import MainWindow
    from designer.review.check import Answer, Check

ASKED = "Keep a barrier behind a player?"
RISK = "A step back on to a thing is a fall. A flat line does the same, and is what most coaches use."
REFUSED = "No barrier for players under 10: a flat line lies there instead."


class CheckDeeds(QObject):
    """Answers the list of checks of one window."""

    def __init__(self, window: MainWindow) -> None:
        super().__init__(window)
        self._window = window
        window.bottom.mended.connect(self.mend)
        window.bottom.answered.connect(self.answer)
        window.bottom.accepted.connect(self.accept)
        window.document.changed.connect(self._look_for_barriers)

    def mend(self, check: Check) -> None:
        """Put a check right by its own edit."""
        if check.mend is not None:
            self._window.perform("Mend what a check found", check.mend(self._window.document.drill))

    def answer(self, answer: Answer) -> None:
        """Give the answer that was chosen to what a check asks."""
        self._window.perform(f"Say that it is {answer.words}", answer.give(self._window.document.drill))

    def accept(self, check: Check) -> None:
        """Ask why a caution is accepted; the reason is kept and printed."""
        from designer.review.checks import accept

        question = f"{check.sentence.text}\n\nWhy is this accepted? The reason is printed on the card."
        reason = self._window.prompts.text(self._window, question)
        if reason is not None and reason.strip():
            drill = accept(self._window.document.drill, check, reason.strip())
            self._window.perform("Accept a caution", drill)

    def _look_for_barriers(self, before: Drill, after: Drill) -> None:
        """Ask about each barrier that was put down, once the hand is off it; what is undone or opened is not asked about."""
        if self._window.document.stack.canRedo():
            return
        known = {id for _, id in _barriers(before)}
        fresh = [(at, id) for at, id in _barriers(after) if id not in known]
        if fresh:
            QTimer.singleShot(0, self, lambda: self._ask(*fresh[0]))

    def _ask(self, at: At, id: str) -> None:
        from designer.review.barriers import flattened, is_young

        drill = self._window.document.drill
        if (at, id) not in _barriers(drill):
            return
        if is_young(drill):
            self._window.perform("Lay a flat line instead", flattened(drill, at=at, id=id))
            self._window.bottom.say(REFUSED)
        elif self._window.prompts.choose(self._window, ASKED, RISK, ("a flat line", "keep the barrier")) != 1:
            self._window.perform("Lay a flat line instead", flattened(drill, at=at, id=id))


def _barriers(drill: Drill) -> list[tuple[At, str]]:
    """Return where barriers stand: each by the first setting that has it."""
    found: dict[str, At] = {}
    for at in addresses(drill):
        for item in setting_at(drill, at).items.values():
            if isinstance(item, Barrier):
                found.setdefault(item.id, at)
    return [(at, id) for id, at in found.items()]
