"""What the plus at the tabs and at "easier" and "harder" offers: the trade's usual way, and its usual dials."""

from __future__ import annotations

from functools import partial
from typing import TYPE_CHECKING, Final, cast

from PySide6.QtCore import QObject
from PySide6.QtWidgets import QMenu

from designer.drill.setting import At, progression_at

if TYPE_CHECKING:
    from designer.desktop.ladder import Degree
    from designer.desktop.window import MainWindow
    from designer.play.dials import Degree as DialDegree
    from designer.play.dials import Dial
    from designer.play.ways import Rung

_ONE: Final = {"easier": "an easier one", "harder": "a harder one", "others": "another one"}


class WayDeeds(QObject):
    """Adds progressions of the usual way and variations of the usual dials, each as one step."""

    def __init__(self, window: MainWindow) -> None:
        super().__init__(window)
        self._window = window
        menus = window.actions_by_name.menus
        menus["usual way"].aboutToShow.connect(lambda: self._refill(menus["usual way"]))
        for degree in ("easier", "harder"):
            menu = menus[f"dials {degree}"]
            menu.aboutToShow.connect(partial(self._refill_dials, menu, degree))
        window.tabs.menu_wanted.connect(lambda spot: self.menu().popup(spot))
        window.degrees.menu_opening.connect(self.offer)

    def menu(self) -> QMenu:
        """Return the menu of the plus behind the tabs: one more of the same, or one of the usual way."""
        menu = QMenu(self._window)
        menu.aboutToHide.connect(menu.deleteLater)
        menu.addAction("The same again, to change", self._window.actions_by_name["progression add"].trigger)
        menu.addSection("The usual way, to fill in")
        self._fill(menu)
        return menu

    def add_rung(self, rung: Rung) -> None:
        """Add one progression of the usual way as the last one, and go to it."""
        from designer.play.ways import add_usual

        document = self._window.document
        drill = add_usual(document.drill, rung.kind, document.source)
        if self._window.perform(f"Add progression “{rung.name}”", drill):
            self._window.view.go_to(At(drill.progressions[-1].id))
            self._window.bottom.say(rung.about)

    def add_way(self) -> None:
        """Add all progressions of the usual way, and go to the first of them."""
        from designer.play.ways import add_usual, usual_way

        document = self._window.document
        drill = document.drill
        for rung in usual_way():
            drill = add_usual(drill, rung.kind, document.source)
        first = drill.progressions[-len(usual_way())].id
        if self._window.perform("Add the usual way", drill):
            self._window.view.go_to(At(first))

    def turn(self, dial: Dial, degree: DialDegree) -> None:
        """Add a variation: the progression in view with one dial turned a notch; go to it."""
        from designer.play.dials import turned

        window = self._window
        document, at = window.document, At(window.view.at.progression)
        drill = turned(document.drill, at, dial.key, degree, document.source)
        words = dial.words(degree) or dial.name
        if window.perform(f"Add {_ONE[degree]}: {words[:1].lower()}{words[1:]}", drill):
            made = getattr(progression_at(drill, at), degree)[-1].id
            window.view.go_to(At(at.progression, made))

    def offer(self, menu: object, degree: str) -> None:
        """Put what can be added into the menu of a degree: the dials that can be turned that way, or nothing changed yet."""
        assert isinstance(menu, QMenu)
        if degree in ("easier", "harder"):
            menu.addSection("Turn one dial")
            self._fill_dials(menu, cast("DialDegree", degree))
            menu.addSeparator()
        vary = self._window.actions_by_name[f"variation {cast('Degree', degree)}"].trigger
        menu.addAction(f"{_ONE[degree][:1].upper()}{_ONE[degree][1:]}, to change by hand", vary)

    def _refill(self, menu: QMenu) -> None:
        menu.clear()
        self._fill(menu)

    def _fill(self, menu: QMenu) -> None:
        from designer.play.ways import usual_way

        for rung in usual_way():
            menu.addAction(f"{rung.name}:  {rung.about}", partial(self.add_rung, rung))
        menu.addSeparator()
        menu.addAction("All of them, in this order", self.add_way)

    def _refill_dials(self, menu: QMenu, degree: str) -> None:
        menu.clear()
        self._fill_dials(menu, cast("DialDegree", degree))

    def _fill_dials(self, menu: QMenu, degree: DialDegree) -> None:
        from designer.play.dials import dials

        window = self._window
        found = dials(window.document.shown, At(window.view.at.progression))
        for dial in found:
            words = dial.words(degree)
            if words is not None:
                menu.addAction(f"{dial.name}:  {words[:1].lower()}{words[1:]}", partial(self.turn, dial, degree))
        if not any(dial.words(degree) for dial in found):
            menu.addAction("No dial can be turned that way yet").setEnabled(False)
