"""One go of typing: letters that follow one another without a pause are undone together."""

from __future__ import annotations

import time
from collections.abc import Callable
from typing import Final

PAUSE: Final = 1.2
"""Seconds without a letter that end one go."""


class Bursts:
    """Names the go that a letter belongs to, for ``Document.perform``'s ``merge``."""

    def __init__(self, clock: Callable[[], float] = time.monotonic) -> None:
        self._clock = clock
        self._name = ""
        self._last = 0.0
        self._number = 0

    def key(self, name: str) -> tuple[str, int]:
        """Return the same key as before where ``name`` is typed at without a pause, else a new one."""
        now = self._clock()
        if name != self._name or now - self._last > PAUSE:
            self._number += 1
        self._name, self._last = name, now
        return (name, self._number)

    def end(self) -> None:
        """Let the next letter begin a new go."""
        self._name = ""
