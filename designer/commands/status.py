"""The exit statuses, and how a command says that it was called wrongly."""

from __future__ import annotations

from typing import Final

FINE: Final = 0
ERROR_FOUND: Final = 1
UNREADABLE: Final = 2
STOPPED: Final = 130
"""As a shell tells of a program that Ctrl+C has ended: 128 and the number of the signal."""
WRONG_USAGE: Final = 64
"""As in sysexits.h, EX_USAGE."""


class WrongUsage(Exception):
    """The command was called in a way that cannot be; the text is one sentence for the user."""
