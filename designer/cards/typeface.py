"""The face that cards are set in: the bundled one, or the academy's own TrueType with the bundled one for what it lacks."""

from __future__ import annotations

import hashlib
import io
import logging
from functools import lru_cache
from typing import Any, Final

from designer.drawing.words import OwnFace, own_face

_ALPHABET: Final = frozenset("ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789.,:;?!()-+ ")
_COMMON: Final = 0x2200
"""Signs under this are tried before a card is set: Latin, Greek, Cyrillic and their punctuation."""
_WIDEST: Final = 3.0
"""No letter is wider, and none reaches farther, than this times its size; a damaged table of widths says tens."""
_LEAST: Final = 0.1
"""No letter or digit is drawn lower than this times its size; one that is prints as nothing."""
RESTRICTED: Final = 0x0002
NO_SUBSET: Final = 0x0100
BITMAP_ONLY: Final = 0x0200
"""Bits of the field fsType of table OS/2 (ISO/IEC 14496-22): what a face's owner does not allow."""


class UnreadableTypeface(ValueError):
    """The typeface cannot be used; its text says why."""


@lru_cache(maxsize=4)
def read_typeface(regular: bytes, bold: bytes | None = None) -> tuple[OwnFace, OwnFace]:
    """Return the faces in two TrueType files, ready to set cards in; without a bold one the regular serves for both.

    What a reader could choke on, the maps of characters above all, has been looked at when the files were read. Raises
    ``UnreadableTypeface``.
    """
    return _face(regular, bold=False), _face(bold or regular, bold=True)


def own_faces(typeface: tuple[bytes, bytes | None] | None) -> tuple[tuple[OwnFace, OwnFace] | None, tuple[str, ...]]:
    """Return the faces in the files of ``typeface``, None where there are none, and what is wrong with them."""
    if typeface is None:
        return None, ()
    try:
        return read_typeface(*typeface), ()
    except UnreadableTypeface as error:
        return None, (f"The typeface is left out: {error}.",)


def _face(data: bytes, *, bold: bool) -> OwnFace:
    from fontTools.ttLib import TTFont as Reader
    from reportlab.pdfbase import pdfmetrics
    from reportlab.pdfbase.ttfonts import TTFont

    logging.getLogger("fontTools").setLevel(logging.ERROR)  # what it finds odd is said here, in a sentence
    name = f"Own-{'Bold' if bold else 'Regular'}-{hashlib.sha256(data).hexdigest()[:12]}"
    try:
        with Reader(io.BytesIO(data), lazy=True) as font:
            forbidden = int(font["OS/2"].fsType)
            widths = font["hmtx"].metrics
            advances = {str(code): widths[glyph][0] for code, glyph in (font.getBestCmap() or {}).items()}
            face = OwnFace({"advances": advances, "unitsPerEm": font["head"].unitsPerEm}, name, bold=bold)
            odd = _odd_letters(font)
        if name not in pdfmetrics.getRegisteredFontNames():
            made = TTFont(name, io.BytesIO(data))
            made.face.makeSubset([int(code) for code in advances if int(code) < _COMMON])  # as when a card is saved
            pdfmetrics.registerFont(made)
    except Exception as error:
        raise UnreadableTypeface("the typeface is damaged, or no TrueType face with outlines of its own") from error
    if forbidden & (RESTRICTED | NO_SUBSET | BITMAP_ONLY):
        raise UnreadableTypeface("the typeface does not allow that a part of it stands in a PDF; its licence decides")
    widest = max(face[character] for character in _ALPHABET)
    if widest > _WIDEST:
        raise UnreadableTypeface(f"the typeface has letters {widest:.0f} times as wide as they are high")
    lacking = sorted(character for character in _ALPHABET if not face.is_own(character))
    if lacking:
        raise UnreadableTypeface(f"the typeface has no sign for {' '.join(lacking[:8])}; expected letters and digits")
    if odd:
        raise UnreadableTypeface(f"the typeface draws nothing that can be read for {' '.join(odd[:8])}")
    return face


def _odd_letters(font: Any) -> list[str]:
    """Return the letters and digits of a fontTools font whose outline is empty, flat, or reaches out of all measure."""
    names, outlines, size = font.getBestCmap() or {}, font["glyf"], font["head"].unitsPerEm
    found = []
    for character in sorted(filter(str.isalnum, _ALPHABET)):
        if ord(character) in names:
            outline = outlines[names[ord(character)]]
            low, high = (outline.yMin, outline.yMax) if outline.numberOfContours else (0, 0)
            farthest = max(map(abs, (outline.xMin, outline.xMax, low, high))) if high > low else 0
            if high - low < _LEAST * size or farthest > _WIDEST * size:
                found.append(character)
    return found


def runs(text: str, *, bold: bool) -> list[tuple[str, str]]:
    """Return ``text`` in pieces (name of a PDF font, characters): one, unless the face in force lacks some of it."""
    from designer.drawing.pdf import BOLD, REGULAR

    bundled = BOLD if bold else REGULAR
    own = own_face(bold=bold)
    if own is None or not text:
        return [(bundled, text)]
    found: list[tuple[str, str]] = []
    for character in text:
        name = own.name if own.is_own(character) else bundled
        if found and found[-1][0] == name:
            found[-1] = (name, found[-1][1] + character)
        else:
            found.append((name, character))
    return found


@lru_cache(maxsize=64)
def painted(colour: str) -> Any:
    """Return #RRGGBB as reportlab's colour: reading it anew for each line of a book takes as long as writing the line."""
    from reportlab.lib.colors import toColor

    return toColor(colour)
