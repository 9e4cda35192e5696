"""How an edit by hand says no."""

from __future__ import annotations


class Refused(ValueError):
    """What a hand asks for cannot be drawn; the text is a sentence that says why, without its full stop."""
