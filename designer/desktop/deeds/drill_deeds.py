"""The Drill menu, the tabs and the row under them, and the questions of the card."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from functools import partial
from typing import TYPE_CHECKING, Any, cast

from PySide6.QtCore import QObject, QPoint
from PySide6.QtGui import QCursor
from PySide6.QtWidgets import QMenu

from designer.desktop import ladder
from designer.desktop.deeds.change_deeds import ChangeDeeds
from designer.desktop.deeds.version_deeds import VersionDeeds
from designer.desktop.deeds.way_deeds import WayDeeds
from designer.desktop.forms.kinds_of_rule import KINDS_OF_RULE
from designer.drill import edits
from designer.drill.drill import Drill
from designer.drill.setting import At

if TYPE_CHECKING:
    from designer.desktop.forms.context import Context
    from designer.desktop.ladder import Degree
    from designer.desktop.window import MainWindow

TEXTS = {"cues": "cues", "watch_for": "watch", "safety": "care"}
"""What is written where it stands, and the section of the card where it does."""


class DrillDeeds(QObject):
    """Records, progressions and variations added, opened and removed."""

    def __init__(self, window: MainWindow) -> None:
        super().__init__(window)
        self._window = window
        actions = window.actions_by_name
        for name in actions.names():
            kind, _, rest = name.partition(" ")
            if kind == "sheet":
                actions[name].triggered.connect(lambda _=False, rest=rest: self._open(rest))
            elif kind == "add":
                actions[name].triggered.connect(lambda _=False, rest=rest: self.make(rest))
        for name, _ in KINDS_OF_RULE:
            actions[f"rule {name}"].triggered.connect(lambda _=False, name=name: self.add_rule(name))
        actions.menus["jobs"].aboutToShow.connect(self._list_jobs)
        window.column.wanted.connect(self.make)
        window.column.said.connect(window.bottom.say)
        self._join_progressions()
        self._join_variations()
        self.ways = WayDeeds(window)
        self.versions = VersionDeeds(window)
        self.changes = ChangeDeeds(window)
        window.view.at_changed.connect(self._enable)
        window.document.shown_changed.connect(self._enable)
        self._enable()

    def make(self, make: str) -> None:
        """Make a first record of a kind and open it; a rule asks which kind, a ball takes the tool in hand."""
        window = self._window
        if make == "shot":
            tool = "ball" if window.view.setting.shots else "feed"
            window.view.set_tool(tool)  # type: ignore[arg-type]
            window.canvas.setFocus()
        elif make == "versions":
            self.versions.menu().popup(self._spot())
        elif make == "rule":
            self.rule_menu().popup(self._spot())
        elif make in TEXTS:
            self._write(TEXTS[make])
        elif make.startswith("unreached "):
            from designer.desktop.forms.fresh import new_unreached

            self._put(new_unreached(self._context, make.removeprefix("unreached ")), "Say what a ball not reached is")
        else:
            from designer.desktop.forms.fresh import NEW

            record = NEW[make](self._context)
            self._put(record, f"Add {'points' if make == 'points' else f'a {make}'}")

    def _write(self, section: str) -> None:
        """Put the caret into a new text of a section; what is watched for stands on no player's card."""
        column = self._window.column
        if not column.isVisible():
            self._window.actions_by_name["card"].trigger()
        if section == "watch" and column.bar.reader == "player":
            column.bar.choose("coach")
        column.write(section)

    def _spot(self) -> QPoint:
        """Return where a menu opens: under what was pressed in the card, by hand or by key, else at the pointer."""
        pressed = self._window.focusWidget()
        if not self._window.column.isAncestorOf(pressed):
            return QCursor.pos()
        return pressed.mapToGlobal(pressed.rect().bottomLeft())

    def rule_menu(self) -> QMenu:
        """Return the menu of the kinds of rule."""
        menu = QMenu(self._window)
        menu.addSection("A rule about")
        for name, words in KINDS_OF_RULE:
            menu.addAction(words, partial(self.add_rule, name))
        return menu

    def add_rule(self, do: str) -> None:
        """Add a rule that asks for ``do``, and open it."""
        from designer.desktop.forms.fresh import new_rule

        if self._put(new_rule(self._context, do), "Add a rule") and do == "keep":
            self._window.column.ask_where()

    @property
    def _context(self) -> Context:
        from designer.desktop.forms.context import Context

        window = self._window
        return Context(window.document.shown, window.view.at, window.view.setting, window.document.source)

    def _put(self, record: Any, label: str) -> bool:
        window = self._window
        put = window.perform(label, edits.put(window.document.drill, window.view.at, record))
        if put:
            window.column.refresh()
            self._open(record.id)
        return put

    def _open(self, about: str) -> None:
        if not self._window.column.isVisible():
            self._window.actions_by_name["card"].trigger()
        self._window.column.open(about)

    def _list_jobs(self) -> None:
        menu = self._window.actions_by_name.menus["jobs"]
        menu.clear()
        letters = self._context.letters
        for letter in letters:
            role = next((job.role for job in self._window.document.drill.jobs if job.letter == letter), "")
            words = f"{letter} – {role}" if role else letter
            menu.addAction(words.replace("&", "&&"), partial(self._open, letter))
        if not letters:
            menu.addAction("Put a player on the court first").setEnabled(False)

    # progressions

    def _join_progressions(self) -> None:
        window, actions = self._window, self._window.actions_by_name
        deeds: dict[str, Callable[[], Any]] = {
            "add": self.add_progression,
            "copy": self.copy_progression,
            "rename": window.tabs.rename,
            "form": lambda: self._open(window.view.at.progression),
            "earlier": lambda: self.move_progression(-1),
            "later": lambda: self.move_progression(1),
            "remove": self.remove_progression,
            "previous": lambda: window.view.go_to(ladder.neighbour(window.document.shown, window.view.at, -1)),
            "next": lambda: window.view.go_to(ladder.neighbour(window.document.shown, window.view.at, 1)),
        }
        for name, do in deeds.items():
            actions[f"progression {name}"].triggered.connect(lambda _=False, do=do: do())
        window.tabs.named.connect(self._rename)
        window.tabs.reordered.connect(self.reorder_progressions)
        window.tabs.asked.connect(lambda spot: self._pop("progression", spot))

    def add_progression(self) -> None:
        """Add a progression after the one in view, go to it and ask for its name."""
        document, at = self._window.document, self._window.view.at
        drill, made = ladder.added(document.drill, at.progression, document.source)
        if self._perform_at("Add a progression", drill, made):
            self._window.tabs.refresh()
            self._window.tabs.rename()

    def copy_progression(self) -> None:
        """Copy the progression in view, with its variations, and go to the copy."""
        document, at = self._window.document, self._window.view.at
        drill, made = ladder.copied(document.drill, at.progression, document.source)
        self._perform_at("Duplicate the progression", drill, made)

    def move_progression(self, by: int) -> None:
        """Move the progression in view in the order of play."""
        document, at = self._window.document, self._window.view.at
        self._window.perform("Move the progression", ladder.moved(document.drill, at.progression, by))

    def reorder_progressions(self, ids: Sequence[str]) -> None:
        """Put the progressions in another order of play; what is on the court in each stays as it is."""
        drill = self._window.document.drill
        self._window.perform("Change the order of the progressions", edits.reorder_progressions(drill, ids))

    def remove_progression(self) -> None:
        """Remove the progression in view; the others stay as they are."""
        document, at = self._window.document, self._window.view.at
        if len(document.drill.progressions) > 1:
            self._window.perform("Remove the progression", edits.remove_progression(document.drill, at.progression))

    def _rename(self, progression: str, name: str) -> None:
        document = self._window.document
        self._window.perform("Name the progression", edits.change_progression(document.drill, progression, name=name))

    # variations

    def _join_variations(self) -> None:
        window, actions = self._window, self._window.actions_by_name
        for degree in ("easier", "harder", "others"):
            actions[f"variation {degree}"].triggered.connect(lambda _=False, degree=degree: self.vary(degree))
        actions["variation form"].triggered.connect(self._open_variation)
        actions["variation remove"].triggered.connect(self.remove_variation)
        for name, place in (("go easier", "easier"), ("go as set", None), ("go harder", "harder")):
            actions[name].triggered.connect(lambda _=False, place=place: self._go(place))
        window.degrees.asked.connect(lambda spot: self._pop("variation", spot))

    def vary(self, degree: str) -> None:
        """Add a variation of the progression in view, go to it and ask for its name."""
        document, at = self._window.document, self._window.view.at
        drill, made = ladder.varied(document.drill, at.progression, cast("Degree", degree), document.source)
        words = {"easier": "an easier one", "harder": "a harder one"}.get(degree, "another one")
        if self._perform_at(f"Add {words}", drill, made):
            self._window.bottom.say("Change what is different here; all else follows “as set”.")

    def remove_variation(self) -> None:
        """Remove the variation in view."""
        document, at = self._window.document, self._window.view.at
        if at.variation is not None:
            self._window.perform("Remove the variation", edits.remove_variation(document.drill, at))

    def _open_variation(self) -> None:
        at = self._window.view.at
        if at.variation is not None:
            self._open(at.variation)

    def _go(self, degree: str | None) -> None:
        window = self._window
        if degree is None:
            window.view.go_to(At(window.view.at.progression))
            return
        found = ladder.of_degree(window.document.shown, window.view.at, cast("Degree", degree))
        if found:
            window.view.go_to(At(window.view.at.progression, found[0].id))

    def _perform_at(self, label: str, drill: Drill, at: At) -> bool:
        done = self._window.perform(label, drill)
        if done:
            self._window.view.go_to(at)
        return done

    def _pop(self, menu: str, spot: QPoint) -> None:
        self._window.actions_by_name.menus[menu].popup(spot)

    def _enable(self, *_: object) -> None:
        actions, drill, at = self._window.actions_by_name, self._window.document.shown, self._window.view.at
        ids = [progression.id for progression in drill.progressions]
        place = ids.index(at.progression) if at.progression in ids else 0
        actions["progression remove"].setEnabled(len(ids) > 1)
        for name in ("earlier", "previous"):
            actions[f"progression {name}"].setEnabled(place > 0)
        for name in ("later", "next"):
            actions[f"progression {name}"].setEnabled(place < len(ids) - 1)
        for name in ("form", "remove"):
            actions[f"variation {name}"].setEnabled(at.variation is not None)
