"""Text measured without a screen, from the table of widths that comes with the bundled font."""

from __future__ import annotations

import json
import unicodedata
from functools import lru_cache
from typing import Final

from designer.bundle import resource

CAP_HEIGHT: Final = 0.714
"""Height of a capital in ems, of both faces."""


@lru_cache(maxsize=1)
def _faces() -> tuple[dict[str, float], dict[str, float]]:
    """Return the advance of each character in ems, regular and bold."""
    faces = json.loads(resource("fonts", "widths.json").read_text(encoding="utf-8"))
    regular, bold = (
        {chr(int(code)): advance / faces[weight]["unitsPerEm"] for code, advance in faces[weight]["advances"].items()}
        for weight in ("regular", "bold")
    )
    return regular, bold


def is_shown(character: str) -> bool:
    """Whether the bundled font has a sign for ``character``; a control character never has."""
    return character in _faces()[0] and unicodedata.category(character) not in ("Cc", "Cs")


def missing_glyphs(text: str) -> tuple[str, ...]:
    """Return the characters of ``text`` that the font lacks, each once, in order of first appearance.

    White space, line breaks and control characters are not counted: nothing of them would be seen.
    """
    return tuple(dict.fromkeys(c for c in text if not is_shown(c) and unicodedata.category(c) != "Cc"))


def shown(text: str) -> str:
    """Return ``text`` as it can be drawn: control characters gone, "?" for what the font lacks, line breaks kept."""
    if all(map(is_shown, text)):
        return text
    tidy = text.replace("\r\n", "\n").replace("\r", "\n").replace("\t", " ")
    return "".join(c if c == "\n" or is_shown(c) else "" if unicodedata.category(c) == "Cc" else "?" for c in tidy)


@lru_cache(maxsize=8192)
def text_width(text: str, size: float, bold: bool = False) -> float:  # noqa: FBT001, FBT002 - a weight, as on a type case
    """Return the width of one line of ``text`` at an em of ``size``, in the unit of ``size``; no kerning."""
    advances = _faces()[bold]
    unknown = advances["?"]
    return size * sum(advances.get(character, unknown) for character in text)


def wrap(text: str, size: float, width: float, bold: bool = False) -> tuple[str, ...]:  # noqa: FBT001, FBT002 - as above
    """Return ``text`` broken at spaces into lines no wider than ``width``; a word wider than that is broken inside.

    A line break in ``text`` stays one; a no-break space does not break. Empty text is one empty line.
    """
    lines: list[str] = []
    for paragraph in text.split("\n"):
        line = ""
        for word in (
            piece for whole in paragraph.split(" ") if whole for piece in _pieces(whole, size, width, bold=bold)
        ):
            longer = f"{line} {word}" if line else word
            if line and text_width(longer, size, bold) > width:
                lines.append(line)
                line = word
            else:
                line = longer
        lines.append(line)
    return tuple(lines)


def _pieces(word: str, size: float, width: float, *, bold: bool) -> list[str]:
    if text_width(word, size, bold) <= width:
        return [word]
    pieces = [""]
    for character in word:
        if pieces[-1] and text_width(pieces[-1] + character, size, bold) > width:
            pieces.append("")
        pieces[-1] += character
    return pieces
