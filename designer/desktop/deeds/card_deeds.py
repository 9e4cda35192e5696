"""The Card menu and the button that makes the card."""

from __future__ import annotations

from collections.abc import Callable
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING, Any, cast

from PySide6.QtCore import QObject, QUrl
from PySide6.QtGui import QDesktopServices, QGuiApplication

from designer.desktop import settings
from designer.desktop.fill_meter import FillMeter
from designer.desktop.first_card import card_was_made, remember_card
from designer.desktop.papers import CHOICES, USUAL
from designer.desktop.prompts import CARDS, PICTURES

if TYPE_CHECKING:
    from designer.desktop.print_preview import PrintPreview
    from designer.desktop.printing import Order
    from designer.desktop.today_form import TodayForm
    from designer.desktop.window import MainWindow
    from designer.desktop.work import Do, Progress
    from designer.wording.card import Reader


class CardDeeds(QObject):
    """Whose card is shown, and what is made of it."""

    def __init__(self, window: MainWindow) -> None:
        super().__init__(window)
        self._window = window
        self._paper = settings.paper()
        self._each = False
        self._made: dict[Path, Path] = {}
        self.preview: PrintPreview | None = None
        actions, bar = window.actions_by_name, window.column.bar
        for reader in ("player", "coach", "stand-in"):
            action = actions[f"reader {reader}"]
            action.triggered.connect(lambda _=False, reader=reader: bar.choose(cast("Reader", reader)))
        bar.chosen.connect(self._show_reader)
        for paper, _ in USUAL:
            actions[f"paper {paper}"].triggered.connect(lambda _=False, paper=paper: self.take_paper(paper))
        if self._paper in dict(USUAL):
            actions.tick(f"paper {self._paper}")
        actions.menus["paper"].aboutToShow.connect(self._list_papers)
        window.column.ask_all = card_was_made(window.document.drill.id)
        actions.tick("ask all", on=window.column.ask_all)
        actions["ask all"].toggled.connect(self._ask)
        actions["make card"].triggered.connect(lambda: self.make())
        actions["print"].triggered.connect(self.print)
        actions["copy picture"].triggered.connect(self.copy_picture)
        actions["today"].triggered.connect(lambda: self.name_players())
        actions["make card as"].triggered.connect(lambda: self.make(elsewhere=True))
        actions["export"].triggered.connect(self.export)
        actions["copy text"].triggered.connect(self.copy_text)
        actions.menus["you"].aboutToShow.connect(self._list_players)
        window.column.printed.connect(self.print)
        window.document.shown_changed.connect(lambda *_: self._show_reader())
        window.view.at_changed.connect(lambda _: self._show_reader())
        self._chosen: str | None = None
        self._show_reader()
        self.meter = FillMeter(window, lambda: self._paper)

    def make(self, *, elsewhere: bool = False) -> None:
        """Make the card of the setting in view for the chosen reader; ask where only the first time."""
        from designer.desktop.printing import card_path, ordered

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
        order = ordered(window.filing, window.view, reader, paper=self._paper, grey=grey, each=self._each)
        self._begin(
            "Making the card",
            partial(_written, path, order),
            lambda notices: self._tell_made(offered, path, notices),
            "The card was not made.",
        )

    def _tell_made(self, offered: Path, path: Path, notices: tuple[str, ...]) -> None:
        window = self._window
        self._kept(offered, path)
        said = " ".join((f"The card is made: {path.name}.", *notices))
        window.notice.say(
            "card", said, ("Open it", lambda: _open(path)), ("Open its folder", lambda: _open(path.parent))
        )

    def _begin(self, words: str, do: Do, done: Callable[[Any], None], sorry: str) -> None:
        window = self._window
        if not window.work.begin(words, do, done, lambda reason: window.prompts.say(window, sorry, reason)):
            window.bottom.say(f"{window.work.busy} …")

    def name_players(self) -> TodayForm:
        """Show the form of who plays today, and return it."""
        from designer.desktop.today_form import TodayForm

        form = TodayForm(self._window)
        form.kept.connect(self.meter.refresh)
        form.open()
        return form

    def print(self) -> None:
        """Show the very pages of the card, to be printed or kept as a PDF."""
        from designer.desktop.print_preview import PrintPreview

        window = self._window
        grey = window.actions_by_name["grey"].isChecked()
        self.preview = PrintPreview(window, self._paper, grey=grey, each=self._each)
        self.preview.printed.connect(self._came_out)
        self.preview.kept.connect(self._kept)
        self.preview.open()

    def _kept(self, offered: Path, path: Path) -> None:
        self._made[offered] = path
        self._came_out()

    def _came_out(self) -> None:
        """Once there is a card, every question that is still open is asked."""
        remember_card(self._window.document.drill.id)
        self._window.actions_by_name["ask all"].setChecked(True)

    def export(self) -> None:
        """Ask where, and write the picture of the court."""
        from designer.desktop.printing import ordered_court, write_picture

        window = self._window
        path = window.prompts.save_path(window, window.filing.suggestion(".svg"), PICTURES)
        if path is None:
            return
        if path.suffix.lower() not in (".svg", ".png"):
            path = path.with_name(f"{path.name}.svg")
        do = partial(write_picture, path, ordered_court(window.view))
        self._begin("Exporting the picture", do, self._tell_exported, "The picture was not exported.")

    def _tell_exported(self, path: Path) -> None:
        self._window.notice.say("picture", f"The picture is exported: {path.name}.", ("Open it", lambda: _open(path)))

    def copy_picture(self) -> None:
        """Put the court on the clipboard, as pixels and as a drawing at once."""
        from designer.desktop.printing import both_pictures, ordered_court

        do = partial(both_pictures, ordered_court(self._window.view))
        self._begin("Copying the picture", do, self._put_picture, "The picture was not copied.")

    def _put_picture(self, both: tuple[bytes, bytes]) -> None:
        from designer.desktop.printing import copied_picture

        QGuiApplication.clipboard().setMimeData(copied_picture(*both))
        self._window.bottom.say("The picture is on the clipboard.")

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
            action.setChecked(letter == self._window.view.you and not self._each)
        if self._players():
            menu.addSeparator()
            each = menu.addAction("Each of them, all cards in one file", self._be_each)
            each.setCheckable(True)
            each.setChecked(self._each)

    def _be_each(self) -> None:
        self._each = True
        self._window.column.bar.choose("player")

    def _be(self, letter: str) -> None:
        self._chosen, self._each = letter, False
        self._window.column.bar.choose("player")
        self._show_reader()
        self._window.column.refresh()

    def _list_papers(self) -> None:
        """Put the less usual papers under the usual two, once the menu is first opened, and tick the chosen one."""
        menu = self._window.actions_by_name.menus["paper"]
        group = self._window.actions_by_name["paper a5"].actionGroup()
        if len(menu.actions()) == len(USUAL):
            for name, words in CHOICES[len(USUAL) :]:
                action = menu.addAction(words, partial(self.take_paper, name))
                action.setObjectName(f"paper {name}")
                action.setCheckable(True)
                group.addAction(action)
        for action in menu.actions():
            action.setChecked(action.objectName() == f"paper {self._paper}")

    def take_paper(self, paper: str) -> None:
        """Make cards on another paper, and remember it."""
        self._paper = paper
        settings.set_paper(paper)
        self.meter.refresh()

    def _ask(self, on: object) -> None:
        self._window.column.ask_all = bool(on)
        self._window.column.refresh()


def _written(path: Path, order: Order, progress: Progress) -> tuple[str, ...]:
    """Make the card and write it, unless it was stopped while it was made; return what could not be printed."""
    from designer.desktop.printing import made
    from designer.storage.writing import write_file

    pdf, notices = made(order)
    progress.step(1, 1)
    write_file(path, pdf)
    return notices


def _open(path: Path) -> None:
    QDesktopServices.openUrl(QUrl.fromLocalFile(str(path)))
