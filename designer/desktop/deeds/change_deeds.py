"""What the setting in view has of its own: marked on the court, listed, and let go one by one."""

from __future__ import annotations

from functools import partial
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, QPoint
from PySide6.QtWidgets import QMenu

from designer.desktop.ladder import BALL, IN_PLAY, Own, let_go, owns
from designer.drill.setting import below

if TYPE_CHECKING:
    from designer.desktop.ghosts import Ghosts
    from designer.desktop.window import MainWindow

_BESIDE = {IN_PLAY: "court in play", BALL: "ball to play with"}


class ChangeDeeds(QObject):
    """Joins the button with the number of changes, its list and the entry of the View menu."""

    def __init__(self, window: MainWindow) -> None:
        super().__init__(window)
        self._window = window
        self.ghosts: Ghosts | None = None
        self._action = window.actions_by_name["mark changes"]
        self._action.toggled.connect(self._mark)
        button = window.degrees.changes
        button.toggled.connect(self._action.setChecked)
        button.listed.connect(self._list)
        window.view.marking_changed.connect(button.setChecked)

    def menu(self) -> QMenu:
        """Return the list of what is changed here, each with what lets it go."""
        menu = QMenu(self._window)
        menu.aboutToHide.connect(menu.deleteLater)
        menu.addAction(self._action)
        found = owns(self._window.document.shown, self._window.view.at)
        menu.addSection("Of its own here")
        for own in found:
            words = f"{self._name(own)}:  {'bring it back' if own.how == 'gone' else 'follow again'}"
            action = menu.addAction(words.replace("&", "&&"), partial(self.follow, (own,)))
            if own.how == "new":
                action.setText(f"{self._name(own)}:  new here, take it away".replace("&", "&&"))
        menu.addSeparator()
        menu.addAction("All of it: follow again", partial(self.follow, found)).setEnabled(len(found) > 1)
        return menu

    def follow(self, found: tuple[Own, ...]) -> None:
        """Let go of ``found``, so that it follows the setting below again, as one step."""
        window = self._window
        label = f"Follow again: {self._name(found[0])}" if len(found) == 1 else "Follow again in all"
        window.perform(label, let_go(window.document.drill, window.view.at, (own.id for own in found)))

    def _name(self, own: Own) -> str:
        from designer.desktop.names import name_of

        if own.id in _BESIDE:
            return _BESIDE[own.id]
        view = self._window.view
        setting = view.setting if own.how != "gone" else below(self._window.document.shown, view.at)
        record = setting.find(own.id)
        return own.id if record is None else name_of(setting, record)

    def _mark(self, on: object) -> None:
        window = self._window
        window.view.set_marking(bool(on))
        if on and self.ghosts is None:
            from designer.desktop.ghosts import Ghosts

            self.ghosts = Ghosts(window.canvas)

    def _list(self) -> None:
        button = self._window.degrees.changes
        self.menu().popup(button.mapToGlobal(QPoint(0, button.height())))
