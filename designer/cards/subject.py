"""What one card is about."""

from __future__ import annotations

from dataclasses import dataclass

from designer.drill.drill import Drill
from designer.drill.setting import At
from designer.wording.card import CardWords, Reader
from designer.wording.telling import Telling, telling
from designer.wording.units import Units


@dataclass(frozen=True, slots=True)
class Subject:
    """What a card is about: one setting of a drill in words, for one reader; ``player`` is the job it speaks to, ``address`` what its code leads to."""

    drill: Drill
    at: At
    words: CardWords
    reader: Reader
    player: str | None = None
    units: Units = "rackets"
    address: str = ""

    @property
    def you(self) -> str | None:
        """The reader's letter: the one asked for, else the one the words speak to; None on a coach's card."""
        if self.reader != "player":
            return None
        section = self.words.section("you")
        lead = section.sentences[0].lead if section and section.sentences else None
        return self.player or (lead.text if lead else None)

    @property
    def alone(self) -> bool:
        """Whether the players run it without a coach, who would lay it out for them."""
        return not self.drill.coach_needed and all(job.by != "coach" for job in self.drill.jobs)

    @property
    def told(self) -> Telling:
        """The setting as it is told to this reader."""
        return telling(self.drill, self.at, self.reader, self.player, self.units)
