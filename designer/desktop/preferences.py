"""What the program remembers of its user, in one place to look at and change. Each change holds at once."""

from __future__ import annotations

from typing import Any, Final

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QGridLayout, QLabel, QLineEdit, QVBoxLayout, QWidget

from designer.court.standards import court_names
from designer.desktop import settings
from designer.desktop.controls import DropDown, FilledButton, Segments, fill, tinted
from designer.desktop.dialog import Dialog
from designer.desktop.fonts import CONTROL, NOTE, font, scaled
from designer.desktop.look import CHOICES
from designer.desktop.papers import CHOICES as PAPERS
from designer.desktop.style import field_sheet, look, style

UNITS: Final = (("rackets", "Rackets and strides"), ("metres", "Metres"), ("feet", "Feet and inches"))
HANDS: Final = (("right", "Right"), ("left", "Left"))
LANGUAGES: Final = (
    ("en", "English"),
    ("cs", "Čeština"),
    ("da", "Dansk"),
    ("de", "Deutsch"),
    ("es", "Español"),
    ("fr", "Français"),
    ("it", "Italiano"),
    ("nl", "Nederlands"),
    ("pl", "Polski"),
    ("pt", "Português"),
    ("fi", "Suomi"),
    ("sv", "Svenska"),
)
"""Languages that a coach may write in, by their own names. ISO 639-1."""


class Preferences(Dialog):
    """The box. ``changed`` comes after each change, with its name."""

    changed = Signal(str)

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.setWindowTitle("Preferences")
        self.boxes: dict[str, QWidget] = {}
        tinted(self, look().window)
        whole = QVBoxLayout(self)
        whole.setContentsMargins(28, 20, 28, 20)
        whole.setSpacing(6)
        self._grid = QGridLayout()
        self._grid.setHorizontalSpacing(18)
        self._grid.setVerticalSpacing(9)
        self._grid.setColumnStretch(1, 1)
        whole.addLayout(self._grid)
        self._fill()
        whole.addSpacing(14)
        close = FilledButton("Close")
        close.clicked.connect(self.close)
        whole.addWidget(close, 0, Qt.AlignmentFlag.AlignRight)
        width = scaled(560)
        self.setMinimumSize(width, whole.totalHeightForWidth(width))  # Qt would take two thirds of the screen at most

    def _fill(self) -> None:
        themes = tuple((choice, "As the system" if choice == "system" else choice.capitalize()) for choice in CHOICES)
        self._segments("units", "Distances in", UNITS, settings.units())
        self._segments("theme", "Colours", themes, settings.theme())
        self._drop_down("paper", "Cards on", PAPERS, settings.paper())
        levels = tuple((name, f"{name.capitalize()} players") for name in settings.LEVELS)
        self._drop_down("level", "Numbers are for", levels, settings.level())
        self._heading("A new drill")
        courts = tuple((name, name.capitalize()) for name in court_names())
        self._drop_down("court", "Court", courts, settings.court())
        self._segments("hand", "Racket in which hand", HANDS, settings.hand())
        self._drop_down("language", "You write in", LANGUAGES, settings.language())
        self._note("The program’s own sentences are in English; a card says which language yours are in.")
        self._line("author", "Author", settings.author(), "nobody named")

    def _row(self, words: str, box: QWidget) -> None:
        row = self._grid.rowCount()
        label = QLabel(words)
        label.setFont(font(CONTROL))
        label.setStyleSheet(f"color: {look().soft};")
        label.setBuddy(box)
        box.setAccessibleName(words)
        self._grid.addWidget(label, row, 0, Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter)
        self._grid.addWidget(box, row, 1)

    def _heading(self, words: str) -> None:
        label = QLabel(words)
        label.setFont(font(CONTROL, bold=True))
        label.setContentsMargins(0, 14, 0, 0)
        self._grid.addWidget(label, self._grid.rowCount(), 0, 1, 2)

    def _note(self, words: str) -> None:
        label = QLabel(words)
        label.setFont(font(NOTE))
        label.setStyleSheet(f"color: {look().soft};")
        label.setWordWrap(True)
        self._grid.addWidget(label, self._grid.rowCount(), 1)

    def _segments(self, name: str, words: str, options: tuple[tuple[str, str], ...], value: str) -> None:
        box = Segments(options, may_be_empty=False)
        box.show_values((value,))
        box.chosen.connect(lambda values: self._take(name, values[0]))
        self.boxes[name] = box
        self._row(words, box)

    def _drop_down(self, name: str, words: str, options: tuple[tuple[str, str], ...], value: str) -> None:
        box = DropDown()
        fill(box, options, value)
        box.activated.connect(lambda _: self._take(name, box.currentData()))
        self.boxes[name] = box
        self._row(words, box)

    def _line(self, name: str, words: str, value: str, nothing: str) -> None:
        box = QLineEdit(value)
        box.setStyleSheet(field_sheet(look()))
        box.setPlaceholderText(nothing)
        box.editingFinished.connect(lambda: self._take(name, box.text().strip()))
        self.boxes[name] = box
        self._row(words, box)

    def _take(self, name: str, value: Any) -> None:
        if name == "theme":
            style().choose(value)
        else:
            getattr(settings, f"set_{name}")(value)
        self.changed.emit(name)
