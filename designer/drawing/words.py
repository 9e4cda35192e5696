"""Text measured without a screen, from the table of widths that comes with the bundled font."""

from __future__ import annotations

import json
import unicodedata
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from contextvars import ContextVar
from functools import lru_cache, wraps
from typing import Any, Final, ParamSpec, TypeVar

from designer.bundle import resource

CAP_HEIGHT: Final = 0.714
"""Height of a capital in ems, of both faces."""


class _Face(dict[str, float]):
    """The advance of each character in ems, worked out when it is first asked for: a card uses few of them."""

    def __init__(self, face: dict[str, Any]) -> None:
        super().__init__()
        self._advances: dict[str, int] = face["advances"]
        self._em: int = face["unitsPerEm"]

    def __missing__(self, character: str) -> float:
        """Return the advance of ``character``, that of "?" where the face has no sign for it."""
        advance = self._advances.get(str(ord(character)), self._advances["63"])
        self[character] = advance / self._em
        return self[character]

    def has(self, character: str) -> bool:
        """Whether the face has a sign for ``character``."""
        return str(ord(character)) in self._advances


@lru_cache(maxsize=1)
def _faces() -> tuple[_Face, _Face]:
    """Return the faces, regular and bold."""
    faces = json.loads(resource("fonts", "widths.json").read_text(encoding="utf-8"))
    return _Face(faces["regular"]), _Face(faces["bold"])


class OwnFace(_Face):
    """A face that an academy has brought, by the ``name`` a PDF knows it by; what it lacks comes from the bundled one."""

    def __init__(self, face: dict[str, Any], name: str, *, bold: bool) -> None:
        super().__init__(face)
        self.name = name
        self._bundled = _faces()[bold]

    def __missing__(self, character: str) -> float:
        """Return the advance of ``character``, that of the bundled face where this one has no sign for it."""
        own = self._advances.get(str(ord(character)))
        self[character] = self._bundled[character] if own is None else own / self._em
        return self[character]

    def has(self, character: str) -> bool:
        """Whether this face or the bundled one has a sign for ``character``."""
        return self.is_own(character) or self._bundled.has(character)

    def is_own(self, character: str) -> bool:
        """Whether this face itself has a sign for ``character``."""
        return super().has(character)


_own: ContextVar[tuple[OwnFace, OwnFace] | None] = ContextVar("own faces", default=None)
"""The faces that an academy's cards are set in while one is made, None for the bundled ones."""


@contextmanager
def set_in(faces: tuple[OwnFace, OwnFace] | None) -> Iterator[None]:
    """Measure what is written on cards in ``faces``, regular and bold. Pictures keep the bundled ones: they are signs."""
    token = _own.set(faces)
    try:
        yield
    finally:
        _own.reset(token)


def own_face(*, bold: bool) -> OwnFace | None:
    """Return the face that cards are set in now, None for the bundled one."""
    own = _own.get()
    return None if own is None else own[bold]


Made = TypeVar("Made")
Asked = ParamSpec("Asked")


def in_bundled_faces(make: Callable[Asked, Made]) -> Callable[Asked, Made]:
    """Return ``make`` so that it measures in the bundled faces, whatever a card is set in."""

    @wraps(make)
    def made(*args: Asked.args, **values: Asked.kwargs) -> Made:
        if _own.get() is None:
            return make(*args, **values)
        with set_in(None):
            return make(*args, **values)

    return made


def is_shown(character: str) -> bool:
    """Whether the font in force has a sign for ``character``; a control character never has."""
    face = (_own.get() or _faces())[0]
    return face.has(character) and unicodedata.category(character) not in ("Cc", "Cs")


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


def text_width(text: str, size: float, bold: bool = False) -> float:  # noqa: FBT001, FBT002 - a weight, as on a type case
    """Return the width of one line of ``text`` at an em of ``size``, in the unit of ``size``; no kerning."""
    own = _own.get()
    return _bundled_width(text, size, bold) if own is None else size * sum(map(own[bold].__getitem__, text))


@lru_cache(maxsize=8192)
def _bundled_width(text: str, size: float, bold: bool) -> float:  # noqa: FBT001 - a cache key
    return size * sum(map(_faces()[bold].__getitem__, text))


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
