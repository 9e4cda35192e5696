"""The Versions menu: the drill for other hands, the other wing, the other end or other jobs, each as one step."""

from __future__ import annotations

import itertools
import re
from collections.abc import Callable
from functools import partial
from typing import TYPE_CHECKING, Final

from PySide6.QtCore import QObject

from designer.drill.drill import Drill
from designer.drill.people import Job
from designer.drill.setting import addresses, setting_at

if TYPE_CHECKING:
    from PySide6.QtWidgets import QMenu

    from designer.desktop.window import MainWindow
    from designer.play.versions import Keep, Turned

_HANDED: Final = {"right": "left-handed", "left": "right-handed"}
_KEPT: Final[tuple[tuple[Keep, str], ...]] = (("strokes", "{0}’s strokes"), ("paths", "the ball’s paths"))
_NOTED: Final = {
    "mirrored": "mirrored",
    "wing": "on the other wing",
    "hand": "for the other hand",
    "ends": "from the other end",
    "jobs": "with jobs exchanged",
}


class VersionDeeds(QObject):
    """Turns the whole drill, and says what has come of it."""

    def __init__(self, window: MainWindow) -> None:
        super().__init__(window)
        self._window = window
        window.actions_by_name.menus["versions"].aboutToShow.connect(self.list)

    def menu(self) -> QMenu:
        """Return the menu with the versions that this drill can have."""
        self.list()
        return self._window.actions_by_name.menus["versions"]

    def list(self) -> None:
        """Fill the menu."""
        menu = self._window.actions_by_name.menus["versions"]
        menu.clear()
        menu.addAction("Mirrored, both players of the other hand", self.mirror)
        menu.addAction("For the other wing, forehand for backhand", self.switch_wing)
        self._list_hands(menu)
        menu.addAction("From the other end", self.swap_ends)
        pairs = menu.addMenu("Two change jobs")
        for one, other in itertools.combinations(self._letters(), 2):
            pairs.addAction(f"{one} and {other}", partial(self.swap_jobs, one, other))
        pairs.setEnabled(not pairs.isEmpty())
        noted = self._window.document.shown.turned
        if noted:
            menu.addSeparator()
            said = ", ".join(_NOTED[each] for each in noted)
            menu.addAction(f"This drill is {said}; the same again turns it back").setEnabled(False)

    def mirror(self) -> None:
        """Reflect the drill about the centre line, hands and all."""
        from designer.play.versions import mirror

        self._turn("Mirror the drill", "The drill is mirrored: left for right, every player of the other hand.", mirror)

    def switch_wing(self) -> None:
        """Turn the drill to the other wing."""
        from designer.play.versions import switch_wing

        self._turn(
            "Turn it to the other wing",
            "The drill is for the other wing: left for right, forehand for backhand.",
            switch_wing,
        )

    def swap_ends(self) -> None:
        """Turn the drill half round."""
        from designer.play.versions import swap_ends

        self._turn("Turn it to the other end", "The ends are exchanged.", swap_ends)

    def swap_jobs(self, one: str, other: str) -> None:
        """Exchange two letters wherever they stand."""
        from designer.play.versions import swap_jobs

        self._turn(
            f"Exchange the jobs of {one} and {other}",
            f"{one} and {other} have changed jobs.",
            lambda drill: swap_jobs(drill, one, other),
        )

    def change_hand(self, letter: str) -> None:
        """Let one player play with the other hand; what stays has no single answer, so it is asked."""
        from designer.play.versions import NoSingleAnswer, change_hand

        window = self._window
        drill = self._with_jobs(window.document.drill)
        hand = _HANDED[self._hand(letter)]
        said = ""
        try:
            change_hand(drill, letter)
        except NoSingleAnswer as reason:
            said = str(reason)
        answers = [words.format(letter) for _, words in _KEPT]
        chosen = window.prompts.choose(
            window, f"{letter} plays {hand}. What stays?", f"{said[:1].upper()}{said[1:]}.", answers
        )
        if chosen is None:
            return
        keep = _KEPT[chosen][0]
        self._turn(
            f"Make {letter} {hand}, keep {answers[chosen]}",
            f"{letter} is {hand}; {answers[chosen]} are kept.",
            lambda drill: change_hand(drill, letter, keep),
        )

    def _list_hands(self, menu: QMenu) -> None:
        hands = menu.addMenu("One player of the other hand")
        for letter in self._letters():
            job = self._window.document.shown.job(letter)
            if job is None or job.by != "machine":
                hands.addAction(f"{letter} {_HANDED[self._hand(letter)]} …", partial(self.change_hand, letter))
        hands.setEnabled(not hands.isEmpty())

    def _hand(self, letter: str) -> str:
        job = self._window.document.shown.job(letter)
        return "right" if job is None else job.hand

    def _letters(self) -> tuple[str, ...]:
        """Return every letter of the drill: its jobs, and who only stands on a court of it."""
        drill = self._window.document.shown
        spots = (spot.job for at in addresses(drill) for spot in setting_at(drill, at).spots.values())
        return tuple(sorted({*(job.letter for job in drill.jobs), *spots}))

    def _with_jobs(self, drill: Drill) -> Drill:
        """Return ``drill`` with a job for each letter that only stands on a court: a hand is a job's."""
        missing = [Job(letter=letter) for letter in self._letters() if drill.job(letter) is None]
        return drill.changed(jobs=(*drill.jobs, *missing)) if missing else drill

    def _turn(self, label: str, said: str, version: Callable[[Drill], Turned]) -> None:
        window = self._window
        turned = version(self._with_jobs(window.document.drill))
        if not window.perform(label, turned.drill):
            return
        warnings = [self._named(warning) for warning in turned.warnings]
        words = " ".join((said, *warnings))
        window.notice.say("version", words, ("Undo it", self._undo))

    def _undo(self) -> None:
        self._window.notice.clear("version")
        self._window.actions_by_name["undo"].trigger()

    def _named(self, warning: str) -> str:
        """Return a warning with the names that the window has for the shots and rules it speaks of by id."""
        from designer.desktop.names import name_of

        drill = self._window.document.shown
        found = {
            record.id: name_of(s, record)
            for s in (setting_at(drill, at) for at in addresses(drill))
            for _, record in s.records()
        }

        def name(match: re.Match[str]) -> str:
            known = found.get(match[2])
            return match[0] if known is None else f"{known[:1].upper()}{known[1:]}"

        return re.sub(r"\b(Shot|Rule) ([a-z][a-z0-9-]*)", name, warning)
