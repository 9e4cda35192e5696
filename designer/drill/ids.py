"""New ids: a kind and five random characters, from a source that is passed in."""

from __future__ import annotations

import re
from collections.abc import Container
from typing import Protocol

_CHARACTERS = "abcdefghijkmnpqrstuvwxyz23456789"
"""Letters and digits that cannot be taken for one another when read aloud or written down."""


class Chooser(Protocol):
    """What ``random.Random`` does."""

    def choice(self, seq: str, /) -> str:
        """Return one character of ``seq``."""
        ...


def new_id(kind: str, source: Chooser, taken: Container[str] = ()) -> str:
    """Return an id such as ``cone-7h2kq`` that is not in ``taken``."""
    stem = re.sub(r"[^a-z0-9]+", "-", kind.lower()).strip("-")[:32] or "record"
    if not stem[0].isalpha():
        stem = f"r-{stem}"
    while True:
        made = f"{stem}-{''.join(source.choice(_CHARACTERS) for _ in range(5))}"
        if made not in taken:
            return made
