"""The View and Help menus."""

from __future__ import annotations

from typing import TYPE_CHECKING, cast

from PySide6.QtCore import QObject

from designer import __doc__ as about_text
from designer.desktop import settings
from designer.desktop.canvas.keys import LETTERS, OTHER_KEYS
from designer.desktop.look import CHOICES
from designer.desktop.style import MENU_BAR, style
from designer.desktop.view import UNITS

if TYPE_CHECKING:
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
        actions["keys"].triggered.connect(self._show_keys)
        canvas.keys_wanted.connect(self._show_keys)
        actions["about"].triggered.connect(self._show_about)

    def _fill_screen(self, on: object) -> None:
        if on:
            self._window.showFullScreen()
        else:
            self._window.showNormal()

    def _count_in(self, units: str) -> None:
        settings.set_units(units)
        self._window.view.set_units(units)  # type: ignore[arg-type]

    def _show_keys(self) -> None:
        lines = [f"{use.letter}\t{use.name}" for use in LETTERS]
        lines += [f"{key}\t{words}" for key, words in OTHER_KEYS]
        self._window.prompts.say(self._window, "Keys on the court", "\n".join(lines))

    def _show_about(self) -> None:
        from importlib.metadata import PackageNotFoundError, version

        try:
            number = version("drill-designer")
        except PackageNotFoundError:
            number = "from a checkout"
        self._window.prompts.say(self._window, f"Drill Designer, {number}", (about_text or "").strip())
