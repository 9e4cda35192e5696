"""The letters that take a tool in hand or place a thing at the pointer, in one table: strip, help and canvas read it."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from designer.desktop.view import Tool


@dataclass(frozen=True, slots=True)
class KeyUse:
    """One letter, what it is for, and its name for whoever listens instead of looking."""

    letter: str
    tool: Tool
    name: str


LETTERS: Final = (
    KeyUse("V", "select", "Pick and move"),
    KeyUse("P", "player", "Player"),
    KeyUse("B", "ball", "Ball"),
    KeyUse("F", "feed", "Feed"),
    KeyUse("R", "run", "Run"),
    KeyUse("A", "area", "Area"),
    KeyUse("U", "round area", "Round area"),
    KeyUse("G", "polygon", "Polygon"),
    KeyUse("Z", "court area", "Court area"),
    KeyUse("S", "split area", "Split area"),
    KeyUse("L", "line", "Line"),
    KeyUse("C", "cone", "Cone"),
    KeyUse("D", "disc", "Disc"),
    KeyUse("H", "hoop", "Hoop"),
    KeyUse("K", "basket", "Basket"),
    KeyUse("M", "ball machine", "Ball machine"),
    KeyUse("E", "barrier", "Barrier"),
    KeyUse("O", "obstacle", "Obstacle"),
    KeyUse("N", "note", "Note"),
    KeyUse("T", "coach", "Coach"),
)
"""Letters are the first of the word where it is free; K as in basket, E as in barrier, T as in trainer, Z as in zone."""

OTHER_KEYS: Final = (
    ("X", "Somebody else hits the ball that is being drawn, or makes the run"),
    ("W", "Turn what is being drawn: shot, feed, run; the form of an area; the part of the court"),
    ("Shift and D, L, C, T, P, N", "Mark what is picked: discs, throw-down lines, chalk, tape, painted, nothing"),
    ("Shift and R", "Imagine the line that is picked longer at both ends, or not"),
    ("Tab", "Go to the next thing, in the order of play"),
    ("F6", "Go to the next part of the window: the card, the tabs, the strip, the court"),
    ("Menu key, Shift and F10", "What can be done to what is picked"),
    ("Arrow keys", "Move what is picked by half a racket or half a stride, else the cross"),
    ("Shift and an arrow key", "Move it by 5 cm"),
    ("Space", "Press at the cross"),
    ("Enter", "Open what is picked; end a chain of balls"),
    ("Backspace", "Take back the last ball of a chain; else delete"),
    ("Delete", "Delete what is picked"),
    ("Ctrl+D", "Duplicate what is picked"),
    ("Esc", "Leave without trace"),
    ("Alt", "Hold it: no snapping"),
    ("+ and −", "Zoom"),
    ("0", "Show the whole court"),
    ("?", "This sheet"),
)
"""What else the keyboard does on the court, for the sheet of keys."""


def tool_of(letter: str) -> Tool | None:
    """Return the tool that ``letter`` stands for, None for a letter without one."""
    return next((use.tool for use in LETTERS if use.letter == letter.upper()), None)


def letter_of(tool: Tool) -> str:
    """Return the letter of ``tool``."""
    return next(use.letter for use in LETTERS if use.tool == tool)
