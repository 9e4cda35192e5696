"""A drill's own text with its tokens turned into words."""

from __future__ import annotations

import re
from typing import Final

from designer.wording.names import name_of
from designer.wording.telling import Telling
from designer.wording.token_words import TOKEN, TURNED

_QUOTED: Final = re.compile(r'"([^"]*)"')
_CONTROL: Final = re.compile(r"[\x00-\x1f\x7f]+")


def own_text(told: Telling, text: str) -> str:
    """Return the author's ``text`` on one line with its tokens read.

    ``{A}`` and ``{cone-home}`` become names marked by ``ref``, ``{{`` a brace; a token that means nothing stays as
    it is written.
    """

    def word(found: re.Match[str]) -> str:
        token = found[1]
        if token is None:
            return "{"
        if token in TURNED:
            return token
        name = name_of(told, token)
        return found[0] if name is None else name

    read = TOKEN.sub(word, _CONTROL.sub(" ", text))
    return _QUOTED.sub(r"“\1”", " ".join(read.split()))
