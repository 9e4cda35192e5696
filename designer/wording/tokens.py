"""A drill's own text with its tokens turned into words."""

from __future__ import annotations

import re
from typing import Final

from designer.wording.names import name_of
from designer.wording.telling import Telling

_TOKEN: Final = re.compile(r"\{\{|\{([A-Za-z][A-Za-z0-9-]{0,39})\}")
_TURNED: Final = frozenset(
    {"left", "right", "deuce", "ad", "clockwise", "anticlockwise", "forehand", "backhand", "cross-court"}
)
"""Tokens that a version turns into another word; they read as they stand."""
_QUOTED: Final = re.compile(r'"([^"]*)"')
_CONTROL: Final = re.compile(r"[\x00-\x1f\x7f]+")


def drawn_text(text: str) -> str:
    """Return the author's ``text`` as it stands on the drawing: people and sides as words, the lines kept."""

    def word(found: re.Match[str]) -> str:
        token = found[1]
        return "{" if token is None else token if token in _TURNED or len(token) == 1 else found[0]

    return _TOKEN.sub(word, text)


def own_text(told: Telling, text: str) -> str:
    """Return the author's ``text`` on one line with its tokens read.

    ``{A}`` and ``{cone-home}`` become names marked by ``ref``, ``{{`` a brace; a token that means nothing stays as
    it is written.
    """

    def word(found: re.Match[str]) -> str:
        token = found[1]
        if token is None:
            return "{"
        if token in _TURNED:
            return token
        name = name_of(told, token)
        return found[0] if name is None else name

    read = _TOKEN.sub(word, _CONTROL.sub(" ", text))
    return _QUOTED.sub(r"“\1”", " ".join(read.split()))
