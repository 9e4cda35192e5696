"""The View and Help menus."""

from __future__ import annotations

from typing import TYPE_CHECKING, cast

from PySide6.QtCore import QObject

from designer import __doc__ as about_text
from designer.desktop import settings
from designer.desktop.canvas.deeds import on_court
from designer.desktop.framing import frame_half, frame_picked
from designer.desktop.look import CHOICES
from designer.desktop.parts import Parts
from designer.desktop.style import MENU_BAR, style
from designer.desktop.view import UNITS

if TYPE_CHECKING:
    from designer.court.regions import End
    from designer.desktop.keys_sheet import KeysSheet
    from designer.desktop.showing import PlayersShow
    from designer.desktop.view import Lie
    from designer.desktop.window import MainWindow


class ViewDeeds(QObject):
    """How things are shown."""

    def __init__(self, window: MainWindow) -> None:
        super().__init__(window)
        self._window = window
        window.menuBar().setStyleSheet(MENU_BAR)
        actions, view, canvas = window.actions_by_name, window.view, window.canvas
        actions["zoom in"].triggered.connect(canvas.zoom_in)
        actions["zoom out"].triggered.connect(canvas.zoom_out)
        actions["fit"].triggered.connect(canvas.fit)
        for end in ("near", "far"):
            actions[f"half {end}"].triggered.connect(lambda _=False, end=end: frame_half(canvas, cast("End", end)))
        actions["zoom picked"].triggered.connect(lambda: frame_picked(canvas, view.selection))
        view.selection_changed.connect(self._enable)
        actions["show"].triggered.connect(self.show)
        self.shown: PlayersShow | None = None
        for lie in ("fitting", "upright", "across"):
            actions[f"lie {lie}"].triggered.connect(lambda _=False, lie=lie: view.set_lie(cast("Lie", lie)))
            actions.tick(f"lie {lie}", on=view.lie == lie)
        actions["turned"].toggled.connect(view.set_turned)
        actions.tick("snapping", on=view.snapping)
        actions["snapping"].toggled.connect(view.set_snapping)
        actions["strip"].triggered.connect(lambda on: window.show_strip(shown=on))
        actions.tick("card")
        actions["card"].toggled.connect(window.column.setVisible)
        actions["full screen"].triggered.connect(self._fill_screen)
        for units in UNITS:
            actions[f"units {units}"].triggered.connect(lambda _=False, units=units: self._count_in(units))
            actions.tick(f"units {units}", on=view.units == units)
        for choice in CHOICES:
            actions[f"theme {choice}"].triggered.connect(lambda _=False, choice=choice: style().choose(choice))
            actions.tick(f"theme {choice}", on=settings.theme() == choice)
        self.keys: KeysSheet | None = None
        actions["keys"].triggered.connect(self._show_keys)
        canvas.keys_wanted.connect(self._show_keys)
        actions["about"].triggered.connect(self._show_about)
        parts = Parts((canvas, window.column, window.bottom, window.tabs, window.strip), self)
        actions["next part"].triggered.connect(lambda: parts.go())
        actions["part before"].triggered.connect(lambda: parts.go(back=True))
        self._enable(frozenset())

    def _fill_screen(self, on: object) -> None:
        if on:
            self._window.showFullScreen()
        else:
            self._window.showNormal()

    def show(self) -> None:
        """Show the players the drill as it is now, on the whole screen."""
        from designer.desktop.showing import PlayersShow

        window = self._window
        view = window.view
        self.shown = PlayersShow(window.document.drill, view.at, units=view.units, turned=view.turned, parent=window)
        self.shown.left.connect(self._back)
        self.shown.setGeometry(window.screen().geometry())
        self.shown.showFullScreen()
        self.shown.activateWindow()

    def _back(self) -> None:
        """Give the keyboard back to the court."""
        self._window.activateWindow()
        self._window.canvas.setFocus()

    def _enable(self, picked: frozenset[str]) -> None:
        self._window.actions_by_name["zoom picked"].setEnabled(bool(picked & on_court(self._window.view.setting)))

    def _count_in(self, units: str) -> None:
        settings.set_units(units)
        self._window.view.set_units(units)  # type: ignore[arg-type]

    def _show_keys(self) -> None:
        from designer.desktop.keys_sheet import KeysSheet

        self.keys = KeysSheet(self._window)
        self.keys.open()

    def _show_about(self) -> None:
        from designer.desktop.about import versions_text

        self._window.prompts.say(self._window, "Drill Designer", f"{(about_text or '').strip()}\n\n{versions_text()}")
