"""Text for a terminal: no control character of a drill or of a file's name gets through."""

from __future__ import annotations

import sys
import unicodedata


def say(text: str, end: str = "\n") -> None:
    """Print ``text`` on standard output, with a question mark for what the terminal's encoding does not have."""
    text = harmless(text) + end
    encoding = sys.stdout.encoding or "utf-8"
    try:
        text.encode(encoding)
    except UnicodeEncodeError:
        text = text.encode(encoding, "replace").decode(encoding)
    sys.stdout.write(text)


def complain(text: str) -> None:
    """Print one sentence on standard error, under the program's name."""
    line = " ".join(harmless(text).split("\n"))
    sys.stderr.write(f"drill-designer: {line}\n")


def harmless(text: str) -> str:
    """Return ``text`` with U+FFFD for each character that could move a terminal's cursor or turn its text round."""
    if text.isprintable():
        return text
    return "".join(
        "\ufffd"
        if char not in "\n\t" and unicodedata.category(char) in ("Cc", "Cf", "Zl", "Zp") and char not in "\u200c\u200d"
        else char
        for char in text
    )
