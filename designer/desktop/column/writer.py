"""Writes the card's own texts where they stand: which one has the caret, and what its keys do to the drill."""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

from PySide6.QtCore import QObject, Qt, QTimer

from designer.desktop.column.text_row import TextRow
from designer.desktop.fonts import BODY, font

if TYPE_CHECKING:
    from designer.desktop.bursts import Bursts
    from designer.desktop.column.column import CardColumn
    from designer.desktop.document import Document


@dataclass(frozen=True, slots=True)
class Kind:
    """What a section's own texts are: their field in the drill, the first word of their keys, and their names."""

    field: str
    key: str
    question: str
    said: str


KINDS: Final = {
    "cues": Kind("cues", "cue", "What do you say? Three to six words", "the cues"),
    "watch": Kind("watch_for", "watch", "What do you watch for?", "what to watch for"),
    "care": Kind("safety", "care", "What must be looked after on your court?", "the cautions"),
}
"""The sections that hold texts as they were typed, by their key."""

ON_A_PLAYER_S: Final = 2
"""How many cues a player's card has; the coach's has all."""

_KEY: Final = re.compile(r"^(cues|watch|care) (?:cue|watch|care):(\d+)$")


def place_of(key: str) -> tuple[str, int] | None:
    """Return the section and the number from 0 of the text behind the sentence ``key`` of the column, else None."""
    found = _KEY.match(key)
    return None if found is None else (found[1], int(found[2]) - 1)


class Writer(QObject):
    """The text that is being written, None between times.

    ``section`` and ``number`` say where it stands; while it is empty it is not in the drill, and those after it count
    on as if it was not there.
    """

    def __init__(self, column: CardColumn, document: Document, bursts: Bursts) -> None:
        super().__init__(column)
        self._column, self._document, self._bursts = column, document, bursts
        self.row: TextRow | None = None
        self.section = ""
        self.number = 0
        self._before: tuple[str, ...] = ()
        self._after: tuple[str, ...] = ()
        self._begun = 0

    def begin(self, section: str, number: int | None = None, *, fresh: bool = False) -> None:
        """Put the caret into a text; with ``fresh`` or without ``number`` into a new one, there or after the last."""
        texts = self._texts(section)
        number = len(texts) if number is None else min(number, len(texts))
        self._drop()
        self._bursts.end()
        fresh = fresh or number == len(texts)
        self.section, self.number = section, number
        self._before, self._after = texts[:number], texts[number + (not fresh) :]
        self._begun = self._document.stack.index()
        kind, column = KINDS[section], self._column
        face = font(BODY + 1 if column.is_wide else BODY)
        row = self.row = TextRow(kind.question, face, 20, column.writing, bullet=not self._brief)
        row.show_text("" if fresh else texts[number])
        row.typed.connect(self._typed)
        row.next_wanted.connect(self._next)
        row.emptied.connect(self._empty)
        row.taken_back.connect(self._take_back)
        row.left.connect(lambda: QTimer.singleShot(0, self, lambda: self._leave(row)))
        column.refresh()
        row.begin()
        column.scroll_to(row)

    def follow(self) -> None:
        """Take over what stands in the drill now, where something else has changed it."""
        if self.row is None:
            return
        texts = self._texts(self.section)
        if texts != self._composed(self.row.value):
            self.number = min(self.number, len(texts))
            self._before, self._after = texts[: self.number], texts[self.number + 1 :]
            self.row.show_text(texts[self.number] if self.number < len(texts) else "")

    def replaces(self, key: str) -> bool:
        """Whether the sentence ``key`` is the one that is written."""
        return place_of(key) == (self.section, self.number) and self._is_kept

    def stands_after(self, key: str) -> bool:
        """Whether what is written stands after the sentence ``key`` of its section."""
        place = place_of(key)
        return place is not None and place[1] < self.number

    @property
    def _brief(self) -> bool:
        return self._column.bar.reader == "player"

    @property
    def _is_kept(self) -> bool:
        return self.row is not None and bool(self.row.value.strip())

    def end(self) -> None:
        """Stop writing; say so where what was written stands on another card than the one in view."""
        if self.row is not None:
            if self.section == "cues" and self.number >= ON_A_PLAYER_S and self._is_kept and self._brief:
                self._column.said.emit("A player’s card has the first two cues; this one is on the coach’s.")
            self._drop()
            self._column.refresh()

    def _texts(self, section: str) -> tuple[str, ...]:
        texts: tuple[str, ...] = getattr(self._document.shown, KINDS[section].field)
        return texts

    def _composed(self, text: str) -> tuple[str, ...]:
        return (*self._before, *((text,) if text.strip() else ()), *self._after)

    def _typed(self, text: str) -> None:
        kind = KINDS[self.section]
        drill = self._document.drill.changed(**{kind.field: self._composed(text)})
        merge = self._bursts.key(f"{kind.field} {self.number}")
        self._document.perform(f"Change {kind.said}", drill, merge=merge)

    def _next(self) -> None:
        if self.row is None:
            return
        if self.row.value.strip():
            self.begin(self.section, self.number + 1, fresh=True)
        else:
            self.end()

    def _empty(self) -> None:
        """Go from a text that was taken away to the end of the one before it."""
        if self.number > 0:
            self.begin(self.section, self.number - 1)
        else:
            self.end()

    def _take_back(self) -> None:
        """Undo what was typed since the caret came here, and give the keyboard to the sentence."""
        section, number = self.section, self.number
        while self._document.stack.index() > self._begun:
            self._document.stack.undo()
        self.end()
        row = self._column.row(f"{section} {KINDS[section].key}:{number + 1}")
        if row is not None:
            row.setFocus(Qt.FocusReason.OtherFocusReason)

    def _leave(self, row: TextRow) -> None:
        if row is self.row and not row.hasFocus():
            self.end()

    def _drop(self) -> None:
        if self.row is not None:
            row, self.row = self.row, None
            self._column.drop(row)
