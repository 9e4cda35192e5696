"""All the words of a card, section by section, in the order in which it is read."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from designer.drill.base import Letter
from designer.drill.drill import Drill
from designer.drill.setting import At, progression_at, variation_at
from designer.wording.care import care
from designer.wording.sentence import Sentence, sentence
from designer.wording.tokens import plain
from designer.wording.units import Units

Reader = Literal["player", "coach", "stand-in"]
FactIcon = Literal["people", "court", "clock", "ball", "kit"]


@dataclass(frozen=True, slots=True)
class Fact:
    """One entry of the row under the objective: the icon that stands before it and its words."""

    icon: FactIcon
    text: str


@dataclass(frozen=True, slots=True)
class Section:
    """A heading and its sentences. ``key`` is one of "you", "layout", "start", "steps" … and never changes."""

    key: str
    heading: str
    sentences: tuple[Sentence, ...]


@dataclass(frozen=True, slots=True)
class CardWords:
    """Everything a card says, apart from what stands on the diagram."""

    title: str
    objective: str
    facts: tuple[Fact, ...]
    setting_name: str
    sections: tuple[Section, ...]
    footer: tuple[str, ...]
    left_handed: Sentence | None = None

    def section(self, key: str) -> Section | None:
        """Return the section of this key, None where the card has none."""
        return next((section for section in self.sections if section.key == key), None)


def card_words(
    drill: Drill,
    at: At,
    reader: Reader,
    *,
    player: Letter | None = None,
    units: Units = "rackets",
) -> CardWords:
    """Return the words of the card of the setting at ``at`` for ``reader``.

    ``player`` is the job a player's card speaks to; without it the first job that plays. Raises ``KeyError`` where
    the drill has no such setting.
    """
    progression_at(drill, at)
    variation_at(drill, at)
    cues = tuple(sentence(f"cue:{n}", plain(drill, at, text)) for n, text in enumerate(drill.cues, 1))
    sections = (
        Section("cues", "Remember" if reader == "player" else "Say", cues),
        Section("care", "Take care", care(drill, at, reader)),
    )
    return CardWords(
        title=drill.title,
        objective=drill.objective,
        facts=(),
        setting_name=progression_at(drill, at).name,
        sections=tuple(section for section in sections if section.sentences),
        footer=(),
    )
