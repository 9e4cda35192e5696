"""What a card can be made on, as the window offers it: papers, large print, several to a sheet, posters."""

from __future__ import annotations

from typing import Final

USUAL: Final = (("a5", "A5"), ("a4", "A4"))
"""The two that stand beside each other where there is little room."""

CHOICES: Final = (
    *USUAL,
    ("a6", "A6"),
    ("letter", "Letter"),
    ("half-letter", "Half letter"),
    ("5x8", "5 × 8 in"),
    ("4x6", "4 × 6 in"),
    ("3x5", "3 × 5 in"),
    ("a4 large", "A4, large print"),
    ("letter large", "Letter, large print"),
    ("a5 on a4", "A5, two to a sheet of A4"),
    ("a6 on a4", "A6, four to a sheet of A4"),
    ("half-letter on letter", "Half letter, two to a sheet of letter"),
    ("3x5 on letter", "3 × 5 in, four to a sheet of letter"),
    ("poster-a4", "Poster for the fence, A4"),
    ("poster-a3", "Poster for the fence, A3"),
)
"""Names as the settings keep them, and words. The words before " on " or " large" name a paper of `cards.papers`."""

NAMES: Final = tuple(name for name, _ in CHOICES)


def parts(name: str) -> tuple[str, bool, str | None]:
    """Return (paper, whether in large print, the sheet that several are printed on or None) of a choice."""
    paper, _, sheet = name.partition(" on ")
    plain = paper.removesuffix(" large")
    return plain, plain != paper, sheet or None
