"""The entries of the Edit menu for several things at once: clipboard, line, spacing, copies and kinds."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING, Any

from pydantic import ValidationError
from PySide6.QtCore import QObject
from PySide6.QtWidgets import QApplication

from designer.desktop.canvas import arrange
from designer.desktop.canvas.deeds import on_court
from designer.desktop.canvas.names import called
from designer.desktop.canvas.placing import NoLetterLeft
from designer.drill.drill import Drill

if TYPE_CHECKING:
    from designer.desktop.window import MainWindow


class ArrangeDeeds(QObject):
    """Each is one step with a name of its own."""

    def __init__(self, window: MainWindow) -> None:
        super().__init__(window)
        self._window = window
        self._bench = window.canvas.bench
        deeds: dict[str, Callable[[], Any]] = {
            "cut": self.cut,
            "copy": self.copy,
            "paste": self.paste,
            "align across": lambda: self.align("across"),
            "align along": lambda: self.align("along"),
            "spread": self.spread,
            "copy to half": lambda: self.copy_over("half"),
            "copy to end": lambda: self.copy_over("end"),
            "row": self.row,
            "select kind": self.select_kind,
        }
        for name, do in deeds.items():
            window.actions_by_name[name].triggered.connect(lambda _=False, do=do: do())
        window.view.selection_changed.connect(self._enable)
        self._enable()

    def cut(self) -> None:
        """Put what is picked on the clipboard and take it off the court."""
        from designer.desktop.canvas.clipboard import cut_picked

        mime = cut_picked(self._bench)
        if mime is not None:
            QApplication.clipboard().setMimeData(mime)

    def copy(self) -> None:
        """Put what is picked on the clipboard, as a part of a drill and as words."""
        from designer.desktop.canvas.clipboard import copied_mime

        mime = copied_mime(self._bench)
        if mime is not None:
            QApplication.clipboard().setMimeData(mime)

    def paste(self) -> None:
        """Put what the clipboard holds on the court."""
        from designer.desktop.canvas.clipboard import paste

        paste(self._bench, QApplication.clipboard().mimeData())

    def align(self, direction: arrange.Across) -> None:
        """Put what is picked in one line."""
        bench, ids = self._bench, self._picked()
        self._settle(
            f"Line up {called(bench.setting, ids)}",
            lambda: (arrange.aligned(bench.drill, bench.at, ids, direction), None),
        )

    def spread(self) -> None:
        """Space what is picked evenly in the direction in which it stands farther apart."""
        bench, ids = self._bench, self._picked()
        direction = arrange.wider(bench.setting, ids)
        self._settle(
            f"Spread {called(bench.setting, ids)} evenly",
            lambda: (arrange.spread(bench.drill, bench.at, ids, direction), None),
        )

    def copy_over(self, side: arrange.Side) -> None:
        """Copy what is picked to the other half or the other end."""
        bench, ids = self._bench, self._picked()
        self._settle(
            f"Copy {called(bench.setting, ids)} to the other {side}",
            lambda: arrange.copied_over(bench.drill, bench.at, ids, side, bench.source),
        )

    def row(self) -> None:
        """Ask how many there should be, and make a row of what is picked."""
        bench, ids = self._bench, self._picked()
        if not ids:
            return
        answer = self._window.prompts.text(
            self._window, "How many in the row? “5” is across, one racket apart; “5 along” is one stride apart.", "5"
        )
        if answer is None:
            return
        count, _, rest = answer.strip().partition(" ")
        if not count.isdecimal() or len(count) > 4 or rest.strip() not in ("", "across", "along"):
            bench.said.emit("Say how many, and “along” where the row runs along the court: “5” or “5 along”.")
            return
        direction: arrange.Across = "along" if rest.strip() == "along" else "across"
        self._settle(
            f"Make a row of {int(count)}",
            lambda: arrange.in_a_row(bench.drill, bench.at, ids, int(count), direction, bench.source),
        )

    def select_kind(self) -> None:
        """Pick everything of the kinds that are picked."""
        self._window.view.select(arrange.of_the_same_kind(self._window.view.setting, self._picked()))

    def _picked(self) -> frozenset[str]:
        return self._window.view.selection & on_court(self._bench.setting)

    def _settle(self, label: str, make: Callable[[], tuple[Drill, tuple[str, ...] | None]]) -> None:
        try:
            drill, ids = make()
        except NoLetterLeft as reason:
            self._bench.said.emit(f"No more players: {reason}.")
        except ValidationError:
            self._bench.said.emit("There is no room for that on the drawing.")
        except ValueError as reason:
            self._bench.said.emit(str(reason))
        else:
            self._bench.perform(label, drill, ids)

    def _enable(self, *_: object) -> None:
        actions, count = self._window.actions_by_name, len(self._picked())
        for name in ("cut", "copy", "copy to half", "copy to end", "row", "select kind"):
            actions[name].setEnabled(count > 0)
        for name in ("align across", "align along"):
            actions[name].setEnabled(count > 1)
        actions["spread"].setEnabled(count > 2)
