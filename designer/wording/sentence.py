"""A sentence as data: its words, what stands before it as a bullet, and the records it is made from."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Literal

LeadKind = Literal["hit", "feed", "choice", "run", "recover", "open", "value", "bullet", "number", "person", "caution"]


@dataclass(frozen=True, slots=True)
class Ref:
    """Words that name one record of the drill, so that a screen can light it up: its id and the words."""

    id: str
    text: str


Part = str | Ref


@dataclass(frozen=True, slots=True)
class Lead:
    """What stands as a sentence's bullet: the mark of a step, a value, a number, a letter or a plain dot.

    ``text`` is what is written in or as the mark: "2" for a digit, "+1" for a value, "A" for a person, "" for none.
    """

    kind: LeadKind
    text: str = ""


@dataclass(frozen=True, slots=True)
class Sentence:
    """One or a few short sentences made from data.

    ``key`` stays the same while the records do, so that a screen can keep its place. ``about`` holds the ids of the
    records the words are made from, the first being the one to open. ``missing`` marks an unanswered question: a
    ruled line on paper, a prompt on screen.
    """

    key: str
    parts: tuple[Part, ...]
    about: tuple[str, ...] = ()
    lead: Lead | None = None
    missing: bool = False

    @property
    def text(self) -> str:
        """The words in one line of plain text."""
        return "".join(part if isinstance(part, str) else part.text for part in self.parts)

    def led_by(self, lead: Lead | None) -> Sentence:
        """Return this sentence with ``lead`` as its bullet."""
        return replace(self, lead=lead)


def sentence(key: str, text: str, *about: str, lead: Lead | None = None, missing: bool = False) -> Sentence:
    """Return a sentence of one part, made from the records ``about``."""
    return Sentence(key, (text,), tuple(dict.fromkeys(about)), lead, missing)
