"""The Card menu and the button that makes the card."""

from __future__ import annotations

from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING, cast

from PySide6.QtCore import QObject, QUrl
from PySide6.QtGui import QDesktopServices, QGuiApplication

from designer.desktop.prompts import CARDS, PICTURES
from designer.storage.writing import Unwritable

if TYPE_CHECKING:
    from designer.desktop.printing import Paper
    from designer.desktop.window import MainWindow
    from designer.wording.card import Reader


class CardDeeds(QObject):
    """Whose card is shown, and what is made of it."""

    def __init__(self, window: MainWindow) -> None:
        super().__init__(window)
        self._window = window
        self._paper: Paper = "a5"
        self._made: dict[Path, Path] = {}
        actions, bar = window.actions_by_name, window.column.bar
        for reader in ("player", "coach", "stand-in"):
            action = actions[f"reader {reader}"]
            action.triggered.connect(lambda _=False, reader=reader: bar.choose(cast("Reader", reader)))
        bar.chosen.connect(self._show_reader)
        for paper in ("a5", "a4"):
            actions[f"paper {paper}"].triggered.connect(lambda _=False, paper=paper: self._take(paper))
        actions.tick("paper a5")
        window.column.ask_all = window.document.path is not None
        actions.tick("ask all", on=window.column.ask_all)
        actions["ask all"].toggled.connect(self._ask)
        for name in ("print", "make card"):
            actions[name].triggered.connect(lambda: self.make())
        actions["make card as"].triggered.connect(lambda: self.make(elsewhere=True))
        actions["export"].triggered.connect(self.export)
        actions["copy text"].triggered.connect(self.copy_text)
        actions.menus["you"].aboutToShow.connect(self._list_players)
        window.column.printed.connect(self.make)
        window.document.shown_changed.connect(lambda *_: self._show_reader())
        window.view.at_changed.connect(lambda _: self._show_reader())
        self._chosen: str | None = None
        self._show_reader()

    def make(self, *, elsewhere: bool = False) -> None:
        """Make the card of the setting in view for the chosen reader; ask where only the first time."""
        from designer.desktop.printing import card_path, write_card

        window = self._window
        reader = window.column.bar.reader
        offered = card_path(window.filing, window.view, reader)
        path = None if elsewhere else self._made.get(offered)
        if path is None:
            path = window.prompts.save_path(window, offered, CARDS)
        if path is None:
            return
        if path.suffix.lower() != ".pdf":
            path = path.with_name(f"{path.name}.pdf")
        grey = window.actions_by_name["grey"].isChecked()
        try:
            notices = write_card(path, window.filing, window.view, reader, paper=self._paper, grey=grey)
        except Unwritable as reason:
            window.prompts.say(window, "The card was not made.", str(reason))
            return
        self._made[offered] = path
        window.actions_by_name["ask all"].setChecked(True)
        said = " ".join((f"The card is made: {path.name}.", *notices))
        window.notice.say(
            "card", said, ("Open it", lambda: _open(path)), ("Open its folder", lambda: _open(path.parent))
        )

    def export(self) -> None:
        """Ask where, and write the picture of the court."""
        from designer.desktop.printing import write_picture

        window = self._window
        path = window.prompts.save_path(window, window.filing.suggestion(".svg"), PICTURES)
        if path is None:
            return
        if path.suffix.lower() not in (".svg", ".png"):
            path = path.with_name(f"{path.name}.svg")
        try:
            write_picture(path, window.view)
        except Unwritable as reason:
            window.prompts.say(window, "The picture was not exported.", str(reason))
            return
        window.notice.say("picture", f"The picture is exported: {path.name}.", ("Open it", lambda: _open(path)))

    def copy_text(self) -> None:
        """Put all that a coach's card says on the clipboard, as plain text."""
        from designer.wording.describe import describe

        window = self._window
        text = describe(window.document.drill, window.view.at, units=window.view.units)
        QGuiApplication.clipboard().setText(text)
        window.bottom.say("The card is on the clipboard.")

    def _show_reader(self, *_: object) -> None:
        window = self._window
        reader = window.column.bar.reader
        window.actions_by_name.tick(f"reader {reader}")
        letters = self._players()
        you = self._chosen if self._chosen in letters else letters[0] if letters else None
        window.view.set_you(you if reader == "player" else None)

    def _players(self) -> list[str]:
        window = self._window
        machines = {job.letter for job in window.document.shown.jobs if job.by != "player"}
        plays = sorted(spot.job for spot in window.view.setting.spots.values() if spot.task == "plays")
        return [letter for letter in plays if letter not in machines]

    def _list_players(self) -> None:
        menu = self._window.actions_by_name.menus["you"]
        menu.clear()
        for letter in self._players():
            action = menu.addAction(letter, partial(self._be, letter))
            action.setCheckable(True)
            action.setChecked(letter == self._window.view.you)

    def _be(self, letter: str) -> None:
        self._chosen = letter
        self._window.column.bar.choose("player")
        self._show_reader()
        self._window.column.refresh()

    def _take(self, paper: str) -> None:
        self._paper = cast("Paper", paper)

    def _ask(self, on: object) -> None:
        self._window.column.ask_all = bool(on)
        self._window.column.refresh()


def _open(path: Path) -> None:
    QDesktopServices.openUrl(QUrl.fromLocalFile(str(path)))
