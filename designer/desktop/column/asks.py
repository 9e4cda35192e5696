"""What the card asks for while it is not there: quiet questions that stand where their answers will stand."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final, Literal

from designer.drill.drill import Drill
from designer.drill.setting import Setting
from designer.wording.card import Reader
from designer.wording.sentence import Sentence, sentence

Make = Literal["start", "shot", "rule", "points", "finish", "swap", "cues", "watch_for", "safety", "facts", "part"]

FIRST: Final = 3
"""How many questions a new card asks at once."""

HEADINGS: Final = {
    "start": "Start",
    "steps": "What happens",
    "rules": "Rules",
    "points": "Points",
    "swap": "Swap",
    "cues": "Remember",
    "watch": "Watch for",
    "care": "Take care",
}
"""The sections that a question can call into being, in the order of a card."""


@dataclass(frozen=True, slots=True)
class Ask:
    """A question, the section it stands in, and what its answer makes."""

    section: str
    make: Make
    question: str

    @property
    def sentence(self) -> Sentence:
        """Return the question as the card shows it."""
        return sentence(f"ask:{self.make}", self.question, missing=True)


def asks(drill: Drill, setting: Setting, reader: Reader) -> tuple[Ask, ...]:
    """Return what is asked for, the most wanted first."""
    found: list[Ask] = []
    if not setting.shots:
        found.append(Ask("steps", "shot", "Which ball is played first? Draw it."))
    if not setting.starts:
        found.append(Ask("start", "start", "How does it start?"))
    if not setting.rules:
        found.append(Ask("rules", "rule", "What must a player do, or not do?"))
    if not setting.points:
        found.append(Ask("points", "points", "How is a point won?"))
    if setting.finish is None:
        found.append(Ask("points", "finish", "Where does it end?"))
    if not setting.swaps and len(setting.spots) > 1:
        found.append(Ask("swap", "swap", "When do you swap?"))
    if not drill.cues:
        found.append(Ask("cues", "cues", "What do you say to the players?"))
    if reader != "player" and not drill.watch_for:
        found.append(Ask("watch", "watch_for", "What do you watch for?"))
    if reader != "player" and not drill.safety:
        found.append(Ask("care", "safety", "What must be looked after on your court?"))
    return tuple(found)
