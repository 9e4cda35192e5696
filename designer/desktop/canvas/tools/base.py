"""What all tools have in common: they are fed events and can be left at any moment without a trace."""

from __future__ import annotations

import math
from typing import ClassVar

from designer.desktop.canvas.bench import Bench
from designer.desktop.canvas.pointer import Pointer
from designer.drill.base import Point


class ToolBase:
    """A small state machine. ``prompt`` says what the next press does."""

    cursor: ClassVar[str] = "cross"
    """"arrow" or "cross"."""

    def __init__(self, bench: Bench) -> None:
        self.bench = bench

    @property
    def prompt(self) -> str:
        """Return one sentence for the user about the next press."""
        return ""

    @property
    def busy(self) -> bool:
        """Whether a gesture has begun and not ended."""
        return False

    @property
    def looks_under(self) -> bool:
        """Whether the next move needs to know what lies under the pointer: finding out takes time."""
        return True

    def press(self, pointer: Pointer) -> None:
        """Take a press of the main button."""

    def move(self, pointer: Pointer) -> None:
        """Take a move with the button held."""

    def hover(self, pointer: Pointer) -> None:
        """Take a move without a button."""

    def release(self, pointer: Pointer) -> None:
        """Take the release."""

    def finish(self) -> None:
        """End what goes on from press to press, as Enter and a double click do; what is done stays done."""
        self.cancel()

    def leave(self) -> None:
        """Give up what goes on, because another setting has come into view: it was begun on another court."""
        self.finish()

    def take_back(self) -> bool:
        """Take back the last leg; return False where there is none."""
        return False

    def cancel(self) -> bool:
        """Leave without trace; return whether there was anything to leave."""
        was_busy = self.busy
        self.bench.abandon()
        return was_busy


def has_moved(start: Point, pointer: Pointer) -> bool:
    """Whether the pointer is so far from ``start`` that a drag is meant, not a click."""
    return math.hypot(pointer.at[0] - start[0], pointer.at[1] - start[1]) > pointer.reach / 2
