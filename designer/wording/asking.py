"""A question that a setting leaves open: its kind, where its answer will stand, its words."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from designer.wording.sentence import Sentence, sentence

Section = Literal["start", "steps", "rules", "points", "swap", "care"]
"""Where on the card the answer will stand."""


@dataclass(frozen=True, slots=True)
class Question:
    """One open question. ``usual`` is the answer that is nearly always given, "" where there is none."""

    kind: str
    section: Section
    asked: Sentence
    usual: str = ""


def ask(kind: str, section: Section, text: str, *about: str, name: str = "", usual: str = "") -> Question:
    """Return a question; ``name`` tells it from others of its kind."""
    key = f"question:{kind}:{name.replace(' ', '-')}" if name else f"question:{kind}"
    return Question(kind, section, sentence(key, text, *about, missing=True), usual)
