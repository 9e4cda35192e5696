"""Who plays today: names and hands for one drill, in a record of its own that no drill, PDF attachment or handbook holds."""

from __future__ import annotations

from datetime import date
from typing import Annotated

from pydantic import Field, StringConstraints

from designer.drill.base import Id, Letter, Record
from designer.drill.drill import Drill
from designer.drill.people import Hand
from designer.drill.setting import At, addresses

Name = Annotated[str, StringConstraints(strip_whitespace=True, max_length=60)]


class Person(Record):
    """Who has a job today. Without ``hand`` it is the one the drill is drawn for."""

    name: Name = ""
    hand: Hand | None = None


class Today(Record):
    """The people of one session: ``drill`` is the drill's id; without ``progression`` its main setting is played."""

    format: Annotated[int, Field(ge=1, le=1)] = 1
    drill: Id
    progression: Id | None = None
    variation: Id | None = None
    people: dict[Letter, Person] = {}
    dated: date | None = None

    def setting(self, drill: Drill) -> At | None:
        """Return the setting that is played, None where none is said or the drill no longer has it."""
        return next((at for at in addresses(drill) if at == At(self.progression or "", self.variation)), None)

    def names(self) -> dict[str, str]:
        """Return {letter: name} of those who are named, in the order of the letters."""
        return {letter: one.name for letter, one in sorted(self.people.items()) if one.name}

    def other_hands(self, drill: Drill) -> tuple[str, ...]:
        """Return the letters whose person today plays with the other hand than the drill is drawn for."""
        jobs = {job.letter: job.hand for job in drill.jobs if job.by == "player"}
        return tuple(
            letter for letter, one in sorted(self.people.items()) if one.hand and jobs.get(letter, one.hand) != one.hand
        )
