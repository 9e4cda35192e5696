"""Which tokens stand in a text of the author's own, and how those read that are words by themselves."""

from __future__ import annotations

import re
from typing import Final

TOKEN: Final = re.compile(r"\{\{|\{([A-Za-z][A-Za-z0-9-]{0,39})\}")
"""A token, its name in the first group; or the brace of the author's own that ``{{`` stands for, without a name."""

TURNED: Final = frozenset(
    {"left", "right", "deuce", "ad", "clockwise", "anticlockwise", "forehand", "backhand", "cross-court"}
)
"""Tokens that a version turns into another word; they read as they stand."""


def drawn_text(text: str) -> str:
    """Return the author's ``text`` as it stands on the drawing: people and sides as words, the lines kept."""

    def word(found: re.Match[str]) -> str:
        token = found[1]
        return "{" if token is None else token if token in TURNED or len(token) == 1 else found[0]

    return TOKEN.sub(word, text)
