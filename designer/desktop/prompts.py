"""Every question that the program asks in a box of its own, in one object, so that a test can answer for the user."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from pathlib import Path
from typing import TYPE_CHECKING, Literal

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QWidget

if TYPE_CHECKING:
    from PySide6.QtPrintSupport import QPrinter
    from PySide6.QtWidgets import QMessageBox

Unsaved = Literal["save", "discard", "cancel"]

DRILLS = "Drills (*.drill.json *.json)"
DRILLS_AND_CARDS = "Drills and cards (*.drill.json *.json *.pdf)"
CARDS = "Cards (*.pdf)"
HANDBOOKS = "Handbooks (*.handbook.json)"
PICTURES = "Pictures (*.svg *.png)"


class Prompts:
    """Asks with the platform's dialogs. ``None`` and "cancel" mean that the user changed their mind."""

    def unsaved(self, parent: QWidget, name: str) -> Unsaved:
        """Ask what to do with changes that are not saved."""
        from PySide6.QtWidgets import QMessageBox

        box = self._box(parent, f"Save the changes to “{name}”?", "Changes that are not saved are lost.")
        save = box.addButton("Save", QMessageBox.ButtonRole.AcceptRole)
        discard = box.addButton("Don’t save", QMessageBox.ButtonRole.DestructiveRole)
        box.addButton("Cancel", QMessageBox.ButtonRole.RejectRole)
        box.setDefaultButton(save)
        box.exec()
        clicked = box.clickedButton()
        return "save" if clicked is save else "discard" if clicked is discard else "cancel"

    def yes(self, parent: QWidget, question: str, more: str, verb: str) -> bool:
        """Ask for leave to do something that cannot be undone; ``verb`` is the word on the button."""
        from PySide6.QtWidgets import QMessageBox

        box = self._box(parent, question, more)
        do = box.addButton(verb, QMessageBox.ButtonRole.AcceptRole)
        box.addButton("Cancel", QMessageBox.ButtonRole.RejectRole)
        box.exec()
        return box.clickedButton() is do

    def say(self, parent: QWidget, sentence: str, more: str = "") -> None:
        """Tell the user something that went wrong."""
        from PySide6.QtWidgets import QMessageBox

        box = self._box(parent, sentence, more)
        box.addButton("Close", QMessageBox.ButtonRole.AcceptRole)
        box.exec()

    def choose(self, parent: QWidget, question: str, more: str, answers: Sequence[str]) -> int | None:
        """Ask which of ``answers`` is meant, a button each; return its number from 0. Enter alone chooses none of them."""
        from PySide6.QtWidgets import QMessageBox

        box = self._box(parent, question, more)
        buttons = [box.addButton(_capital(answer), QMessageBox.ButtonRole.AcceptRole) for answer in answers]
        box.setDefaultButton(box.addButton("Cancel", QMessageBox.ButtonRole.RejectRole))
        box.exec()
        clicked = box.clickedButton()
        return next((number for number, button in enumerate(buttons) if button is clicked), None)

    def text(self, parent: QWidget, question: str, value: str = "") -> str | None:
        """Ask for one line of text."""
        from PySide6.QtWidgets import QInputDialog

        answer, accepted = QInputDialog.getText(parent, "Drill Designer", question, text=value)
        return answer if accepted else None

    def open_paths(self, parent: QWidget, folder: Path) -> tuple[Path, ...]:
        """Ask which drills to open."""
        from PySide6.QtWidgets import QFileDialog

        names, _ = QFileDialog.getOpenFileNames(parent, "Open", str(folder), f"{DRILLS_AND_CARDS};;{DRILLS}")
        return tuple(map(Path, names))

    def open_handbook(self, parent: QWidget, folder: Path) -> Path | None:
        """Ask which handbook to open."""
        from PySide6.QtWidgets import QFileDialog

        name, _ = QFileDialog.getOpenFileName(parent, "Open", str(folder), HANDBOOKS)
        return Path(name) if name else None

    def save_path(self, parent: QWidget, suggestion: Path, kinds: str) -> Path | None:
        """Ask where to write a file; the dialog itself asks before one is overwritten."""
        from PySide6.QtWidgets import QFileDialog

        name, _ = QFileDialog.getSaveFileName(parent, "Save", str(suggestion), kinds)
        return Path(name) if name else None

    def printer(self, parent: QWidget, prepare: Callable[[QPrinter], None]) -> QPrinter | None:
        """Ask which printer to print on; ``prepare`` sets what the dialog begins with."""
        from PySide6.QtPrintSupport import QPrintDialog, QPrinter

        printer = QPrinter(QPrinter.PrinterMode.HighResolution)
        prepare(printer)
        dialog = QPrintDialog(printer, parent)
        dialog.setWindowTitle("Print")
        return printer if dialog.exec() == QPrintDialog.DialogCode.Accepted else None

    def _box(self, parent: QWidget, sentence: str, more: str) -> QMessageBox:
        from PySide6.QtWidgets import QMessageBox

        box = QMessageBox(parent)
        box.setWindowTitle("Drill Designer")
        # A drill's title may hold what a label would take for markup.
        box.setTextFormat(Qt.TextFormat.PlainText)
        box.setText(sentence)
        box.setInformativeText(more)
        # Versions and the names of files are there to be copied.
        box.setTextInteractionFlags(
            Qt.TextInteractionFlag.TextSelectableByMouse | Qt.TextInteractionFlag.TextSelectableByKeyboard
        )
        return box


def _capital(words: str) -> str:
    return words[:1].upper() + words[1:]
