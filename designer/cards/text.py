"""Text made fit to print: what a font cannot show is replaced, and said."""

from __future__ import annotations

import unicodedata
from collections.abc import Iterable, Sequence
from typing import Final

from designer.cards.papers import Type
from designer.drawing.words import missing_glyphs, text_width, wrap

REPLACEMENT: Final = "?"
NO_BREAK: Final = "\N{NO-BREAK SPACE}"
"""Keeps a number and its sign on one line."""


class Unprintable(ValueError):
    """What is written cannot be set as it should be; the sentence says where and why."""


class Typesetter:
    """Makes text fit to print and remembers which signs the font lacks, so that the card's maker can be told."""

    def __init__(self) -> None:
        self._lacking: dict[str, None] = {}
        self._declined = ""
        self._cleaned: dict[str, str] = {}
        self._broken: dict[tuple[str, Type, float], tuple[str, ...]] = {}

    def clean(self, text: str) -> str:
        """Return ``text`` without control characters and lone surrogates, with "?" for each sign the font lacks.

        Newlines and spaces that do not break stay; every other kind of white space becomes a space.
        """
        if text not in self._cleaned:
            self._cleaned[text] = text if text.isascii() and text.isprintable() else self._tidied(text)
        return self._cleaned[text]

    def _tidied(self, text: str) -> str:
        kept = []
        lacking = missing_glyphs(text)
        for character in unicodedata.normalize("NFC", text):
            category = unicodedata.category(character)
            if unicodedata.bidirectional(character) in RIGHT_TO_LEFT:
                self._declined = self._declined or text
            if character == "\n" or (character == NO_BREAK and character not in lacking):
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
        """Return ``text`` broken into lines of at most ``width`` points; a word too long for a line is broken.

        A last word is not left alone on its line where another one can go with it.
        """
        key = (text, type_, width)
        if key not in self._broken:
            self._broken[key] = tuple(
                line
                for paragraph in self.clean(text).split("\n")
                for line in accompanied(wrap(paragraph, type_.size, width, type_.bold) or ("",), type_, width)
            )
        return self._broken[key]

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

    def on_one_line(self, text: str, type_: Type, width: float) -> str:
        """Return ``text`` fit to print on one line of at most ``width`` points, ended by "…" where it is longer."""
        whole = " ".join(self.clean(text).split())
        if text_width(whole, type_.size, type_.bold) <= width:
            return whole
        room = width - text_width("…", type_.size, type_.bold)
        return f"{self.lines(whole, type_, room)[0].rstrip(' ,;:·')}…"

    def lacking(self) -> tuple[str, ...]:
        """Return the signs that could not be printed, in the order in which they came."""
        return tuple(self._lacking)

    def declined(self) -> str:
        """Return the first text that has letters written from right to left, "" where there is none; forget it."""
        found, self._declined = self._declined, ""
        return found

    def notices(self) -> tuple[str, ...]:
        """Return a sentence about the signs that could not be printed, () where all could."""
        if not self._lacking:
            return ()
        signs = ", ".join(f"{character} (U+{ord(character):04X})" for character in self._lacking)
        return (f"The card's font has no sign for {signs}; a question mark stands in its place.",)


RIGHT_TO_LEFT: Final = ("R", "AL")
"""Unicode's bidirectional classes of letters that are written from right to left: Unicode Standard Annex 9."""


def right_to_left(texts: Iterable[str]) -> str:
    """Return the first letter in ``texts`` that is written from right to left, "" where there is none."""
    signs = (sign for text in texts if not text.isascii() for sign in text)
    return next((sign for sign in signs if unicodedata.bidirectional(sign) in RIGHT_TO_LEFT), "")


def declined_words(sign: str, where: str, made: str) -> str:
    """Return the sentence that tells why no ``made`` ("card", "handbook") is made; ``where`` ("in cue 2") may be ""."""
    return (
        f"“{sign}”{f' {where}' if where else ''} is of a script that is written from right to left. This program cannot set it "
        f"as it is read, so it makes no {made} of it; write that text in Latin, Greek or Cyrillic letters."
    )


def accompanied(lines: Sequence[str], type_: Type, width: float) -> tuple[str, ...]:
    """Return ``lines`` with a single last word joined by the one before it, where both fit and others stay behind."""
    if len(lines) < 2 or " " in lines[-1]:
        return tuple(lines)
    behind, _, moved = lines[-2].rpartition(" ")
    last = f"{moved} {lines[-1]}"
    # A word may stay behind alone where it is no shorter than the one that would stand alone at the end.
    alone = " " not in behind and text_width(behind, 1.0) < text_width(lines[-1], 1.0)
    if not behind or alone or text_width(last, type_.size, type_.bold) > width:
        return tuple(lines)
    return (*lines[:-2], behind, last)


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
