"""Cautions: a token in a text that names nothing, and so is printed as it is written."""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import Final

from designer.drill.drill import Drill
from designer.drill.setting import At, addresses
from designer.review.check import Check, check, hint
from designer.review.sides import texts
from designer.review.walk import owner
from designer.wording.names import name_of
from designer.wording.telling import telling

TURNED: Final = frozenset(
    {"left", "right", "deuce", "ad", "clockwise", "anticlockwise", "forehand", "backhand", "cross-court"}
)
"""Tokens that are words of their own, which versions turn."""

_TOKEN: Final = re.compile(r"\{\{|\{([^{}]{1,60})\}")


def token_cautions(drill: Drill) -> Iterator[Check]:
    """Yield a caution for each token that is neither a side nor a person nor a thing of the setting it stands in.

    A text of the drill as a whole may name what any of its settings has.
    """
    told = {at: telling(drill, at) for at in addresses(drill)}

    def names(token: str, at: At | None) -> bool:
        if at is not None:
            return name_of(told[at], token) is not None
        return any(name_of(each, token) is not None for each in told.values())

    seen: set[tuple[str, str]] = set()
    for at, root, path, text in texts(drill):
        for found in _TOKEN.finditer(text):
            token = found[1]
            if token is None or token in TURNED or (token, text) in seen or names(token, at):
                continue
            seen.add((token, text))
            id = owner(root, path)
            known = {
                *TURNED,
                *(job.letter for job in drill.jobs),
                *(id for each in told.values() for id in each.setting.ids()),
            }
            words = f"“{found[0]}” stands in a text and names nothing{hint(token, known)}"
            yield check("caution", "unknown-token", words, *([] if id is None else [id]), at=at)
