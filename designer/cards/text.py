"""Text made fit to print: what a font cannot show is replaced, and said."""

from __future__ import annotations

import unicodedata
from collections.abc import Iterable
from typing import Final

from designer.cards.papers import Type
from designer.drawing.words import missing_glyphs, text_width, wrap

REPLACEMENT: Final = "?"


class Typesetter:
    """Makes text fit to print and remembers which signs the font lacks, so that the card's maker can be told."""

    def __init__(self) -> None:
        self._lacking: dict[str, None] = {}

    def clean(self, text: str) -> str:
        """Return ``text`` without control characters and lone surrogates, with "?" for each sign the font lacks.

        Newlines stay; every other kind of white space becomes a space.
        """
        kept = []
        lacking = missing_glyphs(text)
        for character in unicodedata.normalize("NFC", text):
            category = unicodedata.category(character)
            if character == "\n":
                kept.append(character)
            elif category in ("Zs", "Zl", "Zp") or character in "\t\r\f\v":
                kept.append(" ")
            elif category in ("Cc", "Cs", "Cf", "Cn", "Co"):
                continue
            elif character in lacking:
                self._lacking[character] = None
                kept.append(REPLACEMENT)
            else:
                kept.append(character)
        return "".join(kept)

    def lines(self, text: str, type_: Type, width: float) -> tuple[str, ...]:
        """Return ``text`` broken into lines of at most ``width`` points; a word too long for a line is broken."""
        return tuple(
            line
            for paragraph in self.clean(text).split("\n")
            for line in (wrap(paragraph, type_.size, width, type_.bold) or ("",))
        )

    def balanced(self, text: str, type_: Type, width: float) -> tuple[str, ...]:
        """Return ``text`` in as few lines as ``width`` allows, the lines as even as they can be."""
        fewest = self.lines(text, type_, width)
        low, high = width / 2, width
        best = fewest
        while high - low > 1:
            tried = (low + high) / 2
            lines = self.lines(text, type_, tried)
            if len(lines) > len(fewest):
                low = tried
            else:
                best, high = lines, tried
        return best

    def notices(self) -> tuple[str, ...]:
        """Return a sentence about the signs that could not be printed, () where all could."""
        if not self._lacking:
            return ()
        signs = ", ".join(f"{character} (U+{ord(character):04X})" for character in self._lacking)
        return (f"The card's font has no sign for {signs}; a question mark stands in its place.",)


def fitted(text: str, sizes: tuple[float, float], width: float) -> float:
    """Return the largest size, between ``sizes`` = (wished, least), at which bold ``text`` fits ``width`` on one line.

    The least size is returned where nothing fits; the text then takes more than one line.
    """
    wished, least = sizes
    at_one = text_width(text, 1.0, bold=True)
    if at_one <= 0:
        return wished
    return max(least, min(wished, width / at_one))


def widest(texts: Iterable[str], type_: Type) -> float:
    """Return the width in points of the widest of ``texts``, 0 where there are none."""
    return max((text_width(text, type_.size, type_.bold) for text in texts), default=0.0)
